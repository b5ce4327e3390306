//! Rows of the form. What a row is called, means, holds and may be is said by the table of fields;
//! a change of it is one small edit of that field.

use std::borrow::Cow;

use egui::{RichText, Ui};
use flapwright_model::edges::Edge;
use flapwright_model::edit::Edit;
use flapwright_model::field::{BoreField, Choice, Choices, FieldRef, Info, Kind, Value};
use flapwright_model::part::LeafId;
use flapwright_rules::checks::CHECKS;

use super::Form;
use crate::window::command::{Command, JobEdit};
use crate::window::fields::choice::{Called, buttons, pick, tick};
use crate::window::fields::number::{Number, cell, number, problem, word};
use crate::window::fields::quantity::Quantity;
use crate::window::fields::text::text;
use crate::window::fields::{Change, field_id};
use crate::window::tokens::{EDGE_WORD, LABEL_WIDTH, tokens};

/// Up to so many characters fit into a row of buttons; longer choices drop down.
const FITS_BUTTONS: usize = 21;

impl Form<'_> {
    /// Rows of fields; what the job does not have is left out.
    pub(crate) fn fields(&mut self, ui: &mut Ui, fields: impl IntoIterator<Item = FieldRef>) {
        for field in fields {
            self.field(ui, field);
        }
    }

    /// A row of one field.
    pub(crate) fn field(&mut self, ui: &mut Ui, field: FieldRef) {
        let Some(value) = field.get(self.job) else {
            return;
        };
        let info = field.info();
        let name = field.name(self.job);
        let called = Called {
            id: field_id(field),
            name: &name,
            word: info.label,
            meaning: info.meaning,
        };
        match (info.kind, value) {
            (_, Value::Number(_) | Value::Count(_)) => {
                let words = [info.label, &name];
                let change = self.number_row(ui, field, words, LABEL_WIDTH, number);
                self.set(field, change);
            }
            (Kind::Choice(all), Value::Choice(now)) => {
                // A bore is asked for its leaf only where there are two.
                let of_two = matches!(field, FieldRef::Bore(_, _, _, BoreField::Leaf));
                let offered = |it: &&Choice| !of_two || it.name != LeafId::Only.name();
                let all: Vec<Choice> = all.iter().filter(offered).copied().collect();
                let change = choice_row(ui, called, &now, &all);
                self.set(field, change);
            }
            (Kind::Flag, Value::Flag(now)) => {
                if let Some(ticked) = tick(ui, info.label, now) {
                    self.put(field, Value::Flag(ticked));
                }
            }
            (Kind::Material, Value::Text(now)) => self.material_row(ui, field, called, &now),
            (_, Value::Text(now)) => {
                let (word, meaning) = (info.label, info.meaning);
                let change = text(ui, self.fields, called.id, &name, word, meaning, &now);
                self.set(field, change.map(|it| as_value(it, owned_text)));
            }
            // What is not given has a control of its own where it can be given.
            (_, Value::Choice(_) | Value::Flag(_) | Value::Unset) => {}
        }
    }

    /// Two rows of two numbers under a heading: left and right, top and bottom.
    pub(crate) fn edges(&mut self, ui: &mut Ui, of: impl Fn(Edge) -> FieldRef) {
        let first = of(Edge::Left);
        if first.get(self.job).is_none() {
            return;
        }
        let info = first.info();
        ui.label(RichText::new(info.label).color(tokens(ui).text_soft))
            .on_hover_text(info.meaning);
        for pair in [[Edge::Left, Edge::Right], [Edge::Top, Edge::Bottom]] {
            let words = pair.map(|edge| (edge.word(), EDGE_WORD));
            self.pair(ui, pair.map(&of), words);
        }
    }

    /// Two numbers in a row, with their words and the room for those.
    pub(crate) fn pair(&mut self, ui: &mut Ui, pair: [FieldRef; 2], words: [(&str, f32); 2]) {
        ui.horizontal(|ui| {
            for (field, (shown, width)) in pair.into_iter().zip(words) {
                let name = field.name(self.job);
                let change =
                    self.number_row(ui, field, [shown, &name], width, |ui, fields, it, now| {
                        let dragged = word(ui, fields, it, now);
                        dragged.or(cell(ui, fields, it, now))
                    });
                self.set(field, change);
            }
        });
        for field in pair {
            problem(ui, self.fields, field_id(field));
        }
    }

    /// A number shown by one of the number controls; another value, if one was typed or dragged.
    fn number_row(
        &mut self,
        ui: &mut Ui,
        field: FieldRef,
        [word, name]: [&str; 2],
        word_width: f32,
        show: impl FnOnce(
            &mut Ui,
            &mut crate::window::fields::Fields,
            Number<'_>,
            f64,
        ) -> Option<Change<f64>>,
    ) -> Option<Change<Value<'static>>> {
        let now = field.get(self.job)?.number()?;
        let info = field.info();
        let unit = self.job.unit;
        let quantity = match info.kind {
            Kind::Number { quantity, .. } => Quantity::of(quantity, unit),
            _ => Quantity::Pieces,
        };
        let this = Number {
            id: field_id(field),
            name,
            word,
            meaning: &|| told(field, quantity),
            quantity,
            word_width,
        };
        let change = show(ui, self.fields, this, now)?;
        Some(as_value(change, |value| match info.kind {
            Kind::Count(_) => Value::Count(whole(value)),
            _ => Value::Number(value),
        }))
    }

    /// A material of the job's table.
    fn material_row(&mut self, ui: &mut Ui, field: FieldRef, called: Called<'_>, now: &str) {
        let all: Vec<(String, String)> = self
            .job
            .materials
            .iter()
            .map(|it| (it.name.clone(), it.name.clone()))
            .collect();
        let change = pick(ui, called, &now.to_owned(), &all);
        self.set(field, change.map(|it| as_value(it, owned_text)));
    }

    /// Queues another value of a field that a control asks for.
    pub(crate) fn set(&mut self, field: FieldRef, change: Option<Change<Value<'static>>>) {
        let Some(change) = change else { return };
        if field.get(self.job).as_ref() == Some(&change.value) {
            self.fields.accept(change.field);
            return;
        }
        self.queue.push(Command::Edit(JobEdit {
            label: field.title(self.job),
            edit: Edit::Set {
                field,
                value: change.value,
            },
            field: Some(change.field),
            typed: change.typed,
            running: change.running,
        }));
    }

    /// Queues another value of a field, made in one go.
    pub(crate) fn put(&mut self, field: FieldRef, value: Value<'static>) {
        let change = Change {
            value,
            field: field_id(field),
            typed: None,
            running: false,
        };
        self.set(field, Some(change));
    }
}

