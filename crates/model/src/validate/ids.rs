//! Whether every thing of a job has an identity of its own.

use std::collections::BTreeSet;

use super::Validator;
use crate::cabinet::WallBox;
use crate::job::Job;

impl Validator {
    /// All identities of a job: given, below the next one, and each only once whatever it is of.
    pub(super) fn ids(&mut self, job: &Job) {
        let mut seen = BTreeSet::new();
        for number in job.all_ids() {
            self.id(number, job.next_id, &mut seen);
        }
    }

    /// The same of one box.
    pub(super) fn ids_of_box(&mut self, wall_box: &WallBox, next: u32) {
        let mut seen = BTreeSet::new();
        for number in wall_box.own_ids() {
            self.id(number, next, &mut seen);
        }
    }

    fn id(&mut self, number: u32, next: u32, seen: &mut BTreeSet<u32>) {
        let field = || format!("id {number}");
        if number == 0 {
            self.wrong(
                field(),
                "stands for \"not given yet\"",
                "give it an id of its own",
            );
        } else if number >= next {
            self.wrong(
                field(),
                format!("is not below next_id, which is {next}"),
                "make next_id larger than every id, or leave it out",
            );
        } else if !seen.insert(number) {
            self.wrong(
                field(),
                "is used twice",
                "leave one of them out, so that a new one is given",
            );
        }
    }
}
