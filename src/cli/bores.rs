//! `flapwright bores`: bore lists and machine files.

use std::path::PathBuf;

use anyhow::Result;
use clap::{Args, ValueEnum};
use flapwright_export::bores::{BoreOptions, DEFAULT_LAYERS, FaceUp, LayerPattern, ZeroCorner};
use flapwright_session::export::ExportChoice;

use super::{FINE, export};

#[derive(Debug, Args)]
pub(super) struct Arguments {
    /// Job file
    job: PathBuf,
    /// Folder to write to; made if only its last part is missing
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
    /// Write one DXF per drilled panel (all three formats when none is named)
    #[arg(long)]
    dxf: bool,
    /// Write the bore list as CSV
    #[arg(long)]
    csv: bool,
    /// Write the bore list as JSON
    #[arg(long)]
    json: bool,
    /// How layers are named: words with {diameter}, {depth}, {face}, {hand}, {panel}, {pass},
    /// {purpose}; the first two must be there
    #[arg(long, value_name = "PATTERN", default_value = DEFAULT_LAYERS)]
    layers: LayerPattern,
    /// Corner of the lying panel from which x (to the right) and y (away from you) run
    #[arg(long, value_name = "CORNER", value_enum, default_value_t = Zero::LowerLeft)]
    zero: Zero,
    /// Which face is up: the drilled inner face, as on the sheets, or the outer one, mirrored
    #[arg(long, value_name = "FACE", value_enum, default_value_t = Up::Inner)]
    face_up: Up,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Zero {
    LowerLeft,
    LowerRight,
    UpperLeft,
    UpperRight,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Up {
    Inner,
    Outer,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let named = arguments.dxf || arguments.csv || arguments.json;
    let bore_options = BoreOptions {
        face_up: match arguments.face_up {
            Up::Inner => FaceUp::Inner,
            Up::Outer => FaceUp::Outer,
        },
        zero: match arguments.zero {
            Zero::LowerLeft => ZeroCorner::LowerLeft,
            Zero::LowerRight => ZeroCorner::LowerRight,
            Zero::UpperLeft => ZeroCorner::UpperLeft,
            Zero::UpperRight => ZeroCorner::UpperRight,
        },
        layers: arguments.layers.clone(),
    };
    let choice = ExportChoice {
        pdf: false,
        dxf: arguments.dxf || !named,
        csv: arguments.csv || !named,
        json: arguments.json || !named,
        bore_options,
        remember: false,
        ..ExportChoice::default()
    };
    for panel in export::run(&arguments.job, &arguments.out, choice)? {
        eprintln!("do not drill {panel}: see `flapwright check`");
    }
    Ok(FINE)
}
