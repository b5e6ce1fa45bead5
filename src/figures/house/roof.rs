//! The roof along the top: sections side by side, two and two as gables, with gutters at their eaves. Sections whose water
//! comes to tanks that are plumbed together stand together: they are taken for one building.

use super::{House, drawable, label_of};
use crate::figures::drawing::{Anchor, Ink, apart};
use crate::figures::lettering::{self, LEADING, SIZE, SMALL};
use crate::figures::pen::{Pen, Point, Step, add_through};
use crate::figures::share_out::share_out;
use crate::site::part::PartId;
use crate::site::roof::{Material, RoofSection};
use crate::site::system::System;

/// Narrowest section; where there are more than fit, neighbours are drawn as one.
const NARROWEST: f64 = 64.0;
/// Room beside the outermost eaves.
const MARGIN: f64 = 12.0;
/// Room between two gables, for their downspouts.
const BETWEEN: f64 = 20.0;
const TOP: f64 = 10.0;
/// How far an eave stands out over its wall.
const OVERHANG: f64 = 9.0;
/// Radius of a gutter.
const GUTTER: f64 = 5.0;
/// A gutter of that radius, open upwards.
pub(super) const HALF_ROUND: Step = ((-GUTTER, 0.0), "a5 5 0 0 0 10.0 0");
/// Share of the rain from which a section counts as collected.
const ALL: f64 = 0.999;

/// Where the roof stands.
pub(super) struct Roof {
    /// Sections from left to right.
    pub cells: Vec<RoofCell>,
    /// The height of all eaves.
    pub eave: f64,
    /// Below the roof's labels.
    pub bottom: f64,
}

/// A section, or several drawn as one.
pub(super) struct RoofCell {
    /// The sections.
    pub parts: Vec<PartId>,
    /// The feeds that they run to.
    pub feeds: Vec<PartId>,
    /// Left end.
    pub left: f64,
    /// Right end.
    pub right: f64,
    /// Whether the eave is at the left end.
    eave_at_left: bool,
    /// The gable that it is a half of, or the whole; counted from the left.
    gable: usize,
    /// How far the inner end rises over the eave.
    rise: f64,
    /// Share of the rain that is collected.
    collected: f64,
    material: Material,
    name: Vec<String>,
    detail: String,
}

impl RoofCell {
    /// Where the water leaves it.
    pub fn eave_x(&self) -> f64 {
        if self.eave_at_left { self.left } else { self.right }
    }

    /// The middle of its gutter.
    pub fn gutter_x(&self) -> f64 {
        if self.eave_at_left { self.left - GUTTER } else { self.right + GUTTER }
    }

    fn inner_x(&self) -> f64 {
        if self.eave_at_left { self.right } else { self.left }
    }

    fn wall_x(&self) -> f64 {
        if self.eave_at_left { self.left + OVERHANG } else { self.right - OVERHANG }
    }
}

impl Roof {
    /// Sections that meet at one ridge, and those that lean alone.
    pub fn gables(&self) -> impl Iterator<Item = &[RoofCell]> {
        self.cells.chunk_by(|one, next| one.gable == next.gable)
    }

    /// Where the water of a feed comes from.
    pub fn gutters_of(&self, feed: PartId) -> impl Iterator<Item = f64> {
        self.cells.iter().filter(move |cell| cell.feeds.contains(&feed)).map(RoofCell::gutter_x)
    }
}

/// Lays out the sections of a system.
pub(super) fn layout(system: &System, labels: &super::Labels, width: f64) -> Roof {
    let room = width - 2.0 * MARGIN;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen at most")]
    let most = ((room + BETWEEN / 2.0) / (NARROWEST + BETWEEN / 2.0)).floor() as usize;
    let chunks = chunks(system, most.max(1));
    let mut cells = cells(&chunks);
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let gaps = cells.last().map_or(0, |last| last.gable) as f64 * BETWEEN;
    let wanted: Vec<(f64, f64)> = chunks.iter().flatten().map(|sections| (NARROWEST, total_area(sections))).collect();
    let mut x = MARGIN;
    let mut gable = 0;
    for (cell, own) in cells.iter_mut().zip(share_out(room - gaps, &wanted)) {
        if cell.gable != gable {
            x += BETWEEN;
            gable = cell.gable;
        }
        (cell.left, cell.right) = (x, x + own);
        x += own;
    }
    set_rises(&mut cells);
    let highest = cells.iter().map(|cell| cell.rise).fold(36.0, f64::max);
    for cell in &mut cells {
        let room = cell.right - cell.left - 14.0;
        let label = cell.parts.first().and_then(|part| label_of(labels, *part));
        cell.name = match (&cell.parts[..], label) {
            ([_], Some(label)) => lettering::lines(&label.name, room, SIZE, 2),
            ([_, _, ..], _) => vec![format!("×{}", cell.parts.len())],
            _ => Vec::new(),
        };
        cell.detail = match (&cell.parts[..], label) {
            ([_], Some(label)) if lettering::width(&label.detail, SMALL) <= room => label.detail.clone(),
            _ => String::new(),
        };
    }
    let lines = cells.iter().map(|cell| cell.name.len() + usize::from(!cell.detail.is_empty())).max().unwrap_or(0);
    let eave = TOP + highest;
    #[expect(clippy::cast_precision_loss, reason = "three at most")]
    let bottom = eave + 6.0 + LEADING * lines as f64;
    Roof { cells, eave, bottom }
}

