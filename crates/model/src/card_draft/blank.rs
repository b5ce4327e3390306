//! Where a new draft starts: everything that belongs to an opening kind but the numbers.

use super::columns::{self, SIZE};
use super::{
    AcrossDatum, BackDatum, CardDraft, DownDatum, DraftBodies, DraftDistance, DraftDoorBore,
    DraftDoorGroup, DraftDrill, DraftEnvelope, DraftExample, DraftLinkage, DraftPivot,
    DraftSideBore, DraftSpread, DraftTopBore, DraftTopGroup, Grid, Paper,
};
use crate::card::{BackFrom, FittedSides, OpeningKind, first_pass};
use crate::length::Unit;
use crate::lift::PieceCount;
use crate::part::LeafId;

impl Default for DraftDrill {
    fn default() -> Self {
        Self {
            diameter: String::new(),
            depth: String::new(),
            purpose: String::new(),
            pass: first_pass(),
        }
    }
}

impl Default for DraftEnvelope {
    fn default() -> Self {
        Self {
            down_from: String::new(),
            down_to: String::new(),
            back_from: String::new(),
            back_to: String::new(),
            inward: String::new(),
            front: BackFrom::SideFront,
        }
    }
}

impl Default for Paper {
    fn default() -> Self {
        Self {
            length: Unit::Millimetre,
            loads: Unit::Millimetre,
            load_given: super::LoadGiven::default(),
            overlay_side: String::new(),
            overlay_top: String::new(),
            top_thickness: String::new(),
        }
    }
}

impl Default for CardDraft {
    fn default() -> Self {
        Self::blank(OpeningKind::TopHingedFlap)
    }
}

impl DraftSpread {
    /// An empty width table.
    #[must_use]
    pub fn new_counts() -> Grid {
        Grid::new(["up to width", "count"])
    }
}

impl DraftBodies {
    /// The bodies of an opening kind without numbers; a flap turns about a fixed axis.
    #[must_use]
    pub fn blank(kind: OpeningKind) -> Self {
        let pivot = DraftPivot::default;
        match kind {
            OpeningKind::TopHingedFlap => Self::FixedAxis { axis: pivot() },
            OpeningKind::ParallelRisingDoor => Self::Parallel {
                box_pivot: pivot(),
                door_pivot: pivot(),
                second_down: String::new(),
                second_back: String::new(),
            },
            OpeningKind::FoldingPair => Self::Folding {
                axis: pivot(),
                joint_behind: String::new(),
                link_box: pivot(),
                link_below_joint: String::new(),
                link_behind: String::new(),
            },
            OpeningKind::OverTheTopDoor => Self::TwoArms {
                box_first: pivot(),
                door_first: pivot(),
                box_second: pivot(),
                door_second: pivot(),
            },
        }
    }

    /// A flap on a linked hinge without numbers.
    #[must_use]
    pub fn blank_pose_table() -> Self {
        Self::PoseTable {
            reference: DraftPivot::default(),
            poses: Grid::new(["angle", "out", "up"]).with(["0", "0", "0"]),
        }
    }
}

impl CardDraft {
    /// Another opening kind: bores and numbers stay, bodies and leaves are those of the kind. A
    /// draft in which nothing but its name and paper is typed begins anew.
    pub fn change_kind(&mut self, kind: OpeningKind) {
        let head = |of: &Self, body: Self| Self {
            name: of.name.clone(),
            maker_text: of.maker_text.clone(),
            paper: of.paper.clone(),
            ..body
        };
        let blank = Self::blank(kind);
        if *self == head(self, Self::blank(self.kind)) {
            *self = head(self, blank);
            return;
        }
        let leaf = blank.door_bores.first().map(|group| group.leaf);
        let leaves = self.kind.leaf_count() != kind.leaf_count();
        if let Some(leaf) = leaf.filter(|_| leaves) {
            self.door_bores.iter_mut().for_each(|it| it.leaf = leaf);
        }
        self.kind = kind;
        self.linkage.bodies = blank.linkage.bodies;
    }

