//! Fitting cards in the window: typed, kept, imported, compared, put in the library.

#![expect(clippy::unwrap_used, reason = "helpers of tests")]

mod window_support;

use std::path::{Path, PathBuf};

use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flapwright::window::{Answer, CardCommand, Command};
use flapwright_files::library::Library;
use flapwright_model::card::OpeningKind;
use flapwright_model::card_draft::CardDraft;
use flapwright_model::file::{read_card, write_card};
use flapwright_session::action_table::ActionId;
use window_support::{Window, card_at, harness_with, plain_window, run_it, run_ui};

fn small_window() -> Window {
    let job = flapwright_session::shipped::demo_job().unwrap();
    plain_window(job, [1280.0, 800.0], egui::Theme::Light)
}

fn card(window: &mut Window, command: CardCommand) {
    run_it(window, Command::Card(command));
    window.run_ok();
}

fn key(window: &mut Window, modifiers: Modifiers, key: Key) {
    window.key_press_modifiers(modifiers, key);
    window.step();
    window.step();
}

fn say(window: &mut Window, event: Event) {
    window.event(event);
    window.step();
    window.step();
}

fn typed(window: &Window) -> CardDraft {
    window.state().typed_card().unwrap().clone()
}

const CTRL: Modifiers = Modifiers::COMMAND;

#[test]
fn a_card_that_is_changed_and_used_is_one_step_of_the_job() {
    let mut window = small_window();
    let before = window.state().job().cards[0].clone();
    let id = card_at(&window, 0);
    card(&mut window, CardCommand::Edit(id));
    key(&mut window, CTRL, Key::Num2);
    say(&mut window, Event::Text("99".to_owned()));
    key(&mut window, Modifiers::NONE, Key::Tab);
    assert_eq!(typed(&window).side_bores[0].down.by, "99");
    key(&mut window, CTRL, Key::S);
    assert_eq!(window.state().undo_steps(), 1);
    assert_ne!(window.state().job().cards[0], before);
    key(&mut window, Modifiers::NONE, Key::Escape);
    key(&mut window, Modifiers::NONE, Key::Escape);
    key(&mut window, Modifiers::NONE, Key::Escape);
    assert!(!window.state().cards_shown());
    run_ui(&mut window, ActionId::Undo);
    assert_eq!(window.state().job().cards[0], before);
}

#[test]
fn a_card_that_is_not_complete_changes_nothing_and_is_kept_on_the_desk() {
    let mut window = small_window();
    let before = window.state().job().clone();
    card(&mut window, CardCommand::New(OpeningKind::FoldingPair));
    say(&mut window, Event::Text("Plover".to_owned()));
    key(&mut window, CTRL, Key::S);
    assert_eq!(*window.state().job(), before);
    assert!(
        window.state().status().contains("Not used"),
        "{}",
        window.state().status()
    );
    key(&mut window, Modifiers::NONE, Key::Escape);
    key(&mut window, Modifiers::NONE, Key::Escape);
    window.run_ok();
    window.get_by_label("Go on with Plover").click();
    window.run_ok();
    assert_eq!(typed(&window).name, "Plover");
    card(&mut window, CardCommand::List);
    window.get_by_label("Throw away…").click();
    window.run_ok();
    assert!(window.state().dialog_open());
    window.get_by_label("Throw away").click();
    window.run_ok();
    assert!(window.query_by_label("Go on with Plover").is_none());
}

#[test]
fn undo_of_the_form_takes_a_run_of_typing_and_a_cell_back() {
    let mut window = small_window();
    card(&mut window, CardCommand::New(OpeningKind::TopHingedFlap));
    for letter in ["R", "a", "i", "l"] {
        say(&mut window, Event::Text(letter.to_owned()));
    }
    key(&mut window, CTRL, Key::Num2);
    for text in ["37", "64"] {
        say(&mut window, Event::Text(text.to_owned()));
        key(&mut window, Modifiers::NONE, Key::Tab);
    }
    let bore = typed(&window).side_bores[0].clone();
    assert_eq!((bore.down.by.as_str(), bore.back.by.as_str()), ("37", "64"));
    key(&mut window, CTRL, Key::Z);
    assert_eq!(typed(&window).side_bores[0].back.by, "");
    key(&mut window, CTRL, Key::Z);
    key(&mut window, CTRL, Key::Z);
    assert_eq!(typed(&window).name, "");
    for _ in 0..3 {
        key(&mut window, CTRL | Modifiers::SHIFT, Key::Z);
    }
    let draft = typed(&window);
    assert_eq!(
        (draft.name.as_str(), draft.side_bores[0].back.by.as_str()),
        ("Rail", "64")
    );
}

#[test]
fn a_table_from_a_spreadsheet_is_pasted_into_the_sizes_and_copied_out() {
    let mut window = small_window();
    card(
        &mut window,
        CardCommand::New(OpeningKind::ParallelRisingDoor),
    );
    key(&mut window, CTRL, Key::Num7);
    key(&mut window, Modifiers::NONE, Key::Enter);
    key(&mut window, Modifiers::NONE, Key::Enter);
    say(
        &mut window,
        Event::Paste("A1\t2,5\t4\nA2\t3,5\t7\r\nA3\t6\t9\n".to_owned()),
    );
    let sizes = typed(&window).sizes;
    assert_eq!(sizes.rows.len(), 3);
    assert_eq!(
        (sizes.cell(0, 1), sizes.cell(2, 0), sizes.cell(2, 2)),
        ("2,5", "A3", "9")
    );
    key(&mut window, Modifiers::NONE, Key::ArrowDown);
    key(&mut window, Modifiers::NONE, Key::ArrowRight);
    key(&mut window, Modifiers::NONE, Key::Delete);
    assert_eq!(typed(&window).sizes.cell(1, 1), "");
    key(&mut window, CTRL, Key::D);
    assert_eq!(typed(&window).sizes.cell(1, 1), "2,5");
    key(&mut window, CTRL, Key::Backspace);
    assert_eq!(typed(&window).sizes.rows.len(), 2);
    say(&mut window, Event::Paste("1\t".repeat(40)));
    window.get_by_label_contains("from here on the table has");
}

