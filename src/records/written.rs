//! Building a JSON document.

use super::json::Value;

/// An object of these values.
pub fn object(values: Vec<(&'static str, Value)>) -> Value {
    let mut object = Vec::with_capacity(values.len());
    for (name, value) in values {
        object.push((name.to_owned(), value));
    }
    Value::Object(object)
}

/// A list of what these are written as.
pub fn list<T>(items: &[T], write: fn(&T) -> Value) -> Value {
    let mut list = Vec::with_capacity(items.len());
    for item in items {
        list.push(write(item));
    }
    Value::List(list)
}

/// A number, in the fewest digits that are read as the same again.
pub fn number(number: f64) -> Value {
    Value::Number(number)
}

/// Twelve numbers.
pub fn twelve(numbers: [f64; 12]) -> Value {
    list(&numbers, |each| number(*each))
}

/// A choice with what it holds, as it is read by [`super::place::Place::as_choice`].
pub fn choice(name: &'static str, held: Value) -> Value {
    object(vec![(name, held)])
}
