//! The page of one card: steps at the left, the form, the live picture at the right.

use egui::{
    Button, CentralPanel, Event, Frame, Id, Key, Label, Margin, Modifiers, Panel, RichText,
    ScrollArea, Ui,
};
use flapwright_model::job::Job;
use flapwright_rules::proof::proof;

use super::board::{Board, Go, Problems, Stop};
use super::measured::{Measured, measured_ui};
use super::picture::{Shown, picture_ui};
use super::step::Step;
use super::{CardCommand, CardEditor, bores, form, proof_step, sizes};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};
use flapwright_session::action_table::ActionId;

/// Shows the page, and does what the keys say while no question stands over it.
pub(super) fn editor_ui(
    ui: &mut Ui,
    editor: &mut CardEditor,
    job: &Job,
    asked: bool,
    queue: &mut Vec<Command>,
) {
    if !asked {
        keys(ui, editor, queue);
    }
    let bar = Frame::side_top_panel(ui.style()).inner_margin(Margin::symmetric(8, 5));
    Panel::top("card bar")
        .frame(bar)
        .show(ui, |ui| head_ui(ui, editor, queue));
    Panel::bottom("card foot")
        .frame(bar)
        .show(ui, |ui| foot_ui(ui, editor));
    let side = Frame::side_top_panel(ui.style()).inner_margin(Margin::same(8));
    Panel::left("card steps")
        .exact_size(176.0)
        .resizable(false)
        .frame(side)
        .show(ui, |ui| steps_ui(ui, editor));
    let wide = (ui.available_width() * 0.42).clamp(300.0, 900.0);
    Panel::right("card picture")
        .resizable(true)
        .default_size(wide)
        .size_range(280.0..=1100.0)
        .frame(side)
        .show(ui, |ui| {
            let unit = editor.draft.paper.length;
            picture_ui(
                ui,
                &mut editor.picture,
                editor.live.sketch.as_ref(),
                editor.revision,
                unit,
            );
        });
    let (stops, go) = CentralPanel::default()
        .frame(Frame::central_panel(ui.style()).inner_margin(Margin::same(10)))
        .show(ui, |ui| form_ui(ui, editor, job))
        .inner;
    lead(ui, editor, &stops, go);
    let focused = ui.memory(egui::Memory::focused);
    // A control that is gone, e.g. with its group, must not leave the keyboard nowhere.
    let owned: Vec<Id> = stops.iter().map(|stop| stop.id).collect();
    let before = std::mem::replace(&mut editor.owned, owned);
    let place = before.iter().position(|id| Some(*id) == focused);
    if let Some(place) =
        place.filter(|_| !editor.first && stops.iter().all(|stop| Some(stop.id) != focused))
        && let Some(stop) = stops.get(place.min(stops.len().saturating_sub(1)))
    {
        ui.memory_mut(|memory| memory.request_focus(stop.id));
        ui.ctx().request_repaint();
    }
    let typing = focused.and_then(|id| match editor.sheets.get(&id) {
        Some(sheet) => sheet.edit.is_some().then(|| id.with(sheet.at)),
        None => ui.ctx().text_edit_focused().then_some(id),
    });
    editor.look_again(&job.materials, typing);
    editor.had_focus = focused.is_some();
}

