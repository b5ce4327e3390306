//! Soundness of fitting cards.

use std::collections::BTreeSet;

use super::Validator;
use crate::card::{
    AcrossFrom, AdjustmentRange, Card, Depth, Distance, DownFrom, Drill, Example, MOST_SIZES,
    OpeningKind, PerSize, Size, Span, Spread,
};
use crate::edges::Edge;
use crate::field::limits::{
    ADJUST_LESS, ADJUST_MORE, BORE, BORE_DEPTH, DAMPING, DISTANCE, END_ANGLE, EXAMPLE_PLACE,
    FRICTION, GAP, GROUPS, HALF_TURN, INWARD, MOMENT, ON_CARD, PASS, PROGRESSION, SIGNED, SIZE,
    SPAN, STRAY, STRUT_FORCE, TURN, TURNS,
};
use crate::lift::{Carries, Lift, MassRow};
use crate::linkage::{Bodies, Pivot};
use crate::part::LeafId;

/// Most bores in one group, and most groups.
const MOST_BORES: usize = 200;
/// Longest name or purpose, characters.
const LONGEST_NAME: usize = 200;
/// Longest free text, characters.
const LONGEST_TEXT: usize = 20_000;

pub(super) fn look_at<'a>(look: &mut Validator, cards: impl Iterator<Item = &'a Card>) {
    let mut names = BTreeSet::new();
    for (i, card) in cards.enumerate() {
        let at = format!("cards[{i}] \"{}\"", card.name);
        look.unique(&mut names, &at, &card.name, "card");
        look.card(&at, card);
    }
}

impl Validator {
    fn card(&mut self, at: &str, card: &Card) {
        let before = self.problems.len();
        self.texts(at, card);
        if card.sizes.len() > MOST_SIZES {
            self.too_many_sizes(at, card);
        }
        self.too_many(at, card);
        if self.problems.len() > before {
            return;
        }
        self.sizes(at, card);
        for (i, bore) in card.side_bores.iter().enumerate() {
            let at = format!("{at}.side_bores[{i}]");
            self.down(&format!("{at}.down"), &bore.down, card);
            self.per_size(&format!("{at}.back.by"), &bore.back.by, card);
            self.drill(&format!("{at}.drill"), &bore.drill);
        }
        for (i, group) in card.top_bores.iter().enumerate() {
            let at = format!("{at}.top_bores[{i}]");
            self.spread(&at, group.spread.as_ref());
            for (j, bore) in group.bores.iter().enumerate() {
                let at = format!("{at}.bores[{j}]");
                self.across(&at, &bore.across, group.spread.as_ref(), card);
                self.per_size(&format!("{at}.back.by"), &bore.back.by, card);
                self.drill(&format!("{at}.drill"), &bore.drill);
            }
        }
        for (i, group) in card.door_bores.iter().enumerate() {
            let at = format!("{at}.door_bores[{i}]");
            self.leaf_suits(&at, group.leaf, card);
            self.spread(&at, group.spread.as_ref());
            for (j, bore) in group.bores.iter().enumerate() {
                let at = format!("{at}.bores[{j}]");
                self.across(&at, &bore.across, group.spread.as_ref(), card);
                self.down(&format!("{at}.down"), &bore.down, card);
                self.drill(&format!("{at}.drill"), &bore.drill);
                for (k, range) in bore.edge_ranges.iter().enumerate() {
                    let at = format!("{at}.edge_ranges[{k}]");
                    self.span(
                        &at,
                        Span {
                            min: range.min,
                            max: range.max,
                        },
                        " mm",
                    );
                }
            }
        }
        let envelope = &card.envelope;
        self.length(
            &format!("{at}.envelope.down_from"),
            envelope.down_from,
            ON_CARD,
        );
        self.per_size(&format!("{at}.envelope.down_to"), &envelope.down_to, card);
        self.length(
            &format!("{at}.envelope.back_from"),
            envelope.back_from,
            ON_CARD,
        );
        self.per_size(&format!("{at}.envelope.back_to"), &envelope.back_to, card);
        self.length(&format!("{at}.envelope.inward"), envelope.inward, INWARD);
        self.travel(
            &format!("{at}.adjustment.sideways"),
            card.adjustment.sideways,
        );
        self.travel(&format!("{at}.adjustment.upward"), card.adjustment.upward);
        self.travel(&format!("{at}.adjustment.depth"), card.adjustment.depth);
        self.linkage(&format!("{at}.linkage"), card);
        for (i, part) in card.cut_parts.iter().enumerate() {
            self.length(
                &format!("{at}.cut_parts[{i}].deduction"),
                part.deduction,
                ON_CARD,
            );
        }
        if let Some(example) = &card.example {
            self.example(&format!("{at}.example"), example, card);
        }
    }

