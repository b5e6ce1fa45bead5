//! A house from a few facts, with its answer at once.

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, focus_on, key_of, list, live, nothing, worded};
use super::field::{QuantityField, text_field};
use super::file::FileButton;
use super::follow::{Derived, Held, derived, renewed, whenever};
use super::kept::sets;
use super::{Desk, who_decides};
use crate::app::event::Event;
use crate::app::model::Model;
use crate::app::sketch::{Sketch, SketchRain};
use crate::app::view::kept;
use crate::app::view::sketch::{self as view, FileView, Size, SizeFound, SizeSought, SketchDays, SketchView};
use crate::language::Phrase;
use crate::quantity::{Area, Count, Flow, Kind, Quantity, Range, Volume, decimal, shown};
use crate::site::rain::YearTotal;
use crate::site::roof::Material;
use crate::words::{self, sketch as say};

const SIDE: Range = Range::new(0.5, 1_000.0);
const ROOF: Range = Range::new(1.0, 100_000.0);
const PEOPLE: Range = Range::new(1.0, 10_000.0);
const PER_HEAD: Range = Range::new(0.0, 10_000.0);

/// One of the sketch's quantities.
struct Fact {
    label: Phrase,
    hint: Option<Phrase>,
    kind: Kind,
    range: Range,
    /// From where to where it can be dragged, in doublings of the kept unit; or one by one for a count.
    drag: Option<(f64, f64)>,
    read: fn(&Sketch) -> f64,
    write: fn(&mut Sketch, f64),
}

/// Length and width, 3 to 64 m.
const SIDES: Option<(f64, f64)> = Some((1.6, 6.0));
const LENGTH: Fact = Fact {
    label: phrase!("Roof length, seen from above", "Largo del techo, visto desde arriba"),
    hint: None,
    kind: Kind::Length,
    range: SIDE,
    drag: SIDES,
    read: |sketch| sketch.length.si(),
    write: |sketch, si| sketch.set_sides(si, sketch.width_m()),
};
const WIDTH: Fact = Fact {
    label: phrase!("Roof width, seen from above", "Ancho del techo, visto desde arriba"),
    hint: None,
    kind: Kind::Length,
    range: SIDE,
    drag: SIDES,
    read: Sketch::width_m,
    write: |sketch, si| sketch.set_sides(sketch.length.si(), si),
};
const ROOF_AREA: Fact = Fact {
    label: phrase!("Roof area, if you know it", "Área del techo, si la sabes"),
    hint: Some(phrase!(
        "Length × width, eaves included; slope doesn't count. Roofs add up: 14 × 9 + 4 × 6.",
        "Largo × ancho, con los aleros; la pendiente no cuenta. Los techos se suman: 14 × 9 + 4 × 6.",
    )),
    kind: Kind::Area,
    range: ROOF,
    drag: None,
    read: |sketch| sketch.roof.si(),
    write: |sketch, si| sketch.roof = Area::square_metres(si),
};
const HEADS: Fact = Fact {
    label: phrase!("People", "Personas"),
    hint: None,
    kind: Kind::Count,
    range: PEOPLE,
    drag: Some((1.0, 12.0)),
    read: |sketch| sketch.people.si(),
    write: |sketch, si| sketch.people = Count::number(si),
};
/// 8 to 512 L a day.
const WATER: Fact = Fact {
    label: phrase!("Water for each, a day", "Agua por persona, al día"),
    hint: Some(phrase!(
        "50 L (13 gal) meets most basic needs (WHO).",
        "50 L (13 gal) cubren la mayoría de las necesidades básicas (OMS).",
    )),
    kind: Kind::Flow,
    range: PER_HEAD,
    drag: Some((3.0, 9.0)),
    read: |sketch| sketch.per_head.si(),
    write: |sketch, si| sketch.per_head = Flow::litres_a_day(si),
};
const OTHER: Fact = Fact {
    label: phrase!("Animals and garden, a day", "Animales y huerto, al día"),
    hint: Some(phrase!(
        "0 if there are none. It counts like the house: a day without it is a dry day.",
        "0 si no hay. Cuenta como la casa: un día sin ella es un día de escasez.",
    )),
    kind: Kind::Flow,
    range: PER_HEAD,
    drag: None,
    read: |sketch| sketch.other.si(),
    write: |sketch, si| sketch.other = Flow::litres_a_day(si),
};
/// 128 to 262,144 L.
const TANK: Fact = Fact {
    label: phrase!("Tank", "Tanque"),
    hint: None,
    kind: Kind::Volume,
    range: crate::site::edit::CAPACITY,
    drag: Some((7.0, 18.0)),
    read: |sketch| sketch.tank.si(),
    write: |sketch, si| sketch.tank = Volume::litres(si),
};

