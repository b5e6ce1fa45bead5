//! Reading a JSON document value by value. Each value knows its place, so that what is wrong can be named:
//! `sites[0].site.system.tanks[2].shape`.

use chrono::NaiveDate;

use super::json::Value;
use crate::quantity::{Range, day};

/// A value does not have the shape that it must have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShapeError {
    /// Where, from the top of the document; empty for the document itself.
    pub path: String,
    /// What is wrong there.
    pub fault: Fault,
}

/// What is wrong with a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Nothing is there.
    Missing,
    /// Something else stands where this must be.
    NotA(Wanted),
    /// A list of another length.
    Length {
        /// How many values there must be.
        wanted: usize,
        /// How many there are.
        found: usize,
    },
    /// A name that stands for nothing here.
    Unknown {
        /// The name.
        name: String,
    },
    /// A value beyond what it may be.
    OutOfRange,
}

/// What a value must be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// A number.
    Number,
    /// A whole number from 0 to this.
    WholeNumber {
        /// The largest that fits.
        most: u32,
    },
    /// A text.
    Text,
    /// True or false.
    Truth,
    /// A date such as 2004-07-31.
    Date,
    /// A list.
    List,
    /// An object with named values.
    Object,
    /// The name of a choice, or an object that holds the choice alone under its name.
    Choice,
}

/// A value and the way to it.
#[derive(Clone, Copy)]
pub struct Place<'a> {
    value: &'a Value,
    step: Step<'a>,
    above: Option<&'a Place<'a>>,
}

#[derive(Clone, Copy)]
enum Step<'a> {
    Top,
    Key(&'a str),
    Item(usize),
}

/// More items than any list of a house has but its days: what runs through all of them for each stays quick.
const MOST_ITEMS: usize = 5_000;

/// What a function of a saved shape reads from a place. The error is boxed: every value read passes one on.
pub type Read<T> = Result<T, Box<ShapeError>>;

impl<'a> Place<'a> {
    /// The whole document.
    pub fn top(value: &'a Value) -> Self {
        Place { value, step: Step::Top, above: None }
    }