/// The form of the step.
fn form_ui(ui: &mut Ui, editor: &mut CardEditor, job: &Job) -> (Vec<Stop>, Option<Go>) {
    let mut sheets = std::mem::take(&mut editor.sheets);
    let mut board = Board {
        salt: editor.salt,
        problems: &editor.live.problems,
        sheets: &mut sheets,
        stops: Vec::new(),
        go: None,
    };
    let step = editor.step;
    let mut wanted = None;
    let scroll = ScrollArea::vertical()
        .id_salt(("card form", editor.salt, step.number()))
        .auto_shrink([false, false]);
    scroll.show(ui, |ui| {
        let draft = &mut editor.draft;
        if let Some(measured) = editor.measured.as_mut().filter(|_| step == Step::Sizes) {
            if measured_ui(ui, &mut board, measured, draft) {
                editor.measured = None;
            }
            return;
        }
        ui.label(bold(format!("{}  {}", step.number() + 1, step.words())).size(16.0));
        ui.add(Label::new(RichText::new(step.meaning()).color(tokens(ui).text_soft)).wrap());
        ui.add_space(6.0);
        match step {
            Step::Paper => form::paper_ui(ui, &mut board, draft),
            Step::Side => bores::side_ui(ui, &mut board, draft),
            Step::Top => bores::top_ui(ui, &mut board, draft),
            Step::Door => bores::door_ui(ui, &mut board, draft),
            Step::Body => form::body_ui(ui, &mut board, draft),
            Step::Motion => form::motion_ui(ui, &mut board, draft),
            Step::Sizes => {
                let outcome = sizes::sizes_ui(ui, &mut board, &mut editor.sizes, draft);
                editor.row = outcome.row;
                if outcome.measure {
                    let size = draft.sizes.under(outcome.row, "size").to_owned();
                    editor.measured = Some(Measured::new(&size));
                }
            }
            Step::Example => form::example_ui(ui, &mut board, draft),
            Step::Proof => wanted = proof_step::proof_ui(ui, &editor.live, job.unit),
        }
    });
    let (stops, go) = (board.stops, board.go);
    editor.sheets = sheets;
    if let Some(field) = wanted {
        editor.step = Step::of_field(&field);
        editor.wanted = Some(field);
    }
    (stops, go)
}

/// Sends the keyboard where Enter, F8 or a new step leads.
fn lead(ui: &Ui, editor: &mut CardEditor, stops: &[Stop], go: Option<Go>) {
    let focus = |id: Id| {
        ui.memory_mut(|memory| memory.request_focus(id));
        ui.ctx().request_repaint();
    };
    let place = |id: Id| stops.iter().position(|stop| stop.id == id);
    match go {
        Some(Go::After(id)) => match place(id).and_then(|at| stops.get(at + 1)) {
            Some(next) => {
                if let Some(sheet) = editor.sheets.get_mut(&next.id) {
                    sheet.choose(0, 0);
                }
                focus(next.id);
            }
            None => go_to(editor, editor.step.beside(1)),
        },
        Some(Go::Before(id)) => match place(id).and_then(|at| stops.get(at.checked_sub(1)?)) {
            Some(before) => focus(before.id),
            None => go_to(editor, editor.step.beside(-1)),
        },
        None => {}
    }
    if let Some(field) = &editor.wanted {
        let found = stops.iter().find_map(|stop| {
            let exact = stop.fields.iter().find(|(path, _)| path == field);
            exact.map(|(_, cell)| (stop.id, *cell))
        });
        let found = found.or_else(|| {
            stops.iter().find_map(|stop| {
                let near = stop.fields.iter().find(|(path, cell)| {
                    cell.is_none()
                        && (field.starts_with(path.as_str()) || path.starts_with(field.as_str()))
                });
                near.map(|(_, cell)| (stop.id, *cell))
            })
        });
        if let Some((id, cell)) = found {
            if let (Some((row, column)), Some(sheet)) = (cell, editor.sheets.get_mut(&id)) {
                sheet.choose(row, column);
            }
            focus(id);
        }
        if !stops.is_empty() {
            editor.wanted = None;
        }
        editor.first = false;
    } else if std::mem::take(&mut editor.first)
        && let Some(stop) = stops.first()
    {
        focus(stop.id);
    }
}

/// Shows a step and sends the keyboard to its first field.
fn go_to(editor: &mut CardEditor, step: Option<Step>) {
    let Some(step) = step else { return };
    editor.step = step;
    editor.first = true;
    editor.measured = None;
    if let Some(shown) = Shown::of_step(step) {
        editor.picture.shown = shown;
    }
}

