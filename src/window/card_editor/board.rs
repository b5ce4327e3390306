//! Fields of the card form: text as the paper has it, choices, and where Enter leads.

use std::borrow::Cow;
use std::collections::HashMap;

use egui::text::{CCursor, CCursorRange};
use egui::{EventFilter, Id, Key, Label, Modifiers, RichText, Sense, TextEdit, Ui, WidgetInfo};
use flapwright_model::field::{Fields, Kind, Value};
use flapwright_model::validate::Problem;

use super::table::TableState;
use crate::window::tokens::tokens;

/// Width of the word before a field.
const WORD: f32 = 168.0;
/// Width of a field for a number.
const NUMBER: f32 = 96.0;

/// What is wrong with a draft, by field.
#[derive(Debug, Clone, Default)]
pub(crate) struct Problems {
    list: Vec<Problem>,
}

impl Problems {
    /// Of a draft that resolves to no card.
    pub(crate) const fn new(list: Vec<Problem>) -> Self {
        Self { list }
    }

    /// All, in the order of the form.
    pub(crate) fn all(&self) -> &[Problem] {
        &self.list
    }

    /// Those of a field.
    pub(crate) fn at<'a>(&'a self, field: &'a str) -> impl Iterator<Item = &'a Problem> {
        self.list
            .iter()
            .filter(move |problem| problem.field == field)
    }

    /// Whether something is only not there yet.
    pub(crate) fn is_missing(problem: &Problem) -> bool {
        let what = problem.what.as_str();
        what == "is empty" || what.starts_with("is \"\"") || what.contains("\" has neither ")
    }

    /// How many fields are empty, and how many wrong.
    pub(crate) fn counts(&self) -> (usize, usize) {
        let missing = self.list.iter().filter(|it| Self::is_missing(it)).count();
        (missing, self.list.len() - missing)
    }
}

/// Where the keyboard goes at the end of a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Go {
    /// To the stop after this one.
    After(Id),
    /// To the stop before this one.
    Before(Id),
}

/// A place that the keyboard can be sent to.
#[derive(Debug, Clone)]
pub(crate) struct Stop {
    /// The control.
    pub(crate) id: Id,
    /// Paths of the fields there; in a table with row and column.
    pub(crate) fields: Vec<(String, Option<(usize, usize)>)>,
}

/// What the fields of one frame share.
pub(crate) struct Board<'a> {
    /// Tells the fields of one editor from those of another.
    pub(crate) salt: u64,
    /// What is wrong.
    pub(crate) problems: &'a Problems,
    /// What the tables remember.
    pub(crate) sheets: &'a mut HashMap<Id, TableState>,
    /// The stops in their order.
    pub(crate) stops: Vec<Stop>,
    /// Where the keyboard goes next.
    pub(crate) go: Option<Go>,
}

