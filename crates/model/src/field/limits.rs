//! What a number may be, each limit with its reason.
//!
//! Limits are wide: they keep out what is a slip of typing or breaks arithmetic. What is merely
//! unwise is left to the checks.

/// The least and the most that a number may be, both included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// Why no less and no more.
    pub why: &'static str,
}

impl Limits {
    /// From `least` to `most`, both included.
    #[must_use]
    pub const fn new(least: f64, most: f64, why: &'static str) -> Self {
        Self { least, most, why }
    }

    /// Whether a number keeps them. One that is no number does not.
    #[must_use]
    pub const fn hold(&self, value: f64) -> bool {
        value >= self.least && value <= self.most
    }

    /// `between 0 and 50 mm`, or `above 0 and at most 5000 mm`; the unit with its blank before it.
    #[must_use]
    pub fn words(&self, unit: &str) -> String {
        if self.least == ABOVE_0 {
            format!("above 0 and at most {}{unit}", self.most)
        } else {
            format!("between {} and {}{unit}", self.least, self.most)
        }
    }
}

/// The least number above 0: stands for "above 0".
pub const ABOVE_0: f64 = f64::MIN_POSITIVE;

/// Longest length of a part or place, mm.
pub const LONGEST: f64 = 5000.0;

/// A size of a part, mm.
pub const SIZE: Limits = Limits::new(
    ABOVE_0,
    LONGEST,
    "A part has a size, and none of a wall cabinet is longer than 5 m.",
);
/// A distance that may be 0, mm.
pub const DISTANCE: Limits = Limits::new(
    0.0,
    LONGEST,
    "It counts one way only, within a box of at most 5 m.",
);
/// A place either way from another, mm.
pub const EITHER_WAY: Limits = Limits::new(
    -LONGEST,
    LONGEST,
    "It counts both ways, within a box of at most 5 m.",
);
/// A reveal, overlay, tweak, gap or overhang, + and -, mm.
pub const SIGNED: Limits = Limits::new(
    -500.0,
    500.0,
    "An edge that is off by more than 500 mm is a slip of typing.",
);
/// A gap or packing that cannot be negative, mm.
pub const GAP: Limits = Limits::new(
    0.0,
    500.0,
    "More than 500 mm between two parts is a slip of typing.",
);
/// The thickness of an edge band, mm.
pub const BAND: Limits = Limits::new(
    0.0,
    50.0,
    "Thicker than 50 mm it is an edging of its own, and a part of the panel.",
);
/// The diameter of a bore, mm.
pub const BORE: Limits = Limits::new(
    0.1,
    100.0,
    "No drill is thinner than 0.1 mm or thicker than 100 mm.",
);
/// The depth of a bore, mm.
pub const BORE_DEPTH: Limits = Limits::new(
    0.1,
    LONGEST,
    "A bore has a depth, at most through the longest part.",
);
/// A small length of practice, mm.
pub const SMALL: Limits = Limits::new(
    0.0,
    100.0,
    "A limit of practice of more than 100 mm is a slip of typing.",
);
/// A height above the floor, mm.
pub const HEIGHT: Limits = Limits::new(0.0, 20_000.0, "No room of a cabinet is higher than 20 m.");
/// A place in the room, mm.
pub const IN_ROOM: Limits = Limits::new(
    -20_000.0,
    20_000.0,
    "Nothing further off than 20 m is in a door's way.",
);
/// A place along the wall, mm.
pub const ALONG_WALL: Limits = Limits::new(-100_000.0, 100_000.0, "No wall is longer than 100 m.");
/// Step of a machine's bore grid, mm.
pub const GRID: Limits = Limits::new(
    0.0,
    1000.0,
    "A grid wider than 1 m has no second bore in a side.",
);
/// A force of the hand, N.
pub const HAND_FORCE: Limits =
    Limits::new(0.0, 1000.0, "Nobody pulls a door with more than 1000 N.");
/// A load on a shelf, kg/m².
pub const SHELF_LOAD: Limits =
    Limits::new(0.0, 2000.0, "More than 2000 kg/m² is a floor, not a shelf.");
