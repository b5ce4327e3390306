//! Whether the records of panels that left the program are sound.

use super::{LONGEST, Validator};
use crate::cabinet::WallBox;

impl Validator {
    /// A record may name a part that the box has no longer: that is a finding, not an unsound job.
    pub(super) fn records(&mut self, at: &str, wall_box: &WallBox) {
        for (i, record) in wall_box.records.iter().enumerate() {
            let at = format!("{at}.records[{i}]");
            for value in record.size {
                self.within(&format!("{at}.size"), value, 0.0, 2.0 * LONGEST, " mm");
            }
            self.size(&format!("{at}.thickness"), record.thickness);
            for (number, bore) in record.bores.iter().enumerate() {
                let at = format!("{at}.bores[{number}]");
                for (name, value) in [("u", bore.u), ("v", bore.v)] {
                    let name = format!("{at}.{name}");
                    self.within(&name, value, -LONGEST, 2.0 * LONGEST, " mm");
                }
                self.drill(&at, &bore.drill);
            }
        }
    }
}
