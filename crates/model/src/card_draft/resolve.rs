//! From a draft to a sound card.

use super::entry::Reader;
use super::{CardDraft, DraftEnvelope};
use crate::card::{Adjustment, AdjustmentRange, Card, CutPart, Envelope};
use crate::field::SizeColumn;
use crate::validate::{Problem, validate_card};

pub(super) fn resolve(draft: &CardDraft) -> Result<Card, Vec<Problem>> {
    let mut reader = Reader::new(draft);
    if draft.name.trim().is_empty() {
        reader.wrong("name", "is empty", "give the card a name");
    }
    if draft.sizes.rows.is_empty() {
        reader.wrong("sizes", "has no row", "add a row for each size");
    }
    let card = Card {
        name: draft.name.trim().to_owned(),
        kind: draft.kind,
        maker_text: draft.maker_text.clone(),
        invented: draft.invented,
        sides: draft.sides,
        per: draft.per,
        side_bores: reader.side_bores(),
        top_bores: reader.top_bores(),
        door_bores: reader.door_bores(),
        envelope: reader.envelope(&draft.envelope),
        adjustment: reader.adjustment(),
        linkage: reader.linkage(),
        cut_parts: reader.cut_parts(),
        notes: draft.notes.clone(),
        sizes: reader.sizes(),
        example: draft.example.as_ref().map(|it| reader.example(it)),
    };
    let mut problems = reader.problems;
    if problems.is_empty() {
        problems = validate_card(&card)
            .into_iter()
            .map(|problem| as_of_draft(draft, &card.name, problem))
            .collect();
    }
    let mut seen = std::collections::BTreeSet::new();
    problems.retain(|problem| seen.insert((problem.field.clone(), problem.what.clone())));
    if problems.is_empty() {
        Ok(card)
    } else {
        Err(problems)
    }
}

/// A problem of the only card of a list under the field that the draft has for it.
fn as_of_draft(draft: &CardDraft, name: &str, problem: Problem) -> Problem {
    let prefix = format!("cards[0] \"{name}\"");
    let field = problem.field.strip_prefix(&prefix);
    let field = field.map(|path| size_cell(path, draft).unwrap_or_else(|| draft_field(path)));
    Problem {
        field: field.unwrap_or(problem.field),
        ..problem
    }
}

/// The path of a draft's field by that of the card's. A card has the number of a distance inside
/// the distance, and its own name for the end angle.
fn draft_field(path: &str) -> String {
    let path = path.trim_start_matches('.');
    if path == "linkage.end_degrees" {
        return "linkage.end_angle".to_owned();
    }
    let of_all_sizes = path
        .strip_suffix("\"]")
        .and_then(|it| it.rsplit_once("[\""));
    let path = of_all_sizes.map_or(path, |it| it.0);
    path.strip_suffix(".by").unwrap_or(path).to_owned()
}

/// The cell of the sizes table that a path of the card means: a card has the numbers of a size in
/// structs of their own.
fn size_cell(path: &str, draft: &CardDraft) -> Option<String> {
    let rest = path.strip_prefix(".sizes[")?;
    let (row, rest) = rest.split_once("] \"")?;
    let (_name, number) = rest.split_once("\".")?;
    let titles = draft.sizes.titles.iter();
    let mut columns = titles.filter_map(|title| SizeColumn::titled(title));
    let column = columns.find(|it| it.in_card.strip_prefix('.') == Some(number))?;
    Some(format!("sizes[{row}] \"{}\"", column.title))
}

impl Reader<'_> {
    fn envelope(&mut self, draft: &DraftEnvelope) -> Envelope {
        Envelope {
            down_from: self.length("envelope.down_from", &draft.down_from),
            down_to: self.per_size("envelope.down_to", &draft.down_to),
            back_from: self.length("envelope.back_from", &draft.back_from),
            back_to: self.per_size("envelope.back_to", &draft.back_to),
            inward: self.length("envelope.inward", &draft.inward),
            front: draft.front,
        }
    }

    fn adjustment(&mut self) -> Adjustment {
        let mut travels = [AdjustmentRange::default(); 3];
        let names = ["sideways", "upward", "depth"];
        for ((travel, draft), name) in travels.iter_mut().zip(&self.draft.adjustment).zip(names) {
            let at = format!("adjustment.{name}");
            *travel = AdjustmentRange {
                min: self.length_or_none(&format!("{at}.min"), &draft.min),
                max: self.length_or_none(&format!("{at}.max"), &draft.max),
            };
        }
        let [sideways, upward, depth] = travels;
        Adjustment {
            sideways,
            upward,
            depth,
        }
    }

    fn cut_parts(&mut self) -> Vec<CutPart> {
        self.draft
            .cut_parts
            .iter()
            .enumerate()
            .map(|(i, part)| CutPart {
                name: part.name.clone(),
                deduction: self.length(&format!("cut_parts[{i}].deduction"), &part.deduction),
                count: part.count,
            })
            .collect()
    }
}
