//! What a figure consists of: marks in inks, parts that can be tapped, readings under the finger.

use crate::site::part::PartId;

/// A finished figure. Lengths are in CSS pixels at 1:1, x to the right, y downwards.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// Width that it was drawn for.
    pub width: f64,
    /// Height that it needs.
    pub height: f64,
    /// What is drawn, from back to front.
    pub marks: Vec<Mark>,
    /// Values under the finger, from left to right.
    pub readings: Vec<Reading>,
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A line or area.
    Path {
        /// SVG path data.
        d: String,
        /// What it is drawn in.
        ink: Ink,
    },
    /// A line of text.
    Text {
        /// Where the anchor stands.
        x: f64,
        /// The baseline.
        y: f64,
        /// Which end of the text stands at x.
        anchor: Anchor,
        /// The text itself, unescaped.
        text: String,
        /// What it is drawn in.
        ink: Ink,
        /// Size of the letters, 13 or more.
        size: f64,
    },
    /// A part of the house that can be tapped.
    Part(Target),
    /// A place where a part can be added: drawn only where it can be tapped.
    Free(Target),
}

/// A part of the house, or several drawn as one, with the area that answers to a tap.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// The part; several where they are bundled: then one of them is to be chosen.
    pub parts: Vec<PartId>,
    /// Its accessible name.
    pub name: String,
    /// Left edge of the area.
    pub x: f64,
    /// Upper edge of the area.
    pub y: f64,
    /// Width of the area, 44 or more.
    pub width: f64,
    /// Height of the area, 44 or more.
    pub height: f64,
    /// Its own marks; they answer to the tap too.
    pub marks: Vec<Mark>,
}

/// A value at a place, shown while the finger or the pointer is nearest to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Where it stands.
    pub x: f64,
    /// The height of its point.
    pub y: f64,
    /// What it is of: a date, a month.
    pub label: String,
    /// The value with its unit.
    pub value: String,
}

/// Which of some readings is nearest to an x: the value under the finger. `None` of none.
pub fn nearest_reading(readings: &[Reading], x: f64) -> Option<usize> {
    let distance = |at: &usize| readings.get(*at).map_or(f64::INFINITY, |reading| (reading.x - x).abs());
    (0..readings.len()).min_by(|a, b| distance(a).total_cmp(&distance(b)))
}

/// Which end of a text stands at its x.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The left end.
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

impl Anchor {
    /// The value of the attribute `text-anchor`.
    pub const fn attribute(self) -> &'static str {
        match self {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        }
    }
}

/// What a mark is drawn in: looks are in `style/figure.css`, one class for each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// An outline.
    Line,
    /// A main outline: walls of tanks, roofs, ground.
    Strong,
    /// A line in the background.
    Faint,
    /// A broken line: what is loose or not yet there.
    Loose,
    /// A pipe.
    Pipe,
    /// The gap left under a pipe that crosses another.
    Gap,
    /// A small solid area.
    Solid,
    /// An area that hides what lies behind it.
    Paper,
    /// The light wash of a wall.
    Wash,
    /// Hatching of the ground.
    Earth,
    /// A grid line.
    Grid,
    /// An axis.
    Axis,
    /// Water, as an area.
    Water,
    /// The surface of water, or a line of contents.
    WaterLine,
    /// The outer band of percentiles.
    Band,
    /// Hatching of water that can't be reached.
    Stranded,
    /// The line of the capacity.
    Capacity,
    /// Spilled water, as a line or arrow.
    Spill,
    /// Spilled water, as an area.
    SpillArea,
    /// Hatching over spilled water.
    SpillHatch,
    /// Demand not met.
    Shortfall,
    /// A caution sign's outline.
    Caution,
    /// The stroke inside of a caution sign.
    CautionSign,
    /// A fault sign's area.
    Fault,
    /// The sign inside of a fault's area.
    FaultSign,
    /// Water used, as an area.
    Used,
    /// First flush, as an area.
    FirstFlush,
    /// Hatching over first flush.
    FirstFlushHatch,
    /// Rain not collected, as an area.
    Uncollected,
    /// Hatching over what is not collected.
    UncollectedHatch,
    /// Rain lost to wetting, gutters, leaks, evaporation: as an area.
    Lost,
    /// Hatching over what is lost.
    LostHatch,
    /// Drops that fall to the ground.
    Drip,
    /// Rain, as an area.
    Rain,
    /// Text.
    Label,
    /// Text that matters most.
    StrongLabel,
    /// Text in the background.
    FaintLabel,
}

