//! A house from five facts.

use leptos::prelude::*;

use super::choose::Choose;
use super::desk;
use super::field::{QuantityField, TextField};
use crate::app::event::Event;
use crate::app::sketch::Sketch;
use crate::quantity::{Area, Count, Flow, Kind, Quantity, Range, Volume, shown};
use crate::site::new_part::USUAL_PER_HEAD;
use crate::site::roof::Material;
use crate::words;

const ROOF: Range = Range::new(1.0, 100_000.0);
const PEOPLE: Range = Range::new(0.0, 10_000.0);
const PER_HEAD: Range = Range::new(0.0, 10_000.0);

/// The sketch.
#[component]
pub fn SketchForm() -> impl IntoView {
    let desk = desk();
    let others = desk.model.with_untracked(|model| {
        let with_rain = model.sites.iter().filter(|kept| kept.rain.is_some());
        with_rain.map(|kept| (kept.id, kept.site.name.clone())).collect::<Vec<_>>()
    });
    let sketch = RwSignal::new(Sketch {
        name: "My house".to_owned(),
        roof: Area::square_metres(150.0),
        material: Material::Metal,
        people: Count::number(2.0),
        per_head: USUAL_PER_HEAD,
        tank: Volume::litres(20_000.0),
        rain_of: None,
    });
    let units = Memo::new(move |_| desk.model.with(|model| model.units.clone()));
    let text = move |read: fn(&Sketch) -> (f64, Kind)| {
        Signal::derive(move || {
            let (si, kind) = sketch.with(read);
            units.with(|units| shown::entered(si, kind, units))
        })
    };
    let rains: Vec<String> = std::iter::once("None yet: give it next".to_owned())
        .chain(others.iter().map(|(_, name)| format!("The same as {name}")))
        .collect();
    let others = StoredValue::new(others);
    let has_others = rains.len() > 1;
    let materials = Material::ALL.map(|material| words::parts::material_name(material).to_owned()).to_vec();
    let chosen = Signal::derive(move || {
        sketch.with(|sketch| Material::ALL.iter().position(|material| *material == sketch.material).unwrap_or(0))
    });
    view! {
        <section class="sketch">
            <h1>"Sketch a house"</h1>
            <p>"Type values with or without a unit: 150 m2, 1,600 sq ft, 5000 gal. Everything can be refined later."</p>
            <form
                class="fields"
                on:submit=move |event| {
                    event.prevent_default();
                    desk.send.run(Event::SketchDrawn(sketch.get_untracked()));
                }
            >
                <TextField
                    label="Name"
                    text=Signal::derive(move || sketch.with(|sketch| sketch.name.clone()))
                    on_entered=move |name| sketch.update(|sketch| sketch.name = name)
                />
                <QuantityField
                    label="Roof area, seen from above".to_owned()
                    hint=Some("Length × width, eaves included; slope doesn't count.")
                    text=text(|sketch| (sketch.roof.si(), Kind::Area))
                    kind=Kind::Area
                    range=ROOF
                    units
                    on_entered=move |si| sketch.update(|sketch| sketch.roof = Area::square_metres(si))
                />
                <Choose
                    label="Roofing".to_owned()
                    options=materials
                    chosen
                    on_chosen=move |at| {
                        if let Some(material) = Material::ALL.get(at) {
                            sketch.update(|sketch| sketch.material = *material);
                        }
                    }
                />
                <QuantityField
                    label="People".to_owned()
                    text=text(|sketch| (sketch.people.si(), Kind::Count))
                    kind=Kind::Count
                    range=PEOPLE
                    units
                    on_entered=move |si| sketch.update(|sketch| sketch.people = Count::number(si))
                />
                <QuantityField
                    label="Water for each, a day".to_owned()
                    hint=Some("50 L (13 gal) meets most basic needs (WHO).")
                    text=text(|sketch| (sketch.per_head.si(), Kind::Flow))
                    kind=Kind::Flow
                    range=PER_HEAD
                    units
                    on_entered=move |si| sketch.update(|sketch| sketch.per_head = Flow::litres_a_day(si))
                />
                <QuantityField
                    label="Tank".to_owned()
                    text=text(|sketch| (sketch.tank.si(), Kind::Volume))
                    kind=Kind::Volume
                    range=crate::site::edit::CAPACITY
                    units
                    on_entered=move |si| sketch.update(|sketch| sketch.tank = Volume::litres(si))
                />
                {has_others.then(|| view! {
                    <Choose
                        label="Rain".to_owned()
                        options=rains
                        chosen=0usize
                        on_chosen=move |at| {
                            let id = at.checked_sub(1).and_then(|at| others.with_value(|others| others.get(at).map(|(id, _)| *id)));
                            sketch.update(|sketch| sketch.rain_of = id);
                        }
                    />
                })}
                <div class="row">
                    <button type="submit" class="main">"Draw it"</button>
                    <button type="button" on:click=move |_| desk.send.run(Event::SketchLeft)>"Leave"</button>
                </div>
            </form>
            <p class="small caution">{words::cautions::NOT_DRINKING_WATER} " " {words::cautions::WHO_DECIDES}</p>
        </section>
    }
}
