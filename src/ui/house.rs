//! The house: its drawing is the menu.

use leptos::prelude::*;

use super::app::Reckoned;
use super::desk;
use super::figure::Picture;
use crate::app::event::{Event, Shift};
use crate::app::model::KeptSite;
use crate::app::view::house::{self, HouseView, PartList, PartRow};
use crate::site::part::PartId;
use crate::site::system::PartKind;
use crate::words;

/// The house.
#[component]
pub fn House(
    /// The open site.
    site: Memo<Option<KeptSite>>,
    /// Its outcome.
    reckoned: Memo<Option<Reckoned>>,
) -> impl IntoView {
    let desk = desk();
    let shown = Memo::new(move |_| {
        let (units, today) = desk.model.with(|model| (model.units.clone(), model.today));
        let reckoned = reckoned.get();
        let outcome = reckoned.as_ref().map(Reckoned::outcome);
        site.with(|site| Some(house::house(site.as_ref()?, outcome, &units, today, desk.width.get())))
    });
    view! { {move || shown.get().map(|view| view! { <HouseOf view/> })} }
}

#[component]
fn HouseOf(
    /// What is drawn.
    view: HouseView,
) -> impl IntoView {
    let desk = desk();
    let HouseView { headline, water, drawing, findings, lists } = view;
    let names: Vec<(PartId, String)> =
        lists.iter().flat_map(|list| list.rows.iter().map(|row| (row.id, row.name.clone()))).collect();
    let names = StoredValue::new(names);
    let bundle = RwSignal::new(Vec::<PartId>::new());
    let on_part = Callback::new(move |parts: Vec<PartId>| match parts.as_slice() {
        [one] => desk.send.run(Event::PartOpened(*one)),
        _ => bundle.set(parts),
    });
    let open = move |part: PartId| desk.send.run(Event::PartOpened(part));
    view! {
        <section class="house">
            <h1 class="headline">{headline}</h1>
            <ul class="findings">
                {findings
                    .into_iter()
                    .map(|finding| {
                        let mend = finding.part.map(|part| {
                            view! { <button type="button" on:click=move |_| open(part)>"Open"</button> }
                        });
                        view! { <li><span>{finding.text}</span> {mend}</li> }
                    })
                    .collect_view()}
            </ul>
            <Picture drawing name="The house in section; each part opens its sheet" on_part/>
            {move || {
                let parts = bundle.get();
                (!parts.is_empty()).then(|| {
                    view! {
                        <div class="row bundle" role="group" aria-label="Parts drawn as one">
                            {parts
                                .into_iter()
                                .map(|part| {
                                    let name = names.with_value(|names| {
                                        names.iter().find(|(id, _)| *id == part).map(|(_, name)| name.clone())
                                    });
                                    view! { <button type="button" on:click=move |_| open(part)>{name}</button> }
                                })
                                .collect_view()}
                        </div>
                    }
                })
            }}
            {water.map(|water| view! { <p class="small">{water}</p> })}
            <h2>"Parts"</h2>
            {lists.into_iter().map(|list| view! { <PartsOf list/> }).collect_view()}
            <p class="small caution">{words::cautions::NOT_DRINKING_WATER} " " {words::cautions::WHO_DECIDES}</p>
        </section>
    }
}

#[component]
fn PartsOf(
    /// The parts of one kind.
    list: PartList,
) -> impl IntoView {
    let desk = desk();
    let PartList { kind, rows } = list;
    let last = rows.len().saturating_sub(1);
    let title = words::parts::many(kind);
    view! {
        <div class="parts">
            <div class="parts-head">
                <h3>{title}</h3>
                <button
                    type="button"
                    class="plain"
                    aria-label=format!("Add: {}", words::parts::one(kind))
                    title=words::parts::explained(kind)
                    on:click=move |_| desk.send.run(Event::PartAdded(kind))
                >
                    "Add"
                </button>
            </div>
            {rows.is_empty().then(|| view! { <p class="small">{words::parts::explained(kind)}</p> })}
            <ul>
                {rows
                    .into_iter()
                    .enumerate()
                    .map(|(at, row)| view! { <Row row first=at == 0 last=at == last kind/> })
                    .collect_view()}
            </ul>
        </div>
    }
}

#[component]
fn Row(
    /// The part.
    row: PartRow,
    /// Whether it is the first of its kind.
    first: bool,
    /// Whether it is the last.
    last: bool,
    /// Its kind.
    kind: PartKind,
) -> impl IntoView {
    let desk = desk();
    let PartRow { id, name, detail } = row;
    let shift = move |shift| desk.send.run(Event::PartShifted(id, shift));
    let single = first && last;
    let (up, down) = (format!("Move {name} up"), format!("Move {name} down"));
    // Only the order of uses means something; that of the rest is for the eye.
    let hint = (kind == PartKind::Use).then_some("served in this order");
    view! {
        <li>
            <button type="button" class="part-name" on:click=move |_| desk.send.run(Event::PartOpened(id))>
                <strong>{name}</strong>
                <span>{detail}</span>
            </button>
            {(!single).then(|| {
                view! {
                    <button type="button" class="plain square" aria-label=up title=hint disabled=first on:click=move |_| shift(Shift::Up)>
                        "↑"
                    </button>
                    <button type="button" class="plain square" aria-label=down title=hint disabled=last on:click=move |_| shift(Shift::Down)>
                        "↓"
                    </button>
                }
            })}
        </li>
    }
}
