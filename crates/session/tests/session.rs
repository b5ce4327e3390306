//! A session driven without a window: what a person does with a job from opening to the workshop.

use std::path::{Path, PathBuf};

use flapwright_model::change::forget_records;
use flapwright_model::door::BoreReference;
use flapwright_model::edit::{Edit, JobHead};
use flapwright_model::file::{read_job, write_job};
use flapwright_model::id::BoxId;
use flapwright_model::length::Unit;
use flapwright_model::part::PartId;
use flapwright_motion::strut_mounts::MountError;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_session::Session;
use flapwright_session::action::Action;
use flapwright_session::action_table::{ACTIONS, ActionId};
use flapwright_session::export::ExportChoice;
use flapwright_session::finding_key::FindingKey;
use flapwright_session::history::Gesture;
use flapwright_session::outcome::{ExportEnd, News, Outcome};
use flapwright_session::{job_file, shipped};

const OFF: &str = "bores-off-fitting";

#[expect(clippy::unwrap_used, reason = "helper of tests")]
fn demo() -> Session {
    Session::new(shipped::demo_job().unwrap(), None)
}

/// The demo job in which a door was tweaked off its fitting.
#[expect(clippy::unwrap_used, reason = "helper of tests")]
fn tweaked() -> Session {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../assets/demo");
    Session::open(demo.join("houseboat-galley-tweaked.ron")).unwrap()
}

fn found(session: &Session, check: &str) -> Option<(FindingKey, Finding)> {
    let mut findings = session.inspection().findings.iter();
    let finding = findings.find(|it| it.check == check)?;
    Some((FindingKey::of(finding), Finding::clone(finding)))
}

fn named(session: &Session, name: &str) -> Action {
    Action::Edit {
        label: format!("job: name {name}"),
        edit: Edit::ReplaceHead(Box::new(JobHead {
            name: name.to_owned(),
            ..JobHead::of(session.job())
        })),
        gesture: Some(Gesture(1)),
    }
}

