//! What the moving parts sweep over on the whole way: the ground of every check on clearance.

use euclid::Box2D;
use flapwright_model::space::{SectionPoint, SectionSpace};
use geo::{ConvexHull, Coord, Distance, Euclidean, Intersects, LineString, MultiPoint, Polygon};

use crate::closed::ClosedDoor;
use crate::motion::Motion;
use crate::outline::{BodyId, Extreme, Reach, arm_outlines, outline_at, reach, top_edge_rise};

/// Half the width of an arm, mm. A card does not say how wide its arms are. Common practice, no
/// source.
pub const ARM_HALF_WIDTH: f64 = 6.0;

/// Pieces that the way is cut into.
const PIECES: u16 = 48;

/// A gap is settled when what is certain and what is there differ by no more than this, mm.
const SETTLED: f64 = 0.05;

/// A piece is halved at most this often: 1/4096 of it is left.
const MOST_HALVINGS: u8 = 12;

/// A block of the section with upright and level edges: x is o, y is up, mm.
pub type SectionBlock = Box2D<f64, SectionSpace>;

/// What one body sweeps over on one piece of the way.
#[derive(Debug, Clone)]
pub struct Piece {
    /// Which body.
    pub body: BodyId,
    /// Where on the way the piece begins, 0 to 1.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Corners of the convex hull of the body at both ends of the piece, mm, counter-clockwise.
    pub hull: Vec<SectionPoint>,
    /// How far the body may stand out of the hull between the two ends, mm: a corner runs along
    /// an arc, the hull along its chord.
    pub bulge: f64,
    bounds: SectionBlock,
    start: Vec<SectionPoint>,
    end: Vec<SectionPoint>,
}

/// What a door sweeps over from closed to fully open.
#[derive(Debug, Clone)]
pub struct Sweep {
    /// The pieces in the order of the way.
    pub pieces: Vec<Piece>,
    /// How far the true path may lie off this one, mm; [`Sweep::approach`] counts it.
    pub tolerance: f64,
    /// How far the door comes.
    pub reach: Reach,
    motion: Motion,
    door: ClosedDoor,
}

/// How near the moving door comes to something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Approach {
    /// The smallest gap, path tolerance and bulge taken off, mm; 0 when they meet.
    pub gap: f64,
    /// The body that comes nearest.
    pub body: BodyId,
    /// Where on the way the gap is first this small.
    pub s: f64,
}

impl Sweep {
    /// The sweep of a door: for each piece of the way the hull of the body at both its ends. A
    /// body whose corners lie within `bulge` of their chords lies within `bulge` of the hull,
    /// since every point of it is a mean of its corners.
    #[must_use]
    pub fn of(motion: &Motion, door: &ClosedDoor) -> Self {
        let bodies = |s: f64| bodies_at(motion, door, s);
        let mut pieces = Vec::new();
        let mut before = bodies(0.0);
        for step in 0..PIECES {
            let share = |step: f64| step / f64::from(PIECES);
            let (from, to) = (share(f64::from(step)), share(f64::from(step) + 1.0));
            let middle = bodies(f64::midpoint(from, to));
            let after = bodies(to);
            for (((body, a), (_, m)), (_, b)) in before.iter().zip(&middle).zip(&after) {
                pieces.push(Piece::new(*body, (from, to), a, m, b));
            }
            before = after;
        }
        Self {
            pieces,
            tolerance: motion.path_tolerance(),
            reach: reach(motion, door),
            motion: motion.clone(),
            door: door.clone(),
        }
    }

    /// How near a body that `counts` comes to a block; `None` when it always keeps `enough`, mm.
    ///
    /// The hull of a piece also covers ground between its ends that a turning body never passes. So
    /// a piece that might come nearest is halved until its hull and the body itself, at the ends of
    /// the piece, are equally near to within 0.05 mm: the gap is never too large, and at most
    /// that much and the bulge too small.
    #[must_use]
    pub fn approach(
        &self,
        block: &SectionBlock,
        enough: f64,
        counts: impl Fn(BodyId) -> bool,
    ) -> Option<Approach> {
        self.approach_outline(&corners(block), enough, counts)
    }

    /// The same for a convex outline that stands still, e.g. another door that is open: corners
    /// in the order of its edges, mm.
    #[must_use]
    pub fn approach_outline(
        &self,
        outline: &[SectionPoint],
        enough: f64,
        counts: impl Fn(BodyId) -> bool,
    ) -> Option<Approach> {
        let solid = polygon(outline);
        let block = &SectionBlock::from_points(outline);
        let mut best: Option<Approach> = None;
        let mut open: Vec<(Piece, u8)> = Vec::new();
        for piece in &self.pieces {
            if !counts(piece.body) || !self.may_come_near(piece, block, enough) {
                continue;
            }
            open.push((piece.clone(), 0));
            while let Some((piece, depth)) = open.pop() {
                if !self.may_come_near(&piece, block, enough) {
                    continue;
                }
                let slack = self.tolerance + piece.bulge;
                let gap = (apart(&piece.hull, &solid) - slack).max(0.0);
                if gap >= enough || best.is_some_and(|best| gap >= best.gap) {
                    continue;
                }
                let ends = apart(&piece.start, &solid).min(apart(&piece.end, &solid));
                let settled = (ends - self.tolerance).max(0.0) - gap <= SETTLED;
                if settled || depth == MOST_HALVINGS {
                    best = Some(Approach {
                        gap,
                        body: piece.body,
                        s: piece.from,
                    });
                } else if let Some([first, second]) = self.halves(&piece) {
                    // The earlier half is looked at first.
                    open.push((second, depth + 1));
                    open.push((first, depth + 1));
                }
            }
        }
        best
    }

