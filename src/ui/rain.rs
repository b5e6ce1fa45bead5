//! The rain: read, judged, kept, looked at.

use std::cell::Cell;

use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, focus_on, list, live, nothing, worded};
use super::field::{QuantityField, text_field};
use super::file::FileButton;
use super::follow::{Held, derived, whenever};
use super::{Desk, figure, generated};
use crate::app::event::Event;
use crate::app::model::{Place, SiteId};
use crate::app::view::rain::{self, KeptRainView, RainView, UnitChoice, WaitingView};
use crate::quantity::{Kind, Range, shown};
use crate::site::rain::{Normals, Rain};
use crate::words;

/// The rain of the open site.
pub(crate) fn rain(desk: Desk) -> AnyView {
    let waiting = derived(move || desk.model.with(|model| model.read_rain.clone()));
    let shown = move || {
        let waiting = waiting.get();
        let view = desk.case.with(|case| {
            let kept = case.site.as_ref()?;
            let reckoning = case.trial.reckoning(&kept.site.reckoning);
            Some(rain::rain(kept, reckoning, waiting.as_ref(), &case.units, case.width))
        });
        match view {
            Some(RainView { waiting: Some(waiting), .. }) => report(waiting, desk),
            Some(RainView { kept: Some(kept), .. }) => kept_rain(kept, desk),
            Some(_) => vec![worded("P", words::rain::NONE).class("lead").into(), sources(desk)].into_any(),
            None => nothing(),
        }
    };
    // What was just read is judged before it is kept: there the reader goes on.
    let before = Cell::new(true);
    whenever(move |_| {
        let there = waiting.with(Option::is_some);
        let was = before.replace(there);
        if there && !was {
            request_animation_frame(|| focus_on(".rain .report"));
        }
    });
    element("SECTION").class("rain").child(worded("H1", words::rain::TITLE)).child(live(shown)).into()
}

/// The ways to give rain.
fn sources(desk: Desk) -> AnyView {
    let load = FileButton {
        label: said!("Load a rain record", "Cargar un registro de lluvia"),
        detail: words::rain::WHICH_FILES.text(),
        accept: ".csv,.txt,.tsv,text/csv,text/plain",
        class: "file way main",
        event: Event::RainRead,
    };
    let begun = desk.means.with_untracked(|means| means.totals_mm.iter().any(Option::is_some));
    let means = element("DETAILS")
        .opened(begun)
        .child(worded("SUMMARY", phrase!("Enter twelve monthly means", "Escribir doce promedios mensuales")))
        .children(normals(desk));
    element("DIV").class("sources").child(load.view(desk)).child(paste(desk)).child(means).into()
}

fn paste(desk: Desk) -> AnyView {
    let pasted = Held::new(None::<String>);
    let text = element("TEXTAREA")
        .attribute("rows", "6")
        .attribute("placeholder", "2004-07-30, 12.5")
        .value(move || pasted.get().unwrap_or_default())
        .on("input", move |event| pasted.set(Some(event_target_value(&event))));
    let read = move |_| {
        let bytes = pasted.get_untracked().unwrap_or_default().into_bytes();
        desk.send.run(Event::RainRead(bytes, phrase!("Pasted text", "Texto pegado").to_owned()));
    };
    element("DETAILS")
        .child(worded("SUMMARY", phrase!("Paste a record", "Pegar un registro")))
        .child(
            element("LABEL")
                .class("field")
                .child(
                    worded(
                        "SPAN",
                        phrase!("Date and depth, a day a line", "Fecha y cantidad de lluvia, un día por línea"),
                    )
                    .class("label"),
                )
                .child(text),
        )
        .child(worded("BUTTON", phrase!("Read it", "Leerlo")).attribute("type", "button").on("click", read))
        .into()
}

/// What a month's mean may be, in mm.
const MONTHLY: Range = Range::new(0.0, 5_000.0);
/// What its rain days may be.
const RAIN_DAYS: Range = Range::new(0.0, 28.0);

/// Monthly means while they are entered, for one site.
#[derive(Clone, Default)]
pub(crate) struct Means {
    of: Option<SiteId>,
    source: Option<String>,
    totals_mm: [Option<f64>; 12],
    rain_days: [Option<f64>; 12],
}

