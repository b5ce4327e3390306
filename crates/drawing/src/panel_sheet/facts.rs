//! What one drilling sheet says, in words and numbers, before anything is placed on paper.

use flapwright_model::cabinet::Drilled;
use flapwright_model::door::{Grain, SideTie};
use flapwright_model::job::Job;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::Part;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::{
    BoreSource, BoxReport, Face, FaceBands, Inspection, PanelReport,
};

use super::holes::{Hole, concerns, hole};
use crate::cautions::{Context, cautions};

/// An edge of the drawn face by its own axes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum FaceEdge {
    UStart,
    UEnd,
    VStart,
    VEnd,
}

impl FaceEdge {
    pub(super) const ALL: [Self; 4] = [Self::UStart, Self::UEnd, Self::VStart, Self::VEnd];

    pub(super) const fn band(self, bands: FaceBands) -> f64 {
        match self {
            Self::UStart => bands.u_start,
            Self::UEnd => bands.u_end,
            Self::VStart => bands.v_start,
            Self::VEnd => bands.v_end,
        }
    }
}

/// One panel with all that its sheet needs.
#[derive(Debug, Clone)]
pub(super) struct Facts<'a> {
    pub(super) job: &'a Job,
    pub(super) report: &'a BoxReport,
    pub(super) panel: &'a PanelReport,
    /// Size of the drawn outline, mm: finished, or cut where it is drilled before banding.
    pub(super) size: [f64; 2],
    /// Whether the drawn outline is the cut size.
    pub(super) cut: bool,
    pub(super) holes: Vec<Hole>,
    /// Findings about this panel, worst first.
    pub(super) findings: Vec<&'a Finding>,
}

impl<'a> Facts<'a> {
    pub(super) fn new(
        job: &'a Job,
        inspection: &'a Inspection,
        report: &'a BoxReport,
        panel: &'a PanelReport,
    ) -> Self {
        let cut = panel.drilled == Drilled::BeforeBanding;
        let bands = if cut {
            panel.bands
        } else {
            FaceBands::default()
        };
        let findings: Vec<&Finding> = inspection
            .findings
            .iter()
            .filter(|finding| concerns(finding, panel))
            .collect();
        let holes = panel
            .bores
            .iter()
            .map(|bore| hole(bore, panel, bands, &findings))
            .collect();
        Self {
            job,
            report,
            panel,
            size: [
                panel.size[0] - bands.u_start - bands.u_end,
                panel.size[1] - bands.v_start - bands.v_end,
            ],
            cut,
            holes,
            findings,
        }
    }

    /// The bands that the drawn outline lacks.
    pub(super) fn removed(&self) -> FaceBands {
        if self.cut {
            self.panel.bands
        } else {
            FaceBands::default()
        }
    }

    /// Whether u runs to the left on paper: only on a right side, whose front edge is at the
    /// right of the picture.
    pub(super) fn u_runs_left(&self) -> bool {
        self.panel.face == Face::SideInner(SideTie::Right)
    }

