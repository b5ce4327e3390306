//! Sizes, forces and the placing of struts, driven through the accessibility tree.

#![expect(clippy::unwrap_used, reason = "helpers of tests")]

mod window_support;

use egui_kittest::kittest::{NodeT as _, Queryable as _};
use flapwright::window::{Command, JobEdit};
use flapwright_model::door::{BuildUp, Leaves};
use flapwright_model::edit::Edit;
use flapwright_model::length::Unit;
use flapwright_model::lift::Lift;
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;
use flapwright_session::selection::SideTab;
use window_support::{
    Window, bores_of_door, harness, plain_window, press_keys, run_it, run_ui, show_box,
};

const MUGS: usize = 0;
const PLATES: usize = 1;

/// Shows the sizes of a box.
fn sizes_of(window: &mut Window, box_index: usize) {
    show_box(window, box_index);
    run_ui(window, ActionId::ShowSizes);
}

/// Gives the flap a card with gas struts and opens the question for their anchors.
fn strut_question(window: &mut Window) {
    take(window, "Dipper", "3");
    run_ui(window, ActionId::PlaceStrut);
    assert!(window.state().dialog_open());
}

fn take(window: &mut Window, card: &str, size: &str) {
    let (card, size) = (card.to_owned(), size.to_owned());
    run_it(window, Command::Do(Action::TakeSize { card, size }));
}

/// The size of the door of the first opening of a box.
fn size_of(window: &Window, box_index: usize) -> (String, String) {
    let job = window.state().job();
    let choice = job.boxes[box_index].doors()[0].fitting.as_ref().unwrap();
    let card = job.card_by_id(choice.card).unwrap();
    (card.name.clone(), choice.size.clone())
}

/// Lets the search run to its end.
fn wait_for_search(window: &mut Window) {
    for _ in 0..600 {
        if !window.state().searching() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(50));
        window.step();
    }
    window.run_ok();
    assert!(!window.state().searching());
}

#[test]
fn the_tabs_are_reached_by_key_and_by_button() {
    let mut window = harness();
    assert_eq!(window.state().side_tab(), SideTab::Findings);
    for (command, tab) in [
        (ActionId::ShowSizes, SideTab::Sizes),
        (ActionId::ShowForces, SideTab::Forces),
        (ActionId::ShowFindings, SideTab::Findings),
    ] {
        press_keys(&mut window, command);
        assert_eq!(window.state().side_tab(), tab);
    }
    window.get_by_label("Show forces").click();
    window.run();
    assert_eq!(window.state().side_tab(), SideTab::Forces);
    run_ui(&mut window, ActionId::NextFinding);
    assert_eq!(window.state().side_tab(), SideTab::Findings);
    assert_eq!(window.state().undo_steps(), 0);
}

#[test]
fn taking_a_size_is_one_step_and_the_bores_follow() {
    let mut window = harness();
    sizes_of(&mut window, MUGS);
    let before = window.state().job().clone();
    let bores = bores_of_door(&window, MUGS);

    window.get_by_label("Take Dipper, size 3").click();
    window.run();

    assert_eq!(size_of(&window, MUGS), ("Dipper".into(), "3".into()));
    assert_eq!(window.state().undo_steps(), 1);
    assert_ne!(bores_of_door(&window, MUGS), bores);
    press_keys(&mut window, ActionId::Undo);
    assert_eq!(*window.state().job(), before);
    assert_eq!(bores_of_door(&window, MUGS), bores);
}

#[test]
fn another_material_of_the_door_changes_the_verdicts_at_once() {
    let mut window = harness();
    sizes_of(&mut window, PLATES);
    let chosen = |window: &Window| {
        window
            .query_all_by_label_contains("suits this door: its whole mass range")
            .count()
    };
    let masses = |window: &Window| {
        window
            .query_all_by_label_contains("rated from")
            .filter_map(|node| {
                node.accesskit_node()
                    .value()
                    .or_else(|| node.accesskit_node().label())
            })
            .collect::<Vec<_>>()
    };
    assert_eq!(chosen(&window), 1);
    let before = masses(&window);
    assert!(!before.is_empty());

    let mut with = window.state().job().boxes[PLATES].clone();
    let door = with.doors()[0].id;
    let Leaves::One(leaf) = &mut with.door_mut(door).unwrap().leaves else {
        panic!("the plates are behind one leaf");
    };
    let (BuildUp::Plain { material, .. } | BuildUp::Framed { material, .. }) = &mut leaf.build;
    assert_ne!(material, "white oak");
    "white oak".clone_into(material);
    let edit = Edit::replace_box(with);
    run_it(
        &mut window,
        Command::Edit(JobEdit {
            label: "material".to_owned(),
            edit,
            field: None,
            typed: None,
            running: false,
        }),
    );
    window.run();
    assert_ne!(masses(&window), before);
}

#[test]
fn the_other_number_of_pieces_is_only_compared() {
    let mut window = harness();
    sizes_of(&mut window, PLATES);
    assert!(window.query_by_label("Take Heron, size 3").is_some());
    window.get_by_label("one piece").click();
    window.run();
    assert!(window.query_by_label("Take Heron, size 3").is_none());
    assert_eq!(window.state().undo_steps(), 0);
    window.get_by_label("a pair").click();
    window.run();
    assert!(window.query_by_label("Take Heron, size 3").is_some());
}

