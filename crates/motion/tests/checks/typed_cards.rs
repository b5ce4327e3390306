//! Published worked examples typed as cards, number by number, as a user would.

use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::card_draft::{CardDraft, DraftBodies, DraftPivot, Grid};
use flapwright_model::space::SectionPoint;
use flapwright_motion::motion::motion;

use super::case::{Case, PAIR};
use super::common::{UNDERSIDE, one_leaf, plates};

/// A draft with one size and nothing to drill; the cells of the size by title.
fn typed(kind: OpeningKind, bodies: DraftBodies, end: &str, cells: &[(&str, &str)]) -> Card {
    let mut draft = CardDraft::blank(kind);
    draft.name = "textbook".to_owned();
    (draft.side_bores, draft.top_bores, draft.door_bores) = Default::default();
    draft.linkage.bodies = bodies;
    draft.linkage.end_angle = end.to_owned();
    let envelope = &mut draft.envelope;
    for field in [
        &mut envelope.down_from,
        &mut envelope.back_from,
        &mut envelope.inward,
    ] {
        "0".clone_into(field);
    }
    for field in [&mut envelope.down_to, &mut envelope.back_to] {
        "100".clone_into(field);
    }
    let plain = [
        ("size", "A"),
        ("load min", "1"),
        ("load max", "40"),
        ("height min", "300"),
        ("height max", "1000"),
        ("width min", "300"),
        ("width max", "1500"),
        ("least depth", "100"),
        ("least height", "100"),
    ];
    let all = || plain.iter().chain(cells);
    draft.sizes = Grid::new(all().map(|cell| cell.0)).with(all().map(|cell| cell.1));
    draft.example = None;
    if !cells.iter().any(|cell| cell.0 == "strut force") {
        for degrees in ["0", "180"] {
            draft
                .springs
                .rows
                .push(["A", degrees, "1", "2"].map(str::to_owned).to_vec());
        }
    }
    draft.resolve().expect("a sound card")
}

fn pivot(down: &str, back: &str) -> DraftPivot {
    DraftPivot {
        down: down.to_owned(),
        back: back.to_owned(),
    }
}

#[test]
fn the_trapdoor_of_the_textbook_is_in_balance_on_its_rope() {
    // University Physics (OpenStax) 12.2: a trapdoor of 300 N, 1.0 m from hinge to edge, held at 30
    // degrees to the floor by a rope from its middle, 20 degrees to the floor. The book prints a
    // tension of 1500 N; in full it is 300 cos 30 / sin 10 = 1496.172 N. Here the flap stands 30
    // degrees below level, open by 60, and a strut pushes on its middle at 10 degrees to it, so 20
    // degrees below level: the same triangle of forces.
    let mut door = one_leaf(1000.0, 0.02);
    door.handle = None;
    // The hinge is 2.01 mm before the side, at the underside; the middle is then at
    // (433.0127, -250) mm from it, and the strut's foot 300 mm behind that along its line.
    let (o, y) = (
        433.0127 - 300.0 * 20_f64.to_radians().cos(),
        -250.0 + 300.0 * 20_f64.to_radians().sin(),
    );
    let (down, back) = (format!("{:.6}", -y), format!("{:.6}", -(o + 2.01)));
    let cells = [
        ("strut force", "1496.172 N"),
        ("progression", "1"),
        ("stroke", "1500"),
        ("length", "1600"),
        ("rod friction", "0"),
        ("box anchor down", down.as_str()),
        ("box anchor back", back.as_str()),
        ("door anchor down", "500"),
        ("door anchor back", "-0.01"),
    ];
    let bodies = DraftBodies::FixedAxis {
        axis: pivot("0", "-2.01"),
    };
    let card = typed(OpeningKind::TopHingedFlap, bodies, "60", &cells);
    let one = flapwright_motion::drive::DriveState { pieces: 1, ..PAIR };
    let case = Case::new(&card, &door, &plates(&door, 300.0 / 9.806_65), &one);
    let point = case.at(60.0);
    // 300 N x 0.5 m x cos 30.
    assert!(
        (point.lift.likely - 129.9038).abs() < 1e-3,
        "{}",
        point.lift.likely
    );
    assert!(
        (point.push.moment - point.lift.likely).abs() < 1e-2,
        "{} against {}",
        point.push.moment,
        point.lift.likely
    );
}

#[test]
fn the_four_bar_of_the_textbook_stands_where_the_book_has_it() {
    // R. L. Norton, Design of Machinery, example 4-1 (from memory; worked out again with scipy):
    // ground 100, crank 40, coupler 120, rocker 80 mm; at a crank of 40 degrees the coupler stands
    // at 20.298 and the rocker at 57.325 degrees. At 30 degrees (closed; scipy): 22.4090, 55.2678.
    let at = |o: f64, y: f64| pivot(&format!("{:.6}", 300.0 - y), &format!("{:.6}", 200.0 - o));
    let end = |from: f64, length: f64, degrees: f64| {
        let angle = degrees.to_radians();
        (from + length * angle.cos(), length * angle.sin())
    };
    let (crank, rocker) = (end(0.0, 40.0, 30.0), end(100.0, 80.0, 55.2678));
    let bodies = DraftBodies::TwoArms {
        box_first: at(0.0, 0.0),
        door_first: at(crank.0, crank.1),
        box_second: at(100.0, 0.0),
        door_second: at(rocker.0, rocker.1),
    };
    let cells = [("turns", "1"), ("friction", "0")];
    let card = typed(OpeningKind::OverTheTopDoor, bodies, "10°", &cells);
    let door = one_leaf(400.0, 18.0);
    let motion = motion(&card, "A", &door).expect("a motion");
    let leaf = motion.pose(1.0).leaves[0].1;
    let coupler = 22.4090 + leaf.angle.to_degrees();
    assert!((coupler - 20.298).abs() < 2e-3, "{coupler}");
    let place = |(o, y): (f64, f64)| SectionPoint::new(o - 200.0, UNDERSIDE - 300.0 + y);
    let found = leaf.apply(place(rocker));
    let book = place(end(100.0, 80.0, 57.325));
    assert!((found - book).length() < 5e-3, "{found:?} against {book:?}");
}
