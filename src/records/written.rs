//! Building a JSON document.

use serde_json::{Map, Value};

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

/// Twelve numbers.
pub fn twelve(numbers: [f64; 12]) -> Value {
    list(&numbers, |number| Value::from(*number))
}

/// A choice with what it holds, as it is read by [`super::place::Place::as_choice`].
pub fn choice(name: &'static str, held: Value) -> Value {
    object(vec![(name, held)])
}