    fn may_come_near(&self, piece: &Piece, block: &SectionBlock, enough: f64) -> bool {
        let by = self.tolerance + piece.bulge + enough;
        piece.bounds.inflate(by, by).intersects(block)
    }

    fn halves(&self, piece: &Piece) -> Option<[Piece; 2]> {
        let middle = f64::midpoint(piece.from, piece.to);
        let at = |s: f64| body_at(&self.motion, &self.door, piece.body, s);
        let m = at(middle)?;
        let quarter = at(f64::midpoint(piece.from, middle))?;
        let three = at(f64::midpoint(middle, piece.to))?;
        Some([
            Piece::new(piece.body, (piece.from, middle), &piece.start, &quarter, &m),
            Piece::new(piece.body, (middle, piece.to), &m, &three, &piece.end),
        ])
    }

    /// The block that all bodies keep within on the whole way, path tolerance and bulge added, mm.
    #[must_use]
    pub fn bounds(&self) -> SectionBlock {
        let bounds = self.pieces.iter().map(|piece| {
            let by = self.tolerance + piece.bulge;
            piece.bounds.inflate(by, by)
        });
        bounds
            .reduce(|all, it| all.union(&it))
            .unwrap_or_else(SectionBlock::zero)
    }

    /// How far the top edge of the door rises, mm; see [`top_edge_rise`].
    #[must_use]
    pub fn top_edge_rise(&self) -> f64 {
        top_edge_rise(&self.motion, &self.door)
    }

    /// Where on the way a body first comes higher than a height, mm; `None` when it never does.
    #[must_use]
    pub fn first_above(&self, height: f64) -> Option<Extreme> {
        self.pieces
            .iter()
            .find(|piece| piece.bounds.max.y + self.tolerance > height)
            .map(|piece| Extreme {
                value: piece.bounds.max.y,
                s: piece.from,
            })
    }
}

impl Piece {
    fn new(
        body: BodyId,
        (from, to): (f64, f64),
        start: &[SectionPoint],
        middle: &[SectionPoint],
        end: &[SectionPoint],
    ) -> Self {
        // The middle of a short arc is its furthest point from the chord; a tenth more covers
        // paths whose bend changes along the piece.
        let bulge = start
            .iter()
            .zip(middle)
            .zip(end)
            .map(|((a, m), b)| (*m - a.lerp(*b, 0.5)).length())
            .fold(0.0, f64::max)
            * 1.1;
        let points: MultiPoint = start
            .iter()
            .chain(end)
            .map(|point| (point.x, point.y))
            .collect::<Vec<_>>()
            .into();
        let mut hull: Vec<SectionPoint> = points
            .convex_hull()
            .exterior()
            .coords()
            .map(|it| SectionPoint::new(it.x, it.y))
            .collect();
        hull.pop();
        Self {
            body,
            from,
            to,
            bounds: Box2D::from_points(&hull),
            hull,
            bulge,
            start: start.to_vec(),
            end: end.to_vec(),
        }
    }
}

/// All moving bodies at s.
fn bodies_at(motion: &Motion, door: &ClosedDoor, s: f64) -> Vec<(BodyId, Vec<SectionPoint>)> {
    let mut all = outline_at(motion, door, s);
    all.extend(arm_outlines(motion, s, ARM_HALF_WIDTH));
    all
}

fn body_at(motion: &Motion, door: &ClosedDoor, body: BodyId, s: f64) -> Option<Vec<SectionPoint>> {
    bodies_at(motion, door, s)
        .into_iter()
        .find(|(id, _)| *id == body)
        .map(|(_, corners)| corners)
}

/// Distance of an outline from a solid, mm; 0 when they meet.
fn apart(outline: &[SectionPoint], solid: &Polygon) -> f64 {
    let outline = polygon(outline);
    if outline.intersects(solid) {
        0.0
    } else {
        Euclidean.distance(&outline, solid)
    }
}

/// Whether two convex outlines of the section have a point in common.
#[must_use]
pub fn meet(a: &[SectionPoint], b: &[SectionPoint]) -> bool {
    polygon(a).intersects(&polygon(b))
}

/// Smallest distance of two outlines of the section, mm; 0 when they meet.
#[must_use]
pub fn distance(a: &[SectionPoint], b: &[SectionPoint]) -> f64 {
    Euclidean.distance(&polygon(a), &polygon(b))
}

/// The corners of a block, counter-clockwise.
#[must_use]
pub const fn corners(block: &SectionBlock) -> [SectionPoint; 4] {
    [
        block.min,
        SectionPoint::new(block.max.x, block.min.y),
        block.max,
        SectionPoint::new(block.min.x, block.max.y),
    ]
}

fn polygon(corners: &[SectionPoint]) -> Polygon {
    let ring: Vec<Coord> = corners
        .iter()
        .map(|it| Coord { x: it.x, y: it.y })
        .collect();
    Polygon::new(LineString::new(ring), Vec::new())
}
