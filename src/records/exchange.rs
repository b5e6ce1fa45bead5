//! The file that leaves the phone and comes back: every site with its rain, its diary and its trial, as one JSON document.
//!
//! ```json
//! { "format": "eavewater", "version": 2, "units": {…}, "language": "es", "sites": [ { "site": {…}, "rain": {…}, "diary": […], "trial": {…} } ] }
//! ```

use super::cupboard::SiteFile;
use super::json::{SyntaxError, Value};
use super::place::{Place, Read, ShapeError};
use super::shapes;
use super::slots::VERSION;
use super::written::{list, object};
use crate::language::Language;
use crate::quantity::Units;
use crate::site::diary::Diary;
use crate::site::trial::Trial;

/// What the file says it is.
const FORMAT: &str = "eavewater";

/// The most that is read, in bytes: several times what a browser keeps for a page.
pub const MOST_BYTES: usize = 32 << 20;

/// What a file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Export {
    /// The units that the person wants.
    pub units: Units,
    /// The language that the person chose, by which numbers were written; none is the device's own.
    pub language: Option<Language>,
    /// The sites in the person's order.
    pub sites: Vec<SiteFile>,
}

/// Why a file can't be taken in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// It isn't text in UTF-8.
    NotText,
    /// It is larger than [`MOST_BYTES`].
    TooLarge,
    /// It is text of another kind: it doesn't even begin as a JSON document of lists and objects does.
    OtherText,
    /// It begins as a JSON document and isn't one.
    NotJson(SyntaxError),
    /// It is a document that says to be of another format.
    OtherFormat {
        /// The format that it says it has.
        format: String,
    },
    /// It is a JSON document, but not all of it has the shape that its version has.
    WrongShape(ShapeError),
    /// It was written by a newer program.
    Newer {
        /// Its version.
        version: u32,
    },
}

impl From<Box<ShapeError>> for ImportError {
    fn from(error: Box<ShapeError>) -> Self {
        ImportError::WrongShape(*error)
    }
}

/// The file's text.
pub fn export(units: &Units, language: Option<Language>, sites: Vec<SiteFile>) -> String {
    let file = object(vec![
        ("format", FORMAT.into()),
        ("version", VERSION.into()),
        ("units", shapes::units::write(units)),
        ("language", shapes::index::write_language(language)),
        ("sites", list(&sites, write_site_file)),
    ]);
    file.written()
}

/// Reads a file. It comes from outside: nothing in it is trusted until it is parsed, and its systems are judged by
/// `site::findings` like any other.
///
/// # Errors
/// See [`ImportError`].
pub fn import(bytes: &[u8]) -> Result<Export, ImportError> {
    if bytes.len() > MOST_BYTES {
        return Err(ImportError::TooLarge);
    }
    let text = std::str::from_utf8(bytes).map_err(|_| ImportError::NotText)?;
    let document = Value::read(text).map_err(|error| {
        let begins_so = text.trim_start().starts_with(['{', '[']);
        if begins_so { ImportError::NotJson(error) } else { ImportError::OtherText }
    })?;
    let file = Place::top(&document);
    let format = file.text("format")?;
    if format != FORMAT {
        return Err(ImportError::OtherFormat { format });
    }
    let version = file.at("version")?.as_whole_number(u32::MAX)?;
    if version > VERSION {
        return Err(ImportError::Newer { version });
    }
    let units = match file.at_if_any("units")? {
        Some(units) => shapes::units::read(&units)?,
        None => Units::default(),
    };
    let language = shapes::index::read_language(&file)?;
    Ok(Export { units, language, sites: file.list("sites", read_site_file)? })
}

fn read_site_file(place: &Place<'_>) -> Read<SiteFile> {
    Ok(SiteFile {
        site: shapes::site::read(&place.at("site")?)?,
        rain: match place.at_if_any("rain")? {
            Some(rain) => Some(shapes::rain::read(&rain)?),
            None => None,
        },
        diary: match place.at_if_any("diary")? {
            Some(diary) => Diary::of_lines(shapes::diary::read(&diary)?),
            None => Diary::default(),
        },
        trial: match place.at_if_any("trial")? {
            Some(trial) => shapes::trial::read_trial(&trial)?,
            None => Trial::NONE,
        },
    })
}

