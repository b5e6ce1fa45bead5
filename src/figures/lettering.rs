//! How much room words take, and how they are broken into lines.

/// Size of the letters of labels.
pub(super) const SIZE: f64 = 14.0;
/// Size of the letters of what is added to a label.
pub(super) const SMALL: f64 = 13.0;
/// Distance of two lines of text.
pub(super) const LEADING: f64 = 16.0;

/// Mean width of a letter per size, on the wide side for system fonts.
const LETTER: f64 = 0.62;

/// About how wide a text is at a size.
pub(super) fn width(text: &str, size: f64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "labels are short")]
    let letters = text.chars().count() as f64;
    letters * LETTER * size
}

/// Breaks a text into at most `most` lines of a width; what is too long ends in an ellipsis.
pub(super) fn lines(text: &str, room: f64, size: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        match lines.last_mut() {
            Some(line) if width(line, size) + width(word, size) + LETTER * size <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    if lines.len() > most {
        let rest = lines.split_off(most.saturating_sub(1)).join(" ");
        if most > 0 {
            lines.push(rest);
        }
    }
    lines.into_iter().map(|line| shortened(&line, room, size)).collect()
}

fn shortened(line: &str, room: f64, size: f64) -> String {
    if width(line, size) <= room {
        return line.to_owned();
    }
    let mut short = line.to_owned();
    while !short.is_empty() && width(&short, size) + LETTER * size > room {
        short.pop();
    }
    format!("{}…", short.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_broken_into_lines_that_fit() {
        for room in [20.0, 60.0, 100.0, 300.0] {
            let broken = lines("Drinking and cooking at the far end of the yard", room, 13.0, 2);
            assert!(broken.len() <= 2);
            assert!(broken.iter().all(|line| width(line, 13.0) <= room), "{broken:?} in {room}");
        }
        assert_eq!(lines("Old tank", 200.0, 13.0, 2), ["Old tank"]);
        assert!(lines("", 200.0, 13.0, 2).is_empty());
    }
}
