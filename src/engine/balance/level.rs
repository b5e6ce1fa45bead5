//! The common level of joined tanks: where it stands for a volume, where it spills, what is stranded above it.

use crate::site::Shape;
use crate::site::tank::Tank;

/// Rims this close in height, in m, spill together.
const RIMS_LEVEL_WITHIN: f64 = 0.001;

/// One tank of a store, with elevations over the household's level in m.
#[derive(Clone, Debug)]
struct Member {
    shape: Shape,
    floor_m: f64,
    overflow_m: f64,
    dead_l: f64,
}

impl Member {
    /// Water over the outlet when the surface stands at an elevation, in L.
    fn live_l(&self, surface_m: f64) -> f64 {
        (self.shape.volume_l(surface_m - self.floor_m) - self.dead_l).max(0.0)
    }
}

/// Tanks joined through open valves: one water surface. Live storage lies between each tank's outlet and the lowest
/// rim; what lies below an outlet stays behind in its tank.
#[derive(Clone, Debug)]
pub struct Joined {
    members: Vec<Member>,
    /// Elevation of the lowest rim, in m: above it the store spills.
    pub spill_m: f64,
    /// Which tanks spill there (indices in the store): those whose rims are the lowest, to the millimetre.
    pub spills_at: Vec<usize>,
    /// Live storage up to the lowest rim, in L.
    pub live_capacity_l: f64,
    /// Capacity of each tank above the lowest rim, up to its own overflow, in L: it can never be filled.
    pub stranded_l: Vec<f64>,
}

impl Joined {
    /// Joins tanks (at least one) that have no findings.
    pub fn new(tanks: &[&Tank]) -> Self {
        let members: Vec<Member> = tanks
            .iter()
            .map(|tank| Member {
                shape: tank.shape.clone(),
                floor_m: tank.floor.get(),
                overflow_m: tank.overflow_elevation(),
                dead_l: tank.dead_storage().get(),
            })
            .collect();
        let spill_m = members.iter().map(|member| member.overflow_m).fold(f64::INFINITY, f64::min);
        let at_rim =
            |member: &Member, surface_m: f64| member.shape.volume_l(surface_m - member.floor_m).max(member.dead_l);
        Self {
            spill_m,
            spills_at: (0..members.len()).filter(|at| members[*at].overflow_m <= spill_m + RIMS_LEVEL_WITHIN).collect(),
            live_capacity_l: members.iter().map(|member| member.live_l(spill_m)).sum(),
            stranded_l: members
                .iter()
                .map(|member| at_rim(member, member.overflow_m) - at_rim(member, spill_m))
                .collect(),
            members,
        }
    }

    /// Live water with the surface at an elevation, in L; monotone.
    pub fn live_l(&self, surface_m: f64) -> f64 {
        self.members.iter().map(|member| member.live_l(surface_m)).sum()
    }

    /// The surface elevation for so much live water, in m: bisection between the lowest floor and the lowest rim,
    /// down to neighbouring numbers. With no live water it is the lowest outlet.
    pub fn surface_m(&self, live_l: f64) -> f64 {
        let (mut low, mut high) = (self.lowest_floor_m(), self.spill_m);
        if live_l >= self.live_capacity_l {
            return high;
        }
        loop {
            let middle = low + (high - low) / 2.0;
            if middle <= low || middle >= high {
                return low;
            }
            if self.live_l(middle) <= live_l { low = middle } else { high = middle }
        }
    }

    /// Live water in each tank with the surface at an elevation, in L.
    pub fn live_of_each(&self, surface_m: f64) -> impl Iterator<Item = f64> + '_ {
        self.members.iter().map(move |member| member.live_l(surface_m))
    }

    /// Area of the water in one tank with the surface at an elevation, in m².
    pub fn surface_m2(&self, tank: usize, surface_m: f64) -> f64 {
        self.members.get(tank).map_or(0.0, |member| member.shape.surface_m2(surface_m - member.floor_m))
    }

    fn lowest_floor_m(&self) -> f64 {
        self.members.iter().map(|member| member.floor_m).fold(f64::INFINITY, f64::min).min(self.spill_m)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Length, Volume};
    use crate::site::ShapeKind;
    use crate::site::new_part;
    use crate::site::part::PartId;

    fn tank(kind: ShapeKind, litres: f64, floor: f64) -> Tank {
        let mut tank = new_part::tank(PartId(1), String::new(), Volume::litres(litres), Length::metres(2.0));
        tank.shape = Shape::usual(kind, Volume::litres(litres), Length::metres(2.0));
        tank.overflow = Length::metres(tank.shape.height());
        tank.floor = Length::metres(floor);
        tank
    }

    #[test]
    fn two_boxes_at_different_heights_share_a_level_by_hand() {
        // Two boxes of 1 m² and 2 m high; one stands half a metre higher; outlets 0.1 m over the floors. The lower
        // rim is at 2 m: 1.9 m of the first and 1.4 m of the second are live, half a metre of the second is stranded.
        let boxes = [tank(ShapeKind::Box, 2000.0, 0.0), tank(ShapeKind::Box, 2000.0, 0.5)];
        let joined = Joined::new(&boxes.iter().collect::<Vec<_>>());
        assert!((joined.live_capacity_l - 3300.0).abs() < 1e-9);
        assert!((joined.stranded_l[0]).abs() < 1e-9 && (joined.stranded_l[1] - 500.0).abs() < 1e-9);
        assert_eq!(joined.spills_at, [0]);
        // Up to the second outlet, at 0.6 m, the first holds 500 L; from there both rise together.
        assert!((joined.surface_m(500.0) - 0.6).abs() < 1e-12);
        assert!((joined.surface_m(1500.0) - 1.1).abs() < 1e-12);
    }

    #[test]
    fn the_level_found_holds_the_volume_for_every_shape() {
        for a in ShapeKind::ALL {
            for b in ShapeKind::ALL {
                let tanks = [tank(a, 3000.0, -0.3), tank(b, 1700.0, 0.4)];
                let joined = Joined::new(&tanks.iter().collect::<Vec<_>>());
                for share in [0.0, 0.01, 0.3, 0.5, 0.77, 0.999, 1.0] {
                    let live = share * joined.live_capacity_l;
                    let surface = joined.surface_m(live);
                    assert!((joined.live_l(surface) - live).abs() < 1e-9 * 4700.0, "{a:?} {b:?} {share}");
                }
            }
        }
    }

    #[test]
    fn rims_level_to_the_millimetre_spill_together() {
        let tanks = [tank(ShapeKind::Box, 2000.0, 0.0), tank(ShapeKind::Box, 900.0, 0.0005)];
        assert_eq!(Joined::new(&tanks.iter().collect::<Vec<_>>()).spills_at, [0, 1]);
    }
}
