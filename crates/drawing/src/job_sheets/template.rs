//! The bores of one panel at full size, for drilling by hand: tiles with overlaps, register
//! crosses, a map and a bar to measure on every page.

use euclid::default::{Rect, Size2D, Vector2D};
use flapwright_model::length::show_mm_tenth;
use flapwright_rules::fingerprint::fingerprint;
use flapwright_rules::inspection::{BoxReport, PanelReport};

use super::head_foot::{Head, INSIDE, foot, match_words, pieces};
use super::setup::SheetSetup;
use super::template_map;
use super::template_tile::{MARGIN, OVERLAP, Tile, Tiling};
use crate::brush::{Brush, Lettering, corners};
use crate::cautions::{Context, cautions};
use crate::draft::Draft;
use crate::layout::{Crowd, around};
use crate::list::{Across, Along, At, DisplayList, Shape};
use crate::page_kind::PageKind;
use crate::panel_sheet::facts::{FaceEdge, Facts};
use crate::panel_sheet::holes::Hole;
use crate::paper::Paper;
use crate::pen::{Ink, Layer, Pen};
use crate::scale::Scale;

/// Width of the page map, mm.
const MAP: f64 = 42.0;
/// Depth of the strip with the bar to measure, mm.
const BAR_STRIP: f64 = 10.0;
/// True length of that bar, mm.
const BAR: f64 = 100.0;
/// Half the side of the square about a register cross, mm. A square, because rings with a cross are
/// bores.
const REGISTER: f64 = 2.0;
/// How far a register cross reaches, mm.
const REGISTER_REACH: f64 = 4.0;
// A register cross fits into the overlap, and the name of an edge into the margin.
const _: () = assert!(OVERLAP > 2.0 * REGISTER_REACH && MARGIN > NAME_AT + 0.5 * NAME);
/// From an edge to the middle of its name, and height of that, mm.
const NAME_AT: f64 = 4.5;
const NAME: f64 = 2.5;
/// Height of small words, mm (ISO 3098 series).
const SMALL: f64 = 1.8;

/// The pages of one panel's template.
pub(super) fn pages(setup: &SheetSetup<'_>, report: &BoxReport, panel: &PanelReport) -> Vec<Draft> {
    let facts = Facts::new(setup.job, setup.inspection, report, panel);
    let (paper, tiling) = best(setup, &facts);
    let left_edge = !facts.u_runs_left();
    let bores: Vec<[f64; 2]> = facts.holes.iter().map(|hole| place(&facts, hole)).collect();
    let printed = tiling.printed(&bores, left_edge);
    printed
        .iter()
        .map(|tile| {
            let mut list = DisplayList::new();
            let region = frame(&mut list, setup, &facts, (paper, *tile, &tiling, &printed));
            TilePage {
                facts: &facts,
                tiling: &tiling,
                tile: *tile,
                region,
                printed: &printed,
            }
            .draw(&mut list);
            Draft {
                kind: PageKind::Template,
                box_id: Some(report.id),
                part: Some(panel.id),
                title: format!(
                    "{}: {}, template, {}",
                    report.name,
                    panel.name,
                    tile.words()
                ),
                paper,
                list,
                scale: Some(Scale::FULL),
            }
        })
        .collect()
}

/// The paper and the tiling with the fewest pages.
fn best(setup: &SheetSetup<'_>, facts: &Facts<'_>) -> (Paper, Tiling) {
    let of = |paper: Paper| {
        let whole = Tiling::new(facts.size, [100.0, 100.0]);
        let tile = Tile { row: 0, column: 0 };
        let page = (paper, tile, &whole, &[][..]);
        let region = frame(&mut DisplayList::new(), setup, facts, page);
        let window = [region.width(), region.height()];
        (paper, Tiling::new(facts.size, window))
    };
    let all = setup.fit.papers.iter().map(|paper| of(*paper));
    all.min_by_key(|(_, tiling)| tiling.pages())
        .unwrap_or_else(|| of(setup.list_paper()))
}

