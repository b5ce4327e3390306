//! Fields of a card's draft.

use super::super::{DraftField, Fields, Kind, SizeColumn, Value};
use super::{allowed, another};
use crate::card::OpeningKind;
use crate::card_draft::{CardDraft, DraftBodies, columns};
use crate::file::read_card;

/// Drafts of the demo cards: between them they have every field.
fn drafts() -> Vec<CardDraft> {
    let texts = [
        include_str!("../../../../../assets/demo/cards/dipper.ron"),
        include_str!("../../../../../assets/demo/cards/heron.ron"),
        include_str!("../../../../../assets/demo/cards/owl.ron"),
        include_str!("../../../../../assets/demo/cards/swift.ron"),
        include_str!("../../../../../assets/demo/cards/wren.ron"),
    ];
    let mut all: Vec<CardDraft> = texts
        .iter()
        .map(|text| CardDraft::of_card(&read_card(text).unwrap()))
        .collect();
    for bodies in [DraftBodies::blank_pose_table()]
        .into_iter()
        .chain(OpeningKind::ALL.map(DraftBodies::blank))
    {
        let mut draft = all[0].clone();
        draft.linkage.bodies = bodies;
        all.push(draft);
    }
    all
}

#[test]
fn each_field_of_a_draft_is_set_got_and_put_back() {
    for field in DraftField::all() {
        let all = drafts();
        let sample = all.iter().find(|it| field.get(it).is_some());
        let sample = sample.unwrap_or_else(|| panic!("no draft has {field:?}"));
        let before = sample.write();
        let now = field.get(sample).unwrap().into_owned();
        let info = field.info();
        for value in allowed(info).into_iter().chain([another(info, &now)]) {
            let mut draft = sample.clone();
            let old = field.set(&mut draft, &value).unwrap();
            assert_eq!(field.get(&draft), Some(value), "{field:?}");
            field.set(&mut draft, &old).unwrap();
            assert_eq!(draft.write(), before, "{field:?}");
        }
    }
}

/// A draft without numbers of a kind that has the field, so that what is wrong is the field's alone.
#[test]
fn a_number_just_outside_is_refused_by_the_name_of_its_field() {
    let mut tried = 0;
    for field in DraftField::all() {
        let Kind::AsTyped { limits, .. } = field.info().kind else {
            continue;
        };
        let sound = drafts()
            .into_iter()
            .find(|it| field.get(it).is_some_and(|_| it.resolve().is_ok()));
        // Bodies of a kind that no demo card has are not sound, and so prove nothing.
        let Some(sound) = sound else { continue };
        for outside in [limits.least - 0.5, limits.most + 0.5] {
            let mut draft = sound.clone();
            let text = format!("{outside}");
            field.set(&mut draft, &Value::Text(text.into())).unwrap();
            // An overlay or a thickness of the paper's own drawing is only asked for where a
            // distance counts from there.
            let Err(problems) = draft.resolve() else {
                assert!(field.info().path.starts_with(".paper."), "{field:?}");
                continue;
            };
            let path = &field.info().path[1..];
            assert!(
                problems.iter().any(|it| it.field == path),
                "{path} {outside}: {problems:?}"
            );
            tried += 1;
        }
    }
    assert!(tried > 40, "only {tried}");
}

#[test]
fn a_cell_of_the_sizes_table_just_outside_is_refused_by_its_own_name() {
    let mut tried = std::collections::BTreeSet::new();
    for sound in drafts().into_iter().filter(|it| it.resolve().is_ok()) {
        for (at, title) in sound.sizes.titles.iter().enumerate() {
            let Some(column) = SizeColumn::titled(title) else {
                continue;
            };
            let now = sound.sizes.cell(0, at).to_owned();
            // An empty angle makes the load a mass, which has none.
            let Some(limits) = column.limits.filter(|_| !now.is_empty()) else {
                continue;
            };
            for outside in [limits.least - 0.5, limits.most + 0.5] {
                let mut draft = sound.clone();
                draft.sizes.rows[0][at] = format!("{outside}");
                let problems = draft.resolve().unwrap_err();
                let field = format!("sizes[0] \"{title}\"");
                assert!(
                    problems.iter().any(|it| it.field == field),
                    "{field} {outside}: {problems:?}"
                );
                tried.insert(title.clone());
            }
        }
    }
    assert!(tried.len() > 15, "only {tried:?}");
}

#[test]
fn the_table_has_each_title_once_and_those_of_springs_and_struts() {
    let titles: Vec<&str> = SizeColumn::ALL.iter().map(|it| it.title).collect();
    let all: Vec<&str> = columns::PLAIN
        .into_iter()
        .chain(columns::SPRING)
        .chain(columns::STRUT)
        .collect();
    assert_eq!(titles, all);
}
