//! `flapwright card`: fitting cards as files.

use std::io::{self, Write as _};
use std::path::PathBuf;

use anyhow::{Result, bail};
use clap::{Args, Subcommand};
use flapwright_drawing::card_picture::card_sheet;
use flapwright_export::{SvgOptions, check, svg};
use flapwright_files::library::read_record;
use flapwright_model::card::Card;
use flapwright_model::length::Unit;
use flapwright_model::measure;
use flapwright_rules::plausibility::slips;
use flapwright_rules::plural::count;
use flapwright_rules::proof::{Proof, proof};
use flapwright_words::Speaker;

use super::{BAD_INPUT, FINE, STOPPED, say};

#[derive(Debug, Args)]
pub(super) struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Read cards, try each on its own example and look for slips; ends with 1 if one is not
    /// proved, with 2 if one cannot be read
    Check {
        /// Card files
        #[arg(required = true, value_name = "FILE")]
        files: Vec<PathBuf>,
    },
    /// Print what a card says, or its picture
    Show {
        /// Card file
        file: PathBuf,
        /// Print the card's picture as SVG
        #[arg(long)]
        svg: bool,
        /// Size that the picture shows; the first one without it
        #[arg(long, value_name = "NAME", requires = "svg")]
        size: Option<String>,
        /// Lengths in inches
        #[arg(long)]
        inches: bool,
    },
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    match &arguments.command {
        Command::Check { files } => check_files(files),
        Command::Show {
            file,
            svg,
            size,
            inches,
        } => {
            let card = read_record(file)?.current.card;
            let unit = if *inches {
                Unit::Inch
            } else {
                Unit::Millimetre
            };
            if *svg {
                picture(&card, size.as_deref(), unit)
            } else {
                words(&card, unit)
            }
        }
    }
}

/// Every file is looked at, whatever is wrong with the others.
fn check_files(files: &[PathBuf]) -> Result<u8> {
    let mut worst = FINE;
    for file in files {
        let name = file.display();
        let card = match read_record(file) {
            Ok(record) => record.current.card,
            Err(error) => {
                eprintln!("flapwright: {error}");
                worst = worst.max(BAD_INPUT);
                continue;
            }
        };
        let found = proof(&card);
        let speaker = Speaker::without_names(Unit::Millimetre);
        let words = speaker.say(&found.message());
        say(&format!("{name}: \"{}\", {words}", card.name))?;
        if let Proof::Fails(moved) = &found {
            for it in moved {
                say(&format!("    {}", speaker.say(&it.message)))?;
            }
        }
        let slips = slips(&card);
        for slip in &slips {
            say(&format!(
                "  slip? {}: {}; {}",
                slip.field,
                speaker.say(&slip.message),
                speaker.say(&slip.remedy)
            ))?;
        }
        if !slips.is_empty() {
            say(&format!("  {}", count(slips.len(), "possible slip")))?;
        }
        if !found.is_proved() {
            worst = worst.max(STOPPED);
        }
    }
    Ok(worst)
}

fn words(card: &Card, unit: Unit) -> Result<u8> {
    say(&format!("\"{}\", {}", card.name, card.kind.words()))?;
    if card.invented {
        say("invented for demonstration: do not drill after it")?;
    }
    if !card.maker_text.is_empty() {
        say(&card.maker_text)?;
    }
    say(&Speaker::without_names(unit).say(&proof(card).message()))?;
    for size in &card.sizes {
        say(&format!(
            "  size {}: doors {} to {} high, {} to {} wide",
            size.name,
            measure::length(size.door_height.min, unit),
            measure::length(size.door_height.max, unit),
            measure::length(size.door_width.min, unit),
            measure::length(size.door_width.max, unit)
        ))?;
    }
    Ok(FINE)
}

fn picture(card: &Card, size: Option<&str>, unit: Unit) -> Result<u8> {
    let size = match (size, card.sizes.first()) {
        (Some(name), _) if card.size(name).is_none() => {
            let names: Vec<&str> = card.sizes.iter().map(|it| it.name.as_str()).collect();
            bail!(
                "--size: the card has no size \"{name}\"; it has {}",
                names.join(", ")
            );
        }
        (Some(name), _) => name,
        (None, first) => first.map_or("", |it| it.name.as_str()),
    };
    let sheet = card_sheet(card, size, unit);
    check(&sheet)?;
    let text = svg(&sheet, &SvgOptions::default());
    io::stdout().lock().write_all(text.as_bytes())?;
    Ok(FINE)
}
