//! Why a card and a door give no motion, and a lift no force: data, said by the crate `words`.

use flapwright_model::card::OpeningKind;
use flapwright_model::message::{AsTyped, Count, Degrees, Mm, Word};
use flapwright_model::messages;

messages! {
    /// A number of a card or a door.
    pub enum WhichNumber in "which-number" {
        /// By its name.
        Named = "named" { name: Word },
        /// A distance of a pivot: `back` or `down`.
        OfPivot = "of-pivot" { pivot: Word, way: Word },
        /// An edge of a leaf, counted from the top, from 1.
        EdgeOfLeaf = "edge-of-leaf" { number: Count },
    }
}

messages! {
    /// Why a card and a door give no motion. What mends it, see [`MotionError::mend`].
    pub enum MotionError in "no-motion" {
        /// The door has no joint between its two leaves.
        JointMissing = "joint-missing",
        /// The card has no size of that name.
        UnknownSize = "unknown-size" { size: String },
        /// A table by size lacks this size.
        NumberMissing = "number-missing" { number: WhichNumber, size: String },
        /// A number of the card or the door is infinite or not a number.
        NotFinite = "not-finite" { number: WhichNumber },
        /// A number that is far beyond any door.
        TooLarge = "too-large" { number: WhichNumber, value: AsTyped },
        /// The end angle is not above 0, or more than a door can have.
        EndAngle = "end-angle" { angle: AsTyped, most: AsTyped },
        /// The opening kind of the card, and what its motion numbers are for.
        KindAndBodies = "kind-and-bodies" { kind: Word, bodies: Word },
        /// The door has another number of leaves than the opening kind needs.
        LeafCount = "leaf-count" { kind: Word, needed: Count, found: Count },
        /// A leaf without height or thickness, counted from the top, from 1.
        EmptyLeaf = "empty-leaf" { number: Count },
        /// Two pivots of one arm are at the same place.
        NoLength = "no-length" { arm: Word },
        /// A pivot on the inner face of the side lies above the underside of the panel above it.
        PivotInPanel = "pivot-in-panel" { pivot: Word, above: Mm },
        /// The links cannot be joined from an input angle on, or lie in one line there, so that
        /// the door could go on in two ways.
        CannotClose = "cannot-close" { link: Word, at: Degrees },
        /// Two parallel arms come into line with their pivots at an input angle: they could cross.
        ArmsInLine = "arms-in-line" { at: Degrees },
        /// A row of the table of poses, from 1, has a number that is out of range.
        PoseOutOfRange = "pose-out-of-range" { row: Count },
        /// There are no poses.
        PosesMissing = "poses-missing",
        /// The first pose is not the closed door.
        FirstPoseNotClosed = "first-pose-not-closed",
        /// A row of the table of poses, from 1, opens no further than the one before.
        PosesNotRising = "poses-not-rising" { row: Count },
        /// There is one pose only.
        OnePose = "one-pose",
        /// The last row of the table of poses ends before the end angle.
        PosesEndEarly = "poses-end-early" { row: Count },
        /// A leaf names a material that is not there.
        NoMaterial = "no-material" { name: String },
        /// A number that must be above zero is not.
        NotPositive = "not-positive" { number: WhichNumber, value: AsTyped },
    }
}

messages! {
    /// Why a size's spring or strut cannot be calculated. What mends it, see [`DriveError::mend`].
    pub enum DriveError in "no-drive" {
        /// The door would pull a strut apart from an input angle on: its greatest distance between
        /// the anchors and its longest length.
        Stretched = "stretched" { by: Mm, from: Degrees, length: Mm, extended: Mm },
        /// The door would crush a strut from an input angle on: its least distance between the
        /// anchors and its shortest length.
        Crushed = "crushed" { by: Mm, from: Degrees, length: Mm, compressed: Mm },
        /// A number that no spring or strut can have.
        Number = "number" { what: Word, value: AsTyped },
        /// The spring table is empty.
        SpringMissing = "spring-missing",
        /// A row of the spring table, from 1, has a number that is out of range.
        SpringOutOfRange = "spring-out-of-range" { row: Count },
        /// A row of the spring table, from 1, is at no greater angle than the one before.
        SpringNotRising = "spring-not-rising" { row: Count },
    }
}

