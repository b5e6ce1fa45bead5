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
    let mut effects = happened(model, event);
    if !dragged {
        effects.extend(sizing::unsaved(model));
    }
    effects.extend(next::due(model));
    effects.extend(study::follow(model));
    effects
}

fn happened(model: &mut Model, event: Event) -> Vec<Effect> {
    match event {
        Event::Started(today, opened) => kept::started(model, today, opened),
        Event::ReadAgain(opened) => kept::read_again(model, opened),
        Event::HalfReadAgain(site, half, entries) => diary::half_read_again(model, site, half, entries),
        Event::DayCame(today) => {
            model.today = today;
            Vec::new()
        }
        Event::Saved(result) => kept::saved(model, result),
        Event::TakenIn { sites, index, replace, result } => kept::taken_in(model, sites, index, replace, result),

        Event::PlaceOpened(place) => {
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
        Event::ChoiceMade(part, field, choice) => house::edit(model, |system| system.choose(part, field, choice)),

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
        Event::JobsWritten(jobs, date, moment) => diary::write_jobs(model, &jobs, date, moment),
        Event::EntryRemoved(id) => diary::remove(model, id),
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
