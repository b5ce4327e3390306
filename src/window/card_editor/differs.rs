//! A card of the job and another one of the same name: what moved, adopt or keep.

use egui::{Context, Grid, Label, RichText, ScrollArea};
use flapwright_model::card::Card;
use flapwright_model::card_difference::{Difference, differences};

use super::CardCommand;
use crate::window::command::Command;
use crate::window::dialogs::{answers, modal_of};
use crate::window::tokens::{bold, tokens};

/// The question.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct CardDiffers {
    /// Where the other card is from, e.g. `the library`.
    from: String,
    /// The other card.
    card: Card,
    /// From the job's to the other one.
    moved: Vec<Difference>,
}

impl CardDiffers {
    /// The job's card and another one of its name.
    pub(crate) fn new(job: &Card, other: &Card, from: &str) -> Self {
        Self {
            from: from.to_owned(),
            card: other.clone(),
            moved: differences(job, other),
        }
    }
}

/// Shows what differs. Escape keeps the job's card.
pub(crate) fn differs_ui(ctx: &Context, this: &CardDiffers, queue: &mut Vec<Command>) {
    let (answer, gone) = modal_of(ctx, "card differs", 640.0, |ui| {
        ui.set_min_width(560.0);
        let title = format!(
            "\"{}\" of {} differs in {}",
            this.card.name,
            this.from,
            count(this.moved.len())
        );
        ui.label(bold(title).size(15.0));
        let told = "Adopting changes every door of this job that hangs on the card; it is one step for undo.";
        ui.add(Label::new(RichText::new(told).color(tokens(ui).text_soft)).wrap());
        ScrollArea::vertical().max_height(360.0).show(ui, |ui| {
            Grid::new("moved")
                .striped(true)
                .spacing([14.0, 3.0])
                .show(ui, |ui| {
                    for head in ["number", "in this job", "there", "by"] {
                        ui.label(RichText::new(head).small().color(tokens(ui).text_soft));
                    }
                    ui.end_row();
                    for one in &this.moved {
                        ui.label(&one.field);
                        ui.label(one.was.as_deref().unwrap_or("none"));
                        ui.label(one.now.as_deref().unwrap_or("none"));
                        ui.label(one.by.map_or_else(String::new, |by| format!("{by:+.3}")));
                        ui.end_row();
                    }
                });
        });
        answers(ui, &["Keep the job's", "Adopt the other"])
    });
    match answer {
        Some(0) => queue.push(Command::CloseDialog),
        Some(_) => queue.push(Command::Card(CardCommand::Adopt(Box::new(
            this.card.clone(),
        )))),
        None if gone => queue.push(Command::CloseDialog),
        None => {}
    }
}

fn count(number: usize) -> String {
    match number {
        1 => "1 number or word".to_owned(),
        many => format!("{many} numbers or words"),
    }
}
