//! The limits of practice that the checks go by, each with its source.

use egui::Ui;
use flapwright_model::job::Settings;
use flapwright_model::length::Unit;
use flapwright_rules::checks::CHECKS;

use super::{Form, group, names};
use crate::window::fields::quantity::Quantity;

/// How a number of the settings is counted.
#[derive(Debug, Clone, Copy)]
enum Counted {
    Length,
    Force,
    PerArea,
    Ratio,
    Celsius,
}

impl Counted {
    const fn quantity(self, unit: Unit) -> Quantity {
        match self {
            Self::Length => Quantity::Length(unit),
            Self::Force => Quantity::Force(unit),
            Self::PerArea => Quantity::PerArea,
            Self::Ratio => Quantity::Ratio,
            Self::Celsius => Quantity::Celsius,
        }
    }
}

/// One limit.
struct Limit {
    /// Name in the settings, as the checks list it.
    key: &'static str,
    word: &'static str,
    meaning: &'static str,
    source: &'static str,
    counted: Counted,
    of: fn(&mut Settings) -> &mut f64,
}

const COMMON: &str = "Common practice, no source.";
const ASSUMED: &str = "Assumed, no source.";
const FINGERS: &str = "Gaps below 8 or above 25 mm are safe (EN 14749, EN 527-2 and EN 1335-2 as \
                       restated by a test house, second-hand).";

const BORES: [Limit; 6] = [
    Limit {
        key: "off_fitting_ignored",
        word: "off fitting",
        meaning: "Bores off the fitting by no more than this are no finding.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.off_fitting_ignored,
    },
    Limit {
        key: "point_lead",
        word: "drill point",
        meaning: "How far the point of a drill runs ahead of the full diameter.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.point_lead,
    },
    Limit {
        key: "least_wood_behind",
        word: "wood behind bore",
        meaning: "Least wood behind a blind bore and its point.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.least_wood_behind,
    },
    Limit {
        key: "least_edge_web",
        word: "bore to edge",
        meaning: "Least wood between a bore and an edge.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.least_edge_web,
    },
    Limit {
        key: "least_bore_web",
        word: "bore to bore",
        meaning: "Least wood between two bores.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.least_bore_web,
    },
    Limit {
        key: "grid_step",
        word: "bore grid",
        meaning: "Step of the machine's bore grid along the side; 0 for none.",
        source: "The 32 mm of the trade.",
        counted: Counted::Length,
        of: |s| &mut s.grid_step,
    },
];

const DOORS: [Limit; 3] = [
    Limit {
        key: "bumper_gap",
        word: "bumper gap",
        meaning: "A closed overlay door stands off the front edges by this.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.bumper_gap,
    },
    Limit {
        key: "least_clearance",
        word: "clearance",
        meaning: "Room that moving parts must keep from what they pass.",
        source: COMMON,
        counted: Counted::Length,
        of: |s| &mut s.least_clearance,
    },
    Limit {
        key: "most_uneven",
        word: "uneven reveals",
        meaning: "Reveals of neighbouring doors that differ by more than this look uneven.",
        source: "1/16 in, the gap of custom casework (trade page on AWI grades, second-hand).",
        counted: Counted::Length,
        of: |s| &mut s.most_uneven,
    },
];

const PEOPLE: [Limit; 6] = [
    Limit {
        key: "most_hand_force",
        word: "hand force",
        meaning: "Largest force that the hand may need.",
        source: "5 lbf (2010 ADA Standards, 309.4).",
        counted: Counted::Force,
        of: |s| &mut s.most_hand_force,
    },
    Limit {
        key: "highest_reach",
        word: "highest reach",
        meaning: "A handle above this height from the floor is out of reach.",
        source: "Assumed, no source: a grown person standing. The 48 in of the 2010 ADA Standards, \
                 308.2.1, are for a reach from a wheelchair and lie below most wall cabinets.",
        counted: Counted::Length,
        of: |s| &mut s.highest_reach,
    },
    Limit {
        key: "head_height",
        word: "head height",
        meaning: "An open door that hangs lower than this and stands out is one to knock the head \
                  on.",
        source: ASSUMED,
        counted: Counted::Length,
        of: |s| &mut s.head_height,
    },
    Limit {
        key: "head_allowance",
        word: "stands out by",
        meaning: "An open door at head height that stands out by no more than this is no trouble.",
        source: ASSUMED,
        counted: Counted::Length,
        of: |s| &mut s.head_allowance,
    },
    Limit {
        key: "finger_gap",
        word: "finger gap from",
        meaning: "Moving gaps of this width and more can catch a finger.",
        source: FINGERS,
        counted: Counted::Length,
        of: |s| &mut s.finger_gap.min,
    },
    Limit {
        key: "finger_gap",
        word: "finger gap to",
        meaning: "Moving gaps wider than this cannot catch a finger.",
        source: FINGERS,
        counted: Counted::Length,
        of: |s| &mut s.finger_gap.max,
    },
];

