//! The colours of charts stay apart for those who see no red or no green, by day and by night.

use std::fs;
use std::path::Path;

/// What dichromats see of linear RGB: Machado, Oliveira & Fernandes, IEEE Transactions on Visualization and Computer Graphics
/// 15(6), 2009, severity 1.0 (as in the Python library `colorspacious` 1.1.2; here from memory).
const PROTANOPIA: [[f64; 3]; 3] =
    [[0.152_286, 1.052_583, -0.204_868], [0.114_503, 0.786_281, 0.099_216], [-0.003_882, -0.048_116, 1.051_998]];
const DEUTERANOPIA: [[f64; 3]; 3] =
    [[0.367_322, 0.860_646, -0.227_968], [0.280_085, 0.672_501, 0.047_413], [-0.011_820, 0.042_940, 0.968_881]];
const ALL_SEEN: [[f64; 3]; 3] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

/// Areas and lines that stand beside one another in a chart: token and how much of it covers the paper.
const BESIDE: [&[(&str, f64)]; 4] = [
    // Where the water went, in its order, and what is lacking.
    &[("used", 1.0), ("spill", 0.25)],
    &[("spill", 0.25), ("flush", 0.35)],
    &[("used", 1.0), ("shortfall", 1.0)],
    // Content with dry days; a band with its line.
    &[("water", 1.0), ("shortfall", 1.0)],
];

/// A just noticeable difference is about 2.3 (Mahy, Van Eycken & Oosterlinck 1994); this is four of them.
const APART: f64 = 9.2;

type Rgb = [f64; 3];

fn style(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("style").join(name)).unwrap()
}

/// A token of a theme, each channel from 0 to 1.
fn token(theme: &str, name: &str) -> Rgb {
    let hex = theme.split_once(&format!("--{name}: #")).unwrap().1;
    std::array::from_fn(|at| f64::from(u8::from_str_radix(&hex[2 * at..2 * at + 2], 16).unwrap()) / 255.0)
}

/// IEC 61966-2-1.
fn linear(channel: f64) -> f64 {
    if channel <= 0.040_45 { channel / 12.92 } else { ((channel + 0.055) / 1.055).powf(2.4) }
}

fn seen(by: &[[f64; 3]; 3], colour: Rgb) -> Rgb {
    let light = colour.map(linear);
    by.map(|row| row.iter().zip(light).map(|(share, light)| share * light).sum::<f64>().clamp(0.0, 1.0))
}

/// CIE 1976 L*a*b* of linear sRGB under D65 (CIE 15).
fn lab([r, g, b]: Rgb) -> [f64; 3] {
    let x = (0.412_456_4 * r + 0.357_576_1 * g + 0.180_437_5 * b) / 0.950_47;
    let y = 0.212_672_9 * r + 0.715_152_2 * g + 0.072_175 * b;
    let z = (0.019_333_9 * r + 0.119_192 * g + 0.950_304_1 * b) / 1.088_83;
    let f = |t: f64| if t > 216.0 / 24_389.0 { t.cbrt() } else { (24_389.0 / 27.0 * t + 16.0) / 116.0 };
    [116.0 * f(y) - 16.0, 500.0 * (f(x) - f(y)), 200.0 * (f(y) - f(z))]
}

fn difference(one: Rgb, other: Rgb) -> f64 {
    lab(one).iter().zip(lab(other)).map(|(one, other)| (one - other).powi(2)).sum::<f64>().sqrt()
}

