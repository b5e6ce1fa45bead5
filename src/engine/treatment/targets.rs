//! What a chain of barriers has to reach.

/// The germs that logs are counted of, in this order wherever three numbers stand together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Germ {
    /// Bacteria, such as Campylobacter, Salmonella, Escherichia coli.
    Bacteria,
    /// Viruses.
    Viruses,
    /// Protozoa, such as Cryptosporidium and Giardia.
    Protozoa,
}

impl Germ {
    /// All, in order.
    pub const ALL: [Germ; 3] = [Germ::Bacteria, Germ::Viruses, Germ::Protozoa];
}

/// Logs of bacteria, viruses and protozoa for the highest class (three stars).
///
/// Source: WHO, Evaluating household water treatment options: health-based targets and microbiological performance
/// specifications (2011) (from memory). Set for water that people's own waste may have reached.
pub const THREE_STARS: [f64; 3] = [4.0, 5.0, 4.0];
/// Logs for the class below it (two stars). Same source.
pub const TWO_STARS: [f64; 3] = [2.0, 3.0, 2.0];

/// Stars of WHO's scheme: three or two where all three germs reach that class, one where two of them reach two stars, else
/// none. Source: WHO International Scheme to Evaluate Household Water Treatment Technologies (from memory).
pub fn stars(logs: &[f64; 3]) -> u8 {
    let reached = |class: &[f64; 3]| logs.iter().zip(class).filter(|(logs, wanted)| logs >= wanted).count();
    match (reached(&THREE_STARS), reached(&TWO_STARS)) {
        (3, _) => 3,
        (_, 3) => 2,
        (_, 2) => 1,
        _ => 0,
    }
}

/// The germ that lacks most to three stars, with what it lacks; `None` where none lacks anything. Of two that lack the same
/// the first counts.
pub fn weakest(logs: &[f64; 3]) -> Option<(Germ, f64)> {
    let mut weakest = None;
    for ((germ, logs), wanted) in Germ::ALL.into_iter().zip(logs).zip(THREE_STARS) {
        let lacks = wanted - logs;
        if lacks > weakest.map_or(0.0, |(_, most)| most) {
            weakest = Some((germ, lacks));
        }
    }
    weakest
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stars_as_in_the_scheme_of_who() {
        // WHO 2011 (from memory, 97 %): three stars 4/5/4, two 2/3/2, one where two of the three reach two stars.
        assert_eq!(stars(&[4.0, 5.0, 4.0]), 3);
        assert_eq!(stars(&[9.0, 4.9, 9.0]), 2);
        assert_eq!(stars(&[2.0, 3.0, 2.0]), 2);
        assert_eq!(stars(&[4.0, 0.5, 4.0]), 1);
        assert_eq!(stars(&[6.0, 2.9, 1.9]), 0);
        assert_eq!(stars(&[0.0; 3]), 0);
    }

    #[test]
    fn the_weakest_lacks_most() {
        assert_eq!(weakest(&[0.0; 3]), Some((Germ::Viruses, 5.0)));
        assert_eq!(weakest(&[4.0, 4.0, 0.0]), Some((Germ::Protozoa, 4.0)));
        assert_eq!(weakest(&[6.0, 6.0, 6.0]), None);
    }
}
