//! The sheet of one part.

use std::mem::{Discriminant, discriminant};

use super::follow::{Derived, Held, derived, renewed, whenever};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::choose::Choose;
use super::element::{element, focus_on, list, live, nothing, worded};
use super::field::{QuantityField, labelled, text_field};
use super::notice::notices;
use super::{Desk, climate, habits, next};
use crate::app::event::{Event, Shift};
use crate::app::view::sheet::{self, Control, Extra, FieldView, SheetView, table_rows};
use crate::site::part::{Field, PartId};
use crate::words;

/// The sheet as it is shown.
type Shown = Derived<Option<SheetView>>;

/// What a sheet is made of: as long as it stays, so do all fields, and typing on isn't disturbed.
#[derive(PartialEq)]
struct Make {
    part: PartId,
    extra: Option<Extra>,
    fields: Vec<(Field, String, Discriminant<Control>)>,
}

impl Make {
    fn of(view: &SheetView) -> Self {
        let field = |view: &FieldView| (view.field, view.label.clone(), discriminant(&view.control));
        Self { part: view.id, extra: view.extra, fields: view.fields.iter().map(field).collect() }
    }
}

/// The sheet, over the place; nothing while no part is open.
pub(crate) fn sheet(desk: Desk) -> AnyView {
    let part = derived(move || desk.model.with(|model| model.sheet));
    // Seldom the same after a change of the case; comparing costs more than it saves.
    let shown: Shown = renewed(move || {
        let part = part.get()?;
        desk.case.with(|case| {
            let (site, outcome) = case.shown();
            sheet::sheet(site?, part, outcome, &case.units, case.today)
        })
    });
    // The browser's own modal dialog: it keeps the focus inside, gives it back, and closes on Escape.
    whenever(move |_| {
        let wanted = shown.with(Option::is_some);
        let Ok(Some(dialog)) = document().query_selector("dialog.sheet") else { return };
        let dialog: web_sys::HtmlDialogElement = dialog.unchecked_into();
        if wanted && !dialog.open() {
            // Fails only for a dialog that is not on the page or open already.
            let _ = dialog.show_modal();
            dialog.set_scroll_top(0);
        } else if !wanted && dialog.open() {
            dialog.close();
        }
    });
    let make = derived(move || shown.with(|view| view.as_ref().map(Make::of)));
    let content = move || {
        // Drawn anew when the make changes, not with every value.
        make.with(|_| {
            shown.with_untracked(|view| view.as_ref().map_or_else(nothing, |view| content(view, shown, desk)))
        })
    };
    // Told a little after it closed: another sheet may be open by then, and stays.
    let closed = move |event| {
        let open = event_target::<web_sys::HtmlDialogElement>(&event).open();
        if !open && desk.model.with_untracked(|model| model.sheet.is_some()) {
            desk.send.run(Event::SheetClosed);
        }
    };
    // What is half typed is taken first: its change would open the dialog again that the browser has closed.
    let cancelled = move |event: web_sys::Event| {
        if event.target() != event.current_target() {
            return;
        }
        event.prevent_default();
        if let Some(Ok(field)) = document().active_element().map(JsCast::dyn_into::<web_sys::HtmlElement>) {
            let _ = field.blur();
        }
        desk.send.run(Event::SheetClosed);
    };
    element("DIALOG")
        .class("sheet")
        .attribute("aria-labelledby", "sheet-name")
        .on("close", closed)
        .on("cancel", cancelled)
        .child(notices(true, desk))
        .child(live(content))
        .into()
}