    /// The value under a key.
    ///
    /// # Errors
    /// Where this is no object or has no such key.
    pub fn at(&'a self, key: &'a str) -> Read<Place<'a>> {
        match self.under(key)? {
            Some(place) => Ok(place),
            None => Err(Place { step: Step::Key(key), above: Some(self), ..*self }.error(Fault::Missing)),
        }
    }

    /// The value under a key; `None` where there is none, or null.
    ///
    /// # Errors
    /// Where this is no object.
    pub fn at_if_any(&'a self, key: &'a str) -> Read<Option<Place<'a>>> {
        Ok(self.under(key)?.filter(|place| !place.is_null()))
    }

    fn under(&'a self, key: &'a str) -> Read<Option<Place<'a>>> {
        let Value::Object(_) = self.value else { return Err(self.not_a(Wanted::Object)) };
        Ok(self.value.get(key).map(|value| Place { value, step: Step::Key(key), above: Some(self) }))
    }

    /// The number under a key.
    ///
    /// # Errors
    /// Where there is none.
    pub fn number(&self, key: &str) -> Read<f64> {
        self.at(key)?.as_number()
    }

    /// The text under a key.
    ///
    /// # Errors
    /// Where there is none.
    pub fn text(&self, key: &str) -> Read<String> {
        Ok(self.at(key)?.as_text()?.to_owned())
    }

    /// What is true or false under a key.
    ///
    /// # Errors
    /// Where neither stands there.
    pub fn truth(&self, key: &str) -> Read<bool> {
        let place = self.at(key)?;
        if let Value::Truth(truth) = place.value { Ok(*truth) } else { Err(place.not_a(Wanted::Truth)) }
    }

    /// The date under a key.
    ///
    /// # Errors
    /// Where there is no day of the calendar.
    pub fn date(&self, key: &str) -> Read<NaiveDate> {
        let place = self.at(key)?;
        day::read(place.as_text()?).ok_or_else(|| place.not_a(Wanted::Date))
    }

    /// The twelve numbers under a key.
    ///
    /// # Errors
    /// Where there are none, or more or fewer.
    pub fn twelve(&self, key: &str) -> Read<[f64; 12]> {
        self.at(key)?.as_twelve()
    }

    /// What the items of the list under a key are read as.
    ///
    /// # Errors
    /// Where there is no list, and those of its items.
    pub fn list<T>(&self, key: &str, read: fn(&Place<'_>) -> Read<T>) -> Read<Vec<T>> {
        self.at(key)?.as_list(read)
    }

    /// What the items of this list are read as.
    ///
    /// # Errors
    /// Where this is no list, one longer than any house needs, and those of its items.
    pub fn as_list<T>(&self, read: fn(&Place<'_>) -> Read<T>) -> Read<Vec<T>> {
        self.as_list_of_most(MOST_ITEMS, read)
    }

    /// The same of a list that may be longer or must be shorter than others.
    ///
    /// # Errors
    /// As [`Self::as_list`].
    pub fn as_list_of_most<T>(&self, most: usize, read: fn(&Place<'_>) -> Read<T>) -> Read<Vec<T>> {
        let items = self.items()?;
        if items.len() > most {
            return Err(self.error(Fault::OutOfRange));
        }
        let mut list = Vec::with_capacity(items.len());
        for at in 0..items.len() {
            list.push(read(&self.item(items, at))?);
        }
        Ok(list)
    }

    /// The name of this choice, and the place of what it holds: the choice is written as its name alone, or as an
    /// object with what it holds under the name.
    ///
    /// # Errors
    /// Where this is neither.
    pub fn as_choice(&'a self) -> Read<(&'a str, Place<'a>)> {
        match self.value {
            Value::Text(name) => Ok((name, *self)),
            Value::Object(values) if let [(name, value)] = values.as_slice() => {
                Ok((name, Place { value, step: Step::Key(name), above: Some(self) }))
            }
            _ => Err(self.not_a(Wanted::Choice)),
        }
    }

    /// Which of all there are has this name.
    ///
    /// # Errors
    /// Where this is no text, or no name of theirs.
    pub fn as_one_of<T: Copy>(&self, all: &[T], name_of: fn(T) -> &'static str) -> Read<T> {
        let name = self.as_text()?;
        all.iter().copied().find(|one| name_of(*one) == name).ok_or_else(|| self.unknown(name))
    }

    /// This value as a number.
    ///
    /// # Errors
    /// Where it is none, or one that is too large.
    pub fn as_number(&self) -> Read<f64> {
        match self.value {
            Value::Number(number) if number.is_finite() => Ok(*number),
            _ => Err(self.not_a(Wanted::Number)),
        }
    }

    /// This value as twelve numbers.
    ///
    /// # Errors
    /// Where there are none, or more or fewer.
    pub fn as_twelve(&self) -> Read<[f64; 12]> {
        let items = self.items()?;
        if items.len() != 12 {
            return Err(self.error(Fault::Length { wanted: 12, found: items.len() }));
        }
        let mut numbers = [0.0; 12];
        for (at, number) in numbers.iter_mut().enumerate() {
            *number = self.item(items, at).as_number()?;
        }
        Ok(numbers)
    }

    /// This value as twelve numbers within a range.
    ///
    /// # Errors
    /// As [`Self::as_twelve`], and where one lies outside.
    pub fn as_twelve_in(&self, range: Range) -> Read<[f64; 12]> {
        let twelve = self.as_twelve()?;
        if twelve.iter().all(|number| range.holds(*number)) { Ok(twelve) } else { Err(self.error(Fault::OutOfRange)) }
    }

    /// Whether nothing is here.
    pub fn is_null(&self) -> bool {
        *self.value == Value::Null
    }

    /// This value as a whole number.
    ///
    /// # Errors
    /// Where it is none, or larger than `most`.
    pub fn as_whole_number(&self, most: u32) -> Read<u32> {
        match self.value {
            Value::Number(number) if (0.0..=f64::from(most)).contains(number) && number.fract() == 0.0 => {
                Ok(*number as u32)
            }
            _ => Err(self.not_a(Wanted::WholeNumber { most })),
        }
    }

    /// The whole number under a key.
    ///
    /// # Errors
    /// Where there is none, or one larger than `most`.
    pub fn large_number(&self, key: &str, most: u64) -> Read<u64> {
        let place = self.at(key)?;
        match place.value {
            Value::Number(number) if *number >= 0.0 && number.fract() == 0.0 => {
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and not negative")]
                let whole = *number as u64;
                if whole <= most { Ok(whole) } else { Err(place.error(Fault::OutOfRange)) }
            }
            _ => Err(place.not_a(Wanted::WholeNumber { most: u32::MAX })),
        }
    }

    /// This value as a number within a range.
    ///
    /// # Errors
    /// Where it is none, or lies outside.
    pub fn as_number_in(&self, range: Range) -> Read<f64> {
        let number = self.as_number()?;
        if range.holds(number) { Ok(number) } else { Err(self.error(Fault::OutOfRange)) }
    }

    /// This value as a text.
    ///
    /// # Errors
    /// Where it is none.
    pub fn as_text(&self) -> Read<&'a str> {
        if let Value::Text(text) = self.value { Ok(text) } else { Err(self.not_a(Wanted::Text)) }
    }

    /// An error at this place.
    pub fn error(&self, fault: Fault) -> Box<ShapeError> {
        let mut path = String::new();
        self.write_path(&mut path);
        Box::new(ShapeError { path, fault })
    }

    /// The error of a name that stands for nothing at this place.
    pub fn unknown(&self, name: &str) -> Box<ShapeError> {
        self.error(Fault::Unknown { name: name.to_owned() })
    }

    fn not_a(&self, wanted: Wanted) -> Box<ShapeError> {
        self.error(Fault::NotA(wanted))
    }

    fn items(&self) -> Read<&'a [Value]> {
        if let Value::List(items) = self.value { Ok(items) } else { Err(self.not_a(Wanted::List)) }
    }

    fn item(&'a self, items: &'a [Value], at: usize) -> Place<'a> {
        Place { value: &items[at], step: Step::Item(at), above: Some(self) }
    }

    fn write_path(&self, path: &mut String) {
        if let Some(above) = self.above {
            above.write_path(path);
        }
        match self.step {
            Step::Top => {}
            Step::Key(key) => {
                if !path.is_empty() {
                    path.push('.');
                }
                path.push_str(key);
            }
            Step::Item(at) => {
                path.push('[');
                path.push_str(&at.to_string());
                path.push(']');
            }
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn document(text: &str) -> Value {
        Value::read(text).unwrap()
    }

    #[track_caller]
    fn check<T: std::fmt::Debug>(read: Read<T>, path: &str, fault: Fault) {
        assert_eq!(*read.unwrap_err(), ShapeError { path: path.to_owned(), fault });
    }

    #[test]
    fn what_is_wrong_is_named_with_its_place() {
        let tanks =
            document(r#"{ "tanks": [{ "depth": 1.5 }, { "depth": "deep" }], "ends": [1, 2], "open": 1, "id": 2.5 }"#);
        let top = Place::top(&tanks);
        let depth = |place: &Place<'_>| place.number("depth");
        check(top.list("tanks", depth), "tanks[1].depth", Fault::NotA(Wanted::Number));
        check(top.list("ends", depth), "ends[0]", Fault::NotA(Wanted::Object));
        check(top.list("open", depth), "open", Fault::NotA(Wanted::List));
        check(top.number("feeds"), "feeds", Fault::Missing);
        check(top.text("ends"), "ends", Fault::NotA(Wanted::Text));
        check(top.truth("open"), "open", Fault::NotA(Wanted::Truth));
        check(top.twelve("ends"), "ends", Fault::Length { wanted: 12, found: 2 });
        check(top.at("id").unwrap().as_whole_number(9), "id", Fault::NotA(Wanted::WholeNumber { most: 9 }));
        check(top.as_choice().map(|_| ()), "", Fault::NotA(Wanted::Choice));
        check(Place::top(&document("[]")).number("id"), "", Fault::NotA(Wanted::Object));
    }

    #[test]
    fn whole_numbers_have_a_limit() {
        let read = |text: &str| Place::top(&document(text)).as_whole_number(u32::MAX).ok();
        assert_eq!(read("0"), Some(0));
        assert_eq!(read("4294967295"), Some(u32::MAX));
        assert_eq!(read("4294967296"), None);
        for wrong in ["-1", "1e999", "0.5", "\"1\"", "null"] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_number_beyond_all_numbers_is_none() {
        let document = document("[1e308, 1e309]");
        let read = Place::top(&document).as_list(|place| place.as_number());
        check(read, "[1]", Fault::NotA(Wanted::Number));
    }

    #[test]
    fn dates_are_days_of_the_calendar() {
        let read = |text: &str| Place::top(&Value::Object(vec![("start".to_owned(), text.into())])).date("start").ok();
        assert_eq!(read("2004-02-29"), NaiveDate::from_ymd_opt(2004, 2, 29));
        for wrong in ["2003-02-29", "2004-13-01", "2004-02", "", "2004-02-29T00:00", "29.2.2004", "2004-02-"] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
        // Years that no gauge saw, but every date that can be kept must come back.
        for far in [NaiveDate::MIN, NaiveDate::MAX, NaiveDate::default()] {
            assert_eq!(read(&far.to_string()), Some(far));
        }
    }
}
