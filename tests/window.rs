//! The window, driven through its accessibility tree.

mod window_support;

use egui_kittest::kittest::Queryable as _;
use flapwright::window::{Answer, Ask, Command, ExportChoice, UiCommand, UnsavedAnswer, View};
use flapwright_model::edges::Edge;
use flapwright_model::file::{read_job, write_job};
use flapwright_model::length::Unit;
use window_support::{
    bores_of_door, door_of, findings_named, harness, harness_with, open_section, press_keys,
    run_it, run_ui, type_into,
};

const PLATES: usize = 1;

#[test]
fn a_typed_reveal_moves_the_edge_and_not_the_bores() {
    let mut window = harness();
    run_it(&mut window, Command::SelectBox(PLATES));
    window.run();
    let (edge, bores) = (
        door_of(&window, PLATES).edges.top,
        bores_of_door(&window, PLATES),
    );
    let before = window.state().job().clone();

    type_into(&mut window, "reveal top", "10");

    let moved = door_of(&window, PLATES).edges.top - edge;
    assert!(
        moved < -1.0,
        "a wider reveal lowers the top edge, moved {moved}"
    );
    assert_eq!(bores_of_door(&window, PLATES), bores);
    assert_eq!(window.state().undo_steps(), 1);
    press_keys(&mut window, UiCommand::Undo);
    assert_eq!(*window.state().job(), before);
}

#[test]
fn a_tweak_on_a_door_tied_to_its_edges_is_found_and_each_remedy_clears_it() {
    let mut window = harness();
    run_it(&mut window, Command::SelectBox(PLATES));
    window.run();
    window.get_by_label("bores hang on: own edges").click();
    window.run();
    assert!(findings_named(&window, "bores-off-fitting").is_empty());
    type_into(&mut window, "edge tweak top", "3\"");
    let door = window.state().job().boxes[PLATES].openings[0].door.as_ref();
    assert_eq!(door.map(|door| door.tweaks.at(Edge::Top)), Some(76.2));

    let tweaked = window.state().job().clone();
    let found = findings_named(&window, "bores-off-fitting");
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].1.remedies.len(), 3, "{:?}", found[0].1.remedies);
    for remedy in &found[0].1.remedies {
        window.get_by_label(&remedy.title).click();
        window.run();
        let left = findings_named(&window, "bores-off-fitting");
        assert!(left.is_empty(), "{}: {left:?}", remedy.title);
        press_keys(&mut window, UiCommand::Undo);
        assert_eq!(*window.state().job(), tweaked, "{}", remedy.title);
    }
}

#[test]
fn text_that_is_no_length_stays_with_what_is_wanted_and_changes_nothing() {
    let mut window = harness();
    let before = window.state().job().clone();
    for wrong in ["3/0", "23/5/8", "NaN", "1e999", "-5", "6000"] {
        type_into(&mut window, "Box width", wrong);
        assert_eq!(*window.state().job(), before, "{wrong}");
        let value = window.get_by_label("Box width").value();
        assert_eq!(value.as_deref(), Some(wrong));
    }
    assert_eq!(window.state().undo_steps(), 0);
    type_into(&mut window, "Box width", "23-5/8\"");
    assert_eq!(window.state().job().boxes[0].width, 600.075);
}

#[test]
fn escape_gives_the_old_value_back_and_arrow_keys_make_one_step() {
    let mut window = harness();
    let width = window.state().job().boxes[0].width;
    window.get_by_label("Box width").focus();
    window.run();
    window.get_by_label("Box width").type_text("12");
    window.run();
    window.key_press(egui::Key::Escape);
    window.run();
    assert_eq!(window.state().job().boxes[0].width, width);

    window.get_by_label("Box width").focus();
    window.run();
    for _ in 0..3 {
        window.key_press(egui::Key::ArrowUp);
        window.run();
    }
    window.key_press_modifiers(egui::Modifiers::SHIFT, egui::Key::ArrowDown);
    window.run();
    assert_eq!(window.state().job().boxes[0].width, width - 7.0);
    assert_eq!(window.state().undo_steps(), 1);
}

