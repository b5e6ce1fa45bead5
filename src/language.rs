//! The languages that people read here: which of them is spoken, and texts that stand in all of them.
//!
//! A text is written once in each language, side by side, where it is needed; the compiler sees to it that none lacks.

use std::cell::{Cell, RefCell};
use std::ffi::{CStr, c_char};
use std::fmt::{self, Write};
use std::ops::Deref;

/// A language.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish, with a decimal comma as in Spain and most of South America.
    Spanish,
    /// Spanish, with a decimal point as in Mexico, Central America and the Caribbean.
    SpanishWithPoint,
}

/// Where Spanish is written with a decimal point: Unicode's CLDR (from memory).
const POINT_REGIONS: [&str; 12] = ["419", "MX", "US", "GT", "HN", "NI", "SV", "DO", "PA", "PE", "PR", "CU"];

impl Language {
    /// All languages.
    pub const ALL: [Language; 3] = [Language::English, Language::Spanish, Language::SpanishWithPoint];

    /// Its tag of BCP 47, as pages and records name it.
    pub fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
            Language::SpanishWithPoint => "es-419",
        }
    }

    /// Its name in itself, with a number where that tells it from another.
    pub fn name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::Spanish => "Español (1,5\u{a0}m)",
            Language::SpanishWithPoint => "Español (1.5\u{a0}m)",
        }
    }

    /// What stands before the decimals of a number: a comma or a point.
    pub fn decimal_mark(self) -> char {
        if self == Language::Spanish { ',' } else { '.' }
    }

    /// The language of a tag of BCP 47; none of ours is none.
    ///
    /// # Example
    /// ```
    /// use eavewater::language::Language;
    /// assert_eq!(Language::of_tag("es-AR"), Some(Language::Spanish));
    /// assert_eq!(Language::of_tag("es-MX"), Some(Language::SpanishWithPoint));
    /// assert_eq!(Language::of_tag("en-MX"), Some(Language::English));
    /// assert_eq!(Language::of_tag("est"), None);
    /// ```
    pub fn of_tag(tag: &str) -> Option<Self> {
        let mut parts = tag.split('-');
        let primary = parts.next().unwrap_or_default();
        if primary.eq_ignore_ascii_case("en") {
            return Some(Language::English);
        }
        let point = parts.any(|part| POINT_REGIONS.iter().any(|region| region.eq_ignore_ascii_case(part)));
        let spanish = if point { Language::SpanishWithPoint } else { Language::Spanish };
        primary.eq_ignore_ascii_case("es").then_some(spanish)
    }
}

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language that is spoken.
pub fn spoken() -> Language {
    SPOKEN.get()
}

/// Speaks a language from now on, on this thread.
pub fn speak(language: Language) {
    SPOKEN.set(language);
}

/// A text with its first letter large, as a sentence begins.
///
/// # Example
/// ```
/// use eavewater::language::capital;
/// assert_eq!(capital("último filtro"), "Último filtro");
/// assert_eq!(capital("1 mm"), "1 mm");
/// ```
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(large).into_iter().chain(letters).collect()
}

/// A small letter for a large one, in the letters of our languages: the tables for all letters there are weigh 8 kB.
pub fn small(letter: char) -> char {
    let is_large = letter.is_ascii_uppercase() || (('À'..='Þ').contains(&letter) && letter != '×');
    if is_large { (letter as u8 + 0x20).into() } else { letter }
}

fn large(letter: char) -> char {
    let is_small = letter.is_ascii_lowercase() || (('à'..='þ').contains(&letter) && letter != '÷');
    if is_small { (letter as u8 - 0x20).into() } else { letter }
}

/// A text in English and in Spanish, for what is named once and said later; made by [`phrase!`](crate::phrase).
///
/// The program holds some thousands of them, so one is no more than the place of its first letter.
pub struct Phrase(*const c_char);

// SAFETY: what it points to is never written to.
unsafe impl Sync for Phrase {}
// SAFETY: as above.
unsafe impl Send for Phrase {}

/// Stands between the languages of a text.
const NEXT_LANGUAGE: char = '\u{1}';
/// Stands for the first value in a sentence, the next letter for the second one.
const FIRST_VALUE: u8 = 0x0e;

impl Phrase {
    /// A phrase of its English, the mark between the languages, its Spanish and a NUL. Anything else doesn't compile.
    #[doc(hidden)]
    pub const fn new(texts: &'static [u8]) -> Self {
        let texts = CStr::from_bytes_with_nul(texts);
        assert!(texts.is_ok(), "a text holds a NUL");
        match texts {
            Ok(texts) => Phrase(texts.as_ptr()),
            Err(_) => Phrase(c"\u{1}".as_ptr()),
        }
    }

