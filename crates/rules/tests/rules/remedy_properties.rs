//! Scratch.
#[test]
fn dump() {
    let job = flapwright_model::file::read_job(include_str!(
        "../../../../assets/demo/houseboat-galley.ron"
    ))
    .expect("the demo job");
    for it in flapwright_rules::inspect(&job).findings {
        println!(
            "{:?} {} {} {:?}",
            it.severity, it.check, it.message, it.details
        );
    }
}
