//! Whole drawings: that everything is there, on the sheet, and at its height.

use super::*;
use crate::figures::drawing::Anchor;
use crate::figures::sound::{absolute, assert_sound};
use crate::figures::{Ink, lettering};
use crate::quantity::{Area, Length, Share, Volume};
use crate::site::barrier::BarrierKind;
use crate::site::details::Detail;
use crate::site::roof::Outlet;
use crate::site::system::{Part, PartKind};
use crate::site::tank::{Build, OverflowTo, Shape, ShapeKind, Tank};
use crate::site::{demo, new_part};

const WIDTHS: [f64; 3] = [328.0, 358.0, 760.0];

fn labels(system: &System) -> Labels {
    let label = |part: &Part| {
        let name = part.name().to_owned();
        (part.id(), PartLabel { spoken: format!("{:?} {name}", part.kind()), detail: "1,234 gal".to_owned(), name })
    };
    system.parts().iter().map(label).collect()
}

fn drawn(system: &System, water: &[TankWater], width: f64) -> Drawing {
    drawing(system, water, &[], &labels(system), width)
}

fn add(system: &mut System, kind: PartKind) -> PartId {
    let part = new_part::part(system, kind, format!("{kind:?} number {}", system.parts().len() + 1));
    let id = part.id();
    system.put(part);
    id
}

/// So many tanks, feeds and sections, each feed with a section, spread over the tanks; tanks joined in a chain.
fn many(tanks: usize, feeds: usize) -> System {
    let mut system = System::default();
    for at in 0..tanks {
        add(&mut system, PartKind::Tank);
        if at > 0 {
            add(&mut system, PartKind::TrunkLine);
            let ends = [system.tanks[at - 1].id, system.tanks[at].id].map(Some);
            system.trunk_lines[at - 1].ends = ends;
        }
    }
    for at in 0..feeds {
        let feed = add(&mut system, PartKind::Feed);
        system.feeds[at].tank = (tanks > 0).then(|| system.tanks[at * tanks / feeds].id);
        add(&mut system, PartKind::Section);
        system.sections[at].outlets = vec![Outlet { feed, share: Share::of_one(1.0) }];
    }
    for at in 0..tanks.min(4) {
        add(&mut system, PartKind::Use);
        system.uses[at].tank = Some(system.tanks[at].id);
    }
    system
}

fn pumped() -> System {
    let mut system = many(2, 2);
    system.tanks[1].floor = Length::metres(-2.5);
    system.tanks[1].build = Build::Cistern;
    system.trunk_lines.clear();
    for kind in [PartKind::Pump, PartKind::Hauling, PartKind::TrunkLine] {
        add(&mut system, kind);
    }
    system.trunk_lines[0].ends = [None, None];
    system
}

#[track_caller]
fn check(system: &System) {
    for width in WIDTHS {
        let drawing = drawn(system, &[], width);
        assert_sound(&drawing);
        for part in system.parts() {
            let holding = drawing.targets().filter(|target| target.parts.contains(&part.id())).count();
            assert_eq!(holding, 1, "{} can be tapped at one place", part.name());
        }
        assert!(drawing.targets().all(|target| !target.name.is_empty()));
        let free: Vec<&Target> = drawing
            .marks
            .iter()
            .filter_map(|mark| if let Mark::Free(free) = mark { Some(free) } else { None })
            .collect();
        assert_eq!(free.len(), 1, "another tank has its place");
        let targets: Vec<&Target> = drawing.targets().chain(free).collect();
        for (at, a) in targets.iter().enumerate() {
            for b in &targets[at + 1..] {
                let wide = (a.x + a.width).min(b.x + b.width) - a.x.max(b.x);
                let high = (a.y + a.height).min(b.y + b.height) - a.y.max(b.y);
                let slight = wide < 8.0 || high < 16.0;
                assert!(slight, "{} and {} overlap by {wide:.0} × {high:.0} at {width}", a.name, b.name);
            }
        }
    }
}

#[test]
fn every_part_can_be_tapped_whatever_the_house() {
    check(&demo::site().system);
    check(&System::default());
    check(&many(1, 1));
    check(&many(1, 5));
    check(&many(0, 3));
    check(&many(3, 0));
    check(&many(10, 6));
    check(&many(10, 40));
    check(&many(2, 40));
    check(&pumped());
}

