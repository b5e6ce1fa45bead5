//! The checks on the sheet of a part: verdict, what to do; behind a disclosure what went in, what came out, and why.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{element, live, nothing, worded};
use super::field::QuantityField;
use super::follow::derived;
use crate::app::event::Event;
use crate::app::view::checks::{CheckView, Entry, InputView, checked_again, checks};
use crate::site::part::PartId;

/// The checks of a part, drawn again when anything changes: what asks for attention first, the rest folded by subject.
pub(crate) fn of_part(part: PartId, desk: Desk) -> AnyView {
    let grounds =
        derived(move || desk.case.with(|case| case.shown().0.map(|kept| (kept.site.clone(), kept.rain.clone()))));
    // Runs the whole balance: once for each change of what it follows from, whatever else is drawn anew.
    let again = derived(move || {
        // Read, not only tracked: what nobody reads is never worked out, and so never tells of a change.
        if grounds.with(Option::is_none) {
            return Vec::new();
        }
        desk.case.with_untracked(|case| {
            let (site, outcome) = case.shown();
            site.map(|site| checked_again(site, part, outcome)).unwrap_or_default()
        })
    });
    let views = derived(move || {
        desk.case.with(|case| {
            let (Some(site), outcome) = case.shown() else { return Vec::new() };
            again.with(|again| checks(site, part, outcome, again, case.today, &case.units))
        })
    });
    // What stands first when the sheet opens stays there, so that a field that is being typed in stays where it is.
    let first = StoredValue::new(None::<Vec<&'static str>>);
    live(move || {
        let mut views = views.get();
        if views.is_empty() {
            return nothing();
        }
        let pressing = || {
            let mut pressing: Vec<&CheckView> = views.iter().filter(|view| view.attention).collect();
            // What fails on sizes that were entered comes before what fails on usual ones.
            pressing.sort_by_key(|view| view.unsure);
            pressing.into_iter().map(|view| view.title).collect()
        };
        let titles: Vec<&'static str> = first.get_value().unwrap_or_else(pressing);
        first.set_value(Some(titles.clone()));
        let rest = views.extract_if(.., |view| !titles.contains(&view.title)).collect::<Vec<_>>();
        views.sort_by_key(|view| titles.iter().position(|title| *title == view.title));
        let mut drawn: Vec<AnyView> = views.into_iter().map(|view| check(view, desk)).collect();
        let mut groups: Vec<&'static str> = Vec::new();
        for view in &rest {
            if !groups.contains(&view.group) {
                groups.push(view.group);
            }
        }
        for group in groups {
            drawn.push(worded("H4", group).class("group").into());
            drawn.extend(rest.iter().filter(|view| view.group == group).map(|view| folded(view.clone(), desk)));
        }
        element("SECTION")
            .class("checks")
            .child(worded("H3", phrase!("Checks", "Comprobaciones")))
            .children(drawn)
            .into()
    })
}

/// A check in one line that opens.
fn folded(view: CheckView, desk: Desk) -> AnyView {
    let summary = element("SUMMARY")
        .child(worded("H5", view.title))
        .child(element("SPAN").child(worded("STRONG", view.word)).text(": ").text(view.short.clone()));
    let class = format!("{} folded", view.class);
    let sentence = worded("P", view.sentence.clone()).class("verdict");
    let to_do = worded("P", view.to_do.clone()).class("to-do");
    let caution = worded("P", view.caution).class("small caution");
    element("DETAILS")
        .attribute("class", class)
        .child(summary)
        .child(sentence)
        .child(to_do)
        .child(caution)
        .children(behind(view, desk))
        .into()
}

/// A check with what it comes to in full.
pub(crate) fn check(mut view: CheckView, desk: Desk) -> AnyView {
    let (title, word, caution, class) = (view.title, view.word, view.caution, view.class);
    let (sentence, to_do) = (std::mem::take(&mut view.sentence), std::mem::take(&mut view.to_do));
    let more = element("DETAILS")
        .child(
            worded("SUMMARY", phrase!("How it is reckoned", "Cómo se calcula"))
                .attribute("aria-label", say!("How it is reckoned: {title}", "Cómo se calcula: {title}", title)),
        )
        .children(behind(view, desk));
    element("DIV")
        .class(class)
        .child(worded("H4", title))
        .child(element("P").class("verdict").child(worded("STRONG", word)).text(": ").text(sentence))
        // Drawn even where they are empty: what is drawn in the same place stays open and keeps the focus.
        .child(worded("P", to_do).class("to-do"))
        .child(worded("P", caution).class("small caution"))
        .child(more)
        .into()
}

/// What went in, what came out, and why.
fn behind(view: CheckView, desk: Desk) -> Vec<AnyView> {
    let lines = view.figures.into_iter().map(|(label, figure)| line(&label, &figure));
    let inputs = view.inputs.into_iter().map(|view| input(view, desk));
    let mut drawn = vec![
        element("DIV").class("fields").children(inputs).into(),
        element("DL").class("figures").children(lines).into(),
    ];
    drawn.extend(
        view.behind
            .into_iter()
            .map(|(head, text)| element("P").class("small").child(worded("STRONG", head)).text(": ").text(text).into()),
    );
    drawn
}

fn line(label: &str, figure: &str) -> AnyView {
    element("DIV").child(worded("DT", label)).child(worded("DD", figure)).into()
}

fn input(view: InputView, desk: Desk) -> AnyView {
    let InputView { label, text, entry } = view;
    let Some(Entry { of, detail, kind, range, options: (options, chosen), usual }) = entry else {
        return element("DIV").class("field known").child(worded("SPAN", label).class("label")).text(text).into();
    };
    let field = if options.is_empty() {
        QuantityField {
            label: label.clone(),
            hint: usual,
            text: Box::new(move || text.clone()),
            kind,
            range,
            on_entered: Box::new(move |si| desk.send.run(Event::DetailEntered(of, detail, Some(si)))),
        }
        .view(desk)
    } else {
        Choose {
            label: label.clone(),
            hint: usual,
            options: Box::new(move || (options.iter().map(|option| (*option).to_owned()).collect(), chosen)),
            #[expect(clippy::cast_precision_loss, reason = "a handful of options")]
            on_chosen: Box::new(move |at| desk.send.run(Event::DetailEntered(of, detail, Some(at as f64)))),
        }
        .into()
    };
    let back = usual.is_none().then(|| {
        desk.button(phrase!("Back to the usual value", "Volver al valor usual"), Event::DetailEntered(of, detail, None))
            .class("plain small")
            .attribute("aria-label", say!("Back to the usual value: {label}", "Volver al valor usual: {label}", label))
            .into()
    });
    element("DIV").child(field).children(back).into()
}
