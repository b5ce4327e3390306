//! The columns of a draft's sizes table that mean something of their own.

use super::info::Quantity;
use super::limits::{
    DISTANCE, FRICTION, HALF_TURN, Limits, ON_CARD, PROGRESSION, SIZE, SPAN, STRUT_FORCE, TURNS,
};
use crate::card_draft::columns;

/// One such column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeColumn {
    /// Its title, which is its name in files too.
    pub title: &'static str,
    /// One sentence that says what it means.
    pub meaning: &'static str,
    /// What its numbers count; none where they are names.
    pub quantity: Option<Quantity>,
    /// What a number may be: mm, kg, N·m, N, degrees, as the quantity has it.
    pub limits: Option<Limits>,
    /// Where its number stands in a size of the card, with a dot before it.
    pub in_card: &'static str,
    /// Whether a further size mostly has the same as the one before it.
    pub repeats: bool,
}

const fn column(
    title: &'static str,
    in_card: &'static str,
    quantity: Quantity,
    limits: Limits,
    repeats: bool,
    meaning: &'static str,
) -> SizeColumn {
    SizeColumn {
        title,
        meaning,
        quantity: Some(quantity),
        limits: Some(limits),
        in_card,
        repeats,
    }
}

impl SizeColumn {
    /// All, in the order of the table.
    pub const ALL: [Self; 21] = {
        use Quantity::{Angle, Force, Length, Mass, Moment, Ratio};
        use columns as c;
        [
            Self {
                title: c::SIZE,
                meaning: "Name of the size.",
                quantity: None,
                limits: None,
                in_card: ".name",
                repeats: false,
            },
            column(
                c::LOAD_MIN,
                ".carries.min",
                Mass,
                SPAN,
                false,
                "Least that it carries: mass, moment, or height times mass.",
            ),
            column(
                c::LOAD_MAX,
                ".carries.max",
                Mass,
                SPAN,
                false,
                "Most that it carries.",
            ),
            column(
                c::AT_ANGLE,
                ".carries.at_degrees",
                Angle,
                HALF_TURN,
                true,
                "Opening angle of a load that is a moment; empty for a mass.",
            ),
            column(
                c::HEIGHT_MIN,
                ".door_height.min",
                Length,
                SPAN,
                false,
                "Least door height.",
            ),
            column(
                c::HEIGHT_MAX,
                ".door_height.max",
                Length,
                SPAN,
                false,
                "Greatest door height.",
            ),
            column(
                c::WIDTH_MIN,
                ".door_width.min",
                Length,
                SPAN,
                true,
                "Least door width.",
            ),
            column(
                c::WIDTH_MAX,
                ".door_width.max",
                Length,
                SPAN,
                true,
                "Greatest door width.",
            ),
            column(
                c::LEAST_DEPTH,
                ".least_inner_depth",
                Length,
                DISTANCE,
                true,
                "Least clear depth of the box.",
            ),
            column(
                c::LEAST_HEIGHT,
                ".least_inner_height",
                Length,
                DISTANCE,
                true,
                "Least clear height of the box.",
            ),
            column(
                c::TURNS,
                ".lift.turns",
                Ratio,
                TURNS,
                true,
                "Turns of the spring's setting screw from weakest to strongest.",
            ),
            column(
                c::FRICTION,
                ".lift.friction",
                Moment,
                FRICTION,
                false,
                "Friction of the spring and its joints.",
            ),
            column(
                c::STRUT_FORCE,
                ".lift.force",
                Force,
                STRUT_FORCE,
                false,
                "Nominal force: extended, moving out, at 20 °C.",
            ),
            column(
                c::PROGRESSION,
                ".lift.progression",
                Ratio,
                PROGRESSION,
                true,
                "Force of the strut pressed together over its force extended.",
            ),
            column(
                c::STROKE,
                ".lift.stroke",
                Length,
                SIZE,
                true,
                "Stroke of the strut.",
            ),
            column(
                c::LENGTH,
                ".lift.extended",
                Length,
                SIZE,
                true,
                "Length of the strut extended, from eye to eye.",
            ),
            column(
                c::ROD_FRICTION,
                ".lift.friction",
                Force,
                FRICTION,
                true,
                "Friction of the strut's rod.",
            ),
            column(
                c::BOX_DOWN,
                ".lift.box_down",
                Length,
                ON_CARD,
                true,
                "Mount in the box below the underside of the panel above the opening.",
            ),
            column(
                c::BOX_BACK,
                ".lift.box_back",
                Length,
                ON_CARD,
                true,
                "Mount in the box behind the front datum.",
            ),
            column(
                c::DOOR_DOWN,
                ".lift.door_down",
                Length,
                ON_CARD,
                true,
                "Mount on the closed door below the same underside.",
            ),
            column(
                c::DOOR_BACK,
                ".lift.door_back",
                Length,
                ON_CARD,
                true,
                "Mount on the door behind its back face.",
            ),
        ]
    };

    /// The column of that title, unless it is one of the paper's own.
    #[must_use]
    pub fn titled(title: &str) -> Option<&'static Self> {
        const ALL: &[SizeColumn] = &SizeColumn::ALL;
        ALL.iter().find(|it| it.title == title)
    }
}
