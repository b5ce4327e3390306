//! Masses against the check values and arithmetic done by hand.

use flapwright_model::cabinet::Drilled;
use flapwright_model::door::{
    BoreReference, BuildUp, Door, DoorFit, Grain, Handle, Infill, Leaf, Leaves, TypedMass,
};
use flapwright_model::edges::Edges;
use flapwright_model::id::DoorId;
use flapwright_model::material::{Density, Material, MaterialClass};
use flapwright_model::part::LeafId;
use flapwright_motion::MotionError;
use flapwright_motion::mass::{door_mass, leaf_mass};

fn material(name: &str, low: f64, likely: f64, high: f64) -> Material {
    Material {
        name: name.to_owned(),
        class: MaterialClass::Board,
        density: Density { low, likely, high },
        source: "test".to_owned(),
        stiffness: None,
    }
}

fn materials() -> Vec<Material> {
    vec![
        material("board", 640.0, 680.0, 800.0),
        material("heavy board", 750.0, 750.0, 750.0),
        material("glass", 2500.0, 2500.0, 2500.0),
        material("oak", 600.0, 700.0, 800.0),
    ]
}

fn leaf(build: BuildUp) -> Leaf {
    Leaf {
        build,
        bands: Edges::all(0.0),
        drilled: Drilled::AfterBanding,
        grain: Grain::None,
    }
}

fn plain(thickness: f64, material: &str) -> Leaf {
    leaf(BuildUp::Plain {
        thickness,
        material: material.to_owned(),
    })
}

fn framed(behind: f64) -> Leaf {
    leaf(BuildUp::Framed {
        thickness: 20.0,
        material: "oak".to_owned(),
        members: Edges::all(60.0),
        infill: Infill {
            thickness: 4.0,
            material: "glass".to_owned(),
            tongue: 10.0,
            behind,
        },
    })
}

fn door(leaf: Leaf) -> Door {
    Door {
        id: DoorId::default(),
        fit: DoorFit::Overlay {
            reveals: Edges::all(2.0),
        },
        tweaks: Edges::all(0.0),
        leaves: Leaves::One(leaf),
        handle: Some(Handle {
            mass: 0.12,
            up: 40.0,
            right_of_middle: 0.0,
            projection: 30.0,
            length: 160.0,
            screws: None,
        }),
        typed_mass: None,
        bores_follow: BoreReference::Fitting,
        fitting: None,
    }
}

#[test]
fn plain_panels_weigh_what_the_check_values_say() {
    for (thickness, stuff, width, height, kilograms) in [
        (18.0, "board", 896.0, 396.0, 4.3429),
        (19.0, "heavy board", 897.0, 397.0, 5.0746),
        (4.0, "glass", 900.0, 400.0, 3.6000),
    ] {
        let mass = leaf_mass(&materials(), &plain(thickness, stuff), width, height).expect(stuff);
        assert!(
            (mass.mass.likely - kilograms).abs() < 5e-5,
            "{stuff}: {mass:?}"
        );
        assert!((mass.centre_up - height / 2.0).abs() < 1e-9);
        assert!((mass.centre_ahead - thickness / 2.0).abs() < 1e-9);
    }
}

#[test]
fn the_spread_of_the_density_is_the_spread_of_the_mass() {
    let mass = leaf_mass(&materials(), &plain(18.0, "board"), 896.0, 396.0)
        .expect("a mass")
        .mass;
    // 6.386688e-3 m3 at 640 and 800 kg/m3.
    assert!((mass.low - 4.087_480).abs() < 1e-6, "{mass:?}");
    assert!((mass.high - 5.109_350).abs() < 1e-6, "{mass:?}");
}

#[test]
fn bands_are_part_of_the_finished_size() {
    let mut banded = plain(18.0, "board");
    banded.bands = Edges::all(1.0);
    let mass = leaf_mass(&materials(), &banded, 896.0, 396.0).expect("a mass");
    // Panel 894 x 394 x 18 = 6 340 248 mm3 at 680; bands 46 440 mm3 at 1115 kg/m3.
    assert!(
        (mass.mass.likely - (4.311_368_64 + 0.051_780_6)).abs() < 1e-9,
        "{mass:?}"
    );
    assert_eq!(mass.parts.len(), 5);
    assert!((mass.centre_up - 198.0).abs() < 1e-9);
}

#[test]
fn a_frame_gives_up_the_groove_that_its_glass_reaches_into() {
    let mass = leaf_mass(&materials(), &framed(8.0), 600.0, 400.0).expect("a mass");
    // Glass 500 x 300 x 4 = 600 000 mm3: 1.5 kg. Frame 2 x 60 x 400 x 20 + 2 x 480 x 60 x 20
    // = 2 112 000 less a groove of (500 x 300 - 480 x 280) x 4 = 62 400: 2 049 600 at 700.
    assert!(
        (mass.mass.likely - (1.5 + 1.434_72)).abs() < 1e-9,
        "{mass:?}"
    );
    assert!((mass.centre_up - 200.0).abs() < 1e-9 && (mass.centre_ahead - 10.0).abs() < 1e-9);
    let infill = mass
        .parts
        .iter()
        .find(|part| part.name == "infill")
        .expect("an infill");
    assert!((infill.mass.likely - 1.5).abs() < 1e-12);
    // A pane flush with the back: its middle is 2 in front of it, and so is that of the rebate.
    let flush = leaf_mass(&materials(), &framed(0.0), 600.0, 400.0).expect("a mass");
    let frame = (2_112_000.0 * 10.0 - 62_400.0 * 2.0) * 700.0e-9;
    let expected = (frame + 1.5 * 2.0) / 2.934_72;
    assert!((flush.centre_ahead - expected).abs() < 1e-9, "{flush:?}");
}

#[test]
fn a_typed_mass_stands_over_the_build_up_and_both_are_told() {
    let mut typed = door(plain(18.0, "board"));
    let sizes = [(896.0, 396.0)];
    let built = door_mass(&materials(), &typed, &sizes).expect("a mass");
    assert!((built.used.likely - 4.462_948).abs() < 1e-6, "{built:?}");
    assert_eq!(built.used, built.built);
    typed.typed_mass = Some(TypedMass {
        kilograms: 5.0,
        plus_minus: 0.25,
    });
    let mass = door_mass(&materials(), &typed, &sizes).expect("a mass");
    assert_eq!(mass.built, built.built);
    assert_eq!(
        [mass.used.low, mass.used.likely, mass.used.high],
        [4.75, 5.0, 5.25]
    );
    let (id, leaf) = &mass.leaves[0];
    assert_eq!(*id, LeafId::Only);
    assert!((leaf.mass.likely - 5.0).abs() < 1e-12);
    assert!((leaf.centre_up - built.leaves[0].1.centre_up).abs() < 1e-9);
}

#[test]
fn an_unknown_material_is_named() {
    let missing = leaf_mass(&materials(), &plain(18.0, "cork"), 896.0, 396.0);
    assert_eq!(
        missing,
        Err(MotionError::NoMaterial {
            name: "cork".to_owned()
        })
    );
}
