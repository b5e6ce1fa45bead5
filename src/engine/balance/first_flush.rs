//! The first-flush diverter: a state, not a constant.

use super::rule::Bound;
use crate::quantity::HOURS_A_DAY;
use crate::site::circle;
use crate::site::feed::{Diverter, Drain};

/// Standard gravity, m/s² (3rd CGPM, 1901).
pub const GRAVITY: f64 = 9.806_65;
/// Discharge coefficient of a small sharp-edged hole [-] (about 0.61–0.62 in any hydraulics text, from memory).
pub const HOLE_DISCHARGE: f64 = 0.62;
const SECONDS_AN_HOUR: f64 = 3600.0;
const LITRES_PER_CUBIC_METRE: f64 = 1000.0;

/// A diverter lowered to numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Chamber {
    capacity_l: f64,
    /// What its hole passes at full head during a storm.
    drip_l: f64,
    emptying: Emptying,
}

#[derive(Clone, Debug, PartialEq)]
enum Emptying {
    /// How far the root of the content falls in a dry day, and in what is left of a rain day after the storm.
    Hole {
        dry_day_fall: f64,
        rain_day_fall: f64,
    },
    EveryDays(usize),
    Never,
}

/// What a diverter did on a day.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flushed {
    /// Water that it kept from the tank.
    pub diverted_l: f64,
    /// Of that, what ran out of its hole while it rained beyond what it could hold.
    pub dripped_l: f64,
}

/// What a hole passes under a head, both in m, in L/s: `C_d o √(2 g H)`.
pub fn hole_l_s(hole_m: f64, head_m: f64) -> f64 {
    HOLE_DISCHARGE * circle(hole_m) * (2.0 * GRAVITY * head_m).sqrt() * LITRES_PER_CUBIC_METRE
}

/// What the hole of a full diverter passes, in L/s; 0 without a hole.
pub fn full_head_l_s(diverter: &Diverter) -> f64 {
    let Drain::Hole { diameter } = diverter.drain else { return 0.0 };
    let head_m = diverter.volume.get() / LITRES_PER_CUBIC_METRE / circle(diverter.chamber.get());
    hole_l_s(diameter.get(), head_m)
}

impl Chamber {
    /// Lowers a diverter without findings.
    ///
    /// Torricelli: with chamber area a, hole area o and water z deep, √z falls at `C_d (o/a) √(g/2)` per second; the
    /// content is `a z`, so the root of the content falls by that rate times √a. At full head H the hole passes
    /// `C_d o √(2 g H)`.
    pub fn new(diverter: &Diverter) -> Self {
        let capacity_l = diverter.volume.get();
        let chamber_m2 = circle(diverter.chamber.get());
        let storm_h = diverter.storm.get();
        let (drip_l, emptying) = match diverter.drain {
            Drain::Hole { diameter } => {
                let hole_m2 = circle(diameter.get());
                let root_fall_an_hour = HOLE_DISCHARGE
                    * (hole_m2 / chamber_m2)
                    * (GRAVITY / 2.0).sqrt()
                    * SECONDS_AN_HOUR
                    * (chamber_m2 * LITRES_PER_CUBIC_METRE).sqrt();
                let emptying = Emptying::Hole {
                    dry_day_fall: root_fall_an_hour * HOURS_A_DAY,
                    rain_day_fall: root_fall_an_hour * (HOURS_A_DAY - storm_h),
                };
                (full_head_l_s(diverter) * storm_h * SECONDS_AN_HOUR, emptying)
            }
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to 366 by its range")]
            Drain::ByHand { every } => (0.0, Emptying::EveryDays(every.get() as usize)),
            Drain::Never => (0.0, Emptying::Never),
        };
        Self { capacity_l, drip_l, emptying }
    }

    /// Whether a chamber with so much in it has room for less than half of what it is for.
    pub fn is_full(&self, content_l: f64) -> bool {
        content_l > self.capacity_l / 2.0
    }

