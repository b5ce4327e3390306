//! `flapwright sizes`: which size of fitting for a door, with or without a job.

use std::path::PathBuf;

use anyhow::{Context, Result, bail};
use clap::{Args, ValueEnum};
use flapwright_answer::inspect;
use flapwright_model::card::OpeningKind;
use flapwright_model::door::TypedMass;
use flapwright_model::job::Job;
use flapwright_model::length::{Unit, parse_length};
use flapwright_model::measure::Measure;
use flapwright_model::validate::validate;
use flapwright_motion::sizes::Verdict;
use flapwright_rules::mechanics::mechanics;
use flapwright_rules::size_query::{AskedDoor, job_for};
use flapwright_session::{job_file, shipped};
use flapwright_words::Speaker;
use serde::Serialize;

use super::{FINE, say};

#[derive(Debug, Args)]
pub(super) struct Arguments {
    /// Job file; without one, ask with --kind and --door
    #[arg(required_unless_present = "kind", conflicts_with_all = ["kind", "door"])]
    job: Option<PathBuf>,
    /// How the door opens
    #[arg(long, requires = "door", value_name = "KIND")]
    kind: Option<Kind>,
    /// Width and height of the door, e.g. 900x400 or 36"x16"
    #[arg(long, value_name = "WxH", allow_hyphen_values = true)]
    door: Option<String>,
    /// Material of the door, by its name in the material table
    #[arg(long, value_name = "M", conflicts_with = "mass")]
    material: Option<String>,
    /// Thickness of the door
    #[arg(long, value_name = "T", default_value = "19 mm")]
    thickness: String,
    /// Mass of the door in kilograms
    #[arg(long, value_name = "KG")]
    mass: Option<f64>,
    /// Outer height of the box, for cards that go by it
    #[arg(long, value_name = "H")]
    box_height: Option<String>,
    /// Print the verdicts as JSON
    #[arg(long)]
    json: bool,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Kind {
    /// Top-hinged flap
    Flap,
    /// Parallel-rising door
    Parallel,
    /// Folding pair
    Folding,
    /// Over-the-top door
    OverTop,
}

impl From<Kind> for OpeningKind {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Flap => Self::TopHingedFlap,
            Kind::Parallel => Self::ParallelRisingDoor,
            Kind::Folding => Self::FoldingPair,
            Kind::OverTop => Self::OverTheTopDoor,
        }
    }
}

/// The verdicts on one door.
#[derive(Debug, Serialize)]
struct OfDoor {
    #[serde(rename = "box")]
    name: String,
    opening: usize,
    kind: &'static str,
    mass_low_kg: f64,
    mass_likely_kg: f64,
    mass_high_kg: f64,
    verdicts: Vec<OfSize>,
    #[serde(skip)]
    mass: String,
}

/// One verdict.
#[derive(Debug, Serialize)]
struct OfSize {
    card: String,
    size: String,
    pieces: u8,
    chosen: bool,
    verdict: &'static str,
    centred: Option<f64>,
    reasons: Vec<String>,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let job = match &arguments.job {
        Some(path) => job_file::read(path)?,
        None => quick(arguments)?,
    };
    let doors = doors(&job, arguments.job.is_none());
    if doors.is_empty() {
        bail!("no door of this job has a fitting and a mass; choose a fitting for a door first");
    }
    if arguments.json {
        say(&serde_json::to_string_pretty(&doors)?)?;
        return Ok(FINE);
    }
    for door in &doors {
        print(door)?;
    }
    Ok(FINE)
}

