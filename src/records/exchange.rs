//! The file that leaves the phone and comes back: every site with its rain, as one JSON document.
//!
//! ```json
//! { "format": "eavewater", "version": 1, "units": {…}, "sites": [ { "site": {…}, "rain": {…} } ] }
//! ```

use serde::{Deserialize, Serialize};

use super::cupboard::SiteFile;
use super::slots::VERSION;
use crate::quantity::Units;

/// What the file says it is.
const FORMAT: &str = "eavewater";

/// A whole file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Export {
    format: String,
    version: u32,
    /// The units that the person wants.
    #[serde(default)]
    pub units: Units,
    /// The sites in the person's order.
    pub sites: Vec<SiteFile>,
}

/// Why a file can't be taken in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// It isn't text in UTF-8.
    NotText,
    /// It isn't a JSON document of ours: what the reader says and where.
    NotOurs {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// It was written by a newer program.
    Newer {
        /// Its version.
        version: u32,
    },
}

/// The file's text, indented so that a person can read it.
pub fn export(units: &Units, sites: Vec<SiteFile>) -> String {
    let file = Export { format: FORMAT.to_owned(), version: VERSION, units: units.clone(), sites };
    // Nothing that is saved has a key that isn't text, the one thing that could fail here.
    serde_json::to_string(&file).unwrap_or_default()
}

/// Reads a file. It comes from outside: nothing in it is trusted until it is parsed, and its systems are judged by
/// `site::findings` like any other.
///
/// # Errors
/// See [`ImportError`].
pub fn import(bytes: &[u8]) -> Result<Export, ImportError> {
    #[derive(Deserialize)]
    struct Head {
        format: String,
        version: u32,
    }
    let text = std::str::from_utf8(bytes).map_err(|_| ImportError::NotText)?;
    let not_ours = |error: &serde_json::Error| ImportError::NotOurs {
        line: error.line(),
        column: error.column(),
        what: error.to_string(),
    };
    let head: Head = serde_json::from_str(text).map_err(|error| not_ours(&error))?;
    if head.format != FORMAT {
        return Err(ImportError::NotOurs { line: 1, column: 1, what: format!("format \"{}\"", head.format) });
    }
    if head.version > VERSION {
        return Err(ImportError::Newer { version: head.version });
    }
    serde_json::from_str(text).map_err(|error| not_ours(&error))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Customary;
    use crate::site::demo;
    use crate::site::rain::Rain;

    #[test]
    fn what_is_exported_comes_back_the_same() {
        let units = Units::customary(Customary::Us);
        let file = SiteFile { site: demo::site(), rain: Some(Rain::Record(demo::rain())) };
        let text = export(&units, vec![file.clone()]);
        let back = import(text.as_bytes());
        assert!(back.map(|export| (export.units, export.sites)) == Ok((units, vec![file])), "came back changed");
    }

    #[test]
    fn files_of_others_are_refused() {
        assert_eq!(import(&[0xff, 0xfe]), Err(ImportError::NotText));
        assert!(matches!(import(b"date,rain"), Err(ImportError::NotOurs { line: 1, .. })));
        assert!(matches!(import(br#"{"format":"other","version":1}"#), Err(ImportError::NotOurs { .. })));
        assert_eq!(import(br#"{"format":"eavewater","version":2}"#), Err(ImportError::Newer { version: 2 }));
        assert!(matches!(import(br#"{"format":"eavewater","version":1}"#), Err(ImportError::NotOurs { .. })));
        let deep = "[".repeat(100_000);
        assert!(matches!(import(deep.as_bytes()), Err(ImportError::NotOurs { .. })));
    }
}
