//! Soundness of doors.

use super::{LONGEST, Validator};
use crate::door::{BoreReference, BuildUp, Door, DoorFit, Handle, Leaf, Leaves};
use crate::edges::{Edge, Edges};
use crate::job::Job;

impl Validator {
    pub(super) fn door(&mut self, at: &str, door: &Door, job: &Job) {
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
        if let BoreReference::AsDrilled(bores) = &door.bores_follow {
            for (i, bore) in bores.iter().enumerate() {
                let at = format!("{at}.bores_follow[{i}]");
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
        let Some(card) = job.card_by_id(choice.card) else {
            self.wrong(
                format!("{at}.fitting.card"),
                format!("is {}, which is not among the job's cards", choice.card),
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
