//! The galley with twenty troubles: what is found in it, and what is left when every safe remedy is
//! applied. Each trouble is named in the job's file beside its box or card; the lists here were made
//! from those comments by hand.

use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_rules::finding::Finding;
use flapwright_rules::{apply_safe_remedies, inspect};

/// What must be found: check and place. One line for each finding, in the order of the troubles.
const TROUBLES: &[(&str, &str)] = &[
    // 1
    ("bores-off-fitting", "ropes"),
];

fn troubles() -> Job {
    read_job(include_str!(
        "../../../../assets/demo/houseboat-galley-troubles.ron"
    ))
    .expect("the galley with troubles is sound")
}

fn listed(findings: &[Finding]) -> Vec<(&str, &str)> {
    let mut list: Vec<(&str, &str)> = findings
        .iter()
        .map(|it| (it.check, it.place.as_str()))
        .collect();
    list.sort_unstable();
    list
}

#[test]
fn every_trouble_is_found_and_nothing_else() {
    let inspection = inspect(&troubles());
    for it in &inspection.findings {
        println!(
            "{:?} {} | {} | {} | {:?}",
            it.severity,
            it.check,
            it.place,
            it.message,
            it.remedies
                .iter()
                .map(|r| (&r.title, r.safe, &r.effect))
                .collect::<Vec<_>>()
        );
        for d in &it.details {
            println!("      {d}");
        }
    }
    let run = apply_safe_remedies(&troubles());
    println!("APPLIED {:#?}", run.applied);
    for it in &run.inspection.findings {
        println!(
            "LEFT {:?} {} | {} | {}",
            it.severity, it.check, it.place, it.message
        );
    }
    assert_eq!(listed(&inspection.findings), TROUBLES);
}
