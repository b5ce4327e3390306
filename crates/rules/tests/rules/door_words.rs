//! What the checks on the closed door say: its place, its neighbours, its leaves, its frame, its
//! glass. The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door
//! is 794 by 594.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::Place;
use flapwright_model::card::{EdgeRange, FittedSides, LeafEdge};
use flapwright_model::door::{DoorFit, Leaf, Leaves};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::linkage::Bodies;
use flapwright_model::material::{Density, Material, MaterialClass};
use flapwright_model::part::{LeafId, Part, PartId, Subject};
use flapwright_rules::finding::{Severity, Worse};

const PLACE: &str = "reveal-out-of-range";

fn with_reveal(edge: Edge, reveal: f64, tweak: f64) -> Job {
    let mut job = job(wall_box(), card());
    let it = the_job_door(&mut job, 0);
    if let DoorFit::Overlay { reveals } = &mut it.fit {
        *reveals.at_mut(edge) = reveal;
    }
    *it.tweaks.at_mut(edge) = tweak;
    job
}

#[test]
fn the_edge_that_is_out_of_its_place_is_named_with_its_number() {
    for edge in Edge::ALL {
        let word = edge.word();
        // 18 wide: a reveal of 20 misses it by 2, one of -1 stands 1 past it.
        let missed = the_only(&with_reveal(edge, 20.0, 0.0), PLACE);
        assert_eq!(missed.severity, Severity::Stop);
        assert_eq!(
            missed.message,
            format!("reveal-out-of-range.misses: edge {word}, by 2 mm, overlay -2 mm")
        );
        assert_numbers(&missed, &[("overlay", -2.0, "mm", Worse::Either)]);
        assert_eq!(missed.subjects, [FIRST_DOOR]);
        let past = the_only(&with_reveal(edge, -1.0, 0.0), PLACE);
        assert_eq!(past.severity, Severity::Note);
        assert_eq!(
            past.message,
            format!("reveal-out-of-range.past: edge {word}, by 1 mm, reveal -1 mm")
        );
        assert_numbers(&past, &[("reveal", -1.0, "mm", Worse::Either)]);
    }
}

#[test]
fn a_tweak_counts_in_the_place_of_an_edge() {
    // A reveal of 3 and 4 outward: 1 past; a reveal of 16 and 3 inward: 1 missed.
    let past = the_only(&with_reveal(Edge::Left, 3.0, 4.0), PLACE);
    assert_eq!(
        past.message,
        "reveal-out-of-range.past: edge left, by 1 mm, reveal -1 mm"
    );
    assert_eq!(found(&with_reveal(Edge::Left, 3.0, 3.0), PLACE), []);
    let missed = the_only(&with_reveal(Edge::Left, 16.0, -3.0), PLACE);
    assert_eq!(
        missed.message,
        "reveal-out-of-range.misses: edge left, by 1 mm, overlay -1 mm"
    );
}

#[test]
fn an_inset_door_says_which_gap_it_lacks() {
    for edge in Edge::ALL {
        let mut job = job(wall_box(), card());
        let mut gaps = Edges::all(2.0);
        *gaps.at_mut(edge) = 1.0;
        let it = the_job_door(&mut job, 0);
        it.fit = DoorFit::Inset {
            gaps,
            set_back: 0.0,
        };
        *it.tweaks.at_mut(edge) = 0.9;
        assert_eq!(found(&job, PLACE), []);
        *the_job_door(&mut job, 0).tweaks.at_mut(edge) = 1.5;
        let tight = the_only(&job, PLACE);
        assert_eq!(
            tight.message,
            format!(
                "reveal-out-of-range.no-gap: edge {}, gap -0.5 mm",
                edge.word()
            )
        );
        assert_numbers(&tight, &[("gap", -0.5, "mm", Worse::Either)]);
    }
}

/// Three doors on two shelves of 19 with gaps of 3: overlays of 8 at each.
fn three_doors() -> Job {
    let mut wall_box = wall_box();
    for up in [400.0, 200.0] {
        split(
            &mut wall_box,
            fixed_shelf(up, 19.0, 3.0),
            Some(door(Edges::all(3.0))),
        );
    }
    job(wall_box, card())
}

