//! The trade's terms, each in a sentence, one tap away from where it is written.

/// Term and sentence; a longer term stands before one that it begins with.
pub const TERMS: [(&str, &str); 36] = [
    ("roof section", "One plane or part of the roof with its plan area, as seen from above, and its roofing."),
    ("plan area", "Area of the roof as seen from straight above, not along the slope: rain falls on that."),
    (
        "runoff coefficient",
        "Share of the rain on a roof, beyond wetting, that runs off it: 0.9 for metal, far less for a planted roof.",
    ),
    ("wetting loss", "Rain that only wets the roof on each rain day and dries there."),
    ("feed", "A downspout with its leaf screen and first-flush diverter, and the tank that it fills."),
    ("first-flush diverter", "The chamber that keeps the first, dirtiest water of a storm out of the tank."),
    ("first flush", "The first water off a roof in a storm, led aside because it carries most of the dirt."),
    ("diverter", "The chamber that keeps the first, dirtiest water of a storm out of the tank."),
    ("dead storage", "Water below a tank's outlet: it is there, but no tap gets it."),
    (
        "stranded capacity",
        "Room in a joined tank above the lowest rim of its store: it can never fill, because the other tank spills first.",
    ),
    ("trunk line", "The pipe that joins tanks at the bottom; with its valve open they share one water level."),
    ("store", "Tanks joined through open valves: one water level, drawn down together."),
    ("yield after spillage", "The day's rain may spill before the day's use is drawn: the cautious order of counting."),
    ("yield before spillage", "The day's use is drawn before anything spills: the hopeful order of counting."),
    ("yield", "Water that the uses got."),
    ("spilled", "Water over the rim or out of the overflow."),
    ("shortfall", "Water that was wanted and not there."),
    ("dry days", "Days on which a use of the house is not met in full; a garden that goes without makes none."),
    ("dry day", "A day on which a use of the house is not met in full; a garden that goes without makes none."),
    ("dry stretch", "Dry days one after the other."),
    ("volumetric reliability", "Share of the water wanted that was there, over all days."),
    ("time reliability", "Share of the days that were not dry."),
    (
        "Wilson interval",
        "Range in which the true chance of a good year lies, 95 times in 100, judged from so few years.",
    ),
    ("resilience", "Chance that a dry day is followed by one that is not: how soon the house recovers."),
    ("vulnerability", "How much lacks on the worst day of a dry stretch, on average."),
    (
        "safe daily use",
        "The most that can be drawn each day so that the water lasts to a date, with a chance that you name.",
    ),
    ("generated years", "Years drawn by a model of this place's rain: they never happened, but could have."),
    ("percentiles", "The value below which so many of a hundred years lie."),
    ("uncollected", "Rain on the roof that no feed takes."),
    ("reference evapotranspiration", "What a meadow of short grass with water enough gives to the air on a day."),
    ("crop coefficient", "What a plant drinks, as a multiple of short grass."),
    ("rationing", "Uses that the household does without, in part, while its store is low."),
    ("hauled", "Brought by truck, at a price."),
    ("log", "1 log stops nine germs of ten, 2 log 99 of 100, 3 log 999 of 1,000."),
    ("residual", "Chlorine that is still free in the water after it has acted."),
    ("upkeep", "Cleaning, changing and checking."),
];

/// The first term in a text from a place in it on: where it begins and ends, and which it is. Terms are found as whole words,
/// with a small or a large first letter.
pub fn first_in(text: &str) -> Option<(usize, usize, usize)> {
    let mut found: Option<(usize, usize, usize)> = None;
    for (at, (term, _)) in TERMS.iter().enumerate() {
        let Some(start) = place_of(text, term) else { continue };
        if found.is_none_or(|(before, ..)| start < before) {
            found = Some((start, start + term.len(), at));
        }
    }
    found
}

/// Where a term stands in a text as whole words.
fn place_of(text: &str, term: &str) -> Option<usize> {
    let (bytes, wanted) = (text.as_bytes(), term.as_bytes());
    let is_letter =
        |at: Option<&u8>| at.is_some_and(|byte| byte.is_ascii_alphanumeric() || *byte == b'-' || *byte >= 0x80);
    let mut start = 0;
    while start + wanted.len() <= bytes.len() {
        let end = start + wanted.len();
        let same = bytes[start].eq_ignore_ascii_case(&wanted[0]) && bytes[start + 1..end] == wanted[1..];
        let before = start.checked_sub(1).and_then(|before| bytes.get(before));
        if same && !is_letter(before) && !is_letter(bytes.get(end)) {
            return Some(start);
        }
        start += 1;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn terms_are_found_as_whole_words_the_first_and_longest_of_them() {
        let found = |text: &'static str| first_in(text).map(|(from, to, _)| &text[from..to]);
        assert_eq!(found("Yield after spillage (cautious)"), Some("Yield after spillage"));
        assert_eq!(found("The first-flush diverter of the feed"), Some("first-flush diverter"));
        assert_eq!(found("37 dry days, in 2002"), Some("dry days"));
        assert_eq!(found("restored, feeder, logbook; 50 % — unfed"), None);
        assert_eq!(found(""), None);
    }

    #[test]
    fn every_term_is_told_in_one_sentence_and_none_twice() {
        for (at, (term, sentence)) in TERMS.iter().enumerate() {
            assert!(sentence.ends_with('.') && sentence.len() < 160, "{term}");
            assert!(TERMS.iter().skip(at + 1).all(|(other, _)| other != term), "{term}");
            assert_eq!(first_in(term).map(|(_, _, found)| found), Some(at), "{term} is found as itself");
        }
    }
}
