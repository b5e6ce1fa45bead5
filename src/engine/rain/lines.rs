//! A file as rows of cells: its text, its lines with their numbers, its delimiter.

use csv_core::{ReadRecordResult, Reader, ReaderBuilder, Terminator};

use super::import::ImportError;

/// The largest file that is read, in bytes.
pub const MOST_BYTES: usize = 64 << 20;
/// The most lines that are read, blank ones not counted.
pub const MOST_LINES: usize = 2_000_000;
/// The most cells of a line that are looked at.
pub const MOST_CELLS: usize = 512;

/// How many lines from the top are looked at to find out how a file is laid out.
pub(super) const SAMPLE: usize = 200;

/// A file's text; bytes that aren't UTF-8 become replacement characters (dates and numbers have none).
///
/// # Errors
/// `TooManyBytes`, `NotText` (a zero byte, as in spreadsheets' own files and UTF-16).
pub(super) fn text_of(bytes: &[u8]) -> Result<std::borrow::Cow<'_, str>, ImportError> {
    if bytes.len() > MOST_BYTES {
        return Err(ImportError::TooManyBytes { bytes: bytes.len(), most: MOST_BYTES });
    }
    if bytes.contains(&0) {
        return Err(ImportError::NotText);
    }
    Ok(String::from_utf8_lossy(bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes)))
}

/// One line with something in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line<'a> {
    /// Its number in the file, from 1.
    pub(super) number: usize,
    /// Its text without the line end.
    pub(super) text: &'a str,
}

/// The lines that hold something, and how many comments (`#`) stood among them.
///
/// # Errors
/// `TooManyLines`, `Empty`.
pub(super) fn lines_of(text: &str) -> Result<(Vec<Line<'_>>, usize), ImportError> {
    let end = if text.contains('\n') { '\n' } else { '\r' };
    let (mut lines, mut comments) = (Vec::new(), 0);
    for (at, text) in text.split(end).enumerate() {
        let blank = |c: char| c.is_whitespace() || matches!(c, ',' | ';' | '"');
        if text.chars().all(blank) {
            continue;
        }
        if text.trim_start().starts_with('#') {
            comments += 1;
            continue;
        }
        if lines.len() == MOST_LINES {
            return Err(ImportError::TooManyLines { most: MOST_LINES });
        }
        lines.push(Line { number: at + 1, text: text.trim_end_matches('\r') });
    }
    if lines.is_empty() {
        return Err(ImportError::Empty);
    }
    Ok((lines, comments))
}

/// The delimiter that at least half of the first lines have: a tab, else a semicolon, else a comma.
pub(super) fn delimiter_of(lines: &[Line<'_>]) -> u8 {
    let sample = &lines[..lines.len().min(SAMPLE)];
    let in_most =
        |delimiter: char| 2 * sample.iter().filter(|line| line.text.contains(delimiter)).count() >= sample.len();
    if in_most('\t') {
        b'\t'
    } else if in_most(';') {
        b';'
    } else {
        b','
    }
}

/// Cuts lines into cells. Each line by itself, so that an unmatched quote spoils no other line.
pub(super) struct Cutter {
    reader: Reader,
    bytes: Vec<u8>,
    ends: Vec<usize>,
}

impl Cutter {
    /// A cutter for one delimiter.
    pub(super) fn new(delimiter: u8) -> Cutter {
        let reader = ReaderBuilder::new().delimiter(delimiter).terminator(Terminator::Any(b'\n')).build();
        Cutter { reader, bytes: Vec::new(), ends: vec![0; MOST_CELLS] }
    }

    /// The cells of a line, trimmed; at most `MOST_CELLS`.
    pub(super) fn cells(&mut self, line: &str) -> Vec<&str> {
        self.reader.reset();
        self.bytes.resize(line.len() + 1, 0);
        let (result, _, written, mut count) = self.reader.read_record(line.as_bytes(), &mut self.bytes, &mut self.ends);
        if result == ReadRecordResult::InputEmpty {
            // The end of the input closes the last cell.
            let (_, _, _, last) = self.reader.read_record(&[], &mut self.bytes[written..], &mut self.ends[count..]);
            count += last;
        }
        let mut cells = Vec::with_capacity(count);
        let mut start = 0;
        for &end in self.ends.iter().take(count) {
            let cell = self.bytes.get(start..end).and_then(|cell| std::str::from_utf8(cell).ok());
            cells.push(cell.unwrap_or("").trim());
            start = end;
        }
        cells
    }

    /// The same, kept beyond the next line.
    pub(super) fn owned_cells(&mut self, line: &str) -> Vec<String> {
        self.cells(line).into_iter().map(str::to_owned).collect()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    #[test]
    fn quotes_may_hold_the_delimiter() {
        assert_eq!(Cutter::new(b',').cells(r#"A1,"HILL, WEST",",,Z",5"#), ["A1", "HILL, WEST", ",,Z", "5"]);
        assert_eq!(Cutter::new(b';').cells("1;5,3;"), ["1", "5,3", ""]);
    }

    #[test]
    fn an_unmatched_quote_spoils_its_own_line_only() {
        let mut cutter = Cutter::new(b',');
        assert_eq!(cutter.cells("\"2001-01-01,5").len(), 1);
        assert_eq!(cutter.cells("2001-01-02,5"), ["2001-01-02", "5"]);
    }

    #[test]
    fn a_line_of_commas_is_cut_off() {
        assert!(Cutter::new(b',').cells(&",".repeat(100_000)).len() <= MOST_CELLS);
    }

    #[test]
    fn line_numbers_count_blanks_and_comments() {
        let (lines, comments) = lines_of("# note\r\n\r\na,b\r\n1,2\r\n\r\n,,\r\n").unwrap();
        assert_eq!(comments, 1);
        assert_eq!(lines, [Line { number: 3, text: "a,b" }, Line { number: 4, text: "1,2" }]);
        assert_eq!(lines_of("a,b\rc,d\r").unwrap().0.len(), 2);
    }

    #[test]
    fn decimal_commas_do_not_hide_the_semicolon() {
        let (lines, _) = lines_of("day;rain\n1.1.2001;5,3\n").unwrap();
        assert_eq!(delimiter_of(&lines), b';');
    }

    #[test]
    fn files_that_are_not_text_are_refused() {
        assert_eq!(text_of(b"PK\x03\x04\x00"), Err(ImportError::NotText));
        assert_eq!(text_of(b"\xEF\xBB\xBFa").unwrap(), "a");
    }
}
