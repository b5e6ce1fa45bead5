//! Questions about size that take a while, answered in small steps: whoever asks stays able to do something else.

use std::sync::Arc;

use crate::engine::balance::lean::Inflows;
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::question::{Refusal, weather};
use crate::site::household::Site;
use crate::site::rain::Rain;

use super::batch::{Batch, Case, Ground};
use super::curves::{Curves, Point};
use super::handbooks::{Basis, Method, Said};
use super::sequent_peak::{SequentPeak, sequent_peak};
use super::smallest::{Found, Search, Sought, planned};
use super::surface::Surface;
use super::tally::Tally;
use crate::engine::balance::run::Conduct;

/// What can be asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inquiry {
    /// The smallest storage and roof and the largest use, under both orders within a day.
    Smallest,
    /// Reliability and yield against each of them.
    Curves,
    /// Storage and use together.
    Surface,
    /// What handbooks say of the same house.
    Handbooks,
}

impl Inquiry {
    /// All.
    pub const ALL: [Inquiry; 4] = [Inquiry::Smallest, Inquiry::Curves, Inquiry::Surface, Inquiry::Handbooks];
}

/// θ of the two published rules: yield after spillage, yield before it.
pub const BOTH_RULES: [f64; 2] = [0.0, 1.0];

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub enum Findings {
    /// The smallest.
    Smallest {
        /// The house as it is, under both rules.
        house: [Tally; 2],
        /// What was found for each thing sought, under both rules.
        found: Vec<(Sought, [Found; 2])>,
        /// One store for all, never short; `None` where demand follows the weather or the store.
        peak: Option<SequentPeak>,
    },
    /// The curves against storage, roof and use.
    Curves(Vec<(Sought, Vec<Point>)>),
    /// The surface.
    Surface {
        /// Factors of the storage.
        storage: Vec<f64>,
        /// Factors of the use.
        uses: Vec<f64>,
        /// What each pair comes to, storage by storage.
        tallies: Vec<Tally>,
    },
    /// The handbooks.
    Handbooks {
        /// What they look at.
        basis: Basis,
        /// What each says, and what a tank of that size would have come to on this rain.
        methods: Vec<(Method, Said, Option<Tally>)>,
        /// What the search on the whole engine says.
        ours: Found,
    },
}

enum Job {
    Search(Box<Search>),
    Batch(Box<Batch>),
    Curves(Box<Curves>),
    Surface(Box<Surface>),
    Gather { plan: Arc<Plan>, ground: Arc<Ground>, inflows: Inflows, progress: f64 },
}

/// Days gathered in a step.
const GATHERED_A_STEP: usize = 4_000;

impl Job {
    fn step(&mut self) -> bool {
        match self {
            Job::Search(search) => search.step(),
            Job::Batch(batch) => batch.step(),
            Job::Curves(curves) => curves.step(),
            Job::Surface(surface) => surface.step(),
            Job::Gather { plan, ground, inflows, progress } => {
                let left = inflows.go_on(plan, &ground.weather, GATHERED_A_STEP);
                *progress = if left { 0.5 } else { 1.0 };
                left
            }
        }
    }

    fn progress(&self) -> f64 {
        match self {
            Job::Search(search) => search.progress(),
            Job::Batch(batch) => batch.progress(),
            Job::Curves(curves) => curves.progress(),
            Job::Surface(surface) => surface.progress(),
            Job::Gather { progress, .. } => *progress,
        }
    }
}

/// A question on its way.
pub struct Study {
    inquiry: Inquiry,
    plan: Arc<Plan>,
    basis: Option<Basis>,
    methods: Vec<(Method, Said, bool)>,
    jobs: Vec<Job>,
    at: usize,
}

