//! A pen that puts lines, areas and words on a sheet.

use std::fmt::Write;

use super::drawing::{Anchor, Ink, Mark};

/// A place on the sheet.
pub(super) type Point = (f64, f64);

/// Radius of a pipe's elbow.
const ELBOW: f64 = 6.0;
/// Length at a pipe's ends where it passes over nothing.
const JOINED: f64 = 7.0;

/// What has been drawn so far.
#[derive(Default)]
pub(super) struct Pen {
    /// The marks, from back to front.
    pub marks: Vec<Mark>,
}

impl Pen {
    /// A line through some places.
    pub fn line(&mut self, ink: Ink, points: &[Point]) {
        self.path(ink, through(points));
    }

    /// Several lines as one mark.
    pub fn lines(&mut self, ink: Ink, lines: &[Vec<Point>]) {
        let d: String = lines.iter().map(|line| through(line)).collect();
        self.path(ink, d);
    }

    /// An area with its corners.
    pub fn area(&mut self, ink: Ink, corners: &[Point]) {
        if corners.len() > 2 {
            self.path(ink, through(corners) + "Z");
        }
    }

    /// An upright rectangle.
    pub fn rectangle(&mut self, ink: Ink, (x, y): Point, width: f64, height: f64) {
        self.area(ink, &[(x, y), (x + width, y), (x + width, y + height), (x, y + height)]);
    }

    /// A circle.
    pub fn circle(&mut self, ink: Ink, (x, y): Point, radius: f64) {
        self.path(
            ink,
            format!(
                "M{:.1} {y:.1}a{radius:.1} {radius:.1} 0 1 0 {:.1} 0a{radius:.1} {radius:.1} 0 1 0 {:.1} 0Z",
                x - radius,
                2.0 * radius,
                -2.0 * radius
            ),
        );
    }

    /// Path data made elsewhere; nothing where it is empty.
    pub fn path(&mut self, ink: Ink, d: String) {
        if !d.is_empty() {
            self.marks.push(Mark::Path { d, ink });
        }
    }

    /// A pipe with rounded elbows that passes over whatever it crosses.
    pub fn pipe(&mut self, ink: Ink, points: &[Point]) {
        self.path(Ink::Gap, with_elbows(&without_ends(points)));
        self.path(ink, with_elbows(points));
    }

    /// A line of text.
    pub fn text(&mut self, ink: Ink, (x, y): Point, anchor: Anchor, size: f64, text: &str) {
        if !text.is_empty() {
            self.marks.push(Mark::Text { x, y, anchor, text: text.to_owned(), ink, size });
        }
    }
}

/// Path data of a line through some places.
pub(super) fn through(points: &[Point]) -> String {
    let mut d = String::with_capacity(points.len() * 12);
    if points.len() < 2 {
        return d;
    }
    for (at, (x, y)) in points.iter().enumerate() {
        // Writing to a String can't fail.
        let _ = write!(d, "{}{x:.1} {y:.1}", if at == 0 { 'M' } else { 'L' });
    }
    d
}

fn with_elbows(points: &[Point]) -> String {
    let mut d = String::new();
    for (at, &(x, y)) in points.iter().enumerate() {
        let _ = match (at.checked_sub(1).and_then(|before| points.get(before)), points.get(at + 1)) {
            (None, _) => write!(d, "M{x:.1} {y:.1}"),
            (Some(_), None) => write!(d, "L{x:.1} {y:.1}"),
            (Some(&before), Some(&after)) => {
                let (x1, y1) = towards((x, y), before, ELBOW);
                let (x2, y2) = towards((x, y), after, ELBOW);
                write!(d, "L{x1:.1} {y1:.1}Q{x:.1} {y:.1} {x2:.1} {y2:.1}")
            }
        };
    }
    d
}

/// A way without its first and last few pixels: there it is joined to something that must stay whole.
fn without_ends(points: &[Point]) -> Vec<Point> {
    let mut inner = points.to_vec();
    if let [first, second, ..] = points[..] {
        inner[0] = towards(first, second, JOINED);
    }
    if let [.., before, last] = points[..] {
        inner[points.len() - 1] = towards(last, before, JOINED);
    }
    inner
}

/// The place at a distance from one place to another, but at most half-way.
fn towards((x, y): Point, (to_x, to_y): Point, distance: f64) -> Point {
    let length = (to_x - x).hypot(to_y - y);
    let share = if length > 0.0 { (distance / length).min(0.5) } else { 0.0 };
    (x + (to_x - x) * share, y + (to_y - y) * share)
}
