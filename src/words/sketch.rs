//! Words of the sketch.

use super::{count, percent};
use crate::quantity::{Kind, Units};

/// Title.
pub const TITLE: &str = "Sketch a house";
/// How to.
pub const LEAD: &str =
    "Drag, or type with or without a unit: 15 m, 1,600 sq ft, 5000 gal. Everything can be refined later.";
/// Where twelve typed means come from.
pub const MEANS_SOURCE: &str = "entered by hand";
/// Label of the rain.
pub const RAIN: &str = "Rain of the place";
/// No rain yet.
pub const NO_RAIN: &str = "Choose the rain";
/// Twelve means.
pub const TWELVE: &str = "Twelve monthly means";
/// A file.
pub const RECORD: &str = "A daily record from a file";
/// What is wanted before there is an answer.
pub const NO_ANSWER: &str = "Give the place's rain below, and the answer stands here.";
/// How twelve means are run.
pub const GENERATED: &str = "Fifty years drawn from these means, with usual numbers of rain days and a usual spread \
                             of years: a rough guide until there is a daily record.";

/// The range of the answer, in short.
pub fn chance(range: (f64, f64)) -> String {
    format!("Chance of a year without a dry day: {} to {}.", percent(range.0), percent(range.1))
}

/// The rain of another site.
pub fn same_as(name: &str) -> String {
    format!("The same as {name}")
}

/// Label of the twelve means.
pub fn twelve(units: &Units) -> String {
    format!("January to December, in {}", units.of(Kind::Depth).sign())
}

/// Fewer or more than twelve.
pub fn not_twelve(found: usize) -> String {
    format!("Twelve numbers with spaces between; {} so far.", count(found, "number", "numbers"))
}

/// What is no depth.
pub fn not_a_depth(text: &str) -> String {
    format!("“{text}” is no depth of rain for a month.")
}