#[test]
fn doors_that_cannot_both_close_are_told_of_by_the_upper_one() {
    let gap = |upper: usize, bottom: f64, top: f64| {
        let mut job = three_doors();
        the_job_door(&mut job, upper).tweaks.bottom = bottom;
        the_job_door(&mut job, upper + 1).tweaks.top = top;
        found(&job, PLACE)
    };
    for upper in [0, 1] {
        assert_eq!(gap(upper, 1.0, 1.9), []);
        let met = gap(upper, 1.5, 2.5);
        assert_eq!(met.len(), 1, "{met:#?}");
        assert_eq!(met[0].severity, Severity::Stop);
        assert_eq!(
            met[0].message,
            "reveal-out-of-range.no-gap-below: gap -1 mm"
        );
        assert_numbers(&met[0], &[("gap", -1.0, "mm", Worse::Either)]);
        let its_door = door_subject(&three_doors(), 0, upper);
        assert_eq!(met[0].subjects, [its_door]);
        // 8 + 12 = 20 is more than the 19 of the shelf: its gap says that, no reveal does.
        let far = gap(upper, 0.0, 12.0);
        assert_eq!(far.len(), 1, "{far:#?}");
        assert_numbers(&far[0], &[("gap", -9.0, "mm", Worse::Either)]);
        // 8 - 8 laps over nothing, whatever the gap.
        let missed = gap(upper, -8.0, 0.0);
        assert_eq!(missed.len(), 1, "{missed:#?}");
        assert_eq!(
            missed[0].message,
            "reveal-out-of-range.just-misses: edge bottom, overlay 0 mm"
        );
    }
}

const OVERLAP: &str = "doors-overlap";

/// Boxes of this depth at these places; each door stands 21 before its box's sides.
fn boxes(places: &[(&str, f64, f64, f64)]) -> Job {
    let mut job = job(wall_box(), card());
    job.boxes = places
        .iter()
        .map(|&(name, along_wall, above_floor, depth)| {
            let mut it = wall_box();
            it.name = name.to_owned();
            it.place = Place {
                along_wall,
                above_floor,
            };
            it.depth = depth;
            it
        })
        .collect();
    job.give_ids();
    job
}

#[test]
fn doors_that_lie_over_each_other_say_by_how_much() {
    // From 3 to 797 and, 793 further on, from 796: 1; 594 high, 500 higher: 94.
    let job = boxes(&[("second", 793.0, 500.0, 330.0), ("first", 0.0, 0.0, 330.0)]);
    let it = the_only(&job, OVERLAP);
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "doors-overlap.overlap: other a door, across 1 mm, up 94 mm"
    );
    assert_numbers(
        &it,
        &[
            ("across", 1.0, "mm", Worse::Either),
            ("up", 94.0, "mm", Worse::Either),
        ],
    );
    assert_eq!(
        it.subjects,
        [door_subject(&job, 1, 0), door_subject(&job, 0, 0)]
    );
}

#[test]
fn doors_overlap_only_where_they_do_so_all_three_ways() {
    let count = |along: f64, above: f64, depth: f64| {
        found(
            &boxes(&[("first", 0.0, 0.0, 330.0), ("second", along, above, depth)]),
            OVERLAP,
        )
        .len()
    };
    assert_eq!(count(793.9, 0.0, 330.0), 1);
    assert_eq!(count(794.1, 0.0, 330.0), 0);
    assert_eq!(count(700.0, 593.9, 330.0), 1);
    assert_eq!(count(700.0, 594.1, 330.0), 0);
    // The first door is from 332 to 351 from the wall; the other 19 further out.
    assert_eq!(count(700.0, 0.0, 348.9), 1);
    assert_eq!(count(700.0, 0.0, 349.1), 0);
    assert_eq!(count(700.0, 0.0, 311.1), 1);
    assert_eq!(count(700.0, 0.0, 310.9), 0);
}

#[test]
fn each_pair_of_doors_of_different_boxes_is_told_of_once() {
    let job = boxes(&[
        ("a", 0.0, 0.0, 330.0),
        ("b", 300.0, 0.0, 330.0),
        ("c", 600.0, 0.0, 330.0),
        ("d", 1300.0, 0.0, 330.0),
    ]);
    let all = found(&job, OVERLAP);
    let subjects: Vec<Vec<Subject>> = all.iter().map(|it| it.subjects.clone()).collect();
    let pair = |a, b| vec![door_subject(&job, a, 0), door_subject(&job, b, 0)];
    // From 3 to 797, 303 to 1097, 603 to 1397, 1303 to 2097.
    assert_eq!(subjects, [pair(0, 1), pair(0, 2), pair(1, 2), pair(2, 3)]);
    // Doors of one box have a check of their own.
    let mut one = three_doors();
    the_job_door(&mut one, 0).tweaks.bottom = 9.0;
    assert_eq!(found(&one, PLACE).len(), 1);
    assert_eq!(found(&one, OVERLAP), []);
}

