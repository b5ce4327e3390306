//! The drawing of one box: front view, upright and level section, heights.

use euclid::default::{Rect, Vector2D};
use flapwright_model::length::{Unit, show_length, show_mm_tenth};
use flapwright_model::material::MaterialClass;
use flapwright_rules::inspection::{BoxReport, DoorReport};

use super::box_heights;
use super::head_foot::{Head, INSIDE, foot, pieces};
use super::setup::SheetSetup;
use crate::brush::{Brush, Lettering};
use crate::cautions::{Context, cautions};
use crate::dimension::{Axis, Chain, Stretch, chain};
use crate::draft::{Draft, box_title};
use crate::hatch;
use crate::list::{Across, Along, At, DisplayList};
use crate::opening_mark;
use crate::page_kind::PageKind;
use crate::paper::Paper;
use crate::pen::{Ink, Layer};
use crate::scale::Scale;
use crate::views::{ViewOptions, elevation, hatchings, plan, section};

/// Between views, mm.
const GAP: f64 = 8.0;
/// Room for the name below a view, mm.
const NAME: f64 = 6.0;
/// Height of the words at the foot, mm (ISO 3098 series).
const SMALL: f64 = 1.8;

/// Below this scale overlays and reveals are said in words: their figures would crowd the view.
const LEAST_DETAILED: f64 = 0.04;

/// The three views at one scale, each in its own frame.
struct Views {
    front: DisplayList,
    upright: DisplayList,
    level: DisplayList,
    /// What the section could not show.
    far: Option<String>,
}

/// How the views stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Arrangement {
    /// Upright section right of the front view, level section below it.
    Corner,
    /// All three side by side.
    Row,
    /// Level section right of the front view, upright section below both.
    Below,
    /// All three below each other.
    Stack,
    /// Front view and level section below each other.
    FrontAndLevel,
    /// Front view and level section side by side.
    FrontBesideLevel,
    /// The upright section alone.
    Upright,
}

impl Arrangement {
    /// All views on one page.
    const WHOLE: [Self; 4] = [Self::Corner, Self::Row, Self::Below, Self::Stack];

    /// All but the upright section on one page.
    const FRONT: [Self; 2] = [Self::FrontAndLevel, Self::FrontBesideLevel];

    /// What the title of the page says of it.
    const fn words(self) -> &'static str {
        match self {
            Self::Corner | Self::Row | Self::Below | Self::Stack => "box",
            Self::FrontAndLevel | Self::FrontBesideLevel => "box, front",
            Self::Upright => "box, section",
        }
    }
}

/// Where a set of views goes.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Choice {
    scale: Scale,
    paper: Paper,
    arrangement: Arrangement,
}

/// The page of a box at the largest scale at which its views fit; two pages where that gives a
/// larger scale.
pub(super) fn pages(setup: &SheetSetup<'_>, report: &BoxReport) -> Vec<Draft> {
    let whole = largest(setup, report, &Arrangement::WHOLE);
    let parts = [
        largest(setup, report, &Arrangement::FRONT),
        largest(setup, report, &[Arrangement::Upright]),
    ];
    let ratio = |choice: &Choice| choice.scale.ratio();
    let [first, second] = &parts;
    if ratio(first).min(ratio(second)) <= ratio(&whole) + 1e-12 {
        return vec![page(setup, report, whole)];
    }
    parts
        .into_iter()
        .map(|choice| page(setup, report, choice))
        .collect()
}

fn largest(setup: &SheetSetup<'_>, report: &BoxReport, arrangements: &[Arrangement]) -> Choice {
    let found = setup.fit.scales().find_map(|scale| {
        let views = views(setup, report, scale);
        setup.fit.papers.iter().find_map(|paper| {
            let body = frame(
                &mut DisplayList::new(),
                setup,
                report,
                (*paper, scale),
                &views,
            );
            let fits = |arrangement: &&Arrangement| {
                let set = arrange(&views, **arrangement);
                let size = set.bounds().unwrap_or_default().size;
                size.width <= body.width() && size.height <= body.height()
            };
            let arrangement = *arrangements.iter().find(fits)?;
            Some(Choice {
                scale,
                paper: *paper,
                arrangement,
            })
        })
    });
    // The smallest scale of the list shows any sound box on any paper.
    found.unwrap_or(Choice {
        scale: Scale::new(1, 20_000),
        paper: setup.list_paper(),
        arrangement: Arrangement::Upright,
    })
}

