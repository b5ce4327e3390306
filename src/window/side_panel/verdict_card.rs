//! One verdict: grade, size, load, setting, reasons, and the button that takes it.

use egui::{Button, CollapsingHeader, Frame, Label, Margin, RichText, Stroke, Ui};
use flapwright_model::length::Unit;
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::{Grade, Verdict};
use flapwright_rules::advice::name;
use flapwright_words::Speaker;

use super::sentence;
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};
use flapwright_session::action::Action;

/// A verdict and what can be done with it.
#[derive(Clone, Copy)]
pub(super) struct Shown<'a> {
    /// The verdict.
    pub(super) verdict: &'a Verdict,
    /// Whether the door has this size.
    pub(super) chosen: bool,
    /// Whether it can be taken.
    pub(super) can_take: bool,
    /// Unit of the job.
    pub(super) unit: Unit,
}

/// Shows one verdict.
pub(super) fn verdict_ui(ui: &mut Ui, shown: Shown<'_>, queue: &mut Vec<Command>) {
    let Shown {
        verdict,
        chosen,
        can_take,
        unit,
    } = shown;
    let tokens = tokens(ui);
    let edge = if chosen {
        Stroke::new(2.0, tokens.accent)
    } else {
        Stroke::new(1.0, tokens.line)
    };
    let frame = Frame::new()
        .fill(tokens.card)
        .stroke(edge)
        .corner_radius(4.0)
        .inner_margin(Margin::symmetric(8, 5));
    frame.show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.push_id((&verdict.card, &verdict.size), |ui| {
            ui.horizontal(|ui| {
                badge(ui, verdict.grade);
                ui.label(bold(said(verdict)));
                if chosen {
                    ui.label(RichText::new("chosen").color(tokens.accent));
                }
                if can_take {
                    let right = egui::Layout::right_to_left(egui::Align::Center);
                    ui.with_layout(right, |ui| take_ui(ui, verdict, queue));
                }
            });
            reasons_ui(ui, verdict, unit);
        });
    });
}

/// Card and size in words.
fn said(verdict: &Verdict) -> String {
    Speaker::without_names(Unit::default()).say(&name(verdict))
}

fn take_ui(ui: &mut Ui, verdict: &Verdict, queue: &mut Vec<Command>) {
    let button = ui
        .add(Button::new("Take this size").small())
        .accessible_name(format!("Take {}", said(verdict)))
        .on_hover_text("Gives the door this size; its bores follow. One step for undo.");
    if button.clicked() {
        queue.push(Command::Do(Action::TakeSize {
            card: verdict.card.clone(),
            size: verdict.size.clone(),
        }));
    }
}

/// What speaks against it first, then load and setting; the rest on request.
fn reasons_ui(ui: &mut Ui, verdict: &Verdict, unit: Unit) {
    let against: Vec<&Reason> = verdict
        .reasons
        .iter()
        .filter(|reason| reason.grade() != Grade::Fits)
        .collect();
    let plain = |reason: &&Reason| matches!(reason, Reason::Load(_) | Reason::Setting(_));
    // A size that does not suit needs no more than its gravest reason at first sight.
    let mut first: Vec<&Reason> = match verdict.grade {
        Grade::No => against.first().copied().into_iter().collect(),
        Grade::Fits | Grade::Marginal => against.clone(),
    };
    if verdict.grade != Grade::No {
        let fitting = verdict.reasons.iter().filter(plain);
        first.extend(fitting.filter(|reason| reason.grade() == Grade::Fits));
    }
    for reason in &first {
        reason_ui(ui, reason, unit);
    }
    let rest: Vec<&Reason> = verdict
        .reasons
        .iter()
        .filter(|reason| !first.iter().any(|it| std::ptr::eq(*it, *reason)))
        .collect();
    if rest.is_empty() {
        return;
    }
    let plural = if rest.len() == 1 { "" } else { "s" };
    let title = format!("{} more reason{plural}", rest.len());
    CollapsingHeader::new(RichText::new(title).small()).show(ui, |ui| {
        for reason in rest {
            reason_ui(ui, reason, unit);
        }
    });
}

fn reason_ui(ui: &mut Ui, reason: &Reason, unit: Unit) {
    let tokens = tokens(ui);
    let colour = match reason.grade() {
        Grade::Fits => tokens.text,
        other => tokens.grade(other),
    };
    let text = RichText::new(sentence(&Speaker::without_names(unit).say(reason))).color(colour);
    ui.add(Label::new(text.size(12.5)).wrap());
}

/// The grade as a word on its colour.
fn badge(ui: &mut Ui, grade: Grade) {
    let tokens = tokens(ui);
    Frame::new()
        .fill(tokens.grade(grade))
        .corner_radius(3.0)
        .inner_margin(Margin::symmetric(5, 1))
        .show(ui, |ui| {
            ui.label(bold(grade.words()).small().color(tokens.on_severity));
        });
}