    /// Texts that would make messages and sheets unusable.
    fn texts(&mut self, at: &str, card: &Card) {
        let mut names = vec![("name".to_owned(), &card.name)];
        for (i, size) in card.sizes.iter().take(MOST_SIZES).enumerate() {
            names.push((format!("sizes[{i}].name"), &size.name));
        }
        for (i, bore) in card.side_bores.iter().take(MOST_BORES).enumerate() {
            names.push((
                format!("side_bores[{i}].drill.purpose"),
                &bore.drill.purpose,
            ));
        }
        for (i, part) in card.cut_parts.iter().take(MOST_BORES).enumerate() {
            names.push((format!("cut_parts[{i}].name"), &part.name));
        }
        for (field, text) in names {
            self.no_longer(at, &field, text, LONGEST_NAME);
        }
        self.no_longer(at, "maker_text", &card.maker_text, LONGEST_TEXT);
        self.no_longer(at, "notes", &card.notes, LONGEST_TEXT);
    }

    fn no_longer(&mut self, at: &str, field: &str, text: &str, most: usize) {
        let length = text.chars().count();
        if length > most {
            // The name is part of every path, so that a long one is not repeated.
            let at = at.chars().take(LONGEST_NAME).collect::<String>();
            self.wrong(
                format!("{at}.{field}"),
                format!("has {length} characters; it may have {most}"),
                "shorten it",
            );
        }
    }

    fn too_many_sizes(&mut self, at: &str, card: &Card) {
        self.wrong(
            format!("{at}.sizes"),
            format!(
                "has {} entries; a card has 1 to {MOST_SIZES} sizes",
                card.sizes.len()
            ),
            "correct the list of sizes",
        );
    }

    fn too_many(&mut self, at: &str, card: &Card) {
        let mut counts = vec![
            ("side_bores".to_owned(), card.side_bores.len()),
            ("top_bores".to_owned(), card.top_bores.len()),
            ("door_bores".to_owned(), card.door_bores.len()),
            ("cut_parts".to_owned(), card.cut_parts.len()),
        ];
        if let Some(example) = &card.example {
            counts.push(("example.side".to_owned(), example.side.len()));
            counts.push(("example.door".to_owned(), example.door.len()));
        }
        for (i, group) in card.top_bores.iter().enumerate() {
            counts.push((format!("top_bores[{i}].bores"), group.bores.len()));
        }
        for (i, group) in card.door_bores.iter().enumerate() {
            counts.push((format!("door_bores[{i}].bores"), group.bores.len()));
            for (j, bore) in group.bores.iter().take(MOST_BORES).enumerate() {
                let name = format!("door_bores[{i}].bores[{j}].edge_ranges");
                counts.push((name, bore.edge_ranges.len()));
            }
        }
        for (name, count) in counts {
            if count > MOST_BORES {
                self.wrong(
                    format!("{at}.{name}"),
                    format!("has {count} entries; a card has at most {MOST_BORES} there"),
                    "split the card",
                );
            }
        }
    }

    fn sizes(&mut self, at: &str, card: &Card) {
        if card.sizes.is_empty() {
            self.too_many_sizes(at, card);
        }
        let mut names = BTreeSet::new();
        for (i, size) in card.sizes.iter().take(MOST_SIZES).enumerate() {
            let at = format!("{at}.sizes[{i}] \"{}\"", size.name);
            self.unique(&mut names, &at, &size.name, "size of this card");
            self.one_size(&at, size);
        }
    }