#[test]
fn slider_and_plots_share_one_value() {
    let mut window = harness();
    run_ui(&mut window, ActionId::ShowForces);
    for name in ["Hand force plot", "Moment plot"] {
        run_it(&mut window, Command::Do(Action::OpenDoor(0.0)));
        let plot = window.get_by_label(name).rect();
        window.drag_at(plot.center() - egui::vec2(40.0, 0.0));
        window.run();
        window.hover_at(plot.center());
        window.run();
        window.drop_at(plot.center());
        window.run();
        let s = window.state().door_open();
        assert!((s - 0.5).abs() <= 0.02, "{name}: {s}");
    }
    window.get_by_label("Door open").focus();
    window.run();
    let s = window.state().door_open();
    window.key_press(egui::Key::ArrowRight);
    window.run();
    assert!((window.state().door_open() - s - 0.01).abs() < 1e-9);
    window.get_by_label("Moment plot").focus();
    window.run();
    window.key_press(egui::Key::ArrowLeft);
    window.run();
    assert!((window.state().door_open() - s).abs() < 1e-9);
    assert_eq!(window.state().undo_steps(), 0);
}

#[test]
fn a_running_door_runs_on_to_its_end_in_section_and_plots() {
    let mut window = harness();
    run_ui(&mut window, ActionId::ShowForces);
    run_ui(&mut window, ActionId::PlayDoor);
    for _ in 0..400 {
        window.step();
    }
    assert_eq!(window.state().door_open(), 1.0);
    assert!(!window.state().playing());
}

#[test]
fn a_job_in_inches_shows_pounds() {
    let mut window = harness();
    sizes_of(&mut window, MUGS);
    assert!(window.query_all_by_label_contains("Door 3.56 kg").count() == 1);
    run_ui(&mut window, ActionId::UseInches);
    assert_eq!(window.state().job().unit, Unit::Inch);
    assert!(window.query_all_by_label_contains("Door 7.85 lb").count() == 1);
    assert!(window.query_all_by_label_contains("lbf·in").count() >= 1);
}

#[test]
fn two_boxes_of_one_name_each_show_their_own_fitting() {
    let mut job = flapwright_session::shipped::demo_job().unwrap();
    job.boxes[PLATES].name = job.boxes[MUGS].name.clone();
    let kinds = [MUGS, PLATES].map(|index| {
        let inspection = flapwright_answer::inspect(&job);
        let door = inspection.boxes[index].doors().next().unwrap();
        format!("{}, {}", door.kind.unwrap().words(), door.fitting)
    });
    assert_ne!(kinds[0], kinds[1]);
    let mut window = plain_window(job, [1280.0, 2400.0], egui::Theme::Light);
    for (index, own, other) in [(MUGS, 0, 1), (PLATES, 1, 0)] {
        sizes_of(&mut window, index);
        window.get_by_label(&kinds[own]);
        assert!(window.query_by_label(&kinds[other]).is_none());
    }
}

#[test]
fn the_strut_question_is_only_asked_of_a_flap_on_a_strut() {
    let mut window = harness();
    run_ui(&mut window, ActionId::PlaceStrut);
    assert!(!window.state().dialog_open(), "the Wren has a spring");
    strut_question(&mut window);
    window.get_by_label("Close").click();
    window.run();
    assert!(!window.state().dialog_open());
}

/// Begins the search that the open question asks for.
fn search(window: &mut Window) {
    window.get_by_label("Search").click();
    window.run_ok();
}

#[test]
fn cancel_stops_the_search_and_changes_nothing() {
    let mut window = harness();
    strut_question(&mut window);
    let before = window.state().job().clone();
    window.get_by_label("Search").click();
    window.step();
    window.step();
    if let Some(cancel) = window.query_by_label("Cancel") {
        cancel.click();
    }
    window.run_ok();
    run_it(&mut window, Command::Do(Action::StopSearch));
    assert!(!window.state().searching());
    assert!(window.state().dialog_open());
    assert_eq!(*window.state().job(), before);
    search(&mut window);
    run_it(&mut window, Command::CloseDialog);
    assert!(!window.state().searching() && !window.state().dialog_open());
    assert_eq!(*window.state().job(), before);
}

#[test]
fn found_anchors_go_into_the_card_as_one_step() {
    let mut window = harness();
    strut_question(&mut window);
    let before = window.state().job().clone();
    let steps = window.state().undo_steps();
    search(&mut window);
    wait_for_search(&mut window);
    window.get_by_label("Use anchors of size 4").click();
    window.run();

    assert!(!window.state().dialog_open());
    assert_eq!(window.state().undo_steps(), steps + 1);
    assert_eq!(size_of(&window, MUGS), ("Dipper".into(), "4".into()));
    let card = &window.state().job().card_named("Dipper").unwrap().card;
    let Lift::Strut(strut) = card.size("4").unwrap().lift else {
        panic!("size 4 has a strut");
    };
    for place in [strut.box_down, strut.box_back, strut.door_down] {
        assert!(
            (place * 10.0 - (place * 10.0).round()).abs() < 1e-6,
            "{place}"
        );
    }
    press_keys(&mut window, ActionId::Undo);
    assert_eq!(*window.state().job(), before);
}

#[test]
fn limits_that_leave_no_place_are_told_plainly() {
    let mut window = harness();
    strut_question(&mut window);
    window_support::type_into(&mut window, "In the box, down, least", "259");
    search(&mut window);
    wait_for_search(&mut window);
    let told = window
        .query_all_by_label_contains("No strut does it within these limits")
        .count();
    assert_eq!(told, 1);
}