impl Study {
    /// A question before its first step. It is asked of the rain alone: with loads of hauled water any size would do.
    ///
    /// # Errors
    /// See [`Refusal`]; [`Refusal::NoWholeYear`] too: all of them count by the year.
    pub fn new(inquiry: Inquiry, site: &Arc<Site>, rain: &Rain) -> Result<Self, Refusal> {
        let mut site = Arc::clone(site);
        if !site.system.hauling.is_empty() {
            Arc::make_mut(&mut site).system.hauling.clear();
        }
        let site = &site;
        let plan = Arc::new(plan(&site.system).map_err(Refusal::System)?);
        let ground = Arc::new(Ground::new(weather(site, rain)?, Conduct::from(&site.reckoning)));
        if ground.calendar.whole_years == 0 {
            return Err(Refusal::NoWholeYear { days: ground.weather.dates.len() });
        }
        let wanted = site.reckoning.wanted;
        let mut study =
            Self { inquiry, plan: Arc::clone(&plan), basis: None, methods: Vec::new(), jobs: Vec::new(), at: 0 };
        let search = |ground: &Arc<Ground>, sought| Search::new(Arc::clone(site), Arc::clone(ground), sought, wanted);
        match inquiry {
            Inquiry::Smallest => {
                for theta in BOTH_RULES {
                    let ground = Arc::new(ground.under(theta));
                    study
                        .jobs
                        .push(Job::Batch(Box::new(Batch::new(Arc::clone(&ground), vec![Case::of(Arc::clone(&plan))]))));
                    study.jobs.extend(Sought::ALL.map(|sought| Job::Search(Box::new(search(&ground, sought)))));
                }
                if !plan.demand_follows_state() {
                    let inflows = Inflows::before_first_day(&plan, ground.weather.dates.len());
                    study.jobs.push(Job::Gather { plan, ground, inflows, progress: 0.0 });
                }
            }
            Inquiry::Curves => study.jobs.push(Job::Curves(Box::new(Curves::new(site, ground)))),
            Inquiry::Surface => study.jobs.push(Job::Surface(Box::new(Surface::new(site, ground)))),
            Inquiry::Handbooks => {
                let basis = Basis::of(&site.system, &ground.weather);
                let now = Sought::Storage.of(site);
                let mut cases = Vec::new();
                for method in Method::ALL {
                    let said = basis.says(method);
                    let sized = match said {
                        Said::Tank(litres) if litres > 0.0 => planned(site, &Sought::Storage.times(litres / now)),
                        Said::Tank(_) | Said::Impossible { .. } => None,
                    };
                    study.methods.push((method, said, sized.is_some()));
                    cases.extend(sized.map(Case::of));
                }
                study.basis = Some(basis);
                study.jobs.push(Job::Search(Box::new(search(&ground, Sought::Storage))));
                study.jobs.push(Job::Batch(Box::new(Batch::new(ground, cases))));
            }
        }
        Ok(study)
    }

    /// Does a small piece of the work; whether some is left.
    pub fn step(&mut self) -> bool {
        if let Some(job) = self.jobs.get_mut(self.at)
            && !job.step()
        {
            self.at += 1;
        }
        self.at < self.jobs.len()
    }

    /// How far it is, 0 to 1.
    #[expect(clippy::cast_precision_loss, reason = "a handful of jobs")]
    pub fn progress(&self) -> f64 {
        let within = self.jobs.get(self.at).map_or(0.0, Job::progress);
        ((self.at as f64 + within) / self.jobs.len().max(1) as f64).min(1.0)
    }

    /// What was found, once nothing is left to do.
    pub fn findings(&self) -> Findings {
        let found = |at: usize| match self.jobs.get(at) {
            Some(Job::Search(search)) => search.found().unwrap_or(Found::CannotRun),
            _ => Found::CannotRun,
        };
        let tallies = |at: usize| match self.jobs.get(at) {
            Some(Job::Batch(batch)) => batch.tallies().to_vec(),
            _ => Vec::new(),
        };
        let curves = |sought: Sought| match self.jobs.first() {
            Some(Job::Curves(curves)) => (sought, curves.against(sought)),
            _ => (sought, Vec::new()),
        };
        match self.inquiry {
            Inquiry::Smallest => {
                let a_rule = 1 + Sought::ALL.len();
                let house = |rule: usize| tallies(rule * a_rule).first().copied().unwrap_or_default();
                let places = Sought::ALL.into_iter().enumerate();
                Findings::Smallest {
                    house: [house(0), house(1)],
                    found: places.map(|(at, sought)| (sought, [found(1 + at), found(a_rule + 1 + at)])).collect(),
                    peak: self.jobs.get(2 * a_rule).and_then(|job| self.peak(job)),
                }
            }
            Inquiry::Curves => Findings::Curves(Sought::ALL.map(curves).to_vec()),
            Inquiry::Surface => match self.jobs.first() {
                Some(Job::Surface(surface)) => Findings::Surface {
                    storage: surface.storage.clone(),
                    uses: surface.uses.clone(),
                    tallies: surface.tallies().to_vec(),
                },
                _ => Findings::Surface { storage: Vec::new(), uses: Vec::new(), tallies: Vec::new() },
            },
            Inquiry::Handbooks => {
                let mut sized = tallies(1).into_iter();
                let method = |(method, said, runs): &(Method, Said, bool)| {
                    (*method, *said, if *runs { sized.next() } else { None })
                };
                Findings::Handbooks {
                    methods: self.methods.iter().map(method).collect(),
                    basis: self.basis.clone().unwrap_or(Basis::of_year(0.0, 0.0)),
                    ours: found(0),
                }
            }
        }
    }

    /// All tanks as one store, all uses together.
    fn peak(&self, job: &Job) -> Option<SequentPeak> {
        let Job::Gather { ground, inflows, .. } = job else { return None };
        let mut sums = vec![0.0; ground.weather.dates.len()];
        for tank in &inflows.by_tank {
            for (sum, inflow) in sums.iter_mut().zip(tank) {
                *sum += inflow;
            }
        }
        let by_month = self.plan.demand_by_month_l();
        let months = ground.calendar.months.iter();
        let demand: Vec<f64> = months.flat_map(|of| std::iter::repeat_n(by_month[of.month], of.to - of.from)).collect();
        Some(sequent_peak(&sums, &demand))
    }
}
