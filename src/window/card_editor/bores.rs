//! The steps with bores: a row for each, with the datum of each distance under its number.

use std::borrow::Cow;

use egui::Ui;
use flapwright_model::card::LeafEdge;
use flapwright_model::card_draft::{
    AcrossDatum, BackDatum, CardDraft, DownDatum, DraftDoorBore, DraftDoorGroup, DraftEdgeRange,
    DraftSpread, DraftTopBore, DraftTopGroup, Grid,
};
use flapwright_model::field::{
    Choice, Choices, DraftDoorBoreField, DraftField, DraftSideBoreField, DraftTopBoreField,
    EdgeRangeField, Fields, SpreadField, Value,
};
use flapwright_model::part::LeafId;

use super::board::Board;
use super::rows::{cells, take_cells};
use super::table::{Column, Outcome, Table, table_ui};
use crate::window::tokens::{bold, tokens};

/// Widths of the columns: two distances, diameter, depth, what it is for, pass.
const WIDTHS: [f32; 6] = [140.0, 140.0, 72.0, 72.0, 140.0, 38.0];

/// The fields of a kind of bore that stand in its table.
trait BoreFields: Fields {
    /// The columns: the two distances, then what is drilled.
    const COLUMNS: [Self; 6];
    /// Where the two distances count from.
    const DATUMS: [Self; 2];
}

impl BoreFields for DraftSideBoreField {
    const COLUMNS: [Self; 6] = Self::COLUMNS;
    const DATUMS: [Self; 2] = [Self::DownFrom, Self::BackFrom];
}

impl BoreFields for DraftTopBoreField {
    const COLUMNS: [Self; 6] = Self::COLUMNS;
    const DATUMS: [Self; 2] = [Self::AcrossFrom, Self::BackFrom];
}

impl BoreFields for DraftDoorBoreField {
    const COLUMNS: [Self; 6] = Self::COLUMNS;
    const DATUMS: [Self; 2] = [Self::AcrossFrom, Self::DownFrom];
}

/// What the two distances of the bores of a list may count from.
type Datums = [Vec<Choice>; 2];

fn listed<T: Choices>(datums: &[T]) -> Vec<Choice> {
    datums
        .iter()
        .filter_map(|it| it.choice())
        .copied()
        .collect()
}

/// A table of bores; the outcome says which row is chosen.
fn bores_ui<F>(
    ui: &mut Ui,
    board: &mut Board<'_>,
    (path, name): (&str, &str),
    datums: &Datums,
    bores: &mut Vec<F::Part>,
) -> Outcome
where
    F: BoreFields,
    F::Part: Default,
{
    let fields = F::COLUMNS;
    let mut columns: Vec<Column> = fields
        .iter()
        .zip(WIDTHS)
        .map(|(field, width)| Column {
            meaning: field.info().meaning,
            ..Column::new(field.info().label, width)
        })
        .collect();
    for (column, datums) in columns.iter_mut().zip(datums) {
        column.datums = datums.iter().map(|it| it.label).collect();
    }
    let mut grid = Grid::new(columns.iter().map(|column| column.title.clone()));
    grid.rows = bores.iter().map(|it| cells(it, &fields)).collect();
    let field = |row: usize, column: usize| {
        let path_of = |field: &F| format!("{path}[{row}]{}", field.path());
        fields.get(column).map(path_of).unwrap_or_default()
    };
    // A further bore is mostly drilled like the one before it.
    let new_row = |grid: &Grid, at: usize| {
        let before = at.checked_sub(1).and_then(|row| grid.rows.get(row));
        let mut row = before.cloned().unwrap_or_default();
        row.iter_mut().take(2).for_each(String::clear);
        row
    };
    let sheet = Table {
        path,
        name,
        columns,
        field: &field,
        new_row: &new_row,
        datums: bores
            .iter()
            .map(|bore| numbers::<F>(bore, datums).to_vec())
            .collect(),
    };
    let outcome = table_ui(ui, board, &sheet, &mut grid);
    if outcome.changed {
        take::<F>(bores, datums, &grid, &outcome);
    }
    outcome
}

/// The numbers of a bore's datums in their lists; past the end where one is not in it.
fn numbers<F: BoreFields>(bore: &F::Part, datums: &Datums) -> [usize; 2] {
    let number = |(field, list): (F, &Vec<Choice>)| {
        let Some(Value::Choice(name)) = field.get(bore) else {
            return list.len();
        };
        let at = list.iter().position(|it| it.name == name);
        at.unwrap_or(list.len())
    };
    let [first, second] = F::DATUMS;
    [number((first, &datums[0])), number((second, &datums[1]))]
}

