//! The search for fields by what they are called and what they mean.

use super::info::Info;
use super::reference::{Field, FieldRef};

/// The fields that all these words are said of, the likeliest first: those that are called so, then
/// those whose meaning says so. Case does not matter, and no word finds nothing.
#[must_use]
pub fn find(words: &str) -> Vec<Field> {
    let words: Vec<String> = words.split_whitespace().map(str::to_lowercase).collect();
    let mut found: Vec<(Likely, Field)> = Field::all()
        .filter_map(|field| Some((likely(field.info(), &field.name(), &words)?, field)))
        .collect();
    // Stable, so that what is equally likely stays in the order of the tables.
    found.sort_by_key(|it| it.0);
    found.into_iter().map(|it| it.1).collect()
}

/// The same among fields of certain parts, likeliest first.
#[must_use]
pub fn find_among(words: &str, fields: Vec<FieldRef>) -> Vec<FieldRef> {
    let likely = find(words);
    let place = |field: &FieldRef| likely.iter().position(|it| *it == field.field());
    let mut found: Vec<(usize, FieldRef)> = fields
        .into_iter()
        .filter_map(|field| Some((place(&field)?, field)))
        .collect();
    found.sort_by_key(|it| it.0);
    found.into_iter().map(|it| it.1).collect()
}

/// How likely a field is the one that is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Likely {
    /// Its name begins with the words.
    Begins,
    /// Its name has all the words.
    Named,
    /// Its name and its meaning together have them.
    Meant,
}

fn likely(info: &Info, name: &str, words: &[String]) -> Option<Likely> {
    let first = words.first()?;
    let name = format!("{} {}", name.to_lowercase(), info.label.to_lowercase());
    let all = format!("{name} {} {}", info.meaning.to_lowercase(), info.path);
    let have = |text: &str| words.iter().all(|word| text.contains(word.as_str()));
    if have(&name) && name.starts_with(first.as_str()) {
        Some(Likely::Begins)
    } else if have(&name) {
        Some(Likely::Named)
    } else {
        have(&all).then_some(Likely::Meant)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::edges::Edge;
    use crate::field::{DoorField, HeadField};

    #[test]
    fn what_is_called_so_comes_before_what_only_means_so() {
        let found = find("reveal");
        assert_eq!(
            found.first(),
            Some(&Field::Door(DoorField::Reveal(Edge::Left)))
        );
        let tweak = Field::Door(DoorField::Tweak(Edge::Top));
        assert!(found.contains(&tweak), "its meaning speaks of reveals");
        let uneven = found
            .iter()
            .position(|it| *it == Field::Head(HeadField::MostUneven));
        assert!(
            uneven < found.iter().position(|it| *it == tweak),
            "{found:?}"
        );
    }

    #[test]
    fn fields_of_certain_parts_come_in_the_same_order() {
        let ceiling = FieldRef::Head(HeadField::Ceiling);
        let reach = FieldRef::Head(HeadField::HighestReach);
        let head = FieldRef::Head(HeadField::HeadHeight);
        let among = vec![reach, ceiling, head];
        assert_eq!(find_among("ceiling", among.clone()), [ceiling]);
        let found = find_among("height", among);
        assert_eq!(found, [head, reach, ceiling], "two only mean a height");
    }

    #[test]
    fn all_words_must_be_there_and_case_does_not_matter() {
        assert_eq!(
            find("Reveal TOP").first(),
            Some(&Field::Door(DoorField::Reveal(Edge::Top)))
        );
        assert_eq!(find("reveal zebra"), []);
        assert_eq!(find("  "), []);
    }
}
