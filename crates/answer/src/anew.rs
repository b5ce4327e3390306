//! What a change of a job's head, materials or cards makes untrue.

use std::collections::BTreeSet;

use flapwright_model::job::{Job, Settings};
use flapwright_rules::checks::{
    CHECKS, JUDGE_SIZES, LooksAt, PLACE_DOORS, READ_THE_ROOM, READ_THE_UNIT, check,
};

/// What has to be worked out anew in every box or between all of them.
#[derive(Debug, Default)]
pub(crate) struct Anew {
    /// The motions of doors.
    pub(crate) motions: bool,
    /// Everything.
    pub(crate) places: bool,
    /// These checks that look at one box.
    pub(crate) checks: BTreeSet<&'static str>,
    /// What is between boxes.
    pub(crate) pairs: bool,
    /// What is between doors that look alike.
    pub(crate) alike: bool,
    /// What is found in cards.
    pub(crate) cards: bool,
}

impl Anew {
    /// What differs between two jobs, their boxes left out. Name, title block, paper and whatever
    /// else no check reads make nothing untrue.
    pub(crate) fn between(before: &Job, after: &Job) -> Self {
        let motions = before.cards != after.cards;
        let mut anew = Self {
            motions,
            places: motions || before.materials != after.materials,
            cards: motions,
            ..Self::default()
        };
        if before.unit != after.unit {
            anew.checks.extend(READ_THE_UNIT);
        }
        if before.room != after.room {
            anew.checks.extend(READ_THE_ROOM);
        }
        if before.settings != after.settings {
            anew.settings(&before.settings, &after.settings);
        }
        anew
    }

    /// Whether anything is to be done anew for all boxes.
    pub(crate) fn asks_all(&self) -> bool {
        let Self {
            motions,
            places,
            checks,
            pairs,
            alike,
            cards,
        } = self;
        *motions || *places || *pairs || *alike || *cards || !checks.is_empty()
    }

    fn settings(&mut self, before: &Settings, after: &Settings) {
        for setting in changed(before, after) {
            if PLACE_DOORS.contains(&setting) {
                self.places = true;
            }
            let reads = CHECKS.iter().filter(|it| {
                it.settings.contains(&setting)
                    || JUDGE_SIZES.contains(&setting) && it.looks_at() == LooksAt::Box
            });
            for it in reads {
                self.check(it.name, it.looks_at());
            }
        }
        let names = before.weights.keys().chain(after.weights.keys());
        for name in names.filter(|it| before.weights.get(*it) != after.weights.get(*it)) {
            if let Some(it) = check(name) {
                self.check(it.name, it.looks_at());
            }
        }
    }

    fn check(&mut self, name: &'static str, looks_at: LooksAt) {
        match looks_at {
            LooksAt::Box => {
                self.checks.insert(name);
            }
            LooksAt::Pair => self.pairs = true,
            LooksAt::Alike => self.alike = true,
            LooksAt::Card => self.cards = true,
        }
    }
}

/// The names of the settings that differ. Taken apart without a rest, so that a setting that is
/// added later cannot be left out.
fn changed(before: &Settings, after: &Settings) -> Vec<&'static str> {
    let Settings {
        bumper_gap,
        off_fitting_ignored,
        point_lead,
        least_wood_behind,
        least_edge_web,
        least_bore_web,
        least_clearance,
        most_hand_force,
        highest_reach,
        head_height,
        head_allowance,
        finger_gap,
        most_uneven,
        sag_ratio,
        shelf_load,
        coldest,
        hottest,
        holds_above,
        grid_step,
        // Compared one by one.
        weights: _,
        // No check reads them: they are about drawings.
        opening_mark: _,
        paper: _,
        inches_on_sheets: _,
    } = before;
    let numbers = [
        ("bumper_gap", bumper_gap, &after.bumper_gap),
        (
            "off_fitting_ignored",
            off_fitting_ignored,
            &after.off_fitting_ignored,
        ),
        ("point_lead", point_lead, &after.point_lead),
        (
            "least_wood_behind",
            least_wood_behind,
            &after.least_wood_behind,
        ),
        ("least_edge_web", least_edge_web, &after.least_edge_web),
        ("least_bore_web", least_bore_web, &after.least_bore_web),
        ("least_clearance", least_clearance, &after.least_clearance),
        ("most_hand_force", most_hand_force, &after.most_hand_force),
        ("highest_reach", highest_reach, &after.highest_reach),
        ("head_height", head_height, &after.head_height),
        ("head_allowance", head_allowance, &after.head_allowance),
        ("finger_gap", &finger_gap.min, &after.finger_gap.min),
        ("finger_gap", &finger_gap.max, &after.finger_gap.max),
        ("most_uneven", most_uneven, &after.most_uneven),
        ("sag_ratio", sag_ratio, &after.sag_ratio),
        ("shelf_load", shelf_load, &after.shelf_load),
        ("coldest", coldest, &after.coldest),
        ("hottest", hottest, &after.hottest),
        ("holds_above", holds_above, &after.holds_above),
        ("grid_step", grid_step, &after.grid_step),
    ];
    let differ = numbers
        .into_iter()
        .filter(|(_, was, is)| was.to_bits() != is.to_bits());
    differ.map(|(name, ..)| name).collect()
}
