//! Sites, units, files.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{element, focus_on, live, nothing, worded};
use super::field::text_field;
use super::file::FileButton;
use super::follow::derived;
use crate::app::event::Event;
use crate::app::view::kept::{self, KeptView, SiteRow};
use crate::language::{Language, spoken};
use crate::quantity::{Customary, Kind};
use crate::words;

/// Sites, units, files.
pub(crate) fn kept(desk: Desk) -> AnyView {
    let shown = derived(move || desk.model.with(kept::kept));
    let any = derived(move || shown.with(|view| !view.sites.is_empty()));
    let name = move || desk.model.with(|model| model.site().map(|kept| kept.site.name.clone()).unwrap_or_default());
    let renamed = move || {
        if any.get() {
            let on_entered = move |name| desk.send.run(Event::SiteNamed(name));
            text_field(said!("Name of the open site", "Nombre del sitio abierto"), name, on_entered)
        } else {
            nothing()
        }
    };
    let import = FileButton {
        label: said!("Import a file", "Importar un archivo"),
        detail: "",
        accept: ".json,application/json",
        class: "file button",
        event: |bytes, _| {
            // Once it is drawn: what waits to be answered, or what is wrong, stands at the top.
            request_animation_frame(to_what_was_read);
            Event::FileRead(bytes)
        },
    };
    let new = element("DIV")
        .class("row")
        .child(desk.button(phrase!("Sketch another house", "Bosquejar otra casa"), Event::SketchWanted))
        .child(desk.button(phrase!("Add the demo house", "Añadir la casa de ejemplo"), Event::DemoWanted));
    let files = element("DIV")
        .class("row")
        .child(
            desk.button(phrase!("Export everything", "Exportar todo"), Event::ExportWanted)
                .disabled(move || !any.get()),
        )
        .child(
            desk.button(phrase!("Export the open site", "Exportar el sitio abierto"), Event::SiteExportWanted)
                .disabled(move || !any.get()),
        )
        .child(import.view(desk))
        .child(
            desk.button(phrase!("Diary as CSV", "Diario en CSV"), Event::DiaryTableWanted).disabled(move || !any.get()),
        )
        .child(
            desk.button(phrase!("Results as CSV", "Resultados en CSV"), Event::ResultsTableWanted)
                .disabled(move || !any.get()),
        );
    let houses = element("DIV")
        .child(live(move || shown.with(|view| sites(view, desk))))
        .child(live(renamed))
        .child(new)
        .child(worded("H2", phrase!("Files", "Archivos")))
        .child(worded("P", format!("{} {}", words::kept::STAYS_HERE, words::kept::KEEP_A_FILE)).class("small"))
        .child(live(move || {
            shown.with(|view| {
                view.reminder.as_ref().map_or_else(nothing, |text| worded("P", text).class("caution").into())
            })
        }))
        .child(files)
        .child(element("P").class("small").live_text(move || shown.with(|view| view.room.clone())));
    let ways = element("DIV")
        .child(worded("H2", phrase!("Language", "Idioma")))
        .child(languages(desk))
        .child(worded("H2", phrase!("Units", "Unidades")))
        .child(live(move || shown.with(|view| units(view, desk))));
    element("SECTION")
        .class("kept")
        .child(worded("H1", phrase!("Sites", "Sitios")))
        .child(live(move || {
            shown.with(|view| view.file.as_ref().map_or_else(nothing, |holds| file(holds, view.differs, desk)))
        }))
        .child(element("DIV").class("columns even").child(houses).child(ways))
        .into()
}

/// Shows the page from its top, with the focus on the file that waits, if one does.
fn to_what_was_read() {
    super::next::to_the_top();
    focus_on(".kept .report");
}

