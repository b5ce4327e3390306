//! Soundness of boxes and doors.

use super::{LONGEST, Validator};
use crate::cabinet::{Back, HorizontalPanel, Panel, ShelfKind, WallBox};
use crate::door::{BoreReference, BuildUp, Door, DoorFit, Handle, Leaf, Leaves};
use crate::edges::{Edge, Edges};
use crate::job::Job;

pub(super) fn look_at(look: &mut Validator, job: &Job, index: usize, wall_box: &WallBox) {
    let at = format!("boxes[{index}] \"{}\"", wall_box.name);
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
        self.shelves(at, wall_box, job);
        self.system_rows(at, wall_box);
        self.openings(at, wall_box, job);
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

    fn material_known(&mut self, field: &str, name: &str, job: &Job) {
        if job.material(name).is_none() {
            self.wrong(
                field,
                format!("names \"{name}\", which is not in the job's material table"),
                "choose a material of the table or add it",
            );
        }
    }

    fn horizontal_panel(
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

    fn shelves(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        let lowest = wall_box.bottom.panel.thickness + wall_box.bottom.set_in;
        let highest = wall_box.height - wall_box.top.panel.thickness - wall_box.top.set_in;
        for (i, shelf) in wall_box.shelves.iter().enumerate() {
            let at = format!("{at}.shelves[{i}]");
            self.horizontal_panel(&format!("{at}.piece"), &shelf.piece, wall_box, job);
            if !(shelf.up > lowest && shelf.up + shelf.piece.panel.thickness < highest) {
                self.wrong(
                    format!("{at}.up"),
                    format!(
                        "is {} mm, which puts the shelf outside the box: its underside must be \
                         above {lowest} mm and its upper face below {highest} mm",
                        shelf.up
                    ),
                    "move the shelf or make the box taller",
                );
            }
            if let ShelfKind::Fixed { gap, upper_overlay } = shelf.kind {
                self.signed(&format!("{at}.kind.gap"), gap);
                if let Some(overlay) = upper_overlay {
                    self.signed(&format!("{at}.kind.upper_overlay"), overlay);
                }
            }
        }
        let fixed = wall_box.fixed_shelves();
        for pair in fixed.windows(2) {
            let (upper, lower) = (&wall_box.shelves[pair[0]], &wall_box.shelves[pair[1]]);
            if lower.up + lower.piece.panel.thickness >= upper.up {
                self.wrong(
                    format!("{at}.shelves[{}].up", pair[1]),
                    format!("is {} mm: it meets the fixed shelf above it", lower.up),
                    "move one of the two",
                );
            }
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

    fn openings(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        let needed = wall_box
            .shelves
            .iter()
            .filter(|shelf| shelf.is_fixed())
            .count()
            + 1;
        if wall_box.openings.len() != needed {
            self.wrong(
                format!("{at}.openings"),
                format!(
                    "has {} entries; a box with {} fixed shelves has {needed}",
                    wall_box.openings.len(),
                    needed - 1
                ),
                "add or remove openings, from the top down",
            );
        }
        for (i, opening) in wall_box.openings.iter().enumerate() {
            if let Some(door) = &opening.door {
                self.door(&format!("{at}.openings[{i}].door"), door, job);
            }
        }
    }

    fn door(&mut self, at: &str, door: &Door, job: &Job) {
        match &door.fit {
            DoorFit::Overlay { reveals } => self.four(&format!("{at}.fit.reveals"), reveals),
            DoorFit::Inset { gaps, set_back } => {
                self.four(&format!("{at}.fit.gaps"), gaps);
                self.signed(&format!("{at}.fit.set_back"), *set_back);
            }
        }
        self.four(&format!("{at}.tweaks"), &door.tweaks);
        match &door.leaves {
            Leaves::One(leaf) => self.leaf(&format!("{at}.leaves"), leaf, job),
            Leaves::Two {
                upper,
                lower,
                joint_down,
                joint_gap,
            } => {
                self.leaf(&format!("{at}.leaves.upper"), upper, job);
                self.leaf(&format!("{at}.leaves.lower"), lower, job);
                self.size(&format!("{at}.leaves.joint_down"), *joint_down);
                self.within(
                    &format!("{at}.leaves.joint_gap"),
                    *joint_gap,
                    0.0,
                    500.0,
                    " mm",
                );
            }
        }
        if let Some(handle) = &door.handle {
            self.handle(&format!("{at}.handle"), handle);
        }
        if let Some(mass) = &door.typed_mass {
            let at = format!("{at}.typed_mass");
            self.within(
                &format!("{at}.kilograms"),
                mass.kilograms,
                0.001,
                500.0,
                " kg",
            );
            self.within(
                &format!("{at}.plus_minus"),
                mass.plus_minus,
                0.0,
                mass.kilograms,
                " kg",
            );
        }
        if let BoreReference::AsDrilled(bores) = &door.bores_hang_on {
            for (i, bore) in bores.iter().enumerate() {
                let at = format!("{at}.bores_hang_on[{i}]");
                self.within(
                    &format!("{at}.across"),
                    bore.across,
                    -LONGEST,
                    LONGEST,
                    " mm",
                );
                self.within(&format!("{at}.along"), bore.along, -LONGEST, LONGEST, " mm");
                self.within(&format!("{at}.diameter"), bore.diameter, 0.1, 100.0, " mm");
                self.within(&format!("{at}.depth"), bore.depth, 0.1, LONGEST, " mm");
            }
        }
        self.fitting(at, door, job);
    }

    fn fitting(&mut self, at: &str, door: &Door, job: &Job) {
        let Some(choice) = &door.fitting else { return };
        self.within(
            &format!("{at}.fitting.packing"),
            choice.packing,
            0.0,
            500.0,
            " mm",
        );
        let Some(card) = job.card(&choice.card) else {
            self.wrong(
                format!("{at}.fitting.card"),
                format!(
                    "names \"{}\", which is not among the job's cards",
                    choice.card
                ),
                "choose a card of the job or add it",
            );
            return;
        };
        if card.size(&choice.size).is_none() {
            self.wrong(
                format!("{at}.fitting.size"),
                format!(
                    "names \"{}\", which the card \"{}\" does not have",
                    choice.size, card.name
                ),
                "choose a size of the card",
            );
        }
    }

    fn leaf(&mut self, at: &str, leaf: &Leaf, job: &Job) {
        for edge in Edge::ALL {
            let field = format!("{at}.bands.{}", edge.word());
            self.within(&field, leaf.bands.at(edge), 0.0, 50.0, " mm");
        }
        self.size(&format!("{at}.build.thickness"), leaf.build.thickness());
        self.material_known(&format!("{at}.build.material"), leaf.build.material(), job);
        if let BuildUp::Framed {
            members, infill, ..
        } = &leaf.build
        {
            for edge in Edge::ALL {
                self.size(
                    &format!("{at}.build.members.{}", edge.word()),
                    members.at(edge),
                );
            }
            self.size(&format!("{at}.build.infill.thickness"), infill.thickness);
            self.material_known(
                &format!("{at}.build.infill.material"),
                &infill.material,
                job,
            );
            self.distance(&format!("{at}.build.infill.tongue"), infill.tongue);
            self.distance(&format!("{at}.build.infill.behind"), infill.behind);
        }
    }

    fn handle(&mut self, at: &str, handle: &Handle) {
        self.within(&format!("{at}.mass"), handle.mass, 0.0, 100.0, " kg");
        self.within(&format!("{at}.up"), handle.up, -LONGEST, LONGEST, " mm");
        let aside = handle.right_of_middle;
        self.within(
            &format!("{at}.right_of_middle"),
            aside,
            -LONGEST,
            LONGEST,
            " mm",
        );
        self.distance(&format!("{at}.projection"), handle.projection);
        self.size(&format!("{at}.length"), handle.length);
        if let Some(screws) = &handle.screws {
            self.distance(&format!("{at}.screws.spacing"), screws.spacing);
            self.within(
                &format!("{at}.screws.diameter"),
                screws.diameter,
                0.1,
                100.0,
                " mm",
            );
        }
    }

    fn four(&mut self, at: &str, edges: &Edges<f64>) {
        for edge in Edge::ALL {
            self.signed(&format!("{at}.{}", edge.word()), edges.at(edge));
        }
    }
}
