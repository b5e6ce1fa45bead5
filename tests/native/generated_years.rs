//! Generated rain: parameters against independent fits and published relations, and years drawn from known ones.

use chrono::Datelike;
use eavewater::engine::rain::generated::month::{MEAN_DAYS, MonthRain, driest};
use eavewater::engine::rain::generated::{RainModel, fit, from_normals, gamma, likeness, spread, years};
use eavewater::engine::rain::weather::Weather;
use eavewater::site::rain::{Normals, Rain, RainRecord};

use crate::one_tank;

fn record(name: &str) -> RainRecord {
    one_tank::weather(name).as_record()
}

/// Months fitted apart from this project to `tests/data`, a day being wet from 1 mm on: P(W|D) and P(W|W) by a binomial
/// GLM of today on yesterday (statsmodels 0.15.0), shape and scale of the gamma by maximum likelihood with location 0
/// (scipy 1.17.1, `stats.gamma.fit`), on numpy 2.4.6.
const TUNIS: [[f64; 4]; 12] = [
    [0.196261682, 0.514423077, 1.175004759, 6.392587517],
    [0.174442191, 0.524324324, 1.294452831, 5.522091853],
    [0.165232358, 0.411042945, 1.649832296, 3.132127232],
    [0.145833333, 0.395833333, 1.687124487, 3.669006626],
    [0.079699248, 0.291139241, 1.153748319, 6.949887527],
    [0.047400612, 0.138888889, 1.915538839, 2.085285019],
    [0.009915014, 0.142857143, 1.216530573, 6.000671224],
    [0.029154519, 0.222222222, 1.254079275, 6.277973874],
    [0.108695652, 0.336956522, 1.117734071, 8.416395195],
    [0.130287648, 0.377049180, 1.113060610, 7.464951160],
    [0.198058252, 0.428571429, 1.085799074, 7.075421279],
    [0.207171315, 0.492890995, 1.177136105, 6.250502617],
];
const BRUSSELS: [[f64; 4]; 12] = [
    [0.273076923, 0.640586797, 1.768471708, 3.120082584],
    [0.235294118, 0.626168224, 1.855230515, 2.884982567],
    [0.275471698, 0.630000000, 1.802764041, 2.926410790],
    [0.236706690, 0.564668770, 1.814267951, 2.722374452],
    [0.255033557, 0.535928144, 1.630076091, 3.546069149],
    [0.249134948, 0.571428571, 1.532014945, 4.361584212],
    [0.204113924, 0.560402685, 1.502813759, 4.986816704],
    [0.211419753, 0.507092199, 1.204266977, 5.990603290],
    [0.220757825, 0.556313993, 1.414956304, 4.457907351],
    [0.240066225, 0.552147239, 1.496624885, 4.221807081],
    [0.312859885, 0.564643799, 1.574941043, 3.703224808],
    [0.295454545, 0.619402985, 1.588902836, 3.724132033],
];

#[test]
fn months_are_fitted_as_independent_libraries_fit_them() {
    for (name, expected) in [("tunis", TUNIS), ("brussels", BRUSSELS)] {
        let months = fit::fit(&record(name), 1.0).unwrap();
        for (number, (month, [after_dry, after_wet, shape, scale_mm])) in months.iter().zip(expected).enumerate() {
            assert!((month.wet_after_dry - after_dry).abs() < 1e-8, "{name} {number}: {month:?}");
            assert!((month.wet_after_wet - after_wet).abs() < 1e-8, "{name} {number}: {month:?}");
            // Eight wet days in the Julys of Tunis: too few for a shape of their own.
            if (name, number) != ("tunis", 6) {
                assert!((month.shape / shape - 1.0).abs() < 1e-6, "{name} {number}: {month:?}");
                assert!((month.scale_mm / scale_mm - 1.0).abs() < 1e-6, "{name} {number}: {month:?}");
            }
        }
    }
}

#[test]
fn a_month_with_few_wet_days_keeps_its_mean_and_borrows_its_shape() {
    let july = fit::fit(&record("tunis"), 1.0).unwrap()[6];
    // The mean of its eight wet days, from the independent fit.
    assert!((july.mean_depth_mm() / (TUNIS[6][2] * TUNIS[6][3]) - 1.0).abs() < 1e-6);
    assert!((july.shape - TUNIS[6][2]).abs() > 1e-3);
}

#[test]
fn the_gamma_of_a_whole_record_is_that_of_scipy() {
    // scipy 1.17.1, stats.gamma.fit with location 0, on the 1,449 wet days (1 mm or more) of tunis-daily.csv.
    let shape = gamma::shape(0.463_088_495);
    assert!((shape - 1.219_393_955).abs() < 1e-7, "{shape}");
}