fn written(news: Vec<News>) -> Vec<PathBuf> {
    match news.into_iter().next() {
        Some(News::Export(ExportEnd::Written(written))) => written.files,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_new_job_keeps_materials_cards_and_unit_and_has_no_box() {
    let mut session = demo();
    let _inches = session.apply(Action::UseUnit(Unit::Inch));
    let before = session.job().clone();
    assert!(session.apply(Action::New).is_done());
    let job = session.job();
    assert!(job.boxes.is_empty() && !session.document().unsaved());
    assert_eq!((job.unit, &job.materials), (Unit::Inch, &before.materials));
    assert_eq!(job.cards.len(), before.cards.len());
    assert!(!session.available(ActionId::ExportSheets).enabled);
    assert!(session.apply(Action::AddBox).is_done());
    assert_eq!(session.job().boxes.len(), 1);
    assert!(session.available(ActionId::ExportSheets).enabled);
}

#[test]
fn an_edit_is_undone_and_redone_and_a_gesture_is_one_step() {
    let mut session = demo();
    let before = session.job().clone();
    for name in ["a", "ab", "abc"] {
        let edit = named(&session, name);
        assert!(session.apply(edit).is_done());
    }
    assert_eq!(session.document().history().len(), 1);
    let undo = session.available(ActionId::Undo);
    assert_eq!((undo.enabled, undo.more), (true, Some("job: name abc")));
    assert!(session.apply(Action::Undo).is_done());
    assert_eq!(*session.job(), before);
    assert!(!session.document().unsaved());
    assert!(session.apply(Action::Redo).is_done());
    assert_eq!(session.job().name, "abc");
    let _shown = session.apply(Action::EndGesture);
    let edit = named(&session, "abcd");
    assert!(session.apply(edit).is_done());
    assert_eq!(session.document().history().len(), 2);
}

#[test]
fn a_change_that_makes_no_sound_job_is_refused_and_changes_nothing() {
    let mut session = demo();
    let before = session.job().clone();
    let outcome = session.apply(Action::Edit {
        label: "no cards".to_owned(),
        edit: Edit::ReplaceCards(Vec::new()),
        gesture: None,
    });
    assert!(matches!(outcome, Outcome::Refused { problems, .. } if !problems.is_empty()));
    assert_eq!(*session.job(), before);
    assert!(!session.document().unsaved());
}

#[test]
fn a_remedy_clears_its_finding_as_one_step() {
    let mut session = tweaked();
    let before = session.job().clone();
    let (finding, _) = found(&session, OFF).unwrap();
    let remedy = Action::ApplyRemedy { finding, remedy: 0 };
    assert!(session.apply(remedy.clone()).is_done());
    assert!(found(&session, OFF).is_none());
    assert_eq!(session.document().history().len(), 1);
    // It is gone, and so is what it offered.
    assert!(matches!(session.apply(remedy), Outcome::Nothing));
    let _undone = session.apply(Action::Undo);
    assert_eq!(*session.job(), before);
    assert!(found(&session, OFF).is_some());
}

#[test]
fn all_safe_remedies_are_one_step_and_are_told() {
    let mut session = tweaked();
    let before = session.job().clone();
    assert!(session.available(ActionId::ApplySafe).enabled);
    let Outcome::Remedied(applied) = session.apply(Action::ApplySafe) else {
        panic!("nothing was remedied");
    };
    assert!(applied.iter().any(|it| it.check == OFF));
    assert_eq!(session.document().history().len(), 1);
    assert!(!session.available(ActionId::ApplySafe).enabled);
    let _undone = session.apply(Action::Undo);
    assert_eq!(*session.job(), before);
}

#[test]
fn a_finding_is_accepted_with_a_reason_only_and_taken_back() {
    let mut session = tweaked();
    let (key, _) = found(&session, OFF).unwrap();
    let stops = session.document().open(Severity::Stop);
    let accept = |reason: &str| Action::Accept {
        finding: key.clone(),
        reason: reason.to_owned(),
    };
    assert!(matches!(session.apply(accept("  ")), Outcome::Nothing));
    assert!(session.apply(accept("drilled by hand")).is_done());
    let (_, accepted) = found(&session, OFF).unwrap();
    assert_eq!(accepted.accepted.as_deref(), Some("drilled by hand"));
    assert_eq!(session.document().open(Severity::Stop), stops - 1);
    assert_eq!(session.reason_before(&accepted), Some("drilled by hand"));
    assert!(session.apply(Action::TakeBack(key.clone())).is_done());
    assert_eq!(session.document().open(Severity::Stop), stops);
}

#[test]
fn a_selected_finding_stays_selected_while_it_is_there() {
    let mut session = tweaked();
    let (key, _) = found(&session, OFF).unwrap();
    let _shown = session.apply(Action::SelectFinding(Some(key.clone())));
    assert!(session.available(ActionId::AcceptFinding).enabled);
    let renamed = named(&session, "renamed");
    let _changed = session.apply(renamed);
    assert_eq!(session.selection().finding, Some(key.clone()));
    let _remedied = session.apply(Action::ApplySafe);
    assert_eq!(session.selection().finding, None);
    assert!(!session.available(ActionId::ExplainFinding).enabled);
}

#[test]
fn a_box_with_another_name_keeps_its_acceptances_and_the_selected_finding() {
    let mut session = tweaked();
    let (key, finding) = found(&session, OFF).unwrap();
    let box_id = finding.subjects[0].box_id().unwrap();
    let _shown = session.apply(Action::SelectFinding(Some(key.clone())));
    assert_eq!(session.selection().box_id, Some(box_id));
    let accepted = session.apply(Action::Accept {
        finding: key.clone(),
        reason: "drilled by hand".to_owned(),
    });
    assert!(accepted.is_done());
    // The name that another box has: the acceptance stays with the box, not with the name.
    let mut with = session.job().box_by_id(box_id).unwrap().clone();
    let mut others = session.job().boxes.iter().filter(|it| it.id != box_id);
    with.name.clone_from(&others.next().unwrap().name);
    let renamed = session.apply(Action::Edit {
        label: "name".to_owned(),
        edit: Edit::replace_box(with),
        gesture: None,
    });
    assert!(renamed.is_done());
    let off = session.inspection().findings.iter();
    let off: Vec<_> = off.filter(|it| it.check == OFF).cloned().collect();
    assert_eq!(off.len(), 1);
    assert_eq!(off[0].accepted.as_deref(), Some("drilled by hand"));
    assert_eq!(session.selection().finding, Some(key));
}

#[test]
fn the_neighbour_of_a_removed_box_is_shown_and_a_new_box_at_once() {
    let mut session = demo();
    let ids: Vec<BoxId> = session.job().boxes.iter().map(|it| it.id).collect();
    assert_eq!(session.selection().box_id, Some(ids[0]));
    let _shown = session.apply(Action::ShowBox(ids[1]));
    assert!(session.apply(Action::DuplicateBox).is_done());
    let copy = session.selection().box_id.unwrap();
    assert!(!ids.contains(&copy));
    assert_eq!(session.job().boxes[2].id, copy);
    assert!(session.apply(Action::RemoveBox).is_done());
    assert_eq!(session.selection().box_id, Some(ids[2]));
    let last = *ids.last().unwrap();
    let _shown = session.apply(Action::ShowBox(last));
    assert!(session.apply(Action::RemoveBox).is_done());
    assert_eq!(session.selection().box_id, Some(ids[ids.len() - 2]));
    let openings = session.shown_wall_box().unwrap().openings();
    assert_eq!(session.selection().opening, Some(openings[0].id));
}

#[test]
fn of_two_boxes_of_one_name_only_the_shown_one_takes_a_size() {
    let mut session = demo();
    let mut with = session.job().boxes[1].clone();
    with.name.clone_from(&session.job().boxes[0].name);
    let label = "name".to_owned();
    let (edit, gesture) = (Edit::replace_box(with), None);
    let renamed = session.apply(Action::Edit {
        label,
        edit,
        gesture,
    });
    assert!(renamed.is_done());
    let before = session.job().clone();
    let (card, size) = ("Dipper".to_owned(), "1".to_owned());
    assert!(session.apply(Action::TakeSize { card, size }).is_done());
    let dipper = before.card_named("Dipper").unwrap().id;
    let fitting = session.job().boxes[0].doors()[0].fitting.as_ref().unwrap();
    assert_eq!((fitting.card, fitting.size.as_str()), (dipper, "1"));
    assert_eq!(session.job().boxes[1], before.boxes[1]);
}

#[test]
fn forgetting_that_a_door_is_drilled_lets_its_bores_follow_the_fitting_again() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = demo();
    let before = session.job().clone();
    let choice = Box::new(ExportChoice {
        drilled: true,
        ..ExportChoice::default()
    });
    let folder = folder.path().to_owned();
    assert!(session.apply(Action::Export { choice, folder }).is_done());
    written(session.wait());
    let drilled: Vec<PartId> = session
        .job()
        .boxes
        .iter()
        .flat_map(|it| {
            let box_id = it.id;
            let parts = it.records.iter().map(|record| record.part);
            parts.map(move |part| PartId { box_id, part })
        })
        .collect();
    let door = session.job().boxes[0].doors()[0];
    assert!(matches!(door.bores_follow, BoreReference::AsDrilled(_)));
    let edit = forget_records(session.job(), &drilled).unwrap();
    let forgotten = session.apply(Action::Edit {
        label: "forget".to_owned(),
        edit,
        gesture: None,
    });
    assert!(forgotten.is_done());
    // Also of a door that was an existing one before: what is forgotten is all that it was.
    let mut expected = before.boxes;
    for wall_box in &mut expected {
        let door = wall_box.doors()[0].id;
        if let Some(door) = wall_box.door_mut(door) {
            door.bores_follow = BoreReference::Fitting;
        }
    }
    assert_eq!(session.job().boxes, expected);
}

#[test]
fn next_and_previous_go_around_all_open_findings() {
    let mut session = tweaked();
    let count = session.document().open_count();
    assert!(count > 1, "{count}");
    let mut seen = Vec::new();
    for _ in 0..count {
        let _shown = session.apply(Action::NextFinding);
        seen.push(session.selection().finding.clone().unwrap());
    }
    let _shown = session.apply(Action::NextFinding);
    assert_eq!(session.selection().finding.as_ref(), seen.first());
    let _shown = session.apply(Action::PreviousFinding);
    assert_eq!(session.selection().finding.as_ref(), seen.last());
    seen.sort();
    seen.dedup();
    assert_eq!(seen.len(), count);
}

#[test]
fn a_job_without_a_file_asks_for_one_and_is_saved_there() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("job.ron");
    let mut session = demo();
    assert!(session.apply(Action::AddBox).is_done());
    assert!(matches!(session.apply(Action::Save), Outcome::NeedsPath));
    assert!(session.apply(Action::SaveAs(path.clone())).is_done());
    assert!(!session.document().unsaved());
    assert_eq!(job_file::read(&path).unwrap(), *session.job());
    assert!(session.apply(Action::AddBox).is_done());
    assert!(session.document().unsaved());
    assert!(session.apply(Action::Save).is_done());
    let text = std::fs::read_to_string(&path).unwrap();
    assert_eq!(read_job(&text).unwrap(), *session.job());
}

