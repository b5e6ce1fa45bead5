//! One change that a household may make next: described, made to a system, priced.

use super::feed::{Drain, Feed, USUAL_CAPTURE, USUAL_DIVERTER};
use super::new_part;
use super::part::PartId;
use super::prices::{Priced, Prices};
use super::roof::{Outlet, RoofSection};
use super::system::{PartKind, System};
use super::tank::{Build, Cover, OverflowTo};
use super::trial::scaled;
use super::trunk::TrunkLine;
use crate::quantity::{Area, Bore, Flow, Length, Share, Volume};

/// A change to a system.
#[derive(Clone, Debug, PartialEq)]
pub enum Upgrade {
    /// Another tank, upright, with its rim, outlet and floor as high as those of a tank that is there, and joined with it.
    AddTank {
        /// The tank beside which it stands.
        beside: PartId,
        /// What it holds to its overflow.
        capacity: Volume,
    },
    /// Another roof, a carport or veranda, that is covered like one that is there and runs to the same downspouts.
    AddRoof {
        /// The section that it is like.
        like: PartId,
        /// Its plan area.
        area: Area,
    },
    /// All that a roof section sheds and nothing takes yet goes to a downspout.
    Collect {
        /// The section.
        section: PartId,
        /// Where to.
        into: Into,
    },
    /// A pipe with an open valve between two tanks.
    Join([PartId; 2]),
    /// A shut valve is opened.
    OpenValve(PartId),
    /// Tanks are raised or lowered until their rims stand at one elevation.
    Level {
        /// The tanks that are moved.
        tanks: Vec<PartId>,
        /// The elevation.
        rim: Length,
    },
    /// Another volume of a diverter.
    FlushVolume {
        /// Its feed.
        feed: PartId,
        /// The volume.
        volume: Volume,
    },
    /// Another hole in a diverter.
    HoleBore {
        /// Its feed.
        feed: PartId,
        /// The hole's diameter.
        diameter: Bore,
    },
    /// A mended gutter and screen.
    MendScreen {
        /// Their feed.
        feed: PartId,
        /// Their capture efficiency afterwards.
        capture: Share,
    },
    /// An overflow that runs into another tank.
    OverflowInto {
        /// The tank that overflows.
        tank: PartId,
        /// The one that it fills.
        into: PartId,
    },
    /// A use with a part of what it draws now.
    CutUse {
        /// The use.
        using: PartId,
        /// That part.
        to: Share,
    },
    /// A leak is mended.
    MendLeak(PartId),
    /// An open tank gets a lid.
    Cover(PartId),
}

/// What collects a roof section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Into {
    /// A downspout that is there.
    Feed(PartId),
    /// A new downspout to this tank, with a usual diverter.
    NewFeed(PartId),
}

/// What a new part of a kind is called in a system.
pub type NameFor = fn(&System, PartKind) -> String;

impl Upgrade {
    /// The system with this change; a part that is no longer there is passed over.
    pub fn made(&self, system: &System, name_for: NameFor) -> System {
        let mut system = system.clone();
        self.make(&mut system, name_for);
        system
    }

    fn make(&self, system: &mut System, name_for: NameFor) {
        match self {
            Upgrade::AddTank { beside, capacity } => add_tank(system, *beside, *capacity, name_for),
            Upgrade::AddRoof { like, area } => add_roof(system, *like, *area, name_for),
            Upgrade::Collect { section, into } => collect(system, *section, *into, name_for),
            Upgrade::Join(ends) => join(system, *ends, name_for),
            Upgrade::OpenValve(line) => {
                system.trunk_lines.iter_mut().filter(|other| other.id == *line).for_each(|line| line.open = true);
            }
            Upgrade::Level { tanks, rim } => {
                for tank in system.tanks.iter_mut().filter(|tank| tanks.contains(&tank.id)) {
                    tank.floor = Length::metres(rim.get() - tank.overflow.get());
                }
            }
            Upgrade::FlushVolume { feed, volume } => {
                for diverter in diverters(system, *feed) {
                    diverter.volume = *volume;
                }
            }
            Upgrade::HoleBore { feed, diameter } => {
                for diverter in diverters(system, *feed) {
                    diverter.drain = Drain::Hole { diameter: *diameter };
                }
            }
            Upgrade::MendScreen { feed, capture } => {
                system.feeds.iter_mut().filter(|other| other.id == *feed).for_each(|feed| feed.capture = *capture);
            }
            Upgrade::OverflowInto { tank, into } => {
                for tank in system.tanks.iter_mut().filter(|other| other.id == *tank) {
                    tank.overflow_to = OverflowTo::Tank(*into);
                }
            }
            Upgrade::CutUse { using, to } => {
                for using in system.uses.iter_mut().filter(|other| other.id == *using) {
                    using.amount = scaled(&using.amount, to.get());
                }
            }
            Upgrade::MendLeak(tank) => {
                for tank in system.tanks.iter_mut().filter(|other| other.id == *tank) {
                    tank.leak = Flow::litres_a_day(0.0);
                }
            }
            Upgrade::Cover(tank) => {
                system.tanks.iter_mut().filter(|other| other.id == *tank).for_each(|tank| tank.cover = Cover::Covered);
            }
        }
    }

