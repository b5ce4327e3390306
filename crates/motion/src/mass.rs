//! What a leaf and a door weigh, part by part.
//!
//! Mass is volume times density, with the low, likely and high density of the material table; the
//! spread of a density stands for both the make and the moisture of the stuff. All sizes are
//! finished sizes: bands are part of the leaf's width and height, and what they take up is taken
//! off the panel or the frame behind them.

use flapwright_model::door::{BuildUp, Door, Handle, Infill, Leaf};
use flapwright_model::edges::Edges;
use flapwright_model::material::{Density, MassRange, Material};
use flapwright_model::part::LeafId;

use crate::error::{MotionError, WhichNumber};
use flapwright_model::message::{AsTyped, Word};

/// Density of edge bands, kg/m3: ABS, 1.02 to 1.21 g/cm3 in a plastics trade list; the likely
/// value is the middle of that range.
pub const BAND_DENSITY: Density = Density {
    low: 1020.0,
    likely: 1115.0,
    high: 1210.0,
};

/// Cubic millimetres in a cubic metre.
const CUBIC_MM: f64 = 1e9;

/// One part of a leaf: how heavy it is and where.
#[derive(Debug, Clone, PartialEq)]
pub struct PartMass {
    /// What it is, in plain words.
    pub name: String,
    /// Its mass, kg.
    pub mass: MassRange,
    /// Its middle above the leaf's bottom edge, mm.
    pub centre_up: f64,
    /// Its middle in front of the leaf's back face, mm.
    pub centre_ahead: f64,
    /// Its extent up and down, mm; for its moment of inertia.
    pub extent_up: f64,
    /// Its extent from back to front, mm.
    pub extent_ahead: f64,
}

/// A leaf's mass.
#[derive(Debug, Clone, PartialEq)]
pub struct LeafMass {
    /// Sum of the parts, kg.
    pub mass: MassRange,
    /// The parts.
    pub parts: Vec<PartMass>,
    /// Centre of mass above the leaf's bottom edge, mm, at the likely masses.
    pub centre_up: f64,
    /// Centre of mass in front of the leaf's back face, mm, at the likely masses.
    pub centre_ahead: f64,
}

impl LeafMass {
    /// Sums parts up.
    #[must_use]
    pub fn of(parts: Vec<PartMass>) -> Self {
        let mass: MassRange = parts.iter().map(|part| part.mass).sum();
        let centre = |place: fn(&PartMass) -> f64| {
            let moment: f64 = parts
                .iter()
                .map(|part| part.mass.likely * place(part))
                .sum();
            if mass.likely > 0.0 {
                moment / mass.likely
            } else {
                0.0
            }
        };
        let (centre_up, centre_ahead) = (
            centre(|part| part.centre_up),
            centre(|part| part.centre_ahead),
        );
        Self {
            mass,
            parts,
            centre_up,
            centre_ahead,
        }
    }
}

/// A door's mass.
#[derive(Debug, Clone, PartialEq)]
pub struct DoorMass {
    /// The leaves from the top down as they count: the handle is a part of the lower or only one,
    /// and every part is scaled where a typed mass stands over the build-up.
    pub leaves: Vec<(LeafId, LeafMass)>,
    /// What the build-up gives, kg.
    pub built: MassRange,
    /// What was typed, kg, if anything was.
    pub typed: Option<MassRange>,
    /// What counts, kg: the typed mass, else the built one.
    pub used: MassRange,
}

/// What a leaf weighs, without a handle. `width` and `height` are its finished size, mm.
///
/// # Errors
/// [`MotionError::NoMaterial`] when a material is not in the table; [`MotionError::NotFinite`]
/// and [`MotionError::NotPositive`] for a size or thickness that no leaf can have.
pub fn leaf_mass(
    materials: &[Material],
    leaf: &Leaf,
    width: f64,
    height: f64,
) -> Result<LeafMass, MotionError> {
    let thickness = leaf.build.thickness();
    for (what, value) in [
        (Word("leaf-width"), width),
        (Word("leaf-height"), height),
        (Word("leaf-thickness"), thickness),
    ] {
        positive(what, value)?;
    }
    let mut parts = match &leaf.build {
        BuildUp::Plain { material, .. } => {
            let bands = &leaf.bands;
            let size = [
                width - bands.left - bands.right,
                height - bands.top - bands.bottom,
            ];
            let middle = bands.bottom + size[1] / 2.0;
            let density = density_of(materials, material)?;
            vec![
                Slab {
                    size,
                    thickness,
                    up: middle,
                    ahead: thickness / 2.0,
                }
                .part("panel", density),
            ]
        }
        BuildUp::Framed {
            material,
            members,
            infill,
            ..
        } => framed(
            materials,
            leaf,
            [width, height],
            (material, members, infill),
        )?,
    };
    parts.extend(band_parts(&leaf.bands, [width, height], thickness));
    Ok(LeafMass::of(parts))
}