/// Where a bore is in the picture: right and down from the panel's upper left corner.
fn place(facts: &Facts<'_>, hole: &Hole) -> [f64; 2] {
    let along = if facts.u_runs_left() {
        facts.size[0] - hole.u
    } else {
        hole.u
    };
    [along, hole.v]
}

/// Head, bar and foot; gives back the room of the tile.
fn frame(
    list: &mut DisplayList,
    setup: &SheetSetup<'_>,
    facts: &Facts<'_>,
    (paper, tile, tiling, printed): (Paper, Tile, &Tiling, &[Tile]),
) -> Rect<f64> {
    let space = paper.drawing_space();
    let panel = facts.panel;
    let [width, height] = facts.size.map(show_mm_tenth);
    let lead = [
        format!(
            "Full-size template, {} of {} across and {} down. {} for box “{}”.",
            tile.words(),
            tiling.count[0],
            tiling.count[1],
            pieces(facts.report.quantity),
            facts.report.name
        ),
        format!("{} {width} × {height}.", facts.face_words()),
        facts.edges_words().to_owned(),
        match_words(&setup.job.title_block.revision, &fingerprint(panel)),
    ];
    let headline = format!("{} 1:1", facts.headline());
    let head = Head {
        headline: &headline,
        lead: &lead,
        invented: facts.invented(),
        free_right: MAP + 4.0,
    };
    // The map needs some depth of its own.
    let top = head.draw(list, paper).min(space.max_y() - INSIDE - 30.0);
    let right = space.max_x() - INSIDE;
    let map = Rect::from_points([
        At::new(right - MAP, space.max_y() - INSIDE),
        At::new(right, top),
    ]);
    template_map::draw(list, map, tiling, printed, tile);
    bar(
        list,
        At::new(space.min_x() + INSIDE + 2.0, top - BAR_STRIP + 3.0),
    );
    let mut context: Context = facts.caution_context();
    context.template = true;
    let low = foot(list, paper, &cautions(context), &legend(), SMALL);
    let region = Rect::from_points([
        At::new(space.min_x(), low),
        At::new(space.max_x(), top - BAR_STRIP),
    ]);
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    let ends = [region.max_y(), region.min_y()];
    for y in ends {
        let from = At::new(region.min_x(), y);
        brush.line(list, from, At::new(region.max_x(), y), Pen::Thin);
    }
    // Clear of the rules and of the centring marks.
    region.inflate(-2.2, -0.5)
}

/// A bar of [`BAR`] mm and what is to be done with it.
fn bar(list: &mut DisplayList, low: At) {
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    for step in 0..10 {
        let from = low.x + BAR / 10.0 * f64::from(step);
        if step % 2 == 0 {
            let field = [
                At::new(from, low.y),
                At::new(from + BAR / 10.0, low.y + 2.0),
            ];
            brush.area(list, corners(Rect::from_points(field)));
        }
    }
    let whole = [low, At::new(low.x + BAR, low.y + 2.0)];
    brush.rect(list, Rect::from_points(whole), Pen::Thin);
    let x = low.x + BAR + 3.0;
    let how = Lettering::new(2.5).bold();
    brush.text(list, At::new(x, low.y + 1.9), "measure this: 100 mm;", how);
    brush.text(
        list,
        At::new(x, low.y - 1.9),
        "if it is not, do not drill",
        how,
    );
}

fn legend() -> Vec<String> {
    vec![
        "Print at 100 %, never “fit to page”. Lay the sheets over each other so that the squares \
         with a cross and the dashed lines meet; never drill in a square. Check the marked edges \
         against the panel."
            .to_owned(),
        "Circles: bores at true size, with number, diameter and depth. Prick the centres through \
         the paper; the hole table of the drilling sheet stands over this template."
            .to_owned(),
    ]
}

/// One tile on its page.
struct TilePage<'a> {
    facts: &'a Facts<'a>,
    tiling: &'a Tiling,
    tile: Tile,
    region: Rect<f64>,
    printed: &'a [Tile],
}

