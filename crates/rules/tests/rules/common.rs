//! A plain box with a plain fitting, to be changed by each test. Every number is invented.

use flapwright_model::cabinet::{Back, FaceFrame, HorizontalPanel, Panel, SystemRows, WallBox};
use flapwright_model::card::{
    AcrossFrom, Adjustment, AdjustmentRange, BackFrom, Card, Depth, Distance, DoorBore, DoorGroup,
    DownFrom, Drill, Envelope, FittedSides, OpeningKind, PerSize, SideBore, Size, Span, Spread,
    SpreadCount, TopBore, TopGroup,
};
use flapwright_model::door::{BuildUp, Door, FittingChoice, Infill, Leaf, Leaves, TypedMass};
use flapwright_model::edges::Edges;
use flapwright_model::id::{BoxId, CardId, DoorId, ShelfId};
use flapwright_model::job::{Job, UsedCard};
use flapwright_model::lift::{Carries, Lift, PieceCount, SpringRow, Strut};
use flapwright_model::linkage::{Bodies, Linkage, Pivot};
use flapwright_model::material::{Density, Material, MaterialClass};
use flapwright_model::opening::{FixedShelf, Inside, LooseShelf, Opening, ShelfSplit};
use flapwright_model::part::{LeafId, Part, PartId, Subject};
use flapwright_model::severity::SeveritySetting;
use flapwright_model::validate::validate;
use flapwright_rules::inspection::{BoxReport, DoorReport, Inspection, PanelReport};

pub(crate) const BOARD: &str = "test board";

/// The identities that the parts of a test's job have: of its card, of its first box, and of the
/// door of that box while it has one opening.
pub(crate) const CARD: CardId = CardId::new(1);
pub(crate) const FIRST_BOX: BoxId = BoxId::new(2);
pub(crate) const DOOR: DoorId = DoorId::new(4);
pub(crate) const FIRST_DOOR: Subject = Subject::Door(FIRST_BOX, DOOR);
/// The shelf of that box while one splits it.
pub(crate) const SHELF: ShelfId = ShelfId::new(4);
/// The leaf of that door.
pub(crate) const LEAF: Part = Part::Leaf {
    door: DOOR,
    leaf: LeafId::Only,
};

pub(crate) fn panel(thickness: f64) -> Panel {
    Panel::plain(thickness, BOARD)
}

pub(crate) fn across(thickness: f64) -> HorizontalPanel {
    HorizontalPanel::plain(thickness, BOARD)
}

pub(crate) fn leaf(thickness: f64) -> Leaf {
    Leaf::plain(thickness, BOARD)
}

pub(crate) fn door(reveals: Edges<f64>) -> Door {
    Door {
        fitting: Some(FittingChoice {
            card: CARD,
            size: "1".to_owned(),
            packing: 0.0,
        }),
        ..Door::overlay(reveals, Leaves::One(leaf(19.0)))
    }
}

/// A frameless box with 18 mm panels, top between the sides, one opening, reveals of 3 mm.
pub(crate) fn wall_box() -> WallBox {
    WallBox {
        name: "test box".to_owned(),
        back: Back::LaidOn { panel: panel(8.0) },
        ..WallBox::plain(
            [800.0, 600.0, 330.0],
            18.0,
            BOARD,
            Some(door(Edges::all(3.0))),
        )
    }
}

pub(crate) fn fixed_shelf(up: f64, thickness: f64, gap: f64) -> FixedShelf {
    FixedShelf::plain(up, gap, across(thickness))
}

/// Puts a fixed shelf into the lowest opening of a box, with this door below it.
pub(crate) fn split(wall_box: &mut WallBox, shelf: FixedShelf, below: Option<Door>) {
    fn split_lowest(place: &mut Opening, shelf: FixedShelf, below: Option<Door>) {
        if let Inside::Shelf(split) = &mut place.inside {
            return split_lowest(&mut split.below, shelf, below);
        }
        let above = std::mem::take(place);
        place.inside = Inside::Shelf(Box::new(ShelfSplit {
            shelf,
            above,
            below: Opening::undivided(below),
        }));
    }
    split_lowest(&mut wall_box.body, shelf, below);
}

/// Takes the fixed shelf of a box out with all that is below it.
pub(crate) fn unsplit(wall_box: &mut WallBox) {
    if let Inside::Shelf(split) = std::mem::take(&mut wall_box.body.inside) {
        wall_box.body = split.above;
    }
}

/// Puts a shelf on pins into the box, which has no fixed ones.
pub(crate) fn lay(wall_box: &mut WallBox, up: f64, piece: HorizontalPanel) {
    let shelf = LooseShelf::plain(up, piece);
    match &mut wall_box.body.inside {
        Inside::Undivided { loose } => loose.push(shelf),
        _ => panic!("the box is split"),
    }
}

