//! A drawing as an SVG file of its own: for saving, and for looking at it.

use std::fmt::Write;

use super::drawing::{Drawing, Mark};

/// The whole drawing as the text of an SVG file. `style` is the CSS that it carries with it (`figure.css` and the
/// values of its colours); it must come from the program, since it is not escaped.
pub fn to_svg(drawing: &Drawing, style: &str) -> String {
    let (width, height) = (drawing.width, drawing.height);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"figure\" width=\"{width:.0}\" height=\"{height:.0}\" \
         viewBox=\"0 0 {width:.1} {height:.1}\">"
    );
    if !style.is_empty() {
        svg.push_str("<style>");
        svg.push_str(style);
        svg.push_str("</style>");
    }
    write_marks(&mut svg, &drawing.marks);
    svg.push_str("</svg>");
    svg
}

/// Writes marks as SVG elements, their texts escaped.
pub(crate) fn write_marks(svg: &mut String, marks: &[Mark]) {
    // Writing to a String can't fail.
    for mark in marks {
        let _ = match mark {
            Mark::Path { d, ink } => write!(svg, "<path class=\"{}\" d=\"{d}\"/>", ink.class()),
            Mark::Text { x, y, anchor, text, ink, size } => write!(
                svg,
                "<text class=\"{}\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{}\" font-size=\"{size}\">{}</text> ",
                ink.class(),
                anchor.attribute(),
                escaped(text)
            ),
            Mark::Part(target) => {
                let _ = write!(
                    svg,
                    "<g class=\"part\"><title>{}</title><rect class=\"tap\" x=\"{:.1}\" y=\"{:.1}\" width=\"{:.1}\" \
                     height=\"{:.1}\" rx=\"6\"/>",
                    escaped(&target.name),
                    target.x,
                    target.y,
                    target.width,
                    target.height
                );
                write_marks(svg, &target.marks);
                write!(svg, "</g>")
            }
        };
    }
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // Other control characters are not allowed in XML at all.
            letter if letter.is_control() => out.push(' '),
            letter => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::{Anchor, Ink};

    #[test]
    fn text_is_escaped() {
        let text = "<script>\"Tom & Jerry\"\u{1}</script>".to_owned();
        let mark = Mark::Text { x: 0.0, y: 0.0, anchor: Anchor::Start, text, ink: Ink::Label, size: 13.0 };
        let drawing = Drawing { width: 10.0, height: 10.0, marks: vec![mark], readings: Vec::new() };
        let svg = to_svg(&drawing, "");
        assert!(svg.contains("&lt;script&gt;&quot;Tom &amp; Jerry&quot; &lt;/script&gt;"), "{svg}");
    }
}
