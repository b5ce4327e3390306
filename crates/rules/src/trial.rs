//! A card tried on a plain box: what its picture shows, and what slips are looked for with.

use flapwright_model::card::{Card, Size};
use flapwright_model::door::TypedMass;
use flapwright_model::job::Job;
use flapwright_model::lift::Carries;
use flapwright_model::material::{Density, Material, MaterialClass};
use flapwright_model::validate::validate;

use crate::inspection::{BoxReport, DoorReport};
use crate::placement::place_box;
use crate::size_query::{AskedDoor, job_for};

/// Thickness of the door that is tried, mm.
const THICKNESS: f64 = 19.0;
/// Door heights that are tried, mm, whatever the card says.
const HEIGHTS: (f64, f64) = (60.0, 3000.0);
/// Door widths that are tried, mm, whatever the card says.
const WIDTHS: (f64, f64) = (100.0, 3000.0);
/// Reveals above and below the door of a quick question, mm.
const TWO_REVEALS: f64 = 6.0;

/// A size of a card on a frameless box with 18 mm panels, reveals of 3 mm and a door of 19 mm.
#[derive(Debug, Clone)]
pub struct Trial {
    /// The job with the one box.
    pub job: Job,
    /// The box as placed.
    pub report: BoxReport,
}

impl Trial {
    /// A door of this height, mm, and mass, kg, in the middle of the widths that the size is made
    /// for. Heights and widths that no box has are drawn to the nearest that one has. `None` where
    /// card and door make no sound job.
    #[must_use]
    pub fn new(card: &Card, size: &Size, height: f64, kilograms: f64) -> Option<Self> {
        let height = height.clamp(HEIGHTS.0, HEIGHTS.1);
        let material = Material {
            name: "board".to_owned(),
            class: MaterialClass::Board,
            density: Density {
                low: 700.0,
                likely: 700.0,
                high: 700.0,
            },
            stiffness: None,
            source: String::new(),
        };
        let box_height = match &size.carries {
            Carries::MassByBoxHeight(rows) => {
                let last = rows.last().map_or(height, |row| row.height);
                last.clamp(HEIGHTS.0, HEIGHTS.1)
            }
            Carries::Mass { .. } | Carries::Moment { .. } | Carries::MassByDoorHeight(_) => {
                height + TWO_REVEALS
            }
        };
        let width = f64::midpoint(size.door_width.min, size.door_width.max);
        let door = AskedDoor {
            kind: card.kind,
            width: width.clamp(WIDTHS.0, WIDTHS.1),
            height,
            thickness: THICKNESS,
            material: material.name.clone(),
            mass: Some(TypedMass {
                kilograms,
                plus_minus: 0.0,
            }),
            box_height: Some(box_height),
        };
        let mut job = job_for(vec![material], vec![card.clone()], &door)?;
        let door = job.boxes.first_mut()?.body.door.as_mut()?;
        door.fitting.as_mut()?.size.clone_from(&size.name);
        if !validate(&job).is_empty() {
            return None;
        }
        let report = place_box(&job, job.boxes.first()?);
        Some(Self { job, report })
    }

    /// Lowest and highest door that a size is made for and has a load for, mm.
    #[must_use]
    pub fn door_heights(size: &Size) -> (f64, f64) {
        let (mut low, mut high) = (size.door_height.min, size.door_height.max);
        if let Carries::MassByDoorHeight(rows) = &size.carries
            && let (Some(first), Some(last)) = (rows.first(), rows.last())
        {
            low = low.max(first.height);
            high = high.min(last.height);
        }
        (
            low.clamp(HEIGHTS.0, HEIGHTS.1),
            high.clamp(HEIGHTS.0, HEIGHTS.1),
        )
    }

    /// The door as placed.
    #[must_use]
    pub fn door(&self) -> Option<&DoorReport> {
        self.report.doors().next()
    }
}
