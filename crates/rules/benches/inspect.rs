//! How long the one answer takes on the demo job.

#![expect(clippy::expect_used, reason = "a bench without its job is to fail")]

use flapwright_model::file::read_job;
use flapwright_rules::inspect;

fn main() {
    divan::main();
}

/// Both demo jobs: the clean one, and the one whose tweak raises findings with remedies.
#[divan::bench(args = ["houseboat-galley", "houseboat-galley-tweaked"])]
fn demo(bencher: divan::Bencher<'_, '_>, name: &str) {
    let path = format!(
        "{}/../../assets/demo/{name}.ron",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(path).expect("the demo ships with the program");
    let job = read_job(&text).expect("the demo is sound");
    bencher.bench(|| inspect(divan::black_box(&job)));
}
