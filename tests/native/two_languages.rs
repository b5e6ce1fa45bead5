//! No text that a person reads stands in one language only: each literal with words in it, in the rooms that speak, is
//! an argument of `said!`, `say!` or `phrase!` (see `src/language.rs`), or is named here.

use crate::code_laws::sources;

/// Rooms of which the words are read by somebody.
const SPEAK: [&str; 3] = ["words/", "ui/", "app/"];
/// What a text in two languages is an argument of; and a reason given to the compiler, which nobody else reads.
const SPOKEN: [&str; 4] = ["said!", "say!", "phrase!", "expect"];
/// Names, signs and keys that are the same in every language.
const NAMES: [&str; 16] = [
    "ArrowLeft",
    "ArrowRight",
    "ArrowDown",
    "ArrowUp",
    "Tab",
    "End",
    "PageDown",
    "Home",
    "PageUp",
    "Eavewater",
    "Enter",
    "Escape",
    "EPA",
    r"E.\u{a0}coli",
    "{} log",
    r"{}\u{a0}min",
];
/// What one language asks its own grammar.
const GRAMMAR: [&str; 4] = ["tiene", "tienen", "hie", "hia"];

/// A string literal: its line, what encloses it, its text.
struct Literal<'a> {
    line: usize,
    within: String,
    text: &'a str,
}

/// The literals of a file before its tests, each with the name of the call that it is an argument of.
fn literals(source: &str) -> Vec<Literal<'_>> {
    let source = source.split("#[cfg(test)]").next().unwrap_or_default();
    let bytes = source.as_bytes();
    let (mut found, mut calls, mut at) = (Vec::new(), Vec::new(), 0);
    while at < bytes.len() {
        match bytes[at] {
            b'/' if source[at..].starts_with("//") => {
                at += source[at..].find('\n').unwrap_or(source.len() - at);
                continue;
            }
            // A character, which may be a quotation mark or a bracket; not a lifetime.
            b'\'' => {
                let rest: Vec<char> = source[at + 1..].chars().take(12).collect();
                let length = match rest.as_slice() {
                    ['\\', ..] => rest.iter().skip(2).position(|c| *c == '\'').map(|end| end + 3),
                    [_, '\'', ..] => Some(2),
                    _ => None,
                };
                at += length.map_or(0, |length| rest[..length].iter().map(|c| c.len_utf8()).sum());
            }
            b'(' | b'[' | b'{' => {
                let name = source[..at].trim_end_matches(|c: char| c.is_whitespace());
                let called: String =
                    name.chars().rev().take_while(|c| c.is_alphanumeric() || "_!".contains(*c)).collect();
                calls.push(if bytes[at] == b'(' { called.chars().rev().collect() } else { String::new() });
            }
            b')' | b']' | b'}' => _ = calls.pop(),
            b'"' => {
                let start = at + 1;
                at = start;
                while bytes[at] != b'"' {
                    at += if bytes[at] == b'\\' { 2 } else { 1 };
                }
                let line = source[..start].lines().count();
                found.push(Literal {
                    line,
                    within: calls.last().cloned().unwrap_or_default(),
                    text: &source[start..at],
                });
            }
            _ => {}
        }
        at += 1;
    }
    found
}

/// Whether there are words to be read in a literal of a room: in `words` everything is; elsewhere what begins
/// with a capital, as names of classes and elements do not.
fn is_read(file: &str, text: &str) -> bool {
    let mut plain = String::new();
    let mut depth = 0;
    let mut escaped = false;
    for c in text.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            '\\' => escaped = true,
            _ if escaped => escaped = false,
            _ if depth == 0 => plain.push(c),
            _ => {}
        }
    }
    let words: Vec<&str> = plain.split(|c: char| !c.is_alphabetic()).filter(|word| word.chars().count() > 2).collect();
    match words.as_slice() {
        [] => false,
        _ if file.starts_with("words/") => true,
        [first, ..] => first.starts_with(char::is_uppercase) && first.contains(char::is_lowercase),
    }
}

#[test]
fn what_is_read_stands_in_both_languages() {
    let mut found = Vec::new();
    for (file, source) in sources() {
        if !SPEAK.iter().any(|room| file.starts_with(room)) || file.ends_with("_test.rs") {
            continue;
        }
        for Literal { line, within, text } in literals(&source) {
            if is_read(&file, text)
                && !SPOKEN.contains(&within.as_str())
                && !NAMES.contains(&text)
                && !GRAMMAR.contains(&text)
            {
                found.push(format!("src/{file}:{line}: {text:?} stands in one language (within {within:?})"));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}
