//! Every sentence that a person reads, in one place, so that another language can stand beside this one. No decisions.

pub mod ahead;
pub mod cautions;
pub mod charts;
pub mod checks;
pub mod diary;
pub mod errors;
pub mod findings;
pub mod garden;
pub mod generated;
pub mod habits;
pub mod head_figures;
pub mod house;
pub mod kept;
pub mod learning;
pub mod method;
pub mod next;
pub mod parts;
pub mod rain;
pub mod rain_report;
pub mod report;
pub mod size;
pub mod sizing;
pub mod sketch;
pub mod terms;
pub mod treatment;
pub mod upkeep;

use chrono::{Datelike, NaiveDate};

use crate::language::{Phrase, small};

/// The buttons that save a figure: as SVG, as PNG.
pub const SAVE_AS: [Phrase; 2] =
    [phrase!("Save as SVG", "Guardar como SVG"), phrase!("Save as PNG", "Guardar como PNG")];

/// The months, in short.
pub fn months() -> [&'static str; 12] {
    const SHORT: [Phrase; 12] = [
        phrase!("Jan", "ene"),
        phrase!("Feb", "feb"),
        phrase!("Mar", "mar"),
        phrase!("Apr", "abr"),
        phrase!("May", "may"),
        phrase!("Jun", "jun"),
        phrase!("Jul", "jul"),
        phrase!("Aug", "ago"),
        phrase!("Sep", "sep"),
        phrase!("Oct", "oct"),
        phrase!("Nov", "nov"),
        phrase!("Dec", "dic"),
    ];
    SHORT.map(|month| month.text())
}

/// A date: "4 March 2002".
pub fn date(date: NaiveDate) -> String {
    say!("{day} {year}", "{day} de {year}", day = day_of_year(date), year = date.year())
}

/// When tanks were read, the first and the last of them.
pub fn read_on(first: NaiveDate, last: NaiveDate) -> String {
    if first == last {
        say!("on {date}", "el {date}", date = date(first))
    } else {
        say!("between {first} and {last}", "entre el {first} y el {last}", first = date(first), last = date(last))
    }
}

/// A text that begins large, inside a sentence.
pub fn inside(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(small).into_iter().chain(letters).collect()
}

/// A day of the year: "4 March".
pub fn day_of_year(date: NaiveDate) -> String {
    say!("{day}\u{a0}{month}", "{day}\u{a0}de {month}", day = date.day(), month = MONTH_NAMES[date.month0() as usize])
}

const MONTH_NAMES: [Phrase; 12] = [
    phrase!("January", "enero"),
    phrase!("February", "febrero"),
    phrase!("March", "marzo"),
    phrase!("April", "abril"),
    phrase!("May", "mayo"),
    phrase!("June", "junio"),
    phrase!("July", "julio"),
    phrase!("August", "agosto"),
    phrase!("September", "septiembre"),
    phrase!("October", "octubre"),
    phrase!("November", "noviembre"),
    phrase!("December", "diciembre"),
];

/// The name of a copy.
pub fn copy_of(name: &str) -> String {
    say!("{name} (copy)", "{name} (copia)", name)
}

/// A name that is not taken: the plain one, or with the first number that is free, from 2 on.
pub fn free_name(plain: &str, taken: impl Fn(&str) -> bool) -> String {
    let mut name = plain.to_owned();
    let mut number = 1;
    while taken(&name) {
        number += 1;
        name = format!("{plain} {number}");
    }
    name
}

/// So many days.
pub fn days(number: usize) -> String {
    count(number, phrase!("day", "día"), phrase!("days", "días"))
}

/// So many of a thing: "1 day", "12 days".
pub fn count(number: usize, one: Phrase, many: Phrase) -> String {
    if number == 1 { format!("1 {one}") } else { format!("{} {many}", number_text(number)) }
}