/// Keys of the page. Those with Ctrl come before what a field would do with them.
fn keys(ui: &Ui, editor: &mut CardEditor, queue: &mut Vec<Command>) {
    let pressed =
        |modifiers: Modifiers, key: Key| ui.input_mut(|input| input.consume_key(modifiers, key));
    const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);
    let mut ask = |command: CardCommand| queue.push(Command::Card(command));
    if pressed(CTRL_SHIFT, Key::Z) || pressed(Modifiers::COMMAND, Key::Y) {
        ask(CardCommand::Redo);
    } else if pressed(Modifiers::COMMAND, Key::Z) {
        ask(CardCommand::Undo);
    }
    if pressed(CTRL_SHIFT, Key::S) {
        ask(CardCommand::SaveFile);
    } else if pressed(Modifiers::COMMAND, Key::S) {
        ask(CardCommand::UseInJob);
    }
    if pressed(Modifiers::COMMAND, Key::L) {
        ask(CardCommand::IntoLibrary);
    }
    if pressed(Modifiers::NONE, Key::F1) {
        queue.push(Command::Choose(ActionId::ShowShortcuts));
    }
    if pressed(Modifiers::COMMAND, Key::PageDown) {
        go_to(editor, editor.step.beside(1));
    }
    if pressed(Modifiers::COMMAND, Key::PageUp) {
        go_to(editor, editor.step.beside(-1));
    }
    let digits = [
        Key::Num1,
        Key::Num2,
        Key::Num3,
        Key::Num4,
        Key::Num5,
        Key::Num6,
        Key::Num7,
        Key::Num8,
        Key::Num9,
    ];
    for (step, key) in Step::ALL.into_iter().zip(digits) {
        if pressed(Modifiers::COMMAND, key) {
            go_to(editor, Some(step));
        }
    }
    if pressed(Modifiers::SHIFT, Key::F8) {
        next_problem(editor, false);
    } else if pressed(Modifiers::NONE, Key::F8) {
        next_problem(editor, true);
    }
    let escape = |event: &Event| {
        matches!(
            event,
            Event::Key {
                key: Key::Escape,
                pressed: true,
                ..
            }
        )
    };
    let escaped = ui.input(|input| input.events.iter().any(escape));
    if escaped && !editor.had_focus && !egui::Popup::is_any_open(ui.ctx()) {
        queue.push(Command::Card(CardCommand::Close));
    }
}

/// Sends the keyboard to the next field that is empty or wrong.
fn next_problem(editor: &mut CardEditor, onward: bool) {
    let all = editor.live.problems.all();
    let count = all.len();
    let next = match (editor.problem, onward) {
        (None, true) => 0,
        (None, false) => count.saturating_sub(1),
        (Some(at), true) => (at + 1) % count.max(1),
        (Some(at), false) => (at + count.saturating_sub(1)) % count.max(1),
    };
    let Some(problem) = all.get(next) else {
        editor.problem = None;
        return;
    };
    let field = problem.field.clone();
    go_to(editor, Some(Step::of_field(&field)));
    editor.wanted = Some(field);
    editor.problem = Some(next);
}

fn head_ui(ui: &mut Ui, editor: &CardEditor, queue: &mut Vec<Command>) {
    ui.horizontal(|ui| {
        let mut press =
            |ui: &mut Ui, enabled: bool, words: &str, hint: &str, command: CardCommand| {
                let button = ui
                    .add_enabled(enabled, Button::new(words))
                    .on_hover_text(hint);
                if button.clicked() {
                    queue.push(Command::Card(command));
                }
            };
        press(
            ui,
            true,
            "Back",
            "Goes back; what is typed is kept. Esc",
            CardCommand::List,
        );
        ui.label(bold(editor.title()).size(15.0));
        let (undo, redo) = editor.undo.can();
        press(ui, undo, "Undo", "Ctrl+Z", CardCommand::Undo);
        press(ui, redo, "Redo", "Ctrl+Shift+Z", CardCommand::Redo);
        ui.separator();
        let complete = editor.card().is_some();
        press(
            ui,
            complete,
            "Use in this job",
            "One step for undo of the job. Ctrl+S",
            CardCommand::UseInJob,
        );
        press(
            ui,
            true,
            "Save as file…",
            "Complete or half typed. Ctrl+Shift+S",
            CardCommand::SaveFile,
        );
        press(
            ui,
            complete,
            "Put in library",
            "Ctrl+L",
            CardCommand::IntoLibrary,
        );
        ui.separator();
        let (word, ink) = match editor.card().map(proof) {
            Some(proof) if proof.is_proved() => ("proved", tokens(ui).good),
            Some(_) => ("complete, not proved", tokens(ui).caution),
            None => ("not complete", tokens(ui).text_soft),
        };
        ui.label(RichText::new(word).color(ink));
        if editor.unsaved() {
            ui.label(RichText::new("not kept yet").color(tokens(ui).caution));
        }
    });
}

