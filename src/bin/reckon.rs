//! Reckons a site's water balance from files.

fn main() {}
