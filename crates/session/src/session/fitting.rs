//! Sizes of fittings, and the mounts of gas struts.

use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{CardId, DoorId};
use flapwright_motion::strut_mounts::{MountAnswer, MountLimits};
use flapwright_rules::inspection::BoxReport;
use flapwright_rules::mechanics::pick_size;
use flapwright_rules::strut_places::{StrutPlaces, has_strut, strut_places, use_anchors};

use super::Session;
use crate::outcome::Outcome;
use crate::strut_search::StrutSearch;

impl Session {
    /// The shown box.
    #[must_use]
    pub fn shown_wall_box(&self) -> Option<&WallBox> {
        self.job().box_by_id(self.selection.box_id?)
    }

    /// What is true of the shown box.
    #[must_use]
    pub fn shown_report(&self) -> Option<&BoxReport> {
        let report = self.inspection().report(self.selection.box_id?)?;
        Some(report)
    }

    /// The door of the shown opening.
    #[must_use]
    pub fn shown_door(&self) -> Option<DoorId> {
        let opening = self.shown_wall_box()?.opening(self.selection.opening?)?;
        opening.door.as_ref().map(|door| door.id)
    }

    fn shown_name(&self) -> &str {
        self.shown_wall_box().map_or("", |it| it.name.as_str())
    }

    pub(super) fn take_size(&mut self, card: &str, size: &str) -> Outcome {
        let job = self.job();
        let card_id = job.card_named(card).map(|it| it.id);
        let edit = self.shown_door().zip(card_id);
        let edit = edit.and_then(|(door, id)| pick_size(job, door, id, size));
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
        let (wall_box, report) = (self.shown_wall_box()?, self.shown_report()?);
        strut_places(self.job(), wall_box, report, self.shown_door()?)
    }

    /// Whether there is something to search for.
    pub(super) fn has_strut(&self) -> bool {
        let shown = self.shown_wall_box().zip(self.shown_report());
        shown
            .zip(self.shown_door())
            .is_some_and(|((wall_box, report), door)| has_strut(self.job(), wall_box, report, door))
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

    pub(super) fn use_mounts(&mut self, card: CardId, answer: &MountAnswer) -> Outcome {
        let job = self.job();
        let door = self.shown_door();
        let edit = door.and_then(|door| use_anchors(job, door, card, answer));
        let Some(edit) = edit else {
            return Outcome::Nothing;
        };
        let (name, size) = (self.shown_name(), &answer.name);
        let card = job.card_by_id(card).map_or("", |it| it.name.as_str());
        let label = format!("{name}: mounts of {card}, size {size}");
        self.change(label, edit, None)
    }
}
