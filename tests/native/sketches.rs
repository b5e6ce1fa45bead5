//! A sketch as a person meets it: what it says of a house and of the tank that it wants, on every kind of rain.

use std::sync::Arc;

use chrono::{Datelike, NaiveDate};
use eavewater::app::effect::Effect;
use eavewater::app::event::Event;
use eavewater::app::model::{Model, Place};
use eavewater::app::sketch::{Sketch, SketchRain};
use eavewater::app::update::update;
use eavewater::app::view::{frame, rain as rain_view, sketch as sketch_view};
use eavewater::engine::question::answer;
use eavewater::engine::rain::picture::monthly_totals_mm;
use eavewater::engine::sizing::smallest::{Found, Sought};
use eavewater::engine::sizing::study::{Findings, Inquiry, Study};
use eavewater::quantity::{Area, Count, Customary, Flow, Kind, Units, Volume, shown};
use eavewater::site::feed::Feed;
use eavewater::site::household::{GeneratedYears, Site};
use eavewater::site::part::PartId;
use eavewater::site::rain::{Normals, Rain, YearTotal};
use eavewater::site::roof::{Outlet, RoofSection};
use eavewater::site::tank::Tank;
use eavewater::site::trunk::TrunkLine;
use eavewater::site::wanted::Wanted;
use eavewater::words;

use crate::workflows::{record, sketch, started, with_demo};

#[test]
fn a_sketch_can_share_the_rain_of_another_site() {
    let mut model = with_demo();
    let rain = model.site().unwrap().rain.clone();
    let demo = model.sites[0].id;
    update(&mut model, Event::SketchDrawn(Sketch { rain: SketchRain::Of(demo), ..sketch() }));
    assert_eq!(model.sites.len(), 2);
    assert!(model.site().unwrap().rain == rain);
    assert_eq!(model.place, Place::Sizing);
}

#[test]
fn a_sketch_tells_all_that_is_odd_about_its_record() {
    let mut model = started();
    let mut rows = String::from("date,rain_mm\n");
    for day in 0..120 {
        let date = NaiveDate::from_ymd_opt(2001, 1, 1).unwrap() + chrono::Days::new(day);
        let depth = [(30, "1500"), (40, "-999"), (50, "-3"), (60, "2000")].iter().find(|(odd, _)| *odd == day);
        rows.push_str(&format!("{date},{}\n", depth.map_or("12.5", |(_, text)| text)));
    }
    update(&mut model, Event::RainRead(rows.into_bytes(), "gauge".to_owned()));
    let record = &model.read_rain.as_ref().unwrap().import.record.depths_mm;
    assert_eq!([30, 40, 50, 60].map(|day| record[day]), [Some(1500.0), None, None, None]);
    let found = sketch_view::file(&model).found.join("\n");
    for told in ["31\u{a0}January 2001 (1,500\u{a0}mm)", "marked as not measured", "below zero", "1,825\u{a0}mm"] {
        assert!(found.contains(told), "{told}: {found}");
    }
}

#[test]
fn means_that_hardly_any_place_has_are_questioned_wherever_they_are_told() {
    let mut model = with_demo();
    let mm = [95.0, 80.0, 75.0, 60.0, 40.0, 20.0, 10.0, 15.0, 40.0, 70.0, 90.0, 100.0];
    for (factor, odd) in [(1.0, false), (25.4, true), (1.0 / 25.4, true)] {
        let totals_mm = mm.map(|mm: f64| mm * factor);
        let rain = SketchRain::Means(totals_mm);
        let told = sketch_view::answered(&Sketch { rain, ..sketch() }, &sketch_view::days(rain, &model)).headline;
        assert_eq!(told.contains("were they in another unit?"), odd, "{factor}: {told}");
        let normals = Normals { source: String::new(), totals_mm, rain_days: None };
        update(&mut model, Event::NormalsEntered(normals));
        let kept = model.site().unwrap();
        let seen = rain_view::rain(kept, &kept.site.reckoning, None, &model.units, 360.0).kept.unwrap();
        assert_eq!(seen.summary.contains("were they in another unit?"), odd, "{}", seen.summary);
        // Years drawn from means show their spread and dry spells, with nothing recorded beside them.
        let table = seen.generated.table.unwrap();
        assert!(table.columns.len() == 2 && table.rows.iter().all(|row| row.len() == 2), "{table:?}");
        assert!(table.rows.iter().any(|row| row[0].contains("spread") && row[1].contains('%')), "{table:?}");
    }
}

