//! Files from outside: merged with a preview, whole or not at all, whatever is in them.

use eavewater::app::draft::Draft;
use eavewater::app::effect::Effect;
use eavewater::app::event::Event;
use eavewater::app::model::{Model, Place};
use eavewater::app::sketch::Sketch;
use eavewater::app::update::update;
use eavewater::app::view::{frame, kept};
use eavewater::engine::rain::import;
use eavewater::quantity::{Customary, Depth, Units};
use eavewater::records::cupboard::{SiteFile, SiteId};
use eavewater::records::exchange;
use eavewater::records::shelf::ShelfError;
use eavewater::records::slots::PutError;
use eavewater::site::demo;
use eavewater::site::diary::{Diary, EntryId, Told};
use eavewater::site::trial::Trial;
use proptest::prelude::*;

use crate::diary::{TODAY, any_diary, with_demo};

fn wrote(model: &mut Model, mm: f64, moment: u64) {
    let draft = Draft { id: None, date: TODAY, told: Told::Rain(Depth::millimetres(mm)), note: String::new() };
    update(model, Event::EntryWritten(draft, moment));
}

fn file_of(model: &Model) -> Vec<u8> {
    exchange::export(&model.units, None, model.sites.iter().map(|kept| kept.file()).collect()).into_bytes()
}

/// Takes a file in beside what is there, as the browser would.
fn merged(model: &mut Model, file: Vec<u8>, result: Result<(), PutError>) {
    assert_eq!(update(model, Event::FileRead(file)), []);
    let effects = update(model, Event::FileAccepted { replace: false });
    let [Effect::TakeIn { sites, index, replace }] = effects.as_slice() else { panic!("{effects:?}") };
    let taken = Event::TakenIn { sites: sites.clone(), index: index.clone(), replace: *replace, result };
    update(model, taken);
}

#[test]
fn two_phones_of_one_house_come_together() {
    let mut here = with_demo();
    wrote(&mut here, 1.0, 100);
    let mut there = with_demo();
    wrote(&mut there, 1.0, 100);
    wrote(&mut there, 2.0, 200);
    let changed =
        Draft { id: Some(EntryId(100)), date: TODAY, told: Told::Rain(Depth::millimetres(9.0)), note: String::new() };
    update(&mut there, Event::EntryWritten(changed, 300));
    wrote(&mut here, 3.0, 250);

    let file = file_of(&there);
    update(&mut here, Event::FileRead(file.clone()));
    let preview = kept::kept(&here).file.unwrap();
    // Both wrote down rain of that day: in two gauges, or in one of them twice.
    let told = "Emberlow (demo): 1 diary entry new, 1 entry changed; 1 day would have the rain of both, counted twice";
    assert!(preview[1].starts_with(told), "{}", preview[1]);
    assert!(preview[2].contains("replaces all: 1 diary entry written or changed here."), "{}", preview[2]);
    update(&mut here, Event::FileDiscarded);

    let before = here.sites.clone();
    merged(&mut here, file.clone(), Err(PutError::Shelf(ShelfError::Full)));
    assert!(here.sites == before, "without room nothing changes");
    merged(&mut here, file.clone(), Ok(()));
    assert_eq!(here.sites.len(), 1);
    let rain: Vec<Told> = here.site().unwrap().diary.entries().iter().map(|entry| entry.told.clone()).collect();
    assert_eq!(rain, [9.0, 2.0, 3.0].map(|mm| Told::Rain(Depth::millimetres(mm))));
    // A second time there is nothing new.
    update(&mut here, Event::FileRead(file));
    let preview = kept::kept(&here).file.unwrap();
    assert_eq!(preview[1], "Emberlow (demo): is here already; the file has nothing new for it.");
    // A file that lacks what is here says what would go.
    let mut bare = here.site().unwrap().file();
    (bare.rain, bare.diary) = (None, Diary::default());
    update(&mut here, Event::FileRead(exchange::export(&Units::default(), None, vec![bare]).into_bytes()));
    let lost = kept::kept(&here).file.unwrap().pop().unwrap();
    assert!(lost.contains("the rain of Emberlow (demo), 3 diary entries"), "{lost}");
}

