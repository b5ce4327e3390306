//! How each fitting is set, and what is said of its size.

use flapwright_model::cabinet::WallBox;
use flapwright_model::door::{Door, FittingChoice};
use flapwright_model::length::Unit;
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::Verdict;
use flapwright_rules::mechanics::mechanics;
use flapwright_words::Speaker;

use super::SheetSetup;
use super::fitting_words::lines;
use super::flow::{Flow, Theme};
use super::list_table::{Cell, Column, ListTable};
use crate::cautions::{Context, cautions};
use crate::draft::Draft;
use crate::page_kind::PageKind;

/// The pages; none when no door has a fitting.
pub(super) fn pages(setup: &SheetSetup<'_>) -> Vec<Draft> {
    if setup.fittings().next().is_none() {
        return Vec::new();
    }
    let theme = Theme {
        kind: PageKind::FittingSettings,
        title: "Fitting settings".to_owned(),
        headline: "FITTING SETTINGS".to_owned(),
        lead: vec![
            "Reckoned from the card and the door's mass as a range. Settings are where to start; \
             the fitting's own instructions decide."
                .to_owned(),
        ],
        cautions: cautions(Context {
            leaf: true,
            setting: true,
            ..Context::default()
        }),
        invented: setup.invented(),
    };
    let mut flow = Flow::new(setup, theme);
    for fitted in setup.fittings() {
        one_door(setup, &mut flow, fitted);
    }
    flow.finish()
}

fn one_door(
    setup: &SheetSetup<'_>,
    flow: &mut Flow,
    (wall_box, fitted, choice): (&WallBox, &Door, &FittingChoice),
) {
    let job = setup.job;
    let Some(report) = setup.inspection.report(wall_box.id) else {
        return;
    };
    let Some(door) = report.door(fitted.id) else {
        return;
    };
    let found = mechanics(job, wall_box, report, door.id);
    let which = if report.openings.len() > 1 {
        format!(", opening {} from the top", report.number_of_door(door.id))
    } else {
        String::new()
    };
    let boxes = match report.quantity {
        1 => String::new(),
        many => format!(" (in each of {many} boxes)"),
    };
    flow.caption(&format!("{}{which}{boxes}", report.name));
    let mut table = ListTable::new([Column::words("", 30.0), Column::words("", 400.0)]);
    for (label, words) in lines(job, choice, door, found.as_ref()) {
        table.row([Cell::from(label), Cell::from(words)]);
    }
    flow.table(&table);
    if let Some(found) = &found {
        flow.blank(2.0);
        let card = job.card_by_id(choice.card);
        let card = card.map_or("", |card| card.name.as_str());
        flow.table(&sizes(&found.verdicts, card, &choice.size, job.unit));
    }
}

/// All sizes of this opening kind with the gravest reason for each.
fn sizes(verdicts: &[Verdict], card: &str, size: &str, unit: Unit) -> ListTable {
    let mut table = ListTable::new([
        Column::words("size", 50.0),
        Column::words("verdict", 24.0),
        Column::words("because", 400.0),
    ]);
    let speaker = Speaker::without_names(unit);
    for verdict in verdicts {
        let chosen = if verdict.card == card && verdict.size == size {
            " (chosen)"
        } else {
            ""
        };
        let because = verdict
            .reasons
            .first()
            .map_or_else(String::new, |reason: &Reason| speaker.say(reason));
        table.row([
            Cell::from(format!("{}, size {}{chosen}", verdict.card, verdict.size)),
            Cell::from(verdict.grade.words()),
            Cell::from(because),
        ]);
    }
    table
}