impl TilePage<'_> {
    /// A place of the picture on paper.
    fn at(&self, [across, down]: [f64; 2]) -> At {
        let corner = self.tiling.corner(self.tile);
        At::new(
            self.region.min_x() + across - corner[0],
            self.region.max_y() - down + corner[1],
        )
    }

    fn draw(&self, list: &mut DisplayList) {
        let mut crowd = Crowd::new();
        self.joints(list, &mut crowd);
        self.edges(list, &mut crowd);
        let on_page: Vec<(&Hole, At)> = self
            .facts
            .holes
            .iter()
            .filter(|hole| self.tiling.shows(self.tile, place(self.facts, hole)))
            .map(|hole| (hole, self.at(place(self.facts, hole))))
            .collect();
        for (hole, centre) in &on_page {
            let reach = 0.5 * hole.diameter + 3.5;
            crowd.take(around(*centre, [2.0 * reach, 2.0 * reach]));
        }
        for (hole, centre) in &on_page {
            self.hole(list, hole, *centre);
        }
        for (hole, centre) in &on_page {
            self.label(list, &mut crowd, hole, *centre);
        }
        self.joint_names(list, &mut crowd);
    }

    /// Dashed lines and crosses in squares in the overlaps, with what joins there.
    fn joints(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let brush = Brush::new(Layer::Sheet, Ink::Plain);
        let region = self.region;
        for (axis, own) in [(0, self.tile.column), (1, self.tile.row)] {
            for (number, joint) in self.tiling.joints(axis).enumerate() {
                if number != own && number + 1 != own {
                    continue;
                }
                let on = self.at([joint, joint]);
                let (from, to) = if axis == 0 {
                    (At::new(on.x, region.min_y()), At::new(on.x, region.max_y()))
                } else {
                    (At::new(region.min_x(), on.y), At::new(region.max_x(), on.y))
                };
                brush.line(list, from, to, Pen::Hidden);
                crowd.take(Rect::from_points([from, to]).inflate(0.6, 0.6));
                for share in [0.22, 0.78] {
                    let middle = from.lerp(to, share);
                    let square = Rect::new(
                        At::new(middle.x - REGISTER, middle.y - REGISTER),
                        Size2D::new(2.0 * REGISTER, 2.0 * REGISTER),
                    );
                    brush.rect(list, square, Pen::Thin);
                    brush.cross(list, middle, REGISTER_REACH, Pen::Thin);
                    let size = 2.0 * REGISTER_REACH + 0.6;
                    crowd.take(around(middle, [size, size]));
                }
            }
        }
    }

    /// Which tile joins beyond each joint.
    fn joint_names(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let Tile { row, column } = self.tile;
        let mut beside = Vec::new();
        if column > 0 {
            beside.push((0, column - 1, column - 1));
        }
        if column + 1 < self.tiling.count[0] {
            beside.push((0, column, column + 1));
        }
        if row > 0 {
            beside.push((1, row - 1, row - 1));
        }
        if row + 1 < self.tiling.count[1] {
            beside.push((1, row, row + 1));
        }
        for (axis, number, other) in beside {
            let Some(joint) = self.tiling.joints(axis).nth(number) else {
                continue;
            };
            let on = self.at([joint, joint]);
            let middle = self.region.center();
            let (near, tile) = if axis == 0 {
                let tile = Tile { row, column: other };
                (At::new(on.x, middle.y), tile)
            } else {
                let tile = Tile { row: other, column };
                (At::new(middle.x, on.y), tile)
            };
            self.joint_words(list, crowd, tile, near);
        }
    }

    fn joint_words(&self, list: &mut DisplayList, crowd: &mut Crowd, tile: Tile, near: At) {
        let words = if self.printed.contains(&tile) {
            format!("joins {}", tile.words())
        } else {
            format!("{}: not printed", tile.words())
        };
        let how = Lettering::new(SMALL).held(Along::Middle, Across::Middle);
        let size = [how.width(&words) + 1.0, 3.2];
        let far = [1.0, 3.0, 6.0, 12.0, 20.0, 35.0, 50.0];
        if let Some(at) = crowd.place_near(near, size, &far, self.region) {
            Brush::new(Layer::Notes, Ink::Plain).text(list, at, words, how);
        }
    }

    /// The edges of the panel that are on this tile, with their names.
    fn edges(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let [width, height] = self.facts.size;
        let left = if self.facts.u_runs_left() {
            [FaceEdge::UEnd, FaceEdge::UStart]
        } else {
            [FaceEdge::UStart, FaceEdge::UEnd]
        };
        let whole = Rect::from_points([self.at([0.0, 0.0]), self.at([width, height])]);
        let seen = whole.intersection(&self.region);
        let Some(seen) = seen else { return };
        for (edge, x, out) in [
            (left[0], whole.min_x(), -1.0),
            (left[1], whole.max_x(), 1.0),
        ] {
            if (self.region.min_x()..=self.region.max_x()).contains(&x) {
                let ends = [At::new(x, seen.min_y()), At::new(x, seen.max_y())];
                self.edge(list, crowd, edge, ends);
                let how = Lettering::new(2.5).up().held(Along::Middle, Across::Middle);
                let at = At::new(x + out * NAME_AT, seen.center().y);
                self.edge_name(list, crowd, edge, at, how, seen.height());
            }
        }
        for (edge, y, out) in [
            (FaceEdge::VStart, whole.max_y(), 1.0),
            (FaceEdge::VEnd, whole.min_y(), -1.0),
        ] {
            if (self.region.min_y()..=self.region.max_y()).contains(&y) {
                let ends = [At::new(seen.min_x(), y), At::new(seen.max_x(), y)];
                self.edge(list, crowd, edge, ends);
                let how = Lettering::new(2.5).held(Along::Middle, Across::Middle);
                let at = At::new(seen.center().x, y + out * NAME_AT);
                self.edge_name(list, crowd, edge, at, how, seen.width());
            }
        }
        self.zero(list, crowd);
    }

    fn edge(&self, list: &mut DisplayList, crowd: &mut Crowd, edge: FaceEdge, ends: [At; 2]) {
        let banded = edge.band(self.facts.panel.bands) > 0.0;
        // The outer side of a stroke would lie off the edge: thin, so that it can be set to it.
        let pen = if banded { Pen::Outline } else { Pen::Thin };
        Brush::new(Layer::Panels, Ink::Plain).line(list, ends[0], ends[1], pen);
        crowd.take(Rect::from_points(ends).inflate(0.5, 0.5));
    }

    fn edge_name(
        &self,
        list: &mut DisplayList,
        crowd: &mut Crowd,
        edge: FaceEdge,
        at: At,
        how: Lettering,
        room: f64,
    ) {
        let brush = Brush::new(Layer::Notes, Ink::Plain);
        let whole = self.facts.edge_words(edge);
        let words = if how.width(&whole) <= room {
            whole
        } else {
            self.facts.edge_name(edge).to_owned()
        };
        let rect = how.bounds(at, &words).inflate(0.4, 0.4);
        for along in [0.0, 14.0, -14.0, 28.0, -28.0, 42.0, -42.0] {
            let by = match how.turn {
                crate::list::Turn::Level => Vector2D::new(along, 0.0),
                crate::list::Turn::Up => Vector2D::new(0.0, along),
            };
            let moved = rect.translate(by);
            if self.region.contains_rect(&moved) && crowd.is_free(moved) {
                crowd.take(moved);
                brush.text(list, at + by, words, how);
                return;
            }
        }
    }

    /// The ring at the zero corner.
    fn zero(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let [width, _] = self.facts.size;
        let across = if self.facts.u_runs_left() { width } else { 0.0 };
        if !self.tiling.shows(self.tile, [across, 0.0]) {
            return;
        }
        let corner = self.at([across, 0.0]);
        let brush = Brush::new(Layer::Dimensions, Ink::Plain);
        brush.circle(list, corner, 2.0, Pen::Outline);
        crowd.take(around(corner, [5.0, 5.0]));
        let how = Lettering::new(2.5)
            .bold()
            .held(Along::Middle, Across::Middle);
        let size = [how.width("zero") + 0.8, 3.6];
        if let Some(at) = crowd.place_near(corner, size, &[0.4, 1.5, 3.0], self.region) {
            brush.text(list, at, "zero", how);
        }
    }

    /// The circle as far as it is on the tile, and the cross at its centre.
    fn hole(&self, list: &mut DisplayList, hole: &Hole, centre: At) {
        let radius = 0.5 * hole.diameter;
        let subject = flapwright_model::part::Subject::Bore(flapwright_model::part::BoreId {
            part: self.facts.panel.id,
            number: hole.number,
        });
        let brush = Brush::new(Layer::Bores, Ink::Bore).of(subject);
        let whole = around(centre, [hole.diameter, hole.diameter]);
        if self.region.contains_rect(&whole) {
            brush.circle(list, centre, radius, Pen::Thin);
        } else {
            for (from, sweep) in arcs_inside(centre, radius, self.region) {
                let pen = Pen::Thin;
                brush.put(
                    list,
                    Shape::Arc {
                        centre,
                        radius,
                        from,
                        sweep,
                        pen,
                    },
                );
            }
        }
        let reach = radius + 2.5;
        for (dx, dy) in [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)] {
            let end = At::new(centre.x + dx * reach, centre.y + dy * reach)
                .clamp(self.region.min(), self.region.max());
            brush.line(list, centre, end, Pen::Thin);
        }
    }

    fn label(&self, list: &mut DisplayList, crowd: &mut Crowd, hole: &Hole, centre: At) {
        let depth = match hole.depth {
            Some(depth) => format!("{} deep", show_mm_tenth(depth)),
            None => "through".to_owned(),
        };
        let full = format!("{}: Ø{} {depth}", hole.number, show_mm_tenth(hole.diameter));
        let short = hole.number.to_string();
        let brush = Brush::new(Layer::Bores, Ink::Plain);
        let radius = 0.5 * hole.diameter;
        let radii = [0.5, 2.0, 4.0, 8.0, 14.0, 20.0].map(|more| radius + more);
        for (words, height) in [(&full, 2.5), (&full, SMALL), (&short, 2.5), (&short, SMALL)] {
            let how = Lettering::new(height).held(Along::Middle, Across::Middle);
            let size = [how.width(words) + 0.8, 1.75 * height];
            let Some(at) = crowd.place_near(centre, size, &radii, self.region) else {
                continue;
            };
            brush.text(list, at, words.clone(), how);
            return;
        }
    }
}