const LOADS: [Limit; 5] = [
    Limit {
        key: "sag_ratio",
        word: "sag: 1 over",
        meaning: "A lift-up door may sag by its width divided by this.",
        source: "L/144 (Architectural Woodwork Standards 2009, 1.2.21, for shelves; taken over \
                 for doors).",
        counted: Counted::Ratio,
        of: |s| &mut s.sag_ratio,
    },
    Limit {
        key: "shelf_load",
        word: "shelf load",
        meaning: "Load that a square metre of shelf is reckoned with for the wall fixing.",
        source: "40 lb/ft² (Architectural Woodwork Standards 2009, 1.2.21).",
        counted: Counted::PerArea,
        of: |s| &mut s.shelf_load,
    },
    Limit {
        key: "coldest",
        word: "coldest",
        meaning: "A strut must still hold the heaviest door open when it is this cold.",
        source: COMMON,
        counted: Counted::Celsius,
        of: |s| &mut s.coldest,
    },
    Limit {
        key: "hottest",
        word: "hottest",
        meaning: "A strut must still let the lightest door stay shut when it is this hot.",
        source: COMMON,
        counted: Counted::Celsius,
        of: |s| &mut s.hottest,
    },
    Limit {
        key: "holds_above",
        word: "holds above, %",
        meaning: "Above this much of its way a door must hold when it is let go.",
        source: ASSUMED,
        counted: Counted::Ratio,
        of: |s| &mut s.holds_above,
    },
];

/// The limits, by what they are about; hovering one tells its source.
pub(crate) fn limits_ui(ui: &mut Ui, form: &mut Form<'_>) {
    group_ui(ui, form, "Limits for bores", &BORES);
    group_ui(ui, form, "Limits for doors", &DOORS);
    group_ui(ui, form, "Limits for people", &PEOPLE);
    group_ui(ui, form, "Limits for loads", &LOADS);
}

fn group_ui(ui: &mut Ui, form: &mut Form<'_>, title: &str, limits: &[Limit]) {
    group(ui, title);
    let mut settings = form.job.settings.clone();
    for limit in limits {
        let value = *(limit.of)(&mut settings);
        let full = format!("limit: {}", limit.word);
        let help = help(limit);
        let words = names(&full, limit.word, &help);
        let quantity = limit.counted.quantity(form.job.unit);
        let path = format!("settings.{}.{}", limit.key, limit.word);
        let change = form.row(ui, &path, words, quantity, value);
        form.edit_head(&full, change, |head, v| *(limit.of)(&mut head.settings) = v);
    }
}

/// What a limit means, where it comes from, and which checks go by it.
fn help(limit: &Limit) -> String {
    let checks: Vec<&str> = CHECKS
        .iter()
        .filter(|check| check.settings.contains(&limit.key))
        .map(|check| check.name)
        .collect();
    let used = if checks.is_empty() {
        String::new()
    } else {
        format!("\nUsed by: {}.", checks.join(", "))
    };
    format!("{}\n{}{used}", limit.meaning, limit.source)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_of_the_settings_has_its_own_field() {
        let mut settings = Settings::default();
        let limits = BORES.iter().chain(&DOORS).chain(&PEOPLE).chain(&LOADS);
        let count = limits
            .map(|limit| *(limit.of)(&mut settings) = -1.0)
            .count();
        let text = format!("{settings:?}");
        assert_eq!(text.matches("-1.0").count(), count, "{text}");
        // Whatever is not -1 now is no number: nothing was left out.
        let left = text.replace("-1.0", "");
        assert!(
            !left.contains(|c: char| c.is_ascii_digit() && c != '4'),
            "{left}"
        );
    }
}
