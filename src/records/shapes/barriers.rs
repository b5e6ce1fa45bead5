//! The barriers of a use.

use super::part_id;
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::object;
use crate::site::barrier::{Barrier, BarrierKind};

/// The barriers of a use; none where there are none yet.
pub(super) fn read(using: &Place<'_>) -> Read<Vec<Barrier>> {
    match using.at_if_any("barriers")? {
        Some(list) => list.as_list(read_one),
        None => Ok(Vec::new()),
    }
}

fn read_one(place: &Place<'_>) -> Read<Barrier> {
    Ok(Barrier { id: part_id::read(place, "id")?, kind: place.at("kind")?.as_one_of(&BarrierKind::ALL, kind_name)? })
}

pub(super) fn write(barrier: &Barrier) -> Value {
    object(vec![("id", barrier.id.0.into()), ("kind", kind_name(barrier.kind).into())])
}

fn kind_name(kind: BarrierKind) -> &'static str {
    match kind {
        BarrierKind::Sediment => "sediment",
        BarrierKind::Carbon => "carbon",
        BarrierKind::Ceramic => "ceramic",
        BarrierKind::Membrane => "membrane",
        BarrierKind::Chlorine => "chlorine",
        BarrierKind::Ultraviolet => "ultraviolet",
        BarrierKind::Boiling => "boiling",
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::site::part::PartId;

    #[test]
    fn every_barrier_comes_back() {
        for kind in BarrierKind::ALL {
            let barrier = Barrier { id: PartId(77), kind };
            assert_eq!(read_one(&Place::top(&write(&barrier))).unwrap(), barrier);
        }
        let older = Value::Object(Vec::new());
        assert_eq!(read(&Place::top(&older)).unwrap(), []);
    }
}
