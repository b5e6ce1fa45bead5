//! A figure as a picture of its own, that opens anywhere: looks are written at each mark, light as on paper.

use std::fmt::Write;

use super::drawing::{Drawing, Ink, Mark};
use super::lettering;
use super::svg::escaped;
use crate::quantity::decimal::{Fixed, tenths};

/// How a mark in an ink looks on paper: what `style/figure.css` says by day, as attributes.
const fn look(ink: Ink) -> &'static str {
    match ink {
        Ink::Line => "stroke=\"#1d2a2f\" stroke-width=\"1.4\"",
        Ink::Strong => "stroke=\"#1d2a2f\" stroke-width=\"2.4\"",
        Ink::Faint => "stroke=\"#7d7a6c\" stroke-width=\"1\"",
        Ink::Loose => "stroke=\"#1d2a2f\" stroke-width=\"1.6\" stroke-dasharray=\"5 5\"",
        Ink::Pipe => "stroke=\"#1d2a2f\" stroke-width=\"2.6\"",
        Ink::Gap => "stroke=\"#f6f1e4\" stroke-width=\"8\" stroke-linecap=\"butt\"",
        Ink::Solid => "fill=\"#1d2a2f\"",
        Ink::Paper => "fill=\"#f6f1e4\"",
        Ink::Wash => "fill=\"#1d2a2f\" fill-opacity=\"0.05\"",
        Ink::Earth => "stroke=\"#7d7a6c\" stroke-width=\"1.3\"",
        Ink::Grid => "stroke=\"#7d7a6c\" stroke-width=\"1\" stroke-opacity=\"0.35\"",
        Ink::Axis => "stroke=\"#1d2a2f\" stroke-width=\"1.4\"",
        Ink::Water => "fill=\"#1f6fb2\" fill-opacity=\"0.5\"",
        Ink::WaterLine => "stroke=\"#1f6fb2\" stroke-width=\"2\"",
        Ink::Band => "fill=\"#1f6fb2\" fill-opacity=\"0.25\"",
        Ink::Stranded => "stroke=\"#1d2a2f\" stroke-width=\"1\"",
        Ink::Capacity => "stroke=\"#1d2a2f\" stroke-width=\"1.2\" stroke-dasharray=\"7 4\"",
        Ink::Spill => "stroke=\"#7a5195\" stroke-width=\"2\"",
        Ink::SpillArea => "fill=\"#7a5195\" fill-opacity=\"0.25\"",
        Ink::SpillHatch => "stroke=\"#7a5195\" stroke-width=\"1.6\"",
        Ink::Shortfall => "fill=\"#9a201c\"",
        Ink::Caution => "fill=\"#f6f1e4\" stroke=\"#8a5300\" stroke-width=\"2.2\"",
        Ink::CautionSign => "stroke=\"#8a5300\" stroke-width=\"2.2\"",
        Ink::Fault => "fill=\"#9a201c\" stroke=\"#f6f1e4\" stroke-width=\"1.5\"",
        Ink::FaultSign => "stroke=\"#f6f1e4\" stroke-width=\"2.2\"",
        Ink::Used => "fill=\"#35634a\"",
        Ink::FirstFlush => "fill=\"#8a6d3b\" fill-opacity=\"0.35\"",
        Ink::FirstFlushHatch => "stroke=\"#8a6d3b\" stroke-width=\"1.2\"",
        Ink::Uncollected => "fill=\"#6f6a5c\" fill-opacity=\"0.08\"",
        Ink::UncollectedHatch => "stroke=\"#6f6a5c\" stroke-width=\"1\" stroke-dasharray=\"1 4\"",
        Ink::Lost => "fill=\"#6f6a5c\" fill-opacity=\"0.45\"",
        Ink::LostHatch => "stroke=\"#6f6a5c\" stroke-width=\"1.2\"",
        Ink::Drip => "fill=\"#6f6a5c\"",
        Ink::Rain => "fill=\"#1f6fb2\" fill-opacity=\"0.7\"",
        Ink::Label => "",
        Ink::StrongLabel => "font-weight=\"650\"",
        Ink::FaintLabel => "fill=\"#1d2a2f\" fill-opacity=\"0.82\"",
    }
}

/// Paper around the figure, in pixels.
const MARGIN: f64 = 12.0;
/// Height of the title with the lines of the caption below it.
const TITLE: f64 = 22.0;
const LINE: f64 = 18.0;