    fn one_size(&mut self, at: &str, size: &Size) {
        self.span(&format!("{at}.door_height"), size.door_height, " mm");
        self.span(&format!("{at}.door_width"), size.door_width, " mm");
        self.length(
            &format!("{at}.least_inner_depth"),
            size.least_inner_depth,
            DISTANCE,
        );
        self.length(
            &format!("{at}.least_inner_height"),
            size.least_inner_height,
            DISTANCE,
        );
        let carries = format!("{at}.carries");
        match &size.carries {
            Carries::Mass { min, max } => {
                self.span(
                    &carries,
                    Span {
                        min: *min,
                        max: *max,
                    },
                    " kg",
                );
            }
            Carries::Moment {
                min,
                max,
                at_degrees,
            } => {
                self.span(
                    &carries,
                    Span {
                        min: *min,
                        max: *max,
                    },
                    " N·m",
                );
                self.within(
                    &format!("{carries}.at_degrees"),
                    *at_degrees,
                    HALF_TURN,
                    "°",
                );
            }
            Carries::MassByDoorHeight(rows) | Carries::MassByBoxHeight(rows) => {
                self.mass_rows(&carries, rows);
            }
        }
        self.lift(&format!("{at}.lift"), &size.lift);
    }

    fn mass_rows(&mut self, at: &str, rows: &[MassRow]) {
        if rows.is_empty() || rows.len() > 1000 {
            self.wrong(
                at,
                format!("has {} rows; it needs 1 to 1000", rows.len()),
                "correct it",
            );
        }
        for (i, row) in rows.iter().enumerate() {
            self.length(&format!("{at}[{i}].height"), row.height, SIZE);
            self.span(
                &format!("{at}[{i}]"),
                Span {
                    min: row.min,
                    max: row.max,
                },
                " kg",
            );
        }
        self.rising(at, rows.iter().map(|row| row.height));
    }

    fn lift(&mut self, at: &str, lift: &Lift) {
        match lift {
            Lift::Spring {
                table,
                turns,
                friction,
            } => {
                if table.is_empty() || table.len() > 1000 {
                    let what = format!("has {} rows; it needs 1 to 1000", table.len());
                    self.wrong(format!("{at}.table"), what, "correct the table");
                }
                for (i, row) in table.iter().enumerate() {
                    let at = format!("{at}.table[{i}]");
                    self.within(&format!("{at}.degrees"), row.degrees, TURN, "°");
                    self.within(&format!("{at}.weakest"), row.weakest, MOMENT, " N·m");
                    self.within(&format!("{at}.strongest"), row.strongest, MOMENT, " N·m");
                }
                self.rising(&format!("{at}.table"), table.iter().map(|row| row.degrees));
                self.within(&format!("{at}.turns"), *turns, TURNS, "");
                self.within(&format!("{at}.friction"), *friction, FRICTION, " N·m");
            }
            Lift::Strut(strut) => {
                self.length(&format!("{at}.box_down"), strut.box_down, ON_CARD);
                self.length(&format!("{at}.box_back"), strut.box_back, ON_CARD);
                self.length(&format!("{at}.door_down"), strut.door_down, ON_CARD);
                self.length(&format!("{at}.door_back"), strut.door_back, ON_CARD);
                self.within(&format!("{at}.force"), strut.force, STRUT_FORCE, " N");
                self.within(
                    &format!("{at}.progression"),
                    strut.progression,
                    PROGRESSION,
                    "",
                );
                self.length(&format!("{at}.stroke"), strut.stroke, SIZE);
                self.length(&format!("{at}.extended"), strut.extended, SIZE);
                self.within(&format!("{at}.friction"), strut.friction, FRICTION, " N");
                if strut.stroke >= strut.extended {
                    self.wrong(
                        format!("{at}.stroke"),
                        format!(
                            "is {} mm; it must be less than the extended length, {} mm",
                            strut.stroke, strut.extended
                        ),
                        "correct stroke or length",
                    );
                }
            }
        }
    }