#[test]
fn an_entry_taken_out_on_one_phone_stays_out_on_both() {
    let mut here = with_demo();
    wrote(&mut here, 1.0, 100);
    wrote(&mut here, 2.0, 200);
    let mut there = here.clone();
    let old = file_of(&there);
    update(&mut here, Event::EntryRemoved(EntryId(100), 300));
    // The phone where it went takes it from no older file.
    update(&mut here, Event::FileRead(old));
    let preview = kept::kept(&here).file.unwrap();
    assert_eq!(preview[1], "Emberlow (demo): is here already; the file has nothing new for it.");
    update(&mut here, Event::FileDiscarded);
    // On the other it goes too, which is said before and can be undone.
    update(&mut there, Event::FileRead(file_of(&here)));
    let preview = kept::kept(&there).file.unwrap();
    let told = "Emberlow (demo): 0 diary entries new, 0 entries changed; 1 entry that was taken out there goes.";
    assert_eq!(preview[1], told);
    // It goes with a merge as well: replacing all loses nothing more.
    assert!(!preview.concat().contains("written or changed here"), "{preview:?}");
    update(&mut there, Event::FileDiscarded);
    merged(&mut there, file_of(&here), Ok(()));
    let left = |model: &Model| model.site().unwrap().diary.entries().iter().map(|entry| entry.id.0).collect::<Vec<_>>();
    assert_eq!((left(&here), left(&there)), (vec![200], vec![200]));
    assert_eq!(frame::notice(&there).unwrap().offer, Some(frame::Offer::Undo));
}

#[test]
fn a_site_goes_out_alone_and_a_refused_file_is_not_spoken_of_beside_the_next() {
    let mut model = with_demo();
    let sketch = Sketch::first("Río Mill".to_owned(), &model);
    update(&mut model, Event::SketchDrawn(sketch));
    wrote(&mut model, 5.0, 100);
    let exported = model.exported;
    let effects = update(&mut model, Event::SiteExportWanted);
    let [Effect::Download { name, text, .. }] = effects.as_slice() else { panic!("{effects:?}") };
    assert_eq!(name, &format!("rio-mill-{TODAY}.json"));
    let alone = exchange::import(text.as_bytes()).unwrap().sites;
    assert!(alone.len() == 1 && alone[0] == model.site().unwrap().file());
    assert_eq!(model.exported, exported, "what is handed on is no copy of all");
    update(&mut model, Event::FileRead(b"{".to_vec()));
    assert!(frame::notice(&model).unwrap().warning);
    let sound = file_of(&with_demo());
    update(&mut model, Event::FileRead(sound));
    assert_eq!(frame::notice(&model), None);
    assert!(kept::kept(&model).file.is_some());
}

#[test]
fn houses_of_one_name_stay_two_and_one_under_another_name_is_known() {
    let begun_at = |begun| {
        let mut model = with_demo();
        let sketch = Sketch { begun: Some(begun), ..Sketch::first("My house".to_owned(), &model) };
        update(&mut model, Event::SketchDrawn(sketch));
        let id = model.site().unwrap().id;
        wrote(&mut model, 5.0, begun + 1);
        model.sites.retain(|kept| kept.id == id);
        model
    };
    let (mut here, mut neighbours) = (begun_at(1_000), begun_at(2_000));
    update(&mut here, Event::FileRead(file_of(&neighbours)));
    let preview = kept::kept(&here).file.unwrap();
    assert_eq!(preview[1], "My house: comes in as a new site, with 1 diary entry.");
    update(&mut here, Event::FileDiscarded);
    merged(&mut here, file_of(&neighbours), Ok(()));
    assert_eq!(here.sites.iter().map(|kept| kept.diary.entries().len()).collect::<Vec<_>>(), [1, 1]);
    // The neighbour renames his house and writes on: that is known here all the same.
    update(&mut neighbours, Event::SiteNamed("Mill".to_owned()));
    wrote(&mut neighbours, 6.0, 3_000);
    let before = here.sites[0].clone();
    merged(&mut here, file_of(&neighbours), Ok(()));
    assert!(here.sites.len() == 2 && here.sites[0] == before);
    assert_eq!((here.sites[1].site.name.as_str(), here.sites[1].diary.entries().len()), ("My house", 2));
    // A copy is another house.
    let of = here.sites[0].id;
    update(&mut here, Event::SiteDuplicated(of));
    assert_eq!(here.site().unwrap().site.begun, None);
}

