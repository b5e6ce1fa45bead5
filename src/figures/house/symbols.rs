//! The small signs of the trade: valves, pumps, taps, what the water is for.

use crate::figures::drawing::Ink;
use crate::figures::pen::{Pen, Point};
use crate::site::uses::Class;

/// A valve in a level pipe: hollow with its lever along the pipe while open, filled with its lever across while shut.
pub(super) fn valve(pen: &mut Pen, (x, y): Point, open: bool) {
    let wings = format!("M{:.1} {:.1}v12L{:.1} {:.1}v12Z", x - 10.0, y - 6.0, x + 10.0, y - 6.0);
    pen.rectangle(Ink::Paper, (x - 10.0, y - 7.0), 20.0, 14.0);
    if !open {
        pen.path(Ink::Solid, wings.clone());
    }
    pen.path(Ink::Line, wings);
    let lever = if open { vec![(x - 8.0, y - 11.0), (x + 8.0, y - 11.0)] } else { vec![(x, y - 18.0), (x, y - 10.0)] };
    pen.lines(Ink::Strong, &[vec![(x, y), (x, y - 11.0)], lever]);
}

/// A pump: a ring with a triangle that points where it lifts.
pub(super) fn pump(pen: &mut Pen, (x, y): Point, to_right: bool) {
    let tip = if to_right { 8.0 } else { -8.0 };
    pen.circle(Ink::Paper, (x, y), 12.0);
    pen.circle(Ink::Strong, (x, y), 12.0);
    pen.area(Ink::Solid, &[(x + tip, y), (x - tip * 0.6, y - 7.0), (x - tip * 0.6, y + 7.0)]);
}

/// A tap at the end of a pipe, with a drop under it.
pub(super) fn tap(pen: &mut Pen, (x, y): Point) {
    pen.path(Ink::Strong, format!("M{x:.1} {y:.1}h11q6 0 6 7v2M{:.1} {y:.1}v-7m-5 0h10", x + 7.0));
    pen.path(Ink::Water, format!("M{:.1} {:.1}q4.5 7 0 9q-4.5 -2 0 -9Z", x + 17.0, y + 11.0));
}

/// What a class of uses needs water for.
pub(super) fn class(pen: &mut Pen, class: Class, (x, y): Point) {
    let d = match class {
        // A glass, filled.
        Class::Drinking => {
            format!("M{:.1} {:.1}l2.5 18h9l2.5 -18ZM{:.1} {:.1}h11.6", x - 7.0, y - 9.0, x - 5.8, y - 2.0)
        }
        // A basin.
        Class::House => {
            format!("M{:.1} {:.1}h20q-1 11 -7 11h-6q-6 0 -7 -11ZM{:.1} {:.1}v4", x - 10.0, y - 5.0, x, y + 6.0)
        }
        // A sprout.
        Class::Garden => format!(
            "M{x:.1} {:.1}v-13q-8 1 -9 -7q9 -1 9 7q0 -9 9 -9q0 9 -9 9M{:.1} {:.1}h14",
            y + 10.0,
            x - 7.0,
            y + 10.0
        ),
        // A hen.
        Class::Animals => format!(
            "M{:.1} {:.1}q0 11 9 11q8 0 8 -9l1 -5l3 -1l-3 -2q-4 -2 -5 3q-4 4 -8 3l-5 -3ZM{:.1} {:.1}v4m4 -4v4",
            x - 11.0,
            y - 4.0,
            x - 4.0,
            y + 7.0
        ),
        // A can with a handle.
        Class::Travel => format!("M{:.1} {:.1}h10l5 5v12h-15ZM{:.1} {:.1}v-3h7v3", x - 8.0, y - 7.0, x - 7.0, y - 7.0),
    };
    pen.path(Ink::Line, d);
}

/// A lorry with a tank on it: hauled water.
pub(super) fn lorry(pen: &mut Pen, (x, y): Point) {
    pen.path(Ink::Paper, format!("M{:.1} {:.1}h22v14h-22Z", x - 14.0, y - 9.0));
    pen.path(
        Ink::Line,
        format!(
            "M{:.1} {:.1}q0 -5 4 -5h12q4 0 4 5v4q0 5 -4 5h-12q-4 0 -4 -5ZM{:.1} {:.1}h6l4 5v7h-10ZM{:.1} {:.1}h30",
            x - 15.0,
            y - 4.0,
            x + 6.0,
            y - 4.0,
            x - 15.0,
            y + 8.0
        ),
    );
    pen.circle(Ink::Solid, (x - 8.0, y + 10.0), 3.0);
    pen.circle(Ink::Solid, (x + 10.0, y + 10.0), 3.0);
}

/// The head of an arrow that points down, its tip at the place.
pub(super) fn arrow_down(pen: &mut Pen, ink: Ink, (x, y): Point) {
    pen.line(ink, &[(x - 4.5, y - 6.0), (x, y), (x + 4.5, y - 6.0)]);
}

/// Two strokes across an upright pipe that is not drawn further.
pub(super) fn broken_off(pen: &mut Pen, (x, y): Point) {
    pen.lines(Ink::Line, &[vec![(x - 6.0, y + 2.0), (x + 6.0, y - 3.0)], vec![(x - 6.0, y + 6.0), (x + 6.0, y + 1.0)]]);
}