    /// The text in the language that is spoken.
    #[inline(always)]
    pub fn text(&self) -> &'static str {
        Phrase(self.0).spoken()
    }

    /// As `text`, and no more than the pointer to hand over where it is called.
    #[inline(never)]
    fn spoken(self) -> &'static str {
        // SAFETY: the pointer is that of a `CStr` which lives as long as the program: `new` is the only maker.
        let texts = unsafe { CStr::from_ptr(self.0) }.to_str().unwrap_or_default();
        let (english, spanish) = texts.split_once(NEXT_LANGUAGE).unwrap_or_default();
        match spoken() {
            Language::English => english,
            Language::Spanish => spanish,
            Language::SpanishWithPoint => pointed(spanish),
        }
    }

    /// The sentence in the language that is spoken, with the values that it names.
    #[doc(hidden)]
    #[inline(always)]
    pub fn with(&self, values: &[&dyn fmt::Display]) -> String {
        Phrase(self.0).filled(values)
    }

    /// The text in the language that is spoken, one's own. Not by way of `text`: where it is called that is one call.
    #[inline(always)]
    pub fn to_owned(&self) -> String {
        Phrase(self.0).owned()
    }

    #[inline(never)]
    fn owned(self) -> String {
        self.text().to_owned()
    }

    #[inline(never)]
    fn filled(self, values: &[&dyn fmt::Display]) -> String {
        let mut text = String::new();
        for piece in self.text().split_inclusive(|c| c < ' ') {
            let mark = piece.as_bytes().last().map_or(0, |last| last.wrapping_sub(FIRST_VALUE));
            match values.get(usize::from(mark)) {
                Some(value) => {
                    text.push_str(&piece[..piece.len() - 1]);
                    // A `String` takes everything.
                    _ = write!(text, "{value}");
                }
                None => text.push_str(piece),
            }
        }
        text
    }
}

