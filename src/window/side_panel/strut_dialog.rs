//! Where the anchors of a gas strut may be, and where they are easiest on the hand.

use egui::{Button, Context, Grid, Label, ProgressBar, RichText, Ui};
use flapwright_model::card::Span;
use flapwright_model::id::CardId;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::measure::{Measure, length};
use flapwright_motion::strut_mounts::{MountAnswer, MountError, MountLimits, StrutOnHand};
use flapwright_rules::strut_places::StrutPlaces;

use super::sentence;
use crate::window::command::Command;
use crate::window::dialogs::modal_of;
use crate::window::fields::number::{Number, number};
use crate::window::fields::quantity::Quantity;
use crate::window::fields::{Fields, field_id};
use crate::window::tokens::{bold, tokens};
use flapwright_session::action::Action;
use flapwright_session::outcome::Found;

/// Width of the question.
const WIDTH: f32 = 760.0;
/// Width of the word before a limit.
const WORD: f32 = 34.0;

/// The question and what was found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct StrutDialog {
    /// The card.
    card_id: CardId,
    /// Its name.
    card: String,
    /// Its struts.
    struts: Vec<StrutOnHand>,
    /// Where the anchors may be.
    pub(crate) limits: MountLimits,
    /// Cold and hot, °C, between which the strut must work.
    cold_and_hot: [f64; 2],
    /// What was found.
    pub(crate) found: Option<Found>,
}

impl StrutDialog {
    /// The question with limits from box and door.
    pub(crate) fn new(places: StrutPlaces, job: &Job) -> Self {
        let card = job.card_by_id(places.card);
        Self {
            card_id: places.card,
            card: card.map_or_else(String::new, |card| card.name.clone()),
            struts: places.struts,
            limits: places.limits,
            cold_and_hot: places.cold_and_hot,
            found: None,
        }
    }
}

/// Shows the question.
pub(crate) fn strut_ui(
    ctx: &Context,
    dialog: &mut StrutDialog,
    unit: Unit,
    (fields, progress): (&mut Fields, Option<f32>),
    queue: &mut Vec<Command>,
) {
    let (done, gone) = modal_of(ctx, "strut", WIDTH, |ui| {
        ui.set_min_width(WIDTH);
        ui.label(bold("Place the strut").size(15.0));
        let [cold, hot] = dialog.cold_and_hot;
        let intro = format!(
            "Looks for anchors with the smallest hand force that still hold the heaviest door open \
             at {cold:.0} °C and let the lightest stay shut at {hot:.0} °C (limits of the job)."
        );
        ui.add(Label::new(intro).wrap());
        ui.add_space(6.0);
        ui.add_enabled_ui(progress.is_none(), |ui| {
            limits_ui(ui, &mut dialog.limits, unit, fields);
        });
        ui.add_space(6.0);
        table_ui(ui, dialog, unit, queue);
        told_ui(ui, dialog);
        ui.add_space(8.0);
        buttons_ui(ui, dialog, progress, queue)
    });
    if done || gone {
        queue.push(Command::CloseDialog);
    }
}

/// The limits of both anchors.
fn limits_ui(ui: &mut Ui, limits: &mut MountLimits, unit: Unit, fields: &mut Fields) {
    let rows: [(&str, &str, &str, &mut Span); 4] = [
        (
            "box_down",
            "In the box, down",
            "Below the underside of the panel above the opening; clear of the shelf.",
            &mut limits.box_down,
        ),
        (
            "box_back",
            "In the box, back",
            "Behind the front datum of the card; clear of front and back.",
            &mut limits.box_back,
        ),
        (
            "door_down",
            "On the door, down",
            "Below the same underside, door closed; clear of the door's edges.",
            &mut limits.door_down,
        ),
        (
            "door_back",
            "On the door, back",
            "Behind the door's back face: how tall the bracket is.",
            &mut limits.door_back,
        ),
    ];
    ui.label(bold("Where the anchors may be"));
    Grid::new("limits").num_columns(3).show(ui, |ui| {
        for (path, words, meaning, span) in rows {
            ui.label(words).on_hover_text(meaning);
            for (end, value) in [("least", &mut span.min), ("most", &mut span.max)] {
                let this = Number {
                    id: field_id(("strut", path, end)),
                    name: &format!("{words}, {end}"),
                    word: end,
                    meaning: &|| meaning.to_owned(),
                    quantity: Quantity::Length(unit),
                    word_width: WORD,
                };
                if let Some(change) = number(ui, fields, this, *value) {
                    *value = change.value;
                    fields.accept(change.field);
                }
            }
            ui.end_row();
        }
    });
}

