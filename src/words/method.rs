//! How everything is reckoned: each formula in words and symbols, its source, and what it takes for granted. Formulas of
//! checks stand with the checks ([`super::checks::text`]).

use super::checks::Text;
use super::{ahead, garden, next};
use crate::language::Phrase;

/// The title of the page.
pub const TITLE: &str = "How it is reckoned";
/// The button that opens it.
pub const OPEN: &str = "All formulas and sources";
/// What stands over it.
pub const LEAD: &str = "Every formula that this program uses, where it is from and what it takes for granted. Where a source was \
                        not at hand while the formula was written down, “from memory” says so. “Common practice, no \
                        source” is a rule of thumb.";
/// Heads of what stands under each title.
pub const HEADS: [&str; 3] = ["Formula", "Source", "Takes for granted"];
/// The words.
pub const TERMS: &str = "Words";
/// The checks of parts.
pub const CHECKS: &str = "Checks of parts";
/// What makes water fit to drink.
pub const BARRIERS: &str = "Barriers before a tap";

/// Where a source begins that is no other than this program.
pub const OURS: &str = "Ours";

const fn topic(title: &'static str, formula: &'static str, source: &'static str, assumes: &'static str) -> Text {
    Text {
        title: Phrase(title, title),
        formula: Phrase(formula, formula),
        source: Phrase(source, source),
        assumes: Phrase(assumes, assumes),
        caution: Phrase("", ""),
    }
}

/// From rain to tap, day by day.
pub const BALANCE: [Text; 9] = [
    topic(
        "Roof",
        "q = A · c · max(0, P − w): runoff of a section in litres from plan area A (m²), runoff coefficient c, rain P and \
         wetting loss w (mm). A feed brings Q = κ · Σ share · q, κ the capture of gutter and screen.",
        "The rational method by day, any text on hydrology; 1 mm on 1 m² is 1 L. κ of 90 %: DIN 1989-1, BS 8515 (from \
         memory); wetting of 0.5 mm: common practice, no source.",
        "The same coefficient in light rain and in heavy. Snow counts as rain on its day. What no feed takes is told as \
         uncollected.",
    ),
    topic(
        "First flush",
        "The diverter holds h of its F litres. On a rain day it keeps min(Q, F − h + drip), drip what the hole passes at \
         full head while it rains, C·o·√(2gH) for so many hours. Then √z falls at C·(o/a)·√(g/2) a second: a chamber \
         area, o hole, z depth, C = 0.62.",
        "Torricelli, any text on hydraulics; C about 0.61 to 0.62 for a small sharp-edged hole (from memory).",
        "An upright chamber of one width, a clean hole, one storm a day. Emptied by hand it is empty on that day; a blocked \
         hole never empties it.",
    ),
    topic(
        "Tanks and stores",
        "V(z) by the shape: cylinder and box A·z; lying cylinder and cone by their sections; a table straight between its \
         rows. Tanks joined through open valves share one surface: V = Σ V(z), solved for z by halving. The lowest rim \
         spills; what lies above it in the others is stranded; what lies below an outlet is dead storage.",
        "Geometry; communicating vessels.",
        "Joined tanks level out within the day: the check of the trunk line tells how fast.",
    ),
    topic(
        "Order within a day",
        "Y = min(D, V + θQ), then V = min(V + Q − θY, S) − (1 − θ)Y: yield Y, demand D, inflow Q, content V, capacity S. \
         θ = 0 is yield after spillage, θ = 1 yield before spillage.",
        "Jenkins and others 1978; Fewkes & Butler 2000.",
        "A day is the step. After spillage is the cautious end; the truth lies between the two.",
    ),
    topic(
        "What follows what",
        "Rationing looks at the stores; hauled loads that are due, orders for new ones; pumps; roofs, screens, diverters; \
         rain on gardens; each store, upstream first, its uses in their order; spill flows on to where it is plumbed; \
         leaks; evaporation from open tanks (depth × area of the water); gardens drink.",
        "Ours, so that no water is counted twice: the residual of every run is told under its figures.",
        "A load is ordered when a store begins a day below its trigger and comes so many days later. A pump runs from its \
         start level to its stop level.",
    ),
    topic(
        "Garden by the weather",
        "Depletion D of the root zone: D + K·ET − rain − watering, 0 to TAW; TAW = 1000 · (field capacity − wilting point) · \
         root depth; watering from RAW = p · TAW on; beyond it plants drink by (TAW − D)/(TAW − RAW). Litres = mm × area ÷ \
         efficiency.",
        "FAO Irrigation and Drainage Paper 56 (1998), chapter 8, equations 82 to 85; crop and soil from its tables 12, 19 \
         and 22 (from memory).",
        garden::HOW.0,
    ),
    topic(
        "Reference evapotranspiration",
        "ET = 0.0023 · (T mean + 17.8) · √(T max − T min) · 0.408 · Ra, Ra the radiation above the air for latitude and day.",
        "Hargreaves, FAO-56 equations 21 to 25 and 52. Published means may be entered instead.",
        garden::HARGREAVES.0,
    ),
    topic(
        "Rationing",
        "While the store begins the day below its share, each named use asks for (1 − cut) of its amount; of several steps \
         the deepest cut holds.",
        "Ours.",
        garden::CUT_IS.0,
    ),
    topic(
        "Closing of the balance",
        "Rain on roofs + hauled + rain into open tanks = wetting + not run off + uncollected + escaped + first flush + yield \
         + spill + leaks + evaporation + change in store.",
        "Conservation of water.",
        "A run that does not close to a billionth of what flowed is a fault of the program and says so.",
    ),
];

