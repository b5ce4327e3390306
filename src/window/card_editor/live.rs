//! What is known of a draft while it is typed: its problems, and a picture as far as it goes.

use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::card_draft::{CardDraft, DraftBodies, DraftEnvelope, DraftPivot, columns};
use flapwright_model::material::Material;
use flapwright_rules::inspection::Inspection;
use flapwright_rules::size_query::sample_job;

use super::board::Problems;

/// What is known of one state of a draft.
#[derive(Debug)]
pub(crate) struct Live {
    /// The card, once it is complete.
    pub(crate) card: Option<Card>,
    /// What keeps it from being one.
    pub(crate) problems: Problems,
    /// A card for the picture: what is typed so far, the rest filled in.
    pub(crate) sketch: Option<Sketch>,
}

/// A card for the picture, on a box.
#[derive(Debug)]
pub(crate) struct Sketch {
    /// The card.
    pub(crate) card: Card,
    /// What is not typed yet and therefore not shown.
    pub(crate) without: Vec<&'static str>,
    /// The size that is shown.
    pub(crate) size: String,
    /// What is true of a box with a door on that card.
    pub(crate) inspection: Inspection,
}

impl Live {
    /// Looks at a draft; the picture shows the size of that row, or of the example.
    pub(crate) fn of(draft: &CardDraft, materials: &[Material], row: usize) -> Self {
        let (card, problems) = match draft.resolve() {
            Ok(card) => (Some(card), Vec::new()),
            Err(problems) => (None, problems),
        };
        let (shown, without) = match &card {
            Some(card) => (Some(card.clone()), Vec::new()),
            None => as_far_as_typed(draft),
        };
        let sketch = shown.and_then(|card| {
            let size = card
                .sizes
                .get(row)
                .or_else(|| card.sizes.first())?
                .name
                .clone();
            let job = sample_job(materials.to_vec(), card.clone(), &size)?;
            if !flapwright_model::validate::validate(&job).is_empty() {
                return None;
            }
            let inspection = flapwright_answer::inspect(&job);
            Some(Sketch {
                card,
                without,
                size,
                inspection,
            })
        });
        Self {
            card,
            problems: Problems::new(problems),
            sketch,
        }
    }
}