/// The sketch while it is drawn: untouched, it follows the person's units.
#[derive(Clone, Copy)]
struct Draft {
    touched: Held<Option<Sketch>>,
    sketch: Derived<Sketch>,
}

impl Draft {
    fn new(desk: Desk) -> Self {
        let touched = desk.sketch;
        let sketch = derived(move || {
            touched.get().unwrap_or_else(|| desk.model.with(|model| Sketch::first(kept::free_name(model), model)))
        });
        Self { touched, sketch }
    }

    fn change(self, change: impl FnOnce(&mut Sketch)) {
        let mut sketch = self.sketch.get_untracked();
        change(&mut sketch);
        self.touched.set(Some(sketch));
    }
}

/// The sketch.
pub(crate) fn sketch(desk: Desk) -> AnyView {
    let draft = Draft::new(desk);
    let name = text_field(
        said!("Name", "Nombre"),
        move || draft.sketch.with(|sketch| sketch.name.clone()),
        move |name| draft.change(|sketch| sketch.name = name),
    );
    let drawn = move |event: web_sys::Event| {
        event.prevent_default();
        // What is refused is not in the sketch: whoever typed it should know before it is kept.
        const REFUSED: &str = "form [aria-invalid=true]";
        if matches!(document().query_selector(REFUSED), Ok(Some(_))) {
            return focus_on(REFUSED);
        }
        desk.send.run(Event::SketchDrawn(Sketch { begun: Some((desk.moment)()), ..draft.sketch.get_untracked() }));
        if !desk.model.with_untracked(|model| model.sketching) {
            desk.sketch.set(None);
        }
    };
    let buttons = element("DIV")
        .class("row")
        .child(
            worded("BUTTON", phrase!("Keep this house", "Guardar esta casa")).attribute("type", "submit").class("main"),
        )
        .child(desk.button(phrase!("Leave", "Salir"), Event::SketchLeft));
    let (sought, [answer, notes]) = answer(draft, desk);
    let take = move |_: web_sys::Event| {
        if let Some(litres) = sought.with_untracked(|found| found.as_ref()?.tank_l) {
            draft.change(|sketch| sketch.tank = Volume::litres(litres));
        }
    };
    let take = worded("BUTTON", say::TAKE_SIZE)
        .attribute("type", "button")
        .live_attribute("disabled", move || {
            sought.with(|found| found.as_ref().is_none_or(|found| found.tank_l.is_none())).then(String::new)
        })
        .on("click", take);
    let form = element("FORM")
        .class("fields")
        .on("submit", drawn)
        .children([LENGTH, WIDTH, ROOF_AREA].map(|one| fact(one, draft, desk)))
        .child(roofing(draft))
        .children([HEADS, WATER, OTHER].map(|one| fact(one, draft, desk)))
        .child(element("DIV").child(fact(TANK, draft, desk)).child(take))
        .child(rain(draft, desk))
        .child(name)
        .child(buttons);
    element("SECTION")
        .class("sketch")
        .child(worded("H1", say::TITLE))
        .child(answer)
        .child(worded("P", say::LEAD).class("small"))
        .child(sets(desk))
        .child(form)
        .child(notes)
        .child(who_decides())
        .into()
}

/// The least tank that was found, and the answer: in sight while the facts change; how sure it is stands below.
fn answer(draft: Draft, desk: Desk) -> (Derived<Option<SizeFound>>, [AnyView; 2]) {
    let rain = derived(move || draft.sketch.with(|sketch| sketch.rain));
    // Made once for each rain, not for each move of the finger.
    let days = renewed(move || Arc::new(desk.model.with(|model| view::days(rain.get(), model))));
    let shown: Derived<SketchView> =
        derived(move || draft.sketch.with(|sketch| days.with(|days| view::answered(sketch, days))));
    let sought = size_sought(draft, days, desk);
    let size = move || sought.get().map_or_else(|| say::SIZE_SOUGHT.to_owned(), |found| found.told);
    // Spoken once the finger or the typing rests, not with every digit.
    let spoken = move || {
        let found = sought.get();
        found
            .map(|found| [shown.with_untracked(|view| view.headline.clone()), found.told].join(" "))
            .unwrap_or_default()
    };
    let answer = element("DIV")
        .class("answer")
        .child(element("P").class("unseen").attribute("role", "status").live_text(spoken))
        .child(element("P").class("headline").live_text(move || shown.with(|view| view.headline.clone())))
        .child(element("P").class("small").live_text(move || shown.with(|view| view.chance.clone())))
        .child(element("P").class("sized").live_text(size));
    (sought, [answer.into(), live(move || list("notes small", shown.with(|view| view.notes.clone())).into())])
}