#[test]
fn monthly_means_give_the_published_relations() {
    // Geng, Penning de Vries & Supit 1986 (from memory): f = 0.30 gives P(W|D) 0.225 and P(W|W) 0.475, and f again.
    let after_dry = from_normals::wet_after_dry(0.30);
    let after_wet = from_normals::wet_after_wet(after_dry);
    assert!((after_dry - 0.225).abs() < 1e-12 && (after_wet - 0.475).abs() < 1e-12);
    // Same paper: β = −2.16 + 1.83 μ; by hand for a mean wet day of 10 mm, 16.14 mm.
    assert!((from_normals::scale_mm(10.0) - 16.14).abs() < 1e-12);
    let totals_mm = [80.0, 70.0, 60.0, 30.0, 10.0, 1.0, 0.0, 2.0, 25.0, 60.0, 90.0, 95.0];
    let rain_days = [12.0, 10.0, 9.0, 5.0, 2.0, 0.5, 0.0, 1.9, 4.0, 8.0, 12.0, 13.0];
    let months =
        from_normals::months(&Normals { source: String::new(), totals_mm, rain_days: Some(rain_days) }).unwrap();
    for (number, (month, days)) in months.iter().zip(MEAN_DAYS).enumerate() {
        assert!((month.mean_total_mm(days) - totals_mm[number]).abs() < 1e-9, "month {number}: {month:?}");
        assert!((month.wet_share() * days - rain_days[number]).abs() < 1e-9, "month {number}: {month:?}");
    }
    assert_eq!(driest(&months), 6);
}

#[test]
fn a_draw_from_monthly_means_has_these_means_and_the_days_and_spread_of_its_model() {
    let totals_mm = [95.0, 80.0, 75.0, 60.0, 40.0, 20.0, 10.0, 15.0, 40.0, 70.0, 90.0, 0.0];
    let means = Rain::Normals(Normals { source: String::new(), totals_mm, rain_days: None });
    let model = RainModel::of(&means, None).unwrap();
    let free = RainModel { means_mm: None, ..model.clone() };
    for (number, seed) in [(50_u16, 1), (50, 2), (100, 1), (10, 3)] {
        let (drawn, unbound) = (years::years(&model, number, seed), years::years(&free, number, seed));
        let mut sums = [0.0; 12];
        for (date, mm) in drawn.dates.iter().zip(&drawn.depths_mm) {
            sums[date.month0() as usize] += mm;
        }
        for (sum, total) in sums.iter().zip(totals_mm) {
            assert!((sum / f64::from(number) - total).abs() < 1e-9, "{sum} in {number} years for {total}");
        }
        let wet = |weather: &Weather| weather.depths_mm.iter().map(|mm| *mm > 0.0).collect::<Vec<_>>();
        assert!(wet(&drawn) == wet(&unbound), "the same days are wet");
    }
    // 400 years spread as widely as wanted: the standard error of a coefficient of variation of 25 % is about
    // 0.25 × √(0.5 + 0.25²) / √400.
    let totals = spread::rain_year_totals_mm(&years::years(&model, 400, 1).as_record(), model.first_month);
    let cv = spread::cv(&totals).unwrap();
    let error = 0.25 * (0.5 + 0.25_f64.powi(2)).sqrt() / 400_f64.sqrt();
    assert!((cv - 0.25).abs() < 4.0 * error, "{cv} ± {error}");
    // A record's own means are a sample: its draws keep to none.
    let record = Rain::Record(years::years(&model, 20, 5).as_record());
    assert_eq!(RainModel::of(&record, None).unwrap().means_mm, None);
}

/// Station parameters of Delphi, Indiana (USDA-ARS NSERL, "Format of CLIGEN Weather Station Statistics Input Files"): the
/// mean and standard deviation of a wet day in inches, P(W|W) and P(W|D).
const DELPHI: [[f64; 12]; 4] = [
    [0.23, 0.25, 0.26, 0.31, 0.35, 0.41, 0.49, 0.45, 0.39, 0.33, 0.30, 0.28],
    [0.32, 0.34, 0.30, 0.40, 0.42, 0.53, 0.59, 0.58, 0.53, 0.42, 0.37, 0.34],
    [0.42, 0.37, 0.43, 0.54, 0.52, 0.45, 0.39, 0.41, 0.38, 0.45, 0.47, 0.43],
    [0.23, 0.24, 0.28, 0.29, 0.25, 0.26, 0.24, 0.21, 0.20, 0.20, 0.24, 0.24],
];