    /// Everything that belongs to an opening kind but the numbers: three bores of the body in each
    /// side, two of the bracket in the door (in the lower leaf of a folding pair), for a flap
    /// hinges spread along its top, one size lifted by a spring, an empty example.
    #[must_use]
    pub fn blank(kind: OpeningKind) -> Self {
        let bracket_leaf = if kind.leaf_count() == 2 {
            LeafId::Lower
        } else {
            LeafId::Only
        };
        let mut door_bores = vec![DraftDoorGroup {
            leaf: bracket_leaf,
            spread: None,
            bores: vec![
                bracket(DownDatum::default()),
                bracket(DownDatum::HoleBefore),
            ],
        }];
        let mut top_bores = Vec::new();
        if matches!(kind, OpeningKind::TopHingedFlap | OpeningKind::FoldingPair) {
            let leaf = if kind.leaf_count() == 2 {
                LeafId::Upper
            } else {
                LeafId::Only
            };
            door_bores.push(DraftDoorGroup {
                leaf,
                spread: Some(spread()),
                bores: vec![hinge()],
            });
            top_bores.push(DraftTopGroup {
                spread: Some(spread()),
                bores: vec![DraftTopBore {
                    across: from(AcrossDatum::SpreadPoint),
                    back: DraftDistance::default(),
                    drill: purpose("hinge plate screw"),
                }],
            });
        }
        Self {
            name: String::new(),
            kind,
            maker_text: String::new(),
            invented: false,
            paper: Paper::default(),
            sides: FittedSides::Both,
            per: PieceCount::PerPair,
            side_bores: vec![
                side(DownDatum::default(), BackDatum::default()),
                side(DownDatum::HoleBefore, BackDatum::HoleBefore),
                side(DownDatum::HoleBefore, BackDatum::HoleBefore),
            ],
            top_bores,
            door_bores,
            envelope: DraftEnvelope::default(),
            adjustment: Default::default(),
            linkage: DraftLinkage {
                front: BackFrom::SideFront,
                end_angle: String::new(),
                bodies: DraftBodies::blank(kind),
                path_tolerance: String::new(),
                damping: String::new(),
            },
            cut_parts: Vec::new(),
            notes: String::new(),
            sizes: Grid::new(columns::PLAIN.into_iter().chain(columns::SPRING)).with(["1"]),
            loads: Grid::new([SIZE, "of", "height", "min", "max"]),
            springs: Grid::new([SIZE, "angle", "weakest", "strongest"]),
            example: Some(DraftExample::default()),
        }
    }

    /// Gives the sizes table the columns of a strut in place of those of a spring; the cells of
    /// the spring are dropped.
    pub fn lift_by_struts(&mut self) {
        self.exchange(&columns::SPRING, &columns::STRUT);
        self.springs.rows.clear();
    }

    /// Gives the sizes table the columns of a spring in place of those of a strut; the cells of
    /// the strut are dropped.
    pub fn lift_by_springs(&mut self) {
        self.exchange(&columns::STRUT, &columns::SPRING);
    }

    fn exchange(&mut self, out: &[&str], with: &[&str]) {
        for title in out {
            if let Some(column) = self.sizes.column(title) {
                self.sizes.remove_column(column);
            }
        }
        for title in with {
            self.sizes.add_column(title);
        }
    }
}

fn from<D>(from: D) -> DraftDistance<D> {
    DraftDistance {
        from,
        by: String::new(),
    }
}

fn purpose(purpose: &str) -> DraftDrill {
    DraftDrill {
        purpose: purpose.to_owned(),
        ..DraftDrill::default()
    }
}

fn side(down: DownDatum, back: BackDatum) -> DraftSideBore {
    DraftSideBore {
        down: from(down),
        back: from(back),
        drill: purpose("body screw"),
    }
}

fn bracket(down: DownDatum) -> DraftDoorBore {
    DraftDoorBore {
        down: from(down),
        drill: purpose("bracket screw"),
        ..DraftDoorBore::default()
    }
}

fn hinge() -> DraftDoorBore {
    DraftDoorBore {
        across: from(AcrossDatum::SpreadPoint),
        drill: purpose("hinge cup"),
        ..DraftDoorBore::default()
    }
}

fn spread() -> DraftSpread {
    DraftSpread {
        end_inset: String::new(),
        counts: DraftSpread::new_counts().with([""]),
    }
}