#[test]
fn a_broken_file_keeps_the_open_job() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("cut-short.ron");
    let mut session = demo();
    let text = write_job(session.job());
    std::fs::write(&path, &text[..text.len() / 2]).unwrap();
    let before = session.job().clone();
    let Outcome::Failed { why, .. } = session.apply(Action::Open(path)) else {
        panic!("half a file was opened");
    };
    assert!(
        why.contains("line ") && why.contains("cut-short.ron"),
        "{why}"
    );
    assert_eq!(*session.job(), before);
}

#[test]
fn an_export_writes_its_files_and_the_job_remembers_the_sheets() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = demo();
    let choice = Box::new(ExportChoice {
        csv: true,
        ..ExportChoice::default()
    });
    let folder = folder.path().to_owned();
    assert!(session.apply(Action::Export { choice, folder }).is_done());
    assert!(!session.available(ActionId::ExportSheets).enabled);
    let files = written(session.wait());
    assert_eq!(files.len(), 2);
    assert!(files.iter().all(|file| file.is_file()));
    assert_eq!(session.export_progress(), None);
    assert!(session.job().boxes.iter().all(|it| !it.records.is_empty()));
    assert_eq!(session.document().history().len(), 1);
}

#[test]
fn records_go_into_the_job_as_it_is_when_the_export_ends() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = demo();
    let export = Action::Export {
        choice: Box::default(),
        folder: folder.path().to_owned(),
    };
    assert!(session.apply(export).is_done());
    // Another box comes while the sheets are written: it stays, without a record.
    assert!(session.apply(Action::AddBox).is_done());
    let boxes = session.job().boxes.len();
    written(session.wait());
    assert_eq!(session.job().boxes.len(), boxes);
    let without = session
        .job()
        .boxes
        .iter()
        .filter(|it| it.records.is_empty());
    assert_eq!(without.count(), 1);
}