/// The rain itself.
pub const RAIN: [Text; 5] = [
    topic(
        "Missing days",
        "A year that lacks more days than allowed is left out; other missing days take the depth of the same calendar day of \
         the nearest year that has it.",
        "Ours.",
        "A day nobody measured is never taken as dry. The answer says how many were filled.",
    ),
    topic(
        "Doubts about a record",
        "Mean year outside 10 to 13,000 mm; a day above 1,825 mm; rain on 40 % of days with 40 % of them under 1 mm; a run of \
         30 zeros or more with a chance under 1 in 10,000, Π (d + ½ + i)/(w + d + 1 + i) over its days, w and d the wet and \
         dry days of those months that follow five dry ones.",
        "Extremes as the World Meteorological Organization lists them (from memory); beta-binomial with Jeffreys' prior; the \
         limits are our own.",
        "Nothing is changed by a doubt: it is told.",
    ),
    topic(
        "Monthly means alone",
        "Each month's rain in equal rain days, evenly spaced: as many as are entered, else its total ÷ 8 mm.",
        "Common practice, no source.",
        super::rain::EVEN_RAIN.0,
    ),
    topic(
        "Generated years",
        "P(wet) by whether the day before was wet, month by month; depth by a gamma distribution (shape α: ln α − ψ(α) = ln \
         mean − mean ln). From means alone P(W|D) = 0.75 f, P(W|W) = 0.25 + P(W|D), scale = −2.16 + 1.83 × mean wet day. \
         Each rain year × a number with mean 1 so that 1 + CV² = (1 + CV of the chain²)(1 + CV of the number²).",
        "Richardson 1981; Thom 1958; Geng, Penning de Vries & Supit 1986; a wet day from 0.254 mm on (Richardson & Wright \
         1984, from memory). CV of 25 % where nothing tells it: common practice, no source.",
        super::generated::HOW.0,
    ),
    topic(
        "A drier or wetter future",
        "Each day's depth × the factor of its month.",
        "Ours.",
        "The same days are wet: only how much falls changes.",
    ),
];

/// What the days come to.
pub const STATISTICS: [Text; 6] = [
    topic(
        "Dry days and dry stretches",
        "A dry day is one on which a use of the house, outdoor uses aside, is not met in full after rationing.",
        "Ours.",
        "A year that is left out ends a stretch.",
    ),
    topic(
        "Reliability",
        "Volumetric: Σ yield ÷ Σ demand, what rationing cut counted as demand. In time: 1 − dry days ÷ days.",
        "McMahon & Mein, River and Reservoir Yield, 1986 (from memory).",
        "",
    ),
    topic(
        "Share of good years, and how sure",
        "(p + z²/2n ± z·√(p(1 − p)/n + z²/4n²)) ÷ (1 + z²/n), p good years of n whole ones, z = 1.96.",
        "Wilson, Journal of the American Statistical Association 22, 1927.",
        "Years are independent and the years on record a fair sample of those to come.",
    ),
    topic(
        "Resilience and vulnerability",
        "Resilience: dry stretches that ended ÷ dry days. Vulnerability: mean over the stretches of their worst day's \
         shortfall.",
        "Hashimoto, Stedinger & Loucks, Water Resources Research 18(1), 1982.",
        "",
    ),
    topic(
        "Content through the year",
        "10th, 50th and 90th percentile of the content on each day of the year, straight between neighbours.",
        "Hyndman & Fan, The American Statistician 50, 1996, definition 7.",
        "29 February counts with the 28th.",
    ),
    topic(
        "Where the water went",
        "Sums of each month over the whole run ÷ years of it.",
        "The closed balance above.",
        "",
    ),
];

