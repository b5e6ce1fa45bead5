//! Events change the model and list effects; one file for each workflow.

mod ahead;
mod diary;
mod house;
mod kept;
mod next;
mod rain;
mod sites;
mod sizing;
mod study;
mod upkeep;
mod uses;

use super::effect::Effect;
use super::event::{Event, Shift};
use super::model::{Model, Notice, Place};

/// What an event does to the model, and what is to be done outside. Pure: the same model and event give the same
/// result, and an event that makes no sense (for a part that is gone, say) changes nothing.
pub fn update(model: &mut Model, event: Event) -> Vec<Effect> {
    // What is under the finger is kept when it is let go.
    let dragged = matches!(event, Event::LeverDragged(..));
    let place = model.place;
    let notice = passing(model, &event);
    let stood = sites::trial_taken_back_to(model);
    let mut effects = happened(model, event);
    sites::follow_undo(model, stood);
    if !dragged {
        effects.extend(sizing::unsaved(model));
    }
    let goes_on = model.place != place || effects.iter().any(Effect::keeps);
    if !goes_on && model.notice.is_none() {
        model.notice = notice;
    }
    if model.place != place {
        effects.push(Effect::ShowPlace(model.place));
    }
    effects.extend(next::due(model));
    effects.extend(study::follow(model));
    effects
}

/// Takes away what is told, if it is to go with the next thing that is done; not for an event that is of notices itself.
fn passing(model: &mut Model, event: &Event) -> Option<Notice> {
    use Event::{FileRead, FormWanted, NoticeDismissed, Offline, UndoWanted, UpdateAccepted};
    if matches!(event, NoticeDismissed | Offline(_) | UndoWanted | UpdateAccepted) {
        return None;
    }
    let undo = model.undo.as_ref();
    let passes = model.notice.take_if(|notice| notice.is_passing(undo));
    // Where another file or entry is begun with, what was said of the one before would be taken for its own.
    passes.filter(|_| !matches!(event, FileRead(_) | FormWanted(_)))
}

fn open_place(model: &mut Model, place: Place) -> Vec<Effect> {
    model.place = place;
    model.form = None;
    model.sheet = None;
    model.sketching = false;
    match place {
        Place::Kept => vec![Effect::MeasureStorage],
        // What next belongs to it.
        Place::Report => next::judge_for_report(model),
        _ => Vec::new(),
    }
}

/// The way back from a form or a sheet leads to where it was opened.
fn call_place(model: &mut Model, place: Place) -> Vec<Effect> {
    if place == model.place {
        return Vec::new();
    }
    if model.form.take().is_some() | model.sheet.take().is_some() {
        return vec![Effect::ShowPlace(model.place)];
    }
    open_place(model, place)
}

