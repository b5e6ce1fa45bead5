//! The languages that people read here: which of them is spoken, and texts that stand in all of them.
//!
//! A text is written once in each language, side by side, where it is needed; the compiler sees to it that none lacks.

use std::cell::Cell;
use std::fmt;
use std::ops::Deref;

/// A language.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish.
    Spanish,
}

impl Language {
    /// All languages.
    pub const ALL: [Language; 2] = [Language::English, Language::Spanish];

    /// Its tag of BCP 47, as pages and records name it.
    pub fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
        }
    }

    /// Its name in itself.
    pub fn name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::Spanish => "Español",
        }
    }

    /// The language of a tag of BCP 47, whatever its region; none of ours is none.
    ///
    /// # Example
    /// ```
    /// use eavewater::language::Language;
    /// assert_eq!(Language::of_tag("es-MX"), Some(Language::Spanish));
    /// assert_eq!(Language::of_tag("est"), None);
    /// ```
    pub fn of_tag(tag: &str) -> Option<Self> {
        let primary = tag.split('-').next().unwrap_or_default();
        Self::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(primary))
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

/// A text in English and in Spanish, for what is named once and said later.
#[derive(Debug, PartialEq)]
pub struct Phrase(pub &'static str, pub &'static str);

impl Phrase {
    /// The text in the language that is spoken.
    pub fn text(&self) -> &'static str {
        said(self.0, self.1)
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
        phrase.text().to_owned()
    }
}

/// That of the texts in English and in Spanish which is spoken.
#[inline(never)]
pub fn said(english: &'static str, spanish: &'static str) -> &'static str {
    match spoken() {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// That of the sentences in English and in Spanish which is spoken; see [`say!`](crate::say).
#[inline(never)]
pub fn written(english: fmt::Arguments<'_>, spanish: fmt::Arguments<'_>) -> String {
    fmt::format(match spoken() {
        Language::English => english,
        Language::Spanish => spanish,
    })
}

/// A sentence with values in it, in English and in Spanish: as `format!`, but each value has a name.
///
/// # Example
/// ```
/// use eavewater::language::{Language, speak};
/// use eavewater::say;
/// let tank = "A";
/// let sentence = || say!("{tank} holds {days} days.", "{tank} guarda {days} días.", days = 3);
/// assert_eq!(sentence(), "A holds 3 days.");
/// speak(Language::Spanish);
/// assert_eq!(sentence(), "A guarda 3 días.");
/// ```
#[macro_export]
macro_rules! say {
    ($english:literal, $spanish:literal $(, $name:ident = $value:expr)* $(,)?) => {{
        $(let $name = &$value;)*
        $crate::language::written(format_args!($english), format_args!($spanish))
    }};
}
