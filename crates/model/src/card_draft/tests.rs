use super::columns::{LOAD_MAX, LOAD_MIN};
use super::*;
use crate::card::PerSize;
use crate::file::{read_card, write_card};
use crate::lift::Carries;

const DEMO: [&str; 5] = [
    include_str!("../../../../assets/demo/cards/wren.ron"),
    include_str!("../../../../assets/demo/cards/dipper.ron"),
    include_str!("../../../../assets/demo/cards/heron.ron"),
    include_str!("../../../../assets/demo/cards/swift.ron"),
    include_str!("../../../../assets/demo/cards/owl.ron"),
];

fn wren() -> Card {
    read_card(DEMO[0]).unwrap()
}

fn fields(problems: &[Problem]) -> Vec<&str> {
    problems.iter().map(|it| it.field.as_str()).collect()
}

#[test]
fn a_card_turned_into_a_draft_and_back_is_the_same_card() {
    for text in DEMO {
        let card = read_card(text).unwrap();
        let draft = CardDraft::of_card(&card);
        assert_eq!(draft.resolve(), Ok(card.clone()), "{}", card.name);
        let reopened = CardDraft::read(&draft.write()).unwrap();
        assert_eq!(reopened, draft, "{}", card.name);
        assert_eq!(read_card(&write_card(&card)).as_ref(), Ok(&card));
    }
}

#[test]
fn a_skeleton_lacks_nothing_but_numbers_and_names() {
    for kind in OpeningKind::ALL {
        let draft = CardDraft::blank(kind);
        let problems = draft.resolve().unwrap_err();
        for problem in &problems {
            assert!(
                problem.what.contains("is empty")
                    || problem.what.contains("neither a strut")
                    || problem.what.contains("must be a whole number"),
                "{}: {problem}",
                kind.words()
            );
        }
        assert!(fields(&problems).contains(&"side_bores[0].down"));
        assert!(problems.len() > 20, "{}", kind.words());
        assert_eq!(CardDraft::read(&draft.write()).as_ref(), Ok(&draft));
    }
}

#[test]
fn the_hole_before_and_the_edges_of_a_paper_lead_back_to_the_datums_of_the_card() {
    let mut draft = CardDraft::of_card(&wren());
    draft.paper.overlay_side = "15".to_owned();
    draft.paper.overlay_top = "14".to_owned();
    draft.paper.top_thickness = "18".to_owned();
    // Wren: side bores 71 down, 67 and 163 back; door bores 21 in, sizes 94 and on down.
    draft.side_bores[0].down = DraftDistance {
        from: DownDatum::SideTopEnd,
        by: "89".to_owned(),
    };
    draft.side_bores[1].down = DraftDistance {
        from: DownDatum::HoleBefore,
        by: "0".to_owned(),
    };
    draft.side_bores[1].back = DraftDistance {
        from: BackDatum::HoleBefore,
        by: "96".to_owned(),
    };
    let bores = &mut draft.door_bores[0].bores;
    bores[0].across = DraftDistance {
        from: AcrossDatum::DoorSideEdge,
        by: "36".to_owned(),
    };
    let title = bores[0].down.by.clone();
    bores[0].down = DraftDistance {
        from: DownDatum::DoorTopEdge,
        by: format!("{title} + 14"),
    };
    bores[1].across = DraftDistance {
        from: AcrossDatum::HoleBefore,
        by: "0".to_owned(),
    };
    bores[1].down = DraftDistance {
        from: DownDatum::HoleBefore,
        by: "41".to_owned(),
    };
    assert_eq!(draft.resolve(), Ok(wren()));
}

#[test]
fn a_number_may_be_in_a_unit_of_its_own() {
    let mut draft = CardDraft::of_card(&wren());
    draft.paper.length = Unit::Inch;
    draft.side_bores[0].back.by = "2-5/8\"".to_owned();
    draft.side_bores[1].back.by = "163 mm".to_owned();
    draft.side_bores[2].back.by = "4 1/2".to_owned();
    let problems = draft.resolve().unwrap_err();
    // 163 mm typed in a paper in inches is far beyond any card.
    assert!(!problems.is_empty());
    let mut reader = entry::Reader::new(&draft);
    let bores = reader.side_bores();
    let back: Vec<_> = bores.into_iter().map(|bore| bore.back.by).collect();
    // NIST SP 811, appendix B: the inch is 25.4 mm.
    assert_eq!(
        back,
        [66.675, 163.0, 114.3].map(PerSize::All),
        "2-5/8 in, 163 mm, 4-1/2 in"
    );
}