thread_local! {
    static POINTED: RefCell<Vec<(*const u8, &'static str)>> = const { RefCell::new(Vec::new()) };
}

/// A text with a point for each comma between two figures. It is made once for each text that has any, and stays.
fn pointed(text: &'static str) -> &'static str {
    let is_decimal = |figures: &[u8]| matches!(figures, [b'0'..=b'9', b',', b'0'..=b'9']);
    if !text.as_bytes().windows(3).any(is_decimal) {
        return text;
    }
    POINTED.with_borrow_mut(|made| {
        if let Some((_, pointed)) = made.iter().find(|(of, _)| *of == text.as_ptr()) {
            return *pointed;
        }
        let around = |at: usize| at.checked_sub(1).and_then(|before| text.as_bytes().get(before..at + 2));
        let letter = |(at, letter)| if around(at).is_some_and(is_decimal) { '.' } else { letter };
        let pointed = &*text.char_indices().map(letter).collect::<String>().leak();
        made.push((text.as_ptr(), pointed));
        pointed
    })
}

/// How long a sentence is when each `{name}` in it is one letter.
#[doc(hidden)]
pub const fn length_with_marks(sentence: &str) -> usize {
    let bytes = sentence.as_bytes();
    let (mut length, mut at) = (0, 0);
    while at < bytes.len() {
        if bytes[at] == b'{' {
            while bytes[at] != b'}' {
                at += 1;
            }
        }
        length += 1;
        at += 1;
    }
    length
}

/// A sentence with a mark for each `{name}`, by the place of the name among `names`. A name that isn't there, and one
/// that the sentence doesn't say, don't compile.
#[doc(hidden)]
pub const fn with_marks<const LENGTH: usize>(sentence: &str, names: &[&str]) -> [u8; LENGTH] {
    let bytes = sentence.as_bytes();
    let mut marked = [0; LENGTH];
    let mut met = 0_u32;
    let (mut to, mut at) = (0, 0);
    while at < bytes.len() {
        marked[to] = bytes[at];
        if bytes[at] == b'{' {
            let start = at + 1;
            while bytes[at] != b'}' {
                at += 1;
            }
            let mut name = 0;
            while !is_at(bytes, start, at, names[name].as_bytes()) {
                name += 1;
            }
            met |= 1 << name;
            marked[to] = FIRST_VALUE + name as u8;
        }
        to += 1;
        at += 1;
    }
    assert!(names.len() <= (b' ' - FIRST_VALUE) as usize, "more values than there are marks");
    assert!(met.count_ones() as usize == names.len(), "a value has no place in the sentence");
    marked
}

const fn is_at(bytes: &[u8], start: usize, end: usize, name: &[u8]) -> bool {
    if end - start != name.len() {
        return false;
    }
    let mut at = 0;
    while at < name.len() {
        if bytes[start + at] != name[at] {
            return false;
        }
        at += 1;
    }
    true
}

impl PartialEq for Phrase {
    fn eq(&self, other: &Self) -> bool {
        self.text() == other.text()
    }
}

impl fmt::Debug for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

impl Deref for Phrase {
    type Target = str;

    fn deref(&self) -> &str {
        self.text()
    }
}

impl fmt::Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

impl From<Phrase> for String {
    fn from(phrase: Phrase) -> Self {
        phrase.to_owned()
    }
}

/// A text in English and in Spanish, which is said when it is shown.
///
/// # Example
/// ```
/// use eavewater::language::{Language, Phrase, speak};
/// use eavewater::phrase;
/// const TANK: Phrase = phrase!("Tank", "Tanque");
/// assert_eq!(&*TANK, "Tank");
/// speak(Language::Spanish);
/// assert_eq!(&*TANK, "Tanque");
/// ```
#[macro_export]
macro_rules! phrase {
    ($english:literal, $spanish:literal $(,)?) => {
        const { $crate::language::Phrase::new(concat!($english, "\u{1}", $spanish, "\0").as_bytes()) }
    };
}

/// That of the texts in English and in Spanish which is spoken.
#[macro_export]
macro_rules! said {
    ($english:literal, $spanish:literal $(,)?) => {
        $crate::phrase!($english, $spanish).text()
    };
}

/// A sentence with values in it, in English and in Spanish. Each value has a name, is displayed, and stands in the sentence.
///
/// # Example
/// ```
/// use eavewater::language::{Language, speak};
/// use eavewater::say;
/// let tank = "A";
/// let sentence = || say!("{tank} holds {days} days.", "{tank} guarda {days} días.", days = 3, tank);
/// assert_eq!(sentence(), "A holds 3 days.");
/// speak(Language::Spanish);
/// assert_eq!(sentence(), "A guarda 3 días.");
/// ```
///
/// A name without a value doesn't compile:
/// ```compile_fail
/// eavewater::say!("{tank} holds {days} days.", "{tank} guarda {days} días.", days = 3);
/// ```
///
/// Nor does a value that isn't said:
/// ```compile_fail
/// eavewater::say!("It holds {days} days.", "Guarda {days} días.", days = 3, tank = "A");
/// ```
#[macro_export]
macro_rules! say {
    ($english:literal, $spanish:literal $(, $name:ident $(= $value:expr)?)* $(,)?) => {
        const {
            const SENTENCE: &str = concat!($english, "\u{1}", $spanish, "\0");
            const MARKED: &[u8; $crate::language::length_with_marks(SENTENCE)] =
                &$crate::language::with_marks(SENTENCE, &[$(stringify!($name)),*]);
            $crate::language::Phrase::new(MARKED)
        }
        .with(&[$($crate::say!(@value $name $($value)?)),*])
    };
    (@value $name:ident) => { &$name };
    (@value $name:ident $value:expr) => { &$value };
}

#[cfg(test)]
mod tests {
    use super::{Language, speak};

    #[test]
    fn decimals_within_a_text_follow_the_mark() {
        let texts = || {
            let litres = 3;
            [
                said!("0.5 to 2.25 mg/L, 1,000 L", "de 0,5 a 2,25 mg/L, 1000 L").to_owned(),
                said!("1, 2, 3", "1, 2, 3 años").to_owned(),
                say!("{litres} L and 0.5 °C", "ñ,1,5 y {litres} L", litres),
            ]
        };
        for _ in 0..2 {
            speak(Language::SpanishWithPoint);
            assert_eq!(texts(), ["de 0.5 a 2.25 mg/L, 1000 L", "1, 2, 3 años", "ñ,1.5 y 3 L"]);
            speak(Language::Spanish);
            assert_eq!(texts(), ["de 0,5 a 2,25 mg/L, 1000 L", "1, 2, 3 años", "ñ,1,5 y 3 L"]);
            speak(Language::English);
            assert_eq!(texts(), ["0.5 to 2.25 mg/L, 1,000 L", "1, 2, 3", "3 L and 0.5 °C"]);
        }
    }
}
