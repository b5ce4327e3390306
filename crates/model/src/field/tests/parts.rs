//! Fields of parts that stand by themselves.

use std::fmt::Debug;

use serde::Serialize;

use super::super::{
    BoreField, BoxField, CutPartField, DividerField, DoorField, DraftDoorBoreField,
    DraftSideBoreField, DraftTopBoreField, EdgeRangeField, Fields, FixedShelfField,
    HorizontalField, LeafField, LooseShelfField, MaterialField, NotSet, ObstacleField, PanelField,
    SpreadField, Value,
};
use super::{allowed, another, refused};
use crate::cabinet::{Back, FaceFrame, HorizontalPanel, Panel, SystemRows, WallBox};
use crate::card::LeafEdge;
use crate::card_draft::DraftEdgeRange;
use crate::door::{
    BoreReference, BuildUp, Door, DoorFit, DrilledBore, End, FittingChoice, Handle, HandleScrews,
    Infill, Leaf, Leaves, Side, TypedMass,
};
use crate::edges::Edges;
use crate::id::CardId;
use crate::material::{Density, Material, MaterialClass, Stiffness};
use crate::opening::{Divider, FixedShelf, LooseShelf};
use crate::part::LeafId;
use crate::room::{Extent, Obstacle};

/// Sets every field to all that it may be, gets that back, and puts the old value back.
fn walk<F: Fields>(samples: &[F::Part])
where
    F::Part: Clone + PartialEq + Debug + Serialize,
{
    for field in F::all() {
        let sample = samples.iter().find(|it| field.get(it).is_some());
        let sample = sample.unwrap_or_else(|| panic!("no sample has {field:?}"));
        let before = ron::to_string(sample).unwrap();
        let info = field.info();
        let now = field.get(sample).unwrap().into_owned();
        for value in allowed(info).into_iter().chain([another(info, &now)]) {
            let mut part = sample.clone();
            let old = field.set(&mut part, &value).unwrap();
            assert_eq!(field.get(&part), Some(value.clone()), "{field:?}");
            assert_eq!(old, now, "{field:?}");
            let again = field.set(&mut part, &old).unwrap();
            assert_eq!(again, value, "{field:?}");
            assert_eq!(
                ron::to_string(&part).unwrap(),
                before,
                "{field:?}: {value:?}"
            );
        }
        for value in allowed(info) {
            assert_eq!(info.kind.refusal(&value), None, "{field:?}: {value:?}");
        }
        for value in refused(info) {
            assert!(info.kind.refusal(&value).is_some(), "{field:?}: {value:?}");
        }
        let mut part = sample.clone();
        let wrong = match now {
            Value::Flag(_) => Value::Number(1.0),
            _ => Value::Flag(true),
        };
        assert_eq!(
            field.set(&mut part, &wrong),
            Err(NotSet::WrongKind),
            "{field:?}"
        );
        assert_eq!(&part, sample, "{field:?}: what is refused changes nothing");
    }
    for sample in samples {
        for field in F::all().filter(|it| it.get(sample).is_none()) {
            let mut part = sample.clone();
            let set = field.set(&mut part, &Value::Number(1.0));
            assert_eq!((set, &part), (Err(NotSet::Absent), sample), "{field:?}");
        }
    }
}

fn panel() -> Panel {
    Panel::plain(18.0, "board")
}

fn piece() -> HorizontalPanel {
    HorizontalPanel::plain(18.0, "board")
}

pub(super) fn framed_leaf() -> Leaf {
    Leaf {
        build: BuildUp::Framed {
            thickness: 20.0,
            material: "board".to_owned(),
            members: Edges::all(60.0),
            infill: Infill {
                thickness: 6.0,
                material: "glass".to_owned(),
                tongue: 8.0,
                behind: 6.0,
            },
        },
        ..Leaf::plain(20.0, "board")
    }
}

pub(super) fn drilled_bore(leaf: LeafId) -> DrilledBore {
    DrilledBore {
        leaf,
        from_side: Side::Left,
        across: 20.0,
        from_end: End::Top,
        along: 60.0,
        diameter: 5.0,
        depth: 11.0,
        purpose: "screw".to_owned(),
    }
}

