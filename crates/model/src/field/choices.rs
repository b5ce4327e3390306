//! What a field may be that is one of a few: the name in files and the words of forms.

use super::info::Choice;
use crate::cabinet::{CornerJoint, Drilled};
use crate::card::{BackFrom, FittedSides, LeafEdge, OpeningKind};
use crate::card_draft::{AcrossDatum, BackDatum, DownDatum, LoadGiven};
use crate::door::{End, Grain, Side};
use crate::job::{OpeningMark, PaperChoice};
use crate::length::Unit;
use crate::lift::PieceCount;
use crate::material::MaterialClass;
use crate::part::LeafId;

/// A type that is one of a few.
pub trait Choices: Copy + PartialEq + 'static {
    /// All of them, in the order of forms.
    const VALUES: &'static [Self];
    /// Name and words of each, in the same order.
    const CHOICES: &'static [Choice];

    /// Its name in files and edits.
    #[must_use]
    fn name(self) -> &'static str {
        self.choice().map_or("", |choice| choice.name)
    }

    /// As a form says it.
    #[must_use]
    fn label(self) -> &'static str {
        self.choice().map_or("", |choice| choice.label)
    }

    /// The one of that name.
    #[must_use]
    fn named(name: &str) -> Option<Self> {
        let at = Self::CHOICES.iter().position(|it| it.name == name)?;
        Self::VALUES.get(at).copied()
    }

    /// Its name and words.
    #[must_use]
    fn choice(self) -> Option<&'static Choice> {
        let at = Self::VALUES.iter().position(|it| *it == self)?;
        Self::CHOICES.get(at)
    }
}

macro_rules! choices {
    ($($Type:ty: $($Name:ident $label:literal),+;)+) => {
        $(impl Choices for $Type {
            const VALUES: &'static [Self] = &[$(Self::$Name),+];
            const CHOICES: &'static [Choice] = &[$(Choice {
                name: stringify!($Name),
                label: $label,
            }),+];
        })+
    };
}

choices! {
    Unit: Millimetre "mm", Inch "inch";
    OpeningMark: ApexAtOpeningSide "apex at the opening side", ApexAtHinge "apex at the hinge";
    PaperChoice: A4 "A4", A3 "A3", Letter "Letter", Tabloid "Tabloid";
    MaterialClass: Board "board", SolidWood "solid wood", Glass "glass", Metal "metal",
        Plastic "plastic";
    Drilled: AfterBanding "after", BeforeBanding "before";
    CornerJoint: BetweenSides "between the sides", OverSides "over the sides";
    Grain: None "none", Upright "upright", Across "across";
    Side: Left "left edge", Right "right edge";
    End: Top "top edge", Bottom "bottom edge";
    LeafId: Only "only", Upper "upper", Lower "lower";
    BackFrom: SideFront "front edge of the side", FrameFront "front of the frame";
    FittedSides: Both "one at each side", LeftOnly "only at the left", RightOnly "only at the right";
    PieceCount: PerPair "of the pair together", PerPiece "of one piece";
    LoadGiven: MassOrMoment "mass, or moment at an angle", HeightTimesMass "height times mass";
    LeafEdge: Top "top edge", OwnSide "side edge", Bottom "bottom edge";
}

/// The same for types that say their own words, which messages use as well.
macro_rules! choices_with_words {
    ($($Type:ty: $($Name:ident),+;)+) => {
        $(impl Choices for $Type {
            const VALUES: &'static [Self] = &[$(Self::$Name),+];
            const CHOICES: &'static [Choice] = &[$(Choice {
                name: stringify!($Name),
                label: Self::$Name.words(),
            }),+];
        })+
    };
}

choices_with_words! {
    OpeningKind: TopHingedFlap, ParallelRisingDoor, FoldingPair, OverTheTopDoor;
    DownDatum: BoxTopUnderside, SideTopEnd, DoorTopEdge, HoleBefore, FrameRailUnderside, LeafJoint;
    AcrossDatum: MountingFace, DoorSideEdge, SpreadPoint, HoleBefore;
    BackDatum: SideFront, HoleBefore, FrameFront;
}
