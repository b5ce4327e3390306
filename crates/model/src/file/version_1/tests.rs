use crate::acceptance::Topic;
use crate::file::{ReadError, read_job, write_job};
use crate::id::Id;
use crate::job::Job;
use crate::opening::Inside;
use crate::part::{BoreId, LeafId, Part, PartId};
use crate::severity::SeveritySetting;
use crate::validate::validate;

const GALLEY: &str = include_str!("../../../tests/version-1/houseboat-galley.ron");
const TWEAKED: &str = include_str!("../../../tests/version-1/houseboat-galley-tweaked.ron");
const TROUBLES: &str = include_str!("../../../tests/version-1/houseboat-galley-troubles.ron");

fn galley() -> Job {
    read_job(GALLEY).expect("a file of version 1")
}

#[test]
fn the_kept_samples_open_are_sound_and_stay_what_they_are_when_written() {
    for (text, boxes) in [(GALLEY, 4), (TWEAKED, 4), (TROUBLES, 22)] {
        let job = read_job(text).expect("a file of version 1");
        assert_eq!((job.version, job.boxes.len()), (2, boxes));
        assert_eq!(validate(&job), []);
        let written = write_job(&job);
        assert_eq!(read_job(&written), Ok(job));
    }
}

#[test]
fn identities_are_given_in_the_order_of_the_file() {
    let job = galley();
    let numbers: Vec<u32> = job.boxes.iter().map(|it| it.id.number()).collect();
    let mut sorted = numbers.clone();
    sorted.sort_unstable();
    assert_eq!(numbers, sorted);
    let cards: Vec<u32> = job.cards.iter().map(|it| it.id.number()).collect();
    assert!(
        cards.iter().all(|it| it > numbers.last().unwrap()),
        "{cards:?}"
    );
    let mut all: Vec<u32> = job.all_ids().collect();
    all.sort_unstable();
    let without_gaps: Vec<u32> = (1..job.next_id).collect();
    assert_eq!(all, without_gaps);
}

#[test]
fn a_box_with_a_fixed_shelf_becomes_a_split_with_its_doors_in_order() {
    // The sample's first box, "mugs", has one fixed shelf and two doors.
    let job = galley();
    let mugs = &job.boxes[0];
    let Inside::Shelf(split) = &mugs.body.inside else {
        panic!("the box is split")
    };
    assert!(split.above.door.is_some() && split.below.door.is_some());
    assert_eq!(mugs.openings().len(), 2);
    let fitting = mugs.doors()[0].fitting.as_ref().expect("a fitting");
    assert!(job.card_by_id(fitting.card).is_some());
}

/// A job of version 1 with three shelves, written by hand after the old form: fixed at 300 and 100,
/// adjustable at 320 and 200 and 100 (at the very height of a fixed one).
const SHELVES: &str = r#"(
    version: 1, name: "shelves", unit: Millimetre, room: (ceiling: 2500.0, obstacles: [(
        name: "pipe", along_wall: (from: 0.0, to: 1.0), above_floor: (from: 0.0, to: 1.0),
        from_wall: (from: 0.0, to: 1.0),
    )]),
    settings: (weights: { "door-meets-ceiling": off, "uneven-reveals": note }),
    materials: [(name: "board", class: Board, density: (low: 1.0, likely: 2.0, high: 3.0), source: "")],
    cards: [], boxes: [BOX],
    accepted: [
        (check: "door-past-its-place", place: "a, opening 2 from the top", reason: "seen", severity: note),
        (check: "bore-near-edge", place: "a, left side, bore 3; a, left side", reason: "", severity: note),
        (check: "stale-sheet", place: "a, fixed shelf 4 from the top; a, loose shelf 1 from the top", reason: "seen", severity: note),
        (check: "stale-sheet", place: "b, left side", reason: "seen", severity: note),
    ],
)"#;

