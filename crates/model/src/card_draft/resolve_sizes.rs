//! Sizes of a draft: what they carry and what lifts.

use super::columns::{
    AT_ANGLE, BOX_BACK, BOX_DOWN, DOOR_BACK, DOOR_DOWN, FRICTION, HEIGHT_MAX, HEIGHT_MIN,
    LEAST_DEPTH, LEAST_HEIGHT, LENGTH, LOAD_MAX, LOAD_MIN, PROGRESSION, ROD_FRICTION, STROKE,
    STRUT_FORCE, TURNS, WIDTH_MAX, WIDTH_MIN,
};
use super::entry::{Reader, cell_field};
use super::{Grid, LoadGiven};
use crate::card::{OpeningKind, Size, Span};
use crate::lift::{Carries, Lift, MassRow, SpringRow, Strut};
use crate::measure::{Measure, STANDARD_GRAVITY};

impl<'a> Reader<'a> {
    pub(super) fn sizes(&mut self) -> Vec<Size> {
        let names = self.names.clone();
        for (grid, name) in [
            (&self.draft.loads, "loads"),
            (&self.draft.springs, "springs"),
        ] {
            for row in 0..grid.rows.len() {
                if !names.iter().any(|it| it == grid.cell(row, 0)) {
                    self.wrong(
                        &cell_field(name, row, &grid.titles, 0),
                        format!("is \"{}\", and no size is called that", grid.cell(row, 0)),
                        "type the name of a size",
                    );
                }
            }
        }
        names
            .into_iter()
            .enumerate()
            .map(|(row, name)| {
                let carries = self.carries(row, &name);
                let lift = self.lift(row, &name);
                Size {
                    carries,
                    lift,
                    door_height: self.span(row, HEIGHT_MIN, HEIGHT_MAX),
                    door_width: self.span(row, WIDTH_MIN, WIDTH_MAX),
                    least_inner_depth: self.size_length(row, LEAST_DEPTH),
                    least_inner_height: self.size_length(row, LEAST_HEIGHT),
                    name,
                }
            })
            .collect()
    }

