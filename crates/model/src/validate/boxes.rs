//! Soundness of boxes.

use super::{LONGEST, Validator};
use crate::cabinet::{Back, HorizontalPanel, Panel, WallBox};
use crate::edges::Edge;
use crate::job::Job;

pub(super) fn look_at(look: &mut Validator, job: &Job, wall_box: &WallBox) {
    let at = format!("box {} \"{}\"", wall_box.id, wall_box.name);
    look.wall_box(&at, wall_box, job);
}

impl Validator {
    fn wall_box(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        if wall_box.name.trim().is_empty() {
            self.wrong(format!("{at}.name"), "is empty", "give the box a name");
        }
        if !(1..=9999).contains(&wall_box.quantity) {
            self.wrong(
                format!("{at}.quantity"),
                format!("is {}; it must be between 1 and 9999", wall_box.quantity),
                "correct the number",
            );
        }
        self.size(&format!("{at}.width"), wall_box.width);
        self.size(&format!("{at}.height"), wall_box.height);
        self.size(&format!("{at}.depth"), wall_box.depth);
        self.within(
            &format!("{at}.place.along_wall"),
            wall_box.place.along_wall,
            -100_000.0,
            100_000.0,
            " mm",
        );
        self.within(
            &format!("{at}.place.above_floor"),
            wall_box.place.above_floor,
            0.0,
            20_000.0,
            " mm",
        );
        self.panel(&format!("{at}.left"), &wall_box.left, job);
        self.panel(&format!("{at}.right"), &wall_box.right, job);
        self.horizontal_panel(&format!("{at}.top"), &wall_box.top, wall_box, job);
        self.horizontal_panel(&format!("{at}.bottom"), &wall_box.bottom, wall_box, job);
        self.back(&format!("{at}.back"), wall_box, job);
        self.frame(at, wall_box, job);
        self.inner_size(at, wall_box);
        self.records(at, wall_box);
        self.body(at, wall_box, job);
        self.system_rows(at, wall_box);
    }

    fn panel(&mut self, at: &str, panel: &Panel, job: &Job) {
        self.size(&format!("{at}.thickness"), panel.thickness);
        self.material_known(&format!("{at}.material"), &panel.material, job);
        let bands = panel.bands;
        for (name, value) in [
            ("front", bands.front),
            ("back", bands.back),
            ("top_or_left", bands.top_or_left),
            ("bottom_or_right", bands.bottom_or_right),
        ] {
            self.within(&format!("{at}.bands.{name}"), value, 0.0, 50.0, " mm");
        }
    }

    pub(super) fn material_known(&mut self, field: &str, name: &str, job: &Job) {
        if job.material(name).is_none() {
            self.wrong(
                field,
                format!("names \"{name}\", which is not in the job's material table"),
                "choose a material of the table or add it",
            );
        }
    }

    pub(super) fn horizontal_panel(
        &mut self,
        at: &str,
        piece: &HorizontalPanel,
        wall_box: &WallBox,
        job: &Job,
    ) {
        self.panel(&format!("{at}.panel"), &piece.panel, job);
        self.distance(&format!("{at}.set_back"), piece.set_back);
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
        self.distance(&format!("{at}.set_in"), piece.set_in);
        let thinner = wall_box.left.thickness.min(wall_box.right.thickness);
        if !(piece.housing >= 0.0 && piece.housing <= thinner) {
            self.wrong(
                format!("{at}.housing"),
                format!(
                    "is {} mm; it must be between 0 and the thickness of the side, {thinner} mm",
                    piece.housing
                ),
                "correct the depth of the housing",
            );
        }
    }

    fn back(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        if let Some(panel) = wall_box.back.panel() {
            self.panel(&format!("{at}.panel"), panel, job);
        }
        let thinner = wall_box.left.thickness.min(wall_box.right.thickness);
        match &wall_box.back {
            Back::Open | Back::LaidOn { .. } => {}
            Back::Grooved { inset, groove, .. } => {
                self.distance(&format!("{at}.inset"), *inset);
                self.within(&format!("{at}.groove"), *groove, 0.0, thinner, " mm");
            }
            Back::Rebated { lap, .. } => {
                self.within(&format!("{at}.lap"), *lap, 0.0, thinner, " mm");
            }
        }
    }

    fn frame(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        let Some(frame) = &wall_box.frame else { return };
        self.size(&format!("{at}.frame.thickness"), frame.thickness);
        self.material_known(&format!("{at}.frame.material"), &frame.material, job);
        for edge in Edge::ALL {
            let word = edge.word();
            self.size(
                &format!("{at}.frame.members.{word}"),
                frame.members.at(edge),
            );
            self.signed(
                &format!("{at}.frame.overhang.{word}"),
                frame.overhang.at(edge),
            );
        }
        self.size(&format!("{at}.frame.shelf_rail"), frame.shelf_rail);
    }

    fn inner_size(&mut self, at: &str, wall_box: &WallBox) {
        let taken = wall_box.left.thickness + wall_box.right.thickness;
        self.room_left(
            &format!("{at}.width"),
            wall_box.width,
            taken,
            "the two sides",
        );
        let top = wall_box.top.panel.thickness + wall_box.top.set_in;
        let bottom = wall_box.bottom.panel.thickness + wall_box.bottom.set_in;
        self.room_left(
            &format!("{at}.height"),
            wall_box.height,
            top + bottom,
            "top and bottom",
        );
        let behind = match &wall_box.back {
            Back::Open => 0.0,
            Back::Grooved { panel, inset, .. } => panel.thickness + inset,
            Back::Rebated { panel, .. } | Back::LaidOn { panel } => panel.thickness,
        };
        self.room_left(&format!("{at}.depth"), wall_box.depth, behind, "the back");
    }

    fn room_left(&mut self, field: &str, outer: f64, taken: f64, by: &str) {
        if taken >= outer {
            self.wrong(
                field,
                format!("is {outer} mm, and {by} alone take {taken} mm"),
                "make the box larger or the panels thinner",
            );
        }
    }

    fn system_rows(&mut self, at: &str, wall_box: &WallBox) {
        let Some(rows) = &wall_box.system_rows else {
            return;
        };
        for (name, value) in [
            ("front", rows.front),
            ("rear", rows.rear),
            ("first", rows.first),
            ("last", rows.last),
        ] {
            self.distance(&format!("{at}.system_rows.{name}"), value);
        }
        self.within(
            &format!("{at}.system_rows.diameter"),
            rows.diameter,
            0.1,
            100.0,
            " mm",
        );
        self.within(
            &format!("{at}.system_rows.depth"),
            rows.depth,
            0.1,
            LONGEST,
            " mm",
        );
    }
}