fn happened(model: &mut Model, event: Event) -> Vec<Effect> {
    match event {
        Event::Started(today, opened) => kept::started(model, today, opened),
        Event::ReadAgain(opened) => kept::read_again(model, opened),
        Event::HalfReadAgain(site, half, lines) => diary::half_read_again(model, site, half, lines),
        Event::DayCame(today) => {
            model.today = today;
            Vec::new()
        }
        Event::Saved(result) => kept::saved(model, result),
        Event::TakenIn { sites, index, replace, result } => kept::taken_in(model, sites, index, replace, result),

        Event::PlaceOpened(place) => open_place(model, place),
        Event::PlaceCalled(place) => call_place(model, place),
        Event::NoticeDismissed => {
            model.notice = None;
            Vec::new()
        }
        Event::UndoWanted => sites::undo(model),

        Event::SketchWanted => {
            model.sketching = true;
            model.sheet = None;
            Vec::new()
        }
        Event::SketchLeft => {
            model.sketching = false;
            model.read_rain = None;
            Vec::new()
        }
        Event::SketchDrawn(sketch) => sites::sketch_drawn(model, &sketch),
        Event::DemoWanted => sites::demo(model),
        Event::SiteOpened(id) => sites::open(model, id),
        Event::SiteNamed(name) => sites::name(model, &name),
        Event::SiteDuplicated(id) => sites::duplicate(model, id),
        Event::SiteRemoved(id) => sites::remove(model, id),

        Event::PartOpened(part) => {
            model.sheet = Some(part);
            Vec::new()
        }
        Event::SheetClosed => {
            model.sheet = None;
            Vec::new()
        }
        Event::PartAdded(kind) => house::add(model, kind),
        Event::ValveTurned(part) => house::turn_valve(model, part),
        Event::TankWanted(beside) => house::add_tank(model, beside),
        Event::FreeTankWanted => house::add_free_tank(model),
        Event::PartDuplicated(part) => house::duplicate(model, part),
        Event::PartRemoved(part) => house::remove(model, part),
        Event::PartShifted(part, shift) => house::shift(model, part, shift),
        Event::NumberEntered(part, field, si) => house::edit(model, |system| system.set_number(part, field, si)),
        Event::PartNamed(part, name) => house::edit(model, |system| system.set_name(part, &name)),
        Event::TableEntered(part, rows) => house::edit(model, |system| system.set_table(part, rows)),
        Event::DetailEntered(of, detail, value) => house::edit(model, |system| system.details.set(of, detail, value)),
        Event::BarrierAdded(using, kind) => house::change_system(model, |system| system.add_barrier(using, kind)),
        Event::BarrierRemoved(barrier) => house::remove_barrier(model, barrier),
        Event::BarrierShifted(barrier, shift) => {
            house::change_system(model, |system| system.shift_barrier(barrier, shift == Shift::Down))
        }
        Event::ClimateWayChosen { temperatures } => uses::climate_way(model, temperatures),
        Event::ClimateEntered(value, number) => uses::climate_entered(model, value, number),
        Event::HabitEntered(value, number) => uses::habit_entered(model, value, number),
        Event::HabitFigureChosen(habit, place) => uses::habit_figure(model, habit, place),
        Event::HabitGoesTo(habit, to) => uses::habit_goes(model, habit, to),
        Event::HabitsPut => uses::put_habits(model),
        Event::ChoiceMade(part, field, choice) => house::choose(model, part, field, choice),

        Event::RainRead(bytes, source) => rain::read(model, bytes, source),
        Event::RainUnitChosen(unit) => rain::unit_chosen(model, unit),
        Event::RainKept => rain::keep(model),
        Event::RainDiscarded => {
            model.read_rain = None;
            Vec::new()
        }
        Event::NormalsEntered(normals) => rain::normals(model, normals),
        Event::RainRemoved => rain::remove(model),
        Event::GeneratedChosen(generated) => rain::generated(model, generated),
        Event::RainFactorsEntered(factors) => rain::factors(model, factors),
        Event::MissingDaysChosen(treatment) => {
            sizing::reckon_otherwise(model, |reckoning| reckoning.missing_days = treatment)
        }

        Event::FormWanted(subject) => diary::open(model, subject),
        Event::EntryOpened(id) => diary::open_entry(model, id),
        Event::FormLeft => {
            model.form = None;
            Vec::new()
        }
        Event::EntryWritten(draft, moment) => diary::write(model, draft, moment),
        Event::EntryWrittenAndNext(draft, moment) => diary::write_and_next(model, draft, moment),
        Event::DrySpellWritten(days, moment) => diary::write_dry_spell(model, days, moment),
        Event::JobsWritten(jobs, date, moment) => diary::write_jobs(model, &jobs, date, moment),
        Event::EntryRemoved(id, moment) => diary::remove(model, id, moment),
        Event::IntervalEntered(job, texts) => upkeep::interval(model, job, texts),
        Event::CalendarWanted(moment) => upkeep::calendar(model, moment),

        Event::LeverDragged(lever, factor) => sizing::drag(model, lever, factor),
        Event::LeverLeft => Vec::new(),
        Event::TrialKept => sizing::keep(model),
        Event::TrialDropped => {
            next::drop_trial(model);
            Vec::new()
        }
        Event::Next(event) => next::update(model, event),
        Event::Ahead(event) => {
            ahead::update(model, event);
            Vec::new()
        }
        Event::StartChosen(share) => sizing::start(model, share),
        Event::RuleChosen(inflow_first) => sizing::rule(model, inflow_first),

        Event::InquiryOpened(inquiry, open) => study::opened(model, inquiry, open),
        Event::InquiryWanted(inquiry) => study::wanted(model, inquiry),
        Event::InquiryCancelled(inquiry) => study::cancelled(model, inquiry),
        Event::StudyWentOn(ticket, progress) => study::went_on(model, ticket, progress),
        Event::Studied(ticket, findings) => study::studied(model, ticket, findings),
        Event::WantedChosen(wanted) => sites::change(model, |site| site.reckoning.wanted = wanted),

        Event::LanguageChosen(language) => kept::language(model, language),
        Event::UnitsChosen(set) => kept::units(model, crate::quantity::Units::customary(set)),
        Event::UnitChosen(kind, symbol) => {
            let units = model.units.clone().with(kind, symbol);
            kept::units(model, units)
        }

        Event::PictureWanted { title, caption, drawing, bitmap } => {
            kept::picture(model, (title, &caption), &drawing, bitmap)
        }
        Event::ExportWanted => kept::export(model),
        Event::SiteExportWanted => kept::export_site(model),
        Event::DiaryTableWanted => kept::diary_table(model),
        Event::ResultsTableWanted => kept::results_table(model),
        Event::StorageMeasured(used) => {
            model.used = used;
            Vec::new()
        }
        Event::Persists(persists) => {
            model.persists = Some(persists);
            Vec::new()
        }
        Event::FileRead(bytes) => kept::file_read(model, &bytes),
        Event::FileHousesTaken => kept::file_merged(model, true),
        Event::FileAccepted { replace } => kept::file_accepted(model, replace),
        Event::FileDiscarded => {
            model.read_file = None;
            Vec::new()
        }

        Event::Offline(works) => {
            // Bad news stays; good news doesn't push away what is being read.
            if !works {
                model.notice = Some(Notice::NoOffline);
            } else if model.notice.is_none() {
                model.notice = Some(Notice::WorksOffline);
            }
            Vec::new()
        }
        Event::UpdateReady => {
            model.notice = Some(Notice::UpdateReady);
            Vec::new()
        }
        Event::UpdateAccepted => {
            model.notice = None;
            vec![Effect::SwitchVersion]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::draft::Draft;
    use crate::quantity::Depth;
    use crate::site::diary::Told;
    use crate::site::part::PartId;

    /// A start with the demo house.
    pub(super) fn demo() -> Model {
        let mut model = Model { started: true, ..Model::default() };
        update(&mut model, Event::DemoWanted);
        model
    }

    fn writes(model: &mut Model, id: Option<crate::site::diary::EntryId>) {
        let told = Told::Rain(Depth::millimetres(3.0));
        let date = chrono::NaiveDate::from_ymd_opt(2026, 8, 30).unwrap_or_default();
        update(model, Event::EntryWritten(Draft { id, date, told, note: String::new() }, 1_788_000_000_000));
    }

    #[test]
    fn what_was_done_is_told_until_the_next_thing_is_done() {
        let mut model = demo();
        writes(&mut model, None);
        update(&mut model, Event::Saved(Ok(())));
        update(&mut model, Event::Offline(true));
        assert_eq!(model.notice, Some(Notice::EntryWritten), "still the last thing that was done");
        writes(&mut model, None);
        assert_eq!(model.notice, Some(Notice::EntryWritten), "told again");
        update(&mut model, Event::PlaceOpened(Place::Diary));
        assert_eq!(model.notice, None);
        update(&mut model, Event::Offline(true));
        writes(&mut model, None);
        update(&mut model, Event::NoticeDismissed);
        assert_eq!(model.notice, None, "neither comes back");
    }

    #[test]
    fn the_days_of_a_week_are_written_in_a_row() {
        let mut model = demo();
        let day = |day| chrono::NaiveDate::from_ymd_opt(2026, 8, day).unwrap_or_default();
        update(&mut model, Event::FormWanted(crate::site::diary::Subject::Rain));
        for date in [day(30), day(31)] {
            let told = Told::Rain(Depth::millimetres(3.0));
            let draft = Draft { id: None, date, told, note: String::new() };
            update(&mut model, Event::EntryWrittenAndNext(draft, 1_788_000_000_000));
            let form = model.form.as_ref().map(|form| (form.date, form.text.as_str()));
            assert_eq!(form, date.succ_opt().map(|next| (next, "")));
        }
        let written = model.site().map(|kept| kept.diary.entries().iter().map(|entry| entry.date).collect::<Vec<_>>());
        assert_eq!(written, Some(vec![day(30), day(31)]));
    }

    #[test]
    fn a_dry_spell_is_written_at_once_and_undone_at_once() {
        let mut model = demo();
        let day = |day| chrono::NaiveDate::from_ymd_opt(2026, 8, day).unwrap_or_default();
        let rain = |model: &Model| {
            let entries = model.site().map(|kept| kept.diary.entries().to_vec()).unwrap_or_default();
            entries.into_iter().map(|entry| (entry.date, entry.told)).collect::<Vec<_>>()
        };
        let effects = update(&mut model, Event::DrySpellWritten([day(10), day(12)], 1_788_000_000_000));
        assert!(effects.iter().filter(|effect| matches!(effect, Effect::SaveLine(..))).count() == 3);
        let dry = |day| (day, Told::Rain(Depth::millimetres(0.0)));
        assert_eq!(rain(&model), [dry(day(10)), dry(day(11)), dry(day(12))]);
        update(&mut model, Event::UndoWanted);
        assert_eq!(rain(&model), []);
    }

    #[test]
    fn what_alone_can_bring_something_back_stays() {
        let mut model = demo();
        writes(&mut model, None);
        let entry = model.site().and_then(|kept| kept.diary.entries().first()).map(|entry| entry.id);
        writes(&mut model, entry);
        update(&mut model, Event::PlaceOpened(Place::Diary));
        assert_eq!(model.notice, Some(Notice::EntryWritten), "the entry as it was is nowhere else");
        let part = model.site().map_or(PartId(0), |kept| kept.site.system.tanks[0].id);
        update(&mut model, Event::PartRemoved(part));
        update(&mut model, Event::PlaceOpened(Place::House));
        writes(&mut model, None);
        assert_eq!(model.notice, Some(Notice::EntryWritten), "the next undo takes its place");
        let part = model.site().map_or(PartId(0), |kept| kept.site.system.tanks[0].id);
        update(&mut model, Event::PartRemoved(part));
        update(&mut model, Event::PlaceOpened(Place::Rain));
        assert!(matches!(model.notice, Some(Notice::PartRemoved(_))), "{:?}", model.notice);
    }

    #[test]
    fn the_address_leads_to_the_place_and_the_way_back_out_of_a_form_to_where_it_was_opened() {
        let mut model = demo();
        for place in [Place::BAR.as_slice(), &[Place::Kept, Place::Report, Place::Method]].concat() {
            assert_eq!(Place::of_address(place.address()), Some(place));
            let shown = update(&mut model, Event::PlaceCalled(place)).contains(&Effect::ShowPlace(place));
            assert_eq!((model.place, shown), (place, place != Place::House), "the house was open");
        }
        assert_eq!((Place::of_address(""), Place::of_address("elsewhere")), (Some(Place::House), None));
        update(&mut model, Event::PlaceOpened(Place::Diary));
        update(&mut model, Event::FormWanted(crate::site::diary::Subject::Rain));
        assert_eq!(update(&mut model, Event::PlaceCalled(Place::House)), [Effect::ShowPlace(Place::Diary)]);
        assert_eq!((model.place, &model.form), (Place::Diary, &None));
    }
}
