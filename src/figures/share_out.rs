//! Sharing out room among neighbours.

/// Shares out a length in proportion to the weights, but no less than each one's least as long as there is room
/// for all of them.
pub(super) fn share_out(total: f64, wanted: &[(f64, f64)]) -> Vec<f64> {
    let least: f64 = wanted.iter().map(|(least, _)| least).sum();
    if least >= total {
        return wanted.iter().map(|(own, _)| own * total / least).collect();
    }
    let mut fixed = vec![false; wanted.len()];
    loop {
        let taken: f64 = wanted.iter().zip(&fixed).filter(|(_, fixed)| **fixed).map(|((least, _), _)| least).sum();
        let weights: f64 = wanted.iter().zip(&fixed).filter(|(_, fixed)| !**fixed).map(|((_, weight), _)| weight).sum();
        let each = if weights > 0.0 { (total - taken) / weights } else { 0.0 };
        let too_small = |at: usize| !fixed[at] && wanted[at].1 * each < wanted[at].0;
        let Some(at) = (0..wanted.len()).find(|at| too_small(*at)) else {
            return wanted
                .iter()
                .zip(&fixed)
                .map(|((least, weight), fixed)| if *fixed { *least } else { weight * each })
                .collect();
        };
        fixed[at] = true;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn room_is_shared_in_proportion_but_nobody_gets_too_little() {
        assert_eq!(share_out(100.0, &[(10.0, 1.0), (10.0, 3.0)]), [25.0, 75.0]);
        assert_eq!(share_out(100.0, &[(20.0, 1.0), (10.0, 99.0)]), [20.0, 80.0]);
        assert_eq!(share_out(30.0, &[(40.0, 1.0), (20.0, 1.0)]), [20.0, 10.0]);
        assert!(share_out(30.0, &[]).is_empty());
    }
}
