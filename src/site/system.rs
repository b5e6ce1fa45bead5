//! The parts joined to one system.

use super::climate::Climate;
use super::details::Details;
use super::feed::Feed;
use super::habits::Habits;
use super::hauling::Hauling;
use super::part::{Number, PartId};
use super::pump::Pump;
use super::rationing::RationStep;
use super::roof::RoofSection;
use super::tank::{Cover, OverflowTo, Tank};
use super::trunk::TrunkLine;
use super::uses::Use;

/// A household's water system. Each list is in the household's own order; that of the uses is their priority.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct System {
    /// The roof.
    pub sections: Vec<RoofSection>,
    /// The downspouts.
    pub feeds: Vec<Feed>,
    /// The tanks.
    pub tanks: Vec<Tank>,
    /// The pipes between tanks.
    pub trunk_lines: Vec<TrunkLine>,
    /// The pumps that lift water from one store to another.
    pub pumps: Vec<Pump>,
    /// What draws water, first served first.
    pub uses: Vec<Use>,
    /// The hauling of water, one for each store at most.
    pub hauling: Vec<Hauling>,
    /// The steps of rationing.
    pub rationing: Vec<RationStep>,
    /// The climate that its gardens stand in, once given.
    pub climate: Option<Climate>,
    /// The household's habits, once said.
    pub habits: Option<Habits>,
    /// Details of parts and of the site for the checks.
    pub details: Details,
    /// The greatest number of a part that was taken out, 0 where none was: no new part takes it, or it would have the old
    /// one's past in the diary.
    pub greatest_gone: u32,
}

/// One part of a system.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// A roof section.
    Section(RoofSection),
    /// A feed.
    Feed(Feed),
    /// A tank.
    Tank(Tank),
    /// A trunk line.
    TrunkLine(TrunkLine),
    /// A pump.
    Pump(Pump),
    /// A use.
    Use(Use),
    /// A hauling.
    Hauling(Hauling),
    /// A step of rationing.
    Ration(RationStep),
}

/// The kinds of part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// Roof sections.
    Section,
    /// Feeds.
    Feed,
    /// Tanks.
    Tank,
    /// Trunk lines.
    TrunkLine,
    /// Pumps.
    Pump,
    /// Uses.
    Use,
    /// Haulings.
    Hauling,
    /// Steps of rationing.
    Ration,
}

impl PartKind {
    /// All kinds, from the roof down.
    pub const ALL: [PartKind; 8] = [
        PartKind::Section,
        PartKind::Feed,
        PartKind::Tank,
        PartKind::TrunkLine,
        PartKind::Pump,
        PartKind::Use,
        PartKind::Hauling,
        PartKind::Ration,
    ];
}

/// Runs an expression on the inside of a part, whatever its kind.
macro_rules! on_part {
    ($part:expr, $inner:ident => $do:expr) => {
        match $part {
            Part::Section($inner) => $do,
            Part::Feed($inner) => $do,
            Part::Tank($inner) => $do,
            Part::TrunkLine($inner) => $do,
            Part::Pump($inner) => $do,
            Part::Use($inner) => $do,
            Part::Hauling($inner) => $do,
            Part::Ration($inner) => $do,
        }
    };
}

impl Part {
    /// Its identity.
    pub fn id(&self) -> PartId {
        on_part!(self, part => part.id)
    }

    /// What the household calls it.
    pub fn name(&self) -> &str {
        on_part!(self, part => &part.name)
    }

    /// The same part under another identity and name.
    pub fn renamed(mut self, id: PartId, name: String) -> Self {
        on_part!(&mut self, part => {
            part.id = id;
            part.name = name;
        });
        self
    }

    /// Its kind.
    pub fn kind(&self) -> PartKind {
        match self {
            Part::Section(_) => PartKind::Section,
            Part::Feed(_) => PartKind::Feed,
            Part::Tank(_) => PartKind::Tank,
            Part::TrunkLine(_) => PartKind::TrunkLine,
            Part::Pump(_) => PartKind::Pump,
            Part::Use(_) => PartKind::Use,
            Part::Hauling(_) => PartKind::Hauling,
            Part::Ration(_) => PartKind::Ration,
        }
    }

    /// Its numbers, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        match self {
            Part::Section(part) => part.numbers(),
            Part::Feed(part) => part.numbers(),
            Part::Tank(part) => part.numbers(),
            Part::TrunkLine(_) => Vec::new(),
            Part::Pump(part) => part.numbers(),
            Part::Use(part) => part.numbers(),
            Part::Hauling(part) => part.numbers(),
            Part::Ration(part) => part.numbers(),
        }
    }
}