fn doors(job: &Job, quick: bool) -> Vec<OfDoor> {
    let inspection = inspect(job);
    let mut doors = Vec::new();
    for (wall_box, report) in job.boxes.iter().zip(&inspection.boxes) {
        for door in report.doors() {
            let Some(found) = mechanics(job, wall_box, report, door.id) else {
                continue;
            };
            let choice = wall_box.door(door.id).and_then(|it| it.fitting.as_ref());
            let choice = choice.and_then(|it| Some((job.card_by_id(it.card)?, &it.size)));
            let chosen = |verdict: &Verdict| {
                !quick
                    && choice.is_some_and(|(card, size)| {
                        card.name == verdict.card && *size == verdict.size
                    })
            };
            doors.push(OfDoor {
                name: report.name.clone(),
                opening: report.number_of_door(door.id),
                kind: door.kind.map_or("", OpeningKind::words),
                mass_low_kg: door.mass.low,
                mass_likely_kg: door.mass.likely,
                mass_high_kg: door.mass.high,
                mass: Measure::Mass
                    .range([door.mass.low, door.mass.likely, door.mass.high], job.unit),
                verdicts: found
                    .verdicts
                    .iter()
                    .map(|it| of_size(it, chosen(it), job.unit))
                    .collect(),
            });
        }
    }
    doors
}

fn of_size(verdict: &Verdict, chosen: bool, unit: Unit) -> OfSize {
    OfSize {
        card: verdict.card.clone(),
        size: verdict.size.clone(),
        pieces: verdict.pieces,
        chosen,
        verdict: verdict.grade.words(),
        centred: verdict.centred.is_finite().then_some(verdict.centred),
        reasons: verdict
            .reasons
            .iter()
            .map(|reason| Speaker::without_names(unit).say(reason))
            .collect(),
    }
}

fn print(door: &OfDoor) -> Result<()> {
    say(&format!(
        "\"{}\", opening {} from the top: {}, door {}",
        door.name, door.opening, door.kind, door.mass
    ))?;
    for verdict in &door.verdicts {
        let chosen = if verdict.chosen { ", chosen" } else { "" };
        let pieces = if verdict.pieces == 1 {
            "one piece"
        } else {
            "a pair"
        };
        say(&format!(
            "  {}: {}, size {} ({pieces}{chosen})",
            verdict.verdict, verdict.card, verdict.size
        ))?;
        for reason in &verdict.reasons {
            say(&format!("      {reason}"))?;
        }
    }
    Ok(())
}

fn quick(arguments: &Arguments) -> Result<Job> {
    let (Some(kind), Some(size)) = (arguments.kind, &arguments.door) else {
        bail!("name a job file, or ask with --kind and --door");
    };
    let materials = shipped::materials()?;
    let material = match &arguments.material {
        Some(name) => name.clone(),
        None => materials
            .first()
            .map(|it| it.name.clone())
            .unwrap_or_default(),
    };
    if !materials.iter().any(|it| it.name == material) {
        let names: Vec<&str> = materials.iter().map(|it| it.name.as_str()).collect();
        bail!(
            "--material: \"{material}\" is not in the table; it has {}",
            names.join(", ")
        );
    }
    if arguments.material.is_none() && arguments.mass.is_none() {
        bail!("say what the door weighs with --mass, or what it is made of with --material");
    }
    let Some((width, height)) = size.split_once(['x', 'X', '×']) else {
        bail!("--door: \"{size}\" is no width and height; write 900x400");
    };
    let length = |what: &str, text: &str| {
        parse_length(text, Unit::Millimetre).with_context(|| format!("{what} \"{text}\""))
    };
    let box_height = arguments.box_height.as_deref();
    let door = AskedDoor {
        kind: kind.into(),
        width: length("--door: width", width)?,
        height: length("--door: height", height)?,
        thickness: length("--thickness", &arguments.thickness)?,
        material,
        mass: arguments.mass.map(|kilograms| TypedMass {
            kilograms,
            plus_minus: 0.0,
        }),
        box_height: box_height
            .map(|text| length("--box-height", text))
            .transpose()?,
    };
    let Some(job) = job_for(materials, shipped::demo_cards()?, &door) else {
        bail!("no card is for a {}", door.kind.words());
    };
    let problems = validate(&job);
    if let Some(problem) = problems.first() {
        bail!("this door cannot be: {problem}");
    }
    Ok(job)
}