/// What a door weighs, handle included. `sizes` are the finished width and height of each leaf,
/// mm, from the top down.
///
/// A typed mass stands over the build-up: every part then weighs more or less in the same
/// proportion, so the centre of mass stays where the build-up has it.
///
/// # Errors
/// As [`leaf_mass`]; [`MotionError::NotPositive`] also when a size is missing or the typed mass
/// is not above zero.
pub fn door_mass(
    materials: &[Material],
    door: &Door,
    sizes: &[(f64, f64)],
) -> Result<DoorMass, MotionError> {
    let mut leaves = Vec::new();
    let built_leaves = door.leaves.iter();
    for (index, (id, leaf)) in built_leaves.iter().enumerate() {
        let (width, height) = sizes.get(index).copied().unwrap_or_default();
        let mut parts = leaf_mass(materials, leaf, width, height)?.parts;
        if let (Some(handle), true) = (&door.handle, index + 1 == built_leaves.len()) {
            parts.push(handle_part(handle, leaf.build.thickness()));
        }
        leaves.push((*id, LeafMass::of(parts)));
    }
    let built: MassRange = leaves.iter().map(|(_, leaf)| leaf.mass).sum();
    let typed = door.typed_mass.map(|typed| MassRange {
        low: typed.kilograms - typed.plus_minus,
        likely: typed.kilograms,
        high: typed.kilograms + typed.plus_minus,
    });
    let Some(used) = typed else {
        return Ok(DoorMass {
            leaves,
            built,
            typed,
            used: built,
        });
    };
    for mass in [used.low, built.low] {
        positive(Word("mass-of-the-door"), mass)?;
    }
    let scaled = |mass: MassRange| MassRange {
        low: mass.low * used.low / built.low,
        likely: mass.likely * used.likely / built.likely,
        high: mass.high * used.high / built.high,
    };
    for (_, leaf) in &mut leaves {
        let mut parts = std::mem::take(&mut leaf.parts);
        for part in &mut parts {
            part.mass = scaled(part.mass);
        }
        *leaf = LeafMass::of(parts);
    }
    Ok(DoorMass {
        leaves,
        built,
        typed,
        used,
    })
}

/// A board-shaped piece of a leaf, mm: width and height, thickness, middle above the leaf's
/// bottom edge and in front of its back face.
#[derive(Clone, Copy)]
struct Slab {
    size: [f64; 2],
    thickness: f64,
    up: f64,
    ahead: f64,
}

impl Slab {
    fn volume(&self) -> f64 {
        self.size[0].max(0.0) * self.size[1].max(0.0) * self.thickness
    }

    fn part(self, name: &str, density: Density) -> PartMass {
        self.grooved(None, name, density)
    }

    /// The part that is left when a groove is cut out of it.
    fn grooved(self, groove: Option<Self>, name: &str, density: Density) -> PartMass {
        let cut = groove.map_or(0.0, |groove| groove.volume());
        let left = self.volume() - cut;
        let centre = |own: f64, of_groove: f64| {
            if left > 0.0 {
                (self.volume() * own - cut * of_groove) / left
            } else {
                own
            }
        };
        let kilograms = |density: f64| left.max(0.0) / CUBIC_MM * density;
        let (groove_up, groove_ahead) =
            groove.map_or((self.up, self.ahead), |groove| (groove.up, groove.ahead));
        PartMass {
            name: name.to_owned(),
            mass: MassRange {
                low: kilograms(density.low),
                likely: kilograms(density.likely),
                high: kilograms(density.high),
            },
            centre_up: centre(self.up, groove_up),
            centre_ahead: centre(self.ahead, groove_ahead),
            extent_up: self.size[1],
            extent_ahead: self.thickness,
        }
    }
}