impl Ink {
    /// All inks.
    pub const ALL: [Ink; 37] = [
        Ink::Line,
        Ink::Strong,
        Ink::Faint,
        Ink::Loose,
        Ink::Pipe,
        Ink::Gap,
        Ink::Solid,
        Ink::Paper,
        Ink::Wash,
        Ink::Earth,
        Ink::Grid,
        Ink::Axis,
        Ink::Water,
        Ink::WaterLine,
        Ink::Band,
        Ink::Stranded,
        Ink::Capacity,
        Ink::Spill,
        Ink::SpillArea,
        Ink::SpillHatch,
        Ink::Shortfall,
        Ink::Caution,
        Ink::CautionSign,
        Ink::Fault,
        Ink::FaultSign,
        Ink::Used,
        Ink::FirstFlush,
        Ink::FirstFlushHatch,
        Ink::Uncollected,
        Ink::UncollectedHatch,
        Ink::Lost,
        Ink::LostHatch,
        Ink::Drip,
        Ink::Rain,
        Ink::Label,
        Ink::StrongLabel,
        Ink::FaintLabel,
    ];

    /// The class of this ink in `style/figure.css`.
    pub const fn class(self) -> &'static str {
        match self {
            Ink::Line => "ink-line",
            Ink::Strong => "ink-strong",
            Ink::Faint => "ink-faint",
            Ink::Loose => "ink-loose",
            Ink::Pipe => "ink-pipe",
            Ink::Gap => "ink-gap",
            Ink::Solid => "ink-solid",
            Ink::Paper => "ink-paper",
            Ink::Wash => "ink-wash",
            Ink::Earth => "ink-earth",
            Ink::Grid => "ink-grid",
            Ink::Axis => "ink-axis",
            Ink::Water => "ink-water",
            Ink::WaterLine => "ink-water-line",
            Ink::Band => "ink-band",
            Ink::Stranded => "ink-stranded",
            Ink::Capacity => "ink-capacity",
            Ink::Spill => "ink-spill",
            Ink::SpillArea => "ink-spill-area",
            Ink::SpillHatch => "ink-spill-hatch",
            Ink::Shortfall => "ink-shortfall",
            Ink::Caution => "ink-caution",
            Ink::CautionSign => "ink-caution-sign",
            Ink::Fault => "ink-fault",
            Ink::FaultSign => "ink-fault-sign",
            Ink::Used => "ink-used",
            Ink::FirstFlush => "ink-flush",
            Ink::FirstFlushHatch => "ink-flush-hatch",
            Ink::Uncollected => "ink-uncollected",
            Ink::UncollectedHatch => "ink-uncollected-hatch",
            Ink::Lost => "ink-lost",
            Ink::LostHatch => "ink-lost-hatch",
            Ink::Drip => "ink-drip",
            Ink::Rain => "ink-rain",
            Ink::Label => "ink-label",
            Ink::StrongLabel => "ink-strong-label",
            Ink::FaintLabel => "ink-faint-label",
        }
    }
}

impl Drawing {
    /// The parts that can be tapped, from back to front.
    pub fn targets(&self) -> impl Iterator<Item = &Target> {
        self.marks.iter().filter_map(|mark| if let Mark::Part(target) = mark { Some(target) } else { None })
    }
}

/// How far two points are from each other.
pub fn apart((x, y): (f64, f64), (to_x, to_y): (f64, f64)) -> f64 {
    let (wide, high) = (to_x - x, to_y - y);
    (wide * wide + high * high).sqrt()
}
