//! Sizing: the answer in words first, what can be dragged, then what stands behind it.

use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, list, live, nothing, worded};
use super::follow::{Derived, afterwards, derived, renewed};
use super::{Desk, figure, foot, next};
use crate::app::event::{Event, Lever};
use crate::app::view::generated;
use crate::app::view::sizing::{self, LeverView, Results, SizingView};
use crate::quantity::decimal;
use crate::site::household::GeneratedYears;
use crate::words::{self, generated as say};

/// The place as it is shown.
type Shown = Derived<Option<SizingView>>;

/// Sizing of the open site.
pub(crate) fn sizing(desk: Desk) -> AnyView {
    // Seldom the same after a change of the case; comparing costs more than it saves.
    let shown: Shown = renewed(move || {
        desk.case.with(|case| {
            let (now, tried) = (case.outcome.as_deref(), case.tried.as_deref());
            Some(sizing::sizing(case.site.as_ref()?, now, &case.trial, tried, &case.units))
        })
    });
    let headline = move || shown.with(|view| view.as_ref().map(|view| view.headline.clone()).unwrap_or_default());
    // The answer follows the finger; the charts behind it are long to draw on a slow phone and come after it.
    let after = afterwards(move || desk.case.track());
    let results = move || {
        after.get();
        desk.case
            .with_untracked(|case| {
                let (now, tried) = (case.outcome.as_deref(), case.tried.as_deref());
                let results = sizing::results(case.site.as_ref()?, now, &case.trial, tried, &case.units, case.width)?;
                Some(results_of(&results, desk))
            })
            .unwrap_or_else(nothing)
    };
    let reservations = move || {
        let reservations = shown.with(|view| Some(view.as_ref()?.reservations.clone())).unwrap_or_default();
        list("reservations", reservations).into()
    };
    // The levers keep their nodes while they are dragged.
    let can_try = derived(move || shown.with(|view| view.as_ref().is_some_and(|view| view.can_try)));
    element("SECTION")
        .class("sizing")
        .child(element("H1").class("headline").live_text(headline))
        .child(live(move || {
            let whose = desk.case.with(|case| match case.tried.as_deref() {
                Some(Err(_)) => Some(words::next::WHOSE_WITHOUT),
                _ => (!case.trial.is_none()).then_some(words::next::WHOSE),
            });
            whose.map_or_else(nothing, |text| worded("P", text).class("small").into())
        }))
        .child(super::rain::wanted(desk))
        .child(live(reservations))
        .child(beside(desk))
        .child(live(move || if can_try.get() { levers(shown, desk) } else { nothing() }))
        .child(super::size::sections(desk))
        .child(next::options(desk))
        .child(next::next(desk))
        .child(live(results))
        .child(reckoning(shown, desk))
        .child(foot(desk))
        .into()
}

/// What generated years say beside the site's own rain, or that it is reckoned with them.
fn beside(desk: Desk) -> AnyView {
    // Not the levers, which are dragged.
    let of = derived(move || {
        desk.case.with(|case| {
            let kept = case.site.clone()?;
            let reckoning = case.trial.reckoning(&kept.site.reckoning).clone();
            Some((kept, reckoning))
        })
    });
    let told = derived(move || of.with(|of| of.as_ref().and_then(|(kept, how)| generated::beside(kept, how))));
    let shown = move || {
        let Some((text, in_use)) = told.get() else { return nothing() };
        let (label, wanted) =
            if in_use { (say::BACK, None) } else { (say::RECKON_WITH_THEM, Some(GeneratedYears::CENTURY)) };
        let button = desk.button(label, Event::GeneratedChosen(wanted));
        element("DIV").class("beside").child(worded("H2", say::TITLE)).child(worded("P", text)).child(button).into()
    };
    live(shown)
}

fn levers(shown: Shown, desk: Desk) -> AnyView {
    let trial = move || {
        let (headline, compared) = shown.with(|view| view.as_ref()?.trial.clone())?;
        Some(vec![worded("STRONG", headline).into(), format!(" {compared}").into_any()].into_any())
    };
    let no_trial = move || desk.case.with(|case| case.trial.is_none());
    let buttons = element("DIV")
        .class("row")
        .child(desk.button(words::next::MAKE_REAL, Event::TrialKept).disabled(no_trial))
        .child(next::keep_option(desk))
        .child(desk.button(words::next::THROW_AWAY, Event::TrialDropped).disabled(no_trial));
    element("DIV")
        .class("levers")
        .attribute("role", "group")
        .attribute("aria-label", phrase!("What if", "¿Y si…?"))
        .child(worded("H2", phrase!("What if", "¿Y si…?")))
        .children(Lever::ALL.map(|lever| lever_of(lever, shown, desk)))
        .child(
            element("P")
                .class("trial")
                .attribute("role", "status")
                .child(live(move || trial().unwrap_or_else(nothing))),
        )
        .child(buttons)
        .into()
}

