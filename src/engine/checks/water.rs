//! Water and air as they are at a temperature and a height over the sea.

use crate::engine::balance::first_flush::GRAVITY;

/// Density of water, in kg/m³, from 0 to 60 °C at ordinary pressure.
///
/// Source: Gill, Atmosphere-Ocean Dynamics 1982 (after Bigg 1967), from memory.
pub fn density_kg_m3(celsius: f64) -> f64 {
    let off = celsius - 3.9863;
    1000.0 * (1.0 - (celsius + 288.9414) / (508_929.2 * (celsius + 68.129_63)) * off * off)
}

/// Viscosity of water, in Pa·s, from 0 to 60 °C.
///
/// Source: Kestin, Sokolov & Wakeham, J. Phys. Chem. Ref. Data 7, 1978, from memory; 1.002 mPa·s at 20 °C.
pub fn viscosity_pa_s(celsius: f64) -> f64 {
    let off = 20.0 - celsius;
    let power = off / (celsius + 96.0) * (1.2378 - 1.303e-3 * off + 3.06e-6 * off * off + 2.55e-8 * off * off * off);
    1.002e-3 * libm::pow(10.0, power)
}

/// Vapour pressure of water, in kPa. Source: FAO Irrigation and Drainage Paper 56, equation 11.
pub fn vapour_kpa(celsius: f64) -> f64 {
    0.6108 * libm::exp(17.27 * celsius / (celsius + 237.3))
}

/// Pressure of the air, in kPa, at a height in m. Source: FAO Irrigation and Drainage Paper 56, equation 7.
pub fn air_kpa(altitude_m: f64) -> f64 {
    101.3 * libm::pow((293.0 - 0.0065 * altitude_m) / 293.0, 5.26)
}

/// Metres of water in a kilopascal.
pub fn head_m(kilopascals: f64, density_kg_m3: f64) -> f64 {
    kilopascals * 1000.0 / (density_kg_m3 * GRAVITY)
}

/// Kilopascals of a metre of water.
pub fn pressure_kpa(head_m: f64, density_kg_m3: f64) -> f64 {
    head_m * density_kg_m3 * GRAVITY / 1000.0
}
