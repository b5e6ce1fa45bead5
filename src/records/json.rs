//! JSON documents: values read from text and written as text (RFC 8259). Our own, because a general library brings tables
//! for numbers that `quantity::decimal` and the standard library have already: ten kilobytes on their way to the phone.

use std::fmt::Write;

use crate::quantity::decimal;

/// How many lists and objects may stand within each other.
const DEEPEST: usize = 128;

/// A value of a document.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Value {
    /// Nothing.
    #[default]
    Null,
    /// True or false.
    Truth(bool),
    /// A number; one beyond all that can be computed with is infinite.
    Number(f64),
    /// A text.
    Text(String),
    /// A list.
    List(Vec<Value>),
    /// Values with names, in the order of the text.
    Object(Vec<(String, Value)>),
}

/// A text is no JSON document.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SyntaxError {
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
    /// What is wrong there.
    pub fault: SyntaxFault,
}

/// What is wrong with a text that is no JSON document.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SyntaxFault {
    /// It ends before the document does.
    Ends,
    /// Something stands where it must not.
    Misplaced,
    /// Lists and objects within each other, too many.
    TooDeep,
}

impl Value {
    /// Reads a document.
    ///
    /// # Errors
    /// Where the text is none; see [`SyntaxFault`].
    pub fn read(text: &str) -> Result<Value, SyntaxError> {
        let mut reader = Reader { text, at: 0 };
        reader.document().map_err(|fault| {
            let before = text.get(..reader.at).unwrap_or_default();
            let line = before.rsplit('\n').next().unwrap_or_default();
            SyntaxError { line: before.matches('\n').count() + 1, column: line.chars().count() + 1, fault }
        })
    }

    /// This document as text, in one line. A number that JSON has no digits for is written as null.
    pub fn written(&self) -> String {
        let mut text = String::new();
        write(self, &mut text);
        text
    }

    /// The value under a name; the last, should there be several.
    pub fn get(&self, name: &str) -> Option<&Value> {
        let Value::Object(values) = self else { return None };
        values.iter().rfind(|(other, _)| other == name).map(|(_, value)| value)
    }
}

impl From<bool> for Value {
    fn from(truth: bool) -> Self {
        Value::Truth(truth)
    }
}

impl From<u8> for Value {
    fn from(number: u8) -> Self {
        Value::Number(number.into())
    }
}

impl From<u16> for Value {
    fn from(number: u16) -> Self {
        Value::Number(number.into())
    }
}

impl From<u32> for Value {
    fn from(number: u32) -> Self {
        Value::Number(number.into())
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Value::Text(text.to_owned())
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Value::Text(text)
    }
}

/// A text, and how far it has been read.
struct Reader<'a> {
    text: &'a str,
    at: usize,
}

type Found<T> = Result<T, SyntaxFault>;