/// A figure as SVG with its title and what it shows, and its width and height in pixels.
pub fn picture(drawing: &Drawing, title: &str, caption: &str) -> (String, f64, f64) {
    let lines = lettering::lines(caption, drawing.width, lettering::SMALL, 6);
    #[expect(clippy::cast_precision_loss, reason = "a few lines")]
    let over = MARGIN + TITLE + LINE * lines.len() as f64;
    let (width, height) = (drawing.width + 2.0 * MARGIN, drawing.height + over + MARGIN);
    let (wide, high) = (Fixed(width, 0), Fixed(height, 0));
    let mut svg = String::new();
    // Writing to a String can't fail.
    let _ = write!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}\" height=\"{high}\" viewBox=\"0 0 {wide} {high}\" \
         font-family=\"sans-serif\" role=\"img\"><title>{0}</title><desc>{1}</desc>\
         <rect width=\"100%\" height=\"100%\" fill=\"#f6f1e4\"/>\
         <text x=\"{MARGIN}\" y=\"28\" font-size=\"17\" font-weight=\"bold\" fill=\"#1d2a2f\">{0}</text>",
        escaped(title),
        escaped(caption)
    );
    let mut y = MARGIN + TITLE + 10.0;
    for line in &lines {
        let _ =
            write!(svg, "<text x=\"{MARGIN}\" y=\"{y}\" font-size=\"13\" fill=\"#1d2a2f\">{}</text>", escaped(line));
        y += LINE;
    }
    let _ =
        write!(svg, "<g transform=\"translate({MARGIN} {over})\" stroke-linecap=\"round\" stroke-linejoin=\"round\">");
    marks(&mut svg, &drawing.marks);
    svg.push_str("</g></svg>");
    (svg, width, height)
}

fn marks(svg: &mut String, all: &[Mark]) {
    for mark in all {
        let _ = match mark {
            Mark::Path { d, ink } => {
                let fill = if look(*ink).contains("fill=") { "" } else { " fill=\"none\"" };
                write!(svg, "<path d=\"{d}\" {}{fill}/>", look(*ink))
            }
            Mark::Text { x, y, anchor, text, ink, size } => {
                let fill = if look(*ink).contains("fill=") { "" } else { " fill=\"#1d2a2f\"" };
                write!(
                    svg,
                    "<text x=\"{}\" y=\"{}\" text-anchor=\"{}\" font-size=\"{size}\" {}{fill}>{}</text>",
                    tenths(*x),
                    tenths(*y),
                    anchor.attribute(),
                    look(*ink),
                    escaped(text)
                )
            }
            Mark::Part(target) => {
                marks(svg, &target.marks);
                Ok(())
            }
            Mark::Free(_) => Ok(()),
        };
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic)]
    use super::*;
    use crate::figures::Anchor;

    /// Declarations of a rule with its colours by day.
    fn declared(class: &str) -> Vec<(String, String)> {
        let style = include_str!("../../style/figure.css");
        let tokens = include_str!("../../style/tokens.css").split("@media").next().unwrap();
        let rule = format!(".figure .{class} {{");
        let Some(start) = style.find(&rule) else { return Vec::new() };
        let body = style[start + rule.len()..].split('}').next().unwrap();
        let declarations = body.split(';').filter_map(|line| line.split_once(':'));
        let resolved = |value: &str| match value.trim().strip_prefix("var(").and_then(|name| name.strip_suffix(')')) {
            Some(name) => tokens.split_once(&format!("{name}: ")).unwrap().1.split(';').next().unwrap().to_owned(),
            None => value.trim().to_owned(),
        };
        declarations.map(|(name, value)| (name.trim().to_owned(), resolved(value))).collect()
    }

    #[test]
    fn every_ink_looks_on_paper_as_the_style_says() {
        for ink in Ink::ALL {
            let wanted: Vec<String> =
                declared(ink.class()).into_iter().map(|(name, value)| format!("{name}=\"{value}\"")).collect();
            assert_eq!(look(ink), wanted.join(" "), "{}", ink.class());
        }
    }

    #[test]
    fn a_picture_stands_alone() {
        let mark =
            Mark::Text { x: 1.0, y: 2.0, anchor: Anchor::End, text: "a < b".into(), ink: Ink::FaintLabel, size: 13.0 };
        let path = Mark::Path { d: "M0 0L5 5".into(), ink: Ink::Water };
        let drawing = Drawing { width: 300.0, height: 200.0, marks: vec![mark, path], readings: Vec::new() };
        let (svg, width, height) = picture(&drawing, "Rain & sun", "What falls");
        assert!(width > 300.0 && height > 200.0);
        for wanted in
            ["xmlns=", "<title>Rain &amp; sun</title>", "a &lt; b", "What falls</text>", "fill=\"#1f6fb2\"", "M0 0L5 5"]
        {
            assert!(svg.contains(wanted), "{wanted} in {svg}");
        }
        assert!(!svg.contains("class=") && !svg.contains("var("), "{svg}");
    }
}
