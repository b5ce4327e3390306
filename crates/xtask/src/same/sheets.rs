//! Pages (SVG) of a job.

use std::collections::BTreeMap;

use anyhow::Result;

use super::drawing::{Page, Shape, common_move, page};
use super::output::Output;
use super::tally::{Kind, Tally, pair};

/// Compares the pages of a job: by their titles, then those that show the same, then in order.
///
/// Shapes of drawings are the same to the last digit, or differ. Where the texts of a page differ,
/// there may be more or fewer lines of text above a drawing: one that moved as a whole, and lines
/// of headers and tables, are told apart from differences.
pub(super) fn compare(job: &str, old: &Output, new: &Output, tally: &mut Tally) -> Result<()> {
    let read = |output: &Output| {
        output
            .svg
            .iter()
            .map(|text| page(text))
            .collect::<Result<Vec<_>>>()
    };
    let (old, new) = (read(old)?, read(new)?);
    let title = |page: &Page| page.title.clone();
    let drawn = |page: &Page| exact(page).join("\n");
    let is_list = |page: &Page| page.drawn.is_empty().to_string();
    let (pairs, gone, come) = pair(&old, &new, &[&title, &drawn, &is_list]);
    let (gone_lists, gone): (Vec<_>, Vec<_>) =
        gone.into_iter().partition(|page| page.drawn.is_empty());
    let told = |page: &Page| format!("{job}/{}", page.title);
    tally.count(
        Kind::Pages,
        pairs.len() + gone.len(),
        gone.into_iter().map(told).collect(),
    );
    let lists = gone_lists.into_iter().chain(come).map(told).collect();
    tally.count(Kind::OtherPages, 0, lists);
    for (old, new) in pairs {
        let place = format!("{job}/{}", old.title);
        tally.compare(
            Kind::Texts,
            &place,
            old.texts.iter().cloned(),
            new.texts.iter().cloned(),
        );
        let reworded = old.texts != new.texts;
        let (went, came) = (
            others(&old.drawn, &new.drawn),
            others(&new.drawn, &old.drawn),
        );
        // Bores move all together or not at all.
        let whole = bores(&went) == bores(&old.drawn);
        let moved = common_move(&went, &came).filter(|_| reworded && whole);
        match moved {
            Some((right, down)) if exact(old) != exact(new) => {
                let told = format!("{place}: {right:.4} to the right, {down:.4} down");
                tally.count(Kind::PagesMoved, 1, vec![told]);
                tally.count(Kind::Drawn, old.drawn.len(), Vec::new());
            }
            _ => tally.compare(Kind::Drawn, &place, exact(old), exact(new)),
        }
        let kind = if reworded {
            Kind::RuledMoved
        } else {
            Kind::Ruled
        };
        let ruled = |page: &Page| page.ruled.iter().map(Shape::exact).collect::<Vec<_>>();
        tally.compare(kind, &place, ruled(old), ruled(new));
    }
    Ok(())
}

/// How many shapes are of the layer of bores.
fn bores(shapes: &[Shape]) -> usize {
    shapes.iter().filter(|it| it.is_of("bores")).count()
}

/// The shapes that one page has and the other has not in the same place: a small drawing in the
/// head of a page stays where it is when the drawing below it moves.
fn others(shapes: &[Shape], than: &[Shape]) -> Vec<Shape> {
    let mut there: BTreeMap<String, usize> = BTreeMap::new();
    for shape in than {
        *there.entry(shape.exact()).or_default() += 1;
    }
    let mut stays = |shape: &Shape| match there.get_mut(&shape.exact()) {
        Some(left) if *left > 0 => {
            *left -= 1;
            true
        }
        _ => false,
    };
    shapes
        .iter()
        .filter(|shape| !stays(shape))
        .cloned()
        .collect()
}

/// The shapes of a page's drawings as texts.
fn exact(page: &Page) -> Vec<String> {
    page.drawn.iter().map(Shape::exact).collect()
}