/// A gamma with the station's mean and standard deviation: shape mean² / variance, scale variance / mean.
fn delphi() -> [MonthRain; 12] {
    let [mean, deviation, after_wet, after_dry] = DELPHI;
    std::array::from_fn(|number| {
        let (mean_mm, deviation_mm) = (mean[number] * 25.4, deviation[number] * 25.4);
        MonthRain {
            wet_after_dry: after_dry[number],
            wet_after_wet: after_wet[number],
            shape: (mean_mm / deviation_mm).powi(2),
            scale_mm: deviation_mm * deviation_mm / mean_mm,
        }
    })
}

#[test]
fn the_parameters_of_a_station_come_to_its_yearly_rain() {
    let months = delphi();
    let year_mm: f64 = months.iter().zip(MEAN_DAYS).map(|(month, days)| month.mean_total_mm(days)).sum();
    // 36.80 in: the sum of days, wet share and mean wet day over the table.
    assert!((year_mm / 25.4 - 36.80).abs() < 0.005, "{}", year_mm / 25.4);
    let model = RainModel { months, first_month: driest(&months), multiplier_cv: 0.0, means_mm: None };
    let totals = spread::rain_year_totals_mm(&years::years(&model, 2000, 1).as_record(), 0);
    assert_eq!(totals.len(), 2000);
    let mean = totals.iter().sum::<f64>() / 2000.0;
    let error = spread::cv(&totals).unwrap() * mean / 2000_f64.sqrt();
    assert!((mean - year_mm).abs() < 4.0 * error, "{mean} ± {error} for {year_mm}");
}

/// ψ'(x), by the difference of ψ.
fn trigamma(x: f64) -> f64 {
    let step = 1e-4 * x;
    (gamma::digamma(x + step) - gamma::digamma(x - step)) / (2.0 * step)
}

#[test]
fn ten_thousand_years_give_back_the_parameters_that_they_were_drawn_from() {
    let months = delphi();
    let model = RainModel { months, first_month: 0, multiplier_cv: 0.0, means_mm: None };
    let weather = years::years(&model, 10_000, 7);
    let record = weather.as_record();
    // Any rain at all is a wet day here; nothing that is drawn is left out.
    let found = fit::fit(&record, f64::MIN_POSITIVE).unwrap();
    for (number, (given, found)) in months.iter().zip(&found).enumerate() {
        let days = 10_000.0 * MEAN_DAYS[number];
        let (wet, dry) = (days * given.wet_share(), days * (1.0 - given.wet_share()));
        let error_of = |chance: f64, number: f64| (chance * (1.0 - chance) / number).sqrt();
        let check = |what: &str, given: f64, found: f64, error: f64| {
            assert!((given - found).abs() < 4.0 * error, "month {number}, {what}: {found} for {given} ± {error}");
        };
        check("P(W|D)", given.wet_after_dry, found.wet_after_dry, error_of(given.wet_after_dry, dry));
        check("P(W|W)", given.wet_after_wet, found.wet_after_wet, error_of(given.wet_after_wet, wet));
        // Asymptotic variances of the gamma's maximum-likelihood estimates: α / (n (α ψ'(α) − 1)), αβ² / n of the mean.
        let shape_error = (given.shape / (wet * (given.shape * trigamma(given.shape) - 1.0))).sqrt();
        check("shape", given.shape, found.shape, shape_error);
        let mean_error = (given.shape / wet).sqrt() * given.scale_mm;
        check("mean", given.mean_depth_mm(), found.mean_depth_mm(), mean_error);
    }
}

#[test]
fn years_spread_as_widely_as_they_should() {
    let months = delphi();
    for wanted in [0.2, 0.35] {
        let multiplier_cv = spread::multiplier_cv(wanted, spread::chain_cv(&months));
        let model = RainModel { months, first_month: 8, multiplier_cv, means_mm: None };
        let days = years::years(&model, 5000, 3);
        let found = spread::cv(&spread::rain_year_totals_mm(&days.as_record(), 8)).unwrap();
        // The error of a coefficient of variation is about cv √((1/2 + cv²) / n) (Kendall & Stuart, from memory, for a normal
        // sample); 4 of them, and a tenth more for the tail of the gamma.
        let error = wanted * ((0.5 + wanted * wanted) / 5000.0).sqrt();
        assert!((found - wanted).abs() < 4.4 * error, "{found} ± {error} for {wanted}");
    }
    // Without a multiplier the chain spreads them as its variance says, months being independent but for their ends.
    let model = RainModel { months, first_month: 0, multiplier_cv: 0.0, means_mm: None };
    let days = years::years(&model, 5000, 3);
    let found = spread::cv(&spread::rain_year_totals_mm(&days.as_record(), 0)).unwrap();
    assert!((found / spread::chain_cv(&months) - 1.0).abs() < 0.05, "{found} for {}", spread::chain_cv(&months));
}

