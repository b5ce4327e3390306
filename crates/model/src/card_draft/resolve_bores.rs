//! Bores of a draft, reckoned back to the datums of cards.

use std::collections::BTreeMap;

use super::entry::{Reader, cell_field};
use super::{AcrossDatum, BackDatum, DownDatum, DraftDistance, DraftDrill, DraftSpread};
use crate::card::{
    AcrossFrom, BackFrom, Depth, Distance, DoorBore, DoorGroup, DownFrom, Drill, EdgeRange,
    PerSize, SideBore, Spread, SpreadCount, TopBore, TopGroup,
};

/// A distance less a length that is known.
fn less(by: PerSize, length: f64) -> PerSize {
    match by {
        PerSize::All(value) => PerSize::All(value - length),
        PerSize::BySize(table) => PerSize::BySize(
            table
                .into_iter()
                .map(|(name, value)| (name, value - length))
                .collect(),
        ),
    }
}

/// The sum of two distances, size by size where one of them differs by size.
fn sum(a: &PerSize, b: &PerSize) -> PerSize {
    match (a, b) {
        (PerSize::All(a), PerSize::All(b)) => PerSize::All(a + b),
        (PerSize::All(same), PerSize::BySize(table))
        | (PerSize::BySize(table), PerSize::All(same)) => PerSize::BySize(
            table
                .iter()
                .map(|(name, value)| (name.clone(), value + same))
                .collect(),
        ),
        (PerSize::BySize(a), PerSize::BySize(b)) => {
            let both = a
                .iter()
                .filter_map(|(name, value)| Some((name.clone(), value + b.get(name)?)));
            PerSize::BySize(both.collect::<BTreeMap<_, _>>())
        }
    }
}

/// A distance that counts from the place of the hole before.
fn onward<D: Copy>(before: Option<&Distance<D>>, by: &PerSize) -> Option<Distance<D>> {
    let before = before?;
    Some(Distance {
        from: before.from,
        by: sum(&before.by, by),
    })
}