    /// The edge's name on this face.
    pub(super) const fn edge_name(&self, edge: FaceEdge) -> &'static str {
        use FaceEdge::{UEnd, UStart, VEnd, VStart};
        match (self.panel.face, edge) {
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

    /// What is said of an edge's band; nothing where it has none.
    pub(super) fn band_words(&self, edge: FaceEdge) -> Option<String> {
        let band = edge.band(self.panel.bands);
        let size = show_mm_tenth(band);
        match (band > 0.0, self.cut) {
            (false, _) => None,
            (true, false) => Some(format!("banded {size}")),
            (true, true) => Some(format!("band {size} comes later")),
        }
    }

    /// Name and band of an edge.
    pub(super) fn edge_words(&self, edge: FaceEdge) -> String {
        let name = self.edge_name(edge);
        self.band_words(edge)
            .map_or_else(|| name.to_owned(), |band| format!("{name}, {band}"))
    }

    /// The headline: panel and drawn face.
    pub(super) fn headline(&self) -> String {
        let name = self.panel.name.to_uppercase();
        match self.panel.face {
            Face::SideInner(_) | Face::Plain => name,
            Face::Underside => format!("{name}: UNDERSIDE"),
            Face::DoorBack => format!("{name}: BACK"),
        }
    }

    /// Which face is seen and how the panel lies.
    pub(super) const fn face_words(&self) -> &'static str {
        match self.panel.face {
            Face::SideInner(SideTie::Left) => {
                "Inner face up. Top end away from you, front edge at the LEFT."
            }
            Face::SideInner(SideTie::Right) => {
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
    pub(super) fn edges_words(&self) -> &'static str {
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

    /// Size, thickness, material, grain, hole count.
    pub(super) fn stuff_words(&self) -> String {
        let class = match self.panel.class {
            MaterialClass::Board => "board",
            MaterialClass::SolidWood => "solid wood",
            MaterialClass::Glass => "glass",
            MaterialClass::Metal => "metal",
            MaterialClass::Plastic => "plastic",
        };
        let grain = match (self.panel.grain, self.panel.face) {
            (Grain::None, _) => "no grain",
            (Grain::Upright, Face::SideInner(_) | Face::DoorBack | Face::Plain) => {
                "grain up and down"
            }
            (Grain::Upright, Face::Underside) | (Grain::Across, Face::SideInner(_)) => {
                "grain front to back"
            }
            (Grain::Across, _) => "grain left to right",
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

    /// How the findings stand, when there are any: `2 stops, 1 caution open for this panel or its door`.
    pub(super) fn findings_words(&self) -> Option<String> {
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
    pub(super) fn invented(&self) -> bool {
        self.job.invented
            || self.holes_from_openings().any(|opening| {
                self.card_of(opening)
                    .is_some_and(|name| self.job.card(name).is_some_and(|card| card.invented))
            })
    }

    fn holes_from_openings(&self) -> impl Iterator<Item = usize> + '_ {
        self.panel
            .bores
            .iter()
            .filter_map(|bore| match bore.source {
                BoreSource::Fitting { opening, .. } => Some(opening),
                BoreSource::AsDrilled { .. }
                | BoreSource::Recorded
                | BoreSource::SystemRow
                | BoreSource::Handle { .. } => None,
            })
    }

    fn card_of(&self, opening: usize) -> Option<&str> {
        let door = self
            .job
            .boxes
            .get(self.report.box_index)?
            .openings
            .get(opening)?
            .door
            .as_ref()?;
        door.fitting.as_ref().map(|choice| choice.card.as_str())
    }

    /// The fittings whose bores are on this panel, in words, each once.
    pub(super) fn fittings(&self) -> Vec<&str> {
        let mut names: Vec<&str> = Vec::new();
        for opening in self.holes_from_openings() {
            let door = self
                .report
                .openings
                .get(opening)
                .and_then(|found| found.door.as_ref());
            if let Some(door) = door
                && !door.fitting.is_empty()
                && !names.contains(&door.fitting.as_str())
            {
                names.push(&door.fitting);
            }
        }
        names
    }

    /// The cautions that apply.
    pub(super) fn cautions(&self) -> Vec<&'static str> {
        let leaf = matches!(self.panel.id.part, Part::Leaf { .. });
        let fitted = self.holes_from_openings().next().is_some();
        let pane = self
            .panel
            .infill
            .as_ref()
            .is_some_and(|i| i.class == MaterialClass::Glass);
        cautions(Context {
            leaf: leaf && fitted,
            carries_fitting: !leaf && fitted,
            glass_panel: self.panel.class == MaterialClass::Glass,
            glass_pane: pane,
            through: self.holes.iter().any(|hole| hole.depth.is_none()),
            blind: self.holes.iter().any(|hole| hole.depth.is_some()),
        })
    }
}
