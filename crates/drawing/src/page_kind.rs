//! What kinds of pages a job's set of sheets has.

/// A kind of page, in the order in which a set has them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PageKind {
    /// The job: boxes, materials, fittings, findings, cautions.
    Cover,
    /// One box: front view, upright and level section, main dimensions.
    Box,
    /// One drilled panel: the drilling sheet.
    Panel,
    /// What is to be cut: finished and cut sizes, edge bands, grain.
    CutList,
    /// All bores of all panels.
    BoreList,
    /// How each fitting is set, and what is said of its size.
    FittingSettings,
    /// The bores of one panel at full size, over as many pages as it takes.
    Template,
}

impl PageKind {
    /// All kinds, in the order of a set.
    pub const ALL: [Self; 7] = [
        Self::Cover,
        Self::Box,
        Self::Panel,
        Self::CutList,
        Self::BoreList,
        Self::FittingSettings,
        Self::Template,
    ];

    /// One word or two joined by a hyphen, for options and file names.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cover => "cover",
            Self::Box => "boxes",
            Self::Panel => "panels",
            Self::CutList => "cut-list",
            Self::BoreList => "bore-list",
            Self::FittingSettings => "fittings",
            Self::Template => "templates",
        }
    }

    /// The kind of that [`Self::name`].
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// What window and title block call such a page.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Cover => "Cover",
            Self::Box => "Box drawing",
            Self::Panel => "Drilling sheet",
            Self::CutList => "Cut list",
            Self::BoreList => "List of bores",
            Self::FittingSettings => "Fitting settings",
            Self::Template => "Full-size template",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_a_name_of_its_own() {
        for kind in PageKind::ALL {
            assert_eq!(PageKind::from_name(kind.name()), Some(kind));
        }
        assert_eq!(PageKind::from_name("poster"), None);
    }
}
