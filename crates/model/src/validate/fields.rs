//! Every field of a part against what its table says of it.

use std::fmt::Display;

use super::Validator;
use crate::field::{Fields, Kind, Value};
use crate::job::Job;

impl Validator {
    /// All fields of a part; `at` is where the part stands. A path is made only for what is wrong.
    pub(super) fn fields<F: Fields>(&mut self, at: impl Display, part: &F::Part) {
        for field in F::all() {
            let Some(value) = field.get(part) else {
                continue;
            };
            if let Some((what, remedy)) = field.info().kind.refusal(&value) {
                self.wrong(path_of(&at, field), what, remedy);
            }
        }
    }

    /// The same, and whether the materials that the part names are in the job's table.
    pub(super) fn fields_of<F: Fields>(&mut self, at: impl Display, part: &F::Part, job: &Job) {
        self.fields::<F>(&at, part);
        let named = F::all().filter(|field| field.info().kind == Kind::Material);
        for field in named {
            if let Some(Value::Text(name)) = field.get(part)
                && job.material(&name).is_none()
            {
                self.wrong(
                    path_of(&at, field),
                    format!("names \"{name}\", which is not in the job's material table"),
                    "choose a material of the table or add it",
                );
            }
        }
    }
}

/// The path of a field of the part that stands at a path; the job itself stands at none.
fn path_of<F: Fields>(at: &impl Display, field: F) -> String {
    let path = format!("{at}{}", field.path());
    path.strip_prefix('.').map_or(path.clone(), str::to_owned)
}