#[test]
fn a_sketch_says_what_reaches_the_tank_and_where_no_tank_would_do() {
    let model = with_demo();
    let rain = SketchRain::Of(model.sites[0].id);
    let days = sketch_view::days(rain, &model);
    let of = |roof_m2| sketch_view::answered(&Sketch { rain, roof: Area::square_metres(roof_m2), ..sketch() }, &days);
    let (small, large) = (of(10.0), of(200.0));
    assert!(small.headline.contains("No tank alone would be enough"), "{}", small.headline);
    assert!(!large.headline.contains("No tank alone would be enough"), "{}", large.headline);
    // Rain of a mean year on 200 m², a millimetre a litre on each: straight from the record.
    let Some(Rain::Record(record)) = model.sites[0].rain.as_deref() else { panic!("the demo has a record") };
    let measured: Vec<f64> = record.depths_mm.iter().flatten().copied().collect();
    let falls_l = 200.0 * measured.iter().sum::<f64>() / measured.len() as f64 * 365.25;
    let told = shown::figure(falls_l, Kind::Volume, &model.units);
    assert!(large.notes.iter().any(|note| note.starts_with(&format!("Of {told} that fall"))), "{:?}", large.notes);
}

#[test]
fn water_that_comes_to_another_tank_is_told_from_water_that_lacks() {
    let model = with_demo();
    let rain = model.sites[0].rain.clone().unwrap();
    let mut site = Sketch { roof: Area::square_metres(20.0), ..sketch() }.site();
    let headline = |site: &Site| words::sizing::headline(&answer(site, &rain).unwrap());
    assert!(headline(&site).contains("More roof or less use has to come first"), "{}", headline(&site));
    // A barn with ten times the roof, on a tank of its own.
    let system = &mut site.system;
    let [tank, feed, section, line] = [21, 22, 23, 24].map(PartId);
    let of_house = system.tanks[0].id;
    system.tanks.push(Tank { id: tank, ..system.tanks[0].clone() });
    system.feeds.push(Feed { id: feed, tank: Some(tank), ..system.feeds[0].clone() });
    let outlets = vec![Outlet { feed, ..system.sections[0].outlets[0].clone() }];
    let area = Area::square_metres(200.0);
    system.sections.push(RoofSection { id: section, area, outlets, ..system.sections[0].clone() });
    assert!(headline(&site).contains("Enough comes in all, but not where it is used"), "{}", headline(&site));
    let name = "Line".to_owned();
    site.system.trunk_lines.push(TrunkLine { id: line, name, ends: [Some(of_house), Some(tank)], open: true });
    assert!(!headline(&site).contains("comes"), "{}", headline(&site));
    site.system.trunk_lines[0].open = false;
    assert!(headline(&site).contains("An open valve"), "{}", headline(&site));
}

fn size_of(sketch: &Sketch, model: &Model) -> Option<sketch_view::SizeFound> {
    let mut search = sketch_view::SizeSought::new(sketch, &sketch_view::days(sketch.rain, model))?;
    while search.step() {}
    Some(sketch_view::size_found(search.found(), &model.units))
}

#[test]
fn a_years_total_asks_for_about_the_tank_that_its_twelve_means_ask_for() {
    let model = started();
    for place in ["hyderabad", "seattle", "cordoba", "brussels"] {
        let measured = Event::RainRead(record(place), place.to_owned());
        let mut reader = started();
        update(&mut reader, measured);
        let record = &reader.read_rain.as_ref().unwrap().import.record;
        let means = monthly_totals_mm(record).map(Option::unwrap);
        let mm: f64 = means.iter().sum();
        // What a neighbour says: the fewest months together that have eight tenths of it.
        let holds = |first: usize, wet: usize| (0..wet).map(|at| means[(first + at) % 12]).sum::<f64>();
        let wettest =
            |wet: usize| (0..12).max_by(|one, other| holds(*one, wet).total_cmp(&holds(*other, wet))).unwrap();
        let wet = (1..=12).find(|wet| holds(wettest(*wet), *wet) >= 0.8 * mm).unwrap();
        let (first, last) = (wettest(wet), (wettest(wet) + wet - 1) % 12);
        let tank_l = |rain: SketchRain| {
            let people = Count::number(1.0);
            size_of(&Sketch { rain, people, roof: Area::square_metres(240.0), ..sketch() }, &model)
                .and_then(|size| size.tank_l)
                .unwrap()
        };
        let [told, known] = [SketchRain::Year(YearTotal { mm, first, last }), SketchRain::Means(means)].map(tank_l);
        // Years that are drawn can be out by half or twice, the sketch says; a total alone may add no more than that.
        assert!((0.5..=2.0).contains(&(told / known)), "{place}, {wet} months from {first}: {told} L for {known} L");
        // Under a dry season, whoever names no months is told of a smaller tank.
        let even = tank_l(SketchRain::Year(YearTotal { mm, first: 0, last: 11 }));
        assert!(wet > 7 || even < told, "{place}: {even} L, {told} L");
    }
}

