//! Every message has its text, and every text its message.

#![expect(
    clippy::expect_used,
    clippy::disallowed_methods,
    reason = "a test that lacks its part is to fail; it reads the sources for their words"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use flapwright_model::message::Said;
use flapwright_rules::message::examples;
use flapwright_words::{Language, own_examples};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser::parse;

/// The texts of a language: key, and the names of the arguments that it uses.
fn texts(language: Language) -> BTreeMap<String, BTreeSet<String>> {
    let mut found = BTreeMap::new();
    for source in language.catalogue().sources() {
        let resource = parse(*source).expect("a catalogue that can be read");
        for entry in resource.body {
            let Entry::Message(message) = entry else {
                continue;
            };
            assert!(
                message.value.is_none(),
                "{}: a text without a name",
                message.id.name
            );
            for attribute in message.attributes {
                let key = format!("{}.{}", message.id.name, attribute.id.name);
                let mut used = BTreeSet::new();
                arguments(&attribute.value, &mut used);
                assert!(
                    found.insert(key.clone(), used).is_none(),
                    "{key} stands twice"
                );
            }
        }
    }
    found
}

fn arguments(pattern: &Pattern<&str>, used: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else {
            continue;
        };
        match expression {
            Expression::Inline(it) => inline(it, used),
            Expression::Select { selector, variants } => {
                inline(selector, used);
                for variant in variants {
                    arguments(&variant.value, used);
                }
            }
        }
    }
}

fn inline(it: &InlineExpression<&str>, used: &mut BTreeSet<String>) {
    if let InlineExpression::VariableReference { id } = it {
        used.insert(id.name.to_owned());
    }
}

/// Groups of texts that are looked up one by one, not declared as messages.
const WORDS: [&str; 7] = [
    "finding",
    "list-and",
    "list-plus",
    "list-semicolon",
    "number",
    "quantity",
    "word",
];

fn is_word(key: &str) -> bool {
    key.split_once('.')
        .is_some_and(|(group, _)| WORDS.contains(&group))
}

fn messages() -> Vec<Said> {
    let mut all = examples();
    all.extend(own_examples());
    all
}

#[test]
fn every_message_has_a_text_that_uses_only_its_arguments() {
    let texts = texts(Language::English);
    for said in messages() {
        let used = texts
            .get(said.key)
            .unwrap_or_else(|| panic!("no text for {}", said.key));
        for name in used {
            assert!(
                said.arguments.iter().any(|it| it.name == name),
                "{}: the text uses ${name}, which the message lacks",
                said.key
            );
        }
    }
}

#[test]
fn every_text_belongs_to_a_message() {
    let known: BTreeSet<&str> = messages().iter().map(|it| it.key).collect();
    for key in texts(Language::English).keys() {
        assert!(
            is_word(key) || known.contains(key.as_str()),
            "{key} is said by nobody"
        );
    }
}

/// What stands between two marks in the sources of the crates that give messages.
fn in_sources(mark: &str) -> BTreeSet<String> {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut found = BTreeSet::new();
    for name in ["motion", "rules"] {
        let mut folders = vec![crates.join(name).join("src")];
        while let Some(folder) = folders.pop() {
            for entry in std::fs::read_dir(folder).expect("a folder of sources") {
                let path = entry.expect("an entry").path();
                if path.is_dir() {
                    folders.push(path);
                    continue;
                }
                let text = std::fs::read_to_string(&path).expect("a source");
                for rest in text.split(mark).skip(1) {
                    let (word, _) = rest.split_once('"').expect("a closing mark");
                    found.insert(word.to_owned());
                }
            }
        }
    }
    found
}

#[test]
fn every_word_of_the_sources_is_in_the_catalogue_and_none_is_idle() {
    let texts = texts(Language::English);
    let listed: BTreeSet<String> = texts
        .keys()
        .filter_map(|key| key.strip_prefix("word."))
        .map(str::to_owned)
        .collect();
    let used = in_sources("Word(\"");
    assert_eq!(used.difference(&listed).collect::<Vec<_>>(), [""; 0]);
    assert_eq!(listed.difference(&used).collect::<Vec<_>>(), [""; 0]);
}

#[test]
fn every_watched_number_has_a_name_and_none_is_idle() {
    let texts = texts(Language::English);
    let listed: BTreeSet<&str> = texts
        .keys()
        .filter_map(|key| key.strip_prefix("number."))
        .collect();
    let messages = messages();
    let watched: BTreeSet<&str> = messages
        .iter()
        .flat_map(|said| &said.arguments)
        .filter(|it| it.worse.is_some())
        .map(|it| it.name)
        .collect();
    assert_eq!(listed, watched);
}
