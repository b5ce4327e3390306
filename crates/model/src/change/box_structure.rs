//! What a box has or has not: its back, a face frame, rows of shelf bores.

use super::changed_box;
use crate::cabinet::{Back, FaceFrame, Panel, PanelBands, SystemRows};
use crate::edit::Edit;
use crate::field::BoxField;
use crate::id::BoxId;
use crate::job::Job;

/// Thickness of a new back, mm: thin, as a back only stiffens (common practice, no source).
pub(super) const THIN_BACK: f64 = 6.0;

/// The four kinds of a back, without their numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BackKind {
    /// No back.
    Open,
    /// In a groove.
    Grooved,
    /// In a rebate.
    Rebated,
    /// Laid on the rear edges.
    LaidOn,
}

impl BackKind {
    /// The kind of a back.
    #[must_use]
    pub const fn of(back: &Back) -> Self {
        match back {
            Back::Open => Self::Open,
            Back::Grooved { .. } => Self::Grooved,
            Back::Rebated { .. } => Self::Rebated,
            Back::LaidOn { .. } => Self::LaidOn,
        }
    }
}

/// A back of a kind with the usual numbers.
pub(super) fn back_of(kind: BackKind, panel: Panel) -> Back {
    let usual = |field: BoxField| field.info().usual.number();
    match kind {
        BackKind::Open => Back::Open,
        BackKind::Grooved => Back::Grooved {
            panel,
            inset: usual(BoxField::BackInset),
            groove: usual(BoxField::BackGroove),
        },
        BackKind::Rebated => Back::Rebated {
            panel,
            lap: usual(BoxField::BackLap),
        },
        BackKind::LaidOn => Back::LaidOn { panel },
    }
}

/// Gives a box a back of another kind. The panel stays, without bands; a box that had none gets a
/// thin one of the stuff of its left side.
#[must_use]
pub fn set_back(job: &Job, id: BoxId, kind: BackKind) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| {
        if BackKind::of(&wall_box.back) == kind {
            return None;
        }
        let panel = Panel {
            bands: PanelBands::default(),
            ..wall_box.back.panel().cloned().unwrap_or_else(|| Panel {
                thickness: THIN_BACK,
                ..wall_box.left.clone()
            })
        };
        wall_box.back = back_of(kind, panel);
        Some(())
    })
}

/// Gives a box the usual face frame, of the stuff of its left side, or takes it off.
#[must_use]
pub fn set_frame(job: &Job, id: BoxId, with: bool) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| {
        let frame = || FaceFrame::usual(&wall_box.left.material);
        wall_box.frame = with.then(frame);
        Some(())
    })
}

/// Gives a box the usual rows of shelf bores, or takes them off.
#[must_use]
pub fn set_system_rows(job: &Job, id: BoxId, with: bool) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| {
        wall_box.system_rows = with.then(SystemRows::usual);
        Some(())
    })
}
