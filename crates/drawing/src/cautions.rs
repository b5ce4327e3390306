//! Cautions by context: the one place where they are worded.

/// What a sheet has on it, as far as cautions go.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Context {
    /// The panel is a leaf of a door on a fitting.
    pub leaf: bool,
    /// The panel is part of the box that carries a fitting.
    pub carries_fitting: bool,
    /// The panel itself is glass.
    pub glass_panel: bool,
    /// The panel holds a pane of glass.
    pub glass_pane: bool,
    /// A bore goes through.
    pub through: bool,
    /// There is a blind bore.
    pub blind: bool,
    /// A spring or strut is set by this page.
    pub setting: bool,
    /// Parts are sawn by this page.
    pub cutting: bool,
    /// The box is hung by this page, whatever it carries.
    pub hung: bool,
    /// Nothing is drilled by this page.
    pub assembly: bool,
    /// The page is laid on the work and drilled through.
    pub template: bool,
}

/// The cautions that apply, most dangerous first. Each is one short sentence or two.
#[must_use]
pub fn cautions(context: Context) -> Vec<&'static str> {
    let all = [
        (
            context.template,
            "Measure the 100 mm bar on every page first: if it is not 100 mm long, do not drill.",
        ),
        (
            context.leaf || context.carries_fitting,
            "Stored spring energy: arms without a door can fly up. Hold the door while springs or \
             struts are fitted or set.",
        ),
        (
            context.setting,
            "Set by small steps, the door held by a second person; keep face and hands out of the \
             path of arms and door.",
        ),
        (
            context.glass_panel,
            "Glass: holes are made by the glass works before toughening, never in the shop.",
        ),
        (
            context.glass_pane,
            "Glass pane: keep clamps and drill off it; take it out before drilling if it can be.",
        ),
        (
            context.blind,
            "Set the depth stop and try it in an offcut of the same thickness.",
        ),
        (
            context.through,
            "Drilling through: back the far face with scrap.",
        ),
        (
            context.carries_fitting || context.hung,
            "Fix the box to the wall for its own weight, its load and the pull of the door.",
        ),
        (
            context.cutting,
            "Check sizes against the finished box before sawing doors; use guard, riving knife and \
             push stick at the saw.",
        ),
        (
            !context.setting && !context.cutting && !context.assembly,
            "Clamp the work, protect your eyes, keep sleeves and hair clear of the drill.",
        ),
        (
            context.leaf || context.carries_fitting,
            "Read the fitting's own instructions; where they differ from this sheet, ask before \
             you drill or set.",
        ),
    ];
    all.into_iter()
        .filter(|(applies, _)| *applies)
        .map(|(_, words)| words)
        .collect()
}

/// Printed wherever the job or a card is invented.
pub const INVENTED: &str = "Invented demo data – not a real product";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_caution_comes_with_its_context_only() {
        let plain = cautions(Context::default());
        assert_eq!(plain.len(), 1);
        assert!(plain[0].starts_with("Clamp the work"));
        let glass = cautions(Context {
            glass_pane: true,
            ..Context::default()
        });
        assert!(glass.iter().any(|words| words.starts_with("Glass pane")));
        let leaf = cautions(Context {
            leaf: true,
            ..Context::default()
        });
        assert!(leaf[0].starts_with("Stored spring energy"));
        let through = cautions(Context {
            through: true,
            ..Context::default()
        });
        assert!(
            through
                .iter()
                .any(|words| words.starts_with("Drilling through"))
        );
    }
}
