//! Real inside diameters of pipes by their nominal sizes.

/// A pipe as it is sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeSize {
    /// Nominal size.
    pub name: &'static str,
    /// Inside diameter, in m.
    pub bore_m: f64,
}

const fn pipe(name: &'static str, bore_mm: f64) -> PipeSize {
    PipeSize { name, bore_m: bore_mm / 1000.0 }
}

/// Schedule 40 plastic pipe by inches. Source: ASTM D1785, as in the Python library `fluids` 1.3.1 (`piping.py`).
pub const SCHEDULE_40: [PipeSize; 11] = [
    pipe("1/2 in", 15.7988),
    pipe("3/4 in", 20.9296),
    pipe("1 in", 26.6446),
    pipe("1 1/4 in", 35.052),
    pipe("1 1/2 in", 40.894),
    pipe("2 in", 52.5018),
    pipe("2 1/2 in", 62.7126),
    pipe("3 in", 77.9272),
    pipe("4 in", 102.2604),
    pipe("6 in", 154.051),
    pipe("8 in", 202.7174),
];

/// Metric plastic drain pipe by outside diameter: twice the least wall of series B taken off. Source: EN 1329-1
/// (walls 3.0 mm to 100, 3.2 to 160, 3.9 for 200), from memory.
pub const METRIC_DRAIN: [PipeSize; 7] = [
    pipe("DN 50", 44.0),
    pipe("DN 75", 69.0),
    pipe("DN 90", 84.0),
    pipe("DN 110", 103.6),
    pipe("DN 125", 118.6),
    pipe("DN 160", 153.6),
    pipe("DN 200", 192.2),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::circle;

    #[test]
    fn a_metre_of_pipe_holds_what_handbooks_print() {
        // Litres in a metre of Schedule 40 pipe from the inside diameters of ASTM D1785.
        for (name, litres) in [("3 in", 4.769), ("4 in", 8.213), ("6 in", 18.639), ("8 in", 32.275)] {
            let bore = SCHEDULE_40.iter().find(|size| size.name == name).map_or(0.0, |size| size.bore_m);
            assert!((circle(bore) * 1000.0 - litres).abs() < 6e-4, "{name}");
        }
        assert!(SCHEDULE_40.is_sorted_by_key(|size| size.bore_m) && METRIC_DRAIN.is_sorted_by_key(|size| size.bore_m));
    }
}
