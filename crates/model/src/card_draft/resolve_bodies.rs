//! Motion numbers of a draft.

use super::entry::{Reader, cell_field};
use super::{DraftBodies, DraftPivot};
use crate::linkage::{Bodies, FlapPose, Linkage, Pivot};

impl Reader<'_> {
    pub(super) fn linkage(&mut self) -> Linkage {
        let draft = &self.draft.linkage;
        Linkage {
            front: draft.front,
            end_degrees: self.number("linkage.end_angle", &draft.end_angle, "°"),
            bodies: self.bodies(&draft.bodies),
            path_tolerance: self.length_or_none("linkage.path_tolerance", &draft.path_tolerance),
            damping: if draft.damping.trim().is_empty() {
                0.0
            } else {
                self.number("linkage.damping", &draft.damping, "N·m·s")
            },
        }
    }

    fn bodies(&mut self, draft: &DraftBodies) -> Bodies {
        match draft {
            DraftBodies::FixedAxis { axis } => Bodies::FixedAxis {
                axis: self.pivot("axis", axis),
            },
            DraftBodies::PoseTable { reference, poses } => {
                let mut rows = Vec::new();
                for row in 0..poses.rows.len() {
                    let field =
                        |column| cell_field("linkage.bodies.poses", row, &poses.titles, column);
                    rows.push(FlapPose {
                        degrees: self.number(&field(0), poses.cell(row, 0), "°"),
                        out: self.length(&field(1), poses.cell(row, 1)),
                        up: self.length(&field(2), poses.cell(row, 2)),
                    });
                }
                Bodies::PoseTable {
                    reference: self.pivot("reference", reference),
                    poses: rows,
                }
            }
            DraftBodies::Parallel {
                box_pivot,
                door_pivot,
                second_down,
                second_back,
            } => Bodies::Parallel {
                box_pivot: self.pivot("box_pivot", box_pivot),
                door_pivot: self.pivot("door_pivot", door_pivot),
                second_down: self.length("linkage.bodies.second_down", second_down),
                second_back: self.length("linkage.bodies.second_back", second_back),
            },
            DraftBodies::Folding {
                axis,
                joint_behind,
                link_box,
                link_below_joint,
                link_behind,
            } => Bodies::Folding {
                axis: self.pivot("axis", axis),
                joint_behind: self.length("linkage.bodies.joint_behind", joint_behind),
                link_box: self.pivot("link_box", link_box),
                link_below_joint: self.length("linkage.bodies.link_below_joint", link_below_joint),
                link_behind: self.length("linkage.bodies.link_behind", link_behind),
            },
            DraftBodies::TwoArms {
                box_first,
                door_first,
                box_second,
                door_second,
            } => Bodies::TwoArms {
                box_first: self.pivot("box_first", box_first),
                door_first: self.pivot("door_first", door_first),
                box_second: self.pivot("box_second", box_second),
                door_second: self.pivot("door_second", door_second),
            },
        }
    }

    fn pivot(&mut self, name: &str, draft: &DraftPivot) -> Pivot {
        let at = format!("linkage.bodies.{name}");
        Pivot {
            down: self.per_size(&format!("{at}.down"), &draft.down),
            back: self.per_size(&format!("{at}.back"), &draft.back),
        }
    }
}