    fn linkage(&mut self, at: &str, card: &Card) {
        let linkage = &card.linkage;
        self.within(
            &format!("{at}.end_degrees"),
            linkage.end_degrees,
            END_ANGLE,
            "°",
        );
        self.length(
            &format!("{at}.path_tolerance"),
            linkage.path_tolerance,
            STRAY,
        );
        self.within(&format!("{at}.damping"), linkage.damping, DAMPING, " N·m·s");
        let at = format!("{at}.bodies");
        let suits = match &linkage.bodies {
            Bodies::FixedAxis { axis } => {
                self.pivot(&format!("{at}.axis"), axis, card);
                card.kind == OpeningKind::TopHingedFlap
            }
            Bodies::PoseTable { reference, poses } => {
                self.pivot(&format!("{at}.reference"), reference, card);
                if poses.len() < 2 || poses.len() > 1000 {
                    let what = format!("has {} rows; it needs 2 to 1000", poses.len());
                    self.wrong(format!("{at}.poses"), what, "correct the table");
                }
                for (i, pose) in poses.iter().enumerate() {
                    let at = format!("{at}.poses[{i}]");
                    self.within(&format!("{at}.degrees"), pose.degrees, TURN, "°");
                    self.length(&format!("{at}.out"), pose.out, ON_CARD);
                    self.length(&format!("{at}.up"), pose.up, ON_CARD);
                }
                self.rising(
                    &format!("{at}.poses"),
                    poses.iter().map(|pose| pose.degrees),
                );
                card.kind == OpeningKind::TopHingedFlap
            }
            Bodies::Parallel {
                box_pivot,
                door_pivot,
                second_down,
                second_back,
            } => {
                self.pivot(&format!("{at}.box_pivot"), box_pivot, card);
                self.pivot(&format!("{at}.door_pivot"), door_pivot, card);
                self.length(&format!("{at}.second_down"), *second_down, ON_CARD);
                self.length(&format!("{at}.second_back"), *second_back, ON_CARD);
                card.kind == OpeningKind::ParallelRisingDoor
            }
            Bodies::Folding {
                axis,
                joint_behind,
                link_box,
                link_below_joint,
                link_behind,
            } => {
                self.pivot(&format!("{at}.axis"), axis, card);
                self.length(&format!("{at}.joint_behind"), *joint_behind, ON_CARD);
                self.pivot(&format!("{at}.link_box"), link_box, card);
                self.length(
                    &format!("{at}.link_below_joint"),
                    *link_below_joint,
                    ON_CARD,
                );
                self.length(&format!("{at}.link_behind"), *link_behind, ON_CARD);
                card.kind == OpeningKind::FoldingPair
            }
            Bodies::TwoArms {
                box_first,
                door_first,
                box_second,
                door_second,
            } => {
                self.pivot(&format!("{at}.box_first"), box_first, card);
                self.pivot(&format!("{at}.door_first"), door_first, card);
                self.pivot(&format!("{at}.box_second"), box_second, card);
                self.pivot(&format!("{at}.door_second"), door_second, card);
                card.kind == OpeningKind::OverTheTopDoor
            }
        };
        if !suits {
            self.wrong(
                at,
                format!("are not those of a {}", card.kind.words()),
                "choose the bodies that belong to the opening kind",
            );
        }
    }

    fn pivot(&mut self, at: &str, pivot: &Pivot, card: &Card) {
        self.per_size(&format!("{at}.down"), &pivot.down, card);
        self.per_size(&format!("{at}.back"), &pivot.back, card);
    }

    fn down(&mut self, at: &str, down: &Distance<DownFrom>, card: &Card) {
        self.per_size(&format!("{at}.by"), &down.by, card);
        if down.from == DownFrom::LeafJoint && card.kind != OpeningKind::FoldingPair {
            self.wrong(
                format!("{at}.from"),
                format!("is LeafJoint, and a {} has no joint", card.kind.words()),
                "choose another datum",
            );
        }
    }

    fn across(
        &mut self,
        at: &str,
        across: &Distance<AcrossFrom>,
        spread: Option<&Spread>,
        card: &Card,
    ) {
        self.per_size(&format!("{at}.across.by"), &across.by, card);
        if (across.from == AcrossFrom::SpreadPoint) != spread.is_some() {
            self.wrong(
                format!("{at}.across.from"),
                "does not suit its group: a spread group counts from SpreadPoint, any other from \
                 MountingFace",
                "choose the datum that belongs to the group",
            );
        }
    }

    fn leaf_suits(&mut self, at: &str, leaf: LeafId, card: &Card) {
        if (leaf == LeafId::Only) == (card.kind.leaf_count() == 2) {
            self.wrong(
                format!("{at}.leaf"),
                format!("is {leaf:?}, and a {} has no such leaf", card.kind.words()),
                "choose a leaf that the opening kind has",
            );
        }
    }

