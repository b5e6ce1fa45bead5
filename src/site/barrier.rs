//! Barriers: what stands between a tank and a tap, and against germs, metals and dirt.
//!
//! A barrier has an identity of its own among the parts, under which its details are kept. Leaf screens, first flush and
//! settling are no barriers of this list: they are read off the feeds and tanks.

use super::part::PartId;
use super::system::System;

/// One barrier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Barrier {
    /// Its identity.
    pub id: PartId,
    /// What it is.
    pub kind: BarrierKind,
}

/// The kinds of barrier, in the order in which water usually meets them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BarrierKind {
    /// A cartridge that holds back dirt.
    Sediment,
    /// A cartridge of activated carbon.
    Carbon,
    /// A ceramic candle.
    Ceramic,
    /// A membrane, up to reverse osmosis.
    Membrane,
    /// Chlorine.
    Chlorine,
    /// An ultraviolet lamp.
    Ultraviolet,
    /// Boiling in the kitchen.
    Boiling,
}

impl BarrierKind {
    /// All kinds.
    pub const ALL: [BarrierKind; 7] = [
        BarrierKind::Sediment,
        BarrierKind::Carbon,
        BarrierKind::Ceramic,
        BarrierKind::Membrane,
        BarrierKind::Chlorine,
        BarrierKind::Ultraviolet,
        BarrierKind::Boiling,
    ];

    /// Whether it is a cartridge, candle or membrane: it has a certificate, a life in litres and a pressure lost in it.
    pub const fn is_filter(self) -> bool {
        matches!(self, BarrierKind::Sediment | BarrierKind::Carbon | BarrierKind::Ceramic | BarrierKind::Membrane)
    }
}

impl System {
    /// Adds a barrier at the end of a use's chain; nothing happens where the use is gone.
    pub fn add_barrier(&mut self, using: PartId, kind: BarrierKind) {
        let id = self.unused_id();
        if let Some(using) = self.uses.iter_mut().find(|other| other.id == using) {
            using.barriers.push(Barrier { id, kind });
        }
    }

    /// Takes a barrier out, and its details with it.
    pub fn remove_barrier(&mut self, id: PartId) {
        for using in &mut self.uses {
            using.barriers.retain(|barrier| barrier.id != id);
        }
        self.details.forget(id);
        self.greatest_gone = self.greatest_gone.max(id.0);
    }

    /// Moves a barrier one place up or down in its chain; at the end nothing happens.
    pub fn shift_barrier(&mut self, id: PartId, down: bool) {
        for using in &mut self.uses {
            let Some(at) = using.barriers.iter().position(|barrier| barrier.id == id) else { continue };
            let other = if down { at.checked_add(1) } else { at.checked_sub(1) };
            if let Some(other) = other.filter(|other| *other < using.barriers.len()) {
                using.barriers.swap(at, other);
            }
        }
    }

    /// The barrier of an identity.
    pub fn barrier(&self, id: PartId) -> Option<&Barrier> {
        self.uses.iter().flat_map(|using| &using.barriers).find(|barrier| barrier.id == id)
    }

    /// Forgets the details of a use's barriers, before it goes.
    pub(super) fn forget_barriers_of(&mut self, using: PartId) {
        let ids = self.uses.iter().filter(|other| other.id == using).flat_map(|using| &using.barriers);
        for id in ids.map(|barrier| barrier.id).collect::<Vec<_>>() {
            self.details.forget(id);
            self.greatest_gone = self.greatest_gone.max(id.0);
        }
    }

    /// Gives the barriers of a use that is a copy identities and details of their own.
    pub(super) fn copy_barriers_of(&mut self, copy: PartId) {
        let Some(place) = self.uses.iter().position(|using| using.id == copy) else { return };
        for at in 0..self.uses[place].barriers.len() {
            let (id, before) = (self.unused_id(), self.uses[place].barriers[at].id);
            self.uses[place].barriers[at].id = id;
            self.details.copy(before, id);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;
    use crate::site::details::Detail;

    #[test]
    fn barriers_come_move_and_go_with_their_details() {
        let mut system = demo::site().system;
        let before = system.clone();
        let using = system.uses[0].id;
        system.uses[0].barriers.clear();
        let kinds = |system: &System, at: usize| -> Vec<BarrierKind> {
            system.uses[at].barriers.iter().map(|barrier| barrier.kind).collect()
        };
        system.add_barrier(using, BarrierKind::Ultraviolet);
        system.add_barrier(using, BarrierKind::Sediment);
        system.add_barrier(PartId(999), BarrierKind::Boiling);
        let sediment = system.uses[0].barriers[1].id;
        system.shift_barrier(sediment, false);
        system.shift_barrier(sediment, false);
        assert_eq!(kinds(&system, 0), [BarrierKind::Sediment, BarrierKind::Ultraviolet]);
        assert_eq!(system.details.set(Some(sediment), Detail::RatedLitres, Some(500.0)), Ok(()));

        let copy = system.duplicate(using, "Copy".to_owned());
        let place = system.uses.iter().position(|using| Some(using.id) == copy).unwrap_or(0);
        assert_eq!(kinds(&system, place), kinds(&system, 0));
        let copied = system.uses[place].barriers[0].id;
        assert_ne!(copied, sediment);
        assert_eq!(system.details.get(Some(copied), Detail::RatedLitres), Some(500.0));
        let mut ids: Vec<PartId> = system.parts().iter().map(super::super::system::Part::id).collect();
        ids.extend(system.uses.iter().flat_map(|using| &using.barriers).map(|barrier| barrier.id));
        let count = ids.len();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), count, "every identity occurs once");

        system.remove_barrier(copied);
        assert_eq!(kinds(&system, place), [BarrierKind::Ultraviolet]);
        assert_eq!(system.details.get(Some(copied), Detail::RatedLitres), None);
        system.remove(using);
        assert_eq!(system.details.get(Some(sediment), Detail::RatedLitres), None);
        assert_ne!(system, before);
    }
}