/// Sizes and changes.
pub const SIZES: [Text; 5] = [
    topic(
        "Smallest that does it",
        "The whole house is run with all tanks, roofs or uses × a factor; the factor is halved in, at equal ratios, to 0.2 %.",
        "Bisection; 95 of 100 and the like as chosen under “What is wanted”.",
        "Everything else stays as it is.",
    ),
    topic(
        "Never short at all",
        "K = max(0, K + demand − inflow) over the record twice; the greatest K is the storage. Under yield after spillage a \
         day's use must be in store before.",
        "Sequent peak: Thomas & Fiering, in Maass and others 1962, and 1963.",
        "All water in one tank, full at first. Where more is wanted than comes no storage does it, and that is said.",
    ),
    topic(
        "By the handbooks",
        "Monthly balance: greatest deficit of twelve mean months, twice. Dry season: use × longest spell under 1 mm. 5 % and 6 % \
         rules: that share of the lesser of a year's yield A·c·κ·P and use.",
        "Gould & Nissen-Petersen 1999; University of Warwick, Development Technology Unit; BS 8515:2009 and BS EN \
         16941-1:2018; DIN 1989-1:2002 (the standards from memory).",
        "They look at totals, never at the order of days: the table sets the daily balance beside them.",
    ),
    topic(
        "What next",
        "Gain = lacking and hauled before − after, L a year; price ÷ gain ranks, or dry days, water, spill, or the worst year. In \
         sequence: the best, then the best after it, and so on.",
        "Ours; the same balance on the same rain.",
        next::HOW.0,
    ),
    topic(
        "Prices",
        "Fixed price + price of a litre × litres.",
        "No source: put your own in their place.",
        next::PRICES.0,
    ),
];

/// From today on.
pub const FROM_TODAY: [Text; 4] = [
    topic(
        "The weeks ahead",
        "From the last readings, run to today through the rain since; then a year under the rain of each year on record from \
         this day of the calendar on. The value below which the next outcome lies with a chance p: place p(n + 1) of the n \
         sorted ones.",
        "Weibull 1939, definition 6 of Hyndman & Fan 1996.",
        "Years are as likely as each other. Nine at least for a range of eight in ten; with fewer, years are generated. Hauled \
         water is not counted on.",
    ),
    topic(
        "Safe daily use",
        "For each future the factor on the house's uses, up to 8, with which no day to the date is dry, by halving; that which a \
         chance p of futures bears.",
        "Ours; ranges as above.",
        ahead::FAN_CAPTION.0,
    ),
    topic(
        "What the readings say",
        "Capture and use that make the levels run from each reading to the next with least squares (Gauss–Newton), weighted by \
         what is expected of reading (1 % of the store), use (30 % of a day's) and catch (10 % of a day's); ranges at 90 % by \
         Student's t.",
        "Seber & Wild, Nonlinear Regression, 1989, ch. 2; Gelman and others, Bayesian Data Analysis, 2013, §14.2; the spreads: \
         common practice, no source.",
        "Stretches that ended brim-full count as “at least”. Nothing is told under four stretches or with a range wider than 30 % \
         either way.",
    ),
    topic(
        "Alarms",
        "Running sum of the evidence for three tenths less capture, or three tenths more use, than before the last half year; \
         called at 5.",
        "Page, Biometrika 41, 1954; Lorden, Annals of Mathematical Statistics 42, 1971.",
        "Twelve stretches at least before them make a normal.",
    ),
];

/// What was in the water.
pub const TESTS: [Text; 1] = [topic(
    "Limits of water tests",
    "What was found against the lower of the limits named with each test.",
    super::treatment::results::ABOUT,
    "A sample tells of one day and one tap.",
)];

/// The sections before those of the checks, with what stands in each.
pub const SECTIONS: [(&str, &[Text]); 6] = [
    ("From rain to tap", &BALANCE),
    ("Rain", &RAIN),
    ("What the days come to", &STATISTICS),
    ("How big, what next", &SIZES),
    ("From today", &FROM_TODAY),
    ("Water tests", &TESTS),
];
