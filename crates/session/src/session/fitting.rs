//! Sizes of fittings, and the mounts of gas struts.

use flapwright_model::cabinet::WallBox;
use flapwright_model::part::Subject;
use flapwright_motion::strut_mounts::{MountAnswer, MountLimits};
use flapwright_rules::inspection::BoxReport;
use flapwright_rules::mechanics::pick_named;
use flapwright_rules::strut_places::{StrutPlaces, has_strut, strut_places, use_anchors};

use super::Session;
use crate::outcome::Outcome;
use crate::strut_search::StrutSearch;

impl Session {
    /// The shown opening.
    const fn shown_opening(&self) -> Subject {
        Subject::Opening {
            box_index: self.selection.box_index,
            opening: self.selection.opening,
        }
    }

    /// The shown box, as it is described and as it was found.
    #[must_use]
    pub fn shown_box(&self) -> Option<(&WallBox, &BoxReport)> {
        let index = self.selection.box_index;
        Some((
            self.job().boxes.get(index)?,
            self.inspection().boxes.get(index)?,
        ))
    }

    fn shown_name(&self) -> &str {
        self.shown_box().map_or("", |(it, _)| it.name.as_str())
    }

    pub(super) fn take_size(&mut self, card: &str, size: &str) -> Outcome {
        let edit = pick_named(self.job(), self.shown_opening(), card, size);
        let Some(edit) = edit else {
            return Outcome::Failed {
                title: "Size not taken",
                why: "This opening has no door with a fitting.".to_owned(),
            };
        };
        let label = format!("{}: take {card}, size {size}", self.shown_name());
        self.change(label, edit, None)
    }

    /// What a search for the mounts of the shown door's gas struts starts from; `None` when the door
    /// has none.
    #[must_use]
    pub fn strut_places(&self) -> Option<StrutPlaces> {
        let (wall_box, report) = self.shown_box()?;
        strut_places(self.job(), wall_box, report, self.selection.opening)
    }

    /// Whether there is something to search for.
    pub(super) fn has_strut(&self) -> bool {
        self.shown_box().is_some_and(|(wall_box, report)| {
            has_strut(self.job(), wall_box, report, self.selection.opening)
        })
    }

    pub(super) fn search_mounts(&mut self, limits: MountLimits) -> Outcome {
        let Some(places) = self.strut_places() else {
            return Outcome::Nothing;
        };
        match StrutSearch::start(places, limits, self.wake.clone()) {
            Ok(running) => {
                self.search = Some(running);
                Outcome::Shown
            }
            Err(error) => Outcome::Failed {
                title: "Not searched",
                why: error.to_string(),
            },
        }
    }

    pub(super) fn use_mounts(&mut self, card: &str, answer: &MountAnswer) -> Outcome {
        let edit = use_anchors(self.job(), self.shown_opening(), card, answer);
        let Some(edit) = edit else {
            return Outcome::Nothing;
        };
        let (name, size) = (self.shown_name(), &answer.name);
        let label = format!("{name}: mounts of {card}, size {size}");
        self.change(label, edit, None)
    }
}
