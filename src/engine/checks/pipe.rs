//! What flows through a pipe, and the head that it costs.

use super::{Asked, Check, chosen};
use crate::engine::balance::first_flush::GRAVITY;
use crate::site::circle;
use crate::site::details::Detail;
use crate::site::part::PartId;

use super::water::{density_kg_m3, viscosity_pa_s};

/// A pipe with what sits in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pipe {
    /// Inside diameter, in m.
    pub bore_m: f64,
    /// Length, in m.
    pub length_m: f64,
    /// Absolute roughness, in m.
    pub roughness_m: f64,
    /// Hazen-Williams coefficient.
    pub c: f64,
    /// Loss coefficients of all fittings, entrance and exit together.
    pub fittings: f64,
    /// Kinematic viscosity of the water, in m²/s.
    pub viscosity_m2_s: f64,
}

/// Roughness in m and Hazen-Williams C of plastic, copper, galvanized steel, old iron and concrete.
///
/// Sources: roughness after Moody (drawn tube 1.5e-6, galvanized 1.5e-4, cast iron 2.6e-4, concrete 3e-4 m) and C as any
/// hydraulics text tables it (150, 140, 120, 100, 120), from memory; old iron is taken rougher, 1e-3 m.
pub const MATERIALS: [(f64, f64); 5] =
    [(1.5e-6, 150.0), (1.5e-6, 140.0), (1.5e-4, 120.0), (1e-3, 100.0), (3e-4, 120.0)];

/// Loss coefficients: entrance, exit, quarter bend, open full-bore valve (any hydraulics text, from memory).
const ENTRANCE: f64 = 0.5;
const EXIT: f64 = 1.0;
const ELBOW: f64 = 0.9;
const VALVE: f64 = 0.2;

impl Pipe {
    /// The pipe that belongs to a part, from its details; bore and length may have names of their own.
    pub fn of(asked: &Asked<'_>, check: &mut Check, of: PartId, bore: Detail, length: Detail) -> Self {
        let mut detail = |detail: Detail| check.detail_of(asked, Some(of), detail, detail.row().usual);
        let (bore_m, length_m) = (detail(bore), detail(length));
        let (roughness_m, c) = MATERIALS[chosen(detail(Detail::PipeMaterial)).min(4)];
        let (elbows, valves) = match length {
            Detail::PipeLength => (detail(Detail::Elbows), detail(Detail::Valves)),
            // A suction pipe: one bend and a foot valve, taken as four open valves and a bend more.
            _ => (2.0, 4.0),
        };
        let celsius = check.of_site(asked, Detail::WaterTemperature);
        Self {
            bore_m,
            length_m,
            roughness_m,
            c,
            fittings: ENTRANCE + EXIT + elbows * ELBOW + valves * VALVE,
            viscosity_m2_s: viscosity_pa_s(celsius) / density_kg_m3(celsius),
        }
    }

    /// Speed of the water, in m/s, at a flow in m³/s.
    pub fn speed_m_s(&self, flow_m3_s: f64) -> f64 {
        flow_m3_s / circle(self.bore_m)
    }

    /// Reynolds number at a flow in m³/s.
    pub fn reynolds(&self, flow_m3_s: f64) -> f64 {
        self.speed_m_s(flow_m3_s) * self.bore_m / self.viscosity_m2_s
    }

    /// Head lost by Darcy-Weisbach, fittings included, in m.
    pub fn darcy_m(&self, flow_m3_s: f64) -> f64 {
        if flow_m3_s <= 0.0 {
            return 0.0;
        }
        let friction = friction_factor(self.reynolds(flow_m3_s), self.roughness_m / self.bore_m);
        (friction * self.length_m / self.bore_m + self.fittings) * self.velocity_head_m(flow_m3_s)
    }

    /// Head lost by Hazen-Williams, fittings included, in m.
    pub fn hazen_williams_m(&self, flow_m3_s: f64) -> f64 {
        hazen_williams_m(flow_m3_s, self.c, self.bore_m, self.length_m)
            + self.fittings * self.velocity_head_m(flow_m3_s)
    }

    fn velocity_head_m(&self, flow_m3_s: f64) -> f64 {
        let speed = self.speed_m_s(flow_m3_s);
        speed * speed / (2.0 * GRAVITY)
    }

    /// The flow, in m³/s, that costs so much head by Darcy-Weisbach.
    pub fn flow_for(&self, head_m: f64) -> f64 {
        flow_for(head_m, self.bore_m, |flow| self.darcy_m(flow))
    }
}

/// The flow at which a loss that rises with it comes to a head: by halving, up to 30 m/s, to ten digits.
pub fn flow_for(head_m: f64, bore_m: f64, loss_m: impl Fn(f64) -> f64) -> f64 {
    const HALVINGS: usize = 60;
    const FASTEST_M_S: f64 = 30.0;
    let (mut low, mut high) = (0.0, FASTEST_M_S * circle(bore_m));
    for _ in 0..HALVINGS {
        if high - low <= 1e-10 * high {
            break;
        }
        let middle = (low + high) / 2.0;
        if loss_m(middle) < head_m { low = middle } else { high = middle }
    }
    (low + high) / 2.0
}

/// Head lost to friction, in m: `10.67 L Q^1.852 / (C^1.852 D^4.871)` (Hazen-Williams in SI, any hydraulics text). For
/// water near 15 °C in pipes over about 50 mm; a guide below.
pub fn hazen_williams_m(flow_m3_s: f64, c: f64, bore_m: f64, length_m: f64) -> f64 {
    10.67 * length_m * libm::pow(flow_m3_s / c, 1.852) / libm::pow(bore_m, 4.871)
}

/// Darcy friction factor: 64/Re to 2,000; Colebrook from 4,000 on, solved from Swamee and Jain's start (1976); between
/// them a straight line, where no formula holds.
pub fn friction_factor(reynolds: f64, relative_roughness: f64) -> f64 {
    const LAMINAR: f64 = 2000.0;
    const TURBULENT: f64 = 4000.0;
    if reynolds <= 0.0 {
        0.0
    } else if reynolds <= LAMINAR {
        64.0 / reynolds
    } else if reynolds < TURBULENT {
        let part = (reynolds - LAMINAR) / (TURBULENT - LAMINAR);
        64.0 / LAMINAR + part * (colebrook(TURBULENT, relative_roughness) - 64.0 / LAMINAR)
    } else {
        colebrook(reynolds, relative_roughness)
    }
}

/// Swamee and Jain 1976, explicit.
pub fn swamee_jain(reynolds: f64, relative_roughness: f64) -> f64 {
    let root = libm::log10(relative_roughness / 3.7 + 5.74 / libm::pow(reynolds, 0.9));
    0.25 / (root * root)
}

/// Colebrook 1939: `1/√f = −2 log₁₀(ε/3.7 + 2.51/(Re √f))`.
pub fn colebrook(reynolds: f64, relative_roughness: f64) -> f64 {
    const ROUNDS: usize = 30;
    let mut root = 1.0 / swamee_jain(reynolds, relative_roughness).sqrt();
    for _ in 0..ROUNDS {
        let before = root;
        root = -2.0 * libm::log10(relative_roughness / 3.7 + 2.51 * root / reynolds);
        // Each round brings it some ten times nearer.
        if (root - before).abs() <= 1e-12 * root.abs() {
            break;
        }
    }
    1.0 / (root * root)
}
