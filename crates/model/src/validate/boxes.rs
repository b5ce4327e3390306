//! Soundness of boxes: each number within its own limits, and the numbers with each other.

use super::Validator;
use crate::cabinet::{Back, HorizontalPanel, WallBox};
use crate::field::{BoxField, HorizontalField, PanelField};
use crate::job::Job;

pub(super) fn look_at(look: &mut Validator, job: &Job, wall_box: &WallBox) {
    let at = format!("box {} \"{}\"", wall_box.id, wall_box.name);
    look.wall_box(&at, wall_box, job);
}

impl Validator {
    fn wall_box(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        self.fields_of::<BoxField>(at, wall_box, job);
        self.fields_of::<PanelField>(format_args!("{at}.left"), &wall_box.left, job);
        self.fields_of::<PanelField>(format_args!("{at}.right"), &wall_box.right, job);
        self.horizontal_panel(&format!("{at}.top"), &wall_box.top, wall_box, job);
        self.horizontal_panel(&format!("{at}.bottom"), &wall_box.bottom, wall_box, job);
        self.back(at, wall_box, job);
        self.inner_size(at, wall_box);
        self.records(at, wall_box);
        self.body(at, wall_box, job);
    }

    pub(super) fn horizontal_panel(
        &mut self,
        at: &str,
        piece: &HorizontalPanel,
        wall_box: &WallBox,
        job: &Job,
    ) {
        self.fields_of::<PanelField>(format_args!("{at}.panel"), &piece.panel, job);
        self.fields::<HorizontalField>(at, piece);
        if piece.set_back >= wall_box.depth {
            self.wrong(
                format!("{at}.set_back"),
                format!(
                    "is {} mm in a box {} mm deep",
                    piece.set_back, wall_box.depth
                ),
                "set it back by less than the depth",
            );
        }
        self.let_in(
            at,
            "housing",
            piece.housing,
            wall_box,
            "correct the depth of the housing",
        );
    }

    /// What is let into a side goes at most through the thinner of the two.
    fn let_in(&mut self, at: &str, name: &str, depth: f64, wall_box: &WallBox, remedy: &str) {
        let thinner = wall_box.left.thickness.min(wall_box.right.thickness);
        if depth > thinner {
            self.wrong(
                format!("{at}.{name}"),
                format!(
                    "is {depth} mm; it must be between 0 and the thickness of the side, {thinner} \
                     mm"
                ),
                remedy,
            );
        }
    }

    fn back(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        if let Some(panel) = wall_box.back.panel() {
            self.fields_of::<PanelField>(format_args!("{at}.back.panel"), panel, job);
        }
        let (name, depth) = match &wall_box.back {
            Back::Open | Back::LaidOn { .. } => return,
            Back::Grooved { groove, .. } => ("groove", *groove),
            Back::Rebated { lap, .. } => ("lap", *lap),
        };
        let at = format!("{at}.back");
        self.let_in(&at, name, depth, wall_box, "correct the length");
    }

    fn inner_size(&mut self, at: &str, wall_box: &WallBox) {
        let sides = wall_box.left.thickness + wall_box.right.thickness;
        let top = wall_box.top.panel.thickness + wall_box.top.set_in;
        let bottom = wall_box.bottom.panel.thickness + wall_box.bottom.set_in;
        let behind = match &wall_box.back {
            Back::Open => 0.0,
            Back::Grooved { panel, inset, .. } => panel.thickness + inset,
            Back::Rebated { panel, .. } | Back::LaidOn { panel } => panel.thickness,
        };
        for (name, outer, taken, by) in [
            ("width", wall_box.width, sides, "the two sides"),
            ("height", wall_box.height, top + bottom, "top and bottom"),
            ("depth", wall_box.depth, behind, "the back"),
        ] {
            if taken >= outer {
                self.wrong(
                    format!("{at}.{name}"),
                    format!("is {outer} mm, and {by} alone take {taken} mm"),
                    "make the box larger or the panels thinner",
                );
            }
        }
    }
}