pub(crate) fn face_frame(thickness: f64, member: f64, overhang: f64) -> FaceFrame {
    FaceFrame {
        thickness,
        material: BOARD.to_owned(),
        members: Edges::all(member),
        overhang: Edges::all(overhang),
        shelf_rail: member,
    }
}

fn drill(diameter: f64, depth: f64, purpose: &str) -> Drill {
    Drill {
        diameter,
        depth: Depth::Blind(depth),
        purpose: purpose.to_owned(),
        pass: 1,
    }
}

pub(crate) fn side_bore(down: f64, back: f64) -> SideBore {
    SideBore {
        down: Distance {
            from: DownFrom::BoxTopUnderside,
            by: PerSize::All(down),
        },
        back: Distance {
            from: BackFrom::SideFront,
            by: PerSize::All(back),
        },
        drill: drill(5.0, 12.0, "body screw"),
    }
}

pub(crate) fn door_bore(across: f64, down: f64) -> DoorBore {
    DoorBore {
        across: Distance {
            from: AcrossFrom::MountingFace,
            by: PerSize::All(across),
        },
        down: Distance {
            from: DownFrom::BoxTopUnderside,
            by: PerSize::All(down),
        },
        drill: drill(4.0, 12.0, "arm screw"),
        edge_ranges: Vec::new(),
        in_glass_or_metal: false,
    }
}

/// A top-hinged flap on an axis, two side bores, two door bores at each side.
pub(crate) fn card() -> Card {
    Card {
        name: "Plover".to_owned(),
        kind: OpeningKind::TopHingedFlap,
        maker_text: String::new(),
        invented: true,
        sides: FittedSides::Both,
        per: PieceCount::PerPair,
        side_bores: vec![side_bore(64.0, 41.0), side_bore(64.0, 137.0)],
        top_bores: Vec::new(),
        door_bores: vec![DoorGroup {
            leaf: LeafId::Only,
            spread: None,
            bores: vec![door_bore(14.0, 90.0), door_bore(14.0, 122.0)],
        }],
        envelope: Envelope {
            down_from: 20.0,
            down_to: PerSize::All(160.0),
            back_from: 10.0,
            back_to: PerSize::All(180.0),
            inward: 30.0,
            front: BackFrom::SideFront,
        },
        adjustment: Adjustment {
            sideways: AdjustmentRange {
                min: -2.0,
                max: 2.0,
            },
            upward: AdjustmentRange {
                min: -3.0,
                max: 3.0,
            },
            depth: AdjustmentRange::default(),
        },
        linkage: Linkage {
            front: BackFrom::SideFront,
            end_degrees: 100.0,
            bodies: Bodies::FixedAxis {
                axis: Pivot {
                    down: PerSize::All(4.0),
                    back: PerSize::All(2.0),
                },
            },
            path_tolerance: 0.0,
            damping: 0.0,
        },
        cut_parts: Vec::new(),
        notes: String::new(),
        sizes: vec![Size {
            name: "1".to_owned(),
            carries: Carries::Mass {
                min: 1.0,
                max: 20.0,
            },
            lift: Lift::Spring {
                // The strongest setting lifts about twice the plain box's door everywhere.
                table: [
                    (0.0, 1.6),
                    (30.0, 18.0),
                    (60.0, 29.6),
                    (90.0, 33.2),
                    (100.0, 32.4),
                ]
                .map(|(degrees, strongest)| SpringRow {
                    degrees,
                    weakest: 0.0,
                    strongest,
                })
                .to_vec(),
                turns: 10.0,
                friction: 0.5,
            },
            door_height: Span {
                min: 100.0,
                max: 900.0,
            },
            door_width: Span {
                min: 200.0,
                max: 1200.0,
            },
            least_inner_depth: 200.0,
            least_inner_height: 200.0,
        }],
        example: None,
    }
}

/// A spread group of cups along the top of the door, with plates under the top.
pub(crate) fn with_hinges(mut card: Card) -> Card {
    let spread = Spread {
        end_inset: 70.0,
        counts: vec![
            SpreadCount {
                up_to: 600.0,
                count: 2,
            },
            SpreadCount {
                up_to: 1500.0,
                count: 3,
            },
        ],
    };
    let point = |by| Distance {
        from: AcrossFrom::SpreadPoint,
        by: PerSize::All(by),
    };
    card.door_bores.push(DoorGroup {
        leaf: LeafId::Only,
        spread: Some(spread.clone()),
        bores: vec![DoorBore {
            across: point(0.0),
            down: Distance {
                from: DownFrom::BoxTopUnderside,
                by: PerSize::All(9.0),
            },
            drill: drill(26.0, 11.0, "hinge cup"),
            edge_ranges: Vec::new(),
            in_glass_or_metal: false,
        }],
    });
    card.top_bores.push(TopGroup {
        spread: Some(spread),
        bores: vec![TopBore {
            across: point(11.0),
            back: Distance {
                from: BackFrom::SideFront,
                by: PerSize::All(43.0),
            },
            drill: drill(5.0, 11.0, "plate screw"),
        }],
    });
    card
}

