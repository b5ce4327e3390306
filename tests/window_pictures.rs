//! The pictures of the window: one RON file in `screenshots-spec` for each.
//!
//! With `UPDATE_PICTURES=1` the pictures are made anew; without it they are compared with what is
//! there. Either way everything that a file says must be seen is looked for.

#![expect(clippy::unwrap_used, reason = "helpers of tests")]

mod window_support;

use std::path::{Path, PathBuf};

use egui_kittest::kittest::Queryable as _;
use flapwright::window::{CardCommand, Command};
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;
use flapwright_session::job_file;
use image::RgbaImage;
use serde::Deserialize;
use window_support::{Window, plain_window, run_it, run_ui, type_into};

/// One picture.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Picture {
    /// Job file, from the root of the project.
    job: String,
    /// Width and height of the window.
    size: (u16, u16),
    /// Colours.
    theme: Theme,
    /// What is done before the picture is taken.
    steps: Vec<Step>,
    /// Words that must be in the window.
    seen: Vec<String>,
}

#[derive(Debug, Clone, Copy, Deserialize)]
enum Theme {
    Light,
    Dark,
}

/// One thing that is done.
#[derive(Debug, Deserialize)]
enum Step {
    /// Shows the box of that index.
    Box(usize),
    /// Shows the opening of that index.
    Opening(usize),
    /// Lights the first finding of that check.
    Finding(String),
    /// Opens the door: 0 closed, 1 open.
    Door(f64),
    /// Types into the field of that name and presses Enter.
    Type(String, String),
    /// Presses the button, tab or heading of that name.
    Press(String),
    /// Scrolls until the control of that name is in sight.
    Scroll(String),
    /// Accepts the first finding of that check with that reason.
    Accept(String, String),
    /// Shows the page of the selected finding.
    Explain,
    /// Asks how to export.
    ExportQuestion,
    /// Shows the list of keys.
    Keys,
    /// Opens the job's card of that index at that step of its form, counted from 1.
    Card(usize, usize),
    /// Presses the key of that name.
    Key(String),
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn files() -> Vec<PathBuf> {
    let folder = std::fs::read_dir(root().join("screenshots-spec")).unwrap();
    let mut files: Vec<PathBuf> = folder
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        .collect();
    files.sort();
    files
}

fn take(window: &mut Window, step: &Step) {
    match step {
        Step::Box(index) => window_support::show_box(window, *index),
        Step::Opening(index) => {
            let session = window.state().session();
            let opening = session.shown_wall_box().unwrap().openings()[*index].id;
            run_it(window, Command::Do(Action::ShowOpening(opening)));
        }
        Step::Finding(check) => {
            let found = window_support::findings_named(window, check);
            let (key, _) = found
                .first()
                .unwrap_or_else(|| panic!("no finding {check}"));
            run_it(
                window,
                Command::Do(Action::SelectFinding(Some(key.clone()))),
            );
        }
        Step::Door(s) => run_it(window, Command::Do(Action::OpenDoor(*s))),
        Step::Type(label, text) => type_into(window, label, text),
        Step::Press(label) => {
            window.get_by_label(label).click();
            window.run();
        }
        Step::Scroll(label) => {
            window.get_by_label(label).scroll_to_me();
            window.run();
        }
        Step::Accept(check, reason) => {
            let (finding, _) = window_support::findings_named(window, check)[0].clone();
            let reason = reason.clone();
            run_it(window, Command::Do(Action::Accept { finding, reason }));
        }
        Step::Explain => run_ui(window, ActionId::ExplainFinding),
        Step::ExportQuestion => run_ui(window, ActionId::ExportSheets),
        Step::Card(index, step) => {
            let id = window_support::card_at(window, *index);
            run_it(window, Command::Card(CardCommand::Edit(id)));
            let key = egui::Key::from_name(&step.to_string()).unwrap();
            window.key_press_modifiers(egui::Modifiers::COMMAND, key);
            window.run_ok();
        }
        Step::Key(name) => {
            window.key_press(egui::Key::from_name(name).unwrap());
            window.run_ok();
        }
        Step::Keys => run_ui(window, ActionId::ShowShortcuts),
    }
}

#[test]
fn the_pictures_show_what_their_files_say() {
    let update = std::env::var_os("UPDATE_PICTURES").is_some();
    let files = files();
    assert!(!files.is_empty());
    let mut failures = Vec::new();
    for file in files {
        let text = std::fs::read_to_string(&file).unwrap();
        let picture: Picture =
            ron::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        let job = job_file::read(&root().join(&picture.job)).unwrap();
        let theme = match picture.theme {
            Theme::Light => egui::Theme::Light,
            Theme::Dark => egui::Theme::Dark,
        };
        let size = [f32::from(picture.size.0), f32::from(picture.size.1)];
        let mut window = plain_window(job, size, theme);
        for step in &picture.steps {
            take(&mut window, step);
        }
        for words in &picture.seen {
            let count = window.query_all_by_label_contains(words).count();
            if count == 0 {
                failures.push(format!("{}: {words:?} is not seen", file.display()));
            }
        }
        window.remove_cursor();
        window.run();
        let made = window.render().unwrap();
        let name = file.file_stem().unwrap().to_string_lossy().into_owned();
        let kept = root().join(format!("screenshots-spec/pictures/{name}.png"));
        if update {
            std::fs::create_dir_all(kept.parent().unwrap()).unwrap();
            made.save(&kept).unwrap();
            continue;
        }
        let before = image::open(&kept).unwrap().into_rgba8();
        if let Some(difference) = difference(&before, &made) {
            let aside = kept.with_extension("new.png");
            made.save(&aside).unwrap();
            failures.push(format!(
                "{}: {difference}; see {}",
                kept.display(),
                aside.display()
            ));
        }
    }
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}

/// How two pictures differ, if by more than the smoothing of a few edges.
fn difference(before: &RgbaImage, now: &RgbaImage) -> Option<String> {
    if before.dimensions() != now.dimensions() {
        return Some(format!(
            "{:?} became {:?}",
            before.dimensions(),
            now.dimensions()
        ));
    }
    let other = before
        .pixels()
        .zip(now.pixels())
        .filter(|(a, b)| a.0.iter().zip(b.0).any(|(a, b)| a.abs_diff(b) > 48))
        .count();
    let allowed = before.pixels().count() / 1000;
    (other > allowed).then(|| format!("{other} pixels differ, {allowed} may"))
}
