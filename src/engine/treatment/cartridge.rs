//! How long a cartridge lasts.

/// Days that a cartridge lasts: the litres that it is rated for over those that pass in a day. `None` where either is not
/// known. Clear water; cloudy water clogs it long before.
pub fn days(rated_l: f64, litres_a_day: f64) -> Option<f64> {
    (rated_l > 0.0 && litres_a_day > 0.0).then(|| rated_l / litres_a_day)
}

/// Share of its allowance of pressure that a cartridge has used up: 0 when clean, 1 and more when it wants changing.
/// Pressures lost in it, all in one unit and at one flow: when new, now, and at which it is changed. `None` where they don't
/// rise in that order.
///
/// Common practice: changed by pressure rather than by date; no source.
pub fn clogged(clean: f64, now: f64, change_at: f64) -> Option<f64> {
    (clean >= 0.0 && change_at > clean && now >= 0.0).then(|| ((now - clean) / (change_at - clean)).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn life_by_litres_and_by_pressure() {
        // Worked by hand: 20,000 L at 100 L a day is 200 days; 10 kPa new, 70 now, 100 at the end: 60 of 90.
        assert_eq!(days(20_000.0, 100.0), Some(200.0));
        assert_eq!(days(0.0, 100.0), None);
        assert_eq!(days(20_000.0, 0.0), None);
        assert_eq!(clogged(10.0, 70.0, 100.0), Some(60.0 / 90.0));
        assert_eq!(clogged(10.0, 5.0, 100.0), Some(0.0));
        assert_eq!(clogged(10.0, 50.0, 10.0), None);
    }
}
