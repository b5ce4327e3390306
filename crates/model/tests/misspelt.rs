//! Every field of a job's file and of a card's file is refused when it is misspelt: each name in a
//! full sample in turn, whatever struct or variant it is in.

#![expect(
    clippy::expect_used,
    reason = "a test that lacks its sample is to fail"
)]

use flapwright_model::acceptance::{Acceptance, AcceptedNumber, Topic};
use flapwright_model::cabinet::{
    Back, Drilled, FaceFrame, HorizontalPanel, Panel, PanelBands, SystemRows, WallBox,
};
use flapwright_model::card::Card;
use flapwright_model::door::{
    BoreReference, BuildUp, Door, DoorFit, DrilledBore, End, FittingChoice, Handle, HandleScrews,
    Infill, Leaf, Leaves, Side, TypedMass,
};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::file::{read_card, read_job, write_card, write_job};
use flapwright_model::id::{BoxId, CardId, DoorId, ObstacleId, OpeningId, ShelfId};
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, MassRow};
use flapwright_model::linkage::{Bodies, FlapPose, Pivot};
use flapwright_model::material::{Density, Material, MaterialClass, Stiffness};
use flapwright_model::opening::{FixedShelf, Inside, LooseShelf, Opening, ShelfSplit};
use flapwright_model::part::{BoreId, LeafId, Part, PartId};
use flapwright_model::record::{PanelRecord, RecordState, RecordedBore};
use flapwright_model::room::{Extent, Obstacle};
use flapwright_model::severity::{Severity, SeveritySetting};

/// Where the names of fields begin and end in a RON text: words before a colon, outside of texts.
/// Keys of maps are texts and no fields.
fn fields(text: &str) -> Vec<(usize, usize)> {
    let bytes = text.as_bytes();
    let (mut found, mut at, mut quoted) = (Vec::new(), 0, false);
    while at < bytes.len() {
        match bytes[at] {
            b'\\' if quoted => at += 1,
            b'"' => quoted = !quoted,
            letter if !quoted && (letter.is_ascii_alphabetic() || letter == b'_') => {
                let word = |byte: &u8| byte.is_ascii_alphanumeric() || *byte == b'_';
                let length = bytes[at..].iter().take_while(|it| word(it)).count();
                if bytes.get(at + length) == Some(&b':') {
                    found.push((at, at + length));
                }
                at += length;
                continue;
            }
            _ => {}
        }
        at += 1;
    }
    found
}

/// Checks that `reads` takes the text, and refuses it with any one of its fields misspelt.
fn refuses_each(text: &str, reads: impl Fn(&str) -> Result<(), String>) -> usize {
    assert_eq!(reads(text), Ok(()));
    let fields = fields(text);
    for &(from, to) in &fields {
        // A letter less, as in `uper_overlay`; one-letter names get one more.
        let name = &text[from..to];
        let misspelt = if name.len() > 1 {
            [&name[..1], &name[2..]].concat()
        } else {
            format!("{name}{name}")
        };
        let wrong = [&text[..from], &misspelt, &text[to..]].concat();
        let line = text[..from].lines().count();
        assert!(
            reads(&wrong).is_err(),
            "line {line}: `{misspelt}` for `{name}` is taken"
        );
    }
    fields.len()
}

fn job_reads(text: &str) -> Result<(), String> {
    read_job(text)
        .map(|_| ())
        .map_err(|error| error.to_string())
}

fn card_reads(text: &str) -> Result<(), String> {
    read_card(text)
        .map(|_| ())
        .map_err(|error| error.to_string())
}

fn panel() -> Panel {
    Panel {
        thickness: 18.0,
        material: "board".to_owned(),
        bands: PanelBands::default(),
        drilled: Drilled::BeforeBanding,
    }
}

fn piece() -> HorizontalPanel {
    HorizontalPanel {
        panel: panel(),
        ..HorizontalPanel::plain(18.0, "board")
    }
}

fn framed() -> Leaf {
    Leaf {
        build: BuildUp::Framed {
            thickness: 19.0,
            material: "board".to_owned(),
            members: Edges::all(50.0),
            infill: Infill {
                thickness: 4.0,
                material: "board".to_owned(),
                tongue: 8.0,
                behind: 6.0,
            },
        },
        ..Leaf::plain(19.0, "board")
    }
}

