//! What a job says of itself as a whole: its name, its title block, its limits of practice.

use super::choices::Choices;
use super::info::{
    ASSUMED, COMMON, Info, Kind, NONE, Quantity, TEXT, choice, flag, length, number, quantity,
    words,
};
use super::limits::{
    DISTANCE, GRID, HAND_FORCE, HEIGHT, PERCENT, SAG, SHELF_LOAD, SMALL, TEMPERATURE,
};
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::edges::Edge;
use crate::job::{Job, OpeningMark, PaperChoice};
use crate::length::Unit;
use crate::measure::NEWTON_PER_POUND;

const FINGERS: &str = "Gaps below 8 or above 25 mm are safe (EN 14749, EN 527-2 and EN 1335-2 as \
                       restated by a test house, second-hand).";
const REACH: &str = "Assumed, no source: a grown person standing. The 48 in of the 2010 ADA \
                     Standards, 308.2.1, are for a reach from a wheelchair and lie below most wall \
                     cabinets.";

fields! {
    /// A field of the job as a whole.
    HeadField of Job:

    Name at [.name] TEXT, words("Untitled", NONE),
        "job name", "job name", "Name of the job, on every sheet.";
    Invented at [.invented] Kind::Flag, flag(false, NONE),
        "invented", "invented", "Whether the job is invented for demonstration; every sheet then says so.";
    Unit at [.unit] Kind::Choice(Unit::CHOICES), choice("Millimetre", NONE),
        "lengths in", "lengths in", "Unit of forms and messages. Files and sheets are in millimetres.";

    Owner at [.title_block.owner] TEXT, words("", NONE),
        "owner", "title block owner", "Legal owner of the drawing.";
    Number at [.title_block.number] TEXT, words("", NONE),
        "number", "title block number", "Identification number of the drawing.";
    DateOfIssue at [.title_block.date_of_issue] TEXT, words("", NONE),
        "date of issue", "title block date of issue", "Date of issue, as it is to be printed.";
    Creator at [.title_block.creator] TEXT, words("", NONE),
        "creator", "title block creator", "Who made the drawing.";
    Approver at [.title_block.approver] TEXT, words("", NONE),
        "approver", "title block approver", "Who approved the drawing.";
    Revision at [.title_block.revision] TEXT, words("", NONE),
        "revision", "title block revision", "Revision of the drawing.";

    OffFittingIgnored at [.settings.off_fitting_ignored] length(SMALL), number(0.2, COMMON),
        "off fitting", "limit: off fitting",
        "Bores off the fitting by no more than this are no finding.";
    PointLead at [.settings.point_lead] length(SMALL), number(2.0, COMMON),
        "drill point", "limit: drill point",
        "How far the point of a drill runs ahead of the full diameter.";
    LeastWoodBehind at [.settings.least_wood_behind] length(SMALL), number(2.0, COMMON),
        "wood behind bore", "limit: wood behind bore",
        "Least wood behind a blind bore and its point.";
    LeastEdgeWeb at [.settings.least_edge_web] length(SMALL), number(3.0, COMMON),
        "bore to edge", "limit: bore to edge", "Least wood between a bore and an edge.";
    LeastBoreWeb at [.settings.least_bore_web] length(SMALL), number(3.0, COMMON),
        "bore to bore", "limit: bore to bore", "Least wood between two bores.";
    GridStep at [.settings.grid_step] length(GRID), number(32.0, "The 32 mm of the trade."),
        "bore grid", "limit: bore grid",
        "Step of the machine's bore grid along the side; 0 for none.";

    BumperGap at [.settings.bumper_gap] length(SMALL), number(2.0, COMMON),
        "bumper gap", "limit: bumper gap",
        "A closed overlay door stands off the front edges by this.";
    LeastClearance at [.settings.least_clearance] length(SMALL), number(2.0, COMMON),
        "clearance", "limit: clearance", "Room that moving parts must keep from what they pass.";
    MostUneven at [.settings.most_uneven] length(SMALL),
        number(1.6, "1/16 in, the gap of custom casework (trade page on AWI grades, second-hand)."),
        "uneven reveals", "limit: uneven reveals",
        "Reveals of neighbouring doors that differ by more than this look uneven.";

    MostHandForce at [.settings.most_hand_force] quantity(Quantity::Force, HAND_FORCE),
        number(5.0 * NEWTON_PER_POUND, "5 lbf (2010 ADA Standards, 309.4)."),
        "hand force", "limit: hand force", "Largest force that the hand may need.";
    HighestReach at [.settings.highest_reach] length(HEIGHT), number(1950.0, REACH),
        "highest reach", "limit: highest reach",
        "A handle above this height from the floor is out of reach.";
    HeadHeight at [.settings.head_height] length(HEIGHT), number(1850.0, ASSUMED),
        "head height", "limit: head height",
        "An open door that hangs lower than this and stands out is one to knock the head on.";
    HeadAllowance at [.settings.head_allowance] length(DISTANCE), number(100.0, ASSUMED),
        "stands out by", "limit: stands out by",
        "An open door at head height that stands out by no more than this is no trouble.";
    FingerGapFrom at [.settings.finger_gap.min] length(SMALL), number(8.0, FINGERS),
        "finger gap from", "limit: finger gap from",
        "Moving gaps of this width and more can catch a finger.";
    FingerGapTo at [.settings.finger_gap.max] length(SMALL), number(25.0, FINGERS),
        "finger gap to", "limit: finger gap to", "Moving gaps wider than this cannot catch a finger.";

    SagRatio at [.settings.sag_ratio] quantity(Quantity::Ratio, SAG),
        number(144.0, "L/144 (Architectural Woodwork Standards 2009, 1.2.21, for shelves; taken over for doors)."),
        "sag: 1 over", "limit: sag: 1 over", "A lift-up door may sag by its width divided by this.";
    ShelfLoad at [.settings.shelf_load] quantity(Quantity::AreaLoad, SHELF_LOAD),
        number(195.0, "40 lb/ft² (Architectural Woodwork Standards 2009, 1.2.21)."),
        "shelf load", "limit: shelf load",
        "Load that the wall fixing is calculated with, for each square metre of shelf.";
    Coldest at [.settings.coldest] quantity(Quantity::Temperature, TEMPERATURE), number(5.0, COMMON),
        "coldest", "limit: coldest",
        "A strut must still hold the heaviest door open when it is this cold.";
    Hottest at [.settings.hottest] quantity(Quantity::Temperature, TEMPERATURE), number(40.0, COMMON),
        "hottest", "limit: hottest",
        "A strut must still let the lightest door stay shut when it is this hot.";
    HoldsAbove at [.settings.holds_above] quantity(Quantity::Percentage, PERCENT), number(50.0, ASSUMED),
        "holds above", "limit: holds above",
        "Above this much of its travel a door must hold when it is let go.";

    OpeningMark at [.settings.opening_mark] Kind::Choice(OpeningMark::CHOICES),
        choice("ApexAtOpeningSide", "Austrian, German and Hungarian practice (OENORM A 6240-2 as cited by a school textbook)."),
        "opening mark", "Opening mark", "Where the apex of the opening mark points in elevations.";
    Paper at [.settings.paper] Kind::Choice(PaperChoice::CHOICES), choice("A4", COMMON),
        "paper", "Paper", "Paper of the drilling sheets.";
    InchesOnSheets at [.settings.inches_on_sheets] Kind::Flag, flag(false, NONE),
        "inches in a second column on sheets", "inches on sheets",
        "Whether sheets print inches in a second column.";

    Ceiling at [.room.ceiling] length(HEIGHT), number(2500.0, COMMON),
        "ceiling", "room ceiling", "Height of the ceiling above the floor.";
}