const SIZE: &str = "leaf-has-no-size";

const LEAF: PartId = part_id(crate::common::LEAF);

#[test]
fn a_leaf_of_which_nothing_is_left_says_which_way() {
    let with = |reveals: Edges<f64>| {
        let mut wall_box = wall_box();
        wall_box.body.door = Some(door(reveals));
        found(&job(wall_box, card()), SIZE)
    };
    // 800 - 450 - 350 = 0 and 600 - 300 - 305 = -5.
    let sides = |left, right| Edges {
        left,
        right,
        ..Edges::all(3.0)
    };
    assert_eq!(with(sides(450.0, 349.9)), []);
    let none = with(sides(450.0, 350.0));
    assert_eq!(none.len(), 1);
    assert_eq!(
        none[0].message,
        "leaf-has-no-size.nothing: what width, size 0 mm, taken_by_the_frame 0 mm"
    );
    assert_numbers(
        &none[0],
        &[
            ("size", 0.0, "mm", Worse::Either),
            ("taken_by_the_frame", 0.0, "mm", Worse::Either),
        ],
    );
    assert_eq!(none[0].subjects, [Subject::Part(LEAF)]);
    let less = with(Edges {
        top: 300.0,
        bottom: 305.0,
        ..Edges::all(3.0)
    });
    assert_eq!(less.len(), 1);
    assert_eq!(
        less[0].message,
        "leaf-has-no-size.nothing: what height, size -5 mm, taken_by_the_frame 0 mm"
    );
}

fn material(name: &str, class: MaterialClass) -> Material {
    Material {
        name: name.to_owned(),
        class,
        density: Density {
            low: 2500.0,
            likely: 2500.0,
            high: 2500.0,
        },
        source: "invented".to_owned(),
        stiffness: None,
    }
}

#[test]
fn a_frame_that_leaves_no_room_for_its_infill_says_what_it_takes() {
    let with = |left: f64, right: f64, top: f64, bottom: f64| {
        let mut job = job(wall_box(), card());
        job.materials
            .push(material("test glass", MaterialClass::Glass));
        let members = Edges {
            left,
            right,
            top,
            bottom,
        };
        the_job_door(&mut job, 0).leaves = Leaves::One(framed(members, "test glass"));
        found(&job, SIZE)
    };
    assert_eq!(with(500.0, 293.9, 400.0, 193.9), []);
    let wide = with(500.0, 294.0, 60.0, 60.0);
    assert_eq!(wide.len(), 1);
    assert_eq!(
        wide[0].message,
        "leaf-has-no-size.frame-takes-all: what width, size 794 mm, taken_by_the_frame 794 mm"
    );
    let high = with(60.0, 60.0, 400.0, 200.0);
    assert_eq!(high.len(), 1);
    assert_eq!(
        high[0].message,
        "leaf-has-no-size.frame-takes-all: what height, size 594 mm, taken_by_the_frame 600 mm"
    );
    assert_numbers(
        &high[0],
        &[
            ("size", 594.0, "mm", Worse::Either),
            ("taken_by_the_frame", 600.0, "mm", Worse::Either),
        ],
    );
}

const LINKAGE: &str = "linkage-cannot-close";

