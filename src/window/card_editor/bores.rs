//! The steps with bores: a row for each, with the datum of each distance under its number.

use egui::Ui;
use flapwright_model::card::LeafEdge;
use flapwright_model::card_draft::{
    AcrossDatum, BackDatum, CardDraft, DownDatum, DraftDoorBore, DraftDoorGroup, DraftDrill,
    DraftEdgeRange, DraftSideBore, DraftSpread, DraftTopBore, DraftTopGroup, Grid,
};
use flapwright_model::part::LeafId;

use super::board::Board;
use super::table::{Column, Outcome, Table, table_ui};
use crate::window::tokens::{bold, tokens};

/// The cells that say what is drilled, after the two distances.
const DRILL: [(&str, f32); 4] = [
    ("diameter", 72.0),
    ("depth", 72.0),
    ("what it is for", 140.0),
    ("pass", 38.0),
];
const DISTANCE: f32 = 140.0;

/// A bore as a row of a table.
trait Row: Clone + Default {
    /// Names of the fields of the two distances.
    const NAMES: [&'static str; 2];
    fn texts(&mut self) -> [&mut String; 2];
    fn drill(&mut self) -> &mut DraftDrill;
    /// Numbers of the datums in their lists.
    fn datums(&self, lists: &Lists) -> [usize; 2];
    fn set_datum(&mut self, lists: &Lists, column: usize, number: usize);
    /// Counts from the hole before, as a new row of a list does.
    fn onward(&mut self, lists: &Lists);
}

/// What the bores of a list may count from.
struct Lists {
    down: Vec<DownDatum>,
    across: Vec<AcrossDatum>,
}

impl Lists {
    fn new(down: &[DownDatum], across: &[AcrossDatum]) -> Self {
        Self {
            down: down.to_vec(),
            across: across.to_vec(),
        }
    }

    fn down_words(&self) -> Vec<&'static str> {
        self.down.iter().map(|it| it.words()).collect()
    }

    fn across_words(&self) -> Vec<&'static str> {
        self.across.iter().map(|it| it.words()).collect()
    }

    fn down_at(&self, datum: DownDatum) -> usize {
        number_of(&self.down, &datum)
    }

    fn across_at(&self, datum: AcrossDatum) -> usize {
        number_of(&self.across, &datum)
    }
}

/// Its number in a list; past the end where it is not in it.
fn number_of<T: PartialEq>(list: &[T], datum: &T) -> usize {
    list.iter().position(|it| it == datum).unwrap_or(list.len())
}

