//! Findings in the window: accepted, explained, remedied, previewed, weighed; and the room.

mod window_support;

use egui_kittest::kittest::Queryable as _;
use flapwright::window::Command;
use flapwright_model::severity::SeveritySetting;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;
use flapwright_session::finding_key::FindingKey;
use window_support::{
    Window, findings_named, harness, open_section, place_of, press_keys, run_it, run_ui, title_of,
    tweaked, type_into,
};

const CHECK: &str = "bores-off-fitting";

fn off_fitting(window: &Window) -> (FindingKey, Finding) {
    let mut found = findings_named(window, CHECK);
    assert_eq!(found.len(), 1);
    found.remove(0)
}

#[test]
fn a_finding_is_accepted_with_a_reason_only_and_taken_back() {
    let mut window = tweaked();
    let before = window.state().job().clone();
    let (_, finding) = off_fitting(&window);
    let stops = window.state().inspection().open(Severity::Stop);
    let button = format!("Accept {CHECK}, {}", place_of(&window, &finding));
    window.get_by_label(&button).click();
    window.run();
    window.get_by_label("Accept").click();
    window.run();
    window.get_by_label("Give a reason first.");
    assert_eq!(*window.state().job(), before);

    type_into(&mut window, "Reason", "the owner drills by hand");
    assert!(!window.state().dialog_open());
    let (_, accepted) = off_fitting(&window);
    let reason = accepted.accepted.as_deref();
    assert_eq!(reason, Some("the owner drills by hand"));
    assert_eq!(window.state().inspection().open(Severity::Stop), stops - 1);
    assert_eq!(window.state().undo_steps(), 1);

    window.get_by_label_contains("Accepted (").click();
    window.run();
    window.get_by_label_contains("the owner drills by hand");
    let button = format!(
        "Take back the acceptance of {CHECK}, {}",
        place_of(&window, &finding)
    );
    window.get_by_label(&button).click();
    window.run();
    assert_eq!(*window.state().job(), before);
    press_keys(&mut window, ActionId::Undo);
    assert!(off_fitting(&window).1.accepted.is_some());
}

#[test]
fn a_finding_is_accepted_by_keys_alone() {
    let mut window = tweaked();
    let before = window.state().job().accepted.len();
    press_keys(&mut window, ActionId::NextFinding);
    press_keys(&mut window, ActionId::AcceptFinding);
    window.get_by_label("Reason").type_text("looked at");
    window.run();
    window.key_press(egui::Key::Enter);
    window.run();
    assert_eq!(window.state().job().accepted.len(), before + 1);
}

#[test]
fn the_page_of_a_check_is_shown_beside_its_finding() {
    let mut window = tweaked();
    let (_, finding) = off_fitting(&window);
    window
        .get_by_label(&format!("What is {CHECK}, {}", place_of(&window, &finding)))
        .click();
    window.run();
    window.get_by_label("What it looks at");
    window.get_by_label("Why it matters");
    window.key_press(egui::Key::Escape);
    window.run();
    assert!(!window.state().dialog_open());
}

#[test]
fn all_safe_remedies_are_one_step_and_are_told() {
    let mut window = tweaked();
    let before = window.state().job().clone();
    window.get_by_label("Apply all safe remedies").click();
    window.run();
    window.get_by_label_contains("Applied 1 safe remedy");
    window.get_by_label_contains("One step; undo takes all of it back.");
    window.key_press(egui::Key::Escape);
    window.run();
    assert!(findings_named(&window, CHECK).is_empty());
    assert_eq!(window.state().undo_steps(), 1);
    press_keys(&mut window, ActionId::Undo);
    assert_eq!(*window.state().job(), before);
}

#[test]
fn a_remedy_is_previewed_under_the_pointer_with_the_keyboard_and_by_its_switch() {
    let mut window = tweaked();
    let (key, finding) = off_fitting(&window);
    run_it(&mut window, Command::Do(Action::SelectFinding(Some(key))));
    let before = window.state().job().clone();
    assert_eq!(window.state().previewed(), None);
    let title = title_of(&window, &finding.remedies[0]);
    let title = title.as_str();

    window.get_by_label(title).hover();
    window.run();
    assert_eq!(window.state().previewed(), Some(title));
    window.remove_cursor();
    window.run();
    assert_eq!(window.state().previewed(), None);

    window.get_by_label(title).focus();
    window.run();
    assert_eq!(window.state().previewed(), Some(title));
    let switch = format!("Preview: {title}");
    window.get_by_label(&switch).focus();
    window.run();
    assert_eq!(window.state().previewed(), None);
    window.key_press(egui::Key::Space);
    window.run();
    assert_eq!(window.state().previewed(), Some(title));
    assert_eq!(*window.state().job(), before);

    // It shows what is, not what was: another state of the job ends it.
    type_into(&mut window, "reveal bottom", "4");
    assert_eq!(window.state().previewed(), None);
}

#[test]
fn an_obstacle_is_added_changed_and_removed() {
    let mut window = harness();
    for title in ["Box", "Door", "Fitting and size", "Room"] {
        open_section(&mut window, title);
    }
    let before = window.state().job().clone();
    window.get_by_label("Add obstacle").click();
    window.run();
    type_into(&mut window, "obstacle 1 from wall to", "250");
    let room = &window.state().job().room;
    assert_eq!(room.obstacles.len(), 1);
    assert_eq!(room.obstacles[0].from_wall.to, 250.0);
    let shown = &window.state().job().boxes[0];
    let above = shown.place.above_floor + shown.height;
    assert!(room.obstacles[0].above_floor.from > above);
    // An end before the beginning is refused where it was typed.
    type_into(&mut window, "obstacle 1 from wall from", "300");
    assert_eq!(window.state().job().room.obstacles[0].from_wall.from, 0.0);
    window.get_by_label("runs from 300 to 250 mm; put the smaller number first");
    window.get_by_label("Remove obstacle 1").click();
    window.run();
    assert_eq!(window.state().job().room, before.room);
}

#[test]
fn a_check_that_is_turned_off_finds_nothing() {
    let mut window = tweaked();
    for title in ["Box", "Door", "Fitting and size", "Settings"] {
        open_section(&mut window, title);
    }
    window.get_by_label("Severity of the checks").click();
    window.run();
    let combo = format!("severity of {CHECK}");
    window.get_by_label(&combo).click();
    window.run();
    window.get_by_label("off").click();
    window.run();
    let weights = &window.state().job().settings.weights;
    assert_eq!(weights.get(CHECK), Some(&SeveritySetting::Off));
    assert!(findings_named(&window, CHECK).is_empty());
    run_ui(&mut window, ActionId::Undo);
    assert_eq!(findings_named(&window, CHECK).len(), 1);
}

#[test]
fn a_limit_is_set_in_the_unit_of_the_job() {
    let mut window = harness();
    run_ui(&mut window, ActionId::UseInches);
    for title in ["Box", "Door", "Fitting and size", "Settings"] {
        open_section(&mut window, title);
    }
    type_into(&mut window, "limit: hand force", "10");
    // 10 lbf = 44.482 N (NIST SP 811, appendix B.8: 1 lbf = 4.448222 N).
    let newton = window.state().job().settings.most_hand_force;
    assert!((newton - 44.482_22).abs() < 1e-4, "{newton}");
}