pub(crate) fn job(wall_box: WallBox, card: Card) -> Job {
    let material = Material {
        name: BOARD.to_owned(),
        class: MaterialClass::Board,
        density: Density {
            low: 600.0,
            likely: 680.0,
            high: 720.0,
        },
        source: "invented".to_owned(),
        stiffness: None,
    };
    let mut job = Job::empty(vec![material], vec![card]);
    assert_eq!(job.cards[0].id, CARD);
    // What every such job gets (its box hangs on the floor, its axis lies deep in the box); the tests
    // of these checks switch them on.
    for reminder in [
        "wall-fixing-reminder",
        "card-unproved",
        "open-door-at-head-height",
        "top-edge-hits-panel",
    ] {
        job.settings
            .weights
            .insert(reminder.to_owned(), SeveritySetting::Off);
    }
    job.boxes.push(wall_box);
    job.give_ids();
    job
}

/// Adds a box to a job.
pub(crate) fn add_box(job: &mut Job, wall_box: WallBox) {
    job.boxes.push(wall_box);
    job.give_ids();
}

/// The same box as another one of the job.
pub(crate) fn copy_of(wall_box: &WallBox) -> WallBox {
    let mut copy = wall_box.clone();
    copy.forget_ids();
    copy
}

/// Adds a card to a job.
pub(crate) fn add_card(job: &mut Job, card: Card) -> CardId {
    let id = job.new_id();
    job.cards.push(UsedCard { id, card });
    id
}

/// A part of the first box of a test's job.
pub(crate) const fn part_id(part: Part) -> PartId {
    PartId {
        box_id: FIRST_BOX,
        part,
    }
}

/// A door of a box of a job, by the place of its opening from the top.
pub(crate) fn door_id(wall_box: &WallBox, opening: usize) -> DoorId {
    let door = wall_box.openings()[opening].door.as_ref();
    door.expect("the opening has a door").id
}

/// What points at it.
pub(crate) fn door_subject(job: &Job, box_index: usize, opening: usize) -> Subject {
    let wall_box = &job.boxes[box_index];
    Subject::Door(wall_box.id, door_id(wall_box, opening))
}

/// Where something is, for lists of findings: the name of its box and what of it, each once.
pub(crate) fn place_of(job: &Job, subjects: &[Subject]) -> String {
    let mut places: Vec<String> = Vec::new();
    for subject in subjects {
        let its_box = subject.box_id().and_then(|id| job.box_by_id(id));
        let name = its_box.map_or("", |it| it.name.as_str());
        let part = match subject {
            Subject::Box(_) => String::new(),
            Subject::Opening(..) => ", opening".to_owned(),
            Subject::Door(_, id) => door_words(its_box, *id),
            Subject::Part(it) => part_words(its_box, it.part),
            Subject::Bore(it) => part_words(its_box, it.part.part),
            Subject::Obstacle(_) => "obstacle".to_owned(),
            Subject::Card(_) => "card".to_owned(),
        };
        let place = format!("{name}{part}");
        if !places.contains(&place) {
            places.push(place);
        }
    }
    places.join("; ")
}

fn part_words(its_box: Option<&WallBox>, part: Part) -> String {
    match part {
        Part::Leaf { door, .. } => door_words(its_box, door),
        Part::Shelf(_) => ", shelf".to_owned(),
        Part::LeftSide => ", left side".to_owned(),
        Part::RightSide => ", right side".to_owned(),
        other => format!(", {other:?}"),
    }
}

fn door_words(its_box: Option<&WallBox>, id: DoorId) -> String {
    let doors = its_box.map_or_else(Vec::new, WallBox::doors);
    match doors.iter().position(|it| it.id == id) {
        Some(index) if doors.len() > 1 => format!(", door {}", index + 1),
        _ => ", door".to_owned(),
    }
}

pub(crate) fn inspect(job: &Job) -> Inspection {
    // What a test has put in since the job was made has no identity yet.
    let mut job = job.clone();
    job.give_ids();
    let problems = validate(&job);
    assert!(
        problems.is_empty(),
        "the test's own job is not sound: {problems:?}"
    );
    flapwright_answer::judged(&job)
}

pub(crate) fn the_panel(report: &BoxReport, part: Part) -> &PanelReport {
    report
        .panels
        .iter()
        .find(|panel| panel.id.part == part)
        .expect("the part is there")
}