#[test]
fn every_problem_names_its_field_value_and_remedy() {
    let mut draft = CardDraft::of_card(&wren());
    draft.side_bores[0].drill.diameter = "five".to_owned();
    draft.side_bores[1].down.by = "Z".to_owned();
    draft.sizes.rows[2][8] = String::new();
    draft.springs.rows[3][1] = "35 mm".to_owned();
    draft.side_bores[0].down.from = DownDatum::HoleBefore;
    let problems = draft.resolve().unwrap_err();
    let named = fields(&problems);
    for field in [
        "side_bores[0].drill.diameter",
        "side_bores[1].down",
        "sizes[2] \"least depth\"",
        "springs[3] \"angle\"",
        "side_bores[0].down",
    ] {
        assert!(named.contains(&field), "{field} not in {named:?}");
    }
    assert!(problems.iter().all(|it| !it.remedy.is_empty()));
    let text = problems.iter().map(ToString::to_string).collect::<String>();
    assert!(
        text.contains("five") && text.contains("no column"),
        "{text}"
    );
    // A number that can be read and cannot be is refused by the limits of cards.
    let mut draft = CardDraft::of_card(&wren());
    draft.side_bores[0].drill.depth = "-3".to_owned();
    let problems = draft.resolve().unwrap_err();
    assert_eq!(fields(&problems), ["side_bores[0].drill.depth"]);
    assert!(
        problems[0]
            .what
            .contains("is -3 mm; it must be between 0.1")
    );
}

#[test]
fn height_times_mass_is_the_moment_of_a_level_flap() {
    let mut draft = CardDraft::of_card(&wren());
    draft.paper.load_given = LoadGiven::HeightTimesMass;
    draft.loads.rows.clear();
    let min_column = draft.sizes.column(LOAD_MIN).unwrap();
    let max_column = draft.sizes.column(LOAD_MAX).unwrap();
    for row in &mut draft.sizes.rows {
        row[min_column] = "40".to_owned();
        row[max_column] = "2000".to_owned();
    }
    let card = draft.resolve().unwrap();
    // 5 kg, 400 mm: 9.8066 N·m when level (closed form, worked out apart with scipy).
    let Carries::Moment {
        max, at_degrees, ..
    } = card.sizes[0].carries
    else {
        panic!("no moment");
    };
    assert!((max - 9.806_65).abs() < 1e-9, "{max}");
    assert_eq!(at_degrees, 90.0);
    // The same in lb·in: 2000 kg·mm = 2 / 0.45359237 / 0.0254 lb·in = 173.594.
    draft.paper.loads = Unit::Inch;
    for row in &mut draft.springs.rows {
        row[2] = "1".to_owned();
    }
    draft.sizes.rows[0][min_column] = "30".to_owned();
    draft.sizes.rows[0][max_column] = "173.59".to_owned();
    let card = draft.resolve().unwrap();
    let Carries::Moment { max, .. } = card.sizes[0].carries else {
        panic!("no moment");
    };
    assert!((max - 9.806_65).abs() < 1e-3, "{max}");
}

#[test]
fn a_spreadsheet_is_pasted_where_it_belongs() {
    let mut grid = Grid::new(["size", "A", "B"]).with(["1", "10", "20"]);
    let pasted = grid
        .paste(0, 1, "71\t118\r\n71\t1-7/16\"\r\n\"7\"\"\"\t\"a\tb\"\r\n")
        .unwrap();
    assert_eq!(
        pasted,
        Pasted {
            rows: 3,
            columns: 2,
            added: 2
        }
    );
    assert_eq!(grid.rows[0], ["1", "71", "118"]);
    assert_eq!(grid.rows[1], ["", "71", "1-7/16\""]);
    assert_eq!(grid.rows[2], ["", "7\"", "a\tb"]);
    let copied = grid.copy(0..3, 0..3);
    let mut other = Grid::new(["size", "A", "B"]);
    other.paste(0, 0, &copied).unwrap();
    assert_eq!(other, grid);
}

#[test]
fn a_paste_that_does_not_fit_changes_nothing() {
    let grid = Grid::new(["size", "A"]).with(["1", "10"]);
    let mut same = grid.clone();
    let refused = same.paste(0, 1, "1\t2").unwrap_err();
    assert!(refused.what.contains("2 columns"), "{refused}");
    let many = "1\n".repeat(Grid::MOST_ROWS + 1);
    assert!(same.paste(0, 0, &many).is_err());
    assert!(same.paste(usize::MAX, 0, "1").is_err());
    assert!(same.paste(0, usize::MAX, "1").is_err());
    assert_eq!(same, grid);
    assert_eq!(same.paste(0, 0, "").unwrap().rows, 0);
}

#[test]
fn springs_and_struts_change_places_in_the_sizes_table() {
    let mut draft = CardDraft::blank(OpeningKind::TopHingedFlap);
    draft.sizes.add_column("A");
    draft.lift_by_struts();
    assert!(draft.sizes.column(columns::STRUT_FORCE).is_some());
    assert!(draft.sizes.column(columns::TURNS).is_none());
    assert_eq!(draft.sizes.rows[0].len(), draft.sizes.titles.len());
    draft.lift_by_springs();
    assert!(draft.sizes.column(columns::STRUT_FORCE).is_none());
    assert!(draft.sizes.column("A").is_some());
}