impl System {
    /// All parts, from the roof down, each as a copy.
    pub fn parts(&self) -> Vec<Part> {
        let mut parts: Vec<Part> = self.sections.iter().cloned().map(Part::Section).collect();
        parts.extend(self.feeds.iter().cloned().map(Part::Feed));
        parts.extend(self.tanks.iter().cloned().map(Part::Tank));
        parts.extend(self.trunk_lines.iter().cloned().map(Part::TrunkLine));
        parts.extend(self.pumps.iter().cloned().map(Part::Pump));
        parts.extend(self.uses.iter().cloned().map(Part::Use));
        parts.extend(self.hauling.iter().cloned().map(Part::Hauling));
        parts.extend(self.rationing.iter().cloned().map(Part::Ration));
        parts
    }

    /// The part of that identity, as a copy.
    pub fn part(&self, id: PartId) -> Option<Part> {
        self.parts().into_iter().find(|part| part.id() == id)
    }

    /// What the household calls a part; empty where there is none.
    pub fn name_of(&self, id: PartId) -> String {
        self.part(id).map(|part| part.name().to_owned()).unwrap_or_default()
    }

    /// The tank of that identity.
    pub fn tank(&self, id: PartId) -> Option<&Tank> {
        self.tanks.iter().find(|tank| tank.id == id)
    }

    /// An identity that no part has, nor had one that was taken out.
    pub fn unused_id(&self) -> PartId {
        let barriers = self.uses.iter().flat_map(|using| &using.barriers).map(|barrier| barrier.id.0);
        let ids = self.parts().iter().map(|part| part.id().0).chain(barriers).max();
        PartId(ids.max(Some(self.greatest_gone)).map_or(1, |greatest| greatest.saturating_add(1)))
    }

    /// Puts a part in the place of the one with its identity, or at the end of its kind.
    pub fn put(&mut self, part: Part) {
        fn place<T>(list: &mut Vec<T>, part: T, same: impl Fn(&T, &T) -> bool) {
            match list.iter_mut().find(|old| same(old, &part)) {
                Some(old) => *old = part,
                None => list.push(part),
            }
        }
        match part {
            Part::Section(part) => place(&mut self.sections, part, |a, b| a.id == b.id),
            Part::Feed(part) => place(&mut self.feeds, part, |a, b| a.id == b.id),
            Part::Tank(part) => place(&mut self.tanks, part, |a, b| a.id == b.id),
            Part::TrunkLine(part) => place(&mut self.trunk_lines, part, |a, b| a.id == b.id),
            Part::Pump(part) => place(&mut self.pumps, part, |a, b| a.id == b.id),
            Part::Use(part) => place(&mut self.uses, part, |a, b| a.id == b.id),
            Part::Hauling(part) => place(&mut self.hauling, part, |a, b| a.id == b.id),
            Part::Ration(part) => place(&mut self.rationing, part, |a, b| a.id == b.id),
        }
    }

    /// Takes a part out, and every mention of it with it. Tanks that were joined through a tank stay joined.
    pub fn remove(&mut self, id: PartId) {
        while let Some(gone) = self.trunk_lines.iter().find(|line| line.ends.contains(&Some(id))).cloned() {
            self.trunk_lines.retain(|line| line.id != gone.id);
            self.details.forget(gone.id);
            let Some(far) = gone.ends.into_iter().flatten().find(|end| *end != id) else { continue };
            for line in self.trunk_lines.iter_mut().filter(|line| line.ends.contains(&Some(id))) {
                line.ends.iter_mut().filter(|end| **end == Some(id)).for_each(|end| *end = Some(far));
                line.open &= gone.open;
            }
            // A pipe from a tank to itself.
            self.trunk_lines.retain(|line| line.ends[0] != line.ends[1] || line.ends[0].is_none());
        }
        self.sections.retain(|part| part.id != id);
        self.feeds.retain(|part| part.id != id);
        self.tanks.retain(|part| part.id != id);
        self.trunk_lines.retain(|part| part.id != id);
        self.pumps.retain(|part| part.id != id);
        self.forget_barriers_of(id);
        self.greatest_gone = self.greatest_gone.max(id.0);
        self.uses.retain(|part| part.id != id);
        self.hauling.retain(|part| part.id != id);
        self.rationing.retain(|part| part.id != id);
        self.details.forget(id);
        for section in &mut self.sections {
            section.outlets.retain(|outlet| outlet.feed != id);
        }
        let forget = |mention: &mut Option<PartId>| {
            mention.take_if(|named| *named == id);
        };
        self.feeds.iter_mut().map(|feed| &mut feed.tank).for_each(forget);
        self.trunk_lines.iter_mut().flat_map(|line| &mut line.ends).for_each(forget);
        self.pumps.iter_mut().flat_map(|pump| [&mut pump.from, &mut pump.to]).for_each(forget);
        self.uses.iter_mut().map(|using| &mut using.tank).for_each(forget);
        self.hauling.iter_mut().map(|hauling| &mut hauling.tank).for_each(forget);
        for step in &mut self.rationing {
            step.tank.take_if(|named| *named == id);
            step.cuts.retain(|cut| cut.using != id);
        }
        let lines = self.habits.iter_mut().flat_map(|habits| &mut habits.lines);
        lines.map(|line| &mut line.to).for_each(forget);
        for tank in &mut self.tanks {
            if tank.overflow_to == OverflowTo::Tank(id) {
                tank.overflow_to = OverflowTo::Ground;
            }
        }
    }