impl Board<'_> {
    /// The control of a field.
    pub(crate) fn id(&self, path: &str) -> Id {
        Id::unique(("card field", self.salt, path))
    }

    /// Adds a stop with one field.
    fn stop(&mut self, id: Id, path: &str) {
        self.stops.push(Stop {
            id,
            fields: vec![(path.to_owned(), None)],
        });
    }

    /// Rows of fields of a part of the draft; what the part does not have is left out. Two that
    /// follow each other and are of one thing, e.g. down and back of a pivot, share a row.
    pub(crate) fn fields<F: Fields>(
        &mut self,
        ui: &mut Ui,
        at: &str,
        part: &mut F::Part,
        fields: &[F],
    ) {
        let there: Vec<F> = fields
            .iter()
            .copied()
            .filter(|field| field.get(part).is_some())
            .collect();
        let mut rest = there.as_slice();
        while let [first, more @ ..] = rest {
            rest = more;
            match more {
                [second, more @ ..] if of_one_thing(*first, *second) => {
                    rest = more;
                    self.pair_of(ui, at, part, [*first, *second]);
                }
                _ => self.field(ui, at, part, *first),
            }
        }
    }

    /// A row of one field.
    pub(crate) fn field<F: Fields>(&mut self, ui: &mut Ui, at: &str, part: &mut F::Part, field: F) {
        if let Some(value) = self.asked(ui, at, part, field) {
            // The value is of the field's own kind, and the part has the field.
            let _set = field.set(part, &value);
        }
    }

    /// A row of one field; another value for it, if one was typed or chosen. It is not set.
    pub(crate) fn asked<F: Fields>(
        &mut self,
        ui: &mut Ui,
        at: &str,
        part: &F::Part,
        field: F,
    ) -> Option<Value<'static>> {
        let now = field.get(part)?;
        let info = field.info();
        let path = path_of(at, field);
        let value = ui
            .horizontal(|ui| {
                word_ui(ui, info.label, info.meaning, WORD);
                let width = match info.kind {
                    Kind::Text { .. } => (ui.available_width() - 12.0).clamp(80.0, 420.0),
                    _ => NUMBER,
                };
                self.control(ui, &path, &field.name(), width, info.kind, &now)
            })
            .inner;
        self.told(ui, &path);
        value
    }

    /// Two fields in a row, e.g. down and back of a pivot.
    fn pair_of<F: Fields>(&mut self, ui: &mut Ui, at: &str, part: &mut F::Part, pair: [F; 2]) {
        ui.horizontal(|ui| {
            let info = pair[0].info();
            word_ui(ui, thing_of(info.name), info.meaning, WORD);
            for field in pair {
                let Some(now) = field.get(part) else { continue };
                let info = field.info();
                ui.label(RichText::new(info.label).color(tokens(ui).text_soft));
                let path = path_of(at, field);
                let asked = self.control(ui, &path, &field.name(), NUMBER - 14.0, info.kind, &now);
                if let Some(value) = asked {
                    let _set = field.set(part, &value);
                }
            }
        });
        for field in pair {
            self.told(ui, &path_of(at, field));
        }
    }

    /// The control of a field alone; another value, if one was typed or chosen.
    fn control(
        &mut self,
        ui: &mut Ui,
        path: &str,
        name: &str,
        width: f32,
        kind: Kind,
        now: &Value<'_>,
    ) -> Option<Value<'static>> {
        match (kind, now) {
            (Kind::Choice(choices), Value::Choice(now)) => {
                let all: Vec<(&str, &str)> = choices.iter().map(|it| (it.name, it.label)).collect();
                let mut chosen = choices.iter().map(|it| it.name).find(|it| it == now)?;
                self.bare_choice(ui, path, name, &mut chosen, &all)
                    .then_some(Value::Choice(Cow::Borrowed(chosen)))
            }
            (Kind::Flag, Value::Flag(now)) => {
                let mut chosen = *now;
                self.bare_choice(ui, path, name, &mut chosen, &NO_YES)
                    .then_some(Value::Flag(chosen))
            }
            (_, Value::Text(now)) => {
                let mut text = now.clone().into_owned();
                self.bare(ui, path, name, width, &mut text);
                (text != *now).then_some(Value::Text(Cow::Owned(text)))
            }
            _ => None,
        }
    }

    /// A number or short text with its word before it.
    pub(crate) fn number(
        &mut self,
        ui: &mut Ui,
        path: &str,
        word: &str,
        hint: &str,
        text: &mut String,
    ) {
        ui.horizontal(|ui| {
            word_ui(ui, word, hint, WORD);
            self.bare(ui, path, word, NUMBER, text);
        });
        self.told(ui, path);
    }

    /// The field alone. Enter goes on to the next one.
    pub(crate) fn bare(
        &mut self,
        ui: &mut Ui,
        path: &str,
        name: &str,
        width: f32,
        text: &mut String,
    ) {
        let id = self.id(path);
        self.stop(id, path);
        let problem = self.problems.at(path).next();
        let missing = problem.is_some_and(Problems::is_missing);
        let wrong = problem.is_some() && !missing;
        let mut output = TextEdit::singleline(text)
            .id(id)
            .char_limit(400)
            .desired_width(width)
            .hint_text(if missing { "needed" } else { "" })
            .text_color_opt(wrong.then(|| tokens(ui).stop))
            .show(ui);
        let response = output.response.response;
        if response.gained_focus() && !response.changed() {
            let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
            output.state.cursor.set_char_range(Some(all));
            output.state.store(ui.ctx(), id);
            response.scroll_to_me(None);
        }
        let response = response.accessible_name(name);
        if response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter)) {
            let back = ui.input(|input| input.modifiers.shift);
            self.go = Some(if back { Go::Before(id) } else { Go::After(id) });
        }
    }

    /// Why a field is not taken, underneath it; nothing where it is only empty.
    pub(crate) fn told(&self, ui: &mut Ui, path: &str) {
        let wrong = self
            .problems
            .at(path)
            .filter(|it| !Problems::is_missing(it));
        for problem in wrong {
            ui.horizontal(|ui| {
                ui.add_space(WORD + 8.0);
                let text = format!("{}; {}", problem.what, problem.remedy);
                let text = RichText::new(text).small().color(tokens(ui).stop);
                ui.add(Label::new(text).wrap());
            });
        }
    }

    /// One of a few. With the keyboard on it the arrow keys or the first letter choose, Enter goes
    /// on; a click opens the list.
    pub(crate) fn choice<T: Copy + PartialEq>(
        &mut self,
        ui: &mut Ui,
        path: &str,
        word: &str,
        hint: &str,
        now: &mut T,
        all: &[(T, &str)],
    ) -> bool {
        let changed = ui
            .horizontal(|ui| {
                word_ui(ui, word, hint, WORD);
                self.bare_choice(ui, path, word, now, all)
            })
            .inner;
        self.told(ui, path);
        changed
    }

    /// The choice alone.
    pub(crate) fn bare_choice<T: Copy + PartialEq>(
        &mut self,
        ui: &mut Ui,
        path: &str,
        name: &str,
        now: &mut T,
        all: &[(T, &str)],
    ) -> bool {
        let id = self.id(path);
        self.stop(id, path);
        let focused = ui.memory(|memory| memory.has_focus(id));
        let at = all.iter().position(|(value, _)| value == now);
        let mut chosen = at;
        if focused {
            chosen = choice_keys(ui, at, all);
            if let Some(go) = choice_go(ui, id) {
                self.go = Some(go);
            }
            let filter = EventFilter {
                horizontal_arrows: true,
                vertical_arrows: true,
                ..EventFilter::default()
            };
            ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
        }
        let shown = at.and_then(|at| all.get(at)).map_or("", |it| it.1);
        let response = choice_face(ui, id, shown);
        response.widget_info(|| {
            WidgetInfo::labeled(egui::Role::ComboBox, true, format!("{name}: {shown}"))
        });
        if response.gained_focus() {
            response.scroll_to_me(None);
        }
        egui::Popup::menu(&response)
            .width(response.rect.width())
            .show(|ui| {
                for (index, (value, words)) in all.iter().enumerate() {
                    if ui.selectable_label(value == now, *words).clicked() {
                        chosen = Some(index);
                    }
                }
            });
        let Some((value, _)) = chosen
            .filter(|it| Some(*it) != at)
            .and_then(|it| all.get(it))
        else {
            return false;
        };
        *now = *value;
        true
    }
}

