//! The texts of a language.

use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use unic_langid::LanguageIdentifier;

/// A language that the program speaks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Language {
    /// English.
    #[default]
    English,
}

impl Language {
    /// The texts of that language.
    #[must_use]
    pub fn catalogue(self) -> &'static Catalogue {
        match self {
            Self::English => &ENGLISH,
        }
    }
}

static ENGLISH: LazyLock<Catalogue> = LazyLock::new(|| {
    Catalogue::read(
        "en",
        &[
            include_str!("../../../assets/words/en/cards.ftl"),
            include_str!("../../../assets/words/en/findings.ftl"),
            include_str!("../../../assets/words/en/numbers.ftl"),
            include_str!("../../../assets/words/en/places.ftl"),
            include_str!("../../../assets/words/en/remedies.ftl"),
            include_str!("../../../assets/words/en/sizes.ftl"),
            include_str!("../../../assets/words/en/words.ftl"),
        ],
    )
});

/// Texts by key.
pub struct Catalogue {
    bundle: FluentBundle<FluentResource>,
    sources: Vec<&'static str>,
}

impl Catalogue {
    fn read(language: &str, sources: &[&'static str]) -> Self {
        // It chooses between singular and plural.
        let language = language.parse::<LanguageIdentifier>().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Isolation marks are for text of mixed direction; they would be boxes on a sheet.
        bundle.set_use_isolating(false);
        for source in sources {
            // What cannot be read is left out; the tests read every text.
            let resource =
                FluentResource::try_new((*source).to_owned()).unwrap_or_else(|(rest, _)| rest);
            bundle.add_resource_overriding(resource);
        }
        Self {
            bundle,
            sources: sources.to_vec(),
        }
    }

    /// The files that it is read from, as Fluent.
    #[must_use]
    pub fn sources(&self) -> &[&'static str] {
        &self.sources
    }

    /// The text of a key `message.attribute`; `None` where there is none, or where it needs an
    /// argument that is not among `arguments`.
    #[must_use]
    pub fn text(&self, key: &str, arguments: &FluentArgs<'_>) -> Option<String> {
        let (message, attribute) = key.split_once('.')?;
        let message = self.bundle.get_message(message)?;
        let pattern = message.get_attribute(attribute)?.value();
        let mut errors = Vec::new();
        let text = self
            .bundle
            .format_pattern(pattern, Some(arguments), &mut errors);
        errors.is_empty().then(|| text.into_owned())
    }
}