    /// What it costs at these prices, in the household's currency.
    pub fn price(&self, prices: &Prices) -> f64 {
        self.priced().into_iter().fold(0.0, |all, (priced, amount)| all + prices.of(priced).get() * amount)
    }

    /// Whether it costs nothing but what the household has put a price on.
    pub fn is_priced_by_household(&self, prices: &Prices) -> bool {
        let usual = Prices::default();
        self.priced().into_iter().all(|(priced, _)| prices.of(priced) != usual.of(priced))
    }

    /// What has to be paid for, and how much of it. Cutting a use and turning a valve cost nothing.
    fn priced(&self) -> Vec<(Priced, f64)> {
        let one = |priced| vec![(priced, 1.0)];
        match self {
            Upgrade::AddTank { capacity, .. } => {
                vec![(Priced::Tank, 1.0), (Priced::TrunkLine, 1.0), (Priced::TankLitre, capacity.get())]
            }
            Upgrade::AddRoof { area, .. } => vec![(Priced::Gutter, 1.0), (Priced::RoofArea, area.get())],
            Upgrade::Collect { into: Into::Feed(_), .. } => one(Priced::Gutter),
            Upgrade::Collect { into: Into::NewFeed(_), .. } => vec![(Priced::Gutter, 1.0), (Priced::Diverter, 1.0)],
            Upgrade::Join(_) => one(Priced::TrunkLine),
            #[expect(clippy::cast_precision_loss, reason = "a handful of tanks")]
            Upgrade::Level { tanks, .. } => vec![(Priced::Levelling, tanks.len() as f64)],
            Upgrade::FlushVolume { .. } => one(Priced::Diverter),
            Upgrade::HoleBore { .. } => one(Priced::Hole),
            Upgrade::MendScreen { .. } => one(Priced::Screen),
            Upgrade::OverflowInto { .. } => one(Priced::OverflowPipe),
            Upgrade::MendLeak(_) => one(Priced::Leak),
            Upgrade::Cover(_) => one(Priced::Lid),
            Upgrade::OpenValve(_) | Upgrade::CutUse { .. } => Vec::new(),
        }
    }
}

fn diverters(system: &mut System, feed: PartId) -> impl Iterator<Item = &mut super::feed::Diverter> {
    system.feeds.iter_mut().filter(move |other| other.id == feed).filter_map(|feed| feed.diverter.as_mut())
}

fn add_tank(system: &mut System, beside: PartId, capacity: Volume, name_for: NameFor) {
    let Some(model) = system.tank(beside) else { return };
    let mut tank = new_part::tank(
        system.unused_id(),
        name_for(system, PartKind::Tank),
        capacity,
        Length::metres(model.shape.height()),
    );
    tank.build = if model.build == Build::Cistern { Build::Cistern } else { Build::AboveGround };
    (tank.floor, tank.outlet, tank.overflow) = (model.floor, model.outlet, model.overflow);
    tank.overflow_to = model.overflow_to;
    tank.set_capacity(capacity);
    let added = tank.id;
    system.tanks.push(tank);
    join(system, [beside, added], name_for);
}

fn add_roof(system: &mut System, like: PartId, area: Area, name_for: NameFor) {
    let (id, name) = (system.unused_id(), name_for(system, PartKind::Section));
    let Some(like) = system.sections.iter().find(|section| section.id == like) else { return };
    system.sections.push(RoofSection { id, name, area, ..like.clone() });
}

fn collect(system: &mut System, section: PartId, into: Into, name_for: NameFor) {
    let feed = match into {
        Into::Feed(feed) => feed,
        Into::NewFeed(tank) => {
            let (id, name) = (system.unused_id(), name_for(system, PartKind::Feed));
            let diverter = Some(USUAL_DIVERTER);
            system.feeds.push(Feed { id, name, tank: Some(tank), capture: USUAL_CAPTURE, diverter });
            id
        }
    };
    for section in system.sections.iter_mut().filter(|other| other.id == section) {
        let left = 1.0 - section.collected_share();
        match section.outlets.iter_mut().find(|outlet| outlet.feed == feed) {
            Some(outlet) => outlet.share = Share::of_one(outlet.share.get() + left),
            None => section.outlets.push(Outlet { feed, share: Share::of_one(left) }),
        }
    }
}

