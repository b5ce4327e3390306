//! From a card back to a draft, for changing it.

use std::collections::BTreeMap;

use super::columns::{self, SIZE};
use super::{
    AcrossDatum, BackDatum, CardDraft, DownDatum, DraftAdjustmentRange, DraftBodies, DraftCutPart,
    DraftDistance, DraftDoorBore, DraftDoorGroup, DraftDrill, DraftEdgeRange, DraftEnvelope,
    DraftExample, DraftLinkage, DraftPivot, DraftSideBore, DraftSpread, DraftTopBore,
    DraftTopGroup, Grid, Paper,
};
use crate::card::{
    AcrossFrom, AdjustmentRange, BackFrom, Card, Depth, Distance, DownFrom, Drill, Example,
    PerSize, Size, Spread,
};
use crate::lift::{Carries, Lift};
use crate::linkage::{Bodies, Pivot};

impl CardDraft {
    /// A draft that resolves to this card: all numbers in mm, kg, N, N·m, and a column of its own
    /// for each distance that differs by size.
    #[must_use]
    pub fn of_card(card: &Card) -> Self {
        let mut writer = Writer::new(card);
        let mut draft = Self {
            name: card.name.clone(),
            maker_text: card.maker_text.clone(),
            invented: card.invented,
            paper: Paper::default(),
            sides: card.sides,
            per: card.per,
            side_bores: writer.side_bores(card),
            top_bores: writer.top_bores(card),
            door_bores: writer.door_bores(card),
            envelope: DraftEnvelope {
                down_from: plain(card.envelope.down_from),
                down_to: writer.per_size(&card.envelope.down_to),
                back_from: plain(card.envelope.back_from),
                back_to: writer.per_size(&card.envelope.back_to),
                inward: plain(card.envelope.inward),
                front: card.envelope.front,
            },
            adjustment: [
                travel(card.adjustment.sideways),
                travel(card.adjustment.upward),
                travel(card.adjustment.depth),
            ],
            linkage: DraftLinkage {
                front: card.linkage.front,
                end_angle: plain(card.linkage.end_degrees),
                bodies: writer.bodies(&card.linkage.bodies),
                path_tolerance: plain(card.linkage.path_tolerance),
                damping: plain(card.linkage.damping),
            },
            cut_parts: card
                .cut_parts
                .iter()
                .map(|part| DraftCutPart {
                    name: part.name.clone(),
                    deduction: plain(part.deduction),
                    count: part.count,
                })
                .collect(),
            notes: card.notes.clone(),
            example: card.example.as_ref().map(example),
            ..Self::blank(card.kind)
        };
        draft.sizes = writer.sizes;
        draft.loads.rows.clear();
        draft.springs.rows.clear();
        for size in &card.sizes {
            tables(&mut draft, size);
        }
        draft
    }
}

/// A number as text that reads back as the same number.
fn plain(value: f64) -> String {
    format!("{value}")
}

fn travel(travel: AdjustmentRange) -> DraftAdjustmentRange {
    DraftAdjustmentRange {
        min: plain(travel.min),
        max: plain(travel.max),
    }
}

fn example(example: &Example) -> DraftExample {
    let grid = |mut grid: Grid, places: &[(f64, f64)]| {
        grid.rows = places
            .iter()
            .map(|place| vec![plain(place.0), plain(place.1)])
            .collect();
        grid
    };
    let new = DraftExample::default();
    let overlays = example.overlays;
    DraftExample {
        size: example.size.clone(),
        panel_thickness: plain(example.panel_thickness),
        overlays: [overlays.left, overlays.right, overlays.top, overlays.bottom].map(plain),
        packing: plain(example.packing),
        joint_down: plain(example.joint_down),
        side: grid(new.side, &example.side),
        door: grid(new.door, &example.door),
    }
}

/// Load rows and spring rows of one size.
fn tables(draft: &mut CardDraft, size: &Size) {
    let (word, rows) = match &size.carries {
        Carries::MassByDoorHeight(rows) => ("door", rows.as_slice()),
        Carries::MassByBoxHeight(rows) => ("box", rows.as_slice()),
        Carries::Mass { .. } | Carries::Moment { .. } => ("", [].as_slice()),
    };
    for row in rows {
        draft.loads.rows.push(vec![
            size.name.clone(),
            word.to_owned(),
            plain(row.height),
            plain(row.min),
            plain(row.max),
        ]);
    }
    if let Lift::Spring { table, .. } = &size.lift {
        for row in table {
            draft.springs.rows.push(vec![
                size.name.clone(),
                plain(row.degrees),
                plain(row.weakest),
                plain(row.strongest),
            ]);
        }
    }
}

/// Writes numbers, and columns for those that differ by size.
struct Writer {
    sizes: Grid,
    /// Columns made so far, by their values.
    made: Vec<(BTreeMap<String, u64>, String)>,
}