fn full_door(card: CardId) -> Door {
    Door {
        fit: DoorFit::Inset {
            gaps: Edges::all(3.0),
            set_back: 1.0,
        },
        handle: Some(Handle {
            mass: 0.1,
            up: 40.0,
            right_of_middle: 1.0,
            projection: 30.0,
            length: 160.0,
            screws: Some(HandleScrews {
                spacing: 128.0,
                diameter: 5.0,
            }),
        }),
        typed_mass: Some(TypedMass {
            kilograms: 4.0,
            plus_minus: 0.5,
        }),
        bores_follow: BoreReference::AsDrilled(vec![DrilledBore {
            leaf: LeafId::Upper,
            from_side: Side::Left,
            across: 20.0,
            from_end: End::Bottom,
            along: 60.0,
            diameter: 5.0,
            depth: 11.0,
            purpose: "screw".to_owned(),
        }]),
        fitting: Some(FittingChoice {
            card,
            size: "1".to_owned(),
            packing: 2.0,
        }),
        ..Door::overlay(
            Edges::all(3.0),
            Leaves::Two {
                upper: framed(),
                lower: Leaf::plain(18.0, "board"),
                joint_down: 150.0,
                joint_gap: 3.0,
            },
        )
    }
}

/// A job that has every struct and every variant with fields of its own at least once.
fn full_job() -> Job {
    let board = Material {
        name: "board".to_owned(),
        class: MaterialClass::Board,
        density: Density {
            low: 600.0,
            likely: 680.0,
            high: 720.0,
        },
        source: "invented".to_owned(),
        stiffness: Some(Stiffness {
            along: 2000.0,
            across: Some(1500.0),
            source: "invented".to_owned(),
        }),
    };
    let wren = read_card(include_str!("../../../assets/demo/cards/wren.ron")).expect("a card");
    let mut job = Job::empty(vec![board], vec![wren]);
    let card = job.cards[0].id;
    let weights = &mut job.settings.weights;
    weights.insert("some-check".to_owned(), SeveritySetting::Off);
    let extent = Extent { from: 0.0, to: 1.0 };
    job.room.obstacles.push(Obstacle {
        id: ObstacleId::default(),
        name: "pipe".to_owned(),
        along_wall: extent,
        above_floor: extent,
        from_wall: extent,
    });
    job.boxes.push(full_box(card));
    // The other backs, on boxes that are plain else.
    let backs = [
        Back::Rebated {
            panel: panel(),
            lap: 6.0,
        },
        Back::LaidOn { panel: panel() },
    ];
    for back in backs {
        job.boxes.push(WallBox {
            name: "plain".to_owned(),
            back,
            ..WallBox::plain([800.0, 600.0, 330.0], 18.0, "board", None)
        });
    }
    job.give_ids();
    add_records(&mut job);
    job
}

fn full_box(card: CardId) -> WallBox {
    let door = Door {
        bores_follow: BoreReference::Edges { vertical: End::Top },
        ..Door::overlay(Edges::all(3.0), Leaves::One(framed()))
    };
    let above = Opening {
        id: OpeningId::default(),
        door: Some(full_door(card)),
        inside: Inside::Undivided {
            loose: vec![LooseShelf::plain(300.0, piece())],
        },
    };
    let mut wall_box = WallBox::plain([800.0, 600.0, 330.0], 18.0, "board", None);
    wall_box.name = "box".to_owned();
    wall_box.back = Back::Grooved {
        panel: panel(),
        inset: 10.0,
        groove: 6.0,
    };
    wall_box.body.inside = Inside::Shelf(Box::new(ShelfSplit {
        shelf: FixedShelf {
            upper_overlay: Some(8.0),
            ..FixedShelf::plain(200.0, 3.0, piece())
        },
        above,
        below: Opening::undivided(Some(door)),
    }));
    wall_box.frame = Some(FaceFrame {
        thickness: 20.0,
        material: "board".to_owned(),
        members: Edges::all(38.0),
        overhang: Edges::all(0.0),
        shelf_rail: 38.0,
    });
    wall_box.system_rows = Some(SystemRows {
        front: 37.0,
        rear: 37.0,
        first: 64.0,
        last: 64.0,
        diameter: 5.0,
        depth: 13.0,
    });
    wall_box
}