#[test]
fn a_sketch_says_the_size_that_does_it_whatever_tank_is_drawn() {
    let mut model = started();
    update(&mut model, Event::RainRead(record("hyderabad"), "hyderabad".to_owned()));
    let drawn = Sketch { rain: SketchRain::Read, roof: Area::square_metres(240.0), ..sketch() };
    let size = size_of(&drawn, &model).unwrap();
    let other = Sketch { tank: Volume::litres(500.0), name: "Other".to_owned(), ..drawn.clone() };
    assert_eq!(size_of(&other, &model).unwrap(), size);
    // The house with that tank, asked as any house is: it has what it wants under both orders, and not much less would do.
    let taken = Sketch { tank: Volume::litres(size.tank_l.unwrap()), ..drawn.clone() };
    let rain = taken.rain(&model).unwrap();
    let mut study = Study::new(Inquiry::Smallest, &Arc::new(taken.site()), &rain).unwrap();
    while study.step() {}
    let Findings::Smallest { house, found, .. } = study.findings() else { panic!("as asked") };
    assert!(house.iter().all(|tally| tally.meets(Wanted::default())), "{house:?}");
    let factor = |found: Found| if let Found::Enough { factor, .. } = found { factor } else { panic!("{found:?}") };
    let most = found[0].1.map(factor).into_iter().fold(0.0, f64::max);
    assert!((0.9..=1.003).contains(&most), "{most} of {size:?}");
    // Who keeps animals wants more; a roof that gathers less than is used wants no tank.
    let animals = Sketch { other: Flow::litres_a_day(40.0), ..drawn.clone() };
    assert!(size_of(&animals, &model).unwrap().tank_l > size.tank_l);
    let site = animals.site();
    assert_eq!(Sought::Uses.of(&site), 3.0 * 60.0 + 40.0);
    let none = size_of(&Sketch { roof: Area::square_metres(20.0), ..drawn.clone() }, &model).unwrap();
    assert_eq!((none.tank_l, none.told.contains("no tank does it")), (None, true));
    // Nor does any where nothing is used, or where the years together bring less than is used, however good the first were.
    assert_eq!(size_of(&Sketch { per_head: Flow::litres_a_day(0.0), ..drawn.clone() }, &model), None);
    let day = |day: u64| NaiveDate::from_ymd_opt(2001, 1, 1).unwrap() + chrono::Days::new(day);
    let mm = |date: NaiveDate| if date.year() == 2003 { 2.0 } else { 8.0 };
    let rows =
        (0..3 * 365).map(day).map(|date| format!("{date},{}\n", if date.day() % 5 == 0 { mm(date) } else { 0.0 }));
    update(&mut model, Event::RainRead(rows.collect::<String>().into_bytes(), "gauge".to_owned()));
    let house = drawn.site();
    let came = answer(&house, &drawn.rain(&model).unwrap()).unwrap();
    let a_day = |share: f64| Flow::litres_a_day(came.came_l() / came.series.dates.len() as f64 * share / 3.0);
    let of_use = |share| size_of(&Sketch { per_head: a_day(share), ..drawn.clone() }, &model).unwrap().tank_l;
    assert!(of_use(1.05).is_none() && of_use(0.9).is_some());
    // A small tank is sought as it will stand, low and with more dead storage: the one to take does it.
    let barrel = Sketch { people: Count::number(1.0), per_head: Flow::litres_a_day(1.0), ..drawn.clone() };
    let tank = size_of(&barrel, &model).unwrap().tank_l.unwrap();
    assert!(tank < 1_000.0, "{tank}");
    let taken = Sketch { tank: Volume::litres(tank), ..barrel };
    let mut study = Study::new(Inquiry::Smallest, &Arc::new(taken.site()), &taken.rain(&model).unwrap()).unwrap();
    while study.step() {}
    let Findings::Smallest { house, .. } = study.findings() else { panic!("as asked") };
    assert!(house.iter().all(|tally| tally.meets(Wanted::default())), "{house:?}");
    // Some weeks hold no whole year.
    update(
        &mut model,
        Event::RainRead(b"day,mm\n2001-01-01,5\n2001-01-02,0\n2001-01-03,12\n".to_vec(), "gauge".to_owned()),
    );
    assert_eq!(size_of(&drawn, &model), None);
}