const BOX: &str = r#"(
    name: "a", quantity: 1, place: (along_wall: 0.0, above_floor: 0.0),
    width: 800.0, height: 400.0, depth: 330.0,
    left: (thickness: 18.0, material: "board"), right: (thickness: 18.0, material: "board"),
    top: (panel: (thickness: 18.0, material: "board")),
    bottom: (panel: (thickness: 18.0, material: "board")),
    joint: BetweenSides, back: Open, frame: None, system_rows: None,
    shelves: [
        (kind: Adjustable, up: 200.0, piece: (panel: (thickness: 18.0, material: "board"))),
        (kind: Fixed(gap: 3.0, upper_overlay: None), up: 100.0, piece: (panel: (thickness: 18.0, material: "board"))),
        (kind: Fixed(gap: 4.0, upper_overlay: Some(7.0)), up: 300.0, piece: (panel: (thickness: 18.0, material: "board"))),
        (kind: Adjustable, up: 320.0, piece: (panel: (thickness: 18.0, material: "board"))),
        (kind: Adjustable, up: 100.0, piece: (panel: (thickness: 18.0, material: "board"))),
    ],
    openings: [(door: None), (door: DOOR), (door: None)],
    records: [
        (part: Shelf(2), state: Drilled, size: (1.0, 1.0), thickness: 18.0, bores: []),
        (part: Leaf(opening: 1, leaf: Only), state: Drilled, size: (1.0, 1.0), thickness: 18.0, bores: []),
        (part: Leaf(opening: 2, leaf: Only), state: Drilled, size: (1.0, 1.0), thickness: 18.0, bores: []),
    ],
)"#;

const DOOR: &str = r#"Some((
    fit: Overlay(reveals: (left: 3.0, right: 3.0, top: 3.0, bottom: 3.0)),
    leaves: One((build: Plain(thickness: 18.0, material: "board"))), handle: None,
    bores_hang_on: Edges(vertical: Bottom), fitting: None,
))"#;

fn shelves() -> String {
    SHELVES.replace("BOX", &BOX.replace("DOOR", DOOR))
}

#[test]
fn shelves_lie_in_the_openings_that_hold_them() {
    let job = read_job(&shelves()).expect("a file of version 1");
    let wall_box = &job.boxes[0];
    let fixed: Vec<(f64, f64, Option<f64>)> = wall_box
        .fixed_shelves()
        .iter()
        .map(|it| (it.up, it.gap, it.upper_overlay))
        .collect();
    assert_eq!(fixed, [(300.0, 4.0, Some(7.0)), (100.0, 3.0, None)]);
    let loose: Vec<Vec<f64>> = wall_box
        .openings()
        .iter()
        .map(|it| match &it.inside {
            Inside::Undivided { loose } => loose.iter().map(|shelf| shelf.up).collect(),
            _ => panic!("an opening of the tree's ends"),
        })
        .collect();
    assert_eq!(loose, [vec![320.0], vec![200.0, 100.0], vec![]]);
    let door = wall_box.doors()[0];
    assert_eq!(wall_box.openings()[1].door.as_ref(), Some(door));
    assert_eq!(
        door.bores_follow,
        crate::door::BoreReference::Edges {
            vertical: crate::door::End::Bottom
        }
    );
}

#[test]
fn records_name_their_parts_and_one_of_a_part_that_was_gone_names_none() {
    let job = read_job(&shelves()).expect("a file of version 1");
    let wall_box = &job.boxes[0];
    let door = wall_box.doors()[0].id;
    let parts: Vec<Part> = wall_box.records.iter().map(|it| it.part).collect();
    let upper = wall_box.fixed_shelves()[0].id;
    assert_eq!(parts[0], Part::Shelf(upper), "the third of the list");
    let leaf = LeafId::Only;
    assert_eq!(parts[1], Part::Leaf { door, leaf });
    // The third opening had no door.
    let lost = parts[2].door().expect("a leaf");
    assert!(job.all_ids().all(|it| it != lost.number()));
}

