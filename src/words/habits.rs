//! Words of the habits from which amounts are worked out, and where their figures are from.

use crate::site::habits::{Basis, Habit};

/// Opens the habits.
pub const TITLE: &str = "Work it out from habits";
/// What to do.
pub const HOW: &str = "Say how often and how much; replace any figure by your own. Each habit belongs to one use, or to \
                       water from elsewhere.";
/// Puts the amounts into the uses.
pub const PUT: &str = "Put these amounts into the uses";
/// A habit that no use of this system serves.
pub const ELSEWHERE: &str = "Water from elsewhere";
/// A figure of the household's own.
pub const OWN: &str = "Our own figure";

/// A habit.
pub const fn name(habit: Habit) -> &'static str {
    match habit {
        Habit::Drinking => "Drinking",
        Habit::Cooking => "Cooking",
        Habit::Taps => "Hands, face, teeth at the tap",
        Habit::Shower => "Showers",
        Habit::Bath => "Baths",
        Habit::Toilet => "Toilet",
        Habit::Laundry => "Laundry",
        Habit::Dishes => "Dishes by hand",
        Habit::Dishwasher => "Dishwasher",
        Habit::Cleaning => "Cleaning the house",
    }
}

/// What its times count.
pub const fn times(habit: Habit) -> &'static str {
    match (habit, habit.basis()) {
        (Habit::Drinking | Habit::Cooking, _) => "Share of the figure, each person (1 is all)",
        (Habit::Taps, _) => "Minutes a day, each person",
        (Habit::Toilet, _) => "Flushes a day, each person",
        (_, Basis::PersonDay) => "Times a day, each person",
        (_, Basis::PersonWeek) => "Times a week, each person",
        (_, Basis::HouseDay) => "Times a day, all together",
        (_, Basis::HouseWeek) => "Times a week, all together",
    }
}

/// What its amount is for.
pub const fn each(habit: Habit) -> &'static str {
    match habit {
        Habit::Drinking | Habit::Cooking => "Water a day, each person",
        Habit::Taps => "Water a minute",
        Habit::Toilet => "Water a flush",
        Habit::Laundry | Habit::Dishwasher => "Water a load",
        _ => "Water each time",
    }
}

/// The published figures of a habit with their sources, in the order of `Habit::figures`.
pub const fn figures(habit: Habit) -> &'static [&'static str] {
    match habit {
        Habit::Drinking => {
            &["Sphere Handbook, 2.5 to 3 L (from memory)", "2 L, WHO's assumption for adults (from memory)"]
        }
        Habit::Cooking => {
            &["Sphere Handbook, upper end, 6 L (from memory)", "Sphere Handbook, lower end, 3 L (from memory)"]
        }
        Habit::Taps => {
            &["WaterSense faucet, 1.5 US gal/min (from memory)", "US federal maximum, 2.2 US gal/min (from memory)"]
        }
        Habit::Shower => &[
            "5 minutes at WaterSense's 2.0 US gal/min (from memory)",
            "Mean of WRF 4309b, 2016, 15.8 US gal (from memory)",
            "From a bucket, 15 L (common practice, no source)",
        ],
        Habit::Bath => {
            &["Mean of WRF 4309b, 2016, 20.2 US gal (from memory)", "Half a tub, 100 L (common practice, no source)"]
        }
        Habit::Toilet => &[
            "WaterSense, 1.28 US gal (from memory)",
            "US federal maximum, 1.6 US gal (from memory)",
            "US toilet from before 1994, 3.5 US gal (from memory)",
            "Dry toilet, none",
        ],
        Habit::Laundry => &[
            "Mean of WRF 4309b, 2016, 31 US gal (from memory)",
            "ENERGY STAR washer, 14 US gal (from memory)",
            "By hand, 40 L (common practice, no source)",
        ],
        Habit::Dishes => &["Two basins, 15 L (common practice, no source)"],
        Habit::Dishwasher => &["WRF 4309b, 2016, 6.1 US gal", "ENERGY STAR limit, 3.5 US gal (from memory)"],
        Habit::Cleaning => &["A bucket, 10 L (common practice, no source)"],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_names_where_it_is_from() {
        for habit in Habit::ALL {
            assert_eq!(figures(habit).len(), habit.figures().len(), "{habit:?}");
        }
    }
}
