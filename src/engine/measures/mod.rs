//! Statistics of a run, each defined once, by name and source.

pub mod budget;
pub mod dry_runs;
pub mod interval;
pub mod percentiles;
pub mod reliability;
pub mod resilience;
pub mod years;
