//! How much work files from outside make: counted, not clocked. A file twice as long takes about twice as many and as large
//! pieces of memory, whatever is in it; one beyond what is read is refused before any work.

use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;

use eavewater::engine::rain::import;
use eavewater::engine::rain::import::{MOST_BYTES, MOST_LINES};
use eavewater::quantity::Units;
use eavewater::records::cupboard::SiteFile;
use eavewater::records::exchange;
use eavewater::site::demo;
use eavewater::site::diary::Diary;
use eavewater::site::trial::Trial;

/// The system's allocator, counting what each thread asks for.
struct Counting;

thread_local! {
    static PIECES: Cell<u64> = const { Cell::new(0) };
    static BYTES: Cell<u64> = const { Cell::new(0) };
}

fn count(bytes: usize) {
    // A thread that ends has no counters any more.
    let _ = PIECES.try_with(|pieces| pieces.set(pieces.get() + 1));
    let _ = BYTES.try_with(|counted| counted.set(counted.get() + bytes as u64));
}

// SAFETY: everything is passed on to the system's allocator as it came.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        count(layout.size());
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        unsafe { System.dealloc(place, layout) }
    }

    unsafe fn realloc(&self, place: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        count(size);
        unsafe { System.realloc(place, layout, size) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

/// Pieces and bytes of memory that are asked for meanwhile.
fn asked_for<T>(work: impl FnOnce() -> T) -> (u64, u64) {
    let before = (PIECES.get(), BYTES.get());
    drop(work());
    (PIECES.get() - before.0, BYTES.get() - before.1)
}

/// Files that grow with a number, each made to be as much work for its bytes as can be.
fn documents(number: usize) -> Vec<(&'static str, String)> {
    let repeated = |text: &str, by: usize| vec![text; by].join(",");
    let file = SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE };
    let demo = exchange::export(&Units::default(), None, vec![file]);
    let with_diary = |entries: String| demo.replace(r#""diary":[]"#, &format!(r#""diary":[{entries}]"#));
    let entry = |id: usize| format!(r#"{{"id":{id},"on":"2026-01-01","what":{{"rain":1.5}},"note":"x"}}"#);
    let entries = |id: &dyn Fn(usize) -> usize| (0..number).map(|at| entry(id(at))).collect::<Vec<_>>().join(",");
    vec![
        ("lists in lists", format!("[{}]", repeated(&format!("{}{}", "[".repeat(100), "]".repeat(100)), number / 100))),
        ("keys", format!("{{{}}}", (0..number).map(|key| format!("\"{key}\":0")).collect::<Vec<_>>().join(","))),
        ("one key", format!("{{{}}}", repeated(r#""format":"eavewater""#, number))),
        ("escapes", format!("\"{}\"", r"\u00e9\n".repeat(number))),
        ("digits", "9".repeat(8 * number)),
        ("entries", with_diary(entries(&|at| at))),
        ("entries backwards", with_diary(entries(&|at| number - at))),
        ("entries of one name", with_diary(entries(&|_| 7))),
        (
            "depths",
            demo.replace(
                r#""rain":null"#,
                &format!(
                    r#""rain":{{"record":{{"source":"","start":"1900-01-01","depths_mm":[{}]}}}}"#,
                    repeated("0.1", number)
                ),
            ),
        ),
        ("sites", format!(r#"{{"format":"eavewater","version":2,"sites":[{}]}}"#, repeated("{}", number))),
    ]
}

fn tables(number: usize) -> Vec<(&'static str, String)> {
    let day = |at: usize| chrono::NaiveDate::from_ymd_opt(1900, 1, 1).unwrap() + chrono::Days::new(at as u64);
    let rows = |row: &dyn Fn(usize) -> String| (0..number).map(row).collect::<Vec<_>>().join("\n");
    vec![
        ("days", format!("date,rain\n{}", rows(&|at| format!("{},1.5", day(at))))),
        ("days backwards", format!("date,rain\n{}", rows(&|at| format!("{},1.5", day(number - at))))),
        ("one day", format!("date,rain\n{}", rows(&|at| format!("2001-02-03,{at}")))),
        ("nonsense", format!("date,rain\n2001-02-03,1\n{}", rows(&|at| format!("x{at},y")))),
        ("cells", format!("date,rain\n{}", rows(&|_| format!("2001-02-03{}", ",1".repeat(20))))),
        ("comments", rows(&|at| format!("# {at}"))),
        ("quotes", format!("date,rain\n\"{}", "\"\",\"\n".repeat(number))),
        ("blanks", " \n".repeat(8 * number)),
        ("stations", format!("ID,DATE,ELEMENT,VALUE\n{}", rows(&|at| format!("S{at},20010203,PRCP,1")))),
    ]
}

/// Twice the file takes no more than so many times the work; vectors that grow by doubling ask for a little more or less.
const MOST_TIMES: u64 = 3;
/// What any file may take however short, and for each of its bytes.
const AT_MOST_BYTES: (u64, u64) = (2_000_000, 400);

#[track_caller]
fn check(title: &str, files: [&str; 2], read: impl Fn(&[u8])) {
    let [once, twice] = files.map(|file| asked_for(|| read(file.as_bytes())));
    println!(
        "{title:<22} {:>9} bytes: {:>8} pieces, {:>11} bytes; twice: {:>8}, {:>11}",
        files[0].len(),
        once.0,
        once.1,
        twice.0,
        twice.1
    );
    assert!(twice.0 <= MOST_TIMES * once.0 + 100, "{title}: {once:?}, then {twice:?} pieces");
    assert!(twice.1 <= MOST_TIMES * once.1 + AT_MOST_BYTES.0, "{title}: {once:?}, then {twice:?} bytes");
    assert!(
        twice.1 <= AT_MOST_BYTES.0 + AT_MOST_BYTES.1 * files[1].len() as u64,
        "{title}: {twice:?} for {}",
        files[1].len()
    );
}

#[test]
fn a_file_twice_as_long_takes_twice_the_work() {
    for ((title, once), (_, twice)) in documents(20_000).into_iter().zip(documents(40_000)) {
        check(title, [&once, &twice], |bytes| drop(exchange::import(bytes)));
    }
    for ((title, once), (_, twice)) in tables(20_000).into_iter().zip(tables(40_000)) {
        check(title, [&once, &twice], |bytes| drop(import::read(bytes, None, "x")));
    }
}

#[test]
fn what_is_beyond_all_bounds_is_refused_before_any_work() {
    let (file, rain) = (vec![b'['; exchange::MOST_BYTES + 1], vec![b'1'; MOST_BYTES + 1]);
    for pieces in [asked_for(|| exchange::import(&file)).0, asked_for(|| import::read(&rain, None, "x")).0] {
        assert!(pieces < 10, "{pieces}");
    }
    let lines = "\n1".repeat(MOST_LINES + 1);
    assert!(matches!(import::read(lines.as_bytes(), None, "x"), Err(import::ImportError::TooManyLines { .. })));
    // A house of a thousand tanks is read; one more is no house.
    let mut site = demo::site();
    let tank = site.system.tanks[0].clone();
    let others = site.system.parts().len() - site.system.tanks.len();
    site.system.tanks.resize(1000 - others, tank.clone());
    let text = |site| {
        exchange::export(
            &Units::default(),
            None,
            vec![SiteFile { site, rain: None, diary: Diary::default(), trial: Trial::NONE }],
        )
    };
    assert!(exchange::import(text(site.clone()).as_bytes()).is_ok());
    site.system.tanks.push(tank);
    assert!(exchange::import(text(site).as_bytes()).is_err());
    // Nor are there as many details, options or days, nor a reckoning that the app wouldn't take.
    let text = text(demo::site());
    let option = r#"{"name":"","system":{"sections":[],"feeds":[],"tanks":[],"trunk_lines":[],"pumps":[],"uses":[],"hauling":[]},"rain":1,"reckoning":null}"#;
    let many = |item: &str, number| vec![item; number].join(",");
    let record =
        |days: String| format!(r#""rain":{{"record":{{"source":"","start":"1900-01-01","depths_mm":[{days}]}}}}"#);
    for (held, most, too_much) in [
        (
            r#""options":[]"#,
            format!(r#""options":[{}]"#, many(option, 6)),
            format!(r#""options":[{}]"#, many(option, 7)),
        ),
        (r#""rain":null"#, record(many("0", 180_000)), record(many("0", 190_000))),
        (r#""start":1"#, r#""start":0.5"#.to_owned(), r#""start":1.5"#.to_owned()),
        (r#""inflow_first":0"#, r#""inflow_first":1"#.to_owned(), r#""inflow_first":5"#.to_owned()),
        (
            r#""generated":null"#,
            r#""generated":{"years":400,"seed":1}"#.to_owned(),
            r#""generated":{"years":65535,"seed":1}"#.to_owned(),
        ),
    ] {
        assert!(text.contains(held), "{held}");
        let read = |with: &str| exchange::import(text.replace(held, with).as_bytes());
        assert!(read(&most).is_ok(), "{held}: {:?}", read(&most).err());
        assert!(read(&too_much).is_err(), "{held}");
    }
}