#[test]
fn a_stopped_export_writes_nothing_and_remembers_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = demo();
    let before = session.job().clone();
    let choice = Box::new(ExportChoice {
        png: true,
        dpi: 600,
        ..ExportChoice::default()
    });
    let target = folder.path().to_owned();
    let _started = session.apply(Action::Export {
        choice,
        folder: target,
    });
    assert!(session.apply(Action::StopExport).is_done());
    let news = session.wait();
    assert!(
        matches!(&news[..], [News::Export(ExportEnd::Stopped(_))]),
        "{news:?}"
    );
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    assert_eq!(*session.job(), before);
}

#[test]
fn a_search_for_mounts_is_cancelled_or_ends_with_an_answer() {
    let mut session = demo();
    let (card, size) = ("Dipper".to_owned(), "1".to_owned());
    assert!(!session.available(ActionId::PlaceStrut).enabled);
    assert!(session.apply(Action::TakeSize { card, size }).is_done());
    assert!(session.available(ActionId::PlaceStrut).enabled);
    let before = session.job().clone();
    let limits = Box::new(session.strut_places().unwrap().limits);
    assert!(
        session
            .apply(Action::SearchMounts(limits.clone()))
            .is_done()
    );
    assert!(session.search_progress().is_some());
    assert!(session.apply(Action::StopSearch).is_done());
    assert_eq!(session.search_progress(), None);
    assert!(session.wait().is_empty());
    assert_eq!(*session.job(), before);

    // Limits without a place: told, and nothing is changed.
    let mut narrow = limits;
    narrow.box_down.min = narrow.box_down.max - 1.0;
    let _started = session.apply(Action::SearchMounts(narrow));
    let news = session.wait();
    let [News::Mounts(Err(error))] = &news[..] else {
        panic!("{news:?}");
    };
    assert_ne!(*error, MountError::Stopped);
    assert_eq!(*session.job(), before);
}

#[test]
fn whoever_waits_is_woken_from_the_thread_that_works() {
    let (sender, receiver) = std::sync::mpsc::channel();
    let folder = tempfile::tempdir().unwrap();
    let mut session = demo();
    session.wake_with(move || {
        let _gone = sender.send(());
    });
    let _started = session.apply(Action::Export {
        choice: Box::default(),
        folder: folder.path().to_owned(),
    });
    receiver
        .recv_timeout(std::time::Duration::from_secs(60))
        .unwrap();
    written(session.wait());
}

#[test]
fn every_action_of_the_table_that_needs_nothing_more_can_be_applied() {
    for info in &ACTIONS {
        let Some(action) = info.id.action() else {
            continue;
        };
        let mut session = tweaked();
        if matches!(info.id, ActionId::Undo | ActionId::Redo) {
            let _done = session.apply(Action::AddBox);
        }
        if info.id == ActionId::Redo {
            let _done = session.apply(Action::Undo);
        }
        if info.id == ActionId::UseMillimetres {
            let _done = session.apply(Action::UseUnit(Unit::Inch));
        }
        assert!(session.available(info.id).enabled, "{}", info.name);
        assert!(session.apply(action).is_done(), "{}", info.name);
    }
}
