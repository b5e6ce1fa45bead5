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

/// Breaks a text into at most `most` lines of a width; what is too long ends in an ellipsis. A number at the end stays:
/// alone, where the words before it have no room.
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
    let number = number_at_end(text);
    let cut = lines.iter().any(|line| width(line, size) > room);
    match (number, lines.last()) {
        (Some(number), Some(last)) if cut && last == number => vec![number.to_owned()],
        _ => lines.into_iter().map(|line| shortened(&line, room, size)).collect(),
    }
}

/// The number that a name ends in.
pub(super) fn number_at_end(name: &str) -> Option<&str> {
    let last = name.rsplit(' ').next()?;
    (!last.is_empty() && last.bytes().all(|letter| letter.is_ascii_digit())).then_some(last)
}

/// Letters of a word that still tell it.
const TELLING: usize = 4;

/// A number with its unit, small, perhaps beside another: on one line, or parted where that is too narrow, between the numbers
/// before a unit is parted from its own, before either is cut short.
pub(super) fn detail(text: &str, room: f64) -> Vec<String> {
    let fits = |lines: &[String]| lines.iter().all(|line| width(line, SMALL) <= room);
    let words: Vec<String> = text.split(' ').map(str::to_owned).collect();
    let two = words.len() == 2;
    if width(text, SMALL) <= room {
        lines(text, room, SMALL, 1)
    } else if two && fits(&words) {
        words
    } else {
        lines(&text.replace('\u{a0}', " "), room, SMALL, if two { 3 } else { 2 })
    }
}

fn shortened(line: &str, room: f64, size: f64) -> String {
    if width(line, size) <= room {
        return line.to_owned();
    }
    let number = number_at_end(line).unwrap_or_default();
    let room = if number.is_empty() { room } else { room - width(number, size) - LETTER * size };
    let mut short = line[..line.len() - number.len()].to_owned();
    while !short.is_empty() && width(&short, size) + LETTER * size > room {
        short.pop();
    }
    let short = short.trim_end();
    match number {
        "" => format!("{short}…"),
        number if short.chars().count() < TELLING => number.to_owned(),
        number => format!("{short}… {number}"),
    }
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
        assert_eq!(lines("Downspout 12", 60.0, 13.0, 2), ["12"], "a word is not cut where its number tells it");
        assert_eq!(lines("Yard downspout 12", 80.0, 13.0, 1), ["Yard… 12"]);
        assert_eq!(lines("Downspout 12", 60.0, 13.0, 1), ["12"]);
        assert_eq!(lines("Rainwater tank 3", 60.0, 13.0, 2), ["Rainwa…", "tank 3"]);
        assert_eq!(lines("Old tank", 200.0, 13.0, 2), ["Old tank"]);
        assert!(lines("", 200.0, 13.0, 2).is_empty());
    }

    #[test]
    fn a_number_keeps_its_unit() {
        // Eight letters of 0.62 × 13: 64.5 wide.
        assert_eq!(detail("79.3\u{a0}gal", 65.0), ["79.3\u{a0}gal"]);
        assert_eq!(detail("79.3\u{a0}gal", 60.0), ["79.3", "gal"]);
        let both = "314 of\u{a0}5,000\u{a0}L";
        assert_eq!(detail(both, 200.0), [both]);
        assert_eq!(detail(both, 90.0), ["314", "of\u{a0}5,000\u{a0}L"]);
        assert_eq!(detail("37.5 of\u{a0}300\u{a0}L", 52.0), ["37.5", "of 300", "L"]);
    }
}