/// Stiles over the full height, rails between them, and what they hold. Bands are taken off the
/// members' outer edges, and the groove or rebate that the infill reaches into off their inner
/// ones.
fn framed(
    materials: &[Material],
    leaf: &Leaf,
    [width, height]: [f64; 2],
    (material, members, infill): (&str, &Edges<f64>, &Infill),
) -> Result<Vec<PartMass>, MotionError> {
    let thickness = leaf.build.thickness();
    let bands = &leaf.bands;
    let frame = density_of(materials, material)?;
    let pane = density_of(materials, &infill.material)?;
    let daylight = [
        width - members.left - members.right,
        height - members.top - members.bottom,
    ];
    positive(Word("daylight-width"), daylight[0])?;
    positive(Word("daylight-height"), daylight[1])?;
    let tongue = infill.tongue;
    let pane_height = daylight[1] + 2.0 * tongue;
    let pane_up = members.bottom + daylight[1] / 2.0;
    let ahead = infill.behind + infill.thickness / 2.0;
    let in_groove = |size: [f64; 2], up: f64| Slab {
        size,
        thickness: infill.thickness,
        up,
        ahead,
    };
    let member = |size: [f64; 2], up: f64| Slab {
        size,
        thickness,
        up,
        ahead: thickness / 2.0,
    };
    let stile = |name: &str, wide: f64, band: f64| {
        let long = height - bands.top - bands.bottom;
        let groove = in_groove([tongue, pane_height], pane_up);
        member([wide - band, long], bands.bottom + long / 2.0).grooved(Some(groove), name, frame)
    };
    let rail = |name: &str, wide: f64, band: f64, up: f64, groove_up: f64| {
        let groove = in_groove([daylight[0], tongue], groove_up);
        member([daylight[0], wide - band], up).grooved(Some(groove), name, frame)
    };
    let above = members.bottom + daylight[1];
    Ok(vec![
        stile("left stile", members.left, bands.left),
        stile("right stile", members.right, bands.right),
        rail(
            "top rail",
            members.top,
            bands.top,
            (above + height - bands.top) / 2.0,
            above + tongue / 2.0,
        ),
        rail(
            "bottom rail",
            members.bottom,
            bands.bottom,
            (members.bottom + bands.bottom) / 2.0,
            members.bottom - tongue / 2.0,
        ),
        in_groove([daylight[0] + 2.0 * tongue, pane_height], pane_up).part("infill", pane),
    ])
}

/// Bands left and right over the full height, top and bottom between them.
fn band_parts(bands: &Edges<f64>, [width, height]: [f64; 2], thickness: f64) -> Vec<PartMass> {
    let between = width - bands.left - bands.right;
    [
        ("left band", [bands.left, height], height / 2.0),
        ("right band", [bands.right, height], height / 2.0),
        ("top band", [between, bands.top], height - bands.top / 2.0),
        ("bottom band", [between, bands.bottom], bands.bottom / 2.0),
    ]
    .into_iter()
    .filter(|(_, size, _)| size[0] > 0.0 && size[1] > 0.0)
    .map(|(name, size, up)| {
        Slab {
            size,
            thickness,
            up,
            ahead: thickness / 2.0,
        }
        .part(name, BAND_DENSITY)
    })
    .collect()
}

fn handle_part(handle: &Handle, leaf_thickness: f64) -> PartMass {
    PartMass {
        name: "handle".to_owned(),
        mass: MassRange::exact(handle.mass),
        centre_up: handle.up,
        centre_ahead: leaf_thickness + handle.projection / 2.0,
        extent_up: 0.0,
        extent_ahead: handle.projection,
    }
}

fn density_of(materials: &[Material], name: &str) -> Result<Density, MotionError> {
    materials
        .iter()
        .find(|material| material.name == name)
        .map(|material| material.density)
        .ok_or_else(|| MotionError::NoMaterial {
            name: name.to_owned(),
        })
}

fn positive(name: Word, value: f64) -> Result<(), MotionError> {
    if !value.is_finite() {
        Err(MotionError::NotFinite {
            number: WhichNumber::Named { name },
        })
    } else if value <= 0.0 {
        Err(MotionError::NotPositive {
            number: WhichNumber::Named { name },
            value: AsTyped(value),
        })
    } else {
        Ok(())
    }
}