/// One part of a draft that is taken over into the picture's card where it is complete.
type Part = (&'static str, fn(&mut CardDraft, &CardDraft));

const PARTS: [Part; 6] = [
    ("body", |to, from| {
        to.envelope.clone_from(&from.envelope);
    }),
    ("adjustment", |to, from| {
        to.adjustment.clone_from(&from.adjustment);
    }),
    ("motion", |to, from| {
        to.linkage.clone_from(&from.linkage);
    }),
    ("top bores", |to, from| {
        to.top_bores.clone_from(&from.top_bores);
    }),
    ("worked example", |to, from| {
        to.example.clone_from(&from.example);
    }),
    ("parts cut to length", |to, from| {
        to.cut_parts.clone_from(&from.cut_parts);
    }),
];

/// The card of what is typed so far, and what is left out.
fn as_far_as_typed(draft: &CardDraft) -> (Option<Card>, Vec<&'static str>) {
    let mut so_far = stand_in(draft);
    let mut without = Vec::new();
    let take = |so_far: &mut CardDraft, take: &dyn Fn(&mut CardDraft)| {
        let mut next = so_far.clone();
        take(&mut next);
        let sound = next.resolve().is_ok();
        if sound {
            *so_far = next;
        }
        sound
    };
    for (name, part) in PARTS {
        if !take(&mut so_far, &|to| part(to, draft)) {
            without.push(name);
        }
    }
    let sizes = |to: &mut CardDraft| {
        to.paper.load_given = draft.paper.load_given;
        to.sizes.clone_from(&draft.sizes);
        to.loads.clone_from(&draft.loads);
        to.springs.clone_from(&draft.springs);
    };
    if !take(&mut so_far, &sizes) {
        without.push("sizes");
    }
    for bore in &draft.side_bores {
        if !take(&mut so_far, &|to| to.side_bores.push(bore.clone())) {
            without.push("some side bores");
            break;
        }
    }
    for group in &draft.door_bores {
        let mut empty = group.clone();
        empty.bores.clear();
        if !take(&mut so_far, &|to| to.door_bores.push(empty.clone())) {
            without.push("some door bores");
            continue;
        }
        for bore in &group.bores {
            let whole = take(&mut so_far, &|to| {
                if let Some(group) = to.door_bores.last_mut() {
                    group.bores.push(bore.clone());
                }
            });
            if !whole {
                without.push("some door bores");
                break;
            }
        }
    }
    without.dedup();
    (so_far.resolve().ok(), without)
}

/// The draft's head and sizes with made-up numbers where none are typed, and nothing else.
fn stand_in(draft: &CardDraft) -> CardDraft {
    let mut plain = CardDraft::blank(draft.kind);
    "(no name yet)".clone_into(&mut plain.name);
    if !draft.name.trim().is_empty() {
        plain.name.clone_from(&draft.name);
    }
    plain.paper = draft.paper.clone();
    plain.sides = draft.sides;
    plain.per = draft.per;
    plain.side_bores.clear();
    plain.top_bores.clear();
    plain.door_bores.clear();
    plain.example = None;
    plain.envelope = DraftEnvelope {
        down_from: zero(),
        down_to: zero(),
        back_from: zero(),
        back_to: zero(),
        inward: zero(),
        ..plain.envelope
    };
    "90".clone_into(&mut plain.linkage.end_angle);
    plain.linkage.bodies = still(draft.kind);
    plain.loads.rows.clear();
    plain.springs.rows.clear();
    plain.sizes = draft.sizes.clone();
    plain.sizes.tidy();
    plain.paper.load_given = flapwright_model::card_draft::LoadGiven::MassOrMoment;
    fill_sizes(&mut plain);
    plain
}

fn zero() -> String {
    "0 mm".to_owned()
}

/// Puts made-up numbers where a size has none.
fn fill_sizes(plain: &mut CardDraft) {
    let made_up = [
        (columns::LOAD_MIN, "1"),
        (columns::LOAD_MAX, "2"),
        (columns::AT_ANGLE, ""),
        (columns::HEIGHT_MIN, "300 mm"),
        (columns::HEIGHT_MAX, "420 mm"),
        (columns::WIDTH_MIN, "400 mm"),
        (columns::WIDTH_MAX, "800 mm"),
        (columns::LEAST_DEPTH, "250 mm"),
        (columns::LEAST_HEIGHT, "200 mm"),
        (columns::TURNS, "1"),
        (columns::FRICTION, "0"),
        (columns::STRUT_FORCE, ""),
    ];
    if plain.sizes.rows.is_empty() {
        plain.sizes.rows.push(vec!["1".to_owned()]);
        plain.sizes.tidy();
    }
    for column in [columns::TURNS, columns::FRICTION] {
        plain.sizes.add_column(column);
    }
    let titles = plain.sizes.titles.clone();
    for (number, row) in plain.sizes.rows.iter_mut().enumerate() {
        for (title, cell) in titles.iter().zip(row.iter_mut()) {
            let known = made_up.iter().find(|(known, _)| known == title);
            let emptied = matches!(title.as_str(), columns::AT_ANGLE | columns::STRUT_FORCE);
            if let Some((_, text)) = known.filter(|_| cell.trim().is_empty() || emptied) {
                (*text).clone_into(cell);
            }
            if title == columns::SIZE && cell.trim().is_empty() {
                *cell = format!("{}", number + 1);
            }
        }
    }
    let names: Vec<String> = (0..plain.sizes.rows.len())
        .map(|row| plain.sizes.under(row, columns::SIZE).to_owned())
        .collect();
    for name in names {
        for angle in ["0", "90"] {
            plain
                .springs
                .rows
                .push([&name, angle, "0", "0"].map(str::to_owned).to_vec());
        }
    }
}

/// Bodies with sound numbers that stand for those not typed yet.
fn still(kind: OpeningKind) -> DraftBodies {
    let pivot = |down: &str, back: &str| DraftPivot {
        down: format!("{down} mm"),
        back: format!("{back} mm"),
    };
    match kind {
        OpeningKind::TopHingedFlap => DraftBodies::FixedAxis {
            axis: pivot("0", "0"),
        },
        OpeningKind::ParallelRisingDoor => DraftBodies::Parallel {
            box_pivot: pivot("100", "150"),
            door_pivot: pivot("200", "10"),
            second_down: "40 mm".to_owned(),
            second_back: "10 mm".to_owned(),
        },
        OpeningKind::FoldingPair => DraftBodies::Folding {
            axis: pivot("0", "0"),
            joint_behind: zero(),
            link_box: pivot("100", "150"),
            link_below_joint: "60 mm".to_owned(),
            link_behind: "20 mm".to_owned(),
        },
        OpeningKind::OverTheTopDoor => DraftBodies::TwoArms {
            box_first: pivot("100", "150"),
            door_first: pivot("150", "10"),
            box_second: pivot("60", "180"),
            door_second: pivot("90", "10"),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_blank_of_every_kind_has_a_picture_and_shows_each_bore_once_it_is_typed() {
        let materials = flapwright_session::shipped::materials().unwrap();
        for kind in OpeningKind::ALL {
            let mut draft = CardDraft::blank(kind);
            let live = Live::of(&draft, &materials, 0);
            let sketch = live.sketch.unwrap_or_else(|| panic!("{kind:?}"));
            assert!(live.card.is_none() && sketch.card.side_bores.is_empty());
            let bore = &mut draft.side_bores[0];
            "40".clone_into(&mut bore.down.by);
            "37".clone_into(&mut bore.back.by);
            "5".clone_into(&mut bore.drill.diameter);
            "12".clone_into(&mut bore.drill.depth);
            let sketch = Live::of(&draft, &materials, 0).sketch.unwrap();
            assert_eq!(sketch.card.side_bores.len(), 1, "{kind:?}");
        }
    }

    #[test]
    fn every_demo_card_is_shown_whole_in_every_size() {
        let materials = flapwright_session::shipped::materials().unwrap();
        for card in flapwright_session::shipped::demo_cards().unwrap() {
            let draft = CardDraft::of_card(&card);
            for (row, size) in card.sizes.iter().enumerate() {
                let sketch = Live::of(&draft, &materials, row).sketch.unwrap();
                assert_eq!(sketch.card, card);
                assert_eq!(sketch.size, size.name);
                assert!(sketch.without.is_empty());
            }
        }
    }
}