#[test]
fn any_shape_and_size_is_drawn() {
    for kind in ShapeKind::ALL {
        for (build, litres, height) in
            [(Build::Barrel, 40.0, 0.3), (Build::Bladder, 90_000.0, 1.2), (Build::Cistern, 400.0, 9.0)]
        {
            let mut system = many(3, 2);
            system.tanks[1].build = build;
            system.tanks[1].shape = Shape::usual(kind, Volume::litres(litres), Length::metres(height));
            system.tanks[2].floor = Length::metres(60.0);
            check(&system);
        }
    }
}

#[test]
fn numbers_that_are_none_leave_a_drawing() {
    let mut system = pumped();
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1e300] {
        system.sections[0].area = Area::square_metres(bad);
        system.tanks[0].floor = Length::metres(bad);
        system.tanks[0].overflow = Length::metres(bad);
        system.tanks[1].outlet = Length::metres(bad);
        system.tanks[1].shape = Shape::UprightCylinder { diameter: Length::metres(bad), height: Length::metres(bad) };
        let water = [TankWater { tank: system.tanks[1].id, level_m: bad }];
        assert_sound(&drawn(&system, &water, 358.0));
        assert_sound(&drawn(&system, &[], bad));
    }
    system.tanks[0].shape = Shape::Table(Vec::new());
    assert_sound(&drawn(&system, &[], 358.0));
}

/// Upper and lower end of the outline of a tank.
fn outline(drawing: &Drawing, tank: &Tank) -> (f64, f64) {
    let marks = drawing.targets().filter(|target| target.parts == [tank.id]).flat_map(|target| &target.marks);
    let closed = marks.filter_map(|mark| match mark {
        Mark::Path { d, ink: Ink::Strong } if d.ends_with('Z') => Some(absolute(d)),
        _ => None,
    });
    closed.flatten().fold((f64::INFINITY, f64::NEG_INFINITY), |(top, bottom), (_, y)| (top.min(y), bottom.max(y)))
}

#[test]
fn tanks_stand_at_their_true_relative_heights() {
    let mut system = many(4, 2);
    for (tank, (floor, height)) in system.tanks.iter_mut().zip([(0.0, 2.0), (0.3, 1.9), (-1.5, 1.0), (0.0, 1.0)]) {
        let shape = Shape::usual(ShapeKind::UprightCylinder, Volume::litres(3000.0), Length::metres(height));
        *tank = Tank { floor: Length::metres(floor), shape, ..tank.clone() };
    }
    let drawing = drawn(&system, &[], 760.0);
    let spans: Vec<(f64, f64)> = system.tanks.iter().map(|tank| outline(&drawing, tank)).collect();
    assert!(spans[1].0 < spans[0].0 && spans[0].0 < spans[3].0 && spans[3].0 < spans[2].0, "higher rims are higher");
    assert!((spans[0].1 - spans[3].1).abs() < 0.11, "floors at one level are level");
    let per_metre = (spans[0].1 - spans[0].0) / 2.0;
    assert!((spans[0].1 - spans[1].1 - 0.3 * per_metre).abs() < 0.2, "0.3 m higher");
    assert!(((spans[2].1 - spans[2].0) - per_metre).abs() < 0.2, "one scale for all");
}

fn water_top(drawing: &Drawing, tank: PartId) -> Option<f64> {
    let marks = drawing.targets().filter(|target| target.parts == [tank]).flat_map(|target| &target.marks);
    let areas = marks.filter_map(|mark| match mark {
        Mark::Path { d, ink: Ink::Water } => Some(absolute(d)),
        _ => None,
    });
    areas.flatten().map(|(_, y)| y).reduce(f64::min)
}

#[test]
fn water_stands_at_its_level_and_an_empty_tank_has_none() {
    let system = many(2, 1);
    let ids = [system.tanks[0].id, system.tanks[1].id];
    let height = system.tanks[0].shape.height();
    let water = [TankWater { tank: ids[0], level_m: height / 4.0 }, TankWater { tank: ids[1], level_m: 0.0 }];
    let drawing = drawn(&system, &water, 358.0);
    let (top, bottom) = outline(&drawing, &system.tanks[0]);
    let level = water_top(&drawing, ids[0]).unwrap_or_default();
    assert!((level - (bottom - (bottom - top) / 4.0)).abs() < 0.2, "a quarter full");
    assert_eq!(water_top(&drawing, ids[1]), None);
}

