//! Sets of pages as a whole.

#[test]
fn probe() {}