    fn cell(&self, row: usize, title: &str) -> &'a str {
        self.draft.sizes.under(row, title)
    }

    fn size_length(&mut self, row: usize, title: &str) -> f64 {
        let text = self.cell(row, title);
        self.length(&format!("sizes[{row}] \"{title}\""), text)
    }

    fn size_load(&mut self, row: usize, title: &str, measure: Measure) -> f64 {
        let text = self.cell(row, title);
        self.load(&format!("sizes[{row}] \"{title}\""), text, measure)
    }

    fn size_number(&mut self, row: usize, title: &str, sign: &str) -> f64 {
        let text = self.cell(row, title);
        self.number(&format!("sizes[{row}] \"{title}\""), text, sign)
    }

    fn span(&mut self, row: usize, min: &str, max: &str) -> Span {
        Span {
            min: self.size_length(row, min),
            max: self.size_length(row, max),
        }
    }

    fn carries(&mut self, row: usize, name: &str) -> Carries {
        let loads = &self.draft.loads;
        let mut door = Vec::new();
        let mut of_box = Vec::new();
        for line in rows_of(loads, name) {
            let field = |column| cell_field("loads", line, &loads.titles, column);
            let mass = MassRow {
                height: self.length(&field(2), loads.cell(line, 2)),
                min: self.load(&field(3), loads.cell(line, 3), Measure::Mass),
                max: self.load(&field(4), loads.cell(line, 4), Measure::Mass),
            };
            match loads.cell(line, 1) {
                "door" => door.push(mass),
                "box" => of_box.push(mass),
                other => {
                    let what = format!("is \"{other}\"; it must be door or box");
                    self.wrong(&field(1), what, "say which height the paper means");
                }
            }
        }
        match (door.is_empty(), of_box.is_empty()) {
            (false, true) => Carries::MassByDoorHeight(door),
            (true, false) => Carries::MassByBoxHeight(of_box),
            (false, false) => {
                self.wrong(
                    &format!("sizes[{row}] \"size\""),
                    format!("\"{name}\" has loads by door height and by box height"),
                    "keep one of them",
                );
                Carries::MassByDoorHeight(door)
            }
            (true, true) => self.load_of_row(row),
        }
    }

    /// A mass, or with an angle beside it a moment, or height times mass.
    fn load_of_row(&mut self, row: usize) -> Carries {
        if self.draft.paper.load_given == LoadGiven::HeightTimesMass {
            return self.height_times_mass(row);
        }
        if self.cell(row, AT_ANGLE).is_empty() {
            return Carries::Mass {
                min: self.size_load(row, LOAD_MIN, Measure::Mass),
                max: self.size_load(row, LOAD_MAX, Measure::Mass),
            };
        }
        Carries::Moment {
            min: self.size_load(row, LOAD_MIN, Measure::Moment),
            max: self.size_load(row, LOAD_MAX, Measure::Moment),
            at_degrees: self.size_number(row, AT_ANGLE, "°"),
        }
    }

    /// An even flap of mass m and height H asks for g m H / 2 at its upper edge when level; at the
    /// end angle where it does not get level.
    fn height_times_mass(&mut self, row: usize) -> Carries {
        if self.draft.kind != OpeningKind::TopHingedFlap {
            self.wrong(
                "paper.load_given",
                format!(
                    "is height times mass, which says nothing of a {}",
                    self.draft.kind.words()
                ),
                "type masses or moments",
            );
        }
        let end = self.number("linkage.end_angle", &self.draft.linkage.end_angle, "°");
        let at_degrees = end.clamp(0.0, 90.0);
        let unit = self.draft.paper.loads;
        let product = |number: f64| {
            let mass = Measure::Mass.value(number, unit);
            let metres = match unit {
                crate::length::Unit::Millimetre => 1e-3,
                crate::length::Unit::Inch => crate::length::MM_PER_INCH * 1e-3,
            };
            mass * metres * STANDARD_GRAVITY / 2.0 * at_degrees.to_radians().sin()
        };
        Carries::Moment {
            min: product(self.size_number(row, LOAD_MIN, "")),
            max: product(self.size_number(row, LOAD_MAX, "")),
            at_degrees,
        }
    }

    fn lift(&mut self, row: usize, name: &str) -> Lift {
        if !self.cell(row, STRUT_FORCE).is_empty() {
            return Lift::Strut(Strut {
                box_down: self.size_length(row, BOX_DOWN),
                box_back: self.size_length(row, BOX_BACK),
                door_down: self.size_length(row, DOOR_DOWN),
                door_back: self.size_length(row, DOOR_BACK),
                force: self.size_load(row, STRUT_FORCE, Measure::Force),
                progression: self.size_number(row, PROGRESSION, ""),
                stroke: self.size_length(row, STROKE),
                extended: self.size_length(row, LENGTH),
                friction: self.size_load(row, ROD_FRICTION, Measure::Force),
            });
        }
        let springs = &self.draft.springs;
        let mut table = Vec::new();
        for line in rows_of(springs, name) {
            let field = |column| cell_field("springs", line, &springs.titles, column);
            table.push(SpringRow {
                degrees: self.number(&field(1), springs.cell(line, 1), "°"),
                weakest: self.load(&field(2), springs.cell(line, 2), Measure::Moment),
                strongest: self.load(&field(3), springs.cell(line, 3), Measure::Moment),
            });
        }
        if table.is_empty() {
            self.wrong(
                &format!("sizes[{row}] \"size\""),
                format!("\"{name}\" has neither a strut's force nor rows of a spring"),
                "type the strut's force, or rows of the spring with this size",
            );
        }
        Lift::Spring {
            table,
            turns: self.size_number(row, TURNS, ""),
            friction: self.size_load(row, FRICTION, Measure::Moment),
        }
    }
}

/// The rows of a grid whose first cell names this size.
fn rows_of<'g>(grid: &'g Grid, name: &str) -> impl Iterator<Item = usize> + use<'g> {
    let name = name.to_owned();
    (0..grid.rows.len()).filter(move |row| grid.cell(*row, 0) == name)
}