/// The parts of a circle inside a rectangle: start and sweep, radians, to within half a degree.
fn arcs_inside(centre: At, radius: f64, within: Rect<f64>) -> Vec<(f64, f64)> {
    const STEPS: u32 = 720;
    let step = std::f64::consts::TAU / f64::from(STEPS);
    let inside = |i: u32| {
        let angle = step * (f64::from(i) + 0.5);
        within.contains(centre + Vector2D::new(angle.cos(), angle.sin()) * radius)
    };
    let mut arcs: Vec<(f64, f64)> = Vec::new();
    let mut open = false;
    for i in 0..STEPS {
        match (inside(i), open) {
            (true, false) => arcs.push((step * f64::from(i), step)),
            (true, true) => {
                if let Some((_, sweep)) = arcs.last_mut() {
                    *sweep += step;
                }
            }
            (false, _) => {}
        }
        open = inside(i);
    }
    arcs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_circle_is_half_a_turn() {
        let right = Rect::from_points([At::new(0.0, -50.0), At::new(50.0, 50.0)]);
        let sweep: f64 = arcs_inside(At::zero(), 10.0, right)
            .iter()
            .map(|(_, sweep)| sweep)
            .sum();
        assert!((sweep - std::f64::consts::PI).abs() < 0.02, "{sweep}");
    }
}