#[test]
fn a_door_of_one_leaf_on_a_folding_pair_is_halved() {
    // Its top edge at 600 - 23 = 577, its bottom edge at 3: middle at 290, 292 below 582.
    let mut wall_box = wall_box();
    wall_box.body.door = Some(door(Edges {
        top: 23.0,
        ..Edges::all(3.0)
    }));
    let mut job = job(wall_box, folding_card(4.0));
    let before = job.clone();
    let it = the_only(&job, LINKAGE);
    assert_eq!(
        it.message,
        "linkage-cannot-close.no-motion: why (no-motion.leaf-count: kind folding-pair, needed 2, found 1)"
    );
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(it.subjects, [FIRST_DOOR]);
    let remedy = &it.remedies[0];
    assert_eq!(remedy.kind, "remedy.two-leaves");
    assert_eq!(
        remedy.effects,
        "effect.leaves-alike: joint 292 mm, gap 3 mm"
    );
    assert!(!remedy.safe);
    let undo = apply(&mut job, remedy.edit.clone()).expect("a sound job");
    let Leaves::Two {
        upper,
        lower,
        joint_down,
        joint_gap,
    } = &the_job_door(&mut job, 0).leaves
    else {
        panic!("two leaves")
    };
    assert_eq!((upper, lower), (&leaf(19.0), &leaf(19.0)));
    assert_close(*joint_down, 292.0);
    assert_close(*joint_gap, 3.0);
    assert_eq!(found(&job, LINKAGE), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn a_door_of_two_leaves_on_a_flap_becomes_one_like_the_upper_leaf() {
    let mut job = job(wall_box(), card());
    the_job_door(&mut job, 0).leaves = Leaves::Two {
        upper: leaf(22.0),
        lower: leaf(16.0),
        joint_down: 280.0,
        joint_gap: 3.0,
    };
    let it = the_only(&job, LINKAGE);
    assert_eq!(
        it.message,
        "linkage-cannot-close.no-motion: why (no-motion.leaf-count: kind top-hinged-flap, needed 1, found 2)"
    );
    let remedy = &it.remedies[0];
    assert_eq!(remedy.kind, "remedy.one-leaf");
    assert_eq!(remedy.effects, "effect.leaf-like-upper");
    assert!(!remedy.safe);
    apply(&mut job, remedy.edit.clone()).expect("a sound job");
    assert_eq!(the_job_door(&mut job, 0).leaves, Leaves::One(leaf(22.0)));
}

#[test]
fn links_that_do_not_reach_are_a_stop_that_no_other_leaves_clear() {
    // The link is hinged 100 below the joint and hypot(185, 54) = 193 long: together they reach
    // 293. The joint goes from 275 below to about as much before the axis, and there it is more
    // than 400 from the link's place in the box, 190 below and 83 behind.
    let mut card = folding_card(4.0);
    if let Bodies::Folding {
        link_below_joint, ..
    } = &mut card.linkage.bodies
    {
        *link_below_joint = 100.0;
    }
    let mut wall_box = wall_box();
    wall_box.body.door.as_mut().expect("a door").leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    let it = the_only(&job(wall_box, card), LINKAGE);
    assert!(
        it.message
            .contains("no-motion.cannot-close: link guiding-link, at "),
        "{}",
        it.message
    );
    assert_eq!(it.remedies, []);
}

const FRAME: &str = "frame-blocks-fitting";

/// Stiles that stand in by 12 at the left and 5 at the right.
fn with_frame(sides: FittedSides, packing: f64) -> Job {
    let mut card = card();
    card.sides = sides;
    let mut wall_box = wall_box();
    let mut frame = face_frame(20.0, 40.0, 0.0);
    frame.overhang.left = 12.0;
    frame.overhang.right = 5.0;
    wall_box.frame = Some(frame);
    let mut job = job(wall_box, card);
    let fitting = the_job_door(&mut job, 0).fitting.as_mut();
    fitting.expect("a fitting").packing = packing;
    job
}

#[test]
fn a_stile_before_the_fitting_is_told_by_side_and_by_what_the_packing_leaves() {
    for (sides, packing, said) in [
        (FittedSides::Both, 0.0, Some(("left; right", 12.0))),
        (FittedSides::Both, 2.5, Some(("left; right", 9.5))),
        (FittedSides::Both, 5.0, Some(("left", 7.0))),
        (FittedSides::Both, 11.9, Some(("left", 0.1))),
        (FittedSides::Both, 12.0, None),
        (FittedSides::RightOnly, 0.0, Some(("right", 5.0))),
        (FittedSides::RightOnly, 5.0, None),
        (FittedSides::LeftOnly, 5.0, Some(("left", 7.0))),
    ] {
        let all = found(&with_frame(sides, packing), FRAME);
        let Some((at, before)) = said else {
            assert_eq!(all, []);
            continue;
        };
        assert_eq!(all.len(), 1);
        assert_eq!(
            all[0].message,
            format!(
                "frame-blocks-fitting.in-front: sides [{at}], frame_before_the_fitting {before} mm"
            )
        );
        assert_eq!(all[0].severity, Severity::Caution);
        assert_eq!(all[0].subjects, [FIRST_DOOR]);
        assert_numbers(
            &all[0],
            &[("frame_before_the_fitting", before, "mm", Worse::Either)],
        );
    }
}

#[test]
fn packing_out_to_the_deeper_stile_clears_both_and_is_undone() {
    let mut job = with_frame(FittedSides::Both, 2.5);
    let before = job.clone();
    let remedy = the_only(&job, FRAME).remedies.remove(0);
    assert_eq!(remedy.kind, "remedy.pack-out");
    assert_eq!(
        remedy.effects,
        "effect.packing: was 2.5 mm, is 12 mm; effect.bores-move-in: by 9.5 mm"
    );
    assert!(!remedy.safe, "it moves bores");
    let undo = apply(&mut job, remedy.edit).expect("a sound job");
    let fitting = the_job_door(&mut job, 0).fitting.as_ref();
    assert_close(fitting.expect("a fitting").packing, 12.0);
    assert_eq!(found(&job, FRAME), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

const GLASS: &str = "glass-needs-safety-glass";

#[test]
fn glass_overhead_is_told_leaf_by_leaf_with_its_thickness() {
    let mut job = job(wall_box(), folding_card(4.0));
    for (name, class) in [
        ("float glass", MaterialClass::Glass),
        ("Tempered pane", MaterialClass::Glass),
    ] {
        job.materials.push(material(name, class));
    }
    let two = |upper: Leaf, lower: Leaf| Leaves::Two {
        upper,
        lower,
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    let pane = |name: &str| framed(Edges::all(50.0), name);
    the_job_door(&mut job, 0).leaves = two(leaf(19.0), pane("float glass"));
    let it = the_only(&job, GLASS);
    assert_eq!(
        it.message,
        "glass-needs-safety-glass.plain: thickness_of_the_glass 4 mm, glass \"float glass\""
    );
    assert_eq!(it.reasons, ["glass-needs-safety-glass.ask"]);
    assert_eq!(
        it.subjects,
        [Subject::Part(part_id(Part::Leaf {
            door: DOOR,
            leaf: LeafId::Lower
        }))]
    );
    assert_numbers(
        &it,
        &[("thickness_of_the_glass", 4.0, "mm", Worse::Smaller)],
    );
    the_job_door(&mut job, 0).leaves = two(pane("float glass"), pane("Tempered pane"));
    let it = the_only(&job, GLASS);
    assert!(
        matches!(
            it.subjects[..],
            [Subject::Part(PartId {
                part: Part::Leaf {
                    leaf: LeafId::Upper,
                    ..
                },
                ..
            })]
        ),
        "{:?}",
        it.subjects
    );
    // A leaf of nothing but glass is as thick as that.
    the_job_door(&mut job, 0).leaves = two(Leaf::plain(6.0, "float glass"), leaf(19.0));
    let it = the_only(&job, GLASS);
    assert_numbers(
        &it,
        &[("thickness_of_the_glass", 6.0, "mm", Worse::Smaller)],
    );
}

#[test]
fn a_bore_outside_the_range_of_its_card_is_pointed_at_with_its_leaf() {
    // The upper leaf's bores are 15 + 90 = 105 below its top edge; 29 from its own side.
    let mut card = folding_card(4.0);
    card.door_bores[0].bores.truncate(1);
    card.door_bores[0].bores[0].edge_ranges = vec![EdgeRange {
        edge: LeafEdge::Top,
        min: 1.0,
        max: 100.0,
    }];
    let mut job = job(wall_box(), card);
    the_job_door(&mut job, 0).leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    let all = found(&job, "edge-distance-outside-card");
    assert_eq!(all.len(), 2, "one at each side");
    let part = part_id(Part::Leaf {
        door: DOOR,
        leaf: LeafId::Upper,
    });
    let mut numbers = Vec::new();
    for it in &all {
        let [Subject::Bore(bore), Subject::Part(leaf)] = it.subjects[..] else {
            panic!("a bore and its leaf: {:?}", it.subjects)
        };
        assert_eq!((bore.part, leaf), (part, part));
        numbers.push(bore.number);
        let words = format!(
            ": bore {}, purpose \"arm screw\", edge top, over 5 mm, distance 105 mm, least 1 mm, \
             greatest 100 mm",
            bore.number
        );
        assert!(it.message.ends_with(&words), "{}", it.message);
        assert_numbers(
            it,
            &[
                ("distance", 105.0, "mm", Worse::Either),
                ("least", 1.0, "mm", Worse::Either),
                ("greatest", 100.0, "mm", Worse::Either),
            ],
        );
    }
    numbers.sort_unstable();
    assert_eq!(numbers, [1, 2]);
}