    fn spread(&mut self, at: &str, spread: Option<&Spread>) {
        let Some(spread) = spread else { return };
        self.length(
            &format!("{at}.spread.end_inset"),
            spread.end_inset,
            DISTANCE,
        );
        let counts = format!("{at}.spread.counts");
        if spread.counts.is_empty() || spread.counts.len() > 100 {
            let what = format!("has {} rows; it needs 1 to 100", spread.counts.len());
            self.wrong(counts.as_str(), what, "correct the width table");
        }
        for (i, row) in spread.counts.iter().enumerate() {
            self.length(&format!("{counts}[{i}].up_to"), row.up_to, SIZE);
            self.within(
                &format!("{counts}[{i}].count"),
                f64::from(row.count),
                GROUPS,
                "",
            );
        }
        self.rising(&counts, spread.counts.iter().map(|row| row.up_to));
    }

    pub(super) fn drill(&mut self, at: &str, drill: &Drill) {
        self.length(&format!("{at}.diameter"), drill.diameter, BORE);
        if let Depth::Blind(depth) = drill.depth {
            self.length(&format!("{at}.depth"), depth, BORE_DEPTH);
        }
        self.within(&format!("{at}.pass"), f64::from(drill.pass), PASS, "");
    }

    fn per_size(&mut self, at: &str, value: &PerSize, card: &Card) {
        match value {
            PerSize::All(value) => self.length(at, *value, ON_CARD),
            PerSize::BySize(table) => {
                for (name, value) in table {
                    self.length(&format!("{at}[\"{name}\"]"), *value, ON_CARD);
                    if card.size(name).is_none() {
                        self.wrong(
                            at,
                            format!("names the size \"{name}\", which the card does not have"),
                            "correct the name",
                        );
                    }
                }
                for size in card.sizes.iter().take(MOST_SIZES) {
                    if !table.contains_key(&size.name) {
                        self.wrong(
                            at,
                            format!("has no value for the size \"{}\"", size.name),
                            "add it",
                        );
                    }
                }
            }
        }
    }

    fn travel(&mut self, at: &str, travel: AdjustmentRange) {
        self.length(&format!("{at}.min"), travel.min, ADJUST_LESS);
        self.length(&format!("{at}.max"), travel.max, ADJUST_MORE);
    }

    fn span(&mut self, at: &str, span: Span, unit: &str) {
        self.within(&format!("{at}.min"), span.min, SPAN, unit);
        self.within(&format!("{at}.max"), span.max, SPAN, unit);
        if span.min > span.max {
            self.wrong(
                at,
                format!("runs from {} to {}{unit}", span.min, span.max),
                "put the lesser first",
            );
        }
    }

    fn rising(&mut self, at: &str, values: impl Iterator<Item = f64>) {
        let values: Vec<f64> = values.collect();
        // Written so that a NaN counts as not rising.
        if !values.windows(2).all(|pair| pair[0] < pair[1]) {
            self.wrong(at, "does not rise from row to row", "put the rows in order");
        }
    }

    fn example(&mut self, at: &str, example: &Example, card: &Card) {
        if card.size(&example.size).is_none() {
            self.wrong(
                format!("{at}.size"),
                format!("names \"{}\", which the card does not have", example.size),
                "choose a size of the card",
            );
        }
        self.length(
            &format!("{at}.panel_thickness"),
            example.panel_thickness,
            SIZE,
        );
        for edge in Edge::ALL {
            self.length(
                &format!("{at}.overlays.{}", edge.word()),
                example.overlays.at(edge),
                SIGNED,
            );
        }
        self.length(&format!("{at}.packing"), example.packing, GAP);
        self.length(&format!("{at}.joint_down"), example.joint_down, DISTANCE);
        for (name, places) in [("side", &example.side), ("door", &example.door)] {
            for (i, place) in places.iter().enumerate() {
                self.length(&format!("{at}.{name}[{i}].0"), place.0, EXAMPLE_PLACE);
                self.length(&format!("{at}.{name}[{i}].1"), place.1, EXAMPLE_PLACE);
            }
        }
    }
}
