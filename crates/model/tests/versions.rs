//! What is told of a job's text goes by the version that it names first: a file of a later version
//! is told to be too new, whatever else this program cannot read in it.

use flapwright_model::file::{ReadError, read_job};
use flapwright_model::job::FILE_VERSION;

#[test]
fn a_later_version_is_told_even_where_the_rest_cannot_be_read() {
    let found = FILE_VERSION + 1;
    for rest in ["", ", drawers: [(glide: \"x\")]", ", boxes: 7"] {
        let told = read_job(&format!("(version: {found}{rest})"));
        assert_eq!(told, Err(ReadError::TooNew { found }), "{rest}");
    }
}

#[test]
fn a_text_without_a_version_or_of_none_that_ever_was_is_refused_where_it_breaks() {
    for text in ["(name: \"a\")", "(version: 0)", "(version: \"2\")", "(", ""] {
        let told = read_job(text);
        assert!(matches!(told, Err(ReadError::Text { .. })), "{text}");
    }
}