#[test]
fn dragging_a_name_changes_its_number_in_one_step() {
    let mut window = harness();
    let depth = window.state().job().boxes[0].depth;
    let field = window.get_by_label("Box depth").rect();
    let word = egui::pos2(field.min.x - 100.0, field.center().y);
    window.drag_at(word);
    window.run();
    for x in [10.0, 20.0, 40.0] {
        window.hover_at(word + egui::vec2(x, 0.0));
        window.run();
    }
    window.drop_at(word + egui::vec2(40.0, 0.0));
    window.run();
    assert_eq!(window.state().job().boxes[0].depth, depth + 10.0);
    assert_eq!(window.state().undo_steps(), 1);
}

#[test]
fn a_run_of_keys_in_a_name_is_one_step() {
    let mut window = harness();
    window.get_by_label("Box name").focus();
    window.run();
    for key in ["x", "y", "z"] {
        window.get_by_label("Box name").type_text(key);
        window.run();
    }
    assert!(window.state().job().boxes[0].name.ends_with("xyz"));
    assert_eq!(window.state().undo_steps(), 1);
}

#[test]
fn what_is_typed_is_taken_before_the_job_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("job.ron");
    let mut window = harness_with(vec![Answer::Chosen(path.clone())]).0;
    window.get_by_label("Box height").focus();
    window.run();
    window.get_by_label("Box height").type_text("560");
    window.run();
    press_keys(&mut window, UiCommand::Save);
    window.run();
    let saved = read_job(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert_eq!(saved.boxes[0].height, 560.0);
    assert!(!window.state().unsaved());
}

#[test]
fn a_fixed_shelf_comes_with_its_opening() {
    let mut window = harness();
    run_it(&mut window, Command::SelectBox(PLATES));
    window.run();
    open_section(&mut window, "Openings and shelves");
    let before = window.state().job().clone();
    let count = before.boxes[PLATES].openings.len();
    window.get_by_label("Add fixed shelf").click();
    window.run();
    assert_eq!(window.state().job().boxes[PLATES].openings.len(), count + 1);
    assert_eq!(window.state().undo_steps(), 1);
    press_keys(&mut window, UiCommand::Undo);
    assert_eq!(*window.state().job(), before);
}

#[test]
fn the_slider_opens_the_door_and_is_no_step() {
    let mut window = harness();
    let slider = window.get_by_label("Door open").rect();
    let start = slider.left_center() + egui::vec2(8.0, 0.0);
    window.drag_at(start);
    window.run();
    window.hover_at(start + egui::vec2(150.0, 0.0));
    window.run();
    window.drop_at(start + egui::vec2(150.0, 0.0));
    window.run();
    assert!(window.state().door_open() > 0.0);
    run_it(&mut window, Command::SetOpen(0.5));
    window.get_by_label("Door open").focus();
    window.run();
    window.key_press(egui::Key::ArrowRight);
    window.run();
    assert_eq!(window.state().door_open(), 0.51);
    let ctx = window.ctx.clone();
    window.state_mut().run_command(&ctx, Command::SetOpen(2.0));
    assert_eq!(window.state().door_open(), 1.0);
    assert_eq!(window.state().undo_steps(), 0);
}

#[test]
fn a_broken_file_keeps_the_open_job_and_says_where_it_is_broken() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("cut-short.ron");
    let text = write_job(harness().state().job());
    std::fs::write(&path, &text[..text.len() / 2]).unwrap();
    let mut window = harness_with(vec![Answer::Chosen(path.clone())]).0;
    let before = window.state().job().clone();
    run_ui(&mut window, UiCommand::Open);
    assert!(window.state().dialog_open());
    let told = window
        .get_by_label_contains("still open")
        .value()
        .unwrap_or_default();
    assert!(
        told.contains("line ") && told.contains("cut-short.ron"),
        "{told}"
    );
    assert_eq!(*window.state().job(), before);
    assert_eq!(std::fs::read_to_string(path).unwrap().len(), text.len() / 2);
    window.key_press(egui::Key::Escape);
    window.run();
    assert!(!window.state().dialog_open());
}