impl Reader<'_> {
    fn document(&mut self) -> Found<Value> {
        let value = self.value(0)?;
        self.space();
        if self.next().is_none() { Ok(value) } else { Err(SyntaxFault::Misplaced) }
    }

    fn value(&mut self, depth: usize) -> Found<Value> {
        self.space();
        match self.next() {
            Some(b'{' | b'[') if depth == DEEPEST => Err(SyntaxFault::TooDeep),
            Some(b'{') => self.object(depth + 1),
            Some(b'[') => self.list(depth + 1),
            Some(b'"') => self.string().map(Value::Text),
            Some(b'-' | b'0'..=b'9') => self.number(),
            _ => self.word(),
        }
    }

    fn object(&mut self, depth: usize) -> Found<Value> {
        let mut values = Vec::new();
        self.at += 1;
        self.space();
        if self.takes(b'}') {
            return Ok(Value::Object(values));
        }
        loop {
            self.space();
            let name = self.string()?;
            self.space();
            self.must_take(b':')?;
            values.push((name, self.value(depth)?));
            self.space();
            if !self.takes(b',') {
                self.must_take(b'}')?;
                return Ok(Value::Object(values));
            }
        }
    }

    fn list(&mut self, depth: usize) -> Found<Value> {
        let mut values = Vec::new();
        self.at += 1;
        self.space();
        if self.takes(b']') {
            return Ok(Value::List(values));
        }
        loop {
            values.push(self.value(depth)?);
            self.space();
            if !self.takes(b',') {
                self.must_take(b']')?;
                return Ok(Value::List(values));
            }
        }
    }

    fn word(&mut self) -> Found<Value> {
        for (word, value) in [("null", Value::Null), ("true", true.into()), ("false", false.into())] {
            if self.text.get(self.at..).is_some_and(|rest| rest.starts_with(word)) {
                self.at += word.len();
                return Ok(value);
            }
        }
        Err(self.misplaced())
    }

    fn number(&mut self) -> Found<Value> {
        let start = self.at;
        self.takes(b'-');
        if !self.takes(b'0') {
            self.digits()?;
        }
        if self.takes(b'.') {
            self.digits()?;
        }
        if self.takes(b'e') || self.takes(b'E') {
            let _sign = self.takes(b'+') || self.takes(b'-');
            self.digits()?;
        }
        let digits = self.text.get(start..self.at).unwrap_or_default();
        Ok(Value::Number(decimal::read(digits).unwrap_or(f64::INFINITY)))
    }

    fn digits(&mut self) -> Found<()> {
        let start = self.at;
        while self.next().is_some_and(|byte| byte.is_ascii_digit()) {
            self.at += 1;
        }
        if self.at > start { Ok(()) } else { Err(self.misplaced()) }
    }

    fn string(&mut self) -> Found<String> {
        self.must_take(b'"')?;
        let mut string = String::new();
        loop {
            let start = self.at;
            while self.next().is_some_and(|byte| byte >= b' ' && byte != b'"' && byte != b'\\') {
                self.at += 1;
            }
            string.push_str(self.text.get(start..self.at).unwrap_or_default());
            if self.takes(b'"') {
                return Ok(string);
            }
            self.must_take(b'\\')?;
            string.push(self.escaped()?);
        }
    }

    fn escaped(&mut self) -> Found<char> {
        let character = match self.next() {
            Some(byte @ (b'"' | b'\\' | b'/')) => byte.into(),
            Some(b'b') => '\u{8}',
            Some(b'f') => '\u{c}',
            Some(b'n') => '\n',
            Some(b'r') => '\r',
            Some(b't') => '\t',
            Some(b'u') => return self.escaped_by_number(),
            _ => return Err(self.misplaced()),
        };
        self.at += 1;
        Ok(character)
    }

    /// `\u` and four digits; what lies beyond 16 bits is written as two such halves.
    fn escaped_by_number(&mut self) -> Found<char> {
        let mut code = self.half()?;
        if (0xd800..0xdc00).contains(&code) {
            self.must_take(b'\\')?;
            let low = self.half()?;
            // A first half without its second stays: it is no character's code.
            if (0xdc00..0xe000).contains(&low) {
                code = 0x1_0000 + ((code - 0xd800) << 10) + low - 0xdc00;
            }
        }
        char::from_u32(code).ok_or(SyntaxFault::Misplaced)
    }

    fn half(&mut self) -> Found<u32> {
        self.must_take(b'u')?;
        let mut code = 0;
        for _ in 0..4 {
            let digit = self.next().and_then(|byte| char::from(byte).to_digit(16));
            code = code * 16 + digit.ok_or_else(|| self.misplaced())?;
            self.at += 1;
        }
        Ok(code)
    }

    fn space(&mut self) {
        while matches!(self.next(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    fn next(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn takes(&mut self, byte: u8) -> bool {
        let found = self.next() == Some(byte);
        self.at += usize::from(found);
        found
    }

    fn must_take(&mut self, byte: u8) -> Found<()> {
        if self.takes(byte) { Ok(()) } else { Err(self.misplaced()) }
    }

    fn misplaced(&self) -> SyntaxFault {
        if self.at < self.text.len() { SyntaxFault::Misplaced } else { SyntaxFault::Ends }
    }
}

fn write(value: &Value, text: &mut String) {
    match value {
        Value::Null => text.push_str("null"),
        Value::Truth(truth) => text.push_str(if *truth { "true" } else { "false" }),
        Value::Number(number) if number.is_finite() => text.push_str(&number.to_string()),
        Value::Number(_) => text.push_str("null"),
        Value::Text(string) => write_string(string, text),
        Value::List(values) => {
            let mut mark = '[';
            for value in values {
                text.push(mark);
                write(value, text);
                mark = ',';
            }
            text.push_str(if values.is_empty() { "[]" } else { "]" });
        }
        Value::Object(values) => {
            let mut mark = '{';
            for (name, value) in values {
                text.push(mark);
                write_string(name, text);
                text.push(':');
                write(value, text);
                mark = ',';
            }
            text.push_str(if values.is_empty() { "{}" } else { "}" });
        }
    }
}

fn write_string(string: &str, text: &mut String) {
    text.push('"');
    for character in string.chars() {
        match character {
            '"' | '\\' => text.extend(['\\', character]),
            // Writing into a text can't fail.
            '\0'..' ' => _ = write!(text, "\\u{:04x}", u32::from(character)),
            _ => text.push(character),
        }
    }
    text.push('"');
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use proptest::prelude::*;

    /// The same document for the library `serde_json` 1.0.154, with which this is compared.
    fn for_serde(value: &Value) -> serde_json::Value {
        match value {
            Value::Null => serde_json::Value::Null,
            Value::Truth(truth) => (*truth).into(),
            Value::Number(number) => serde_json::Value::Number(number.to_string().parse().unwrap()),
            Value::Text(text) => text.as_str().into(),
            Value::List(values) => values.iter().map(for_serde).collect(),
            Value::Object(values) => values.iter().map(|(name, value)| (name.clone(), for_serde(value))).collect(),
        }
    }

    fn documents() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::Truth),
            any::<f64>().prop_filter("finite", |number| number.is_finite()).prop_map(Value::Number),
            any::<u32>().prop_map(Value::from),
            any::<String>().prop_map(Value::Text),
        ];
        leaf.prop_recursive(4, 40, 6, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..6).prop_map(Value::List),
                prop::collection::btree_map(any::<String>(), inner, 0..6)
                    .prop_map(|values| Value::Object(values.into_iter().collect())),
            ]
        })
    }

    #[track_caller]
    fn check_judged_as_serde_does(text: &str) {
        let (ours, theirs) = (Value::read(text), serde_json::from_str::<serde_json::Value>(text));
        assert_eq!(ours.is_ok(), theirs.is_ok(), "{text:?}: {ours:?} {theirs:?}");
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn what_is_written_is_read_the_same_by_us_and_by_others(document in documents()) {
            let text = document.written();
            prop_assert_eq!(serde_json::from_str::<serde_json::Value>(&text).unwrap(), for_serde(&document));
            prop_assert_eq!(Value::read(&text), Ok(document));
        }

        #[test]
        fn what_others_write_is_read(document in documents()) {
            let text = serde_json::to_string_pretty(&for_serde(&document)).unwrap();
            prop_assert_eq!(Value::read(&text), Ok(document));
        }

        #[test]
        fn a_damaged_document_is_refused_where_others_refuse_it(
            document in documents(),
            at in any::<prop::sample::Index>(),
            put in r#"[-\[\]{},:"0-9.eE+\\unft \n]?"#,
        ) {
            let mut characters: Vec<char> = document.written().chars().collect();
            let at = at.index(characters.len());
            characters.splice(at..=at, put.chars());
            let text: String = characters.into_iter().collect();
            prop_assert_eq!(Value::read(&text).is_ok(), serde_json::from_str::<serde_json::Value>(&text).is_ok(), "{}", text);
        }
    }

    #[test]
    fn the_grammar_is_kept() {
        for text in [
            "",
            " ",
            "01",
            "-",
            "-01",
            "1.",
            ".5",
            "+1",
            "1e",
            "1e+",
            "0x1",
            "1 2",
            "nul",
            "nulls",
            "True",
            "NaN",
            "[1,]",
            "[,1]",
            "[1 2]",
            "[",
            "]",
            "{",
            "{}}",
            r#"{"a"}"#,
            r#"{"a":}"#,
            r#"{"a":1,}"#,
            "{a:1}",
            "'a'",
            "\"",
            "\"\n\"",
            r#""\x""#,
            r#""\u12""#,
            r#""\u12g4""#,
            r#""\ud800""#,
            r#""\ud800\u0041""#,
            r#""\ud800x""#,
            r#""\udc00""#,
            "\u{feff}1",
            "//\n1",
            "-0",
            "1E5",
            "1e-5",
            "0.0",
            " \t\r\n[ ] ",
            r#"{ "" : { } }"#,
            r#""\ud83d\ude00\/\b\f\n\r\t\"\\""#,
            "\"\u{7f}é\"",
        ] {
            check_judged_as_serde_does(text);
        }
    }

    #[test]
    fn what_is_wrong_is_told_with_its_place() {
        let fault = |line, column, fault| Err(SyntaxError { line, column, fault });
        assert_eq!(Value::read("date,rain"), fault(1, 1, SyntaxFault::Misplaced));
        assert_eq!(Value::read("{\n \"é\": x}"), fault(2, 7, SyntaxFault::Misplaced));
        assert_eq!(Value::read("[1,\n2"), fault(2, 2, SyntaxFault::Ends));
        assert_eq!(Value::read(&"[".repeat(100_000)), fault(1, DEEPEST + 1, SyntaxFault::TooDeep));
        assert!(Value::read(&["[".repeat(DEEPEST), "]".repeat(DEEPEST)].concat()).is_ok());
    }

    #[test]
    fn of_several_values_with_one_name_the_last_counts() {
        let document = Value::read(r#"{"a":1,"b":2,"a":3}"#).unwrap();
        assert_eq!(document.get("a"), Some(&Value::Number(3.0)));
        assert_eq!(document.get("c"), None);
        assert_eq!(Value::Null.get("a"), None);
    }

    #[test]
    fn a_number_without_digits_is_written_as_null() {
        assert_eq!(Value::List(vec![Value::Number(f64::NAN), Value::Number(-f64::INFINITY)]).written(), "[null,null]");
    }
}
