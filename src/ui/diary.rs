//! The diary: what is to be written, the charts, the entries.

use leptos::prelude::*;

use super::choose::pressed;
use super::element::{element, live, nothing, worded};
use super::entry::date_input;
use super::follow::Held;
use super::{Desk, figure};
use crate::app::event::Event;
use crate::app::view::diary::{self, DayView, DiaryView, EntryRow, Span};
use crate::site::diary::Subject;
use crate::words;

/// Days listed at first, and how many more at each wish.
const LISTED: usize = 20;

/// The diary.
pub(crate) fn diary(desk: Desk) -> AnyView {
    let first = desk.case.with_untracked(|case| {
        let spans = case.site.as_ref().map(|site| diary::spans(site, case.today)).unwrap_or_default();
        spans.first().map_or((case.today, case.today), |(_, span)| *span)
    });
    let span = Held::new(first);
    let listed = Held::new(LISTED);
    let shown = live(move || {
        desk.case.with(|case| {
            let Some(site) = &case.site else { return nothing() };
            drawn(diary::diary(site, &case.units, span.get(), listed.get(), case.width), listed, desk)
        })
    });
    element("SECTION")
        .class("diary")
        .child(worded("H1", phrase!("Diary", "Diario")))
        .child(writes(desk, &Subject::ALL))
        .child(spans(desk, span, listed))
        .child(shown)
        .into()
}

/// Buttons that open forms.
pub(super) fn writes(desk: Desk, subjects: &[Subject]) -> AnyView {
    let button = |subject: &Subject| {
        let main = matches!(subject, Subject::Level | Subject::Rain);
        let text = words::diary::write(*subject);
        desk.button(text, Event::FormWanted(*subject)).class(if main { "main" } else { "" }).into()
    };
    let row = element("DIV").class("row").attribute("role", "group").attribute("aria-label", words::diary::WRITE_GROUP);
    row.children(subjects.iter().map(button)).into()
}

/// The spans that can be looked at.
fn spans(desk: Desk, span: Held<Span>, listed: Held<usize>) -> AnyView {
    let choose = move |wanted: Span| {
        listed.set(LISTED);
        span.set(wanted);
    };
    let offered = live(move || {
        let spans = desk.case.with(|case| case.site.as_ref().map(|site| diary::spans(site, case.today)));
        let spans = spans
            .unwrap_or_default()
            .into_iter()
            .map(|(text, offered)| pressed(text, move || span.get() == offered, move || choose(offered)).into());
        element("DIV")
            .class("row")
            .attribute("role", "group")
            .attribute("aria-label", phrase!("Days shown", "Días que se muestran"))
            .children(spans)
            .into()
    });
    let from = date_input(
        said!("From", "Desde"),
        move || span.get().0,
        move |date| choose((date, span.get_untracked().1.max(date))),
    );
    let to = date_input(
        said!("To", "Hasta"),
        move || span.get().1,
        move |date| choose((span.get_untracked().0.min(date), date)),
    );
    let ends = element("DIV").class("row days").child(from).child(worded("SPAN", phrase!("to", "a"))).child(to);
    element("DIV").class("spans").child(offered).child(ends).into()
}

fn drawn(view: DiaryView, listed: Held<usize>, desk: Desk) -> AnyView {
    let DiaryView { empty, charts, days, further } = view;
    let more = (further > 0).then(|| {
        worded("BUTTON", words::diary::further(further))
            .attribute("type", "button")
            .on("click", move |_| listed.update(|listed| *listed += 5 * LISTED))
            .into()
    });
    element("DIV")
        .children(empty.map(|empty| worded("P", empty).into()))
        .children(charts.into_iter().map(move |chart| figure::chart(chart, desk)))
        .children(days.into_iter().map(|day| of_day(day, desk)))
        .children(more)
        .into()
}

fn of_day(day: DayView, desk: Desk) -> AnyView {
    let entries = day.entries.into_iter().map(|entry| row(entry, &day.title, desk));
    element("DIV").class("of-day").child(worded("H3", day.title.clone())).child(element("UL").children(entries)).into()
}

fn row(entry: EntryRow, day: &str, desk: Desk) -> AnyView {
    let EntryRow { id, text, note } = entry;
    let remove = worded("BUTTON", "×")
        .attribute("type", "button")
        .on("click", move |_| desk.send.run(Event::EntryRemoved(id, (desk.moment)())))
        .class("plain square")
        .attribute("aria-label", say!("Take out: {text}, {day}", "Borrar: {text}, {day}", text, day));
    let open = desk.sends(Event::EntryOpened(id)).class("part-name").child(worded("STRONG", text));
    let open = if note.is_empty() { open } else { open.child(worded("SPAN", note)) };
    element("LI").child(open).child(remove).into()
}