/// What a field that is true or not may be.
const NO_YES: [(bool, &str); 2] = [(false, "no"), (true, "yes")];

/// The path of a field of the part that stands at a path; the draft itself stands at none.
fn path_of<F: Fields>(at: &str, field: F) -> String {
    let path = format!("{at}{}", field.path());
    path.strip_prefix('.').map_or(path.clone(), str::to_owned)
}

/// What a field is of, where two share a row: their names are that, a comma and the label.
fn thing_of(name: &str) -> &str {
    name.rsplit_once(", ").map_or("", |it| it.0)
}

fn of_one_thing<F: Fields>(first: F, second: F) -> bool {
    let thing = |field: F| {
        let info = field.info();
        let thing = thing_of(info.name);
        (info.name.len() == thing.len() + 2 + info.label.len()).then_some(thing)
    };
    thing(first).is_some_and(|it| !it.is_empty() && Some(it) == thing(second))
}

/// The word before a field.
fn word_ui(ui: &mut Ui, word: &str, hint: &str, width: f32) {
    let size = egui::vec2(width, ui.spacing().interact_size.y);
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    ui.allocate_ui_with_layout(size, layout, |ui| {
        ui.set_min_width(width);
        let label = ui.add(Label::new(word).selectable(false).truncate());
        if !hint.is_empty() {
            label.on_hover_text(hint);
        }
    });
}