/// One lever: doubled or halved twice over, in even steps of the finger.
fn lever_of(lever: Lever, shown: Shown, desk: Desk) -> AnyView {
    let read = move |read: fn(&LeverView) -> String| {
        move || {
            shown.with(|view| {
                let mut levers = view.iter().flat_map(|view| &view.levers);
                levers.find(|view| view.lever == lever).map(read).unwrap_or_default()
            })
        }
    };
    let value = read(|view| view.value.clone());
    let dragged = move |event| {
        if let Some(place) = decimal::read(&event_target_value(&event)) {
            desk.send.run(Event::LeverDragged(lever, libm::pow(2.0, place)));
        }
    };
    let range = element("INPUT")
        .attribute("type", "range")
        .attribute("min", "-2")
        .attribute("max", "2")
        .attribute("step", "0.05")
        .live_attribute("aria-valuetext", move || Some(value()))
        .value(read(|view| super::sketch::doublings(view.factor).to_string()))
        .on("input", dragged)
        .on("change", move |_| desk.send.run(Event::LeverLeft));
    element("LABEL")
        .class("lever")
        .child(element("SPAN").class("label").live_text(read(|view| view.label.to_owned())))
        .child(element("SPAN").class("value").live_text(value))
        .child(range)
        .into()
}

/// What stands behind the answer.
fn results_of(results: &Results, desk: Desk) -> AnyView {
    let Results { good_years, statistics, parts, charts, years, .. } = results;
    let mut views: Vec<AnyView> = Vec::new();
    views.extend(good_years.as_ref().map(|drawing| figure::picture(drawing, &words::report::GOOD_YEARS, None)));
    // The days want all the room that there is.
    let mut charts = charts.iter().cloned();
    views.extend(charts.next().map(|chart| figure::chart(chart, desk)));
    views.push(figure::pair(charts, desk));
    views.push(worded("H2", phrase!("Year by year", "Año por año")).into());
    views.push(figure::table_of(years.clone(), said!("Year by year", "Año por año")));
    let told =
        [(said!("What the parts did", "Lo que hicieron las partes"), parts), (said!("Figures", "Cifras"), statistics)];
    let told = told.into_iter().filter(|(_, lines)| !lines.is_empty());
    let told = told.map(|(title, lines)| element("DIV").child(worded("H2", title)).child(list("notes", lines)).into());
    views.push(element("DIV").class("pair").children(told).into());
    views.into_any()
}

/// How it is reckoned.
fn reckoning(shown: Shown, desk: Desk) -> AnyView {
    let start = choose(
        said!("Tanks on the first day", "Tanques el primer día"),
        shown,
        |view| &view.starts,
        desk,
        Event::StartChosen,
    );
    let rule = choose(words::sizing::RULE.text(), shown, |view| &view.rules, desk, Event::RuleChosen);
    element("DETAILS")
        .child(worded("SUMMARY", phrase!("How it is reckoned", "Cómo se calcula")))
        .child(next::trial_here(desk))
        .child(element("DIV").class("fields").child(start).child(rule))
        .child(worded("P", words::sizing::HOW).class("small"))
        .into()
}

/// Values to choose from, each with its words and whether it holds.
type Choices = [(f64, &'static str, bool)];

fn choose(label: &str, shown: Shown, read: fn(&SizingView) -> &Choices, desk: Desk, event: fn(f64) -> Event) -> Choose {
    let options = move || {
        shown.with(|view| {
            let choices = view.as_ref().map(read).unwrap_or_default();
            let words = choices.iter().map(|(_, words, _)| (*words).to_owned()).collect();
            (words, choices.iter().position(|(_, _, holds)| *holds).unwrap_or(0))
        })
    };
    let pick = move |at: usize| {
        let value = shown.with_untracked(|view| view.as_ref().map(read).and_then(|choices| choices.get(at).copied()));
        if let Some((value, _, _)) = value {
            desk.send.run(event(value));
        }
    };
    Choose { label: label.to_owned(), hint: None, options: Box::new(options), on_chosen: Box::new(pick) }
}