fn as_value<T>(change: Change<T>, to: impl FnOnce(T) -> Value<'static>) -> Change<Value<'static>> {
    Change {
        value: to(change.value),
        field: change.field,
        typed: change.typed,
        running: change.running,
    }
}

const fn owned_text(text: String) -> Value<'static> {
    Value::Text(Cow::Owned(text))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole and within the range of the type"
)]
fn whole(value: f64) -> u32 {
    value.round().clamp(0.0, f64::from(u32::MAX)) as u32
}

/// A choice: buttons where they fit into a row, else a list that drops down.
fn choice_row(
    ui: &mut Ui,
    called: Called<'_>,
    now: &str,
    all: &[Choice],
) -> Option<Change<Value<'static>>> {
    let named = |name: &'static str| Value::Choice(Cow::Borrowed(name));
    let now = all.iter().map(|it| it.name).find(|it| *it == now)?;
    let characters: usize = all.iter().map(|it| it.label.chars().count()).sum();
    let change = if all.len() <= 3 && characters <= FITS_BUTTONS {
        let all: Vec<(&str, &str)> = all.iter().map(|it| (it.name, it.label)).collect();
        buttons(ui, called, now, &all)
    } else {
        let all: Vec<(&str, String)> = all
            .iter()
            .map(|it| (it.name, it.label.to_owned()))
            .collect();
        pick(ui, called, &now, &all)
    };
    change.map(|it| as_value(it, named))
}

/// What a number means, what it usually is and may be, and for a limit of practice which checks go
/// by it.
fn told(field: FieldRef, quantity: Quantity) -> String {
    let Info {
        kind,
        usual,
        meaning,
        ..
    } = *field.info();
    let shown = |value: f64| {
        let (number, unit) = (quantity.show(value), quantity.suffix());
        if unit.is_empty() || number.ends_with('"') {
            number
        } else {
            format!("{number} {unit}")
        }
    };
    let mut lines = vec![meaning.to_owned()];
    if let Some(value) = usual.value().and_then(|it| it.number()) {
        lines.push(format!("Usually {}. {}", shown(value), usual.source));
    }
    if let Some(limits) = kind.limits() {
        let least = if limits.least == flapwright_model::field::limits::ABOVE_0 {
            "above 0".to_owned()
        } else {
            format!("at least {}", shown(limits.least))
        };
        lines.push(format!("{least}, at most {}", shown(limits.most)));
    }
    if let FieldRef::Head(head) = field
        && let Some(setting) = head.setting()
    {
        let checks: Vec<&str> = CHECKS
            .iter()
            .filter(|check| check.settings.contains(&setting))
            .map(|check| check.name)
            .collect();
        if !checks.is_empty() {
            lines.push(format!("Used by: {}.", checks.join(", ")));
        }
    }
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use flapwright_model::field::{DoorField, HeadField};
    use flapwright_model::id::{BoxId, DoorId};
    use flapwright_model::length::Unit;

    use super::*;

    #[test]
    fn a_tooltip_says_meaning_usual_value_limits_and_who_goes_by_it() {
        let field = FieldRef::Head(HeadField::PointLead);
        let text = told(field, Quantity::Length(Unit::Millimetre));
        for part in [
            "How far the point of a drill runs ahead",
            "Usually 2 mm. Common practice, no source.",
            "at least 0 mm, at most 100 mm",
            "Used by: ",
        ] {
            assert!(text.contains(part), "{part}: {text}");
        }
        let reveal = FieldRef::Door(BoxId::new(1), DoorId::new(2), DoorField::Reveal(Edge::Top));
        let text = told(reveal, Quantity::Length(Unit::Inch));
        assert!(!text.contains("\" in"), "one unit: {text}");
        assert!(!text.contains("Used by"), "{text}");
    }
}
