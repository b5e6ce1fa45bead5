//! What every drawing must keep, for tests.

use super::Anchor;
use super::drawing::{Drawing, Mark};
use super::lettering;

/// Fails unless all marks are numbers within the sheet and all text is large enough.
#[track_caller]
pub(super) fn assert_sound(drawing: &Drawing) {
    assert!(drawing.width.is_finite() && drawing.height.is_finite() && drawing.height > 0.0);
    marks(drawing, &drawing.marks);
    for reading in &drawing.readings {
        assert!(reading.x.is_finite() && reading.y.is_finite(), "{reading:?}");
        assert!((0.0..=drawing.width).contains(&reading.x), "{reading:?}");
    }
}

#[track_caller]
fn marks(drawing: &Drawing, own: &[Mark]) {
    for mark in own {
        match mark {
            Mark::Path { d, .. } => {
                assert!(!d.contains("NaN") && !d.contains("inf"), "{d}");
                for (x, y) in absolute(d) {
                    assert!((-1.0..=drawing.width + 1.0).contains(&x), "{x} in {d}");
                    assert!((-1.0..=drawing.height + 1.0).contains(&y), "{y} in {d}");
                }
            }
            Mark::Text { x, y, anchor, text, size, .. } => {
                assert!(*size >= 13.0);
                let wide = lettering::width(text, *size);
                let left = match anchor {
                    Anchor::Start => *x,
                    Anchor::Middle => x - wide / 2.0,
                    Anchor::End => x - wide,
                };
                assert!(left >= -2.0 && left + wide <= drawing.width + 2.0, "{text} from {left} to {}", left + wide);
                assert!((0.0..=drawing.height).contains(y), "{text} at {y}");
            }
            Mark::Part(target) | Mark::Free(target) => {
                assert!(target.width >= 44.0 && target.height >= 42.0, "{target:?}");
                assert!(target.x >= 0.0 && target.x + target.width <= drawing.width + 0.1, "{target:?}");
                assert!(target.y >= 0.0 && target.y + target.height <= drawing.height + 0.1, "{target:?}");
                marks(drawing, &target.marks);
            }
        }
    }
}

/// The places that follow M, L and Q in path data.
pub(super) fn absolute(d: &str) -> Vec<(f64, f64)> {
    let mut places = Vec::new();
    let mut rest = d;
    while let Some(at) = rest.find(['M', 'L', 'Q']) {
        let tail = &rest[at + 1..];
        let end = tail.find(|letter: char| letter.is_ascii_alphabetic()).unwrap_or(tail.len());
        let numbers: Vec<f64> = tail[..end].split(' ').filter_map(|number| number.parse().ok()).collect();
        places.extend(numbers.chunks_exact(2).map(|pair| (pair[0], pair[1])));
        rest = &tail[end..];
    }
    places
}
