//! `flapwright explain`: the page of a check.

use anyhow::{Result, bail};
use clap::Args;
use flapwright_rules::checks::{CHECKS, check};

use super::{FINE, say};

#[derive(Debug, Args)]
pub(super) struct Arguments {
    /// Name of a check; all are listed without one
    check: Option<String>,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let Some(name) = &arguments.check else {
        for check in CHECKS {
            say(&format!("{:<28} {}", check.name, check.summary()))?;
        }
        return Ok(FINE);
    };
    let Some(check) = check(name) else {
        bail!("there is no check \"{name}\"; `flapwright explain` lists them all");
    };
    say(&check.manual())?;
    Ok(FINE)
}