/// The sections of each building, as many of them drawn as one as it takes to have no more than `most`. Where there are more
/// buildings than that, all are taken for one.
fn chunks(system: &System, most: usize) -> Vec<Vec<Vec<&RoofSection>>> {
    let stores = system.plumbed_together();
    let mut buildings: Vec<(usize, Vec<&RoofSection>)> = Vec::new();
    let mut last = 0;
    for section in &system.sections {
        let feeds = section.outlets.iter().filter_map(|outlet| system.feeds.iter().find(|feed| feed.id == outlet.feed));
        let tank = feeds.filter_map(|feed| feed.tank).next();
        // What is not collected belongs to what stands before it.
        let store = tank.and_then(|tank| stores.iter().position(|store| store.contains(&tank))).unwrap_or(last);
        last = store;
        match buildings.iter_mut().find(|(of, _)| *of == store) {
            Some((_, sections)) => sections.push(section),
            None => buildings.push((store, vec![section])),
        }
    }
    let mut buildings: Vec<Vec<&RoofSection>> = buildings.into_iter().map(|(_, sections)| sections).collect();
    if buildings.len() > most {
        buildings = vec![buildings.concat()];
    }
    let drawn = |together: usize| buildings.iter().map(|sections| sections.len().div_ceil(together)).sum::<usize>();
    let together = (1..=system.sections.len()).find(|together| drawn(*together) <= most).unwrap_or(1);
    buildings.iter().map(|sections| sections.chunks(together).map(<[_]>::to_vec).collect()).collect()
}

/// What is drawn of them: two and two as gables, one that is left over leaning to the right.
fn cells(buildings: &[Vec<Vec<&RoofSection>>]) -> Vec<RoofCell> {
    let gables = buildings.iter().flat_map(|chunks| chunks.chunks(2));
    let halves = gables.enumerate().flat_map(|(gable, halves)| {
        halves.iter().enumerate().map(move |(at, sections)| cell(sections, gable, at == 0 && halves.len() == 2))
    });
    halves.collect()
}

fn total_area(sections: &[&RoofSection]) -> f64 {
    sections.iter().map(|section| drawable(section.area.get(), 0.1, 100_000.0)).sum()
}

fn cell(sections: &[&RoofSection], gable: usize, eave_at_left: bool) -> RoofCell {
    let mut feeds: Vec<PartId> = Vec::new();
    for section in sections {
        feeds.extend(section.outlets.iter().map(|outlet| outlet.feed));
    }
    let collected = sections.iter().map(|section| drawable(section.collected_share(), 0.0, 1.0));
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let collected = collected.sum::<f64>() / sections.len() as f64;
    RoofCell {
        parts: sections.iter().map(|section| section.id).collect(),
        feeds,
        left: 0.0,
        right: 0.0,
        eave_at_left,
        gable,
        rise: 0.0,
        collected,
        material: sections.first().map_or(Material::Other, |section| section.material),
        name: Vec::new(),
        detail: String::new(),
    }
}

/// Both halves of a gable meet at one ridge; a lone one leans, a flat one hardly rises.
fn set_rises(cells: &mut [RoofCell]) {
    for gable in cells.chunk_by_mut(|one, next| one.gable == next.gable) {
        let narrower = gable.iter().map(|cell| cell.right - cell.left).fold(f64::INFINITY, f64::min);
        let pitched =
            if gable.len() == 2 { (0.42 * narrower).clamp(24.0, 66.0) } else { (0.3 * narrower).clamp(18.0, 40.0) };
        for cell in gable {
            let flat = matches!(cell.material, Material::FlatGravel | Material::Planted);
            cell.rise = if flat { 7.0 } else { pitched };
        }
    }
}