impl Writer {
    fn new(card: &Card) -> Self {
        let strut = card
            .sizes
            .iter()
            .any(|size| matches!(size.lift, Lift::Strut(_)));
        let spring = card
            .sizes
            .iter()
            .any(|size| matches!(size.lift, Lift::Spring { .. }));
        let mut titles: Vec<&str> = columns::PLAIN.to_vec();
        if spring {
            titles.extend(columns::SPRING);
        }
        if strut {
            titles.extend(columns::STRUT);
        }
        let mut sizes = Grid::new(titles);
        for size in &card.sizes {
            let cells = cells(size);
            let row = sizes
                .titles
                .iter()
                .map(|title| cells.get(title.as_str()).cloned().unwrap_or_default())
                .collect();
            sizes.rows.push(row);
        }
        Self {
            sizes,
            made: Vec::new(),
        }
    }

    fn per_size(&mut self, value: &PerSize) -> String {
        let table = match value {
            PerSize::All(value) => return plain(*value),
            PerSize::BySize(table) => table,
        };
        let key: BTreeMap<String, u64> = table
            .iter()
            .map(|(name, value)| (name.clone(), value.to_bits()))
            .collect();
        if let Some((_, title)) = self.made.iter().find(|made| made.0 == key) {
            return title.clone();
        }
        let title = letters(self.made.len());
        self.sizes.add_column(&title);
        let last = self.sizes.titles.len() - 1;
        for row in &mut self.sizes.rows {
            let value = row.first().and_then(|name| table.get(name));
            if let (Some(cell), Some(value)) = (row.get_mut(last), value) {
                *cell = plain(*value);
            }
        }
        self.made.push((key, title.clone()));
        title
    }

    fn down(&mut self, distance: &Distance<DownFrom>) -> DraftDistance<DownDatum> {
        DraftDistance {
            from: match distance.from {
                DownFrom::BoxTopUnderside => DownDatum::BoxTopUnderside,
                DownFrom::FrameRailUnderside => DownDatum::FrameRailUnderside,
                DownFrom::LeafJoint => DownDatum::LeafJoint,
            },
            by: self.per_size(&distance.by),
        }
    }

    fn back(&mut self, distance: &Distance<BackFrom>) -> DraftDistance<BackDatum> {
        DraftDistance {
            from: match distance.from {
                BackFrom::SideFront => BackDatum::SideFront,
                BackFrom::FrameFront => BackDatum::FrameFront,
            },
            by: self.per_size(&distance.by),
        }
    }

    fn across(&mut self, distance: &Distance<AcrossFrom>) -> DraftDistance<AcrossDatum> {
        DraftDistance {
            from: match distance.from {
                AcrossFrom::MountingFace => AcrossDatum::MountingFace,
                AcrossFrom::SpreadPoint => AcrossDatum::SpreadPoint,
            },
            by: self.per_size(&distance.by),
        }
    }

    fn side_bores(&mut self, card: &Card) -> Vec<DraftSideBore> {
        card.side_bores
            .iter()
            .map(|bore| DraftSideBore {
                down: self.down(&bore.down),
                back: self.back(&bore.back),
                drill: drill(&bore.drill),
            })
            .collect()
    }

    fn top_bores(&mut self, card: &Card) -> Vec<DraftTopGroup> {
        card.top_bores
            .iter()
            .map(|group| DraftTopGroup {
                spread: group.spread.as_ref().map(spread),
                bores: group
                    .bores
                    .iter()
                    .map(|bore| DraftTopBore {
                        across: self.across(&bore.across),
                        back: self.back(&bore.back),
                        drill: drill(&bore.drill),
                    })
                    .collect(),
            })
            .collect()
    }

    fn door_bores(&mut self, card: &Card) -> Vec<DraftDoorGroup> {
        card.door_bores
            .iter()
            .map(|group| DraftDoorGroup {
                leaf: group.leaf,
                spread: group.spread.as_ref().map(spread),
                bores: group
                    .bores
                    .iter()
                    .map(|bore| DraftDoorBore {
                        across: self.across(&bore.across),
                        down: self.down(&bore.down),
                        drill: drill(&bore.drill),
                        edge_ranges: bore
                            .edge_ranges
                            .iter()
                            .map(|range| DraftEdgeRange {
                                edge: range.edge,
                                min: plain(range.min),
                                max: plain(range.max),
                            })
                            .collect(),
                        in_glass_or_metal: bore.in_glass_or_metal,
                    })
                    .collect(),
            })
            .collect()
    }

    fn pivot(&mut self, pivot: &Pivot) -> DraftPivot {
        DraftPivot {
            down: self.per_size(&pivot.down),
            back: self.per_size(&pivot.back),
        }
    }

