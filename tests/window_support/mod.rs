//! What the tests of the window share.
#![allow(
    clippy::allow_attributes,
    reason = "each test file uses its own part of this module"
)]
#![allow(dead_code)]
#![expect(clippy::unwrap_used, reason = "helpers of tests")]

use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use flapwright::window::{Answer, App, Ask, Command, FileDialogs, Reply, prepare, shortcut};
use flapwright_model::id::{BoxId, CardId};
use flapwright_model::job::Job;
use flapwright_model::part::Part;
use flapwright_model::space::BoxPoint;
use flapwright_rules::finding::{Finding, Remedy};
use flapwright_rules::inspection::DoorReport;
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;
use flapwright_session::finding_key::FindingKey;
use flapwright_words::Names;

/// A window under test.
pub(crate) type Window = Harness<'static, App>;
/// What the window asked the system for.
pub(crate) type Asked = Rc<RefCell<Vec<Ask>>>;

/// Answers at once with what it was given; then gives up.
struct Scripted {
    answers: VecDeque<Answer>,
    asked: Asked,
}

impl FileDialogs for Scripted {
    fn ask(&mut self, ask: &Ask, reply: Reply) {
        self.asked.borrow_mut().push(ask.clone());
        reply.give(self.answers.pop_front().unwrap_or(Answer::Cancelled));
    }
}

/// A high window with the demo job, so that no control is scrolled away.
pub(crate) fn harness() -> Window {
    harness_with(Vec::new()).0
}

/// The same, with answers to what it asks the system for.
pub(crate) fn harness_with(answers: Vec<Answer>) -> (Window, Asked) {
    let asked = Asked::default();
    let job = flapwright_session::shipped::demo_job().unwrap();
    let files = Scripted {
        answers: answers.into(),
        asked: Rc::clone(&asked),
    };
    let window = window(job, Box::new(files), [1280.0, 2400.0], egui::Theme::Light);
    (window, asked)
}

/// A high window with the demo job in which a door was tweaked off its fitting.
pub(crate) fn tweaked() -> Window {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let path = root.join("assets/demo/houseboat-galley-tweaked.ron");
    let job = flapwright_session::job_file::read(&path).unwrap();
    plain_window(job, [1280.0, 2400.0], egui::Theme::Light)
}

/// A window of that size.
pub(crate) fn window(
    job: Job,
    files: Box<dyn FileDialogs>,
    size: [f32; 2],
    theme: egui::Theme,
) -> Window {
    let mut window = Harness::builder()
        .with_size(size)
        .with_theme(theme)
        .with_os(egui::os::OperatingSystem::Nix)
        .with_max_steps(60)
        .with_context_setup(prepare)
        .build_ui_state(edge_to_edge, App::new(job, None, files));
    window.run();
    window
}

/// As on the desktop: without the margin that the harness leaves around what it shows.
fn edge_to_edge(ui: &mut egui::Ui, app: &mut App) {
    let whole = ui.ctx().content_rect();
    ui.scope_builder(egui::UiBuilder::new().max_rect(whole), |ui| {
        ui.set_clip_rect(whole);
        app.frame(ui);
    });
}

/// A window that can ask the system for nothing.
pub(crate) fn plain_window(job: Job, size: [f32; 2], theme: egui::Theme) -> Window {
    let files = Scripted {
        answers: VecDeque::new(),
        asked: Asked::default(),
    };
    window(job, Box::new(files), size, theme)
}

/// Types into a field and presses Enter.
pub(crate) fn type_into(window: &mut Window, label: &str, text: &str) {
    window.get_by_label(label).focus();
    window.run();
    window.get_by_label(label).type_text(text);
    window.run();
    window.key_press(egui::Key::Enter);
    window.run();
}

/// Does one thing.
pub(crate) fn run_it(window: &mut Window, command: Command) {
    let ctx = window.ctx.clone();
    window.state_mut().run_command(&ctx, command);
    window.run_ok();
}

/// Does what a menu does.
pub(crate) fn run_ui(window: &mut Window, command: ActionId) {
    run_it(window, Command::Choose(command));
}

/// Presses the keys of a command.
pub(crate) fn press_keys(window: &mut Window, command: ActionId) {
    let keys = shortcut(command.keys()[0]);
    window.key_press_modifiers(keys.modifiers, keys.logical_key);
    window.run();
}

/// Opens a section of the form.
pub(crate) fn open_section(window: &mut Window, title: &str) {
    window.get_by_label(title).click();
    window.run();
}

/// The name of the box at a place in the job.
pub(crate) fn box_at(window: &Window, index: usize) -> BoxId {
    window.state().job().boxes[index].id
}

/// Shows the box at a place in the job.
pub(crate) fn show_box(window: &mut Window, index: usize) {
    let id = box_at(window, index);
    run_it(window, Command::Do(Action::ShowBox(id)));
}

/// The card at a place in the job.
pub(crate) fn card_at(window: &Window, index: usize) -> CardId {
    window.state().job().cards[index].id
}

/// Where a finding is, in the words of the window.
pub(crate) fn place_of(window: &Window, finding: &Finding) -> String {
    window.state().session().document().place_of(finding)
}

/// The sentence of a finding, as the list has it.
pub(crate) fn sentence_of(window: &Window, finding: &Finding) -> String {
    let names = Names::of(window.state().job());
    match finding.subjects.first().and_then(|it| it.box_id()) {
        Some(id) => flapwright_words::headline_in_box(finding, id, &names.speaker()),
        None => flapwright_words::headline(finding, &names.speaker()),
    }
}

/// What the button of a remedy says.
pub(crate) fn title_of(window: &Window, remedy: &Remedy) -> String {
    let names = Names::of(window.state().job());
    flapwright_words::remedy(remedy, &names.speaker())
}

/// The door of the first opening of a box.
pub(crate) fn door_of(window: &Window, box_index: usize) -> DoorReport {
    window.state().inspection().boxes[box_index].openings[0]
        .door
        .clone()
        .unwrap()
}

/// Where the bores in the doors of a box are.
pub(crate) fn bores_of_door(window: &Window, box_index: usize) -> Vec<BoxPoint> {
    window.state().inspection().boxes[box_index]
        .panels
        .iter()
        .filter(|panel| matches!(panel.id.part, Part::Leaf { .. }))
        .flat_map(|panel| panel.bores.iter().map(|bore| bore.in_box))
        .collect()
}

/// The findings of one check, with what they are called.
pub(crate) fn findings_named(window: &Window, check: &str) -> Vec<(FindingKey, Finding)> {
    window
        .state()
        .session()
        .inspection()
        .findings
        .iter()
        .filter(|finding| finding.check == check)
        .map(|finding| (FindingKey::of(finding), Finding::clone(finding)))
        .collect()
}
