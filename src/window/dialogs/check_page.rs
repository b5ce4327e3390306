//! The page of a check: what it looks at, why it matters, what can be done.

use egui::{Context, Label, ScrollArea, Ui};
use flapwright_rules::checks::{Check, check};

use super::{answers, close, entered, modal_of};
use crate::window::command::Command;
use crate::window::tokens::bold;

/// Width of the page.
const WIDTH: f32 = 560.0;

/// Shows the page of the check of that name; Enter and Escape close it.
pub(super) fn page_ui(ctx: &Context, name: &str, queue: &mut Vec<Command>) {
    let (done, gone) = modal_of(ctx, "page", WIDTH, |ui| {
        ui.set_min_width(WIDTH);
        let text = check(name).map(Check::manual).unwrap_or_default();
        ScrollArea::vertical().max_height(480.0).show(ui, |ui| {
            for line in text.lines() {
                line_ui(ui, line);
            }
        });
        answers(ui, &["Close"]).is_some() || entered(ui)
    });
    if done || gone {
        queue.push(close());
    }
}

/// A line of the page: its two kinds of heading, or a paragraph.
fn line_ui(ui: &mut Ui, line: &str) {
    if let Some(title) = line.strip_prefix("# ") {
        ui.label(bold(title).size(15.0));
    } else if let Some(title) = line.strip_prefix("## ") {
        ui.add_space(6.0);
        ui.label(bold(title));
    } else if !line.is_empty() {
        ui.add(Label::new(line).wrap().selectable(true));
    }
}