fn join(system: &mut System, ends: [PartId; 2], name_for: NameFor) {
    let (id, name) = (system.unused_id(), name_for(system, PartKind::TrunkLine));
    system.trunk_lines.push(TrunkLine { id, name, ends: ends.map(Some), open: true });
    // What ran over into a tank that is now on the same level runs where that one's overflow leads.
    let leads = |system: &System, tank: PartId| system.tank(tank).map_or(OverflowTo::Ground, |tank| tank.overflow_to);
    for store in system.stores() {
        for tank in &store {
            let mut to = leads(system, *tank);
            for _ in &store {
                match to {
                    OverflowTo::Tank(into) if store.contains(&into) => to = leads(system, into),
                    _ => break,
                }
            }
            let within = matches!(to, OverflowTo::Tank(into) if store.contains(&into));
            for tank in system.tanks.iter_mut().filter(|other| other.id == *tank) {
                tank.overflow_to = if within { OverflowTo::Ground } else { to };
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;
    use crate::site::findings::findings;

    fn name_for(_: &System, _: PartKind) -> String {
        "New".to_owned()
    }

    #[test]
    fn a_tank_beside_another_is_joined_with_its_rim_level() {
        let system = demo::site().system;
        let beside = system.tanks[1].id;
        let upgrade = Upgrade::AddTank { beside, capacity: Volume::litres(2_500.0) };
        let changed = upgrade.made(&system, name_for);
        let new = &changed.tanks[3];
        assert!((new.capacity().get() - 2_500.0).abs() < 1e-9);
        assert_eq!(new.overflow_elevation(), system.tanks[1].overflow_elevation());
        assert!(changed.stores().iter().any(|store| store.contains(&beside) && store.contains(&new.id)));
        assert_eq!(findings(&changed), []);
    }

    #[test]
    fn tanks_that_run_over_into_each_other_can_be_joined() {
        let mut system = demo::site().system;
        system.trunk_lines.clear();
        let [first, second] = [system.tanks[0].id, system.tanks[1].id];
        system.tanks[0].overflow_to = OverflowTo::Tank(second);
        let beyond = system.tanks[1].overflow_to;
        assert!(matches!(beyond, OverflowTo::Tank(_)), "the old tank runs over into the barrel");
        let joined = Upgrade::Join([first, second]).made(&system, name_for);
        assert_eq!(findings(&joined), []);
        assert_eq!((joined.tanks[0].overflow_to, joined.tanks[1].overflow_to), (beyond, beyond));
    }

    #[test]
    fn another_roof_runs_where_the_one_beside_it_runs() {
        let system = demo::site().system;
        let upgrade = Upgrade::AddRoof { like: system.sections[0].id, area: Area::square_metres(30.0) };
        let changed = upgrade.made(&system, name_for);
        let (old, new) = (&changed.sections[0], &changed.sections[system.sections.len()]);
        assert_eq!((new.area.get(), new.material, &new.outlets), (30.0, old.material, &old.outlets));
        assert_eq!(findings(&changed), []);
        let mut prices = Prices::default();
        for (priced, price) in [(Priced::Gutter, 100.0), (Priced::RoofArea, 7.0)] {
            prices.set(priced, crate::quantity::Money::coins(price));
        }
        assert_eq!(upgrade.price(&prices), 310.0);
    }

    #[test]
    fn what_is_left_of_a_section_is_collected() {
        let mut system = demo::site().system;
        system.sections[0].outlets[0].share = Share::of_one(0.7);
        let [section, feed] = [system.sections[0].id, system.sections[0].outlets[0].feed];
        let same = Upgrade::Collect { section, into: Into::Feed(feed) }.made(&system, name_for);
        assert_eq!(same.sections[0].outlets.len(), 1);
        assert!((same.sections[0].collected_share() - 1.0).abs() < 1e-12);
        let into = Into::NewFeed(system.tanks[0].id);
        let new = Upgrade::Collect { section, into }.made(&system, name_for);
        assert_eq!((new.feeds.len(), new.sections[0].outlets.len()), (3, 2));
        assert_eq!(findings(&new), []);
    }

    #[test]
    fn a_tank_costs_itself_its_litres_and_its_pipe() {
        let mut prices = Prices::default();
        for (priced, price) in [(Priced::Tank, 100.0), (Priced::TankLitre, 0.5), (Priced::TrunkLine, 30.0)] {
            prices.set(priced, crate::quantity::Money::coins(price));
        }
        let upgrade = Upgrade::AddTank { beside: PartId(1), capacity: Volume::litres(1_000.0) };
        assert_eq!(upgrade.price(&prices), 630.0);
        assert!(upgrade.is_priced_by_household(&prices));
        prices.set(Priced::TankLitre, Prices::default().of(Priced::TankLitre));
        assert!(!upgrade.is_priced_by_household(&prices), "one of its prices is assumed");
    }
}