messages! {
    /// What mends a card, a door or a strut.
    pub enum Mend in "mend" {
        /// Another size of the card.
        ChooseSize = "choose-size",
        /// The number for this size.
        AddNumber = "add-number",
        /// The number again.
        TypeAgain = "type-again",
        /// Opening kind or motion numbers.
        KindOrNumbers = "kind-or-numbers",
        /// Another door or another card.
        DoorOrCard = "door-or-card",
        /// The joint.
        GiveJoint = "give-joint",
        /// The edges of the door.
        CheckEdges = "check-edges",
        /// The pivots.
        CheckPivots = "check-pivots",
        /// A pivot further down.
        LowerPivot = "lower-pivot",
        /// Other pivots, or a smaller end angle.
        MovePivots = "move-pivots",
        /// More poses.
        AddPoses = "add-poses",
        /// The closed pose first.
        ClosedPoseFirst = "closed-pose-first",
        /// Rows in order.
        SortRows = "sort-rows",
        /// Rows up to the end angle, or a smaller one.
        ReachEnd = "reach-end",
        /// The material.
        AddMaterial = "add-material",
        /// The spring's moments.
        TypeMoments = "type-moments",
        /// Another anchor or a longer strut.
        LongerStrut = "longer-strut",
        /// Another anchor or a shorter strut.
        ShorterStrut = "shorter-strut",
    }
}

impl MotionError {
    /// What mends it.
    #[must_use]
    pub const fn mend(&self) -> Mend {
        match self {
            Self::JointMissing => Mend::GiveJoint,
            Self::UnknownSize { .. } => Mend::ChooseSize,
            Self::NumberMissing { .. } => Mend::AddNumber,
            Self::NotFinite { .. }
            | Self::TooLarge { .. }
            | Self::EndAngle { .. }
            | Self::NotPositive { .. }
            | Self::PoseOutOfRange { .. } => Mend::TypeAgain,
            Self::KindAndBodies { .. } => Mend::KindOrNumbers,
            Self::LeafCount { .. } => Mend::DoorOrCard,
            Self::EmptyLeaf { .. } => Mend::CheckEdges,
            Self::NoLength { .. } => Mend::CheckPivots,
            Self::PivotInPanel { .. } => Mend::LowerPivot,
            Self::CannotClose { .. } | Self::ArmsInLine { .. } => Mend::MovePivots,
            Self::PosesMissing | Self::OnePose => Mend::AddPoses,
            Self::FirstPoseNotClosed => Mend::ClosedPoseFirst,
            Self::PosesNotRising { .. } => Mend::SortRows,
            Self::PosesEndEarly { .. } => Mend::ReachEnd,
            Self::NoMaterial { .. } => Mend::AddMaterial,
        }
    }
}

impl DriveError {
    /// What mends it.
    #[must_use]
    pub const fn mend(&self) -> Mend {
        match self {
            Self::Stretched { .. } => Mend::LongerStrut,
            Self::Crushed { .. } => Mend::ShorterStrut,
            Self::Number { .. } | Self::SpringOutOfRange { .. } => Mend::TypeAgain,
            Self::SpringMissing => Mend::TypeMoments,
            Self::SpringNotRising { .. } => Mend::SortRows,
        }
    }
}

/// What an opening kind is called in the catalogue.
pub(crate) const fn kind_word(kind: OpeningKind) -> Word {
    match kind {
        OpeningKind::TopHingedFlap => Word("top-hinged-flap"),
        OpeningKind::ParallelRisingDoor => Word("parallel-rising-door"),
        OpeningKind::FoldingPair => Word("folding-pair"),
        OpeningKind::OverTheTopDoor => Word("over-the-top-door"),
    }
}