impl Row for DraftSideBore {
    const NAMES: [&'static str; 2] = ["down", "back"];
    fn texts(&mut self) -> [&mut String; 2] {
        [&mut self.down.by, &mut self.back.by]
    }
    fn drill(&mut self) -> &mut DraftDrill {
        &mut self.drill
    }
    fn datums(&self, lists: &Lists) -> [usize; 2] {
        [
            lists.down_at(self.down.from),
            number_of(&BackDatum::ALL, &self.back.from),
        ]
    }
    fn set_datum(&mut self, lists: &Lists, column: usize, number: usize) {
        if column == 0 {
            self.down.from = lists.down.get(number).copied().unwrap_or_default();
        } else {
            self.back.from = BackDatum::ALL.get(number).copied().unwrap_or_default();
        }
    }
    fn onward(&mut self, _: &Lists) {
        self.down.from = DownDatum::HoleBefore;
        self.back.from = BackDatum::HoleBefore;
    }
}

impl Row for DraftTopBore {
    const NAMES: [&'static str; 2] = ["across", "back"];
    fn texts(&mut self) -> [&mut String; 2] {
        [&mut self.across.by, &mut self.back.by]
    }
    fn drill(&mut self) -> &mut DraftDrill {
        &mut self.drill
    }
    fn datums(&self, lists: &Lists) -> [usize; 2] {
        [
            lists.across_at(self.across.from),
            number_of(&BackDatum::ALL, &self.back.from),
        ]
    }
    fn set_datum(&mut self, lists: &Lists, column: usize, number: usize) {
        if column == 0 {
            self.across.from = lists.across.get(number).copied().unwrap_or_default();
        } else {
            self.back.from = BackDatum::ALL.get(number).copied().unwrap_or_default();
        }
    }
    fn onward(&mut self, _: &Lists) {
        self.across.from = AcrossDatum::HoleBefore;
        self.back.from = BackDatum::HoleBefore;
    }
}

impl Row for DraftDoorBore {
    const NAMES: [&'static str; 2] = ["across", "down"];
    fn texts(&mut self) -> [&mut String; 2] {
        [&mut self.across.by, &mut self.down.by]
    }
    fn drill(&mut self) -> &mut DraftDrill {
        &mut self.drill
    }
    fn datums(&self, lists: &Lists) -> [usize; 2] {
        [
            lists.across_at(self.across.from),
            lists.down_at(self.down.from),
        ]
    }
    fn set_datum(&mut self, lists: &Lists, column: usize, number: usize) {
        if column == 0 {
            self.across.from = lists.across.get(number).copied().unwrap_or_default();
        } else {
            self.down.from = lists.down.get(number).copied().unwrap_or_default();
        }
    }
    fn onward(&mut self, _: &Lists) {
        self.across.from = AcrossDatum::HoleBefore;
        self.down.from = DownDatum::HoleBefore;
    }
}

/// A table of bores; the outcome says which row is chosen.
fn bores_ui<R: Row>(
    ui: &mut Ui,
    board: &mut Board<'_>,
    (path, name): (&str, &str),
    lists: &Lists,
    first: [Vec<&'static str>; 2],
    bores: &mut Vec<R>,
) -> Outcome {
    let mut columns = Vec::new();
    for (title, datums) in R::NAMES.into_iter().zip(first) {
        columns.push(Column {
            datums,
            ..Column::new(title, DISTANCE)
        });
    }
    columns.extend(DRILL.map(|(title, width)| Column::new(title, width)));
    let mut grid = Grid::new(columns.iter().map(|column| column.title.clone()));
    for bore in bores.iter_mut() {
        grid.rows.push(cells(bore));
    }
    let field = |row: usize, column: usize| {
        let at = format!("{path}[{row}]");
        match column {
            0 | 1 => R::NAMES.get(column).map(|name| format!("{at}.{name}")),
            2 => Some(format!("{at}.drill.diameter")),
            3 => Some(format!("{at}.drill.depth")),
            _ => Some(format!("{at}.drill.purpose")),
        }
        .unwrap_or_default()
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
            .map(|bore| bore.datums(lists).to_vec())
            .collect(),
    };
    let outcome = table_ui(ui, board, &sheet, &mut grid);
    if outcome.changed {
        take(bores, lists, &grid, &outcome);
    }
    outcome
}

fn cells<R: Row>(bore: &mut R) -> Vec<String> {
    let mut cells = bore.texts().map(|text| text.clone()).to_vec();
    let drill = bore.drill();
    cells.extend([
        drill.diameter.clone(),
        drill.depth.clone(),
        drill.purpose.clone(),
        drill.pass.to_string(),
    ]);
    cells
}

/// Takes the cells of a table over into its bores.
fn take<R: Row>(bores: &mut Vec<R>, lists: &Lists, grid: &Grid, outcome: &Outcome) {
    if let Some(at) = outcome.inserted {
        let mut bore = R::default();
        if at > 0 {
            bore.onward(lists);
        }
        bores.insert(at.min(bores.len()), bore);
    }
    if let Some(at) = outcome.removed.filter(|at| *at < bores.len()) {
        bores.remove(at);
    }
    let before = bores.len();
    bores.resize_with(grid.rows.len(), || {
        let mut bore = R::default();
        if before > 0 {
            bore.onward(lists);
        }
        bore
    });
    for (row, bore) in bores.iter_mut().enumerate() {
        for (column, text) in bore.texts().into_iter().enumerate() {
            grid.cell(row, column).clone_into(text);
        }
        let drill = bore.drill();
        grid.cell(row, 2).clone_into(&mut drill.diameter);
        grid.cell(row, 3).clone_into(&mut drill.depth);
        grid.cell(row, 4).clone_into(&mut drill.purpose);
        if let Ok(pass) = grid.cell(row, 5).parse() {
            drill.pass = pass;
        }
    }
    if let Some((row, column, number)) = outcome.datum
        && let Some(bore) = bores.get_mut(row)
    {
        bore.set_datum(lists, column, number);
    }
}

fn back_words() -> Vec<&'static str> {
    BackDatum::ALL.iter().map(|it| it.words()).collect()
}

/// Bores in the side.
pub(super) fn side_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let lists = Lists::new(DownDatum::on_side(draft.kind), &[]);
    let first = [lists.down_words(), back_words()];
    bores_ui(
        ui,
        board,
        ("side_bores", "Side bores"),
        &lists,
        first,
        &mut draft.side_bores,
    );
    let counted = draft
        .side_bores
        .iter()
        .any(|bore| bore.down.from == DownDatum::SideTopEnd);
    if counted {
        ui.add_space(4.0);
        let hint = "Distances from the top end of the side are reckoned back with it.";
        board.number(
            ui,
            "paper.top_thickness",
            "top in the paper",
            hint,
            &mut draft.paper.top_thickness,
        );
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
        let lists = Lists::new(&[], AcrossDatum::choices(spread, false));
        let first = [lists.across_words(), back_words()];
        let path = format!("{at}.bores");
        bores_ui(
            ui,
            board,
            (&path, "Top bores"),
            &lists,
            first,
            &mut group.bores,
        );
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
        let lists = Lists::new(
            DownDatum::on_door(draft.kind),
            AcrossDatum::choices(spread, true),
        );
        let first = [lists.across_words(), lists.down_words()];
        let path = format!("{at}.bores");
        let outcome = bores_ui(
            ui,
            board,
            (&path, "Door bores"),
            &lists,
            first,
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
    if side {
        let hint =
            "How far the paper's door laps over the side; its distances are reckoned back with it.";
        let text = &mut draft.paper.overlay_side;
        board.number(ui, "paper.overlay_side", "overlay at the side", hint, text);
    }
    if top {
        let hint =
            "How far the paper's door laps over the top; its distances are reckoned back with it.";
        let text = &mut draft.paper.overlay_top;
        board.number(ui, "paper.overlay_top", "overlay at the top", hint, text);
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
    let hint = "From the inner face of each side to the middle of the outermost group.";
    let path = format!("{at}.spread.end_inset");
    board.number(
        ui,
        &path,
        "outermost from the side",
        hint,
        &mut spread.end_inset,
    );
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
            let hint = "Whether the paper allows this bore in a leaf of glass or metal.";
            let path = format!("{at}.in_glass_or_metal");
            board.tick(
                ui,
                &path,
                "in glass or metal",
                hint,
                &mut bore.in_glass_or_metal,
            );
            let mut gone = None;
            for (k, range) in bore.edge_ranges.iter_mut().enumerate() {
                let at = format!("{at}.edge_ranges[{k}]");
                let edges = [
                    (LeafEdge::Top, "top edge"),
                    (LeafEdge::OwnSide, "side edge"),
                    (LeafEdge::Bottom, "bottom edge"),
                ];
                let hint = "From the middle of the bore to this edge of its leaf.";
                board.choice(
                    ui,
                    &format!("{at}.edge"),
                    "distance to the",
                    hint,
                    &mut range.edge,
                    &edges,
                );
                let (least, most) = (format!("{at}.min"), format!("{at}.max"));
                let fields = [
                    (&*least, "least", &mut range.min),
                    (&*most, "most", &mut range.max),
                ];
                board.pair(ui, "is allowed", hint, fields);
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