fn add_records(job: &mut Job) {
    let drill = job.cards[0].card.side_bores[0].drill.clone();
    let wall_box = &mut job.boxes[0];
    let part = Part::Leaf {
        door: wall_box.doors()[0].id,
        leaf: LeafId::Upper,
    };
    let box_id = wall_box.id;
    wall_box.records.push(PanelRecord {
        part,
        state: RecordState::Drilled,
        revision: "A".to_owned(),
        size: [700.0, 300.0],
        thickness: 19.0,
        bores: vec![RecordedBore {
            u: 10.0,
            v: 20.0,
            drill,
        }],
    });
    let part = PartId { box_id, part };
    job.accepted.push(Acceptance {
        check: "some-check".to_owned(),
        about: vec![
            Topic::Box(BoxId::new(1)),
            Topic::Door(DoorId::new(2)),
            Topic::Part(PartId {
                box_id,
                part: Part::Shelf(ShelfId::new(3)),
            }),
            Topic::Bore {
                part,
                door: None,
                purpose: "screw".to_owned(),
                nth: 1,
            },
            Topic::NumberedBore(BoreId { part, number: 3 }),
            Topic::Edge(Edge::Top),
        ],
        reason: "seen".to_owned(),
        severity: Severity::Caution,
        numbers: vec![AcceptedNumber {
            label: "gap".to_owned(),
            value: 1.5,
        }],
        by_place: true,
        lost_place: "somewhere".to_owned(),
    });
}

/// The cards of the demo with the variants that none of them has.
fn full_cards() -> Vec<Card> {
    let texts = [
        include_str!("../../../assets/demo/cards/dipper.ron"),
        include_str!("../../../assets/demo/cards/heron.ron"),
        include_str!("../../../assets/demo/cards/owl.ron"),
        include_str!("../../../assets/demo/cards/swift.ron"),
        include_str!("../../../assets/demo/cards/wren.ron"),
    ];
    let mut cards: Vec<Card> = texts
        .iter()
        .map(|text| read_card(text).expect("a demo card"))
        .collect();
    let mut flap = cards[4].clone();
    let reference = Pivot {
        down: flapwright_model::card::PerSize::All(20.0),
        back: flapwright_model::card::PerSize::All(10.0),
    };
    let pose = |degrees: f64| FlapPose {
        degrees,
        out: degrees,
        up: degrees,
    };
    flap.linkage.end_degrees = 90.0;
    flap.linkage.bodies = Bodies::PoseTable {
        reference,
        poses: [0.0, 45.0, 90.0].map(pose).to_vec(),
    };
    flap.sizes[0].carries = Carries::MassByBoxHeight(vec![
        MassRow {
            height: 300.0,
            min: 1.0,
            max: 2.0,
        },
        MassRow {
            height: 400.0,
            min: 1.0,
            max: 2.0,
        },
    ]);
    flap.sizes[1].carries = Carries::Moment {
        min: 1.0,
        max: 2.0,
        at_degrees: 45.0,
    };
    cards.push(flap);
    cards
}

#[test]
fn every_misspelt_field_of_a_job_is_refused() {
    let text = write_job(&full_job());
    let count = refuses_each(&text, job_reads);
    assert!(count > 400, "{count} fields");
    for name in [
        "upper_overlay",
        "joint_gap",
        "groove",
        "lap",
        "vertical",
        "tongue",
        "nth",
    ] {
        assert!(text.contains(&format!("{name}:")), "{name}");
    }
}

#[test]
fn every_misspelt_field_of_a_card_is_refused() {
    let mut text = String::new();
    for card in full_cards() {
        let written = write_card(&card);
        assert!(refuses_each(&written, card_reads) > 100, "{}", card.name);
        text.push_str(&written);
    }
    let kinds = |lift: &Lift| matches!(lift, Lift::Strut(_) | Lift::Spring { .. });
    assert!(
        full_cards()
            .iter()
            .all(|card| card.sizes.iter().all(|it| kinds(&it.lift)))
    );
    for variant in [
        "FixedAxis",
        "PoseTable",
        "Parallel",
        "Folding",
        "TwoArms",
        "Mass(",
        "Moment(",
        "MassByDoorHeight",
        "MassByBoxHeight",
        "Spring(",
        "Strut(",
        "BySize",
        "Blind",
    ] {
        assert!(text.contains(variant), "no card has {variant}");
    }
}

#[test]
fn identities_may_be_left_out_of_a_file_that_is_written_by_hand() {
    let job = full_job();
    // Only those that something else in the file names have to stay: the card, and what records and
    // acceptances are about.
    let mut bare = job.clone();
    bare.boxes[0].records.clear();
    bare.accepted.clear();
    let kept = write_job(&bare);
    let id_line = |line: &&str| {
        let line = line.trim();
        line.starts_with("id: ") || line.starts_with("next_id: ")
    };
    let card = format!(
        "id: {},",
        job.cards[0].id.to_string().trim_start_matches('c')
    );
    let without: Vec<&str> = kept
        .lines()
        .filter(|line| !id_line(line) || line.trim() == card)
        .collect();
    let read = read_job(&without.join("\n")).expect("a sound job");
    assert_eq!(read.all_ids().count(), job.all_ids().count());
    assert!(read.next_id > read.all_ids().max().unwrap_or(0));
}
