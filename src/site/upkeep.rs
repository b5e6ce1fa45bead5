//! Upkeep of a site: which work its parts ask for, and how often the household wants it done.

use super::barrier::BarrierKind;
use super::feed::Drain;
use super::part::PartId;
use super::system::System;
use super::tank::Build;
use super::uses::Class;
use super::work::Task;
use crate::quantity::Range;

/// Work on one part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Job {
    /// What is to be done.
    pub task: Task,
    /// On which part (a barrier counts as one).
    pub part: PartId,
}

/// How often work is due: whichever comes first. A measure that is absent doesn't count.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Interval {
    /// Days, within [`DAYS`].
    pub days: Option<f64>,
    /// Rain, in mm, within [`RAIN_MM`].
    pub rain_mm: Option<f64>,
    /// Litres that have passed, within [`LITRES`].
    pub litres: Option<f64>,
}

/// What the days of an interval may be.
pub const DAYS: Range = Range::new(1.0, 7300.0);
/// What its rain may be, in mm.
pub const RAIN_MM: Range = Range::new(1.0, 20_000.0);
/// What its litres may be.
pub const LITRES: Range = Range::new(1.0, 10_000_000.0);

/// Intervals that the household chose in the place of the usual ones.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Upkeep(pub Vec<(Job, Interval)>);

impl Upkeep {
    /// How often work is due: as chosen, else as usual.
    pub fn interval(&self, job: Job) -> Interval {
        self.0.iter().find(|(other, _)| *other == job).map_or_else(|| usual(job.task), |(_, interval)| *interval)
    }

    /// Chooses an interval; none goes back to the usual one. Values out of range are left out.
    pub fn choose(&mut self, job: Job, interval: Option<Interval>) {
        self.0.retain(|(other, _)| *other != job);
        if let Some(Interval { days, rain_mm, litres }) = interval {
            let interval = Interval {
                days: days.filter(|days| DAYS.holds(*days)),
                rain_mm: rain_mm.filter(|mm| RAIN_MM.holds(*mm)),
                litres: litres.filter(|litres| LITRES.holds(*litres)),
            };
            self.0.push((job, interval));
        }
    }
}

/// How often work is due where the household has not chosen.
///
/// Sources: at least every 6 months for roof, gutters, inlets and their mesh, the tank, its lid and its inside: enHealth,
/// Guidance on use of rainwater tanks (2011), section 6. Every 1–3 months for what clogs: Central Coast Council (New
/// South Wales), care and maintenance of your rainwater tank system (groups of tasks). Sludge every 2–3 years: enHealth
/// (from memory). Lamp every 12 months, cartridges every 3–6 months: makers' usual advice (from memory). The rest, and
/// 300 mm of rain for a leaf screen: common practice, no source.
pub const fn usual(task: Task) -> Interval {
    let days = match task {
        Task::Roof | Task::Gutter | Task::InletMesh | Task::TankLook | Task::Lid | Task::Joints | Task::Cartridge => {
            182.0
        }
        Task::Screen | Task::Diverter | Task::Hole | Task::PumpStrainer | Task::Sleeve => 91.0,
        Task::Desludging => 730.0,
        Task::Anchors | Task::Lamp | Task::WaterTest | Task::Disinfection | Task::Other => 365.0,
        Task::Ceramic => 30.0,
    };
    let rain_mm = if matches!(task, Task::Screen) { Some(300.0) } else { None };
    Interval { days: Some(days), rain_mm, litres: None }
}

/// The work that the parts of a system ask for, in the way of the water.
pub fn jobs(system: &System) -> Vec<Job> {
    let mut jobs = Vec::new();
    let mut add = |part, tasks: &[Task]| jobs.extend(tasks.iter().map(|task| Job { task: *task, part }));
    for section in &system.sections {
        add(section.id, &[Task::Roof]);
    }
    for feed in &system.feeds {
        add(feed.id, &[Task::Gutter, Task::Screen]);
        if let Some(diverter) = &feed.diverter {
            add(feed.id, &[Task::Diverter]);
            if matches!(diverter.drain, Drain::Hole { .. }) {
                add(feed.id, &[Task::Hole]);
            }
        }
    }
    for tank in &system.tanks {
        add(tank.id, &[Task::InletMesh, Task::TankLook, Task::Desludging, Task::Lid, Task::Joints]);
        if matches!(tank.build, Build::AboveGround | Build::Barrel) {
            add(tank.id, &[Task::Anchors]);
        }
    }
    for pump in &system.pumps {
        add(pump.id, &[Task::PumpStrainer]);
    }
    for using in &system.uses {
        for barrier in &using.barriers {
            match barrier.kind {
                BarrierKind::Sediment | BarrierKind::Carbon | BarrierKind::Membrane => {
                    add(barrier.id, &[Task::Cartridge])
                }
                BarrierKind::Ceramic => add(barrier.id, &[Task::Ceramic]),
                BarrierKind::Ultraviolet => add(barrier.id, &[Task::Sleeve, Task::Lamp]),
                BarrierKind::Chlorine | BarrierKind::Boiling => {}
            }
        }
        if using.class == Class::Drinking {
            add(using.id, &[Task::WaterTest]);
        }
    }
    jobs
}

/// The use whose chain a barrier belongs to.
pub fn use_of(system: &System, barrier: PartId) -> Option<PartId> {
    system.uses.iter().find(|using| using.barriers.iter().any(|other| other.id == barrier)).map(|using| using.id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn every_part_asks_for_its_own_work() {
        let mut system = demo::site().system;
        let drinking = system.uses.iter().find(|using| using.class == Class::Drinking).map(|using| using.id);
        for using in &mut system.uses {
            using.barriers.clear();
        }
        if let Some(using) = drinking {
            system.add_barrier(using, BarrierKind::Ultraviolet);
        }
        let jobs = jobs(&system);
        let parts = |task| jobs.iter().filter(|job| job.task == task).count();
        assert_eq!(parts(Task::Gutter), system.feeds.len());
        assert_eq!(parts(Task::Desludging), system.tanks.len());
        let lamps = system.uses.iter().flat_map(|using| &using.barriers);
        let lamps = lamps.filter(|barrier| barrier.kind == BarrierKind::Ultraviolet).count();
        assert!(lamps > 0 && parts(Task::Lamp) == lamps);
        assert_eq!(parts(Task::PumpStrainer), system.pumps.len());
        assert!((0..jobs.len()).all(|at| !jobs[at + 1..].contains(&jobs[at])), "each once");
    }

    #[test]
    fn a_chosen_interval_holds_until_it_is_given_up() {
        let job = Job { task: Task::Gutter, part: PartId(4) };
        let mut upkeep = Upkeep::default();
        let often = Interval { days: Some(30.0), rain_mm: Some(-5.0), litres: None };
        upkeep.choose(job, Some(often));
        assert_eq!(upkeep.interval(job), Interval { rain_mm: None, ..often });
        upkeep.choose(job, None);
        assert_eq!(upkeep.interval(job), usual(Task::Gutter));
    }
}