/// What the arrow keys and first letters of this frame choose.
fn choice_keys<T>(ui: &Ui, at: Option<usize>, all: &[(T, &str)]) -> Option<usize> {
    let count = all.len();
    let mut at = at;
    ui.input_mut(|input| {
        for (key, by) in [
            (Key::ArrowDown, 1),
            (Key::ArrowRight, 1),
            (Key::ArrowUp, count.saturating_sub(1)),
            (Key::ArrowLeft, count.saturating_sub(1)),
            (Key::F4, 1),
        ] {
            for _ in 0..input.count_and_consume_key(Modifiers::NONE, key) {
                at = Some((at.unwrap_or(count.saturating_sub(1)) + by) % count.max(1));
            }
        }
        input.events.retain(|event| {
            let egui::Event::Text(text) = event else {
                return true;
            };
            if text.trim().is_empty() {
                return true;
            }
            let typed = text.to_lowercase();
            let from = at.map_or(0, |at| at + 1);
            let found = (0..count)
                .map(|step| (from + step) % count.max(1))
                .find(|index| {
                    all.get(*index)
                        .is_some_and(|it| it.1.to_lowercase().starts_with(&typed))
                });
            at = found.or(at);
            false
        });
    });
    at
}

/// Where Enter leads from a choice.
fn choice_go(ui: &Ui, id: Id) -> Option<Go> {
    ui.input_mut(|input| {
        if input.consume_key(Modifiers::SHIFT, Key::Enter) {
            Some(Go::Before(id))
        } else if input.consume_key(Modifiers::NONE, Key::Enter) {
            Some(Go::After(id))
        } else {
            None
        }
    })
}

/// What a choice looks like: the chosen words and a mark that there are others.
fn choice_face(ui: &mut Ui, id: Id, shown: &str) -> egui::Response {
    let font = egui::TextStyle::Button.resolve(ui.style());
    let text = ui
        .painter()
        .layout_no_wrap(shown.to_owned(), font, tokens(ui).text);
    let size = egui::vec2(
        (text.size().x + 34.0).max(NUMBER + 10.0),
        ui.spacing().interact_size.y,
    );
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let response = ui.interact(rect, id, Sense::click());
    let visuals = ui.style().interact(&response);
    let stroke = if response.has_focus() {
        ui.visuals().selection.stroke
    } else {
        visuals.bg_stroke
    };
    let painter = ui.painter();
    painter.rect(
        rect,
        visuals.corner_radius,
        visuals.weak_bg_fill,
        stroke,
        egui::StrokeKind::Inside,
    );
    let left = rect.left_center() + egui::vec2(8.0, -text.size().y / 2.0);
    painter.galley(left, text, tokens(ui).text);
    let tip = rect.right_center() + egui::vec2(-12.0, 2.5);
    let points = vec![
        tip,
        tip + egui::vec2(-4.0, -5.0),
        tip + egui::vec2(4.0, -5.0),
    ];
    let fill = tokens(ui).text_soft;
    painter.add(egui::Shape::convex_polygon(
        points,
        fill,
        egui::Stroke::NONE,
    ));
    response
}
