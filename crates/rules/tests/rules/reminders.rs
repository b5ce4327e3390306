//! Checks that remind: glass overhead, what the wall holds, cards without an example.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::Example;
use flapwright_model::door::{BuildUp, Infill, Leaf, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::material::{Density, Material, MaterialClass};
use flapwright_rules::finding::Severity;

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

#[test]
fn the_wall_is_told_what_it_has_to_hold() {
    let mut job = weighed(6.0, 0.5, card());
    job.settings.weights.clear();
    // Sides 2 x 600 x 322 x 18, top and bottom 2 x 764 x 322 x 18, back 800 x 600 x 8: together
    // 19 651 488 mm3, at 720 kg/m3 14.149 kg. Door 6.5 kg. Bottom 0.764 m x 0.322 m at 195 kg/m2:
    // 47.972 kg.
    let it = found(&job, "wall-fixing-reminder").remove(0);
    assert_eq!(it.severity, Severity::Note);
    assert!(
        (it.numbers[0].value - 68.621).abs() < 1e-3,
        "{:?}",
        it.numbers
    );
    assert!(it.message.contains("68.62 kg"), "{}", it.message);
    // A shelf of 18 mm between the sides: 764 x 322 more of wood and of load.
    lay(&mut job.boxes[0], 300.0, across(18.0));
    let more = found(&job, "wall-fixing-reminder")[0].numbers[0].value;
    let by = more - it.numbers[0].value;
    // 764 x 322 x 18 mm3 at 720 kg/m3 = 3.188 kg, and 47.972 kg on it.
    assert!((by - 51.160).abs() < 1e-3, "{by}");
}

#[test]
fn a_card_in_use_has_an_example() {
    const NAME: &str = "card-unproved";
    let mut job = job(wall_box(), card());
    job.settings.weights.clear();
    assert_eq!(severities(&job, NAME), [Severity::Caution]);
    assert_eq!(found(&job, NAME)[0].message, "card-unproved.used: doors 1");
    let mut unused = job.clone();
    the_job_door(&mut unused, 0).fitting = None;
    assert_eq!(severities(&unused, NAME), []);
    // By hand: 18 mm panels, overlay 15: the side's bores are 64 + 18 down its end; the door's
    // are 15 + 14 in and 90 + 15 down.
    job.cards[0].card.example = Some(Example {
        size: "1".to_owned(),
        panel_thickness: 18.0,
        overlays: Edges::all(15.0),
        packing: 0.0,
        joint_down: 0.0,
        side: vec![(82.0, 41.0), (82.0, 137.0)],
        door: vec![(29.0, 105.0), (29.0, 137.0)],
    });
    assert_eq!(severities(&job, NAME), []);
    assert_eq!(severities(&job, "card-example-fails"), []);
    if let Some(example) = &mut job.cards[0].card.example {
        example.side.clear();
        example.door.clear();
    }
    assert_eq!(severities(&job, NAME), [Severity::Caution]);
}