impl Reader<'_> {
    pub(super) fn side_bores(&mut self) -> Vec<SideBore> {
        let mut bores: Vec<SideBore> = Vec::new();
        for (i, draft) in self.draft.side_bores.iter().enumerate() {
            let at = format!("side_bores[{i}]");
            let before = bores.last();
            let down = self.down(&at, &draft.down, before.map(|bore| &bore.down));
            let back = self.back(&at, &draft.back, before.map(|bore| &bore.back));
            let drill = self.drill(&at, &draft.drill);
            bores.push(SideBore { down, back, drill });
        }
        bores
    }

    pub(super) fn top_bores(&mut self) -> Vec<TopGroup> {
        let mut groups = Vec::new();
        for (i, draft) in self.draft.top_bores.iter().enumerate() {
            let at = format!("top_bores[{i}]");
            let spread = draft.spread.as_ref().map(|it| self.spread(&at, it));
            let mut bores: Vec<TopBore> = Vec::new();
            for (j, draft) in draft.bores.iter().enumerate() {
                let at = format!("{at}.bores[{j}]");
                let before = bores.last();
                let across = self.across(&at, &draft.across, before.map(|bore| &bore.across));
                let back = self.back(&at, &draft.back, before.map(|bore| &bore.back));
                let drill = self.drill(&at, &draft.drill);
                bores.push(TopBore {
                    across,
                    back,
                    drill,
                });
            }
            groups.push(TopGroup { spread, bores });
        }
        groups
    }

    pub(super) fn door_bores(&mut self) -> Vec<DoorGroup> {
        let mut groups = Vec::new();
        for (i, draft) in self.draft.door_bores.iter().enumerate() {
            let at = format!("door_bores[{i}]");
            let spread = draft.spread.as_ref().map(|it| self.spread(&at, it));
            let mut bores: Vec<DoorBore> = Vec::new();
            for (j, draft) in draft.bores.iter().enumerate() {
                let at = format!("{at}.bores[{j}]");
                let before = bores.last();
                let across = self.across(&at, &draft.across, before.map(|bore| &bore.across));
                let down = self.down(&at, &draft.down, before.map(|bore| &bore.down));
                let drill = self.drill(&at, &draft.drill);
                let mut edge_ranges = Vec::new();
                for (k, range) in draft.edge_ranges.iter().enumerate() {
                    let at = format!("{at}.edge_ranges[{k}]");
                    edge_ranges.push(EdgeRange {
                        edge: range.edge,
                        min: self.length(&format!("{at}.min"), &range.min),
                        max: self.length(&format!("{at}.max"), &range.max),
                    });
                }
                bores.push(DoorBore {
                    across,
                    down,
                    drill,
                    edge_ranges,
                    in_glass_or_metal: draft.in_glass_or_metal,
                });
            }
            groups.push(DoorGroup {
                leaf: draft.leaf,
                spread,
                bores,
            });
        }
        groups
    }

    fn down(
        &mut self,
        at: &str,
        draft: &DraftDistance<DownDatum>,
        before: Option<&Distance<DownFrom>>,
    ) -> Distance<DownFrom> {
        let field = format!("{at}.down");
        let by = self.per_size(&field, &draft.by);
        let on_door = at.starts_with("door_bores");
        let from = match draft.from {
            DownDatum::BoxTopUnderside => DownFrom::BoxTopUnderside,
            DownDatum::FrameRailUnderside => DownFrom::FrameRailUnderside,
            DownDatum::LeafJoint => DownFrom::LeafJoint,
            DownDatum::SideTopEnd | DownDatum::DoorTopEdge => {
                let edge = draft.from == DownDatum::DoorTopEdge;
                if edge != on_door {
                    self.wrong(
                        &field,
                        format!("counts from the {}", draft.from.words()),
                        "choose a datum of the same panel",
                    );
                }
                let paper = &self.draft.paper;
                let (name, text) = if edge {
                    ("paper.overlay_top", paper.overlay_top.clone())
                } else {
                    ("paper.top_thickness", paper.top_thickness.clone())
                };
                let known = self.length(name, &text);
                return Distance {
                    from: DownFrom::BoxTopUnderside,
                    by: less(by, known),
                };
            }
            DownDatum::HoleBefore => {
                return onward(before, &by)
                    .unwrap_or_else(|| self.no_hole_before(&field, DownFrom::BoxTopUnderside, by));
            }
        };
        Distance { from, by }
    }

    fn back(
        &mut self,
        at: &str,
        draft: &DraftDistance<BackDatum>,
        before: Option<&Distance<BackFrom>>,
    ) -> Distance<BackFrom> {
        let field = format!("{at}.back");
        let by = self.per_size(&field, &draft.by);
        let from = match draft.from {
            BackDatum::SideFront => BackFrom::SideFront,
            BackDatum::FrameFront => BackFrom::FrameFront,
            BackDatum::HoleBefore => {
                return onward(before, &by)
                    .unwrap_or_else(|| self.no_hole_before(&field, BackFrom::SideFront, by));
            }
        };
        Distance { from, by }
    }

    fn across(
        &mut self,
        at: &str,
        draft: &DraftDistance<AcrossDatum>,
        before: Option<&Distance<AcrossFrom>>,
    ) -> Distance<AcrossFrom> {
        let field = format!("{at}.across");
        let by = self.per_size(&field, &draft.by);
        let from = match draft.from {
            AcrossDatum::MountingFace => AcrossFrom::MountingFace,
            AcrossDatum::SpreadPoint => AcrossFrom::SpreadPoint,
            AcrossDatum::DoorSideEdge => {
                let text = self.draft.paper.overlay_side.clone();
                let overlay = self.length("paper.overlay_side", &text);
                return Distance {
                    from: AcrossFrom::MountingFace,
                    by: less(by, overlay),
                };
            }
            AcrossDatum::HoleBefore => {
                return onward(before, &by)
                    .unwrap_or_else(|| self.no_hole_before(&field, AcrossFrom::MountingFace, by));
            }
        };
        Distance { from, by }
    }

    fn no_hole_before<D>(&mut self, field: &str, from: D, by: PerSize) -> Distance<D> {
        self.wrong(
            field,
            "counts from the hole before, and this is the first one",
            "choose another datum",
        );
        Distance { from, by }
    }

    fn drill(&mut self, at: &str, draft: &DraftDrill) -> Drill {
        let diameter = self.length(&format!("{at}.drill.diameter"), &draft.diameter);
        let depth = if draft.depth.trim().eq_ignore_ascii_case("through") {
            Depth::Through
        } else {
            Depth::Blind(self.length(&format!("{at}.drill.depth"), &draft.depth))
        };
        Drill {
            diameter,
            depth,
            purpose: draft.purpose.clone(),
            pass: draft.pass,
        }
    }

    fn spread(&mut self, at: &str, draft: &DraftSpread) -> Spread {
        let grid = &draft.counts;
        let name = format!("{at}.spread.counts");
        let mut counts = Vec::new();
        for row in 0..grid.rows.len() {
            let field = |column| cell_field(&name, row, &grid.titles, column);
            counts.push(SpreadCount {
                up_to: self.length(&field(0), grid.cell(row, 0)),
                count: self.count(&field(1), grid.cell(row, 1)),
            });
        }
        Spread {
            end_inset: self.length(&format!("{at}.spread.end_inset"), &draft.end_inset),
            counts,
        }
    }
}