    /// A day, counted from 0, on which `inflow_l` reaches the diverter. The content is what it holds, changed to
    /// what it holds when the day ends.
    #[inline(always)]
    pub fn day(&self, day: usize, inflow_l: f64, content_l: &mut f64) -> Flushed {
        let mut flushed = Flushed::default();
        let rains = inflow_l > 0.0;
        if rains {
            flushed.diverted_l = inflow_l.least(self.capacity_l - *content_l + self.drip_l);
            let with_it = *content_l + flushed.diverted_l;
            *content_l = with_it.least(self.capacity_l);
            flushed.dripped_l = with_it - *content_l;
        }
        match self.emptying {
            Emptying::Hole { dry_day_fall, rain_day_fall } => {
                let fall = if rains { rain_day_fall } else { dry_day_fall };
                let root = (content_l.sqrt() - fall).most(0.0);
                *content_l = root * root;
            }
            Emptying::EveryDays(every) if (day + 1).is_multiple_of(every) => *content_l = 0.0,
            Emptying::EveryDays(_) | Emptying::Never => {}
        }
        flushed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Bore, Days, Hours, Volume};

    fn standpipe(drain: Drain) -> Chamber {
        // Two metres of 4 in Schedule 40 pipe.
        let litres = std::f64::consts::PI * 0.102_26_f64.powi(2) / 4.0 * 2.0 * 1000.0;
        Chamber::new(&Diverter {
            volume: Volume::litres(litres),
            chamber: Bore::metres(0.102_26),
            drain,
            storm: Hours::from_hours(6.0),
        })
    }

    fn hole(millimetres: f64) -> Drain {
        Drain::Hole { diameter: Bore::metres(millimetres / 1000.0) }
    }

    #[test]
    fn a_standpipe_drains_by_torricelli() {
        // t = 2 a / (C_d o √(2g)) (√h₁ − √h₂), any fluid-mechanics text: 2 m of 4 in Schedule 40 pipe through a hole
        // of 0.2 mm takes 25 times the 2.99 h that a 1 mm hole takes: 74.8 h. After 24 h the root has fallen by a
        // share 24/74.8 of itself.
        let chamber = standpipe(hole(0.2));
        let mut content = chamber.capacity_l;
        chamber.day(0, 0.0, &mut content);
        let left: f64 = 1.0 - 24.0 / (2.99 * 25.0);
        assert!((content / chamber.capacity_l - left * left).abs() < 2e-3, "{content}");
    }

    #[test]
    fn a_second_storm_next_morning_finds_it_still_full_if_the_hole_is_small() {
        let slow = standpipe(hole(0.2));
        let mut content = 0.0;
        let first = slow.day(0, 500.0, &mut content).diverted_l;
        let second = slow.day(1, 500.0, &mut content).diverted_l;
        assert!(first > 16.0 && second < 0.6 * first, "{first} {second}");
        let quick = standpipe(hole(2.0));
        let mut content = 0.0;
        let first = quick.day(0, 500.0, &mut content).diverted_l;
        assert!((quick.day(1, 500.0, &mut content).diverted_l - first).abs() < 1e-9);
    }

    #[test]
    fn a_large_hole_wastes_water_in_every_storm() {
        let small = standpipe(hole(1.0)).day(0, 5000.0, &mut 0.0);
        let large = standpipe(hole(6.0)).day(0, 5000.0, &mut 0.0);
        assert!((large.dripped_l / small.dripped_l - 36.0).abs() < 1e-6);
    }

    #[test]
    fn without_emptying_it_never_flushes_again_and_by_hand_only_after() {
        let never = standpipe(Drain::Never);
        let mut content = 0.0;
        assert!(never.day(0, 500.0, &mut content).diverted_l > 0.0);
        assert!(never.day(1, 500.0, &mut content).diverted_l == 0.0);
        let by_hand = standpipe(Drain::ByHand { every: Days::from_days(3.0) });
        let mut content = 0.0;
        let diverted = [0, 1, 2, 3].map(|day| by_hand.day(day, 500.0, &mut content).diverted_l);
        assert!(diverted[0] > 0.0 && diverted[1] == 0.0 && diverted[2] == 0.0 && diverted[3] == diverted[0]);
    }

    #[test]
    fn a_blocked_hole_of_no_width_keeps_everything() {
        let blocked = standpipe(hole(0.0));
        let mut content = 0.0;
        blocked.day(0, 500.0, &mut content);
        assert!(blocked.is_full(content));
        // One through which next to nothing runs has no more room for the storm of the day after.
        let narrow = standpipe(hole(0.1));
        narrow.day(0, 500.0, &mut content);
        assert!(narrow.is_full(content) && !narrow.is_full(narrow.capacity_l * 0.4));
    }
}