    /// Moves a part one place up or down among its kind; at the end nothing happens.
    pub fn shift(&mut self, id: PartId, down: bool) {
        fn swap<T>(list: &mut [T], is_it: impl Fn(&T) -> bool, down: bool) {
            let Some(at) = list.iter().position(is_it) else { return };
            let other = if down { at.checked_add(1) } else { at.checked_sub(1) };
            if let Some(other) = other.filter(|other| *other < list.len()) {
                list.swap(at, other);
            }
        }
        swap(&mut self.sections, |part| part.id == id, down);
        swap(&mut self.feeds, |part| part.id == id, down);
        swap(&mut self.tanks, |part| part.id == id, down);
        swap(&mut self.trunk_lines, |part| part.id == id, down);
        swap(&mut self.pumps, |part| part.id == id, down);
        swap(&mut self.uses, |part| part.id == id, down);
        swap(&mut self.hauling, |part| part.id == id, down);
        swap(&mut self.rationing, |part| part.id == id, down);
    }

    /// Adds a copy of a part under another name, after the others of its kind; a copied feed takes the same shares
    /// of nothing, since a section's water can go only once.
    pub fn duplicate(&mut self, id: PartId, name: String) -> Option<PartId> {
        let copy = self.unused_id();
        self.put(self.part(id)?.renamed(copy, name));
        self.details.copy(id, copy);
        self.copy_barriers_of(copy);
        Some(copy)
    }

    /// Whether water comes to a tank by any way, or to one that is joined with it: feeds, overflows, pumps, hauling, or
    /// rain on open water.
    pub fn is_filled(&self, id: PartId) -> bool {
        let stores = self.stores();
        let Some(store) = stores.iter().find(|store| store.contains(&id)) else { return false };
        let here = |tank: Option<PartId>| tank.is_some_and(|tank| store.contains(&tank));
        let spills_here = |tank: &Tank| match tank.overflow_to {
            OverflowTo::Tank(to) => store.contains(&to) && !store.contains(&tank.id),
            OverflowTo::Ground | OverflowTo::Garden => false,
        };
        self.feeds.iter().any(|feed| here(feed.tank))
            || self.tanks.iter().any(spills_here)
            || self.pumps.iter().any(|pump| here(pump.to))
            || self.hauling.iter().any(|hauling| here(hauling.tank))
            || self.tanks.iter().any(|tank| store.contains(&tank.id) && tank.cover != Cover::Covered)
    }

    /// Tanks grouped to stores: those joined through open valves, each group in the order of the list.
    pub fn stores(&self) -> Vec<Vec<PartId>> {
        self.joined_by(|line| line.open)
    }

    /// The same, as if all valves were open.
    pub fn plumbed_together(&self) -> Vec<Vec<PartId>> {
        self.joined_by(|_| true)
    }

