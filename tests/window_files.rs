//! Opening, saving, exporting and leaving, as the window does it.

mod window_support;

use egui_kittest::kittest::Queryable as _;
use flapwright::window::{Answer, Ask, Command, UnsavedAnswer};
use flapwright_model::file::{read_job, write_job};
use flapwright_model::part::Part;
use flapwright_session::action_table::ActionId;
use flapwright_session::export::ExportChoice;
use window_support::{
    Window, harness, harness_with, open_section, press_keys, run_ui, show_box, type_into,
};

#[test]
fn what_is_typed_is_taken_before_the_job_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("job.ron");
    let mut window = harness_with(vec![Answer::Chosen(path.clone())]).0;
    window.get_by_label("Box height").focus();
    window.run();
    window.get_by_label("Box height").type_text("560");
    window.run();
    press_keys(&mut window, ActionId::Save);
    window.run();
    let saved = read_job(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert_eq!(saved.boxes[0].height, 560.0);
    assert!(!window.state().unsaved());
}

#[test]
fn a_broken_file_keeps_the_open_job_and_says_where_it_is_broken() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("cut-short.ron");
    let text = write_job(harness().state().job());
    std::fs::write(&path, &text[..text.len() / 2]).unwrap();
    let mut window = harness_with(vec![Answer::Chosen(path.clone())]).0;
    let before = window.state().job().clone();
    run_ui(&mut window, ActionId::Open);
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
    run_ui(&mut window, ActionId::AddBox);
    run_ui(&mut window, ActionId::Close);
    window.get_by_label("Unsaved changes");
    window.key_press(egui::Key::Escape);
    window.run();
    assert!(!window.state().dialog_open() && !window.state().leaving());

    run_ui(&mut window, ActionId::Close);
    window.key_press(egui::Key::Enter);
    window.run();
    assert!(path.exists() && window.state().leaving());
    assert_eq!(window.state().path(), Some(path.as_path()));
}

#[test]
fn a_window_that_is_told_to_close_stays_while_something_is_unsaved() {
    let mut window = harness();
    run_ui(&mut window, ActionId::AddBox);
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
    run_ui(&mut window, ActionId::SaveAs);
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
        ..ExportChoice::default()
    };
    for expected in [0, 1] {
        window
            .state_mut()
            .run_command(&ctx, Command::Export(Box::new(choice.clone())));
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
        // What did not go out is not remembered.
        let remembered = window.state().job().boxes.iter().map(|it| it.records.len());
        assert_eq!(remembered.sum::<usize>() > 0, expected == 1);
    }
    show_box(&mut window, 1);
    window.get_by_label("Forget record of door").click();
    window.run();
    let is_leaf = |part| matches!(part, Part::Leaf { .. });
    let records = &window.state().job().boxes[1].records;
    assert!(!records.is_empty() && records.iter().all(|it| !is_leaf(it.part)));
    assert!(!missing.exists());
    assert_eq!(asked.borrow().len(), 2);
    assert!(asked.borrow().iter().all(|ask| *ask == Ask::ExportFolder));
}

/// Presses "Choose folder" and waits for what comes of it: the files, or what the window says.
#[expect(clippy::unwrap_used, reason = "helper of tests")]
fn export(window: &mut Window, folder: &std::path::Path) -> Vec<std::path::PathBuf> {
    window.get_by_label("Choose folder").click();
    window.step();
    for _ in 0..600 {
        window.step();
        if !window.state().exporting() && window.state().status() != "" {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    let found = std::fs::read_dir(folder).unwrap();
    found.map(|entry| entry.unwrap().path()).collect()
}

#[test]
fn pages_are_drawn_no_larger_than_the_scale_chosen_in_the_preview() {
    let folder = tempfile::tempdir().unwrap();
    let mut window = harness_with(vec![Answer::Chosen(folder.path().to_owned())]).0;
    run_ui(&mut window, ActionId::ExportSheets);
    let chosen = |window: &Window| window.get_by_label("Scale").value();
    assert_eq!(chosen(&window).as_deref(), Some("largest that fits"));
    window.get_by_label("Scale").click();
    window.run();
    window.get_by_label("1:10 at most").click();
    window.run();
    assert_eq!(chosen(&window).as_deref(), Some("1:10 at most"));
    window.get_by_label("PDF: all pages in one file").click();
    window.get_by_label("SVG: one file for each page").click();
    window.run();
    let written = export(&mut window, folder.path());
    let panels: Vec<_> = written
        .iter()
        .filter(|path| path.to_string_lossy().contains("side"))
        .collect();
    assert!(panels.len() >= 8, "{written:?}");
    for path in panels {
        let page = std::fs::read_to_string(path).unwrap();
        assert!(page.contains(">1:10<"), "{}", path.display());
    }
}

#[test]
fn an_archive_pdf_is_written_once_the_job_has_a_day_of_issue() {
    for (date, files) in [("", 0), ("2026-03-04", 1)] {
        let folder = tempfile::tempdir().unwrap();
        let mut window = harness_with(vec![Answer::Chosen(folder.path().to_owned())]).0;
        if !date.is_empty() {
            open_section(&mut window, "Settings");
            type_into(&mut window, "title block date of issue", date);
        }
        run_ui(&mut window, ActionId::ExportSheets);
        window.get_by_label("as PDF/A-1b, for keeping").click();
        window.run();
        let written = export(&mut window, folder.path());
        let status = window.state().status();
        assert_eq!(written.len(), files, "{status}");
        for path in written {
            let bytes = std::fs::read(path).unwrap();
            let mark = b"pdfaid:part";
            assert!(bytes.windows(mark.len()).any(|part| part == mark));
        }
        if files == 0 {
            window.get_by_label_contains("2026-01-31");
        }
    }
}
