//! A fitting whose paper is lost: readings of a hand scale become rows of a spring table.

use egui::{Label, RichText, Ui};
use flapwright_model::card_draft::columns::SIZE;
use flapwright_model::card_draft::{CardDraft, Grid};
use flapwright_model::length::{Unit, parse_length};
use flapwright_model::measure::Measure;
use flapwright_motion::measured::{
    ScaleReading, SpringFit, fit_spring, spring_rows, suitable_terms,
};

use super::board::Board;
use super::table::{Column, Table, table_ui};
use crate::window::tokens::{bold, tokens};

/// Degrees between the rows that are written.
const STEP: f64 = 15.0;

/// The question.
#[derive(Debug, Clone)]
pub(crate) struct Measured {
    /// Size whose rows are written.
    size: String,
    /// Readings at the weakest and the strongest setting.
    readings: [Grid; 2],
}

/// Titles of the readings.
const TITLES: [&str; 5] = ["angle", "raising", "lowering", "lever", "weight"];

impl Measured {
    /// For a size.
    pub(crate) fn new(size: &str) -> Self {
        let grid = Grid::new(TITLES).with([""; 5]);
        Self {
            size: size.to_owned(),
            readings: [grid.clone(), grid],
        }
    }
}

/// Shows the question; whether it is done with.
pub(super) fn measured_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    measured: &mut Measured,
    draft: &mut CardDraft,
) -> bool {
    ui.label(bold("Spring from a hand scale").size(15.0));
    let unit = draft.paper.loads;
    let symbols = match unit {
        Unit::Millimetre => "N and N·m",
        Unit::Inch => "lbf and lbf·in",
    };
    let told = format!(
        "Hook the scale to the bare arm or door and pull slowly at right angles to it, once raising and \
         once lowering. Type the angle in degrees, both readings (+ where the scale lifts, - where it \
         holds the arm back), the distance of the scale's line from the axis, and the moment of the \
         weight that hangs there (0 for a bare arm). Forces and moments in {symbols}. The spring can throw the arm: secure it first."
    );
    ui.add(Label::new(told).wrap());
    board.number(
        ui,
        "measured.size",
        "rows for the size",
        "",
        &mut measured.size,
    );
    let mut fits = Vec::new();
    for (number, grid) in measured.readings.iter_mut().enumerate() {
        let setting = ["weakest", "strongest"]
            .get(number)
            .copied()
            .unwrap_or_default();
        ui.add_space(4.0);
        ui.label(bold(format!("At the {setting} setting")));
        readings_ui(ui, board, setting, grid);
        let empty = grid
            .rows
            .iter()
            .flatten()
            .all(|cell| cell.trim().is_empty());
        if number == 1 && empty {
            ui.label(
                RichText::new("Empty: the same as the weakest.")
                    .small()
                    .color(tokens(ui).text_soft),
            );
            fits.push(fits.first().cloned().flatten());
            continue;
        }
        let fit = readings(grid, draft.paper.length, unit).and_then(|list| {
            fit_spring(&list, suitable_terms(&list)).map_err(|error| error.to_string())
        });
        match &fit {
            Ok(fit) => fit_ui(ui, fit, unit),
            Err(why) => {
                ui.add(Label::new(RichText::new(why).small().color(tokens(ui).stop)).wrap());
            }
        }
        fits.push(fit.ok());
    }
    ui.add_space(6.0);
    let both = match fits.as_slice() {
        [Some(weakest), Some(strongest)] => Some((weakest, strongest)),
        _ => None,
    };
    ui.horizontal(|ui| {
        let named = !measured.size.trim().is_empty();
        let write = ui.add_enabled(
            both.is_some() && named,
            egui::Button::new(bold("Write the rows")),
        );
        if write.clicked()
            && let Some((weakest, strongest)) = both
        {
            write_rows(draft, measured.size.trim(), weakest, strongest);
            return true;
        }
        ui.button("Back to the sizes").clicked()
    })
    .inner
}

fn readings_ui(ui: &mut Ui, board: &mut Board<'_>, setting: &str, grid: &mut Grid) {
    let path = format!("measured.{setting}");
    let field = |row: usize, column: usize| format!("measured[{row}].{column}");
    let new_row = |grid: &Grid, at: usize| {
        let before = at.checked_sub(1).and_then(|row| grid.rows.get(row));
        let lever = before
            .and_then(|row| row.get(3))
            .cloned()
            .unwrap_or_default();
        vec![
            String::new(),
            String::new(),
            String::new(),
            lever,
            String::new(),
        ]
    };
    let name = format!("Readings, {setting} setting");
    let sheet = Table {
        path: &path,
        name: &name,
        columns: TITLES.map(|title| Column::new(title, 84.0)).to_vec(),
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, grid);
}

/// The readings of a table; rows without anything are left out.
fn readings(grid: &Grid, lengths: Unit, loads: Unit) -> Result<Vec<ScaleReading>, String> {
    let mut list = Vec::new();
    for row in 0..grid.rows.len() {
        let cell = |column: usize| grid.cell(row, column);
        if (0..TITLES.len()).all(|column| cell(column).is_empty()) {
            continue;
        }
        let number = |column: usize| {
            let text = cell(column).replace(',', ".").replace('−', "-");
            let title = TITLES.get(column).copied().unwrap_or_default();
            text.parse::<f64>().map_err(|_not_a_number| {
                format!("row {}: {title} is \"{text}\"; a number is wanted", row + 1)
            })
        };
        let weight = if cell(4).is_empty() { 0.0 } else { number(4)? };
        list.push(ScaleReading {
            degrees: number(0)?,
            raising: Measure::Force.value(number(1)?, loads),
            lowering: Measure::Force.value(number(2)?, loads),
            lever: parse_length(cell(3), lengths)
                .map_err(|error| format!("row {}: the lever is no length: {error}", row + 1))?,
            weight_moment: Measure::Moment.value(weight, loads),
        });
    }
    Ok(list)
}

