//! Pens, inks and layers by meaning.

/// Line type and width (ISO 128-2: two widths, wide to narrow 2:1).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pen {
    /// Continuous wide: visible edges and outlines.
    Outline,
    /// Continuous narrow: dimensions, hatching, leaders, tables.
    Thin,
    /// Dashed narrow: hidden edges.
    Hidden,
    /// Long-dashed dotted narrow: centre lines and centre marks.
    Centre,
    /// Long-dashed double-dotted narrow: other positions of moving parts.
    Phantom,
    /// Continuous, twice the outline's step up: the sheet's frame.
    Frame,
    /// Continuous, widest: the banded (front) edge of a panel.
    Banded,
    /// Continuous, between narrow and wide: grid references of the sheet.
    Grid,
}

impl Pen {
    /// Every pen, for legends and back-end tables.
    pub const ALL: [Self; 8] = [
        Self::Outline,
        Self::Thin,
        Self::Hidden,
        Self::Centre,
        Self::Phantom,
        Self::Frame,
        Self::Banded,
        Self::Grid,
    ];

    /// Width in paper millimetres. The group 0.5 / 0.25 keeps the 2:1 ratio of ISO 128-2; the
    /// frame is 0.7 mm and grid lines are 0.35 mm (ISO 5457, restated second-hand).
    #[must_use]
    pub const fn width(self) -> f64 {
        match self {
            Self::Outline => 0.5,
            Self::Thin | Self::Hidden | Self::Centre | Self::Phantom => 0.25,
            Self::Frame => 0.7,
            Self::Banded => 1.0,
            Self::Grid => 0.35,
        }
    }

    /// Dash pattern in paper millimetres, drawn and skipped in turn; empty when continuous.
    /// Proportions follow ISO 128-2 (long dash 24 widths, dash 12, gap 3, dot at most half a
    /// width), restated from memory.
    #[must_use]
    pub const fn dashes(self) -> &'static [f64] {
        match self {
            Self::Outline | Self::Thin | Self::Frame | Self::Banded | Self::Grid => &[],
            Self::Hidden => &[3.0, 0.75],
            Self::Centre => &[6.0, 0.75, 0.15, 0.75],
            Self::Phantom => &[6.0, 0.75, 0.15, 0.75, 0.15, 0.75],
        }
    }
}

/// Colour by meaning. On paper all are black or grey except the marks of findings; the window has
/// a colour for each in light and dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ink {
    /// Plain drawing ink.
    Plain,
    /// Lighter ink for what stands behind: hatching, grids.
    Soft,
    /// A bore.
    Bore,
    /// A door and its moving parts in positions other than closed.
    Moving,
    /// The fitting: envelope, arms, axis.
    Fitting,
    /// A place lit up by a finding of severity stop.
    Stop,
    /// A place lit up by a finding of severity caution.
    Caution,
    /// A place lit up by a finding of severity note.
    Note,
    /// A change that is shown before it is applied.
    Ghost,
    /// What stands around the box: ceiling, beams, lamps, pipes.
    Room,
    /// Background of the paper: used to blank out what lies under a text.
    Paper,
}

/// Layer by meaning, the same in every output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// What lies around the frame: grid references, centring and trim marks.
    Border,
    /// Frame, title block, tables.
    Sheet,
    /// Outlines of panels.
    Panels,
    /// Hatching of cut panels.
    Hatching,
    /// Outlines of doors and leaves.
    Doors,
    /// The opening mark.
    OpeningMark,
    /// Fitting: envelope, arms, axis.
    Fitting,
    /// Bores and their centre marks.
    Bores,
    /// Dimensions.
    Dimensions,
    /// Plain texts, labels and cautions.
    Notes,
    /// Marks of findings.
    Findings,
    /// A change that is shown before it is applied.
    Preview,
    /// The room around the box.
    Room,
}

impl Layer {
    /// Name used for groups in files: plain lower-case words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Border => "border",
            Self::Sheet => "sheet",
            Self::Panels => "panels",
            Self::Hatching => "hatching",
            Self::Doors => "doors",
            Self::OpeningMark => "opening-mark",
            Self::Fitting => "fitting",
            Self::Bores => "bores",
            Self::Dimensions => "dimensions",
            Self::Notes => "notes",
            Self::Findings => "findings",
            Self::Preview => "preview",
            Self::Room => "room",
        }
    }
}
