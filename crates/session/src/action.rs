//! Everything that can be done with an open job, as data.
//!
//! Menus, keys and buttons choose an [`ActionId`](crate::action_table::ActionId); where that needs
//! nothing more, it [is an action](crate::action_table::ActionId::action) already, else a client
//! asks for the rest (a file, a reason) and then applies the action.

use std::path::PathBuf;

use flapwright_model::card::Card;
use flapwright_model::edit::Edit;
use flapwright_model::id::{BoxId, CardId, OpeningId};
use flapwright_model::length::Unit;
use flapwright_motion::strut_mounts::{MountAnswer, MountLimits};

use crate::export::ExportChoice;
use crate::finding_key::FindingKey;
use crate::history::Gesture;
use crate::selection::SideTab;

/// One thing to do.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// Begins an empty job with the unit, limits, materials and cards of this one. What is unsaved
    /// is lost; a client asks before.
    New,
    /// Opens a job file. What is unsaved is lost; a client asks before.
    Open(PathBuf),
    /// Writes the job into its file.
    Save,
    /// Writes the job into another file, which is its file from then on.
    SaveAs(PathBuf),
    /// Writes sheets and bore lists into a folder, on a thread of its own.
    Export {
        /// What is written.
        choice: Box<ExportChoice>,
        /// Where to.
        folder: PathBuf,
    },
    /// Stops writing.
    StopExport,
    /// Takes the last change back.
    Undo,
    /// Does it again.
    Redo,
    /// A change of the job that a field or button asks for.
    Edit {
        /// What undo calls it.
        label: String,
        /// The change.
        edit: Edit,
        /// The drag or run of keys that it belongs to, when more of the same is to come.
        gesture: Option<Gesture>,
    },
    /// Ends the running gesture: the next change is a step of its own.
    EndGesture,
    /// Adds a plain box after the shown one.
    AddBox,
    /// Adds a copy of the shown box.
    DuplicateBox,
    /// Removes the shown box.
    RemoveBox,
    /// Shows and reads lengths in that unit.
    UseUnit(Unit),
    /// Puts a card into the job; one of the same name gives way to it.
    PutCard(Box<Card>),
    /// Applies a remedy, as one step.
    ApplyRemedy {
        /// The finding.
        finding: FindingKey,
        /// Which of its remedies.
        remedy: usize,
    },
    /// Applies every safe remedy, as one step.
    ApplySafe,
    /// Accepts a finding as it stands.
    Accept {
        /// The finding.
        finding: FindingKey,
        /// Why; without a reason nothing is done.
        reason: String,
    },
    /// Takes the acceptance of a finding back.
    TakeBack(FindingKey),
    /// Gives the shown door another size, its bores with it, as one step.
    TakeSize {
        /// Name of the card.
        card: String,
        /// Name of its size.
        size: String,
    },
    /// Begins to search for the mounts of the shown door's gas struts, on a thread of its own.
    SearchMounts(Box<MountLimits>),
    /// Stops the search.
    StopSearch,
    /// Takes over what the search found for a size, as one step.
    UseMounts {
        /// The card.
        card: CardId,
        /// What was found.
        answer: Box<MountAnswer>,
    },
    /// Shows another box.
    ShowBox(BoxId),
    /// Shows another opening of the box.
    ShowOpening(OpeningId),
    /// Selects a finding, or none, and shows the box that it is about.
    SelectFinding(Option<FindingKey>),
    /// Selects the next open finding.
    NextFinding,
    /// Selects the open finding before.
    PreviousFinding,
    /// Moves the door of the section: 0 closed, 1 open.
    OpenDoor(f64),
    /// Runs the door from closed to open, or stops it.
    RunDoor,
    /// Lets a running door run on by so many seconds.
    RunOn(f64),
    /// Stops a running door.
    StopDoor,
    /// Shows the dimensions of the drawings, or leaves them out.
    ToggleDimensions,
    /// Shows something else beside the drawings.
    ShowTab(SideTab),
}