fn page(setup: &SheetSetup<'_>, report: &BoxReport, choice: Choice) -> Draft {
    let views = views(setup, report, choice.scale);
    let mut list = DisplayList::new();
    let on = (choice.paper, choice.scale);
    let body = frame(&mut list, setup, report, on, &views);
    let set = arrange(&views, choice.arrangement);
    let bounds = set.bounds().unwrap_or_default();
    list.append_shifted(&set, body.center() - bounds.center());
    Draft {
        kind: PageKind::Box,
        box_id: Some(report.id),
        part: None,
        title: box_title(&report.name, choice.arrangement.words()),
        paper: choice.paper,
        list,
        scale: Some(choice.scale),
    }
}

fn views(setup: &SheetSetup<'_>, report: &BoxReport, scale: Scale) -> Views {
    let options = ViewOptions {
        scale: scale.ratio(),
        unit: Unit::Millimetre,
        mark: setup.job.settings.opening_mark,
        ..ViewOptions::default()
    };
    let mut upright = section(report, &options);
    let bounds = upright.bounds().unwrap_or_default();
    let far = box_heights::draw(&mut upright, setup.job, report, scale.ratio(), bounds);
    let detailed = has_detail(scale);
    let mut front = elevation(
        report,
        &ViewOptions {
            show_dimensions: detailed,
            ..options.clone()
        },
    );
    if !detailed {
        outer_size(&mut front, report, scale.ratio());
    }
    let mut views = Views {
        front,
        upright,
        level: plan(report, &options),
        far,
    };
    let moves = report.doors().any(|door| door.motion().is_some());
    name(&mut views.front, "Front view, doors closed");
    let words = if moves {
        "Upright section, door closed and open"
    } else {
        "Upright section"
    };
    name(&mut views.upright, words);
    name(&mut views.level, "Level section, seen from above");
    views
}

/// Whether overlays and reveals are dimensioned in the front view at this scale.
fn has_detail(scale: Scale) -> bool {
    scale.ratio() >= LEAST_DETAILED
}

/// Width and height of the box alone.
fn outer_size(list: &mut DisplayList, report: &BoxReport, ratio: f64) {
    let [width, height, _] = report.outer;
    let bounds = list.bounds().unwrap_or_default();
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    for (axis, from, length) in [
        (Axis::Level, bounds.min_y(), width),
        (Axis::Upright, bounds.min_x(), height),
    ] {
        let one = Stretch::new(0.0, length * ratio, show_length(length, Unit::Millimetre));
        let row = Chain {
            axis,
            line_at: from - 9.0,
            from,
            stretches: vec![one],
            up_to: None,
        };
        chain(list, brush, &row);
    }
}

/// Writes the view's name below it.
fn name(list: &mut DisplayList, words: &str) {
    let bounds = list.bounds().unwrap_or_default();
    let at = At::new(bounds.center().x, bounds.min_y() - NAME + 1.0);
    let how = Lettering::new(2.5)
        .bold()
        .held(Along::Middle, Across::Baseline);
    Brush::new(Layer::Notes, Ink::Plain).text(list, at, words, how);
}

fn arrange(views: &Views, arrangement: Arrangement) -> DisplayList {
    let of = |list: &DisplayList| list.bounds().unwrap_or_default();
    let (front, upright, level) = (of(&views.front), of(&views.upright), of(&views.level));
    let mut set = match arrangement {
        Arrangement::Upright => return views.upright.clone(),
        Arrangement::Corner
        | Arrangement::Row
        | Arrangement::Below
        | Arrangement::Stack
        | Arrangement::FrontAndLevel
        | Arrangement::FrontBesideLevel => views.front.clone(),
    };
    // Front view and upright section share their heights where they are side by side.
    let beside = Vector2D::new(front.max_x() + GAP - upright.min_x(), 0.0);
    let level_beside = Vector2D::new(
        front.max_x() + GAP - level.min_x(),
        front.min_y() - level.min_y(),
    );
    let level_below = Vector2D::new(0.0, front.min_y() - GAP - level.max_y());
    match arrangement {
        Arrangement::Corner => {
            set.append_shifted(&views.upright, beside);
            // Under the section too only where their widths meet.
            let clear = level.max_x() <= upright.min_x() + beside.x - GAP;
            let low = if clear {
                front.min_y()
            } else {
                front.min_y().min(upright.min_y())
            };
            let down = Vector2D::new(0.0, low - GAP - level.max_y());
            set.append_shifted(&views.level, down);
        }
        Arrangement::Row => {
            set.append_shifted(&views.upright, beside);
            let x = beside.x + upright.max_x() + GAP - level.min_x();
            let y = front.max_y() - level.max_y();
            set.append_shifted(&views.level, Vector2D::new(x, y));
        }
        Arrangement::FrontBesideLevel => set.append_shifted(&views.level, level_beside),
        Arrangement::Below => {
            set.append_shifted(&views.level, level_beside);
            let both = of(&set);
            let x = both.center().x - upright.center().x;
            let y = both.min_y() - GAP - upright.max_y();
            set.append_shifted(&views.upright, Vector2D::new(x, y));
        }
        Arrangement::Stack => {
            set.append_shifted(&views.level, level_below);
            let x = front.center().x - upright.center().x;
            let y = level.min_y() + level_below.y - GAP - upright.max_y();
            set.append_shifted(&views.upright, Vector2D::new(x, y));
        }
        Arrangement::FrontAndLevel => set.append_shifted(&views.level, level_below),
        Arrangement::Upright => {}
    }
    set
}

