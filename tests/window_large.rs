//! The window on a job of five hundred boxes: the form stays in sight, and nothing is made or laid out
//! that nobody sees.

mod window_support;

use egui_kittest::kittest::Queryable as _;
use flapwright::window::{Command, View};
use flapwright_model::change::add_box;
use flapwright_model::edit::{Edit, apply};
use flapwright_model::job::Job;
use flapwright_session::action::Action;
use flapwright_session::shipped;
use window_support::{Window, harness, plain_window, run_it, show_box};

/// Five hundred plain boxes side by side on 75 m of wall.
#[expect(clippy::unwrap_used, reason = "helper of tests")]
fn large() -> Job {
    let mut job = Job::empty(shipped::materials().unwrap(), Vec::new());
    for _ in 0..500 {
        let Edit::InsertBox { mut with, .. } = add_box(&job, None) else {
            panic!("a box is inserted");
        };
        with.width = 150.0;
        let after = job.boxes.last().map(|it| it.id);
        apply(&mut job, Edit::InsertBox { after, with }).unwrap();
    }
    job
}

fn box_buttons(window: &Window) -> usize {
    window.query_all_by_label_contains("Box box ").count()
}

#[test]
fn five_hundred_boxes_are_a_list_that_scrolls_above_the_form() {
    let mut window = plain_window(large(), [1280.0, 800.0], egui::Theme::Light);
    let made = box_buttons(&window);
    assert!((3..30).contains(&made), "{made} buttons");
    let field = window.get_by_label("Box height").rect();
    assert!(field.min.y < 600.0, "the form begins at {}", field.min.y);

    let last = window.state().job().boxes[499].name.clone();
    let label = format!("Box {last}");
    assert!(window.query_by_label(&label).is_none());
    show_box(&mut window, 499);
    window.run_ok();
    window.get_by_label(&label);
    assert!(box_buttons(&window) < 30);
}

#[test]
fn drawings_are_laid_out_anew_only_when_what_they_show_has_changed() {
    let mut window = harness();
    let layouts =
        |window: &Window| [View::Elevation, View::Section].map(|view| window.state().layouts(view));
    let before = layouts(&window);
    window.run_steps(5);
    assert_eq!(layouts(&window), before);
    run_it(&mut window, Command::Do(Action::OpenDoor(0.5)));
    let opened = layouts(&window);
    assert_eq!(opened[1], before[1] + 1);
    window.run_steps(5);
    assert_eq!(layouts(&window), opened);
    show_box(&mut window, 1);
    assert!(layouts(&window)[0] > opened[0]);
}