/// What a sum over so many days is to be multiplied by to be that of an average year.
pub fn per_year(days: usize) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let days = days.max(1) as f64;
    crate::quantity::DAYS_A_YEAR / days
}

/// A whole number with its thousands grouped.
pub fn number_text(number: usize) -> String {
    #[expect(clippy::cast_precision_loss, reason = "counts of days and rows")]
    crate::quantity::shown::significant(number as f64, 15)
}

/// A share in percent: "93 %"; never 0 or 100 % unless it is just that.
pub fn percent(share: f64) -> String {
    let rounded = (share * 100.0).round();
    if share > 0.0 && rounded == 0.0 {
        phrase!("under 1\u{a0}%", "menos del 1\u{a0}%").to_owned()
    } else if share < 1.0 && rounded == 100.0 {
        phrase!("over 99\u{a0}%", "más del 99\u{a0}%").to_owned()
    } else {
        format!("{rounded}\u{a0}%")
    }
}

/// Things in a row: "a, b and c".
pub fn list(items: &[String]) -> String {
    in_a_row(items, and_before)
}

/// Things of which one is to be taken: "L, gal or m³".
pub fn either(items: &[String]) -> String {
    in_a_row(items, |_| said!("or", "o"))
}

fn in_a_row(items: &[String], word_before: fn(&str) -> &'static str) -> String {
    match items {
        [most @ .., last] if !most.is_empty() => format!("{} {} {last}", most.join(", "), word_before(last)),
        _ => items.concat(),
    }
}

/// The "and" before a thing. In Spanish it is "e" before the sound of an i that begins a word, but not in "hie".
fn and_before(thing: &str) -> &'static str {
    let start: String = thing.chars().take(4).map(crate::language::small).collect();
    let sounds_i = ["i", "í", "hi", "hí"].iter().any(|i| start.starts_with(i));
    let glides = ["hie", "hia", "io", "ia"].iter().any(|glide| start.starts_with(glide));
    if sounds_i && !glides { said!("and", "e") } else { said!("and", "y") }
}

/// The years of some dates in a row: "2002", "2002 and 2004", "2001–2011".
pub fn years(years: &[i32]) -> String {
    let runs_on = years.len() > 2 && years.windows(2).all(|pair| pair[1] == pair[0] + 1);
    match (years.first(), years.last()) {
        (Some(first), Some(last)) if runs_on => format!("{first}–{last}"),
        _ => list(&years.iter().map(i32::to_string).collect::<Vec<_>>()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::language::Language;

    #[test]
    fn a_share_is_never_rounded_to_none_or_all() {
        assert_eq!(percent(0.004), "under 1\u{a0}%");
        assert_eq!(percent(0.999), "over 99\u{a0}%");
        assert_eq!(percent(1.0), "100\u{a0}%");
        assert_eq!(percent(0.0), "0\u{a0}%");
    }

    #[test]
    fn years_in_a_row_are_a_span() {
        assert_eq!(years(&[2001, 2002, 2003]), "2001–2003");
        assert_eq!(years(&[2001, 2003]), "2001 and 2003");
        assert_eq!(years(&[2001, 2003, 2004]), "2001, 2003 and 2004");
    }

    #[test]
    fn dates_and_lists_follow_the_language() {
        crate::language::speak(Language::Spanish);
        assert_eq!(NaiveDate::from_ymd_opt(2002, 3, 4).map(date).as_deref(), Some("4\u{a0}de marzo de 2002"));
        let row = |items: &[&str]| list(&items.iter().map(|item| (*item).to_owned()).collect::<Vec<_>>());
        assert_eq!(row(&["techo", "tanque", "bomba"]), "techo, tanque y bomba");
        assert_eq!(row(&["uso", "invernadero"]), "uso e invernadero");
        assert_eq!(row(&["agua", "hielo"]), "agua y hielo");
        assert_eq!(count(1, phrase!("day", "día"), phrase!("days", "días")), "1 día");
        crate::language::speak(Language::English);
    }
}
