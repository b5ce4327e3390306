//! What one drilling sheet says, in words and numbers, before anything is placed on paper.

use flapwright_model::door::{Grain, Side};
use flapwright_model::job::Job;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{LeafId, Part};
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::{BoxReport, Face, FaceBands, Inspection, PanelReport};
use flapwright_rules::machine_frame;

use super::holes::{Hole, hole};
use crate::cautions::{Context, cautions};
use crate::grain;
use crate::job_sheets::head_foot::match_words;

/// An edge of the drawn face by its own axes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum FaceEdge {
    UStart,
    UEnd,
    VStart,
    VEnd,
}

impl FaceEdge {
    pub(crate) const ALL: [Self; 4] = [Self::UStart, Self::UEnd, Self::VStart, Self::VEnd];

    pub(crate) const fn band(self, bands: FaceBands) -> f64 {
        match self {
            Self::UStart => bands.u_start,
            Self::UEnd => bands.u_end,
            Self::VStart => bands.v_start,
            Self::VEnd => bands.v_end,
        }
    }
}

/// The name of an edge of a drawn face; the edges that distances run from are in capitals.
pub(crate) const fn edge_name(face: Face, edge: FaceEdge) -> &'static str {
    use FaceEdge::{UEnd, UStart, VEnd, VStart};
    match (face, edge) {
        (Face::SideInner(_), UStart) => "FRONT EDGE",
        (Face::SideInner(_), UEnd) => "back edge",
        (Face::SideInner(_), VStart) => "TOP END",
        (Face::SideInner(_), VEnd) => "bottom end",
        (Face::Underside, UStart) => "BOX-LEFT END",
        (Face::Underside, UEnd) => "box-right end",
        (Face::Underside, VStart) => "FRONT EDGE",
        (Face::Underside, VEnd) => "back edge",
        (Face::DoorBack, UStart) => "BOX-RIGHT EDGE",
        (Face::DoorBack, UEnd) => "box-left edge",
        (Face::DoorBack, VStart) => "TOP EDGE",
        (Face::DoorBack, VEnd) => "bottom edge",
        (Face::Plain, UStart) => "left",
        (Face::Plain, UEnd) => "right",
        (Face::Plain, VStart) => "top",
        (Face::Plain, VEnd) => "bottom",
    }
}

/// An edge at which a broken panel goes on in its next part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Break {
    pub(crate) edge: FaceEdge,
    /// The letter of the match mark.
    pub(crate) mark: char,
    /// From zero, mm.
    pub(crate) at: f64,
}

/// Where the main axis of a fitting is, seen from the leaf that it carries, door closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SheetAxis {
    /// Below the drawn top edge, mm; negative: above it.
    pub(crate) v: f64,
    /// Behind the leaf's back face, mm; negative: before it.
    pub(crate) behind: f64,
}

/// The axis of the fitting of a leaf's own door; not for a leaf below the one that it carries.
fn axis_of(report: &BoxReport, panel: &PanelReport, removed: FaceBands) -> Option<SheetAxis> {
    let Part::Leaf { door, leaf } = panel.id.part else {
        return None;
    };
    let door = report.door(door)?;
    let axis = door.axis?;
    let closed = door.closed.leaves.iter().find(|it| it.id == leaf)?;
    (leaf != LeafId::Lower).then_some(SheetAxis {
        v: closed.top - axis.y - removed.v_start,
        behind: closed.back_o - axis.x,
    })
}

/// One panel with all that its sheet needs.
#[derive(Debug, Clone)]
pub(crate) struct Facts<'a> {
    pub(crate) job: &'a Job,
    pub(crate) report: &'a BoxReport,
    pub(crate) panel: &'a PanelReport,
    /// Size of the drawn outline, mm: finished, or cut where it is drilled before banding.
    pub(crate) size: [f64; 2],
    /// Where the drawn part of a broken panel begins, mm from zero along u and v; zero for a panel
    /// drawn whole.
    pub(crate) start: [f64; 2],
    /// How the drawn part of a broken panel goes on at its edges.
    pub(crate) breaks: Vec<Break>,
    /// Whether the drawn outline is the cut size.
    pub(crate) cut: bool,
    pub(crate) holes: Vec<Hole>,
    /// The main axis of the fitting that carries this leaf.
    pub(crate) axis: Option<SheetAxis>,
    /// Findings about this panel, worst first.
    pub(crate) findings: Vec<&'a Finding>,
}

