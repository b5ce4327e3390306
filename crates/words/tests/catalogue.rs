//! Every message has its text, and every text its message.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use flapwright_rules::message::keys;
use flapwright_words::{Language, own_keys};
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

#[test]
fn every_message_has_a_text_that_uses_only_its_arguments() {
    let texts = texts(Language::English);
    for key in keys().chain(own_keys()) {
        let used = texts
            .get(key.key)
            .unwrap_or_else(|| panic!("no text for {}", key.key));
        for name in used {
            assert!(
                key.arguments.contains(&name.as_str()),
                "{}: the text uses ${name}, which the message lacks",
                key.key
            );
        }
    }
}

#[test]
fn every_text_belongs_to_a_message() {
    let known: BTreeSet<&str> = keys().chain(own_keys()).map(|it| it.key).collect();
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
fn every_watched_number_has_a_name() {
    let texts = texts(Language::English);
    let names: BTreeSet<&str> = texts
        .keys()
        .filter_map(|key| key.strip_prefix("number."))
        .collect();
    let arguments: BTreeSet<&str> = keys().flat_map(|key| key.arguments).copied().collect();
    for name in &names {
        assert!(arguments.contains(name), "number.{name} is no argument");
    }
}
