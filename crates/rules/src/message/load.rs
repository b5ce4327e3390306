//! What the checks on load and lift say, and the advice on sizes.

use flapwright_model::message::{
    AsTyped, Celsius, Degrees, MetresPerSecond, Mm, NewtonMetre, Seconds, Times, Whole, Word,
};
use flapwright_model::messages;
use flapwright_motion::reason::Reason;
use flapwright_motion::reason_message::{LoadName, LoadValue};
use flapwright_motion::{DriveError, Mend};

messages! {
    /// A fitting by card and size.
    pub enum FittingName in "fitting-name" {
        /// Both.
        Size = "size" { card: String, size: String },
    }
}

impl FittingName {
    /// Of a card and a size.
    #[must_use]
    pub fn new(card: &str, size: &str) -> Self {
        Self::Size {
            card: card.to_owned(),
            size: size.to_owned(),
        }
    }
}

messages! {
    /// A door that is too heavy for its size.
    pub enum DoorTooHeavy in "door-too-heavy" {
        /// Its likely load is over the most.
        Over = "over" {
            fitting: FittingName,
            what: LoadName,
            over: LoadValue,
            greatest_load: LoadValue [greater],
            most_carried: LoadValue [smaller],
        },
        /// Its load as a range.
        Range = "range" { what: LoadName, low: LoadValue, likely: LoadValue, high: LoadValue },
    }
}

messages! {
    /// A door that is too light for its size.
    pub enum DoorTooLight in "door-too-light" {
        /// Its likely load is under the least.
        Under = "under" {
            fitting: FittingName,
            what: LoadName,
            under: LoadValue,
            least_load: LoadValue [smaller],
            least_carried: LoadValue [greater],
        },
    }
}

messages! {
    /// A door whose range is not all carried.
    pub enum SizeCoversPart in "size-covers-part-of-mass-range" {
        /// Too heavy at its heaviest.
        Over = "over" {
            fitting: FittingName,
            over: LoadValue,
            greatest_load: LoadValue [greater],
            most_carried: LoadValue [smaller],
        },
        /// Too light at its lightest.
        Under = "under" {
            fitting: FittingName,
            under: LoadValue,
            least_load: LoadValue [smaller],
            least_carried: LoadValue [greater],
        },
        /// What the size carries, and what is likely.
        Carries = "carries" {
            fitting: FittingName,
            what: LoadName,
            least: LoadValue,
            most: LoadValue,
            likely: LoadValue,
        },
    }
}

messages! {
    /// A door outside of what a size is made for.
    pub enum DoorOutsideSizeSpan in "door-outside-size-span" {
        /// Under the least.
        Under = "under" {
            fitting: FittingName,
            what: Word,
            value: Mm,
            limit: Mm,
            outside_its_span_by: Mm [greater],
        },
        /// Over the most.
        Over = "over" {
            fitting: FittingName,
            what: Word,
            value: Mm,
            limit: Mm,
            outside_its_span_by: Mm [greater],
        },
    }
}

messages! {
    /// A lift that cannot be calculated on this door.
    pub enum LiftCannotWork in "lift-cannot-work" {
        /// A strut or a spring cannot be calculated.
        Cannot = "cannot" {
            fitting: FittingName,
            why: DriveError,
            strut_too_short_by: Option<Mm> [greater],
            strut_too_long_by: Option<Mm> [greater],
            number_out_of_range: Option<AsTyped> [either],
        },
        /// The lift moment is limited at an angle that the door does not reach.
        AngleNotReached = "angle-not-reached" {
            fitting: FittingName, angle_of_the_limit: Degrees [either], end_angle: Degrees [either],
        },
        /// From where on a strut does not reach.
        From = "from" { from: Degrees },
        /// What mends that.
        Mend = "mend" { mend: Mend },
    }
}

messages! {
    /// A door that is let go.
    pub enum FallsWhenLetGo in "falls-when-let-go" {
        /// The likely door does not stay open.
        NotOpen = "not-open" {
            falls_from: Degrees [greater], fastest: MetresPerSecond [greater],
        },
        /// The heaviest door does not stay open.
        HeaviestNotOpen = "heaviest-not-open" {
            falls_from: Degrees [greater], fastest: MetresPerSecond [greater],
        },
        /// The heaviest door falls from some place.
        HeaviestFalls = "heaviest-falls" {
            falls_from: Degrees [greater], fastest: MetresPerSecond [greater],
        },
        /// It falls shut.
        Shuts = "shuts" { time: Seconds, speed: MetresPerSecond },
        /// It comes to rest before.
        Rests = "rests" { at: Degrees },
    }
}

messages! {
    /// A door that does not stay shut.
    pub enum SpringsOpen in "springs-open" {
        /// The lightest one.
        Rises = "rises" { celsius: Celsius, push_beyond_friction: NewtonMetre [greater] },
        /// Both moments.
        Moments = "moments" { push: NewtonMetre, friction: NewtonMetre },
    }
}

messages! {
    /// A fitting at one side only.
    pub enum OneSidedFittingRacks in "one-sided-fitting-racks" {
        /// It twists the door.
        Twists = "twists" {
            card: String,
            side: Word,
            width_beyond_height: Mm [greater],
            twist: NewtonMetre [greater],
        },
        /// A hinged door that is wider than high.
        Wide = "wide" { width: Mm, height: Mm },
        /// A door that nothing else holds.
        Alone = "alone" { width: Mm },
    }
}

messages! {
    /// What a good colleague says about the sizes.
    pub enum Advice in "advice" {
        /// No card is for this kind.
        NoCard = "no-card",
        /// A size suits well.
        SuitsWell = "suits-well" { fitting: FittingName, what: Word },
        /// A size suits, near a limit.
        SuitsNear = "suits-near" { fitting: FittingName, what: Word },
        /// Its setting.
        Turns = "turns" { turns: Times, of: Whole },
        /// A size at its limit; without a reason nothing is known of it.
        AtLimit = "at-limit" { fitting: FittingName, why: Option<Reason> },
        /// A size that does not suit.
        Unsuitable = "unsuitable" { fitting: FittingName, why: Option<Reason> },
        /// The nearest size.
        Nearest = "nearest" { fitting: FittingName, why: Option<Reason> },
        /// No other one is better.
        NoBetter = "no-better",
        /// None suits fully.
        NoneFully = "none-fully",
        /// None suits at all.
        None = "none",
    }
}
