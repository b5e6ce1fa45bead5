//! Marks as the text of SVG elements.

use std::fmt::Write;

use super::drawing::Mark;
use crate::quantity::decimal::tenths;

/// Writes marks as SVG elements, their texts escaped.
pub fn write_marks(svg: &mut String, marks: &[Mark]) {
    // Writing to a String can't fail.
    for mark in marks {
        let _ = match mark {
            Mark::Path { d, ink } => write!(svg, "<path class=\"{}\" d=\"{d}\"/>", ink.class()),
            Mark::Text { x, y, anchor, text, ink, size } => write!(
                svg,
                "<text class=\"{}\" x=\"{}\" y=\"{}\" text-anchor=\"{}\" font-size=\"{size}\">{}</text> ",
                ink.class(),
                tenths(*x),
                tenths(*y),
                anchor.attribute(),
                escaped(text)
            ),
            Mark::Part(target) => {
                let _ = write!(
                    svg,
                    "<g class=\"part\"><title>{}</title><rect class=\"tap\" x=\"{}\" y=\"{}\" width=\"{}\" \
                     height=\"{}\" rx=\"6\"/>",
                    escaped(&target.name),
                    tenths(target.x),
                    tenths(target.y),
                    tenths(target.width),
                    tenths(target.height)
                );
                write_marks(svg, &target.marks);
                write!(svg, "</g>")
            }
            Mark::Free(_) => Ok(()),
        };
    }
}

pub(super) fn escaped(text: &str) -> String {
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
        let mut svg = String::new();
        write_marks(&mut svg, &[mark]);
        assert!(svg.contains("&lt;script&gt;&quot;Tom &amp; Jerry&quot; &lt;/script&gt;"), "{svg}");
    }
}