/// The outline of walls and roof of each gable, for the wash behind the tanks.
pub(super) fn silhouettes(roof: &Roof, ground: f64) -> Vec<Vec<Point>> {
    let outline = |gable: &[RoofCell]| {
        let (Some(first), Some(last)) = (gable.first(), gable.last()) else { return Vec::new() };
        let (left, right) =
            if gable.len() == 2 { (first.wall_x(), last.wall_x()) } else { (first.left, last.wall_x()) };
        let mut points = vec![(left, ground), (left, roof.eave)];
        for cell in gable {
            let (eave, inner) = ((cell.eave_x(), roof.eave), (cell.inner_x(), roof.eave - cell.rise));
            points.extend(if cell.eave_at_left { [eave, inner] } else { [inner, eave] });
        }
        points.extend([(right, roof.eave), (right, ground)]);
        points
    };
    roof.gables().map(outline).collect()
}

/// Draws the sections.
pub(super) fn draw(house: &mut House, roof: &Roof) {
    for cell in &roof.cells {
        let mut pen = Pen::default();
        let eave: Point = (cell.eave_x(), roof.eave);
        let inner: Point = (cell.inner_x(), roof.eave - cell.rise);
        let loose = cell.collected <= 0.0;
        pen.line(if loose { Ink::Loose } else { Ink::Strong }, &[eave, inner]);
        let lower = |(x, y): Point| (x, y + 5.0);
        if !loose {
            pen.line(Ink::Faint, &[lower(eave), lower(inner)]);
            texture(&mut pen, cell.material, eave, inner);
            pen.sign(Ink::Line, (cell.gutter_x(), roof.eave + 1.0), &[HALF_ROUND]);
        }
        if cell.collected < ALL {
            let (x, count) = if loose {
                (cell.gutter_x(), 4)
            } else {
                (cell.gutter_x() + if cell.eave_at_left { 9.0 } else { -9.0 }, 2)
            };
            for drop in 0..count {
                drip(&mut pen, (x, roof.eave + 10.0 + 17.0 * f64::from(drop)));
            }
        }
        let middle = f64::midpoint(cell.left, cell.right);
        let y = pen.texts(Ink::StrongLabel, (middle, roof.eave + 20.0), Anchor::Middle, SIZE, &cell.name);
        pen.text(Ink::FaintLabel, (middle, y), Anchor::Middle, SMALL, &cell.detail);
        let top = roof.eave - cell.rise - 4.0;
        let beside = cell.name.first().map_or(0.0, |line| lettering::width(line, SIZE) / 2.0);
        // Beside the name where there is room, else under the figure.
        let after_name = middle + beside + 12.0;
        let sign = if after_name + 9.0 <= cell.right { (after_name, roof.eave + 14.0) } else { (middle, y + 18.0) };
        house.target(&cell.parts, (cell.left, top), (cell.right - cell.left, roof.bottom - top), sign, pen);
    }
}

/// A falling drop.
pub(super) fn drip(pen: &mut Pen, place: Point) {
    pen.sign(Ink::Drip, place, &[((0.0, -4.0), "q4 6 0 8q-4 -2 0 -8Z")]);
}

/// A few strokes that tell what the roof is covered with.
fn texture(pen: &mut Pen, material: Material, eave: Point, inner: Point) {
    let length = apart(inner, eave).max(1.0);
    let (along_x, along_y) = ((inner.0 - eave.0) / length, (inner.1 - eave.1) / length);
    // The normal that points upwards.
    let up = if along_x > 0.0 { 1.0 } else { -1.0 };
    let at = |along: f64, over: f64| {
        (eave.0 + along_x * along + up * along_y * over, eave.1 + along_y * along - up * along_x * over)
    };
    let spacing = match material {
        Material::Metal => 22.0,
        Material::Tile | Material::Shingle => 10.0,
        Material::FlatGravel => 8.0,
        Material::Planted => 9.0,
        Material::Concrete | Material::Other => return,
    };
    let mut d = String::new();
    let mut along = spacing / 2.0 + 4.0;
    while along < length - spacing / 2.0 {
        // Places of a stroke: along the roof, and over it.
        let stroke: &[Point] = match material {
            Material::Metal => &[(0.0, 0.0), (0.0, 4.0)],
            Material::Tile => &[(-5.0, 1.0), (0.0, 5.0), (3.0, 1.0)],
            Material::Shingle => &[(0.0, 4.0), (8.0, 1.0)],
            Material::Planted => &[(-3.0, 8.0), (0.0, 1.0), (3.0, 8.0)],
            _ => &[(0.0, 3.5), (1.5, 3.5)],
        };
        let places: Vec<Point> = stroke.iter().map(|(further, over)| at(along + further, *over)).collect();
        add_through(&mut d, &places);
        along += spacing;
    }
    pen.path(Ink::Line, d);
}
