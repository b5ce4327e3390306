//! Whether the records of panels that left the program are sound.

use super::Validator;
use crate::cabinet::WallBox;
use crate::field::limits::{RECORDED_PLACE, RECORDED_SIZE, SIZE};

impl Validator {
    /// A record may name a part that the box has no longer: that is a finding, not an unsound job.
    pub(super) fn records(&mut self, at: &str, wall_box: &WallBox) {
        for (i, record) in wall_box.records.iter().enumerate() {
            let at = format!("{at}.records[{i}]");
            for value in record.size {
                self.length(&format!("{at}.size"), value, RECORDED_SIZE);
            }
            self.length(&format!("{at}.thickness"), record.thickness, SIZE);
            for (number, bore) in record.bores.iter().enumerate() {
                let at = format!("{at}.bores[{number}]");
                for (name, value) in [("u", bore.u), ("v", bore.v)] {
                    let name = format!("{at}.{name}");
                    self.length(&name, value, RECORDED_PLACE);
                }
                self.drill(&at, &bore.drill);
            }
        }
    }
}
