//! The check `glass-needs-safety-glass`.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use crate::worked::material;
use flapwright_model::door::{BuildUp, Infill, Leaf, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::material::{Density, Material, MaterialClass};
use flapwright_model::part::{LeafId, Part, PartId, Subject};
use flapwright_rules::finding::{Severity, Worse};

fn with_pane(name: &str, class: MaterialClass) -> Job {
    let mut job = job(wall_box(), card());
    job.materials.push(Material {
        name: name.to_owned(),
        class,
        density: Density {
            low: 2500.0,
            likely: 2500.0,
            high: 2500.0,
        },
        source: "invented".to_owned(),
        stiffness: None,
    });
    let framed = BuildUp::Framed {
        thickness: 19.0,
        material: BOARD.to_owned(),
        members: Edges::all(60.0),
        infill: Infill {
            thickness: 4.0,
            material: name.to_owned(),
            tongue: 8.0,
            behind: 7.0,
        },
    };
    the_job_door(&mut job, 0).leaves = Leaves::One(Leaf {
        build: framed,
        ..leaf(19.0)
    });
    job
}

#[test]
fn glass_that_is_not_said_to_be_safe_is_noted() {
    const NAME: &str = "glass-needs-safety-glass";
    let float = found(&with_pane("float glass", MaterialClass::Glass), NAME);
    assert_eq!(float.len(), 1);
    assert_eq!(float[0].severity, Severity::Note);
    assert!(
        float[0]
            .message
            .contains("plain: thickness_of_the_glass 4 mm, glass \"float glass\"")
    );
    assert_eq!(float[0].reasons, ["glass-needs-safety-glass.ask"]);
    for name in ["Toughened glass", "laminated glass", "safety glass"] {
        let job = with_pane(name, MaterialClass::Glass);
        assert_eq!(severities(&job, NAME), [], "{name}");
    }
    let job = with_pane("acrylic", MaterialClass::Plastic);
    assert_eq!(severities(&job, NAME), []);
    let mut whole = with_pane("float glass", MaterialClass::Glass);
    the_job_door(&mut whole, 0).leaves = Leaves::One(Leaf::plain(6.0, "float glass"));
    assert_eq!(severities(&whole, NAME), [Severity::Note]);
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
