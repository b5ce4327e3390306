//! Chores of the workspace, each a command of `cargo run -q -p xtask -- COMMAND`.

mod same;
mod tidy;

use std::process::ExitCode;

/// What each command does, printed when none is named.
const USAGE: &str = "\
cargo run -q -p xtask -- COMMAND
  tidy
      proves what DEVELOPERS.md says of the whole tree; exits with status 1 if something is broken
  same OLD NEW [--old-jobs DIR] [--new-jobs DIR] [--texts]
      compares what two programs, or two folders of their output, give for the same jobs;
      exits with status 1 if a bore, a machine file or a drawing differs";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let done = match arguments.split_first() {
        Some((command, rest)) if command == "same" => same::command(rest),
        Some((command, [])) if command == "tidy" => tidy::command(),
        _ => Err(anyhow::anyhow!("{USAGE}")),
    };
    match done {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("{error:#}");
            ExitCode::from(2)
        }
    }
}
