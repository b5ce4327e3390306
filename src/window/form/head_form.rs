//! The job's own data: names, limits of practice, weights of checks, conventions of the drawings.

use egui::{RichText, Ui};
use flapwright_model::job::{OpeningMark, PaperChoice, TitleBlock};
use flapwright_model::length::Unit;

use super::limits_form::limits_ui;
use super::weights_form::weights_ui;
use super::{Form, group};
use crate::window::fields::choice::{buttons, pick, tick};
use crate::window::fields::text::text;
use crate::window::fields::{Change, field_id};
use crate::window::today::today;
use crate::window::tokens::tokens;

/// The section *Settings*.
pub(crate) fn head_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let change = text(
        ui,
        form.fields,
        "name",
        "Job name",
        "job name",
        &form.job.name,
    );
    form.edit_head("name", change, |head, v| head.name = v);
    let all = [(Unit::Millimetre, "mm"), (Unit::Inch, "inch")];
    let change = buttons(ui, "unit", "lengths in", &form.job.unit, &all);
    form.edit_head("unit", change, |head, v| head.unit = v);
    limits_ui(ui, form);
    weights_ui(ui, form);
    drawing_ui(ui, form);
    title_block_ui(ui, form);
}

fn drawing_ui(ui: &mut Ui, form: &mut Form<'_>) {
    group(ui, "Drawings and sheets");
    let mark = form.job.settings.opening_mark;
    let all = [
        (
            OpeningMark::ApexAtOpeningSide,
            "apex at the opening side".to_owned(),
        ),
        (OpeningMark::ApexAtHinge, "apex at the hinge".to_owned()),
    ];
    let change = pick(
        ui,
        "settings.opening_mark",
        "Opening mark",
        "opening mark",
        &mark,
        &all,
    );
    form.edit_head("opening mark", change, |head, v| {
        head.settings.opening_mark = v;
    });
    let told = match mark {
        OpeningMark::ApexAtOpeningSide => {
            "Base at the hinge, continuous lines: Austrian, German and Hungarian practice."
        }
        OpeningMark::ApexAtHinge => "Dashed lines: practice in the USA.",
    };
    let soft = tokens(ui).text_soft;
    ui.add(egui::Label::new(RichText::new(told).small().color(soft)).wrap());
    let all = [
        (PaperChoice::A4, "A4".to_owned()),
        (PaperChoice::A3, "A3".to_owned()),
        (PaperChoice::Letter, "Letter".to_owned()),
        (PaperChoice::Tabloid, "Tabloid".to_owned()),
    ];
    let paper = form.job.settings.paper;
    let change = pick(ui, "settings.paper", "Paper", "paper", &paper, &all);
    form.edit_head("paper", change, |head, v| head.settings.paper = v);
    let inches = form.job.settings.inches_on_sheets;
    let change = tick(
        ui,
        "settings.inches",
        "inches in a second column on sheets",
        inches,
    );
    form.edit_head("inches on sheets", change, |head, v| {
        head.settings.inches_on_sheets = v;
    });
}

fn title_block_ui(ui: &mut Ui, form: &mut Form<'_>) {
    group(ui, "Title block");
    let block = form.job.title_block.clone();
    type Set = fn(&mut TitleBlock, String);
    let all: [(&str, &str, Set); 6] = [
        ("owner", &block.owner, |t, v| t.owner = v),
        ("number", &block.number, |t, v| t.number = v),
        ("date of issue", &block.date_of_issue, |t, v| {
            t.date_of_issue = v;
        }),
        ("creator", &block.creator, |t, v| t.creator = v),
        ("approver", &block.approver, |t, v| t.approver = v),
        ("revision", &block.revision, |t, v| t.revision = v),
    ];
    for (word, value, set) in all {
        let full = format!("title block {word}");
        let path = format!("title_block.{word}");
        let change = text(ui, form.fields, &path, &full, word, value);
        form.edit_head(&full, change, |head, v| set(&mut head.title_block, v));
    }
    let button = ui.button("Fill in today's date");
    if button
        .on_hover_text("The date of today as date of issue; undo takes it back.")
        .clicked()
    {
        let change = Change {
            value: today(),
            field: field_id("title_block.date of issue"),
            typed: None,
            running: false,
        };
        form.edit_head("date of issue", Some(change), |head, v| {
            head.title_block.date_of_issue = v;
        });
    }
}