    fn joined_by(&self, joins: fn(&TrunkLine) -> bool) -> Vec<Vec<PartId>> {
        let mut label: Vec<usize> = (0..self.tanks.len()).collect();
        let at = |id: Option<PartId>| id.and_then(|id| self.tanks.iter().position(|tank| tank.id == id));
        for line in self.trunk_lines.iter().filter(|line| joins(line)) {
            if let (Some(a), Some(b)) = (at(line.ends[0]), at(line.ends[1])) {
                let (keep, drop) = (label[a].min(label[b]), label[a].max(label[b]));
                label.iter_mut().filter(|label| **label == drop).for_each(|label| *label = keep);
            }
        }
        let mut stores: Vec<Vec<PartId>> = vec![Vec::new(); self.tanks.len()];
        for (tank, label) in self.tanks.iter().zip(label) {
            stores[label].push(tank.id);
        }
        stores.retain(|store| !store.is_empty());
        stores
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn a_removed_tank_is_mentioned_nowhere() {
        let mut system = demo::site().system;
        for tank in system.tanks.clone() {
            system.remove(tank.id);
        }
        assert!(system.feeds.iter().all(|feed| feed.tank.is_none()));
        assert!(system.uses.iter().all(|using| using.tank.is_none()));
        assert!(system.trunk_lines.iter().all(|line| line.ends == [None, None]));
    }

    #[test]
    fn a_line_that_ends_nowhere_leaves_nothing_dangling_and_one_at_itself_can_go() {
        let mut system = demo::site().system;
        let ids: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
        let line = system.trunk_lines[0].clone();
        let open_end = TrunkLine { id: system.unused_id(), ends: [Some(ids[0]), None], ..line.clone() };
        system.trunk_lines.insert(0, open_end);
        system.remove(ids[0]);
        assert_eq!(system.trunk_lines, []);
        // Lines that name each other and themselves, as no program writes them.
        let [one, other] = [91, 92].map(PartId);
        system.trunk_lines = vec![
            TrunkLine { id: one, ends: [Some(one), Some(other)], ..line.clone() },
            TrunkLine { id: other, ends: [Some(one), Some(ids[1])], ..line },
        ];
        system.remove(one);
        assert!(!system.trunk_lines.iter().any(|line| line.id == one || line.ends.contains(&Some(one))));
    }

    #[test]
    fn a_new_part_never_takes_the_number_of_one_that_went() {
        let mut system = demo::site().system;
        let new = system.unused_id();
        system.put(Part::Tank(super::super::new_part::usual_tank(new, String::new())));
        system.remove(new);
        assert!(system.unused_id() > new);
        let using = system.uses[0].id;
        system.add_barrier(using, super::super::barrier::BarrierKind::Carbon);
        let barrier = system.uses[0].barriers.last().map(|barrier| barrier.id).unwrap_or(new);
        system.remove_barrier(barrier);
        assert!(system.unused_id() > barrier);
    }

    #[test]
    fn tanks_joined_through_one_that_goes_stay_joined() {
        let mut system = demo::site().system;
        let ids: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
        let line = system.trunk_lines[0].clone();
        assert_eq!((line.ends, line.open), ([Some(ids[0]), Some(ids[1])], true));
        let second = TrunkLine { id: system.unused_id(), ends: [Some(ids[1]), Some(ids[2])], open: false, ..line };
        system.put(Part::TrunkLine(second.clone()));
        system.remove(ids[1]);
        // One pipe is left, from the first to the third, as shut as its valve was.
        let left: Vec<_> = system.trunk_lines.iter().map(|line| (line.id, line.ends, line.open)).collect();
        assert_eq!(left, [(second.id, [Some(ids[0]), Some(ids[2])], false)]);
        system.remove(ids[2]);
        assert_eq!(system.trunk_lines, []);
    }

    #[test]
    fn a_tank_that_nothing_fills_is_known() {
        let mut system = demo::site().system;
        let ids: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
        assert!(ids.iter().all(|id| system.is_filled(*id)));
        // Without its own feed the old tank still fills through the trunk line, but not once that is shut.
        system.feeds.retain(|feed| feed.tank != Some(ids[1]));
        assert!(system.is_filled(ids[1]));
        system.trunk_lines[0].open = false;
        assert!(!system.is_filled(ids[1]));
        assert!(system.is_filled(ids[2]), "the old tank overflows into the barrel");
    }

    #[test]
    fn shutting_a_valve_makes_two_stores() {
        let mut system = demo::site().system;
        let joined = system.stores().len();
        system.trunk_lines[0].open = false;
        assert_eq!(system.stores().len(), joined + 1);
    }

    #[test]
    fn a_part_moves_among_its_kind_and_stops_at_the_end() {
        let mut system = demo::site().system;
        let order = |system: &System| system.uses.iter().map(|using| using.id).collect::<Vec<_>>();
        let before = order(&system);
        system.shift(before[0], false);
        assert_eq!(order(&system), before);
        system.shift(before[0], true);
        assert_eq!(order(&system)[..2], [before[1], before[0]]);
    }
}