#[test]
fn a_house_that_differs_stays_and_a_new_one_comes_in() {
    let mut here = with_demo();
    let mut file = here.site().unwrap().file();
    file.site.system.tanks.pop();
    let mut new = file.clone();
    new.site.name = "Another".to_owned();
    let text = exchange::export(&Units::default(), None, vec![file, new]);
    update(&mut here, Event::FileRead(text.clone().into_bytes()));
    let preview = kept::kept(&here).file.unwrap();
    assert!(preview[1].contains("differs from what is here, which stays"), "{}", preview[1]);
    assert_eq!(preview[2], "Another: comes in as a new site, with 0 diary entries.");
    assert!(kept::kept(&here).differs);
    assert_eq!(preview.len(), 3, "replacing would lose nothing: {preview:?}");
    let house = here.site().unwrap().clone();
    update(&mut here, Event::FileDiscarded);
    let mut taken = here.clone();
    merged(&mut here, text.clone().into_bytes(), Ok(()));
    assert!(here.sites.len() == 2 && here.sites[0] == house && here.open == Some(house.id));
    // Or the file's house is taken: with what is in the diary here.
    wrote(&mut taken, 4.0, 900);
    update(&mut taken, Event::FileRead(text.into_bytes()));
    let effects = update(&mut taken, Event::FileHousesTaken);
    let [Effect::TakeIn { sites, index, replace: false }] = effects.as_slice() else { panic!("{effects:?}") };
    let event = Event::TakenIn { sites: sites.clone(), index: index.clone(), replace: false, result: Ok(()) };
    update(&mut taken, event);
    let house_now = taken.site().unwrap();
    assert_eq!(house_now.site.system.tanks.len(), house.site.system.tanks.len() - 1);
    assert!(house_now.diary.entries().len() == 1 && house_now.rain == house.rain && taken.sites.len() == 2);
}

#[test]
fn what_a_file_replaced_comes_back_with_its_diary_and_units() {
    let mut here = with_demo();
    update(&mut here, Event::DemoWanted);
    wrote(&mut here, 1.0, 100);
    let mut other = with_demo();
    update(&mut other, Event::UnitsChosen(Customary::Us));
    let as_files = |model: &Model| model.sites.iter().map(|kept| kept.file()).collect::<Vec<_>>();
    let (before, units, open) =
        (as_files(&here), here.units.clone(), here.sites.iter().position(|kept| here.open == Some(kept.id)));
    let taken = |model: &mut Model, effects: Vec<Effect>| {
        let [Effect::TakeIn { sites, index, replace: true }] = effects.as_slice() else { panic!("{effects:?}") };
        let event = Event::TakenIn { sites: sites.clone(), index: index.clone(), replace: true, result: Ok(()) };
        update(model, event);
    };
    update(&mut here, Event::FileRead(file_of(&other)));
    let effects = update(&mut here, Event::FileAccepted { replace: true });
    taken(&mut here, effects);
    assert!(as_files(&here) == as_files(&other) && here.units == other.units);
    // Looking about takes the offer away no more than it does for a site that was removed.
    update(&mut here, Event::PlaceOpened(Place::Kept));
    assert!(frame::notice(&here).is_some_and(|notice| notice.offer == Some(frame::Offer::Undo)));
    let replaced: Vec<SiteId> = here.sites.iter().map(|kept| kept.id).collect();
    let effects = update(&mut here, Event::UndoWanted);
    taken(&mut here, effects);
    let said = frame::notice(&here).unwrap();
    assert_eq!((said.text.as_str(), said.offer), ("All is as it was before the file came.", None));
    assert!(as_files(&here) == before && here.units == units);
    assert_eq!(here.sites.iter().position(|kept| here.open == Some(kept.id)), open);
    assert!(here.sites.iter().all(|kept| !replaced.contains(&kept.id)), "no name of a record is used twice");
}

#[test]
fn an_old_export_is_reminded_of_only_where_something_was_written_since() {
    let mut model = with_demo();
    let now = |days_ago: u64| 1_795_600_000_000 - days_ago * 86_400_000;
    assert_eq!(kept::reminder(&model), None);
    wrote(&mut model, 1.0, now(40));
    assert!(kept::reminder(&model).unwrap().starts_with("Nothing was exported in 40 days"));
    update(&mut model, Event::ExportWanted);
    assert_eq!(kept::reminder(&model), None);
    model.exported = Some(TODAY - chrono::Days::new(50));
    assert!(kept::reminder(&model).unwrap().contains("50 days ago"));
    model.exported = Some(TODAY - chrono::Days::new(20));
    assert_eq!(kept::reminder(&model), None);
}