/// Head and foot of the page; gives back the room between them.
fn frame(
    list: &mut DisplayList,
    setup: &SheetSetup<'_>,
    report: &BoxReport,
    (paper, scale): (Paper, Scale),
    views: &Views,
) -> Rect<f64> {
    let space = paper.drawing_space();
    let [width, height, depth] = report.outer.map(show_mm_tenth);
    let mut lead = vec![format!(
        "Box {width} wide, {height} high, {depth} deep, doors and face frame not counted."
    )];
    for door in report.doors() {
        if let Some(kind) = door.kind {
            let (w, h) = (
                door.edges.right - door.edges.left,
                door.edges.top - door.edges.bottom,
            );
            let laps = if has_detail(scale) {
                String::new()
            } else {
                lap_words(door)
            };
            lead.push(format!(
                "Door {} × {}: {} on {}.{laps}",
                show_mm_tenth(w),
                show_mm_tenth(h),
                kind.words(),
                door.fitting
            ));
        }
    }
    lead.extend(views.far.clone());
    let headline = format!("“{}”, {}", report.name, pieces(report.quantity));
    let head = Head {
        headline: &headline,
        lead: &lead,
        invented: setup.invented(),
        free_right: 0.0,
    };
    let top = head.draw(list, paper);
    let legend = legend(setup, report);
    let low = foot(list, paper, &cautions(context(report)), &legend, SMALL);
    Rect::from_points([
        At::new(space.min_x() + INSIDE, low + 2.0),
        At::new(space.max_x() - INSIDE, top),
    ])
}

fn lap_words(door: &DoorReport) -> String {
    let laps = door.overlays.map(|edge, overlay| {
        if overlay < 0.0 {
            format!("{} gap {}", edge.word(), show_mm_tenth(-overlay))
        } else {
            format!("{} {}", edge.word(), show_mm_tenth(overlay))
        }
    });
    let all = [laps.left, laps.right, laps.top, laps.bottom];
    format!(" Overlays without tweaks: {}.", all.join(", "))
}

fn context(report: &BoxReport) -> Context {
    let fitted = report.doors().any(|door| door.kind.is_some());
    let class = |wanted| report.panels.iter().any(|panel| panel.class == wanted);
    Context {
        leaf: fitted,
        carries_fitting: fitted,
        hung: true,
        glass_panel: class(MaterialClass::Glass),
        glass_pane: report.panels.iter().any(|panel| {
            panel
                .infill
                .as_ref()
                .is_some_and(|infill| infill.class == MaterialClass::Glass)
        }),
        assembly: true,
        ..Context::default()
    }
}

fn legend(setup: &SheetSetup<'_>, report: &BoxReport) -> Vec<String> {
    let hatching = hatch::legend(hatchings(report));
    let mut words = vec![
        format!("Hatching: {}.", hatching.join("; ")),
        "Long-dashed double-dotted: the door fully open. Dashed: hidden edges and the fitting's \
         body. Thin curve: way of the door's lower front edge."
            .to_owned(),
        "Heights at the left of the section are above the floor.".to_owned(),
    ];
    let kinds: Vec<_> = report.doors().filter_map(|door| door.kind).collect();
    if !kinds.is_empty() {
        let with_arrow = kinds.into_iter().any(opening_mark::rises);
        words.push(opening_mark::legend(
            setup.job.settings.opening_mark,
            with_arrow,
        ));
    }
    words
}
