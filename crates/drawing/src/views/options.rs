//! What a view shows and how.

use std::sync::Arc;

use flapwright_model::cabinet::Place;
use flapwright_model::job::OpeningMark;
use flapwright_model::length::Unit;
use flapwright_model::part::Subject;
use flapwright_model::room::Room;
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::BoxReport;

/// What a view shows and how.
#[derive(Debug, Clone)]
pub struct ViewOptions {
    /// Paper mm per workshop mm.
    pub scale: f64,
    /// How far the doors are open in the section: 0 closed, 1 fully open.
    pub s: f64,
    /// Unit of the figures.
    pub unit: Unit,
    /// Convention of the opening mark.
    pub mark: OpeningMark,
    /// What is lit up, and with which severity's ink.
    pub lit: Vec<(Subject, Severity)>,
    /// What is selected: drawn with a ring or a heavier outline.
    pub selected: Option<Subject>,
    /// Whether dimensions are drawn.
    pub show_dimensions: bool,
    /// The box as it would be with a change that is shown before it is applied.
    pub ghost: Option<Arc<BoxReport>>,
    /// The room around the box; `None` leaves it out.
    pub around: Option<Around>,
}

impl Default for ViewOptions {
    fn default() -> Self {
        Self {
            scale: 0.2,
            s: 0.0,
            unit: Unit::Millimetre,
            mark: OpeningMark::ApexAtOpeningSide,
            lit: Vec::new(),
            selected: None,
            show_dimensions: true,
            ghost: None,
            around: None,
        }
    }
}

/// The room and where the box hangs in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Around {
    /// The room.
    pub room: Room,
    /// Where the box hangs.
    pub place: Place,
}
