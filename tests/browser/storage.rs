//! The browser's local storage as a shelf.

use eavewater::browser::BrowserShelf;
use eavewater::language::Language;
use eavewater::quantity::{Customary, Units};
use eavewater::records::cupboard::{Cupboard, Index, SiteFile, SiteId};
use eavewater::records::exchange::{export, import};
use eavewater::records::shelf::{Shelf, ShelfError};
use eavewater::records::slots::PutError;
use eavewater::site::demo;
use eavewater::site::diary::Diary;
use eavewater::site::rain::Rain;
use eavewater::site::trial::Trial;
use wasm_bindgen_test::wasm_bindgen_test;

fn empty_shelf() -> BrowserShelf {
    let shelf = BrowserShelf::open().unwrap();
    for key in shelf.keys().unwrap() {
        shelf.remove(&key).unwrap();
    }
    shelf
}

fn file() -> SiteFile {
    SiteFile { site: demo::site(), rain: Some(Rain::Record(demo::rain())), diary: Diary::default(), trial: Trial::NONE }
}

fn index() -> Index {
    Index {
        sites: vec![SiteId(1)],
        open: Some(SiteId(1)),
        units: Units::customary(Customary::Imperial),
        exported: None,
        language: Some(Language::Spanish),
    }
}

#[wasm_bindgen_test]
fn what_is_put_is_there_and_what_is_removed_is_gone() {
    let shelf = empty_shelf();
    assert_eq!(shelf.get("a"), Ok(None));
    assert_eq!(shelf.put("a", "Wasser über dem Rand, 5′6″"), Ok(()));
    assert_eq!(shelf.get("a"), Ok(Some("Wasser über dem Rand, 5′6″".to_owned())));
    assert_eq!(shelf.keys(), Ok(vec!["a".to_owned()]));
    assert_eq!(shelf.remove("a"), Ok(()));
    assert_eq!(shelf.get("a"), Ok(None));
}

#[wasm_bindgen_test]
fn a_site_with_its_rain_is_kept_and_opened() {
    empty_shelf();
    let (mut cupboard, _) = Cupboard::open(BrowserShelf::open().unwrap()).unwrap();
    cupboard.take_in(&[(SiteId(1), file())], &index()).unwrap();
    let (_, opened) = Cupboard::open(BrowserShelf::open().unwrap()).unwrap();
    assert_eq!(opened.index, index());
    assert!(opened.sites == [(SiteId(1), file())]);
    assert_eq!(opened.troubles, []);
}

#[wasm_bindgen_test]
fn a_full_storage_refuses_and_keeps_what_was_there() {
    empty_shelf();
    let (mut cupboard, _) = Cupboard::open(BrowserShelf::open().unwrap()).unwrap();
    cupboard.take_in(&[(SiteId(1), file())], &index()).unwrap();
    let mut huge = demo::site();
    huge.name = "x".repeat(6_000_000);
    assert_eq!(cupboard.save_site(SiteId(1), &huge), Err(PutError::Shelf(ShelfError::Full)));
    let (_, opened) = Cupboard::open(BrowserShelf::open().unwrap()).unwrap();
    assert!(opened.sites == [(SiteId(1), file())]);
    empty_shelf();
}

#[wasm_bindgen_test]
fn a_file_goes_out_and_comes_back() {
    let units = Units::customary(Customary::Us);
    let back = import(export(&units, None, vec![file()]).as_bytes()).unwrap();
    assert!(back.sites == [file()]);
    assert_eq!(back.units, units);
}