pub(crate) fn the_leaf(report: &BoxReport, opening: usize) -> &PanelReport {
    the_panel(
        report,
        Part::Leaf {
            door: the_door(report, opening).id,
            leaf: LeafId::Only,
        },
    )
}

pub(crate) fn the_door(report: &BoxReport, opening: usize) -> &DoorReport {
    report.openings[opening]
        .door
        .as_ref()
        .expect("the opening has a door")
}

pub(crate) fn the_job_door(job: &mut Job, opening: usize) -> &mut Door {
    let id = door_id(&job.boxes[0], opening);
    job.boxes[0].door_mut(id).expect("the door is there")
}

/// (u, v) of the bores of a panel in hole-table order.
pub(crate) fn places(panel: &PanelReport) -> Vec<(f64, f64)> {
    panel.bores.iter().map(|bore| bore.at.uv()).collect()
}

/// (x, y) of the door's bores in the box, in the order of the card.
pub(crate) fn door_bores_in_box(report: &BoxReport, opening: usize) -> Vec<(f64, f64)> {
    the_door(report, opening)
        .offsets
        .iter()
        .map(|offset| offset.drilled.expect("the bore is there").1)
        .map(|at| (at.x, at.y))
        .collect()
}

#[track_caller]
pub(crate) fn assert_close(found: f64, expected: f64) {
    assert!(
        (found - expected).abs() < 1e-9,
        "found {found}, expected {expected}"
    );
}

#[track_caller]
pub(crate) fn assert_places(found: &[(f64, f64)], expected: &[(f64, f64)]) {
    assert_eq!(
        found.len(),
        expected.len(),
        "found {found:?}, expected {expected:?}"
    );
    for (a, b) in found.iter().zip(expected) {
        assert!(
            (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9,
            "found {found:?}, expected {expected:?}"
        );
    }
}

/// The plain box with a door of this mass, kg.
/// The plain box with a weighed door.
pub(crate) fn weighed(kilograms: f64, plus_minus: f64, card: Card) -> Job {
    let mut job = job(wall_box(), card);
    the_job_door(&mut job, 0).typed_mass = Some(TypedMass {
        kilograms,
        plus_minus,
    });
    job
}

/// The plain box with rows of shelf bores that begin so far below and above the ends of its sides.
pub(crate) fn with_rows(first: f64) -> Job {
    let mut it = wall_box();
    it.system_rows = Some(SystemRows {
        front: 70.0,
        rear: 41.0,
        first,
        last: first,
        diameter: 5.0,
        depth: 12.0,
    });
    job(it, card())
}

/// A leaf with a frame of these members around something that reaches 8 into them.
pub(crate) fn framed(members: Edges<f64>, infill: &str) -> Leaf {
    Leaf {
        build: BuildUp::Framed {
            thickness: 19.0,
            material: BOARD.to_owned(),
            members,
            infill: Infill {
                thickness: 4.0,
                material: infill.to_owned(),
                tongue: 8.0,
                behind: 6.0,
            },
        },
        ..leaf(19.0)
    }
}

/// Called "test glass".
pub(crate) fn glass() -> Material {
    Material {
        name: "test glass".to_owned(),
        class: MaterialClass::Glass,
        density: Density {
            low: 2500.0,
            likely: 2500.0,
            high: 2500.0,
        },
        source: "invented".to_owned(),
        stiffness: None,
    }
}

pub(crate) fn with_glass(mut job: Job) -> Job {
    job.materials.push(glass());
    job
}

/// A folding pair about an axis at the top, open to 80 degrees, the joint so far behind the backs of
/// the leaves.
pub(crate) fn folding_card(joint_behind: f64) -> Card {
    let mut card = card();
    card.kind = OpeningKind::FoldingPair;
    for group in &mut card.door_bores {
        group.leaf = LeafId::Upper;
    }
    card.linkage.end_degrees = 80.0;
    card.linkage.bodies = Bodies::Folding {
        axis: Pivot {
            down: PerSize::All(-12.0),
            back: PerSize::All(-9.0),
        },
        joint_behind,
        link_box: Pivot {
            down: PerSize::All(190.0),
            back: PerSize::All(83.0),
        },
        link_below_joint: 210.0,
        link_behind: 31.0,
    };
    card
}

/// A size whose gas strut has its anchors at (o, y) = (-200, 482) in the box and (2 - 20, 332) on
/// the plain box's door: closed they are hypot(182, 150) = 235.9 mm apart.
pub(crate) fn strut(force: f64, stroke: f64, extended: f64, friction: f64) -> Lift {
    Lift::Strut(Strut {
        box_down: 100.0,
        box_back: 200.0,
        door_down: 250.0,
        door_back: 20.0,
        force,
        progression: 1.3,
        stroke,
        extended,
        friction,
    })
}