fn write_site_file(file: &SiteFile) -> Value {
    object(vec![
        ("site", shapes::site::write(&file.site)),
        ("rain", file.rain.as_ref().map_or(Value::Null, shapes::rain::write)),
        ("diary", shapes::diary::write(&file.diary.lines())),
        ("trial", if file.trial.is_none() { Value::Null } else { shapes::trial::write_trial(&file.trial) }),
    ])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Customary;
    use crate::records::place::{Fault, Wanted};
    use crate::site::demo;
    use crate::site::rain::Rain;

    #[test]
    fn what_is_exported_comes_back_the_same() {
        let units = Units::customary(Customary::Us);
        let trial = Trial::of_system("Half a roof".to_owned(), demo::site().system);
        let rain = Some(Rain::Record(demo::rain()));
        let file = SiteFile { site: demo::site(), rain, diary: Diary::default(), trial };
        for language in [None, Some(Language::English), Some(Language::Spanish), Some(Language::SpanishWithPoint)] {
            let text = export(&units, language, vec![file.clone()]);
            let back = import(text.as_bytes());
            let all = Export { units: units.clone(), language, sites: vec![file.clone()] };
            assert!(back == Ok(all), "came back changed");
        }
    }

    #[test]
    fn files_of_others_are_refused() {
        assert_eq!(import(&[0xff, 0xfe]), Err(ImportError::NotText));
        assert_eq!(import(&vec![b' '; MOST_BYTES + 1]), Err(ImportError::TooLarge));
        assert_eq!(import(&vec![b' '; MOST_BYTES]), Err(ImportError::OtherText));
        for rain in ["date,rain", "2004-07-30,12.5\n2004-07-31,0\n", "\"date\";\"rain\"\n", ""] {
            assert_eq!(import(rain.as_bytes()), Err(ImportError::OtherText), "{rain}");
        }
        let cut = br#"{"format":"eavewater","version":2,"sites":["#;
        assert!(matches!(import(cut), Err(ImportError::NotJson(SyntaxError { line: 1, .. }))));
        let other = ImportError::OtherFormat { format: "other".to_owned() };
        assert_eq!(import(br#"{"format":"other","version":1}"#), Err(other));
        assert_eq!(import(br#"{"format":"eavewater","version":3}"#), Err(ImportError::Newer { version: 3 }));
        let deep = "[".repeat(100_000);
        assert!(matches!(import(deep.as_bytes()), Err(ImportError::NotJson(_))));
    }

    #[track_caller]
    fn check_wrong_shape(text: &str, path: &str, fault: Fault) {
        let error = ShapeError { path: path.to_owned(), fault };
        assert_eq!(import(text.as_bytes()), Err(ImportError::WrongShape(error)), "{text}");
    }

    #[test]
    fn a_wrong_shape_is_named_with_its_place() {
        check_wrong_shape("[]", "", Fault::NotA(Wanted::Object));
        check_wrong_shape("{}", "format", Fault::Missing);
        check_wrong_shape(r#"{"format":"eavewater","version":1}"#, "sites", Fault::Missing);
        let text = export(
            &Units::default(),
            None,
            vec![SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE }],
        );
        for (right, wrong, path, fault) in [
            (r#""material":"metal""#, r#""material":"gold""#, "sections[0].material", "gold"),
            (r#""build":"barrel""#, r#""build":"box""#, "tanks[2].build", "box"),
            (r#""shape":{"upright_cylinder""#, r#""shape":{"egg""#, "tanks[0].shape", "egg"),
        ] {
            let path = format!("sites[0].site.system.{path}");
            check_wrong_shape(&text.replacen(right, wrong, 1), &path, Fault::Unknown { name: fault.to_owned() });
        }
    }

    #[test]
    fn what_is_not_known_is_ignored_and_what_may_be_absent_is_absent() {
        let site = SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE };
        let text = export(&Units::default(), None, vec![site.clone()]);
        let text = text.replace(r#","units":{}"#, "").replace(r#""rain":null,"diary":[]"#, r#""plan":[{}]"#);
        assert!(text.contains("plan") && !text.contains("units"));
        assert_eq!(import(text.as_bytes()), Ok(Export { units: Units::default(), language: None, sites: vec![site] }));
    }
}