impl<'a> Facts<'a> {
    pub(crate) fn new(
        job: &'a Job,
        inspection: &'a Inspection,
        report: &'a BoxReport,
        panel: &'a PanelReport,
    ) -> Self {
        let bands = machine_frame::bands_to_come(panel);
        let findings: Vec<&Finding> = inspection
            .findings
            .iter()
            .map(|finding| &**finding)
            .filter(|finding| machine_frame::is_open_for(finding, panel))
            .collect();
        let holes = panel
            .bores
            .iter()
            .map(|bore| hole(bore, panel, &findings))
            .collect();
        Self {
            job,
            report,
            panel,
            size: machine_frame::size(panel),
            start: [0.0, 0.0],
            breaks: Vec::new(),
            cut: machine_frame::is_cut(panel),
            holes,
            axis: axis_of(report, panel, bands),
            findings,
        }
    }

    /// The bands that the drawn outline lacks.
    pub(crate) fn removed(&self) -> FaceBands {
        machine_frame::bands_to_come(self.panel)
    }

    /// Whether u runs to the left on paper: only on a right side, whose front edge is at the
    /// right of the picture.
    pub(crate) fn u_runs_left(&self) -> bool {
        machine_frame::u_runs_left(self.panel)
    }

    /// The edge's name on this face.
    pub(crate) const fn edge_name(&self, edge: FaceEdge) -> &'static str {
        edge_name(self.panel.face, edge)
    }

    /// The break at an edge, if the panel goes on there.
    pub(crate) fn break_at(&self, edge: FaceEdge) -> Option<Break> {
        self.breaks.iter().copied().find(|it| it.edge == edge)
    }

    /// Whether the zero corner is on the drawn part.
    pub(crate) fn has_zero(&self) -> bool {
        self.start == [0.0, 0.0]
    }

    /// What is said of an edge's band; nothing where it has none. At a break: where that is.
    pub(crate) fn band_words(&self, edge: FaceEdge) -> Option<String> {
        if let Some(it) = self.break_at(edge) {
            return Some(format!("at {}", show_mm_tenth(it.at)));
        }
        let band = edge.band(self.panel.bands);
        let size = show_mm_tenth(band);
        match (band > 0.0, self.cut) {
            (false, _) => None,
            (true, false) => Some(format!("banded {size}")),
            (true, true) => Some(format!("band {size} comes later")),
        }
    }

    /// Name and band of an edge.
    pub(crate) fn edge_words(&self, edge: FaceEdge) -> String {
        let name = self.edge_title(edge);
        match self.band_words(edge) {
            Some(band) => format!("{name}, {band}"),
            None => name,
        }
    }

    /// Name of an edge or of the match mark at a break.
    pub(crate) fn edge_title(&self, edge: FaceEdge) -> String {
        self.break_at(edge).map_or_else(
            || self.edge_name(edge).to_owned(),
            |it| format!("break, mark {}", it.mark),
        )
    }

    /// The headline: panel and drawn face.
    pub(crate) fn headline(&self) -> String {
        let name = self.panel.name.to_uppercase();
        match self.panel.face {
            Face::SideInner(_) | Face::Plain => name,
            Face::Underside => format!("{name}: UNDERSIDE"),
            Face::DoorBack => format!("{name}: BACK"),
        }
    }

    /// Which face is seen and how the panel lies.
    pub(crate) const fn face_words(&self) -> &'static str {
        match self.panel.face {
            Face::SideInner(Side::Left) => {
                "Inner face up. Top end away from you, front edge at the LEFT."
            }
            Face::SideInner(Side::Right) => {
                "Inner face up. Top end away from you, front edge at the RIGHT."
            }
            Face::Underside => {
                "Underside up: seen from below. Front edge away from you, box-left end at the LEFT."
            }
            Face::DoorBack => {
                "Back up, front face down: seen from the back. Top edge away from you, box-left at \
                 the RIGHT."
            }
            Face::Plain => "",
        }
    }

    /// What the distances run from.
    pub(crate) fn edges_words(&self) -> &'static str {
        if self.cut {
            "Drilled BEFORE banding: all distances run from CUT edges."
        } else if FaceEdge::ALL
            .iter()
            .any(|edge| edge.band(self.panel.bands) > 0.0)
        {
            "Drilled AFTER banding: distances run from FINISHED edges, with band."
        } else {
            "All distances run from FINISHED edges."
        }
    }

    /// Whether the middle of a hole lies on the drawn part.
    pub(super) fn lies_on_it(&self, hole: &Hole) -> bool {
        let [start_u, start_v] = self.start;
        let [size_u, size_v] = self.size;
        (start_u..=start_u + size_u).contains(&hole.u)
            && (start_v..=start_v + size_v).contains(&hole.v)
    }

    /// What must be said where a hole lies outside the panel.
    pub(super) fn outside_words(&self) -> Option<&'static str> {
        let all = self.holes.iter().all(|hole| self.lies_on_it(hole));
        (!all).then_some("Holes outside the panel are not drawn: see the hole table.")
    }

    /// Size, thickness, material, grain, hole count.
    pub(crate) fn stuff_words(&self) -> String {
        let class = match self.panel.class {
            MaterialClass::Board => "board",
            MaterialClass::SolidWood => "solid wood",
            MaterialClass::Glass => "glass",
            MaterialClass::Metal => "metal",
            MaterialClass::Plastic => "plastic",
        };
        let grain = match self.panel.grain {
            Grain::None => "no grain".to_owned(),
            Grain::Upright | Grain::Across => {
                format!("grain {}", grain::of_panel(self.panel).words())
            }
        };
        let count = self.holes.len();
        let holes = if count == 1 {
            "1 hole".to_owned()
        } else {
            format!("{count} holes")
        };
        format!(
            "{} thick, {} ({class}), {grain}, {holes}",
            show_mm_tenth(self.panel.thickness),
            self.panel.material
        )
    }

    /// Where the fitting's axis is, in words.
    pub(crate) fn axis_words(&self) -> Option<String> {
        let axis = self.axis?;
        let line = if self.shows_axis() {
            " (long-dashed dotted line)"
        } else {
            ""
        };
        let upright = if axis.v < 0.0 {
            format!("{} above the top edge", show_mm_tenth(-axis.v))
        } else {
            format!("{} below the top edge", show_mm_tenth(axis.v))
        };
        let deep = if axis.behind < 0.0 {
            format!("{} before this face", show_mm_tenth(-axis.behind))
        } else {
            format!("{} behind this face", show_mm_tenth(axis.behind))
        };
        Some(format!(
            "Axis of the fitting, door closed{line}: {upright}, {deep}"
        ))
    }

    /// Whether the axis crosses the drawn face.
    pub(crate) fn shows_axis(&self) -> bool {
        self.axis
            .is_some_and(|axis| (0.0..=self.size[1]).contains(&(axis.v - self.start[1])))
    }

    /// How the findings stand, when there are any: `2 stops, 1 caution open for this panel or its door`.
    pub(crate) fn findings_words(&self) -> Option<String> {
        let count = |severity: Severity| {
            self.findings
                .iter()
                .filter(|finding| finding.severity == severity)
                .count()
        };
        let say = |severity: Severity| match count(severity) {
            0 => None,
            1 => Some(format!("1 {}", severity.word())),
            n => Some(format!("{n} {}s", severity.word())),
        };
        let counts: Vec<String> = [Severity::Stop, Severity::Caution, Severity::Note]
            .into_iter()
            .filter_map(say)
            .collect();
        if counts.is_empty() {
            return None;
        }
        let warning = if count(Severity::Stop) > 0 {
            "DO NOT DRILL: "
        } else {
            ""
        };
        Some(format!(
            "{warning}{} open for this panel or its door",
            counts.join(", ")
        ))
    }

    /// Whether a number on this sheet comes from an invented job or card.
    pub(crate) fn invented(&self) -> bool {
        machine_frame::is_invented(self.job, self.report, self.panel)
    }

    /// The fittings whose bores are on this panel, in words, each once.
    pub(crate) fn fittings(&self) -> Vec<&str> {
        let mut names: Vec<&str> = Vec::new();
        for door in machine_frame::fitted_doors(self.panel) {
            if let Some(door) = self.report.door(door)
                && !door.fitting.is_empty()
                && !names.contains(&door.fitting.as_str())
            {
                names.push(&door.fitting);
            }
        }
        names
    }

    /// The cautions that apply.
    pub(crate) fn cautions(&self) -> Vec<&'static str> {
        cautions(self.caution_context())
    }

    /// What this panel has on it, as far as cautions go.
    pub(crate) fn caution_context(&self) -> Context {
        let leaf = matches!(self.panel.id.part, Part::Leaf { .. });
        let fitted = machine_frame::fitted_doors(self.panel).next().is_some();
        let pane = self
            .panel
            .infill
            .as_ref()
            .is_some_and(|i| i.class == MaterialClass::Glass);
        Context {
            leaf: leaf && fitted,
            carries_fitting: !leaf && fitted,
            glass_panel: self.panel.class == MaterialClass::Glass,
            glass_pane: pane,
            through: self.holes.iter().any(|hole| hole.depth.is_none()),
            blind: self.holes.iter().any(|hole| hole.depth.is_some()),
            ..Context::default()
        }
    }

    /// Revision of the job and fingerprint of the bores.
    pub(crate) fn match_words(&self) -> String {
        let own = flapwright_rules::fingerprint::fingerprint(self.panel);
        match_words(&self.job.title_block.revision, &own)
    }
}