#[test]
fn closing_with_unsaved_changes_asks_and_escape_and_enter_answer() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kept.ron");
    let mut window = harness_with(vec![Answer::Chosen(path.clone())]).0;
    run_ui(&mut window, UiCommand::AddBox);
    run_ui(&mut window, UiCommand::Close);
    window.get_by_label("Unsaved changes");
    window.key_press(egui::Key::Escape);
    window.run();
    assert!(!window.state().dialog_open() && !window.state().leaving());

    run_ui(&mut window, UiCommand::Close);
    window.key_press(egui::Key::Enter);
    window.run();
    assert!(path.exists() && window.state().leaving());
    assert_eq!(window.state().path(), Some(path.as_path()));
}

#[test]
fn a_window_that_is_told_to_close_stays_while_something_is_unsaved() {
    let mut window = harness();
    run_ui(&mut window, UiCommand::AddBox);
    let info = window
        .input_mut()
        .viewports
        .entry(egui::ViewportId::ROOT)
        .or_default();
    info.events.push(egui::ViewportEvent::Close);
    window.step();
    window
        .input_mut()
        .viewports
        .entry(egui::ViewportId::ROOT)
        .or_default()
        .events
        .clear();
    window.run();
    assert!(window.state().dialog_open() && !window.state().leaving());
    let ctx = window.ctx.clone();
    window
        .state_mut()
        .run_command(&ctx, Command::Unsaved(UnsavedAnswer::Discard));
    assert!(window.state().leaving());
}

#[test]
fn where_the_system_has_no_file_window_a_path_is_typed_and_overwrites_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let taken = folder.path().join("taken.ron");
    std::fs::write(&taken, "keep me").unwrap();
    let mut window = harness_with(vec![Answer::Unavailable]).0;
    run_ui(&mut window, UiCommand::SaveAs);
    let ctx = window.ctx.clone();
    window
        .state_mut()
        .run_command(&ctx, Command::TypedPath(Some(taken.clone())));
    window.run();
    window.get_by_label_contains("there already");
    assert_eq!(std::fs::read_to_string(taken).unwrap(), "keep me");
    let free = folder.path().join("free");
    window
        .state_mut()
        .run_command(&ctx, Command::TypedPath(Some(free)));
    assert!(folder.path().join("free.ron").exists());
}

#[test]
fn sheets_are_written_and_a_folder_that_is_not_there_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let missing = folder.path().join("missing");
    let answers = vec![
        Answer::Chosen(missing.clone()),
        Answer::Chosen(folder.path().to_owned()),
    ];
    let (mut window, asked) = harness_with(answers);
    let ctx = window.ctx.clone();
    let choice = ExportChoice {
        pdf: true,
        png: false,
        dpi: 150,
    };
    for expected in [0, 1] {
        window
            .state_mut()
            .run_command(&ctx, Command::Export(choice));
        for _ in 0..600 {
            window.step();
            if !window.state().exporting() && window.state().status() != "" {
                break;
            }
            std::thread::sleep(std::time::Duration::from_millis(50));
        }
        let files = std::fs::read_dir(folder.path()).unwrap().count();
        assert_eq!(files, expected, "{}", window.state().status());
        window.state_mut().run_command(&ctx, Command::CloseDialog);
    }
    assert!(!missing.exists());
    assert_eq!(asked.borrow().len(), 2);
    assert!(asked.borrow().iter().all(|ask| *ask == Ask::ExportFolder));
}