/// A width over a sag.
pub const SAG: Limits = Limits::new(
    1.0,
    10_000.0,
    "Sag is a share of the width that can be measured.",
);
/// A share of the whole, %.
pub const PERCENT: Limits = Limits::new(0.0, 100.0, "It is a part of the whole.");
/// A temperature of a kitchen or boat, °C.
pub const TEMPERATURE: Limits = Limits::new(-60.0, 100.0, "Colder or hotter no cabinet hangs.");
/// A density, kg/m³.
pub const DENSITY: Limits = Limits::new(1.0, 25_000.0, "From foam to the heaviest metals.");
/// A modulus of elasticity, N/mm².
pub const STIFFNESS: Limits = Limits::new(
    1.0,
    1_000_000.0,
    "From rubber to the stiffest that is known.",
);
/// The mass of a door, kg.
pub const DOOR_MASS: Limits = Limits::new(
    0.001,
    500.0,
    "A door weighs something, and nobody lifts 500 kg.",
);
/// How far a door's mass may be off, kg.
pub const MASS_RANGE: Limits = Limits::new(0.0, 500.0, "It is a part of the door's own mass.");
/// The mass of a handle, kg.
pub const HANDLE_MASS: Limits = Limits::new(0.0, 100.0, "No handle weighs more than 100 kg.");
/// How many boxes are built alike.
pub const PIECES: Limits = Limits::new(
    1.0,
    9999.0,
    "A box in the job is built once at least; four digits fit on a sheet.",
);
/// A distance on a fitting card, mm.
pub const ON_CARD: Limits = Limits::new(-2000.0, 2000.0, "No lift fitting is longer than 2 m.");
/// How far a fitting stands in from the side, mm.
pub const INWARD: Limits = Limits::new(0.0, 1000.0, "A fitting stands inside the box.");
/// Adjustment left, down or out, mm.
pub const ADJUST_LESS: Limits =
    Limits::new(-100.0, 0.0, "This end of an adjustment is negative or 0.");
/// Adjustment right, up or into the box, mm.
pub const ADJUST_MORE: Limits =
    Limits::new(0.0, 100.0, "This end of an adjustment is positive or 0.");
/// The angle at which a door is fully open, degrees.
pub const END_ANGLE: Limits = Limits::new(1.0, 180.0, "A door opens, and does not turn over.");
/// How far a path may stray, mm.
pub const STRAY: Limits = Limits::new(
    0.0,
    100.0,
    "A path that strays by more than 100 mm is another path.",
);
/// Damping, N·m·s.
pub const DAMPING: Limits =
    Limits::new(0.0, 10_000.0, "More than 10 000 N·m·s holds a door still.");
/// The pass in which a bore is drilled.
pub const PASS: Limits = Limits::new(
    1.0,
    9.0,
    "Passes are counted from 1, with one digit on a sheet.",
);
/// How many of a part go to one door.
pub const PARTS: Limits = Limits::new(0.0, 4_294_967_295.0, "Any whole number.");
/// A range of distances, heights, widths, masses or moments: mm, kg, N·m.
pub const SPAN: Limits = Limits::new(0.0, 100_000.0, "Wider than any paper gives.");
/// An opening angle, degrees.
pub const HALF_TURN: Limits = Limits::new(0.0, 180.0, "A door does not turn over.");
/// An angle of a table, degrees.
pub const TURN: Limits = Limits::new(0.0, 360.0, "A table goes round once at most.");
/// The moment of a spring, N·m.
pub const MOMENT: Limits = Limits::new(-10_000.0, 10_000.0, "No spring of a fitting is stronger.");
/// Friction of a fitting, N·m or N.
pub const FRICTION: Limits = Limits::new(0.0, 1000.0, "Friction only holds, and less than this.");
/// Turns of a setting screw.
pub const TURNS: Limits = Limits::new(0.0, 1000.0, "Nobody turns a screw more often.");
/// The force of a strut, N.
pub const STRUT_FORCE: Limits = Limits::new(0.1, 10_000.0, "A strut pushes, at most with a ton.");
/// Compressed over extended force of a strut.
pub const PROGRESSION: Limits = Limits::new(
    1.0,
    5.0,
    "A strut is strongest when it is pressed together.",
);
/// How many groups are spread over a width.
pub const GROUPS: Limits = Limits::new(
    1.0,
    50.0,
    "A door has a hinge at least, and not one at each hand's width.",
);
/// A place in the worked example of a card, mm.
pub const EXAMPLE_PLACE: Limits = Limits::new(
    ON_CARD.least - LONGEST,
    ON_CARD.most + LONGEST,
    "A distance of the card, counted from another panel.",
);
/// A finished size as a record has it, mm.
pub const RECORDED_SIZE: Limits = Limits::new(0.0, 2.0 * LONGEST, "Twice the longest part.");
/// A place on a recorded panel, mm.
pub const RECORDED_PLACE: Limits = Limits::new(
    -LONGEST,
    2.0 * LONGEST,
    "On a panel, or beside it by a slip.",
);
