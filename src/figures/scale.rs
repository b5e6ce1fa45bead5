//! From values to places on the sheet.

/// A straight scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    /// Two values.
    pub from: (f64, f64),
    /// Their places.
    pub to: (f64, f64),
}

impl Scale {
    /// The place of a value; that of the first value where the scale has no length or the value is no number.
    pub fn at(&self, value: f64) -> f64 {
        let span = self.from.1 - self.from.0;
        if span == 0.0 || !value.is_finite() {
            return self.to.0;
        }
        self.to.0 + (self.to.1 - self.to.0) * (value - self.from.0) / span
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_meet_ends() {
        let scale = Scale { from: (0.0, 50.0), to: (200.0, 0.0) };
        assert_eq!([0.0, 25.0, 50.0].map(|value| scale.at(value)), [200.0, 100.0, 0.0]);
        assert_eq!(Scale { from: (3.0, 3.0), ..scale }.at(9.0), 200.0);
        assert_eq!(scale.at(f64::NAN), 200.0);
    }
}
