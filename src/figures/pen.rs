//! A pen that puts lines, areas and words on a sheet.

use std::fmt::Write;

use super::drawing::{Anchor, Ink, Mark, apart};
use super::lettering::LEADING;
use crate::quantity::decimal::tenths;

/// A place on the sheet.
pub(super) type Point = (f64, f64);

/// The two ends of a straight stroke.
pub(super) type Stroke = [Point; 2];

/// A place as it lies from another, and the path data that goes on from there.
pub(super) type Step<'a> = (Point, &'a str);

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

    /// Several straight strokes as one mark.
    pub fn strokes(&mut self, ink: Ink, strokes: &[Stroke]) {
        let mut d = String::with_capacity(strokes.len() * 24);
        for stroke in strokes {
            add_through(&mut d, stroke);
        }
        self.path(ink, d);
    }

    /// Strokes as they lie from a place, as one mark.
    pub fn strokes_at(&mut self, ink: Ink, at: Point, strokes: &[Stroke]) {
        let mut d = String::with_capacity(strokes.len() * 24);
        for [from, to] in strokes {
            add_through(&mut d, &[moved(*from, at), moved(*to, at)]);
        }
        self.path(ink, d);
    }

    /// A closed line through some places.
    pub fn outline(&mut self, ink: Ink, corners: &[Point]) {
        self.path(ink, through(corners) + "Z");
    }

    /// An area with its corners as they lie from a place.
    pub fn area_at(&mut self, ink: Ink, at: Point, corners: &[Point]) {
        let corners: Vec<Point> = corners.iter().map(|corner| moved(*corner, at)).collect();
        self.area(ink, &corners);
    }

    /// A sign at a place: places as they lie from it, each with the path data that goes on from there.
    pub fn sign(&mut self, ink: Ink, at: Point, steps: &[Step]) {
        let mut d = "M".to_owned();
        for &(place, onward) in steps {
            add_place(&mut d, moved(place, at));
            d.push_str(onward);
        }
        self.path(ink, d);
    }

    /// An area with its corners.
    pub fn area(&mut self, ink: Ink, corners: &[Point]) {
        if corners.len() > 2 {
            self.outline(ink, corners);
        }
    }

    /// An upright rectangle.
    pub fn rectangle(&mut self, ink: Ink, (x, y): Point, width: f64, height: f64) {
        self.area(ink, &[(x, y), (x + width, y), (x + width, y + height), (x, y + height)]);
    }

    /// A circle.
    pub fn circle(&mut self, ink: Ink, (x, y): Point, radius: f64) {
        let mut d = "M".to_owned();
        add_place(&mut d, (x - radius, y));
        for across in [2.0 * radius, -2.0 * radius] {
            d.push('a');
            add_place(&mut d, (radius, radius));
            d.push_str(" 0 1 0 ");
            add_number(&mut d, across);
            d.push_str(" 0");
        }
        d.push('Z');
        self.path(ink, d);
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

    /// Lines of text, one below the other; returns where the next one would stand.
    pub fn texts(&mut self, ink: Ink, (x, mut y): Point, anchor: Anchor, size: f64, lines: &[String]) -> f64 {
        for line in lines {
            self.text(ink, (x, y), anchor, size, line);
            y += LEADING;
        }
        y
    }

    /// A line of text.
    pub fn text(&mut self, ink: Ink, (x, y): Point, anchor: Anchor, size: f64, text: &str) {
        if !text.is_empty() {
            self.marks.push(Mark::Text { x, y, anchor, text: text.to_owned(), ink, size });
        }
    }
}

/// Where a place stands that lies so far from another.
fn moved((dx, dy): Point, (x, y): Point) -> Point {
    (x + dx, y + dy)
}

/// Path data of a line through some places.
pub(super) fn through(points: &[Point]) -> String {
    let mut d = String::with_capacity(points.len() * 12);
    add_through(&mut d, points);
    d
}

/// Adds a line through some places to path data.
pub(super) fn add_through(d: &mut String, points: &[Point]) {
    if points.len() < 2 {
        return;
    }
    for (at, place) in points.iter().enumerate() {
        d.push(if at == 0 { 'M' } else { 'L' });
        add_place(d, *place);
    }
}

fn add_place(d: &mut String, (x, y): Point) {
    add_number(d, x);
    d.push(' ');
    add_number(d, y);
}

fn add_number(d: &mut String, number: f64) {
    // Writing to a String can't fail.
    let _ = write!(d, "{}", tenths(number));
}

fn with_elbows(points: &[Point]) -> String {
    let mut d = String::new();
    for (at, &place) in points.iter().enumerate() {
        d.push(if at == 0 { 'M' } else { 'L' });
        if let (true, Some(&after)) = (at > 0, points.get(at + 1)) {
            add_place(&mut d, towards(place, points[at - 1], ELBOW));
            d.push('Q');
            add_place(&mut d, place);
            d.push(' ');
            add_place(&mut d, towards(place, after, ELBOW));
        } else {
            add_place(&mut d, place);
        }
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
    let length = apart((x, y), (to_x, to_y));
    let share = if length > 0.0 { (distance / length).min(0.5) } else { 0.0 };
    (x + (to_x - x) * share, y + (to_y - y) * share)
}