fn steps_ui(ui: &mut Ui, editor: &mut CardEditor) {
    let mut chosen = None;
    for step in Step::ALL {
        let of_step =
            |problem: &&flapwright_model::validate::Problem| Step::of_field(&problem.field) == step;
        let all = editor.live.problems.all().iter().filter(of_step);
        let (missing, wrong) = all.fold((0, 0), |(missing, wrong), problem| {
            if Problems::is_missing(problem) {
                (missing + 1, wrong)
            } else {
                (missing, wrong + 1)
            }
        });
        let text = format!("{}  {}", step.number() + 1, step.words());
        let button =
            Button::selectable(editor.step == step, text).min_size(egui::vec2(158.0, 26.0));
        let button = ui.add(button).on_hover_text(step.meaning());
        if button.clicked() {
            chosen = Some(step);
        }
        let (mark, ink) = match (missing, wrong) {
            (0, 0) => continue,
            (missing, 0) => (missing, tokens(ui).text_soft),
            (_, wrong) => (wrong, tokens(ui).stop),
        };
        let place = button.rect.right_center() - egui::vec2(8.0, 0.0);
        let font = egui::TextStyle::Small.resolve(ui.style());
        ui.painter()
            .text(place, egui::Align2::RIGHT_CENTER, mark, font, ink);
    }
    ui.add_space(8.0);
    let told = "Figures: numbers still missing, in red wrong ones. F8 leads to the next.";
    ui.add(Label::new(RichText::new(told).small().color(tokens(ui).text_soft)).wrap());
    if chosen.is_some() {
        go_to(editor, chosen);
    }
}

/// Wrong fields in words, and the buttons to go on.
fn foot_ui(ui: &mut Ui, editor: &mut CardEditor) {
    let problems: Vec<_> = editor
        .live
        .problems
        .all()
        .iter()
        .filter(|it| !Problems::is_missing(it))
        .cloned()
        .collect();
    let (missing, _) = editor.live.problems.counts();
    let mut wanted = None;
    if !problems.is_empty() {
        ScrollArea::vertical()
            .id_salt("card problems")
            .max_height(64.0)
            .show(ui, |ui| {
                ui.set_min_width(ui.available_width());
                for problem in problems.iter().take(30) {
                    let text = format!(
                        "{} {}; {}",
                        words_of(&problem.field),
                        problem.what,
                        problem.remedy
                    );
                    let text = RichText::new(text).small().color(tokens(ui).stop);
                    if ui
                        .add(Button::new(text).small().frame(false).wrap())
                        .clicked()
                    {
                        wanted = Some(problem.field.clone());
                    }
                }
            });
    }
    ui.horizontal(|ui| {
        let step = editor.step;
        if ui.add_enabled(step.beside(-1).is_some(), Button::new("Previous step")).clicked() {
            go_to(editor, step.beside(-1));
        }
        if ui.add_enabled(step.beside(1).is_some(), Button::new("Next step")).clicked() {
            go_to(editor, step.beside(1));
        }
        let told = match (missing, problems.len()) {
            (0, 0) => "Complete".to_owned(),
            (missing, wrong) => format!("{missing} missing, {wrong} wrong"),
        };
        ui.label(RichText::new(told).color(tokens(ui).text_soft));
        let keys = "Enter next field · F4 datum · Ctrl+Enter row · Ctrl+PageDown step · F8 what is missing · F1 keys";
        ui.label(RichText::new(keys).small().color(tokens(ui).text_soft));
    });
    if let Some(field) = wanted {
        go_to(editor, Some(Step::of_field(&field)));
        editor.wanted = Some(field);
    }
}

/// The path of a field in words: `side_bores[0].drill.depth` is side bores 1, drill, depth.
fn words_of(field: &str) -> String {
    let mut words = String::new();
    let mut rest = field;
    while let Some((before, after)) = rest.split_once('[') {
        words.push_str(before);
        let Some((index, beyond)) = after.split_once(']') else {
            rest = after;
            break;
        };
        let number = index
            .parse::<usize>()
            .map_or_else(|_| index.to_owned(), |it| (it + 1).to_string());
        words.push(' ');
        words.push_str(&number);
        rest = beyond;
    }
    words.push_str(rest);
    words
        .replace('_', " ")
        .replace('.', ", ")
        .trim_start_matches(", ")
        .to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_told_in_words() {
        assert_eq!(
            words_of("side_bores[0].drill.depth"),
            "side bores 1, drill, depth"
        );
        assert_eq!(words_of("sizes[2] \"load max\""), "sizes 3 \"load max\"");
        assert_eq!(words_of("envelope.down_to"), "envelope, down to");
    }
}
