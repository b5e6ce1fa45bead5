//! What checks know and find, named.

use crate::engine::checks::Figure;

/// The label of a figure.
pub const fn label(figure: Figure) -> &'static str {
    match figure {
        Figure::RoofArea => "Roof that runs here, in plan",
        Figure::FlushVolume => "First flush",
        Figure::FlushWanted => "First flush wanted",
        Figure::FlushTexasLeast => "10 gal for 1,000 ft² (Texas manual, the least)",
        Figure::FlushTexasMost => "2 gal for 100 ft² (Texas manual, the most)",
        Figure::FlushLittleDirt => "0.5 mm (HB 230, little dirt)",
        Figure::FlushMuchDirt => "2 mm (HB 230, much dirt)",
        Figure::FlushDepth => "Depth taken off the roof",
        Figure::ChamberBore => "Inside diameter of the chamber",
        Figure::ChamberHeight => "Height of the full chamber",
        Figure::ChamberWanted => "Chamber of this diameter, length wanted",
        Figure::HoleBore => "Slow-release hole",
        Figure::HoleWanted => "Hole for the wanted time",
        Figure::DrainTime => "Empty after",
        Figure::DrainWanted => "Wanted within",
        Figure::EmptiedEvery => "Emptied by hand every",
        Figure::StormHours => "Rain lasts, on a rain day",
        Figure::HoleLoss => "Lost through the hole in a storm",
        Figure::DivertedAYear => "Sent aside in a year",
        Figure::UsedWith => "Used in a year, with it",
        Figure::UsedWithout => "Used in a year, without it",
        Figure::DryDaysWith => "Dry days in a year, with it",
        Figure::DryDaysWithout => "Dry days in a year, without it",
    }
}