#[test]
fn a_card_dropped_on_the_window_is_imported_and_a_broken_one_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let cards = flapwright_session::shipped::demo_cards().unwrap();
    let mut bunting = cards[0].clone();
    "Bunting".clone_into(&mut bunting.name);
    let whole = folder.path().join("bunting.ron");
    std::fs::write(&whole, write_card(&bunting)).unwrap();
    let broken = folder.path().join("broken.ron");
    let text = write_card(&bunting).replace("Bunting", "Dunnock");
    std::fs::write(&broken, &text[..text.len() / 2]).unwrap();
    let mut window = small_window();
    let count = window.state().job().cards.len();
    drop_file(&mut window, whole);
    let last = window.state().job().cards.last();
    let last = last.map(|used| &used.card);
    assert!(last == Some(&bunting), "{}", window.state().status());
    let before = window.state().job().clone();
    drop_file(&mut window, broken);
    assert!(window.state().dialog_open());
    let told = window
        .get_by_label_contains("Nothing was changed")
        .value()
        .unwrap_or_default();
    assert!(
        told.contains("line ") && told.contains("broken.ron"),
        "{told}"
    );
    assert_eq!(*window.state().job(), before);
    assert_eq!(before.cards.len(), count + 1);
}

/// A file as the desktop hands it over.
#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|error| error.to_string())
    }
}

fn drop_file(window: &mut Window, path: PathBuf) {
    let file = std::sync::Arc::new(Dropped(path));
    window.input_mut().dropped_files.push(file);
    window.step();
    window.run_ok();
}

#[test]
fn a_half_typed_card_is_saved_as_a_file_and_gone_on_with() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("half.ron");
    let answers = vec![Answer::Chosen(path.clone()), Answer::Chosen(path.clone())];
    let (mut window, _) = harness_with(answers);
    card(&mut window, CardCommand::New(OpeningKind::OverTheTopDoor));
    say(&mut window, Event::Text("Siskin".to_owned()));
    key(&mut window, CTRL | Modifiers::SHIFT, Key::S);
    window.run_ok();
    let kept = typed(&window);
    assert_eq!(
        CardDraft::read(&std::fs::read_to_string(&path).unwrap()).unwrap(),
        kept
    );
    card(&mut window, CardCommand::Import);
    assert_eq!(typed(&window), kept);
}

#[test]
fn a_card_of_the_library_that_differs_is_adopted_or_kept() {
    let folder = tempfile::tempdir().unwrap();
    let mut window = small_window();
    let library = Library::new(folder.path().join("cards"), Vec::new());
    window.state_mut().set_library(library);
    let id = card_at(&window, 0);
    card(&mut window, CardCommand::JobCardIntoLibrary(id));
    let mine = window.state().job().cards[0].clone();
    let file = std::fs::read_dir(folder.path().join("cards"))
        .unwrap()
        .next()
        .unwrap()
        .unwrap()
        .path();
    let text = std::fs::read_to_string(&file).unwrap();
    let moved = text.replacen("by: All(71.0)", "by: All(73.5)", 1);
    assert_ne!(text, moved);
    std::fs::write(&file, moved).unwrap();
    card(&mut window, CardCommand::List);
    window.get_by_label_contains("the library's differs in 1");
    let id = card_at(&window, 0);
    card(&mut window, CardCommand::Compare(id));
    window.get_by_label("+2.500");
    window.get_by_label("Keep the job's").click();
    window.run_ok();
    assert_eq!(window.state().job().cards[0], mine);
    card(&mut window, CardCommand::FromLibrary(0));
    window.get_by_label("Adopt the other").click();
    window.run_ok();
    assert_ne!(window.state().job().cards[0], mine);
    assert_eq!(window.state().undo_steps(), 1);
}

#[test]
fn the_job_s_card_goes_to_a_file_that_reads_back() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("out.ron");
    let (mut window, _) = harness_with(vec![Answer::Chosen(path.clone())]);
    let id = card_at(&window, 1);
    card(&mut window, CardCommand::Export(id));
    window.run_ok();
    let read = read_card(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert_eq!(read, window.state().job().cards[1].card);
}

#[test]
fn f8_leads_to_what_is_missing_and_the_datum_is_changed_by_a_key() {
    let mut window = small_window();
    card(&mut window, CardCommand::New(OpeningKind::TopHingedFlap));
    say(&mut window, Event::Text("Pipit".to_owned()));
    key(&mut window, Modifiers::NONE, Key::F8);
    say(&mut window, Event::Text("6-1/2\"".to_owned()));
    key(&mut window, Modifiers::NONE, Key::F4);
    let bore = typed(&window).side_bores[0].clone();
    assert_eq!(bore.down.by, "6-1/2\"");
    assert_eq!(bore.down.from.words(), "top end of the side");
}

#[test]
fn a_card_that_is_being_typed_is_not_lost_when_the_window_closes() {
    let mut window = small_window();
    card(&mut window, CardCommand::New(OpeningKind::TopHingedFlap));
    say(&mut window, Event::Text("Knot".to_owned()));
    run_ui(&mut window, ActionId::Close);
    assert!(window.state().dialog_open() && !window.state().leaving());
    window.get_by_label_contains("neither in the job nor in a file: Knot");
    window.get_by_label("Close without them").click();
    window.run_ok();
    assert!(window.state().leaving());
}