#[test]
fn a_seed_names_its_years() {
    let model = RainModel::of(&Rain::Record(record("tunis")), None).unwrap();
    let twenty = years::years(&model, 20, 5);
    assert_eq!(twenty, years::years(&model, 20, 5));
    assert_ne!(twenty.depths_mm, years::years(&model, 20, 6).depths_mm);
    let thirty = years::years(&model, 30, 5);
    assert_eq!(twenty.depths_mm, thirty.depths_mm[..twenty.depths_mm.len()]);
    assert_eq!(thirty.dates.last().map(|date| (date.year(), date.ordinal())), Some((30, 365)));
}

#[test]
fn generated_years_are_like_the_record_in_what_the_model_knows() {
    for name in ["tunis", "brussels", "hyderabad"] {
        let record = record(name);
        let model = RainModel::of(&Rain::Record(record.clone()), None).unwrap();
        let recorded = likeness::likeness(&record, model.first_month);
        let drawn = years::years(&model, 1000, 1).as_record();
        let generated = likeness::likeness(&drawn, model.first_month);
        for (number, (month, days)) in model.months.iter().zip(MEAN_DAYS).enumerate() {
            let (one, other) = (recorded.monthly_mm[number], generated.monthly_mm[number]);
            // Four errors of a mean of 1,000 months, whose spread the model states, the multiplier's included; and what falls
            // in drizzle below the model's wet day.
            let cv2 =
                month.total_variance(days.round()) / month.mean_total_mm(days).powi(2) + model.multiplier_cv.powi(2);
            let error = one * (cv2 / 1000.0).sqrt();
            assert!(
                (one - other).abs() < 4.0 * error + 0.01 * one + 0.5,
                "{name} {number}: {one} and {other} ± {error}"
            );
        }
        let (one, other) = (recorded.annual_cv.unwrap(), generated.annual_cv.unwrap());
        // A record of n years knows its own coefficient of variation exactly; the drawn ones come near it, unless the
        // chain alone spreads them more.
        let wanted = one.max(spread::chain_cv(&model.months));
        assert!((other / wanted - 1.0).abs() < 0.12, "{name}: {other} for {wanted}");
    }
}

#[test]
fn dry_spells_count_to_the_year_in_which_they_end() {
    let day = |text: &str| text.parse::<chrono::NaiveDate>().unwrap();
    // Rain on 1 December 2001, on 11 January and 30 December 2002, by hand: spells of 40 days ending in 2002, of 352 days
    // ending in 2002, and of 1 day at the end.
    let wet = ["2001-12-01", "2002-01-11", "2002-12-30"].map(day);
    let days = day("2001-12-01").iter_days().take(396);
    let depths_mm = days.map(|date| Some(if wet.contains(&date) { 5.0 } else { 0.0 })).collect();
    let record = RainRecord { source: String::new(), start: day("2001-12-01"), depths_mm };
    let seen = likeness::likeness(&record, 0);
    assert_eq!(seen.record_spell, 352);
    assert_eq!((seen.rain_years, seen.annual_mm), (1, 10.0));
}

#[test]
fn a_few_missing_days_take_no_year_from_the_spread() {
    // Seattle's record without three days of each year, the wettest day of it among them.
    let whole = record("seattle");
    let mut holed = whole.clone();
    let years: Vec<i32> = (whole.start.year()..=whole.end().unwrap().year()).collect();
    for year in years {
        let days = || whole.days().enumerate().filter(move |(_, (date, _))| date.year() == year);
        let wettest = days().max_by(|(_, one), (_, other)| one.1.unwrap_or(0.0).total_cmp(&other.1.unwrap_or(0.0)));
        for at in wettest.map(|(at, _)| at).into_iter().chain(days().map(|(at, _)| at).skip(40).take(2)) {
            holed.depths_mm[at] = None;
        }
    }
    let totals = |record: &RainRecord| spread::rain_year_totals_mm(record, 0);
    assert_eq!(totals(&holed).len(), totals(&whole).len());
    let [cv_holed, cv_whole] = [&holed, &whole].map(|record| spread::cv(&totals(record)).unwrap());
    assert!((cv_holed / cv_whole - 1.0).abs() < 0.15, "{cv_holed} {cv_whole}");
    // So does a year that the record begins and ends within by a few days.
    let begun = RainRecord {
        start: whole.start + chrono::Days::new(3),
        depths_mm: whole.depths_mm[3..whole.depths_mm.len() - 2].to_vec(),
        ..whole.clone()
    };
    assert_eq!(totals(&begun).len(), totals(&whole).len());
    // A year that lacks two months doesn't count.
    let lacking = whole.days().position(|(date, _)| date.month() == 3).unwrap();
    holed.depths_mm[lacking..lacking + 60].fill(None);
    assert_eq!(totals(&holed).len(), totals(&whole).len() - 1);
}