/// All twelve, or nothing.
fn all(values: [Option<f64>; 12]) -> Option<[f64; 12]> {
    values.iter().all(Option::is_some).then(|| values.map(Option::unwrap_or_default))
}

fn normals(desk: Desk) -> Vec<AnyView> {
    // They wait when another place is opened. What is kept is what is changed: one wrong month doesn't cost twelve.
    let months = desk.means;
    desk.model.with_untracked(|model| {
        let Some(site) = model.site().filter(|site| months.with_untracked(|months| months.of != Some(site.id))) else {
            return;
        };
        let blank = Means { of: Some(site.id), ..Means::default() };
        months.set(match site.rain.as_deref() {
            Some(Rain::Normals(kept)) => Means {
                source: Some(kept.source.clone()),
                totals_mm: kept.totals_mm.map(Some),
                rain_days: kept.rain_days.map_or([None; 12], |days| days.map(Some)),
                ..blank
            },
            _ => blank,
        });
    });
    let source_text = move || {
        let source = months.with(|months| months.source.clone());
        source.unwrap_or_else(|| phrase!("entered by hand", "escritos a mano").to_owned())
    };
    let keep = move |_| {
        let Means { totals_mm, rain_days, .. } = months.get_untracked();
        if let Some(totals_mm) = all(totals_mm) {
            let source = untrack(source_text);
            months.set(Means::default());
            desk.send.run(Event::NormalsEntered(Normals { source, totals_mm, rain_days: all(rain_days) }));
        }
    };
    let whole = move || months.with(|months| all(months.totals_mm).is_some());
    let fields = (0..12).flat_map(|month| [total_of(months, month, desk), rain_days_of(months, month, desk)]);
    vec![
        worded("P", words::sketch::GENERATED).class("small").into(),
        worded("P", words::rain::RAIN_DAYS_MAY_LACK).class("small").into(),
        text_field(said!("Where they come from", "De dónde vienen"), source_text, move |text| {
            months.update(|months| months.source = Some(text))
        }),
        element("DIV").class("months").children(fields).into(),
        element("P")
            .class("small")
            .live_text(move || months.with(|months| words::rain::months_lack(&months.totals_mm)))
            .into(),
        worded("BUTTON", phrase!("Keep these means", "Guardar estos promedios"))
            .attribute("type", "button")
            .disabled(move || !whole())
            .on("click", keep)
            .into(),
    ]
}

fn total_of(months: Held<Means>, month: usize, desk: Desk) -> AnyView {
    let text = move || {
        let value = months.with(|months| months.totals_mm[month]);
        desk.model.with(|model| value.map(|mm| shown::entered(mm, Kind::Depth, &model.units)).unwrap_or_default())
    };
    QuantityField {
        label: words::months()[month].to_owned(),
        hint: None,
        text: Box::new(text),
        kind: Kind::Depth,
        range: MONTHLY,
        on_entered: Box::new(move |mm| months.update(|months| months.totals_mm[month] = Some(mm))),
    }
    .taken(true, desk)
}

fn rain_days_of(months: Held<Means>, month: usize, desk: Desk) -> AnyView {
    let text = move || {
        let value = months.with(|months| months.rain_days[month]);
        value.map(|number| shown::significant(number, 3)).unwrap_or_default()
    };
    QuantityField {
        label: say!("{month}, rain days", "{month}, días de lluvia", month = words::months()[month]),
        hint: None,
        text: Box::new(text),
        kind: Kind::Count,
        range: RAIN_DAYS,
        on_entered: Box::new(move |number| months.update(|months| months.rain_days[month] = Some(number))),
    }
    .taken(true, desk)
}

/// Leads to the rain where the open site has none.
pub(super) fn wanted(desk: Desk) -> AnyView {
    let lacks = derived(move || desk.case.with(|case| case.site.as_ref().is_some_and(|kept| kept.rain.is_none())));
    let lead =
        move || desk.button(crate::words::ahead::OPEN_RAIN, Event::PlaceOpened(Place::Rain)).class("main").into();
    live(move || if lacks.get() { lead() } else { nothing() })
}