/// A file that waits to be taken in.
fn file(holds: &[String], differs: bool, desk: Desk) -> AnyView {
    let buttons = element("DIV")
        .class("row")
        .child(desk.button(phrase!("Merge", "Combinar"), Event::FileAccepted { replace: false }).class("main"))
        .children(differs.then(|| desk.button(words::kept::WITH_HOUSES, Event::FileHousesTaken).into()))
        .child(
            desk.button(phrase!("Replace all", "Reemplazar todo"), Event::FileAccepted { replace: true }).class("away"),
        )
        .child(desk.button(phrase!("Leave it", "Cancelar"), Event::FileDiscarded));
    element("DIV")
        .class("report")
        .attribute("role", "group")
        .attribute("tabindex", "-1")
        .attribute("aria-label", phrase!("Import", "Importación"))
        .child(super::element::list("notes", holds.to_vec()))
        .child(buttons)
        .into()
}

fn sites(view: &KeptView, desk: Desk) -> AnyView {
    element("UL").class("sites").children(view.sites.iter().map(|row| site(row, desk))).into()
}

fn site(row: &SiteRow, desk: Desk) -> AnyView {
    let SiteRow { id, name, detail, open } = row;
    let labelled = |text: &str| format!("{text} {name}");
    let duplicate = said!("Duplicate", "Duplicar");
    let duplicate =
        desk.button(duplicate, Event::SiteDuplicated(*id)).class("plain").attribute("aria-label", labelled(duplicate));
    let remove = said!("Remove", "Quitar");
    let removes = element("DETAILS")
        .child(worded("SUMMARY", remove).attribute("aria-label", labelled(remove)))
        .child(worded("P", words::kept::WHAT_GOES))
        .child(desk.button(labelled(remove), Event::SiteRemoved(*id)).class("away"));
    let title = desk.sends(Event::SiteOpened(*id)).class("part-name").child(worded("STRONG", name));
    let title = if *open {
        title
            .attribute("aria-current", "true")
            .child(worded("SPAN", say!("{detail}; open", "{detail}; abierto", detail)))
    } else {
        title.child(worded("SPAN", detail))
    };
    element("LI").child(title).child(duplicate).child(removes).into()
}

/// The languages, the one that is spoken pressed.
pub(super) fn languages(desk: Desk) -> AnyView {
    let languages = Language::ALL.map(|language| {
        // All of the page is drawn anew.
        let follow = || request_animation_frame(|| focus_on("button[lang][aria-pressed=true]"));
        desk.button_then(language.name(), Event::LanguageChosen(language), follow)
            .attribute("lang", language.tag())
            .attribute("aria-pressed", (language == spoken()).to_string())
            .into()
    });
    let row = element("DIV").class("row").attribute("role", "group");
    row.attribute("aria-label", phrase!("Language", "Idioma")).children(languages).into()
}

/// The sets of units for a person who has none of the settings before them.
pub(super) fn sets(desk: Desk) -> AnyView {
    live(move || desk.model.with(|model| unit_sets(&kept::unit_sets(&model.units), desk)))
}

/// The sets of units, the one that holds pressed.
fn unit_sets(sets: &[(Customary, &'static str, bool)], desk: Desk) -> AnyView {
    let sets = sets.iter().map(|(set, name, holds)| {
        desk.button(*name, Event::UnitsChosen(*set)).attribute("aria-pressed", holds.to_string()).into()
    });
    let row = element("DIV")
        .class("row")
        .attribute("role", "group")
        .attribute("aria-label", phrase!("Sets of units", "Juegos de unidades"));
    row.children(sets).into()
}

fn units(view: &KeptView, desk: Desk) -> AnyView {
    let kinds = view.kinds.iter().map(|(kind, name, wanted)| unit(*kind, name, wanted, desk));
    let views: Vec<AnyView> =
        vec![unit_sets(&view.sets, desk), element("DIV").class("fields units").children(kinds).into()];
    views.into_any()
}

fn unit(kind: Kind, name: &str, wanted: &str, desk: Desk) -> AnyView {
    let chosen = kind.units().iter().position(|unit| unit.symbol == wanted).unwrap_or(0);
    let words: Vec<String> = kind.units().iter().map(|unit| unit.sign().to_owned()).collect();
    let pick = move |at: usize| {
        if let Some(unit) = kind.units().get(at) {
            desk.send.run(Event::UnitChosen(kind, unit.symbol));
        }
    };
    Choose {
        label: name.to_owned(),
        hint: None,
        options: Box::new(move || (words.clone(), chosen)),
        on_chosen: Box::new(pick),
    }
    .into()
}
