//! Numbers in rising order. What else is to be sorted is sorted by a number of its own: one sort for all of them.

/// The numbers in rising order.
pub fn sorted(values: Vec<f64>) -> Vec<f64> {
    rising(&values).into_iter().map(|place| values[place]).collect()
}

/// The numbers in rising order, each once.
pub fn distinct(values: Vec<f64>) -> Vec<f64> {
    let mut values = sorted(values);
    values.dedup();
    values
}

/// The places of the numbers in rising order; equal ones stay in the order in which they stand.
pub fn rising(values: &[f64]) -> Vec<usize> {
    let mut places: Vec<usize> = (0..values.len()).collect();
    places.sort_unstable_by(|a, b| values[*a].total_cmp(&values[*b]).then(a.cmp(b)));
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_numbers_keep_their_places() {
        assert_eq!(rising(&[3.0, 1.0, 3.0, f64::NEG_INFINITY, 1.0]), [3, 1, 4, 0, 2]);
        assert_eq!(distinct(vec![2.0, 1.0, 2.0]), [1.0, 2.0]);
    }
}
