//! Results of water tests against published limits.

use crate::site::diary::{Parameter, TestResult};

/// Whose limit it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// World Health Organization, Guidelines for Drinking-water Quality.
    Who,
    /// United States Environmental Protection Agency, National Primary or Secondary Drinking Water Regulations.
    Epa,
}

/// What a limit guards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guards {
    /// Health.
    Health,
    /// That treatment works.
    Treatment,
    /// Taste, stains, pipes.
    Taste,
}

/// A limit, in the unit of its parameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// What it is a limit of.
    pub of: Parameter,
    /// Whose.
    pub whose: Whose,
    /// What it guards.
    pub guards: Guards,
    /// The least there may be; nothing asks for more than 0 where it is 0.
    pub least: f64,
    /// The most there may be.
    pub most: f64,
}

const fn limit(of: Parameter, whose: Whose, guards: Guards, least: f64, most: f64) -> Limit {
    Limit { of, whose, guards, least, most }
}

use Guards::{Health, Taste, Treatment};
use Whose::{Epa, Who};

/// The limits, in the unit of each parameter (see [`Parameter::unit`]).
///
/// Sources: WHO, Guidelines for Drinking-water Quality, 4th edition with the addenda of 2017 and 2022; EPA, 40 CFR 141 and
/// 143. All from memory, each 95 % sure or more; the residual and the turbidity are those for small supplies. Lead by EPA
/// is the action level; it falls to 10 µg/L late in 2027. Nitrate by EPA is 10 mg/L as nitrogen, which is 44 as nitrate.
/// Manganese by WHO (2022) is provisional. For aluminium WHO sets no value: 900 µg/L is what its safe intake leads to, 200
/// what small works keep to; EPA names 50 to 200, of which the upper end stands here.
pub const LIMITS: [Limit; 36] = [
    limit(Parameter::EColi, Who, Health, 0.0, 0.0),
    limit(Parameter::EColi, Epa, Health, 0.0, 0.0),
    limit(Parameter::Coliforms, Who, Treatment, 0.0, 0.0),
    limit(Parameter::Coliforms, Epa, Treatment, 0.0, 0.0),
    limit(Parameter::Turbidity, Who, Treatment, 0.0, 1.0),
    limit(Parameter::Turbidity, Who, Health, 0.0, 5.0),
    limit(Parameter::Turbidity, Epa, Treatment, 0.0, 1.0),
    limit(Parameter::Ph, Who, Taste, 6.5, 8.5),
    limit(Parameter::Ph, Epa, Taste, 6.5, 8.5),
    limit(Parameter::FreeChlorine, Who, Treatment, 0.2, f64::INFINITY),
    limit(Parameter::FreeChlorine, Who, Health, 0.0, 5.0),
    limit(Parameter::FreeChlorine, Epa, Health, 0.0, 4.0),
    limit(Parameter::Lead, Who, Health, 0.0, 10.0),
    limit(Parameter::Lead, Epa, Health, 0.0, 15.0),
    limit(Parameter::Copper, Who, Health, 0.0, 2000.0),
    limit(Parameter::Copper, Epa, Health, 0.0, 1300.0),
    limit(Parameter::Zinc, Who, Taste, 0.0, 3000.0),
    limit(Parameter::Zinc, Epa, Taste, 0.0, 5000.0),
    limit(Parameter::Cadmium, Who, Health, 0.0, 3.0),
    limit(Parameter::Cadmium, Epa, Health, 0.0, 5.0),
    limit(Parameter::Arsenic, Who, Health, 0.0, 10.0),
    limit(Parameter::Arsenic, Epa, Health, 0.0, 10.0),
    limit(Parameter::Chromium, Who, Health, 0.0, 50.0),
    limit(Parameter::Chromium, Epa, Health, 0.0, 100.0),
    limit(Parameter::Iron, Who, Taste, 0.0, 300.0),
    limit(Parameter::Iron, Epa, Taste, 0.0, 300.0),
    limit(Parameter::Manganese, Who, Health, 0.0, 80.0),
    limit(Parameter::Manganese, Epa, Taste, 0.0, 50.0),
    limit(Parameter::Aluminium, Who, Treatment, 0.0, 200.0),
    limit(Parameter::Aluminium, Who, Health, 0.0, 900.0),
    limit(Parameter::Aluminium, Epa, Taste, 0.0, 200.0),
    limit(Parameter::Benzopyrene, Who, Health, 0.0, 0.7),
    limit(Parameter::Benzopyrene, Epa, Health, 0.0, 0.2),
    limit(Parameter::Asbestos, Epa, Health, 0.0, 7.0),
    limit(Parameter::Nitrate, Who, Health, 0.0, 50.0),
    limit(Parameter::Nitrate, Epa, Health, 0.0, 44.0),
];

/// What a result comes to; later ones are worse.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Judgement {
    /// No limit is published, or none that this house is bound to.
    NoLimit,
    /// Within the limit.
    Within,
    /// It can't be told: the test is too coarse.
    CannotTell,
    /// Outside a limit that guards taste or treatment.
    Watch,
    /// Outside a limit that guards health.
    Fails,
}

/// Less than one in 100 mL is how laboratories report that nothing grew.
const NOTHING_GREW: f64 = 1.0;

