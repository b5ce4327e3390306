//! The window, driven through its accessibility tree.

mod window_support;

use egui_kittest::kittest::Queryable as _;
use flapwright::window::{Answer, Ask, Command, View};
use flapwright_model::edges::Edge;
use flapwright_model::file::write_job;
use flapwright_model::length::Unit;
use flapwright_session::action::Action;
use flapwright_session::action_table::{ACTIONS, ActionId};
use flapwright_session::finding_key::FindingKey;
use flapwright_session::selection::SideTab;
use window_support::{
    Window, bores_of_door, door_of, findings_named, harness, harness_with, open_section,
    press_keys, run_it, run_ui, sentence_of, show_box, title_of, type_into,
};

const PLATES: usize = 1;

#[test]
fn a_typed_reveal_moves_the_edge_and_not_the_bores() {
    let mut window = harness();
    show_box(&mut window, PLATES);
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
    press_keys(&mut window, ActionId::Undo);
    assert_eq!(*window.state().job(), before);
}

#[test]
fn a_tweak_on_a_door_tied_to_its_edges_is_found_and_each_remedy_clears_it() {
    let mut window = harness();
    show_box(&mut window, PLATES);
    window.run();
    window
        .get_by_label("bores follow: the door's edges")
        .click();
    window.run();
    assert!(findings_named(&window, "bores-off-fitting").is_empty());
    type_into(&mut window, "edge tweak top", "3\"");
    let door = window.state().job().boxes[PLATES].doors()[0];
    assert_eq!(door.tweaks.at(Edge::Top), 76.2);

    let tweaked = window.state().job().clone();
    let found = findings_named(&window, "bores-off-fitting");
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].1.remedies.len(), 3, "{:?}", found[0].1.remedies);
    for remedy in &found[0].1.remedies {
        let title = title_of(&window, remedy);
        window.get_by_label(&title).click();
        window.run();
        let left = findings_named(&window, "bores-off-fitting");
        assert!(left.is_empty(), "{title}: {left:?}");
        press_keys(&mut window, ActionId::Undo);
        assert_eq!(*window.state().job(), tweaked, "{title}");
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
fn a_fixed_shelf_comes_with_its_opening() {
    let mut window = harness();
    show_box(&mut window, PLATES);
    window.run();
    open_section(&mut window, "Openings and shelves");
    let before = window.state().job().clone();
    let count = before.boxes[PLATES].openings().len();
    window.get_by_label("Add fixed shelf").click();
    window.run();
    assert_eq!(
        window.state().job().boxes[PLATES].openings().len(),
        count + 1
    );
    assert_eq!(window.state().undo_steps(), 1);
    press_keys(&mut window, ActionId::Undo);
    let after = window.state().job();
    assert_eq!(after.boxes, before.boxes);
    assert!(after.next_id > before.next_id, "an identity is used once");
}

#[test]
fn a_field_is_found_by_its_words_and_changed_where_it_is_found() {
    let mut window = harness();
    window.run();
    let before = window.state().job().settings.clone();
    assert!(window.query_by_label("limit: drill point").is_none());
    window.get_by_label("Find a field").focus();
    window.run();
    window.get_by_label("Find a field").type_text("Drill point");
    window.run();
    assert!(window.query_by_label("Box width").is_none());
    type_into(&mut window, "limit: drill point", "3");
    let after = &window.state().job().settings;
    assert_eq!((before.point_lead, after.point_lead), (2.0, 3.0));
    type_into(&mut window, "limit: drill point", "300");
    assert_eq!(window.state().job().settings.point_lead, 3.0);
    let told = window.query_all_by_label_contains("it must be between 0 and 100 mm");
    assert!(told.count() > 0, "the row tells the limit");
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
    run_it(&mut window, Command::Do(Action::OpenDoor(0.5)));
    window.get_by_label("Door open").focus();
    window.run();
    assert!(
        window.get_by_label("Door open").is_focused(),
        "{:?}",
        window.ctx.memory(egui::Memory::focused)
    );
    window.key_press(egui::Key::ArrowRight);
    window.run();
    assert_eq!(window.state().door_open(), 0.51);
    let ctx = window.ctx.clone();
    window
        .state_mut()
        .run_command(&ctx, Command::Do(Action::OpenDoor(2.0)));
    assert_eq!(window.state().door_open(), 1.0);
    assert_eq!(window.state().undo_steps(), 0);
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
    let sentence = sentence_of(&window, &first);
    window.get_by_label(&sentence).click();
    window.run();
    assert_eq!(
        window.state().selected_finding(),
        Some(&first_finding(&window))
    );
    window.get_by_label(&sentence).click();
    window.run();
    assert_eq!(window.state().selected_finding(), None);
}

/// Every command of menus and keys, with the change that it must make.
fn first_finding(window: &Window) -> FindingKey {
    FindingKey::of(&window.state().inspection().findings[0])
}

#[test]
fn every_command_does_what_it_says() {
    for command in ACTIONS.iter().map(|info| info.id) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("job.ron");
        let (mut window, asked) = harness_with(vec![Answer::Chosen(path.clone())]);
        if matches!(
            command,
            ActionId::Undo | ActionId::Redo | ActionId::UseMillimetres
        ) {
            run_ui(&mut window, ActionId::UseInches);
        }
        if command == ActionId::Redo {
            run_ui(&mut window, ActionId::Undo);
        }
        if command == ActionId::PlaceStrut {
            let (card, size) = ("Dipper".to_owned(), "1".to_owned());
            run_it(&mut window, Command::Do(Action::TakeSize { card, size }));
        }
        if command == ActionId::ShowFindings {
            run_ui(&mut window, ActionId::ShowSizes);
        }
        if command == ActionId::Open {
            std::fs::write(&path, write_job(window.state().job())).unwrap();
        }
        if command == ActionId::ApplySafe {
            window = window_support::tweaked();
        }
        if matches!(command, ActionId::AcceptFinding | ActionId::ExplainFinding) {
            let first = first_finding(&window);
            run_it(&mut window, Command::Do(Action::SelectFinding(Some(first))));
        }
        let boxes = window.state().job().boxes.len();
        let size = window.state().drawing_size(View::Section).unwrap();
        run_ui(&mut window, command);
        let app = window.state();
        let done = match command {
            ActionId::New => app.job().boxes.is_empty() && !app.job().materials.is_empty(),
            ActionId::Open => app.path() == Some(&path),
            ActionId::Save | ActionId::SaveAs => path.exists() && asked.borrow().len() == 1,
            ActionId::ExportSheets
            | ActionId::PlaceStrut
            | ActionId::ApplySafe
            | ActionId::AcceptFinding
            | ActionId::ExplainFinding
            | ActionId::ShowShortcuts
            | ActionId::ShowAbout => app.dialog_open(),
            ActionId::ShowFindings => app.side_tab() == SideTab::Findings,
            ActionId::ShowSizes => app.side_tab() == SideTab::Sizes,
            ActionId::ShowForces => app.side_tab() == SideTab::Forces,
            ActionId::ShowCards => app.cards_shown(),
            ActionId::ImportCard => *asked.borrow() == [Ask::OpenCard],
            ActionId::Close => app.leaving(),
            ActionId::Undo | ActionId::UseMillimetres => app.job().unit == Unit::Millimetre,
            ActionId::Redo | ActionId::UseInches => app.job().unit == Unit::Inch,
            ActionId::AddBox | ActionId::DuplicateBox => {
                app.job().boxes.len() == boxes + 1 && app.shown().0 == Some(app.job().boxes[1].id)
            }
            ActionId::RemoveBox => app.job().boxes.len() == boxes - 1,
            ActionId::FitViews => app.drawing_size(View::Section) == Some(size),
            ActionId::ZoomIn => app.drawing_size(View::Section) > Some(size),
            ActionId::ZoomOut => app.drawing_size(View::Section) < Some(size),
            ActionId::ShowDimensions => app.drawing_size(View::Section) > Some(size),
            ActionId::PlayDoor => app.playing() || app.door_open() > 0.0,
            ActionId::NextFinding | ActionId::PreviousFinding => app.selected_finding().is_some(),
            ActionId::LightTheme => theme(&window) == egui::ThemePreference::Light,
            ActionId::DarkTheme => theme(&window) == egui::ThemePreference::Dark,
            ActionId::SystemTheme => theme(&window) == egui::ThemePreference::System,
        };
        assert!(done, "{command:?}: {}", window.state().status());
    }
}

fn theme<S>(window: &egui_kittest::Harness<'_, S>) -> egui::ThemePreference {
    window.ctx.options(|options| options.theme_preference)
}