/// A new bore; one that follows another counts from that.
fn new_bore<F>(follows: bool) -> F::Part
where
    F: BoreFields,
    F::Part: Default,
{
    let mut bore = F::Part::default();
    for field in F::DATUMS.into_iter().filter(|_| follows) {
        // All datums have this one.
        let _set = field.set(&mut bore, &Value::Choice(Cow::Borrowed("HoleBefore")));
    }
    bore
}

/// Takes the cells of a table over into its bores.
fn take<F>(bores: &mut Vec<F::Part>, datums: &Datums, grid: &Grid, outcome: &Outcome)
where
    F: BoreFields,
    F::Part: Default,
{
    if let Some(at) = outcome.inserted {
        bores.insert(at.min(bores.len()), new_bore::<F>(at > 0));
    }
    if let Some(at) = outcome.removed.filter(|at| *at < bores.len()) {
        bores.remove(at);
    }
    let before = bores.len();
    bores.resize_with(grid.rows.len(), || new_bore::<F>(before > 0));
    for (row, bore) in bores.iter_mut().enumerate() {
        take_cells(bore, &F::COLUMNS, grid, row);
    }
    if let Some((row, column, number)) = outcome.datum
        && let Some(bore) = bores.get_mut(row)
        && let Some(field) = F::DATUMS.get(column)
        && let Some(datum) = datums.get(column).and_then(|list| list.get(number))
    {
        let _set = field.set(bore, &Value::Choice(Cow::Borrowed(datum.name)));
    }
}

/// Bores in the side.
pub(super) fn side_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let datums = [
        listed(DownDatum::on_side(draft.kind)),
        listed(&BackDatum::ALL),
    ];
    bores_ui::<DraftSideBoreField>(
        ui,
        board,
        ("side_bores", "Side bores"),
        &datums,
        &mut draft.side_bores,
    );
    let counted = draft
        .side_bores
        .iter()
        .any(|bore| bore.down.from == DownDatum::SideTopEnd);
    if counted {
        ui.add_space(4.0);
        board.field(ui, "", draft, DraftField::TopThickness);
    }
    hint_ui(ui);
}

/// What may be typed, and the keys.
fn hint_ui(ui: &mut Ui) {
    ui.add_space(6.0);
    for text in [
        "A distance is a length (37, 1-7/16\", 37 mm), or a column of the sizes table: A, A + 32. \
         A depth may be \"through\".",
        "F4 changes the datum, Ctrl+D takes the cell above, Ctrl+Enter adds a row that counts from \
         the hole before.",
    ] {
        ui.add(
            egui::Label::new(
                egui::RichText::new(text)
                    .small()
                    .color(tokens(ui).text_soft),
            )
            .wrap(),
        );
    }
}

/// Bores above the opening.
pub(super) fn top_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let mut gone = None;
    for (i, group) in draft.top_bores.iter_mut().enumerate() {
        let at = format!("top_bores[{i}]");
        let out = group_head(ui, &format!("Group {}", i + 1));
        if spread_ui(ui, board, &at, &mut group.spread) || out {
            gone = Some(i);
        }
        let spread = group.spread.is_some();
        let datums = [
            listed(AcrossDatum::choices(spread, false)),
            listed(&BackDatum::ALL),
        ];
        let path = format!("{at}.bores");
        bores_ui::<DraftTopBoreField>(ui, board, (&path, "Top bores"), &datums, &mut group.bores);
        ui.add_space(8.0);
    }
    if let Some(i) = gone {
        draft.top_bores.remove(i);
    }
    if ui.button("Add group").clicked() {
        draft.top_bores.push(DraftTopGroup {
            spread: None,
            bores: vec![DraftTopBore::default()],
        });
    }
    if draft.top_bores.is_empty() {
        ui.label(egui::RichText::new("No bores above the opening.").color(tokens(ui).text_soft));
    }
    hint_ui(ui);
}