#[test]
fn places_in_words_become_what_they_mean() {
    let job = read_job(&shelves()).expect("a file of version 1");
    let wall_box = &job.boxes[0];
    let part = |part| PartId {
        box_id: wall_box.id,
        part,
    };
    let [door, bore, several, lost] = &job.accepted[..] else {
        panic!("four acceptances")
    };
    assert_eq!(door.check, "reveal-out-of-range");
    assert_eq!(door.about, [Topic::Door(wall_box.doors()[0].id)]);
    let left = part(Part::LeftSide);
    assert_eq!(
        bore.about,
        [
            Topic::Part(left),
            Topic::NumberedBore(BoreId {
                part: left,
                number: 3
            })
        ]
    );
    assert!(!bore.reason.is_empty());
    // By height: 320 loose, 300 fixed, 200 loose, 100 fixed, 100 loose.
    let shelves: Vec<Part> = wall_box
        .shelves()
        .iter()
        .map(|it| Part::Shelf(it.id()))
        .collect();
    let mut expected = [shelves[0], shelves[3]].map(|it| Topic::Part(part(it)));
    expected.sort();
    assert_eq!(several.about, expected);
    assert!(door.by_place && bore.by_place && several.by_place);
    assert_eq!((lost.about.len(), lost.by_place), (0, false));
    assert_eq!(lost.lost_place, "b, left side");
}

#[test]
fn checks_have_their_names_of_today_in_the_settings_too() {
    let job = read_job(&shelves()).expect("a file of version 1");
    let weights: Vec<_> = job.settings.weights.into_iter().collect();
    assert_eq!(
        weights,
        [
            ("door-hits-ceiling".to_owned(), SeveritySetting::Off),
            ("uneven-reveals".to_owned(), SeveritySetting::Note),
        ]
    );
}

#[test]
fn boxes_of_one_name_were_told_apart_by_their_number() {
    let second = BOX
        .replace("DOOR", DOOR)
        .replace("along_wall: 0.0", "along_wall: 900.0");
    let text = SHELVES
        .replace("BOX", &format!("{}, {second}", BOX.replace("DOOR", DOOR)))
        .replace("place: \"a, opening 2", "place: \"a (box 2), opening 2");
    let job = read_job(&text).expect("a file of version 1");
    let door = job.boxes[1].doors()[0].id;
    assert_eq!(job.accepted[0].about, [Topic::Door(door)]);
    assert_eq!(
        job.accepted[1].lost_place,
        "a, left side, bore 3; a, left side"
    );
}

#[test]
fn what_today_s_form_cannot_say_is_refused_by_name() {
    let too_few = shelves().replace("openings: [(door: None), ", "openings: [");
    let Err(ReadError::Unsound(problems)) = read_job(&too_few) else {
        panic!("an opening is missing")
    };
    assert_eq!(problems[0].field, "boxes[0] \"a\".openings");
    let no_card = shelves().replace(
        "fitting: None,\n))",
        "fitting: Some((card: \"Wren\", size: \"1\")),\n))",
    );
    let Err(ReadError::Unsound(problems)) = read_job(&no_card) else {
        panic!("the card is missing")
    };
    assert!(problems[0].what.contains("\"Wren\""), "{problems:?}");
}

#[test]
fn as_many_shelves_as_a_box_holds_open() {
    // 300 shelves of 1 mm: a tree of nine levels.
    let shelf = |up: i32| {
        format!(
            "(kind: Fixed(gap: 0.0, upper_overlay: None), up: {up}.0, piece: (panel: (thickness: \
             1.0, material: \"board\"))),"
        )
    };
    let shelves: String = (0..300).map(|i| shelf(40 + 10 * i)).collect();
    let openings = "(door: None),".repeat(301);
    let a = BOX.find("shelves: [").expect("shelves");
    let many = format!(
        "{}shelves: [{shelves}], openings: [{openings}])",
        &BOX[..a].replace("height: 400.0", "height: 4000.0")
    );
    let job = read_job(&SHELVES.replace("BOX", &many)).expect("a file of version 1");
    assert_eq!(job.boxes[0].openings().len(), 301);
    assert_eq!(job.boxes[0].body.levels(), 9);
    assert_eq!(read_job(&write_job(&job)), Ok(job));
}