#[test]
fn the_rain_of_another_site_is_run_as_it_is_there_and_means_stay_what_they_are_in_other_units() {
    let mut model = with_demo();
    let like = Sketch { rain: SketchRain::Of(model.site().unwrap().id), ..sketch() };
    let told = |model: &Model| sketch_view::answered(&like, &sketch_view::days(like.rain, model)).headline;
    assert!(told(&model).starts_with("In 12 years"), "{}", told(&model));
    update(&mut model, Event::GeneratedChosen(Some(GeneratedYears { seed: 2, ..GeneratedYears::CENTURY })));
    let generated = told(&model);
    assert!(generated.starts_with("In 100 generated years"), "{generated}");
    update(&mut model, Event::SketchDrawn(like.clone()));
    let kept = model.site().unwrap();
    assert_eq!(words::sizing::headline(&answer(&kept.site, kept.rain.as_deref().unwrap()).unwrap()), generated);

    let totals_mm = [254.0, 80.0, 75.0, 60.0, 40.0, 20.0, 10.0, 15.0, 40.0, 70.0, 90.0, 0.0];
    let inches = Units::customary(Customary::Us);
    let typed = sketch_view::typed(&totals_mm, &inches);
    assert!(typed.starts_with("10 3.15 ") && typed.ends_with(" 0"), "{typed}");
    let Ok(SketchRain::Means(read)) = sketch_view::twelve(&typed, &inches) else { panic!("{typed}") };
    assert!(read.iter().zip(totals_mm).all(|(read, mm)| (read - mm).abs() <= 0.0005 * mm), "{read:?}");
}

#[test]
fn twelve_means_are_run_as_generated_years_on_the_rain_place_as_in_the_sketch() {
    let mut model = started();
    update(&mut model, Event::SketchDrawn(sketch()));
    let totals_mm = [95.0, 80.0, 75.0, 60.0, 40.0, 20.0, 10.0, 15.0, 40.0, 70.0, 90.0, 100.0];
    let entered = Normals { source: "a table".to_owned(), totals_mm, rain_days: None };
    let effects = update(&mut model, Event::NormalsEntered(entered.clone()));
    assert!(matches!(effects.as_slice(), [Effect::SaveRain(..), Effect::SaveSite(..)]), "{effects:?}");
    let told = |model: &Model| {
        let kept = model.site().unwrap();
        words::sizing::headline(&answer(&kept.site, kept.rain.as_deref().unwrap()).unwrap())
    };
    let drawn = Sketch { rain: SketchRain::Means(totals_mm), ..sketch() };
    assert_eq!(told(&model), sketch_view::answered(&drawn, &sketch_view::days(drawn.rain, &model)).headline);
    // Who wants them even keeps them even.
    update(&mut model, Event::GeneratedChosen(None));
    update(&mut model, Event::NormalsEntered(entered));
    assert_eq!(model.site().unwrap().site.reckoning.generated, None);
}

#[test]
fn a_sketch_drops_the_record_before_one_that_cannot_be_read_and_says_why_beside_it() {
    let mut model = Model { started: true, ..Model::default() };
    update(&mut model, Event::SketchWanted);
    let with_file = Sketch { rain: SketchRain::Read, ..sketch() };
    let bytes = |text: &str| text.as_bytes().to_vec();
    for bad in [Vec::new(), vec![0, 159, 146, 150], bytes("no rain here")] {
        update(&mut model, Event::RainRead(record("hyderabad"), "hyderabad".to_owned()));
        let good = sketch_view::file(&model);
        assert!(good.found[0].starts_with("hyderabad: ") && good.units.is_some() && good.refused.is_none());
        assert!(with_file.rain(&model).is_some());
        update(&mut model, Event::RainRead(bad, "x".to_owned()));
        let refused = sketch_view::file(&model);
        assert!(refused.found.is_empty() && refused.units.is_none());
        assert_eq!(refused.refused, frame::notice(&model).map(|notice| notice.text));
        let days = sketch_view::days(with_file.rain, &model);
        assert_eq!(sketch_view::answered(&with_file, &days).headline, words::sketch::NO_ANSWER.text());
    }
}