#[test]
fn what_shows_on_the_part_itself() {
    let system = demo::site().system;
    let signs = [PartMark { part: system.feeds[1].id, sign: Sign::Attention }];
    let drawing = drawing(&system, &[], &signs, &labels(&system), 358.0);
    for target in drawing.targets() {
        let signed = target.marks.iter().any(|mark| matches!(mark, Mark::Path { ink: Ink::Caution, .. }));
        assert_eq!(signed, target.parts == [system.feeds[1].id]);
    }
}

#[test]
fn an_uncollected_section_is_loose_and_drips() {
    let system = demo::site().system;
    let drawing = drawn(&system, &[], 358.0);
    for section in &system.sections {
        let own = drawing.targets().filter(|target| target.parts == [section.id]).flat_map(|target| &target.marks);
        let inks: Vec<Ink> =
            own.filter_map(|mark| if let Mark::Path { ink, .. } = mark { Some(*ink) } else { None }).collect();
        assert_eq!(inks.contains(&Ink::Loose), section.outlets.is_empty());
        assert_eq!(inks.contains(&Ink::Drip), section.outlets.is_empty());
    }
}

#[test]
fn a_shut_valve_looks_shut() {
    let mut system = demo::site().system;
    let filled = |system: &System| {
        let drawing = drawn(system, &[], 358.0);
        let own = drawing.targets().filter(|target| target.parts == [system.trunk_lines[0].id]);
        own.flat_map(|target| &target.marks).filter(|mark| matches!(mark, Mark::Path { ink: Ink::Solid, .. })).count()
    };
    let open = filled(&system);
    system.trunk_lines[0].open = false;
    assert_eq!(filled(&system), open + 1);
}

#[test]
fn pipes_between_rows_have_lines_of_their_own() {
    let mut system = many(10, 10);
    add(&mut system, PartKind::Pump);
    add(&mut system, PartKind::Pump);
    for (pump, [from, to]) in system.pumps.iter_mut().zip([[3, 8], [7, 0]]) {
        (pump.from, pump.to) = (Some(system.tanks[from].id), Some(system.tanks[to].id));
    }
    check(&system);
    let labels = labels(&system);
    let layout = layout::layout(&system, &labels, &roof::layout(&system, &labels, 358.0), 358.0);
    let rows = |joint: &layout::Joint| joint.cells.map(|cell| layout.cells[cell].row);
    let between: Vec<_> = layout.joints.iter().filter_map(|joint| Some((joint.margin?, rows(joint)))).collect();
    assert!(between.len() > 2);
    for (at, (line, [a, b])) in between.iter().enumerate() {
        for (other, [c, d]) in &between[at + 1..] {
            let apart = a.max(b) < c.min(d) || c.max(d) < a.min(b);
            assert!(apart || line != other, "{line} is taken twice");
        }
    }
    let right = layout.cells.iter().map(|cell| cell.left + cell.width).fold(0.0, f64::max);
    assert!(between.iter().all(|(line, _)| right <= *line), "the tanks end before them");
}

#[test]
fn barriers_stand_before_their_tap_in_order() {
    let mut system = demo::site().system;
    for using in &mut system.uses {
        using.barriers.clear();
    }
    let tap = system.uses[0].id;
    let marks = |system: &System| {
        let drawing = drawn(system, &[], 328.0);
        drawing.targets().find(|target| target.parts == [tap]).map(|target| target.marks.len())
    };
    let bare = marks(&system).unwrap_or_default();
    let mut before = bare;
    for (count, kind) in BarrierKind::ALL.into_iter().enumerate() {
        system.add_barrier(tap, kind);
        let drawn = marks(&system).unwrap_or_default();
        if kind == BarrierKind::Boiling {
            assert_eq!(drawn, before, "what is boiled was drawn at the tap");
        } else {
            assert!(drawn > bare + count, "{kind:?} is drawn");
        }
        before = drawn;
        check(&system);
    }
}

#[test]
fn a_pump_stands_in_the_riser_to_its_taps() {
    let mut system = demo::site().system;
    let tank = system.uses[0].tank;
    let marks = |system: &System| drawn(system, &[], 328.0).marks.len();
    let set = |system: &mut System, by: f64| system.details.set(tank, Detail::SuppliedBy, Some(by)).is_ok();
    assert!(set(&mut system, 0.0));
    let bare = marks(&system);
    assert!(set(&mut system, 1.0));
    assert_eq!(marks(&system), bare + 3, "ring, paper and triangle");
    check(&system);
}

#[test]
fn an_overflow_into_a_tank_of_another_row_is_broken_off() {
    let mut system = many(10, 3);
    system.tanks[0].overflow_to = OverflowTo::Tank(system.tanks[9].id);
    check(&system);
}

