//! The program: window and command line.

fn main() -> std::process::ExitCode {
    flapwright::cli::main()
}