#[test]
fn colours_that_stand_side_by_side_stay_apart_for_every_eye() {
    let tokens = style("tokens.css");
    let (day, night) = tokens.split_once("@media").unwrap();
    let mut found = Vec::new();
    for (name, theme) in [("day", day), ("night", night)] {
        let paper = token(theme, "paper");
        let covered = |(name, share): (&str, f64)| -> Rgb {
            let colour = token(theme, name);
            std::array::from_fn(|at| share * colour[at] + (1.0 - share) * paper[at])
        };
        for (eye, by) in [("all", ALL_SEEN), ("protanopia", PROTANOPIA), ("deuteranopia", DEUTERANOPIA)] {
            for pair in BESIDE {
                let [one, other] = [pair[0], pair[1]].map(|of| seen(&by, covered(of)));
                let apart = difference(one, other);
                println!("{name}, {eye}: {} and {}: {apart:.1}", pair[0].0, pair[1].0);
                if apart < APART {
                    found.push(format!("{name}, {eye}: {} and {} are {apart:.1} apart", pair[0].0, pair[1].0));
                }
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// Contrast by WCAG 2.2, "relative luminance" and "contrast ratio".
fn contrast(one: Rgb, other: Rgb) -> f64 {
    let luminance = |colour: Rgb| {
        let [r, g, b] = colour.map(linear);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let [dark, light] = {
        let mut both = [luminance(one), luminance(other)];
        both.sort_by(f64::total_cmp);
        both
    };
    (light + 0.05) / (dark + 0.05)
}

/// WCAG 2.2: 21 for black on white; #767676 is the lightest grey that has 4.5 on white (as in its "Understanding 1.4.3").
#[test]
fn contrast_is_that_of_the_standard() {
    let grey = |level: f64| [level / 255.0; 3];
    assert!((contrast(grey(0.0), grey(255.0)) - 21.0).abs() < 1e-9);
    assert!(contrast(grey(118.0), grey(255.0)) >= 4.5 && contrast(grey(119.0), grey(255.0)) < 4.5);
}

/// Every colour that words and numbers are written in, by the rules of the style sheets: (token, share of it over the paper).
fn inks_of_words() -> Vec<(String, f64)> {
    let mut inks = Vec::new();
    for entry in fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("style")).unwrap() {
        let sheet = fs::read_to_string(entry.unwrap().path()).unwrap();
        // What can't be pressed now is let off by the standard (WCAG 2.2, 1.4.3, "incidental").
        for rule in sheet.split('}').filter(|rule| !rule.contains(":disabled")) {
            let Some((selector, declared)) = rule.rsplit_once('{') else { continue };
            let of_words = |property: &str| match property {
                "color" => true,
                "fill" => selector.contains("text") || selector.contains("-label"),
                _ => false,
            };
            let pairs = || declared.split(';').filter_map(|pair| pair.split_once(':'));
            let share = pairs()
                .find(|(property, _)| property.trim() == "fill-opacity")
                .map_or(1.0, |(_, share)| share.trim().parse::<f64>().unwrap());
            for (property, value) in pairs().filter(|(property, _)| of_words(property.trim())) {
                if let Some(name) = value.trim().strip_prefix("var(--").and_then(|rest| rest.strip_suffix(')')) {
                    inks.push((name.to_owned(), if property.trim() == "fill" { share } else { 1.0 }));
                }
            }
        }
    }
    inks
}

/// Words and numbers are read in sunlight: 7 (WCAG 2.2, 1.4.6) on whatever they stand on; lines and areas that tell something
/// 3 (1.4.11).
#[test]
fn words_and_numbers_can_be_read_in_sunlight() {
    let inks = inks_of_words();
    assert!(
        inks.iter().any(|(name, share)| name == "ink" && *share < 1.0),
        "the fainter labels of figures were not seen"
    );
    assert!(inks.iter().any(|(name, _)| name == "shortfall"), "what is told as wrong was not seen");
    let tokens = style("tokens.css");
    let (day, night) = tokens.split_once("@media").unwrap();
    let mut found = Vec::new();
    for (name, theme) in [("day", day), ("night", night)] {
        for ground in ["paper", "sheet"] {
            let under = token(theme, ground);
            for (ink, share) in &inks {
                // Letters in the colour of the paper stand on ink.
                let under = if ink == "paper" { token(theme, "ink") } else { under };
                let colour = token(theme, ink);
                let written: Rgb = std::array::from_fn(|at| share * colour[at] + (1.0 - share) * under[at]);
                let got = contrast(written, under);
                if got < 7.0 {
                    found.push(format!("{name}: words in {ink} ({share}) on {ground}: {got:.2}"));
                }
            }
            for line in ["ink", "faint", "water", "spill", "shortfall", "caution", "used", "flush", "lost"] {
                let got = contrast(token(theme, line), under);
                if got < 3.0 {
                    found.push(format!("{name}: {line} on {ground}: {got:.2}"));
                }
            }
        }
    }
    found.dedup();
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// L*a*b* of pure red, as in Lindbloom's tables (sRGB, D65): 53.24, 80.09, 67.20.
#[test]
fn the_scale_is_that_of_the_standard() {
    let red = lab([1.0, 0.0, 0.0]);
    for (found, wanted) in red.iter().zip([53.24, 80.09, 67.20]) {
        assert!((found - wanted).abs() < 0.02, "{red:?}");
    }
}