#[test]
fn a_file_taken_in_where_nothing_else_is_counts_as_exported_that_day() {
    let now = |days_ago: u64| 1_795_600_000_000 - days_ago * 86_400_000;
    let mut there = with_demo();
    wrote(&mut there, 1.0, now(60));
    assert!(kept::reminder(&there).is_some());
    let file = file_of(&there);

    // On an empty phone, and in the place of all that is there.
    let empty = Model { started: true, today: TODAY, ..Model::default() };
    for (mut here, replace) in [(empty, false), (there.clone(), true)] {
        let mut effects = update(&mut here, Event::FileRead(file.clone()));
        if replace {
            effects = update(&mut here, Event::FileAccepted { replace });
        }
        let [Effect::TakeIn { sites, index, replace: true }] = effects.as_slice() else { panic!("{effects:?}") };
        assert_eq!(index.exported, Some(TODAY));
        let (sites, index) = (sites.clone(), index.clone());
        update(&mut here, Event::TakenIn { sites, index, replace: true, result: Ok(()) });
        assert_eq!((here.exported, kept::reminder(&here)), (Some(TODAY), None));
        // What is written from then on is reminded of in its time.
        wrote(&mut here, 2.0, now(0) + 86_400_000);
        here.today = TODAY + chrono::Days::new(31);
        assert!(kept::reminder(&here).is_some_and(|text| text.contains("31 days ago")));
    }

    // Beside other sites it is no export of theirs.
    let mut beside = with_demo();
    wrote(&mut beside, 3.0, now(50));
    merged(&mut beside, file, Ok(()));
    assert_eq!(beside.exported, None);
}

#[test]
fn a_house_with_an_empty_diary_does_not_ask_for_an_export() {
    let mut model = with_demo();
    wrote(&mut model, 1.0, 1_795_600_000_000 - 40 * 86_400_000);
    assert!(kept::reminder_at_house(&model).is_some());
    update(&mut model, Event::DemoWanted);
    assert_eq!(kept::reminder_at_house(&model), None);
    assert!(kept::reminder(&model).is_some(), "the other site's diary is still in no file");
}

/// A file of ours with bytes changed, cut or doubled: hostile, but near enough to get far.
fn mangled() -> impl Strategy<Value = Vec<u8>> {
    let change = (any::<prop::sample::Index>(), any::<u8>(), 0..4u8);
    (any_diary(), prop::collection::vec(change, 1..6)).prop_map(|(diary, changes)| {
        let file = SiteFile { site: demo::site(), rain: None, diary, trial: Trial::NONE };
        let mut bytes = exchange::export(&Units::default(), None, vec![file]).into_bytes();
        for (at, byte, kind) in changes {
            if bytes.is_empty() {
                break;
            }
            let at = at.index(bytes.len());
            match kind {
                0 => bytes[at] = byte,
                1 => bytes.truncate(at),
                2 => bytes.insert(at, b"0123456789\"{}[],:-e"[usize::from(byte) % 19]),
                _ => bytes[at] = b"0123456789\"{}[],:-e"[usize::from(byte) % 19],
            }
        }
        bytes
    })
}

/// Each importer is given this many files.
const FILES: u32 = 20_000;

proptest! {
    #![proptest_config(ProptestConfig { cases: FILES, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_mangled_file_is_taken_whole_or_changes_nothing(bytes in mangled()) {
        let mut model = with_demo();
        let before = model.sites.clone();
        let effects = update(&mut model, Event::FileRead(bytes));
        prop_assert_eq!(effects, vec![]);
        prop_assert!(model.sites == before);
        // Whatever was understood is shown and can be put into a document again.
        let shown = kept::kept(&model);
        if let Some(file) = model.read_file.clone() {
            prop_assert!(shown.file.is_some());
            let again = exchange::import(exchange::export(&file.units, None, file.sites.clone()).as_bytes());
            prop_assert_eq!(again.map(|export| export.sites), Ok(file.sites.clone()));
        }
    }

    #[test]
    fn any_bytes_are_refused_as_a_file(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(exchange::import(&bytes).is_err());
    }

    #[test]
    fn any_bytes_and_rows_are_judged_as_rain(text in "[-0-9,;./ \\na-zT\"]{0,300}", bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        for bytes in [text.as_bytes(), &bytes] {
            if let Ok(import) = import::read(bytes, None, "x") {
                prop_assert!(import.record.depths_mm.len() < 4_000_000);
                prop_assert!(import.record.depths_mm.iter().flatten().all(|mm| mm.is_finite() && *mm >= 0.0));
            }
        }
    }
}