/// The least tank that does it, sought in slices of a few ms whenever the finger rests; none while it is sought.
fn size_sought(draft: Draft, days: Derived<Arc<SketchDays>>, desk: Desk) -> Derived<Option<SizeFound>> {
    /// So long no fact changes before the search begins.
    const RESTS: Duration = Duration::from_millis(150);
    let of_any_tank = derived(move || draft.sketch.with(|sketch| sketch.with_tank(view::ANY_TANK)));
    // None while it is sought.
    let size: Held<Option<Size>> = Held::new(None);
    let turn = StoredValue::new(0_u32);
    let begin = move |mine: u32| {
        // The page may have gone on to another place meanwhile.
        let is_wanted = move || turn.try_get_value() == Some(mine);
        if is_wanted() {
            match days.with_untracked(|days| of_any_tank.with_untracked(|sketch| SizeSought::new(sketch, days))) {
                Some(search) => slice(search, is_wanted, move |found| size.set(Some(found))),
                None => size.set(Some(Size::Unasked)),
            }
        }
    };
    whenever(move |_| {
        of_any_tank.track();
        size.set(days.with(|days| (!days.is_rain()).then_some(Size::Unasked)));
        turn.update_value(|turn| *turn += 1);
        let mine = turn.get_value();
        set_timeout(move || begin(mine), RESTS);
    });
    derived(move || {
        let size = size.get()?;
        Some(desk.model.with(|model| view::size_found(size, &model.units)))
    })
}

/// Searches for a few ms, and goes on once the page is free while that is wanted; then tells what was found.
fn slice(mut search: SizeSought, is_wanted: impl Fn() -> bool + 'static, tell: impl FnOnce(Size) + 'static) {
    if search.step() {
        let go_on = move || {
            if is_wanted() {
                slice(search, is_wanted, tell);
            }
        };
        set_timeout(go_on, Duration::ZERO);
    } else {
        tell(search.found());
    }
}

/// How many doublings make a number of 1: the place on a slider.
pub(super) fn doublings(number: f64) -> f64 {
    libm::log(number) / std::f64::consts::LN_2
}

/// By this a value of two digits is multiplied to come to the next.
const NEXT: f64 = 1.06;

fn fact(fact: Fact, draft: Draft, desk: Desk) -> AnyView {
    let Fact { label, hint, kind, range, drag, read, write } = fact;
    let text = move || {
        let si = draft.sketch.with(read);
        desk.model.with(|model| shown::entered(si, kind, &model.units))
    };
    let field = QuantityField {
        label: label.to_owned(),
        hint: hint.map(|hint| hint.text()),
        text: Box::new(text),
        kind,
        range,
        on_entered: Box::new(move |si| draft.change(|sketch| write(sketch, si))),
    }
    .taken(true, desk);
    let Some((least, most)) = drag else { return field };
    let one_by_one = kind == Kind::Count;
    let dragged = move |event| {
        if let Some(place) = decimal::read(&event_target_value(&event)) {
            let si = if one_by_one { place } else { libm::pow(2.0, place) };
            let si = desk.model.with_untracked(|model| shown::in_two_digits(si, kind, &model.units));
            draft.change(|sketch| write(sketch, si));
        }
    };
    // By keys it goes from one round value to the next.
    let by_key = move |event: web_sys::Event| {
        let key = key_of(&event);
        let factor = match key.as_str() {
            "ArrowRight" | "ArrowUp" => NEXT,
            "ArrowLeft" | "ArrowDown" => 1.0 / NEXT,
            _ => return,
        };
        if !one_by_one {
            event.prevent_default();
            let si = (draft.sketch.with_untracked(read) * factor).clamp(libm::pow(2.0, least), libm::pow(2.0, most));
            let si = desk.model.with_untracked(|model| shown::in_two_digits(si, kind, &model.units));
            draft.change(|sketch| write(sketch, si));
        }
    };
    let place = move || {
        let si = draft.sketch.with(read);
        (if one_by_one { si } else { doublings(si) }).to_string()
    };
    let slider = element("INPUT")
        .attribute("type", "range")
        .attribute("min", least.to_string())
        .attribute("max", most.to_string())
        .attribute("step", if one_by_one { "1" } else { "0.02" })
        .attribute("aria-label", say!("Drag: {label}", "Arrastrar: {label}", label))
        .live_attribute("aria-valuetext", move || Some(text()))
        .value(place)
        .on("input", dragged)
        .on("keydown", by_key);
    element("DIV").class("fact").child(field).child(slider).into()
}