#[test]
fn wheel_drag_and_double_click_move_a_drawing() {
    let mut window = harness();
    let size = |window: &egui_kittest::Harness<'_, _>| {
        let app: &flapwright::window::App = window.state();
        app.drawing_size(View::Elevation).unwrap()
    };
    let fitted = size(&window);
    let ctx = window.ctx.clone();
    let zoom = Command::Zoom {
        view: View::Elevation,
        factor: 2.0,
        at: egui::vec2(50.0, 50.0),
    };
    window.state_mut().run_command(&ctx, zoom);
    window.run();
    assert!((size(&window) / fitted - 2.0).abs() < 1e-9);
    window
        .state_mut()
        .run_command(&ctx, Command::Fit(View::Elevation));
    window.run();
    assert!((size(&window) - fitted).abs() < 1e-9);
}

#[test]
fn a_finding_is_lit_by_its_sentence() {
    let mut window = harness();
    let first = window.state().inspection().findings[0].clone();
    window.get_by_label(&first.message).click();
    window.run();
    assert_eq!(window.state().lit_finding(), Some(0));
    window.get_by_label(&first.message).click();
    window.run();
    assert_eq!(window.state().lit_finding(), None);
}

/// Every command of menus and keys, with the change that it must make.
#[test]
fn every_command_does_what_it_says() {
    for command in UiCommand::ALL {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("job.ron");
        let (mut window, asked) = harness_with(vec![Answer::Chosen(path.clone())]);
        if matches!(
            command,
            UiCommand::Undo | UiCommand::Redo | UiCommand::UseMillimetres
        ) {
            run_ui(&mut window, UiCommand::UseInches);
        }
        if command == UiCommand::Redo {
            run_ui(&mut window, UiCommand::Undo);
        }
        if command == UiCommand::Open {
            std::fs::write(&path, write_job(window.state().job())).unwrap();
        }
        let boxes = window.state().job().boxes.len();
        let size = window.state().drawing_size(View::Section).unwrap();
        run_ui(&mut window, command);
        let app = window.state();
        let done = match command {
            UiCommand::New => app.job().boxes.is_empty() && !app.job().materials.is_empty(),
            UiCommand::Open => app.path() == Some(&path),
            UiCommand::Save | UiCommand::SaveAs => path.exists() && asked.borrow().len() == 1,
            UiCommand::ExportSheets | UiCommand::ShowShortcuts | UiCommand::ShowAbout => {
                app.dialog_open()
            }
            UiCommand::Close => app.leaving(),
            UiCommand::Undo | UiCommand::UseMillimetres => app.job().unit == Unit::Millimetre,
            UiCommand::Redo | UiCommand::UseInches => app.job().unit == Unit::Inch,
            UiCommand::AddBox | UiCommand::DuplicateBox => {
                app.job().boxes.len() == boxes + 1 && app.shown().0 == 1
            }
            UiCommand::RemoveBox => app.job().boxes.len() == boxes - 1,
            UiCommand::FitViews => app.drawing_size(View::Section) == Some(size),
            UiCommand::ZoomIn => app.drawing_size(View::Section) > Some(size),
            UiCommand::ZoomOut => app.drawing_size(View::Section) < Some(size),
            UiCommand::ShowDimensions => app.drawing_size(View::Section) > Some(size),
            UiCommand::PlayDoor => app.playing() || app.door_open() > 0.0,
            UiCommand::NextFinding | UiCommand::PreviousFinding => app.lit_finding().is_some(),
            UiCommand::LightTheme => theme(&window) == egui::ThemePreference::Light,
            UiCommand::DarkTheme => theme(&window) == egui::ThemePreference::Dark,
            UiCommand::SystemTheme => theme(&window) == egui::ThemePreference::System,
        };
        assert!(done, "{command:?}: {}", window.state().status());
    }
}

fn theme<S>(window: &egui_kittest::Harness<'_, S>) -> egui::ThemePreference {
    window.ctx.options(|options| options.theme_preference)
}