/// What the readings say, with its uncertainty, and what they leave open.
fn fit_ui(ui: &mut Ui, fit: &SpringFit, unit: Unit) {
    let with = |value: f64, uncertainty: Option<f64>| {
        let number = |value: f64| Measure::Moment.number(value, unit);
        match uncertainty {
            Some(by) => format!("{:.2} ± {:.2}", number(value), number(by)),
            None => format!("{:.2} ± not known", number(value)),
        }
    };
    let (least, most) = fit.read_degrees;
    let mut texts = Vec::new();
    for share in [0.0, 0.5, 1.0] {
        let degrees = least + (most - least) * share;
        let (moment, uncertainty) = fit.at(degrees);
        texts.push(format!("{} at {degrees:.0}°", with(moment, uncertainty)));
    }
    let symbol = match unit {
        Unit::Millimetre => "N·m",
        Unit::Inch => "lbf·in",
    };
    let told = format!(
        "Spring {} {symbol}; friction {} {symbol} (one standard uncertainty).",
        texts.join(", "),
        with(fit.friction, fit.friction_uncertainty)
    );
    ui.add(Label::new(told).wrap());
    for open in fit.open_questions() {
        ui.add(
            Label::new(RichText::new(format!("Not determined: {open}.")).color(tokens(ui).caution))
                .wrap(),
        );
    }
}

/// Puts the rows of a size in the place of those it has.
fn write_rows(draft: &mut CardDraft, size: &str, weakest: &SpringFit, strongest: &SpringFit) {
    let least = weakest.read_degrees.0.max(strongest.read_degrees.0);
    let most = weakest.read_degrees.1.min(strongest.read_degrees.1);
    let mut degrees = vec![least];
    let mut next = (least / STEP).floor() * STEP + STEP;
    while next < most - 1e-9 {
        degrees.push(next);
        next += STEP;
    }
    if most > least {
        degrees.push(most);
    }
    let unit = draft.paper.loads;
    let text = |value: f64| format!("{:.3}", Measure::Moment.number(value, unit));
    draft
        .springs
        .rows
        .retain(|row| row.first().is_none_or(|cell| cell.trim() != size));
    for row in spring_rows(weakest, strongest, &degrees) {
        let cells = [
            format!("{}", row.degrees),
            text(row.weakest),
            text(row.strongest),
        ];
        let mut line = vec![size.to_owned()];
        line.extend(cells);
        draft.springs.rows.push(line);
    }
    let friction = weakest.friction.max(strongest.friction).max(0.0);
    let titles = draft.sizes.titles.clone();
    let column = titles
        .iter()
        .position(|title| title == flapwright_model::card_draft::columns::FRICTION);
    for row in 0..draft.sizes.rows.len() {
        if draft.sizes.under(row, SIZE) == size
            && let Some(cell) =
                column.and_then(|column| draft.sizes.rows.get_mut(row)?.get_mut(column))
            && cell.trim().is_empty()
        {
            *cell = text(friction);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use flapwright_model::card::OpeningKind;

    #[test]
    fn readings_of_a_known_spring_become_its_rows() {
        // Made data: S = 2 + 3 sin q N·m without friction opens the arm; on a lever of 200 mm the
        // scale holds it back with S / 0.2 m.
        let mut grid = Grid::new(TITLES);
        for degrees in [0.0_f64, 20.0, 40.0, 60.0, 80.0, 100.0] {
            let force = -(2.0 + 3.0 * degrees.to_radians().sin()) / 0.2;
            let text = format!("{force}");
            grid = grid.with([
                degrees.to_string(),
                text.clone(),
                text,
                "200".to_owned(),
                String::new(),
            ]);
        }
        let list = readings(&grid, Unit::Millimetre, Unit::Millimetre).unwrap();
        let fit = fit_spring(&list, suitable_terms(&list)).unwrap();
        let mut draft = CardDraft::blank(OpeningKind::TopHingedFlap);
        write_rows(&mut draft, "1", &fit, &fit);
        let rows = &draft.springs;
        assert_eq!((rows.cell(0, 0), rows.cell(0, 1)), ("1", "0"));
        let last = rows.rows.len() - 1;
        assert_eq!(rows.cell(last, 1), "100");
        for row in 0..=last {
            let degrees: f64 = rows.cell(row, 1).parse().unwrap();
            let moment: f64 = rows.cell(row, 2).parse().unwrap();
            let wanted = 2.0 + 3.0 * degrees.to_radians().sin();
            assert!(
                (moment - wanted).abs() < 0.001,
                "{degrees}: {moment} {wanted}"
            );
        }
    }

    #[test]
    fn a_reading_that_is_no_number_is_named() {
        let grid = Grid::new(TITLES).with(["10", "x", "3", "200", ""]);
        let why = readings(&grid, Unit::Millimetre, Unit::Millimetre).unwrap_err();
        assert!(why.contains("row 1") && why.contains("raising"), "{why}");
    }
}