fn roofing(draft: Draft) -> Choose {
    let options = move || {
        let now = draft.sketch.with(|sketch| sketch.material);
        let materials = Material::ALL.map(|material| words::parts::material_name(material).to_owned());
        (materials.to_vec(), Material::ALL.iter().position(|material| *material == now).unwrap_or(0))
    };
    let pick = move |at: usize| {
        if let Some(material) = Material::ALL.get(at) {
            draft.change(|sketch| sketch.material = *material);
        }
    };
    Choose {
        label: phrase!("Roofing", "Material del techo").to_owned(),
        hint: None,
        options: Box::new(options),
        on_chosen: Box::new(pick),
    }
}

/// The ways to give the rain.
#[derive(Clone, Copy, PartialEq)]
enum Way {
    Site(SketchRain),
    Twelve,
    Year,
    Record,
    None,
}

/// Rain: that of a site on this phone, twelve means, or a record from a file.
fn rain(draft: Draft, desk: Desk) -> AnyView {
    let mut ways: Vec<(Way, String)> = desk.model.with_untracked(|model| {
        let with_rain = model.sites.iter().filter(|kept| kept.rain.is_some());
        with_rain.map(|kept| (Way::Site(SketchRain::Of(kept.id)), say::same_as(&kept.site.name))).collect()
    });
    let first = draft.sketch.with_untracked(|sketch| match sketch.rain {
        SketchRain::Of(_) => Way::Site(sketch.rain),
        SketchRain::Means(_) => Way::Twelve,
        SketchRain::Year(_) => Way::Year,
        SketchRain::Read => Way::Record,
        SketchRain::None => Way::None,
    });
    if first == Way::None {
        ways.push((Way::None, say::NO_RAIN.to_owned()));
    }
    ways.push((Way::Twelve, say::TWELVE.to_owned()));
    ways.push((Way::Year, say::YEAR.to_owned()));
    ways.push((Way::Record, say::RECORD.to_owned()));
    let way = Held::new(first);
    // What was typed for a way waits there while another is looked at.
    let typed = Held::new([SketchRain::None; 2]);
    let names: Vec<String> = ways.iter().map(|(_, name)| name.clone()).collect();
    let places: Vec<Way> = ways.into_iter().map(|(way, _)| way).collect();
    let options = {
        let places = places.clone();
        move || (names.clone(), places.iter().position(|other| *other == way.get()).unwrap_or(0))
    };
    let pick = move |at: usize| {
        let Some(chosen) = places.get(at) else { return };
        let left = draft.sketch.with_untracked(|sketch| sketch.rain);
        typed.update(|[twelve, year]| match left {
            SketchRain::Means(_) => *twelve = left,
            SketchRain::Year(_) => *year = left,
            SketchRain::None | SketchRain::Of(_) | SketchRain::Read => {}
        });
        let [twelve, year] = typed.get_untracked();
        let rain = match chosen {
            Way::Site(rain) => *rain,
            Way::Record => SketchRain::Read,
            Way::Twelve => twelve,
            Way::Year => year,
            Way::None => SketchRain::None,
        };
        draft.change(|sketch| sketch.rain = rain);
        way.set(*chosen);
    };
    let choose =
        Choose { label: say::RAIN.to_owned(), hint: None, options: Box::new(options), on_chosen: Box::new(pick) };
    let further = live(move || match way.get() {
        Way::Twelve => twelve(draft, desk),
        Way::Year => year(draft, desk),
        Way::Record => record(desk),
        Way::Site(_) | Way::None => nothing(),
    });
    element("DIV").class("rain-of-sketch").child(choose).child(further).into()
}

