//! Boiling.

/// Height above which water must boil longer, in m. EPA says 5,000 ft (1,524 m), CDC 6,500 ft (2,000 m, from memory): the
/// lower counts. Source: EPA Emergency Disinfection of Drinking Water.
pub const HIGH_M: f64 = 1524.0;
/// Logs of bacteria, viruses and protozoa that a rolling boil is worth: the lower of the two figures in WHO Guidelines for
/// Drinking-water Quality, 4th edition, chapter 7 on household treatment (from memory).
pub const LOGS: [f64; 3] = [6.0, 6.0, 6.0];

/// Minutes of rolling boil at a height above the sea, in m: one, and three where water boils too cool.
///
/// Source: EPA Emergency Disinfection of Drinking Water.
pub fn minutes(altitude_m: f64) -> f64 {
    if altitude_m > HIGH_M { 3.0 } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn higher_up_it_takes_longer() {
        // EPA fact sheet: 1 minute, above 5,000 ft (1,524 m) 3 minutes.
        assert_eq!((minutes(0.0), minutes(1500.0), minutes(1525.0), minutes(4000.0)), (1.0, 1.0, 3.0, 3.0));
    }
}
