//! The steps of the form, and which fields of a draft belong to each.

/// One step of the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(crate) enum Step {
    /// Name, opening kind, how the paper speaks.
    #[default]
    Paper,
    /// Bores in the side.
    Side,
    /// Bores in the panel above the opening.
    Top,
    /// Bores in the back of the door.
    Door,
    /// The space that the body takes, adjustment, parts cut to length.
    Body,
    /// Pivots, arms, end angle.
    Motion,
    /// Sizes, loads, springs and struts.
    Sizes,
    /// The paper's worked example.
    Example,
    /// What is still wrong, and whether the example comes out.
    Proof,
}

impl Step {
    /// All, in order.
    pub(crate) const ALL: [Self; 9] = [
        Self::Paper,
        Self::Side,
        Self::Top,
        Self::Door,
        Self::Body,
        Self::Motion,
        Self::Sizes,
        Self::Example,
        Self::Proof,
    ];

    /// Its heading.
    pub(crate) const fn words(self) -> &'static str {
        match self {
            Self::Paper => "Paper and kind",
            Self::Side => "Side bores",
            Self::Top => "Top bores",
            Self::Door => "Door bores",
            Self::Body => "Body",
            Self::Motion => "Motion",
            Self::Sizes => "Sizes",
            Self::Example => "Worked example",
            Self::Proof => "Proof",
        }
    }

    /// What to type there.
    pub(crate) const fn meaning(self) -> &'static str {
        match self {
            Self::Paper => {
                "What the paper is called, how its door opens and in which units it speaks."
            }
            Self::Side => {
                "One row for each bore in the inner face of a side, with the distance as the paper \
                 gives it."
            }
            Self::Top => {
                "Bores in the underside of the panel above the opening, e.g. of hinge plates. Leave \
                 out what the paper has not."
            }
            Self::Door => "Bores in the back of the door, in groups.",
            Self::Body => {
                "The space that the fitting takes beside the side, what it can be adjusted by, and \
                 parts that are cut to length."
            }
            Self::Motion => "Pivots with the door closed, and how far it opens.",
            Self::Sizes => "One row a size. A distance elsewhere may name a column of this table.",
            Self::Example => {
                "The example that the paper works out: its box, its door and the distances that \
                 must come out. It finds slips of typing."
            }
            Self::Proof => {
                "What is still missing, what looks like a slip, and whether the example comes out."
            }
        }
    }

    /// Its number, from 0.
    pub(crate) fn number(self) -> usize {
        Self::ALL.iter().position(|step| *step == self).unwrap_or(0)
    }

    /// The step after it, or before it.
    pub(crate) fn beside(self, by: isize) -> Option<Self> {
        let number = self.number().checked_add_signed(by)?;
        Self::ALL.get(number).copied()
    }

    /// The step that has the field of a problem.
    pub(crate) fn of_field(field: &str) -> Self {
        let begins = |prefix: &str| field.starts_with(prefix);
        match field {
            "paper.top_thickness" => Self::Side,
            "paper.overlay_side" | "paper.overlay_top" => Self::Door,
            "paper.load_given" => Self::Sizes,
            _ if begins("side_bores") => Self::Side,
            _ if begins("top_bores") => Self::Top,
            _ if begins("door_bores") => Self::Door,
            _ if begins("envelope") || begins("adjustment") || begins("cut_parts") => Self::Body,
            _ if begins("linkage") => Self::Motion,
            _ if begins("sizes") || begins("loads") || begins("springs") => Self::Sizes,
            _ if begins("example") => Self::Example,
            _ => Self::Paper,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_lead_to_their_step_and_steps_to_their_neighbours() {
        assert_eq!(Step::of_field("side_bores[2].down"), Step::Side);
        assert_eq!(Step::of_field("sizes[0] \"load max\""), Step::Sizes);
        assert_eq!(Step::of_field("paper.overlay_side"), Step::Door);
        assert_eq!(Step::Paper.beside(-1), None);
        assert_eq!(Step::Proof.beside(1), None);
        assert_eq!(Step::Side.beside(1), Some(Step::Top));
    }
}
