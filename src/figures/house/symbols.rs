//! The small signs of the trade: valves, pumps, taps, what the water is for.

use crate::figures::drawing::Ink;
use crate::figures::pen::{Pen, Point, Step};
use crate::site::barrier::BarrierKind;
use crate::site::uses::Class;

/// A valve in a level pipe: hollow with its lever along the pipe while open, filled with its lever across while shut.
pub(super) fn valve(pen: &mut Pen, (x, y): Point, open: bool) {
    const WINGS: [Step; 2] = [((-10.0, -6.0), "v12L"), ((10.0, -6.0), "v12Z")];
    pen.rectangle(Ink::Paper, (x - 10.0, y - 7.0), 20.0, 14.0);
    if !open {
        pen.sign(Ink::Solid, (x, y), &WINGS);
    }
    pen.sign(Ink::Line, (x, y), &WINGS);
    let lever = if open { [(-8.0, -11.0), (8.0, -11.0)] } else { [(0.0, -18.0), (0.0, -10.0)] };
    pen.strokes_at(Ink::Strong, (x, y), &[[(0.0, 0.0), (0.0, -11.0)], lever]);
}

/// A pump: a ring with a triangle that points where it lifts.
pub(super) fn pump(pen: &mut Pen, (x, y): Point, to_right: bool) {
    let tip = if to_right { 8.0 } else { -8.0 };
    pen.circle(Ink::Paper, (x, y), 12.0);
    pen.circle(Ink::Strong, (x, y), 12.0);
    pen.area(Ink::Solid, &[(x + tip, y), (x - tip * 0.6, y - 7.0), (x - tip * 0.6, y + 7.0)]);
}

/// The same in the riser to its taps: small, since other risers pass beside it.
pub(super) fn house_pump(pen: &mut Pen, (x, y): Point) {
    pen.circle(Ink::Paper, (x, y), 6.0);
    pen.circle(Ink::Strong, (x, y), 6.0);
    pen.area(Ink::Solid, &[(x, y + 4.0), (x - 3.5, y - 2.5), (x + 3.5, y - 2.5)]);
}

/// A tap at the end of a pipe, with a drop under it.
pub(super) fn tap(pen: &mut Pen, place: Point) {
    pen.sign(Ink::Strong, place, &[((0.0, 0.0), "h11q6 0 6 7v2M"), ((7.0, 0.0), "v-7m-5 0h10")]);
    pen.sign(Ink::Water, place, &[((17.0, 11.0), "q4.5 7 0 9q-4.5 -2 0 -9Z")]);
}

/// What a class of uses needs water for.
pub(super) fn class(pen: &mut Pen, class: Class, place: Point) {
    let steps: [Step; 2] = match class {
        // A glass, filled.
        Class::Drinking => [((-7.0, -9.0), "l2.5 18h9l2.5 -18ZM"), ((-5.8, -2.0), "h11.6")],
        // A basin.
        Class::House => [((-10.0, -5.0), "h20q-1 11 -7 11h-6q-6 0 -7 -11ZM"), ((0.0, 6.0), "v4")],
        // A sprout.
        Class::Garden => [((0.0, 10.0), "v-13q-8 1 -9 -7q9 -1 9 7q0 -9 9 -9q0 9 -9 9M"), ((-7.0, 10.0), "h14")],
        // A hen.
        Class::Animals => [
            ((-11.0, -4.0), "q0 11 9 11q8 0 8 -9l1 -5l3 -1l-3 -2q-4 -2 -5 3q-4 4 -8 3l-5 -3ZM"),
            ((-4.0, 7.0), "v4m4 -4v4"),
        ],
        // A can with a handle.
        Class::Travel => [((-8.0, -7.0), "h10l5 5v12h-15ZM"), ((-7.0, -7.0), "v-3h7v3")],
    };
    pen.sign(Ink::Line, place, &steps);
}

/// What water passes on its way to a tap.
pub(super) fn barrier(pen: &mut Pen, kind: BarrierKind, place: Point) {
    const HOUSING: Step = ((-7.0, -9.0), "h14v18h-14ZM");
    if kind != BarrierKind::Chlorine {
        pen.rectangle(Ink::Paper, (place.0 - 7.0, place.1 - 9.0), 14.0, 18.0);
    }
    let steps: [Step; 2] = match kind {
        // A filter: a housing with a sieve across.
        BarrierKind::Sediment => [HOUSING, ((0.0, -9.0), "v4m0 3v4m0 3v4")],
        // One with grains in it.
        BarrierKind::Carbon => [HOUSING, ((-4.0, -5.0), "h1m5 0h1m-4 5h1m-4 5h1m5 0h1")],
        BarrierKind::Ceramic => [((-6.0, 9.0), "v-12q0 -6 6 -6q6 0 6 6v12ZM"), ((-8.0, 9.0), "h16")],
        // One with a wall aslant.
        BarrierKind::Membrane => [HOUSING, ((-7.0, 9.0), "l14 -18")],
        // A drop into the pipe.
        BarrierKind::Chlorine => [((0.0, -15.0), "q6 8 0 11q-6 -3 0 -11ZM"), ((-4.0, 0.0), "h8")],
        // A lamp with rays.
        BarrierKind::Ultraviolet => [
            ((-4.0, 0.0), "a4 4 0 0 0 8 0a4 4 0 0 0 -8 0ZM"),
            ((0.0, -9.0), "v3m0 12v3m-7 -16l2 2m10 10l2 2m0 -14l-2 2m-10 10l-2 2"),
        ],
        // That is done in the kitchen.
        BarrierKind::Boiling => return,
    };
    pen.sign(Ink::Line, place, &steps);
}

/// A lorry with a tank on it: hauled water.
pub(super) fn lorry(pen: &mut Pen, (x, y): Point) {
    const OUTLINE: [Step; 3] = [
        ((-15.0, -4.0), "q0 -5 4 -5h12q4 0 4 5v4q0 5 -4 5h-12q-4 0 -4 -5ZM"),
        ((6.0, -4.0), "h6l4 5v7h-10ZM"),
        ((-15.0, 8.0), "h30"),
    ];
    pen.sign(Ink::Paper, (x, y), &[((-14.0, -9.0), "h22v14h-22Z")]);
    pen.sign(Ink::Line, (x, y), &OUTLINE);
    pen.circle(Ink::Solid, (x - 8.0, y + 10.0), 3.0);
    pen.circle(Ink::Solid, (x + 10.0, y + 10.0), 3.0);
}

/// The head of an arrow that points down, its tip at the place.
pub(super) fn arrow_down(pen: &mut Pen, ink: Ink, (x, y): Point) {
    pen.line(ink, &[(x - 4.5, y - 6.0), (x, y), (x + 4.5, y - 6.0)]);
}

/// Two strokes across an upright pipe that is not drawn further.
pub(super) fn broken_off(pen: &mut Pen, at: Point) {
    pen.strokes_at(Ink::Line, at, &[[(-6.0, 2.0), (6.0, -3.0)], [(-6.0, 6.0), (6.0, 1.0)]]);
}