/// Bores in the door.
pub(super) fn door_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let mut gone = None;
    let leaves: &[(LeafId, &str)] = if draft.kind.leaf_count() == 2 {
        &[(LeafId::Upper, "upper leaf"), (LeafId::Lower, "lower leaf")]
    } else {
        &[(LeafId::Only, "the door")]
    };
    for (i, group) in draft.door_bores.iter_mut().enumerate() {
        let at = format!("door_bores[{i}]");
        let out = group_head(ui, &format!("Group {}", i + 1));
        if leaves.len() > 1 {
            let hint = "Which leaf is drilled.";
            board.choice(
                ui,
                &format!("{at}.leaf"),
                "leaf",
                hint,
                &mut group.leaf,
                leaves,
            );
        }
        if spread_ui(ui, board, &at, &mut group.spread) || out {
            gone = Some(i);
        }
        let spread = group.spread.is_some();
        let datums = [
            listed(AcrossDatum::choices(spread, true)),
            listed(DownDatum::on_door(draft.kind)),
        ];
        let path = format!("{at}.bores");
        let outcome = bores_ui::<DraftDoorBoreField>(
            ui,
            board,
            (&path, "Door bores"),
            &datums,
            &mut group.bores,
        );
        if let Some(bore) = group.bores.get_mut(outcome.row) {
            let place = format!("{path}[{}]", outcome.row);
            allowed_ui(ui, board, (&place, outcome.row), bore);
        }
        ui.add_space(8.0);
    }
    if let Some(i) = gone {
        draft.door_bores.remove(i);
    }
    if ui.button("Add group").clicked() {
        let leaf = leaves.first().map_or(LeafId::Only, |it| it.0);
        draft.door_bores.push(DraftDoorGroup {
            leaf,
            spread: None,
            bores: vec![DraftDoorBore::default()],
        });
    }
    let from_edges = |datum: &dyn Fn(&DraftDoorBore) -> bool| {
        draft
            .door_bores
            .iter()
            .flat_map(|group| &group.bores)
            .any(datum)
    };
    let side = from_edges(&|bore| bore.across.from == AcrossDatum::DoorSideEdge);
    let top = from_edges(&|bore| bore.down.from == DownDatum::DoorTopEdge);
    for (asked, field) in [
        (side, DraftField::OverlaySide),
        (top, DraftField::OverlayTop),
    ] {
        if asked {
            board.field(ui, "", draft, field);
        }
    }
    hint_ui(ui);
}

/// Heading of a group; says whether it is to go.
fn group_head(ui: &mut Ui, title: &str) -> bool {
    ui.horizontal(|ui| {
        ui.label(bold(title));
        let button = egui::Button::new("Remove group").small();
        ui.add(button)
            .accessible_name(format!("Remove {title}"))
            .clicked()
    })
    .inner
}

/// How a group sits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sits {
    AtSides,
    Spread,
    Nowhere,
}

/// At each fitted side once, or spread over the width; says whether the paper has no such group.
fn spread_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    at: &str,
    spread: &mut Option<DraftSpread>,
) -> bool {
    let mut sits = if spread.is_some() {
        Sits::Spread
    } else {
        Sits::AtSides
    };
    let all = [
        (Sits::AtSides, "once at each side"),
        (Sits::Spread, "spread over the width"),
        (Sits::Nowhere, "not on this paper"),
    ];
    let hint = "Hinges are spread over the width; brackets sit once at each side.";
    if board.choice(ui, &format!("{at}.how"), "sits", hint, &mut sits, &all) {
        *spread = (sits == Sits::Spread).then(|| DraftSpread {
            end_inset: String::new(),
            counts: DraftSpread::new_counts().with([""]),
        });
    }
    if let Some(spread) = spread {
        counts_ui(ui, board, at, spread);
    }
    sits == Sits::Nowhere
}

/// How many groups over which width.
fn counts_ui(ui: &mut Ui, board: &mut Board<'_>, at: &str, spread: &mut DraftSpread) {
    let in_group = format!("{at}.spread");
    board.field(ui, &in_group, spread, SpreadField::EndInset);
    let path = format!("{at}.spread.counts");
    let field = |row: usize, column: usize| {
        let title = if column == 0 { "up to width" } else { "count" };
        format!("{path}[{row}] \"{title}\"")
    };
    let new_row = |_: &Grid, _: usize| Vec::new();
    let sheet = Table {
        path: &path,
        name: "How many over which width",
        columns: vec![
            Column::new("up to clear width", 130.0),
            Column::new("how many", 70.0),
        ],
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, &mut spread.counts);
}

/// Distances to the door's edge that the paper allows for the chosen bore.
fn allowed_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    (at, row): (&str, usize),
    bore: &mut DraftDoorBore,
) {
    egui::CollapsingHeader::new(format!("What the paper allows for bore {}", row + 1))
        .id_salt((
            "allowed",
            board.salt,
            at.rsplit_once('[').map_or(at, |it| it.0),
        ))
        .show(ui, |ui| {
            board.field(ui, at, bore, DraftDoorBoreField::InGlassOrMetal);
            let mut gone = None;
            for (k, range) in bore.edge_ranges.iter_mut().enumerate() {
                let at = format!("{at}.edge_ranges[{k}]");
                let fields: Vec<EdgeRangeField> = EdgeRangeField::all().collect();
                board.fields(ui, &at, range, &fields);
                if ui.small_button("Remove this range").clicked() {
                    gone = Some(k);
                }
            }
            if let Some(k) = gone {
                bore.edge_ranges.remove(k);
            }
            if ui.small_button("Add an allowed distance").clicked() {
                bore.edge_ranges.push(DraftEdgeRange {
                    edge: LeafEdge::Top,
                    min: String::new(),
                    max: String::new(),
                });
            }
        });
}