/// The struts of the card, and what each can do once it is known.
fn table_ui(ui: &mut Ui, dialog: &StrutDialog, unit: Unit, queue: &mut Vec<Command>) {
    let answers: &[MountAnswer] = match &dialog.found {
        Some(Ok(answers)) => answers,
        _ => &[],
    };
    ui.label(bold(format!("Struts of {}", dialog.card)));
    // With answers it is another table: widths that were learnt without them would not fit.
    Grid::new(("struts", answers.is_empty()))
        .striped(true)
        .spacing([14.0, 4.0])
        .show(ui, |ui| {
            let mut heads = vec!["size", "force", "stroke", "extended"];
            if !answers.is_empty() {
                heads.extend([
                    "box: down, back",
                    "door: down, back",
                    "largest hand force",
                    "holds open by",
                    "keeps shut by",
                    "",
                ]);
            }
            for head in heads {
                ui.label(RichText::new(head).small().color(tokens(ui).text_soft));
            }
            ui.end_row();
            let found = answers.iter().filter_map(|answer| {
                let strut = dialog.struts.iter().find(|it| it.name == answer.name)?;
                Some((strut, Some(answer)))
            });
            let without = dialog
                .struts
                .iter()
                .filter(|strut| !answers.iter().any(|answer| answer.name == strut.name))
                .map(|strut| (strut, None));
            for (strut, answer) in found.chain(without) {
                ui.label(&strut.name);
                ui.label(Measure::Force.text(strut.strut.force, unit));
                ui.label(length(strut.strut.stroke, unit));
                ui.label(length(strut.strut.extended, unit));
                match answer {
                    Some(answer) => answer_ui(ui, dialog, answer, unit, queue),
                    None if !answers.is_empty() => {
                        ui.label(RichText::new("no place found").color(tokens(ui).stop));
                    }
                    None => {}
                }
                ui.end_row();
            }
        });
}

fn answer_ui(
    ui: &mut Ui,
    dialog: &StrutDialog,
    answer: &MountAnswer,
    unit: Unit,
    queue: &mut Vec<Command>,
) {
    let strut = &answer.strut;
    for (down, back) in [
        (strut.box_down, strut.box_back),
        (strut.door_down, strut.door_back),
    ] {
        ui.label(format!("{}, {}", length(down, unit), length(back, unit)));
    }
    ui.label(Measure::Force.text(answer.largest_force, unit));
    ui.label(Measure::Moment.text(answer.holds_by, unit));
    ui.label(Measure::Moment.text(answer.shut_by, unit));
    let button = ui
        .add(Button::new("Use").small())
        .accessible_name(format!("Use anchors of size {}", answer.name))
        .on_hover_text(format!(
            "Puts these anchors into {}, size {}, and gives the door that size. One step for undo.",
            dialog.card, answer.name
        ));
    if button.clicked() {
        queue.push(Command::Do(Action::UseMounts {
            card: dialog.card_id,
            answer: Box::new(answer.clone()),
        }));
    }
}

/// What came of it, and what it does not do.
fn told_ui(ui: &mut Ui, dialog: &StrutDialog) {
    let tokens = tokens(ui);
    ui.add_space(4.0);
    match &dialog.found {
        None => {}
        Some(Err(MountError::Stopped)) => {
            ui.label("The search was stopped; nothing is changed.");
        }
        Some(Err(error)) => {
            let text = RichText::new(sentence(&error.to_string())).color(tokens.stop);
            ui.add(Label::new(text).wrap());
        }
        Some(Ok(_)) => {
            let told = format!(
                "The mounts belong to the card: every door on this size of {} gets them. The bores of \
                 the card's brackets are not moved by it. Correct them on the card to suit the \
                 brackets that you use.",
                dialog.card
            );
            ui.add(Label::new(RichText::new(told).color(tokens.caution)).wrap());
        }
    }
}

/// Search or cancel, and close; says whether to close.
fn buttons_ui(
    ui: &mut Ui,
    dialog: &mut StrutDialog,
    progress: Option<f32>,
    queue: &mut Vec<Command>,
) -> bool {
    ui.horizontal(|ui| {
        let size = egui::vec2(84.0, 26.0);
        if let Some(share) = progress {
            if ui.add(Button::new("Cancel").min_size(size)).clicked() {
                queue.push(Command::Do(Action::StopSearch));
            }
            ui.add(
                ProgressBar::new(share)
                    .desired_width(300.0)
                    .show_percentage(),
            );
            return false;
        }
        if ui.add(Button::new(bold("Search")).min_size(size)).clicked() {
            dialog.found = None;
            let limits = Box::new(dialog.limits);
            queue.push(Command::Do(Action::SearchMounts(limits)));
        }
        ui.add(Button::new("Close").min_size(size)).clicked()
    })
    .inner
}