impl HeadField {
    /// The limits of practice by what they are about, as the form groups them.
    pub const LIMITS: [(&'static str, &'static [Self]); 4] = [
        (
            "Limits for bores",
            &[
                Self::OffFittingIgnored,
                Self::PointLead,
                Self::LeastWoodBehind,
                Self::LeastEdgeWeb,
                Self::LeastBoreWeb,
                Self::GridStep,
            ],
        ),
        (
            "Limits for doors",
            &[Self::BumperGap, Self::LeastClearance, Self::MostUneven],
        ),
        (
            "Limits for people",
            &[
                Self::MostHandForce,
                Self::HighestReach,
                Self::HeadHeight,
                Self::HeadAllowance,
                Self::FingerGapFrom,
                Self::FingerGapTo,
            ],
        ),
        (
            "Limits for loads",
            &[
                Self::SagRatio,
                Self::ShelfLoad,
                Self::Coldest,
                Self::Hottest,
                Self::HoldsAbove,
            ],
        ),
    ];

    /// The texts of the title block.
    pub const TITLE_BLOCK: [Self; 6] = [
        Self::Owner,
        Self::Number,
        Self::DateOfIssue,
        Self::Creator,
        Self::Approver,
        Self::Revision,
    ];

    /// The name of a limit of practice as checks list it: `finger_gap`.
    #[must_use]
    pub fn setting(self) -> Option<&'static str> {
        let rest = self.info().path.strip_prefix(".settings.")?;
        Some(rest.split('.').next().unwrap_or(rest))
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn every_number_of_the_settings_is_in_one_group() {
        let grouped = HeadField::LIMITS.iter().flat_map(|group| group.1);
        let grouped: Vec<HeadField> = grouped.copied().collect();
        let settings: BTreeSet<HeadField> = HeadField::all()
            .filter(|it| it.setting().is_some() && it.info().kind.limits().is_some())
            .collect();
        assert_eq!(grouped.len(), settings.len());
        assert_eq!(grouped.into_iter().collect::<BTreeSet<_>>(), settings);
        assert_eq!(HeadField::FingerGapTo.setting(), Some("finger_gap"));
    }
}