/// Twelve means in one field, taken as they are typed.
fn twelve(draft: Draft, desk: Desk) -> AnyView {
    let text = Held::new(String::new());
    let units = derived(move || desk.model.with(|model| model.units.of(Kind::Depth).symbol));
    // What was read stays what it is in other units, and when the sketch is come back to.
    whenever(move |_| {
        units.track();
        if let SketchRain::Means(means_mm) = draft.sketch.with_untracked(|sketch| sketch.rain) {
            text.set(desk.model.with_untracked(|model| view::typed(&means_mm, &model.units)));
        }
    });
    let read = move || desk.model.with(|model| view::twelve(&text.get(), &model.units));
    let wrong = move || if text.with(String::is_empty) { String::new() } else { read().err().unwrap_or_default() };
    let typed = move |event| {
        text.set(event_target_value(&event));
        let rain = untrack(read).unwrap_or(SketchRain::None);
        draft.change(|sketch| sketch.rain = rain);
    };
    let field = element("TEXTAREA")
        .attribute("rows", "2")
        .attribute("autocomplete", "off")
        .live_attribute("aria-invalid", move || (!wrong().is_empty()).then(|| "true".to_owned()))
        .value(move || text.get())
        .on("input", typed);
    element("LABEL")
        .class("field")
        .child(element("SPAN").class("label").live_text(move || desk.model.with(|model| say::twelve(&model.units))))
        .child(field)
        .child(element("SPAN").class("remark").attribute("role", "status").live_text(wrong))
        .into()
}

/// A year's total, and from which month to which most of it falls: there is no answer before all three are said, for rain
/// without a dry season would be told of a tank a third or a quarter as large.
fn year(draft: Draft, desk: Desk) -> AnyView {
    /// What a year may have, in mm.
    const YEARLY: Range = Range::new(0.0, 20_000.0);
    let given = match draft.sketch.with_untracked(|sketch| sketch.rain) {
        SketchRain::Year(total) => Some(total),
        _ => None,
    };
    let total = Held::new(given.map(|total| total.mm));
    let months = [given.map(|total| total.first), given.map(|total| total.last)].map(Held::new);
    let give = move || {
        let [first, last] = months.map(|month| month.get_untracked());
        let year = (|| Some(YearTotal { mm: total.get_untracked()?, first: first?, last: last? }))();
        draft.change(|sketch| sketch.rain = year.map_or(SketchRain::None, SketchRain::Year));
    };
    let typed = move |mm| {
        total.set(Some(mm));
        give();
    };
    let text = move || {
        let units = |model: &Model| total.get().map(|mm| shown::entered(mm, Kind::Depth, &model.units));
        desk.model.with(units).unwrap_or_default()
    };
    let field = QuantityField {
        label: say::YEAR_TOTAL.to_owned(),
        hint: None,
        text: Box::new(text),
        kind: Kind::Depth,
        range: YEARLY,
        on_entered: Box::new(typed),
    };
    let choose = |at: usize| {
        let (month, label) = (months[at], &say::MOST_FALLS[at]);
        let pick = move |picked: usize| {
            month.set(picked.checked_sub(1));
            give();
        };
        let options = move || {
            let names = std::iter::once(say::NO_MONTH.text()).chain(words::months());
            (names.map(str::to_owned).collect(), month.get().map_or(0, |month| month + 1))
        };
        Choose { label: label.to_owned(), hint: None, options: Box::new(options), on_chosen: Box::new(pick) }
    };
    element("DIV")
        .class("record")
        .child(field.taken(true, desk))
        .child(element("DIV").class("row").child(choose(0)).child(choose(1)))
        .child(worded("P", say::ALL_MONTHS).class("small"))
        .into()
}

/// A record from a file, and what was found in it or is wrong with it.
fn record(desk: Desk) -> AnyView {
    let choose = FileButton {
        label: said!("Choose the file", "Elegir el archivo"),
        detail: "",
        accept: ".csv,.txt,.tsv,text/csv,text/plain",
        class: "file button",
        event: Event::RainRead,
    };
    let file = derived(move || desk.model.with(view::file));
    let found = live(move || {
        let FileView { found, units, refused } = file.get();
        // The notice at the top of the page is announced; this is for the eye that looks here.
        let refused = refused.map(|text| worded("P", text).class("caution").into());
        let counts_in = units.map(|choice| super::rain::counts_in(choice, desk).into());
        let views: Vec<AnyView> =
            [refused, Some(list("notes small", found).into()), counts_in].into_iter().flatten().collect();
        views.into_any()
    });
    element("DIV").class("record").child(choose.view(desk)).child(found).into()
}