#[test]
fn every_ink_has_its_class() {
    let style = include_str!("../../../style/figure.css");
    for ink in Ink::ALL {
        let class = ink.class();
        let named = style.match_indices(class).any(|(at, _)| !style[at + class.len()..].starts_with(['-', '_']));
        let plain_text = matches!(ink, Ink::Label);
        assert!(named || plain_text, "{class} is in figure.css");
    }
}

/// The box of each text: its left, top, right and bottom edge, by the letters' usual width.
fn boxes<'a>(marks: impl Iterator<Item = &'a Mark>) -> Vec<(String, [f64; 4])> {
    let text = |mark: &Mark| match mark {
        Mark::Text { x, y, anchor, text, size, .. } => {
            let wide = lettering::width(text, *size) * 0.85;
            let left = match anchor {
                Anchor::Start => *x,
                Anchor::Middle => x - wide / 2.0,
                Anchor::End => x - wide,
            };
            Some((text.clone(), [left, y - 0.7 * size, left + wide, *y]))
        }
        _ => None,
    };
    marks.filter_map(text).collect()
}

#[test]
fn labels_do_not_lie_on_each_other_nor_leave_the_sheet() {
    let mut treated = demo::site().system;
    for kind in BarrierKind::ALL {
        treated.add_barrier(treated.uses[0].id, kind);
    }
    for system in [demo::site().system, many(1, 1), many(10, 6), many(10, 40), many(2, 40), pumped(), treated] {
        for width in WIDTHS {
            let drawing = drawn(&system, &[], width);
            let own = drawing.marks.iter().filter(|mark| !matches!(mark, Mark::Part(_) | Mark::Free(_)));
            let mut texts = boxes(own);
            texts.extend(boxes(drawing.targets().flat_map(|target| &target.marks)));
            for (at, (text, [left, top, right, bottom])) in texts.iter().enumerate() {
                assert!(*left > -1.0 && *right < width + 1.0, "{text} from {left:.0} to {right:.0} on {width}");
                for (other, [l, t, r, b]) in &texts[at + 1..] {
                    let (wide, high) = (right.min(*r) - left.max(*l), bottom.min(*b) - top.max(*t));
                    assert!(wide < 1.0 || high < 1.0, "{text} and {other} overlap by {wide:.0} × {high:.0} on {width}");
                }
            }
        }
    }
}

#[test]
fn rain_that_ran_shows_at_its_downspout() {
    let system = demo::site().system;
    let signs = [PartMark { part: system.feeds[0].id, sign: Sign::Flow }];
    let drawing = drawing(&system, &[], &signs, &labels(&system), 358.0);
    for target in drawing.targets() {
        let wet = target.marks.iter().any(|mark| matches!(mark, Mark::Path { ink: Ink::WaterLine, .. }));
        assert_eq!(wet, target.parts.contains(&system.feeds[0].id), "{}", target.name);
    }
}

#[test]
fn sections_whose_water_stays_apart_stand_under_no_one_ridge() {
    // Two houses, their sections by turns, on tanks that nothing joins.
    let mut system = many(2, 7);
    system.trunk_lines.clear();
    for (at, feed) in system.feeds.iter_mut().enumerate() {
        feed.tank = Some(system.tanks[at % 2].id);
    }
    let tank_of = |feed: &PartId| system.feeds.iter().find(|other| other.id == *feed).and_then(|feed| feed.tank);
    for width in WIDTHS {
        let roof = roof::layout(&system, &labels(&system), width);
        let tanks = |cell: &roof::RoofCell| cell.feeds.iter().map(tank_of).collect::<Vec<_>>();
        for gable in roof.gables() {
            let mut tanks: Vec<_> = gable.iter().flat_map(tanks).collect();
            tanks.dedup();
            assert_eq!(tanks.len(), 1, "at {width}");
        }
        assert_eq!(roof.cells.iter().map(|cell| cell.parts.len()).sum::<usize>(), 7);
    }
}

#[test]
fn a_roof_stays_one_when_a_valve_is_shut() {
    let mut system = demo::site().system;
    let gables = |system: &System| roof::layout(system, &labels(system), 358.0).gables().count();
    let open = gables(&system);
    system.trunk_lines.iter_mut().for_each(|line| line.open = false);
    assert!(system.stores().len() > system.plumbed_together().len());
    assert_eq!(gables(&system), open);
}
