//! The panel at the right: findings, sizes, forces.
//!
//! What a fitting makes of a door is asked from `flapwright_rules::mechanics` once for each state
//! of the job and kept ([`MechanicsView`]); everything here only shows it.

mod cache;
mod cursor;
mod force_plot;
mod forces_tab;
mod legend;
mod moment_plot;
mod size_chart;
mod sizes_tab;
mod strut_dialog;
mod summary;
mod verdict_card;
mod zones_bar;

use egui::{RichText, Ui};
use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{DoorId, OpeningId};
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::part::Subject;
use flapwright_rules::inspection::{BoxReport, DoorReport};
use flapwright_words::{Names, Speaker, places};

pub(crate) use self::cache::{Known, MechanicsView};
pub(crate) use self::strut_dialog::{StrutDialog, strut_ui};
use super::command::Command;
use super::findings::findings_ui;
use super::keys;
use super::tokens::{bold, toggle, tokens};
use super::view_state::ViewState;
use flapwright_session::Session;
use flapwright_session::action_table::ActionId;
use flapwright_session::document::Document;
use flapwright_session::selection::SideTab;

/// The door that the panel speaks of.
#[derive(Clone, Copy)]
struct AboutDoor<'a> {
    known: &'a Known,
    door: &'a DoorReport,
    /// Names of the card and size that it has.
    choice: Option<(&'a str, &'a str)>,
    unit: Unit,
    s: f64,
}

/// Shows the tabs and what the chosen one is for.
pub(crate) fn side_ui(
    ui: &mut Ui,
    session: &Session,
    view: &mut ViewState,
    queue: &mut Vec<Command>,
) {
    let (document, selection) = (session.document(), session.selection());
    let findings = document.open_count();
    ui.horizontal(|ui| {
        for (tab, command, words) in [
            (
                SideTab::Findings,
                ActionId::ShowFindings,
                format!("Findings ({findings})"),
            ),
            (SideTab::Sizes, ActionId::ShowSizes, "Sizes".to_owned()),
            (SideTab::Forces, ActionId::ShowForces, "Forces".to_owned()),
        ] {
            let keys = keys::words(ui.ctx(), command);
            let button = toggle(ui, selection.tab == tab, words)
                .accessible_name(command.title())
                .on_hover_text(format!("{} {keys}", command.tooltip()));
            if button.clicked() {
                queue.push(Command::Choose(command));
            }
        }
    });
    ui.separator();
    if selection.tab == SideTab::Findings {
        findings_ui(ui, session, view, queue);
        return;
    }
    let Some((wall_box, report)) = session.shown_wall_box().zip(session.shown_report()) else {
        ui.label("No box yet.");
        return;
    };
    let door = session.shown_door().and_then(|id| report.door(id));
    which(ui, document, report, (selection.opening, door));
    let Some(door) = door else {
        ui.label("This opening has no door.");
        return;
    };
    let Some(known) = view.mechanics.known(document, wall_box.id, door.id) else {
        ui.add(egui::Label::new(nothing_known(door, session.document().job().unit)).wrap());
        return;
    };
    let choice = chosen(document.job(), wall_box, door.id);
    let about = AboutDoor {
        known: &known,
        door,
        choice,
        unit: document.job().unit,
        s: selection.s,
    };
    if selection.tab == SideTab::Sizes {
        sizes_tab::sizes_ui(ui, about, &mut view.mechanics.other_count, queue);
    } else {
        forces_tab::forces_ui(ui, about, queue);
    }
}

/// Names of the card and size that a door has.
fn chosen<'a>(job: &'a Job, wall_box: &'a WallBox, door: DoorId) -> Option<(&'a str, &'a str)> {
    let choice = wall_box.door(door)?.fitting.as_ref()?;
    let card = job.card_by_id(choice.card)?;
    Some((card.name.as_str(), choice.size.as_str()))
}

/// Which door is spoken of.
fn which(
    ui: &mut Ui,
    document: &Document,
    report: &BoxReport,
    (opening, door): (Option<OpeningId>, Option<&DoorReport>),
) {
    let soft = tokens(ui).text_soft;
    ui.horizontal_wrapped(|ui| {
        let names = Names::of(document.job());
        ui.label(bold(places(&[Subject::Box(report.id)], &names.speaker())));
        if report.openings.len() > 1
            && let Some(opening) = opening
        {
            ui.label(format!("opening {}", report.number_of(opening)));
        }
        if let Some((door, kind)) = door.and_then(|door| Some((door, door.kind?))) {
            let text = format!("{}, {}", kind.words(), door.fitting);
            ui.label(RichText::new(text).color(soft));
        }
    });
}

/// Why there is nothing to show.
fn nothing_known(door: &DoorReport, unit: Unit) -> String {
    if door.kind.is_none() {
        return "This door has no fitting. Choose a card under Fitting and size at the left."
            .to_owned();
    }
    match door.motion() {
        Some(Err(error)) => {
            let why = Speaker::without_names(unit).say(error);
            format!("The door cannot be moved: {why}.")
        }
        _ if door.weighed.is_none() => {
            "A leaf of this door has no size, so it cannot be weighed.".to_owned()
        }
        _ => "The card of this door lacks the chosen size.".to_owned(),
    }
}

/// A reason or message as a sentence: a capital first and a full stop.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first: String = letters
        .next()
        .map(|letter| letter.to_uppercase().collect())
        .unwrap_or_default();
    let stop = if text.ends_with('.') { "" } else { "." };
    format!("{first}{}{stop}", letters.as_str())
}