    fn bodies(&mut self, bodies: &Bodies) -> DraftBodies {
        match bodies {
            Bodies::FixedAxis { axis } => DraftBodies::FixedAxis {
                axis: self.pivot(axis),
            },
            Bodies::PoseTable { reference, poses } => {
                let mut grid = Grid::new(["angle", "out", "up"]);
                grid.rows = poses
                    .iter()
                    .map(|pose| [pose.degrees, pose.out, pose.up].map(plain).to_vec())
                    .collect();
                DraftBodies::PoseTable {
                    reference: self.pivot(reference),
                    poses: grid,
                }
            }
            Bodies::Parallel {
                box_pivot,
                door_pivot,
                second_down,
                second_back,
            } => DraftBodies::Parallel {
                box_pivot: self.pivot(box_pivot),
                door_pivot: self.pivot(door_pivot),
                second_down: plain(*second_down),
                second_back: plain(*second_back),
            },
            Bodies::Folding {
                axis,
                joint_behind,
                link_box,
                link_below_joint,
                link_behind,
            } => DraftBodies::Folding {
                axis: self.pivot(axis),
                joint_behind: plain(*joint_behind),
                link_box: self.pivot(link_box),
                link_below_joint: plain(*link_below_joint),
                link_behind: plain(*link_behind),
            },
            Bodies::TwoArms {
                box_first,
                door_first,
                box_second,
                door_second,
            } => DraftBodies::TwoArms {
                box_first: self.pivot(box_first),
                door_first: self.pivot(door_first),
                box_second: self.pivot(box_second),
                door_second: self.pivot(door_second),
            },
        }
    }
}

fn drill(drill: &Drill) -> DraftDrill {
    DraftDrill {
        diameter: plain(drill.diameter),
        depth: match drill.depth {
            Depth::Blind(depth) => plain(depth),
            Depth::Through => "through".to_owned(),
        },
        purpose: drill.purpose.clone(),
        pass: drill.pass,
    }
}

fn spread(spread: &Spread) -> DraftSpread {
    let mut counts = DraftSpread::new_counts();
    counts.rows = spread
        .counts
        .iter()
        .map(|row| vec![plain(row.up_to), row.count.to_string()])
        .collect();
    DraftSpread {
        end_inset: plain(spread.end_inset),
        counts,
    }
}

/// The cells of a size by title.
fn cells(size: &Size) -> BTreeMap<&'static str, String> {
    let mut cells = BTreeMap::from([
        (SIZE, size.name.clone()),
        (columns::HEIGHT_MIN, plain(size.door_height.min)),
        (columns::HEIGHT_MAX, plain(size.door_height.max)),
        (columns::WIDTH_MIN, plain(size.door_width.min)),
        (columns::WIDTH_MAX, plain(size.door_width.max)),
        (columns::LEAST_DEPTH, plain(size.least_inner_depth)),
        (columns::LEAST_HEIGHT, plain(size.least_inner_height)),
    ]);
    match &size.carries {
        Carries::Mass { min, max } => {
            cells.insert(columns::LOAD_MIN, plain(*min));
            cells.insert(columns::LOAD_MAX, plain(*max));
        }
        Carries::Moment {
            min,
            max,
            at_degrees,
        } => {
            cells.insert(columns::LOAD_MIN, plain(*min));
            cells.insert(columns::LOAD_MAX, plain(*max));
            cells.insert(columns::AT_ANGLE, plain(*at_degrees));
        }
        Carries::MassByDoorHeight(_) | Carries::MassByBoxHeight(_) => {}
    }
    match &size.lift {
        Lift::Spring {
            turns, friction, ..
        } => {
            cells.insert(columns::TURNS, plain(*turns));
            cells.insert(columns::FRICTION, plain(*friction));
        }
        Lift::Strut(strut) => {
            cells.extend([
                (columns::STRUT_FORCE, plain(strut.force)),
                (columns::PROGRESSION, plain(strut.progression)),
                (columns::STROKE, plain(strut.stroke)),
                (columns::LENGTH, plain(strut.extended)),
                (columns::ROD_FRICTION, plain(strut.friction)),
                (columns::BOX_DOWN, plain(strut.box_down)),
                (columns::BOX_BACK, plain(strut.box_back)),
                (columns::DOOR_DOWN, plain(strut.door_down)),
                (columns::DOOR_BACK, plain(strut.door_back)),
            ]);
        }
    }
    cells
}

/// A, B … Z, AA, AB …
fn letters(mut number: usize) -> String {
    let mut text = String::new();
    loop {
        let letter = u8::try_from(number % 26).map_or('A', |it| char::from(b'A' + it));
        text.insert(0, letter);
        if number < 26 {
            return text;
        }
        number = number / 26 - 1;
    }
}
