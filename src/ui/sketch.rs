//! A house from five facts.

use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, live, nothing, worded};
use super::field::{QuantityField, text_field};
use super::kept::unit_sets;
use super::{Desk, who_decides};
use crate::app::event::Event;
use crate::app::model::SiteId;
use crate::app::sketch::Sketch;
use crate::app::view::kept;
use crate::quantity::{Area, Count, Flow, Kind, Quantity, Range, Volume, shown};
use crate::site::new_part::USUAL_PER_HEAD;
use crate::site::roof::Material;
use crate::words;

const ROOF: Range = Range::new(1.0, 100_000.0);
const PEOPLE: Range = Range::new(0.0, 10_000.0);
const PER_HEAD: Range = Range::new(0.0, 10_000.0);

/// One of the sketch's quantities.
struct Fact {
    label: &'static str,
    hint: Option<&'static str>,
    kind: Kind,
    range: Range,
    read: fn(&Sketch) -> f64,
    write: fn(&mut Sketch, f64),
}

const ROOF_AREA: Fact = Fact {
    label: "Roof area, seen from above",
    hint: Some("Length × width, eaves included; slope doesn't count."),
    kind: Kind::Area,
    range: ROOF,
    read: |sketch| sketch.roof.si(),
    write: |sketch, si| sketch.roof = Area::square_metres(si),
};
const HEADS: Fact = Fact {
    label: "People",
    hint: None,
    kind: Kind::Count,
    range: PEOPLE,
    read: |sketch| sketch.people.si(),
    write: |sketch, si| sketch.people = Count::number(si),
};
const WATER: Fact = Fact {
    label: "Water for each, a day",
    hint: Some("50 L (13 gal) meets most basic needs (WHO)."),
    kind: Kind::Flow,
    range: PER_HEAD,
    read: |sketch| sketch.per_head.si(),
    write: |sketch, si| sketch.per_head = Flow::litres_a_day(si),
};
const TANK: Fact = Fact {
    label: "Tank",
    hint: None,
    kind: Kind::Volume,
    range: crate::site::edit::CAPACITY,
    read: |sketch| sketch.tank.si(),
    write: |sketch, si| sketch.tank = Volume::litres(si),
};

/// The sketch.
pub(crate) fn sketch(desk: Desk) -> AnyView {
    let sketch = RwSignal::new(Sketch {
        name: desk.model.with_untracked(kept::free_name),
        roof: Area::square_metres(150.0),
        material: Material::Metal,
        people: Count::number(2.0),
        per_head: USUAL_PER_HEAD,
        tank: Volume::litres(20_000.0),
        rain_of: None,
    });
    let name = text_field(
        "Name",
        move || sketch.with(|sketch| sketch.name.clone()),
        move |name| sketch.update(|sketch| sketch.name = name),
    );
    let drawn = move |event: web_sys::Event| {
        event.prevent_default();
        desk.send.run(Event::SketchDrawn(sketch.get_untracked()));
    };
    let buttons = element("DIV")
        .class("row")
        .child(worded("BUTTON", "Draw it").attribute("type", "submit").class("main"))
        .child(desk.button("Leave", Event::SketchLeft));
    let form = element("FORM")
        .class("fields")
        .on("submit", drawn)
        .child(name)
        .child(fact(ROOF_AREA, sketch, desk))
        .child(roofing(sketch))
        .children([HEADS, WATER, TANK].map(|one| fact(one, sketch, desk)))
        .child(rain(sketch, desk))
        .child(buttons);
    element("SECTION")
        .class("sketch")
        .child(worded("H1", "Sketch a house"))
        .child(worded(
            "P",
            "Type values with or without a unit: 150 m2, 1,600 sq ft, 5000 gal. Everything can be refined later.",
        ))
        .child(live(move || desk.model.with(|model| unit_sets(&kept::unit_sets(&model.units), desk))))
        .child(form)
        .child(who_decides())
        .into()
}

fn fact(fact: Fact, sketch: RwSignal<Sketch>, desk: Desk) -> AnyView {
    let Fact { label, hint, kind, range, read, write } = fact;
    let text = move || {
        let si = sketch.with(read);
        desk.model.with(|model| shown::entered(si, kind, &model.units))
    };
    QuantityField {
        label: label.to_owned(),
        hint,
        text: Box::new(text),
        kind,
        range,
        on_entered: Box::new(move |si| sketch.update(|sketch| write(sketch, si))),
    }
    .view(desk)
}

fn roofing(sketch: RwSignal<Sketch>) -> Choose {
    let options = move || {
        let now = sketch.with(|sketch| sketch.material);
        let materials = Material::ALL.map(|material| words::parts::material_name(material).to_owned());
        (materials.to_vec(), Material::ALL.iter().position(|material| *material == now).unwrap_or(0))
    };
    let pick = move |at: usize| {
        if let Some(material) = Material::ALL.get(at) {
            sketch.update(|sketch| sketch.material = *material);
        }
    };
    Choose { label: "Roofing".to_owned(), hint: None, options: Box::new(options), on_chosen: Box::new(pick) }
}

/// The rain of another site, if one has any.
fn rain(sketch: RwSignal<Sketch>, desk: Desk) -> AnyView {
    let others: Vec<(SiteId, String)> = desk.model.with_untracked(|model| {
        let with_rain = model.sites.iter().filter(|kept| kept.rain.is_some());
        with_rain.map(|kept| (kept.id, kept.site.name.clone())).collect()
    });
    if others.is_empty() {
        return nothing();
    }
    let mut rains = vec!["None yet: give it next".to_owned()];
    rains.extend(others.iter().map(|(_, name)| format!("The same as {name}")));
    let pick = move |at: usize| {
        let id = at.checked_sub(1).and_then(|at| others.get(at).map(|(id, _)| *id));
        sketch.update(|sketch| sketch.rain_of = id);
    };
    Choose {
        label: "Rain".to_owned(),
        hint: None,
        options: Box::new(move || (rains.clone(), 0)),
        on_chosen: Box::new(pick),
    }
    .into()
}