fn content(view: &SheetView, shown: Shown, desk: Desk) -> AnyView {
    let id = view.id;
    let name = move || shown.with(|view| view.as_ref().map(|view| view.name.clone()).unwrap_or_default());
    let kind = words::parts::one(view.kind);
    let title = move || {
        Some(name()).filter(|name| name != kind).map_or_else(|| kind.to_owned(), |name| format!("{kind}: {name}"))
    };
    let lines = |class, read: fn(&SheetView) -> &[String]| {
        live(move || shown.with(|view| list(class, view.as_ref().map(read).unwrap_or_default()).into()))
    };
    let stays =
        |read: fn((bool, bool)) -> bool| move || !shown.with(|view| view.as_ref().is_some_and(|view| read(view.moves)));
    let up = desk
        .button(phrase!("Earlier in the list", "Antes en la lista"), Event::PartShifted(id, Shift::Up))
        .disabled(stays(|(up, _)| up));
    let down = desk
        .button(phrase!("Later in the list", "Después en la lista"), Event::PartShifted(id, Shift::Down))
        .disabled(stays(|(_, down)| down));
    let head = element("DIV")
        .class("sheet-head")
        .child(element("H2").attribute("id", "sheet-name").attribute("tabindex", "-1").live_text(title))
        .child(desk.button(phrase!("Close", "Cerrar"), Event::SheetClosed).class("plain"));
    let fields = element("DIV")
        .class("fields")
        .child(text_field(said!("Name", "Nombre"), name, move |name| desk.send.run(Event::PartNamed(id, name))))
        .children(view.fields.iter().map(|view| field(id, view, shown, desk)));
    let buttons = element("DIV")
        .class("row")
        .child(desk.button_then(phrase!("Duplicate", "Duplicar"), Event::PartDuplicated(id), to_sheets_top))
        .child(up)
        .child(down)
        // What brings it back stands at the top.
        .child(
            desk.button_then(phrase!("Remove", "Quitar"), Event::PartRemoved(id), super::next::to_the_top)
                .class("away"),
        );
    let extra = match view.extra {
        Some(Extra::Climate) => climate::folded(desk),
        Some(Extra::Habits) => habits::folded(desk),
        None => nothing(),
    };
    vec![
        head.into(),
        next::trial_here(desk),
        // Told, too, where it has scrolled away from the field that was changed.
        element("DIV").attribute("role", "status").child(lines("findings", |view| &view.findings)).into(),
        lines("state", |view| &view.state),
        fields.into(),
        // Beside what is decided, and never behind anything that folds.
        list("cautions", view.cautions.iter().copied()).into(),
        worded("P", words::cautions::WHO_DECIDES).class("small").into(),
        extra,
        super::water::of_tap(id, desk),
        super::upkeep::of_part(id, desk),
        super::checks::of_part(id, desk),
        buttons.into(),
    ]
    .into_any()
}

/// Shows the sheet from its top, once another part is on it.
fn to_sheets_top() {
    request_animation_frame(|| {
        if let Ok(Some(sheet)) = document().query_selector("dialog.sheet") {
            sheet.set_scroll_top(0);
        }
        focus_on("#sheet-name");
    });
}

/// The control of a field as it is now.
fn control_of(view: Option<&SheetView>, field: Field) -> Option<&Control> {
    view?.fields.iter().find(|view| view.field == field).map(|view| &view.control)
}

fn field(part: PartId, view: &FieldView, shown: Shown, desk: Desk) -> AnyView {
    let FieldView { field, label, hint, control } = view;
    let (field, label, hint) = (*field, label.clone(), *hint);
    let text = move || {
        shown.with(|view| match control_of(view.as_ref(), field) {
            Some(Control::Number { text, .. } | Control::Table { text }) => text.clone(),
            _ => String::new(),
        })
    };
    match control {
        Control::Number { kind, range, .. } => QuantityField {
            label,
            hint,
            text: Box::new(text),
            kind: *kind,
            range: *range,
            on_entered: Box::new(move |si| desk.send.run(Event::NumberEntered(part, field, si))),
        }
        .view(desk),
        Control::Choice { .. } => choose(part, field, label, hint, shown, desk).into(),
        Control::Table { .. } => table_field(part, label, hint, text, desk),
    }
}

fn choose(part: PartId, field: Field, label: String, hint: Option<&'static str>, shown: Shown, desk: Desk) -> Choose {
    let options = move || {
        shown.with(|view| match control_of(view.as_ref(), field) {
            Some(Control::Choice { options, chosen }) => {
                (options.iter().map(|(_, words)| words.clone()).collect(), *chosen)
            }
            _ => (Vec::new(), 0),
        })
    };
    let pick = move |at: usize| {
        let choice = shown.with_untracked(|view| match control_of(view.as_ref(), field) {
            Some(Control::Choice { options, .. }) => options.get(at).map(|(choice, _)| *choice),
            _ => None,
        });
        if let Some(choice) = choice {
            desk.send.run(Event::ChoiceMade(part, field, choice));
        }
    };
    Choose { label, hint, options: Box::new(options), on_chosen: Box::new(pick) }
}

/// Depths and volumes, a row a line.
fn table_field(
    part: PartId,
    label: String,
    hint: Option<&'static str>,
    text: impl Fn() -> String + Send + 'static,
    desk: Desk,
) -> AnyView {
    let draft = Held::new(None::<String>);
    let read = move || {
        let text = draft.get()?;
        Some(desk.model.with(|model| table_rows(&text, &model.units)))
    };
    let wrong = move || match read() {
        Some(Err((line, text))) => words::errors::table_row(line, &text),
        _ => String::new(),
    };
    let done = move |_| {
        if let Some(Ok(rows)) = read() {
            desk.send.run(Event::TableEntered(part, rows));
            draft.set(None);
        }
    };
    let rows = element("TEXTAREA")
        .attribute("rows", "5")
        .value(move || draft.get().unwrap_or_else(&text))
        .on("input", move |event| draft.set(Some(event_target_value(&event))))
        .on("change", done);
    labelled(label, move || !wrong().is_empty(), rows, wrong)
        .children(hint.map(|hint| worded("SPAN", hint).class("hint").into()))
        .into()
}