/// A folding pair with all that a door can have.
pub(super) fn full_door(card: CardId) -> Door {
    let leaves = Leaves::Two {
        upper: framed_leaf(),
        lower: Leaf::plain(18.0, "board"),
        joint_down: 190.0,
        joint_gap: 3.0,
    };
    Door {
        handle: Some(Handle {
            mass: 0.2,
            up: 40.0,
            right_of_middle: 0.0,
            projection: 30.0,
            length: 140.0,
            screws: Some(HandleScrews {
                spacing: 128.0,
                diameter: 5.0,
            }),
        }),
        typed_mass: Some(TypedMass {
            kilograms: 3.0,
            plus_minus: 0.1,
        }),
        bores_follow: BoreReference::AsDrilled(vec![drilled_bore(LeafId::Upper)]),
        fitting: Some(FittingChoice {
            card,
            size: "1".to_owned(),
            packing: 0.0,
        }),
        ..Door::overlay(Edges::all(2.0), leaves)
    }
}

/// An inset door whose bores follow its edges.
pub(super) fn inset_door() -> Door {
    Door {
        fit: DoorFit::Inset {
            gaps: Edges::all(2.0),
            set_back: 1.0,
        },
        bores_follow: BoreReference::Edges { vertical: End::Top },
        ..Door::overlay(Edges::all(2.0), Leaves::One(Leaf::plain(18.0, "board")))
    }
}

/// A box with a grooved back, a face frame and rows of shelf bores, without a door.
pub(super) fn full_box() -> WallBox {
    let mut full = WallBox::plain([800.0, 600.0, 330.0], 18.0, "board", None);
    full.name = "full".to_owned();
    full.back = Back::Grooved {
        panel: panel(),
        inset: 10.0,
        groove: 6.0,
    };
    full.frame = Some(FaceFrame {
        thickness: 20.0,
        material: "board".to_owned(),
        members: Edges::all(40.0),
        overhang: Edges::all(0.0),
        shelf_rail: 40.0,
    });
    full.system_rows = Some(SystemRows {
        front: 37.0,
        rear: 37.0,
        first: 64.0,
        last: 64.0,
        diameter: 5.0,
        depth: 13.0,
    });
    full
}

/// A box with a rebated back and nothing else.
pub(super) fn rebated_box() -> WallBox {
    let mut plain = WallBox::plain([800.0, 600.0, 330.0], 18.0, "board", None);
    plain.name = "rebated".to_owned();
    plain.back = Back::Rebated {
        panel: panel(),
        lap: 8.0,
    };
    plain
}

#[test]
fn each_field_of_a_box_is_set_got_and_put_back() {
    walk::<BoxField>(&[full_box(), rebated_box()]);
    walk::<PanelField>(&[panel()]);
    walk::<HorizontalField>(&[piece()]);
    walk::<FixedShelfField>(&[FixedShelf::plain(200.0, 3.0, piece())]);
    walk::<LooseShelfField>(&[LooseShelf::plain(200.0, piece())]);
    walk::<DividerField>(&[Divider {
        id: Default::default(),
        across: 400.0,
        gap: 3.0,
        left_overlay: None,
        panel: panel(),
        set_back: 0.0,
        housing: 0.0,
    }]);
}

#[test]
fn each_field_of_a_door_is_set_got_and_put_back() {
    walk::<DoorField>(&[full_door(CardId::new(1)), inset_door()]);
    walk::<LeafField>(&[framed_leaf(), Leaf::plain(18.0, "board")]);
    walk::<BoreField>(&[drilled_bore(LeafId::Only)]);
}

#[test]
fn each_field_of_a_room_and_a_material_is_set_got_and_put_back() {
    let extent = Extent { from: 1.0, to: 2.0 };
    walk::<ObstacleField>(&[Obstacle {
        id: Default::default(),
        name: "beam".to_owned(),
        along_wall: extent,
        above_floor: extent,
        from_wall: extent,
    }]);
    walk::<MaterialField>(&[Material {
        name: "board".to_owned(),
        class: MaterialClass::Board,
        density: Density {
            low: 600.0,
            likely: 680.0,
            high: 750.0,
        },
        source: "invented".to_owned(),
        stiffness: Some(Stiffness {
            along: 2000.0,
            across: None,
            source: "invented".to_owned(),
        }),
    }]);
}

#[test]
fn each_field_of_a_list_of_a_draft_is_set_got_and_put_back() {
    walk::<DraftSideBoreField>(&[Default::default()]);
    walk::<DraftTopBoreField>(&[Default::default()]);
    walk::<DraftDoorBoreField>(&[Default::default()]);
    walk::<SpreadField>(&[Default::default()]);
    walk::<CutPartField>(&[Default::default()]);
    walk::<EdgeRangeField>(&[DraftEdgeRange {
        edge: LeafEdge::Top,
        min: String::new(),
        max: String::new(),
    }]);
}
