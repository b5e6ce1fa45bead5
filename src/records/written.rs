//! Building a JSON document.

use serde_json::{Map, Number, Value};

/// An object of these values.
pub fn object(values: Vec<(&'static str, Value)>) -> Value {
    let mut object = Map::new();
    for (key, value) in values {
        object.insert(key.to_owned(), value);
    }
    Value::Object(object)
}

/// A list of what these are written as.
pub fn list<T>(items: &[T], write: fn(&T) -> Value) -> Value {
    let mut list = Vec::with_capacity(items.len());
    for item in items {
        list.push(write(item));
    }
    Value::Array(list)
}

/// A number, in the fewest digits that are read as the same again.
pub fn number(number: f64) -> Value {
    let mut digits = number.to_string();
    if !digits.contains('.') {
        digits.push_str(".0");
    }
    Value::Number(Number::from_string_unchecked(digits))
}

/// Twelve numbers.
pub fn twelve(numbers: [f64; 12]) -> Value {
    list(&numbers, |each| number(*each))
}

/// A choice with what it holds, as it is read by [`super::place::Place::as_choice`].
pub fn choice(name: &'static str, held: Value) -> Value {
    object(vec![(name, held)])
}