/// The unit of a file that was read, to be chosen otherwise.
pub(super) fn counts_in((units, unit): UnitChoice, desk: Desk) -> Choose {
    let chosen = units.iter().position(|(other, _)| *other == unit).unwrap_or(0);
    let words: Vec<String> = units.iter().map(|(_, words)| (*words).to_owned()).collect();
    let pick = move |at: usize| {
        if let Some((unit, _)) = units.get(at) {
            desk.send.run(Event::RainUnitChosen(*unit));
        }
    };
    Choose {
        label: phrase!("The file counts in", "El archivo está en").to_owned(),
        hint: None,
        options: Box::new(move || (words.clone(), chosen)),
        on_chosen: Box::new(pick),
    }
}

/// Rain that was read, with its report, before anything is kept.
fn report(waiting: WaitingView, desk: Desk) -> AnyView {
    let WaitingView { source, summary, mean_year, doubts, notes, units, unit } = waiting;
    let choose = counts_in((units, unit), desk);
    let clean = (doubts.is_empty() && notes.is_empty())
        .then(|| worded("P", phrase!("Nothing odd was found.", "No se encontró nada raro.")).into());
    let buttons = element("DIV")
        .class("row")
        .child(desk.button(phrase!("Keep this record", "Guardar este registro"), Event::RainKept).class("main"))
        .child(desk.button(phrase!("Discard it", "Descartarlo"), Event::RainDiscarded));
    element("DIV")
        .class("report")
        .attribute("role", "group")
        .attribute("tabindex", "-1")
        .attribute("aria-label", source.clone())
        .child(worded("H2", source))
        .child(worded("P", format!("{summary} {mean_year}")))
        .children(clean)
        .child(list("findings", doubts))
        .child(list("notes", notes))
        .child(choose)
        .child(buttons)
        .child(worded("P", words::rain::NOT_KEPT_YET).class("small"))
        .into()
}

/// The rain that the site has.
fn kept_rain(kept: KeptRainView, desk: Desk) -> AnyView {
    let KeptRainView {
        kind,
        source,
        summary,
        caution,
        doubts,
        charts,
        dry_spells,
        treatments,
        generated: years,
        factors,
    } = kept;
    let changing = Held::new(false);
    let mut views: Vec<AnyView> =
        vec![worded("P", format!("{kind}: {source}")).class("lead").into(), worded("P", summary).into()];
    views.extend(caution.map(|caution| worded("P", caution).class("caution").into()));
    views.push(list("findings", doubts).into());
    if !treatments.is_empty() {
        let chosen = treatments.iter().position(|(_, _, holds)| *holds).unwrap_or(0);
        let words: Vec<String> = treatments.iter().map(|(_, words, _)| words.clone()).collect();
        let pick = move |at: usize| {
            if let Some((treatment, _, _)) = treatments.get(at) {
                desk.send.run(Event::MissingDaysChosen(*treatment));
            }
        };
        let choose = Choose {
            label: words::rain::MISSING_DAYS.to_owned(),
            hint: None,
            options: Box::new(move || (words.clone(), chosen)),
            on_chosen: Box::new(pick),
        };
        views.push(choose.into());
    }
    views.push(figure::pair(charts, desk));
    if !dry_spells.is_empty() {
        let spell = |(days, when): (String, String)| {
            element("LI").child(worded("STRONG", days)).text(format!(" {when}")).into()
        };
        views.push(worded("H2", phrase!("Longest dry spells", "Las rachas sin lluvia más largas")).into());
        views.push(worded("P", words::rain::DRY_SPELL_IS).class("small").into());
        views.push(element("OL").class("spells").children(dry_spells.into_iter().map(spell)).into());
    }
    views.push(super::next::trial_here(desk));
    views.push(generated::generated(years, desk));
    views.push(generated::future(factors, desk));
    let change = worded("BUTTON", phrase!("Give other rain", "Cambiar el registro de lluvia"))
        .attribute("type", "button")
        .live_attribute("aria-expanded", move || Some(changing.get().to_string()))
        .on("click", move |_| changing.update(|changing| *changing = !*changing));
    let remove = desk.button(phrase!("Remove this rain", "Quitar esta lluvia"), Event::RainRemoved).class("away");
    views.push(element("DIV").class("row").child(change).child(remove).into());
    views.push(live(move || if changing.get() { sources(desk) } else { nothing() }));
    views.into_any()
}