impl Limit {
    /// What a result comes to.
    pub fn judge(&self, found: TestResult) -> Judgement {
        let outside = if self.guards == Guards::Health { Judgement::Fails } else { Judgement::Watch };
        let within = |good: bool| if good { Judgement::Within } else { outside };
        match found {
            TestResult::Value(value) => within(value >= self.least && value <= self.most),
            TestResult::Absent => within(self.least <= 0.0),
            TestResult::Present if self.most == 0.0 => outside,
            TestResult::Present => Judgement::CannotTell,
            TestResult::Below(value) if self.least > 0.0 => {
                if value <= self.least {
                    outside
                } else {
                    Judgement::CannotTell
                }
            }
            TestResult::Below(value) if value <= self.most || (self.most == 0.0 && value <= NOTHING_GREW) => {
                Judgement::Within
            }
            TestResult::Below(_) => Judgement::CannotTell,
        }
    }
}

/// The limits of a parameter; that of a least residual only where chlorine is used.
pub fn limits(of: Parameter, chlorinated: bool) -> impl Iterator<Item = &'static Limit> {
    LIMITS.iter().filter(move |limit| {
        limit.of == of && (chlorinated || limit.of != Parameter::FreeChlorine || limit.least == 0.0)
    })
}

/// What a result comes to, by the strictest limit, and that limit.
pub fn judge(of: Parameter, found: TestResult, chlorinated: bool) -> (Judgement, Option<&'static Limit>) {
    let mut worst = (Judgement::NoLimit, None);
    for limit in limits(of, chlorinated) {
        let judgement = limit.judge(found);
        if judgement > worst.0 {
            worst = (judgement, Some(limit));
        }
    }
    worst
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(of: Parameter, found: TestResult, expected: Judgement) {
        assert_eq!(judge(of, found, true).0, expected, "{of:?} {found:?}");
    }

    #[test]
    fn results_against_published_limits() {
        use Judgement::{CannotTell, Fails, NoLimit, Watch, Within};
        use TestResult::{Absent, Below, Present, Value};
        // WHO GDWQ, 4th edition (from memory): no E. coli in any 100 mL (99 %); lead 0.01 mg/L (98 %); free chlorine 0.2 at
        // delivery and 5 mg/L at most (96 %); turbidity under 1 NTU before disinfection, 5 at most (95 %).
        for (found, expected) in [
            (Absent, Within),
            (Below(1.0), Within),
            (Value(0.0), Within),
            (Value(1.0), Fails),
            (Present, Fails),
            (Below(10.0), CannotTell),
        ] {
            check(Parameter::EColi, found, expected);
        }
        check(Parameter::Coliforms, Present, Watch);
        for (found, expected) in [
            (Value(10.0), Within),
            (Value(10.1), Fails),
            (Below(1.0), Within),
            (Below(20.0), CannotTell),
            (Present, CannotTell),
        ] {
            check(Parameter::Lead, found, expected);
        }
        for (found, expected) in [(0.1, Watch), (0.5, Within), (4.5, Fails), (5.5, Fails)] {
            check(Parameter::FreeChlorine, Value(found), expected);
        }
        assert_eq!(
            judge(Parameter::FreeChlorine, Absent, false).0,
            Within,
            "nobody asks for chlorine where none is used"
        );
        for (found, expected) in [(0.8, Within), (3.0, Watch), (6.0, Fails)] {
            check(Parameter::Turbidity, Value(found), expected);
        }
        for (found, expected) in [(5.6, Watch), (7.0, Within), (8.6, Watch)] {
            check(Parameter::Ph, Value(found), expected);
        }
        // EPA, 40 CFR 141.80 (from memory): copper 1.3 mg/L, stricter than WHO's 2.
        check(Parameter::Copper, Value(1_500.0), Fails);
        // WHO GDWQ 2022 (from memory): manganese 0.08 mg/L, provisional; EPA, 40 CFR 143.3 (from memory): manganese 0.05,
        // aluminium 0.05 to 0.2 mg/L, both secondary. WHO: 0.9 mg/L of aluminium could be derived from its safe intake.
        for (found, expected) in [(40.0, Within), (60.0, Watch), (81.0, Fails)] {
            check(Parameter::Manganese, Value(found), expected);
        }
        for (found, expected) in [(150.0, Within), (250.0, Watch), (950.0, Fails)] {
            check(Parameter::Aluminium, Value(found), expected);
        }
        check(Parameter::Conductivity, Value(30.0), NoLimit);
    }

    #[test]
    fn nitrate_is_counted_as_nitrate() {
        // 10 mg/L of nitrogen: molar masses of nitrate 62.005 and nitrogen 14.007 g/mol (IUPAC).
        let as_nitrate: f64 = 10.0 * 62.005 / 14.007;
        let epa = LIMITS.iter().find(|limit| limit.of == Parameter::Nitrate && limit.whose == Whose::Epa);
        assert!(epa.is_some_and(|limit| (limit.most - as_nitrate).abs() < 0.5));
    }

    #[test]
    fn more_of_it_is_never_better() {
        for of in Parameter::ALL.into_iter().filter(|of| !matches!(of, Parameter::Ph | Parameter::FreeChlorine)) {
            let mut before = Judgement::NoLimit;
            for step in 0..4000 {
                let now = judge(of, TestResult::Value(f64::from(step)), true).0;
                assert!(now >= before, "{of:?} {step}");
                before = now;
            }
        }
    }
}
