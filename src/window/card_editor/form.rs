//! The steps without bores: paper, body, motion, worked example.

use egui::Ui;
use flapwright_model::card::{BackFrom, FittedSides, OpeningKind};
use flapwright_model::card_draft::{
    CardDraft, DraftBodies, DraftCutPart, DraftDoorGroup, DraftExample, DraftPivot, Grid,
};
use flapwright_model::length::Unit;
use flapwright_model::lift::PieceCount;

use super::board::Board;
use super::table::{Column, Table, table_ui};
use crate::window::tokens::bold;

/// Front datums, with the words of lists.
const FRONTS: [(BackFrom, &str); 2] = [
    (BackFrom::SideFront, "front edge of the side"),
    (BackFrom::FrameFront, "front of the frame"),
];

/// Name, opening kind, how the paper speaks.
pub(super) fn paper_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    board.text(
        ui,
        "name",
        "name of the card",
        "As lists and sheets call it; unique in the job.",
        &mut draft.name,
    );
    let kinds = OpeningKind::ALL.map(|kind| (kind, kind.words()));
    let mut kind = draft.kind;
    let hint = "How the door opens. Another kind keeps what is typed, but begins the motion anew.";
    if board.choice(ui, "kind", "opening kind", hint, &mut kind, &kinds) {
        change_kind(draft, kind);
    }
    board.text(
        ui,
        "maker_text",
        "where it is from",
        "Maker, article, which paper: free text, printed on the fitting's page.",
        &mut draft.maker_text,
    );
    ui.add_space(6.0);
    ui.label(bold("How the paper speaks"));
    let units = [(Unit::Millimetre, "millimetres"), (Unit::Inch, "inches")];
    let hint = "Unit of lengths that have none of their own.";
    board.choice(
        ui,
        "paper.length",
        "lengths",
        hint,
        &mut draft.paper.length,
        &units,
    );
    let loads = [
        (Unit::Millimetre, "kg, N, N·m"),
        (Unit::Inch, "lb, lbf, lbf·in"),
    ];
    let hint = "Unit of loads that have none of their own.";
    board.choice(
        ui,
        "paper.loads",
        "loads",
        hint,
        &mut draft.paper.loads,
        &loads,
    );
    ui.add_space(6.0);
    ui.label(bold("The fitting"));
    let sides = [
        (FittedSides::Both, "one at each side"),
        (FittedSides::LeftOnly, "only at the left"),
        (FittedSides::RightOnly, "only at the right"),
    ];
    let hint = "Left and right as seen from the front.";
    board.choice(ui, "sides", "sits", hint, &mut draft.sides, &sides);
    let per = [
        (PieceCount::PerPair, "of the pair together"),
        (PieceCount::PerPiece, "of one piece"),
    ];
    let hint = "Whether the loads of the sizes table are said of a pair or of one piece.";
    board.choice(ui, "per", "loads are said", hint, &mut draft.per, &per);
    let hint = "Invented numbers for trying things out; every sheet then says so.";
    board.tick(ui, "invented", "invented", hint, &mut draft.invented);
}

/// Another opening kind: bores and numbers stay, bodies and leaves are those of the kind.
fn change_kind(draft: &mut CardDraft, kind: OpeningKind) {
    let blank = CardDraft::blank(kind);
    let untouched = *draft
        == CardDraft {
            name: draft.name.clone(),
            maker_text: draft.maker_text.clone(),
            paper: draft.paper.clone(),
            ..CardDraft::blank(draft.kind)
        };
    if untouched {
        let (name, maker_text, paper) = (
            draft.name.clone(),
            draft.maker_text.clone(),
            draft.paper.clone(),
        );
        *draft = CardDraft {
            name,
            maker_text,
            paper,
            ..blank
        };
        return;
    }
    let leaf = blank.door_bores.first().map(|group| group.leaf);
    let leaves = draft.kind.leaf_count() != kind.leaf_count();
    if let Some(leaf) = leaf.filter(|_| leaves) {
        draft
            .door_bores
            .iter_mut()
            .for_each(|group: &mut DraftDoorGroup| group.leaf = leaf);
    }
    draft.kind = kind;
    draft.linkage.bodies = blank.linkage.bodies;
}

/// The space that the body takes, adjustment, parts cut to length, notes.
pub(super) fn body_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let body = &mut draft.envelope;
    ui.label(bold("The space it takes"));
    let hint = "Below the underside of the panel above the opening.";
    let fields = [
        ("envelope.down_from", "from", &mut body.down_from),
        ("envelope.down_to", "to", &mut body.down_to),
    ];
    board.pair(ui, "down", hint, fields);
    let hint = "Behind the front datum.";
    let fields = [
        ("envelope.back_from", "from", &mut body.back_from),
        ("envelope.back_to", "to", &mut body.back_to),
    ];
    board.pair(ui, "back", hint, fields);
    let hint = "How far it stands in from the side.";
    board.number(
        ui,
        "envelope.inward",
        "in from the side",
        hint,
        &mut body.inward,
    );
    board.choice(
        ui,
        "envelope.front",
        "back counts from",
        "",
        &mut body.front,
        &FRONTS,
    );
    ui.add_space(6.0);
    ui.label(bold("What it can be adjusted by"));
    let names = [
        (
            "sideways",
            "How far the door can be moved left (negative) and right.",
        ),
        (
            "upward",
            "How far the door can be moved down (negative) and up.",
        ),
        (
            "depth",
            "How far the door can be moved out (negative) and into the box.",
        ),
    ];
    for ((name, hint), travel) in names.into_iter().zip(&mut draft.adjustment) {
        let (min, max) = (
            format!("adjustment.{name}.min"),
            format!("adjustment.{name}.max"),
        );
        let fields = [
            (&*min, "from", &mut travel.min),
            (&*max, "to", &mut travel.max),
        ];
        board.pair(ui, name, hint, fields);
    }
    ui.add_space(6.0);
    ui.label(bold("Parts cut to length"));
    cut_parts_ui(ui, board, draft);
    ui.add_space(6.0);
    board.text(
        ui,
        "notes",
        "notes",
        "What else the paper says; printed on the fitting's page.",
        &mut draft.notes,
    );
}

fn cut_parts_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let mut grid = Grid::new(["what it is", "clear width less", "how many"]);
    for part in &draft.cut_parts {
        grid.rows.push(vec![
            part.name.clone(),
            part.deduction.clone(),
            part.count.to_string(),
        ]);
    }
    let field = |row: usize, column: usize| {
        let name = ["name", "deduction", "count"]
            .get(column)
            .copied()
            .unwrap_or_default();
        format!("cut_parts[{row}].{name}")
    };
    let new_row = |_: &Grid, _: usize| vec![String::new(), String::new(), "1".to_owned()];
    let sheet = Table {
        path: "cut_parts",
        name: "Parts cut to length",
        columns: vec![
            Column::new("what it is", 150.0),
            Column::new("clear width less", 120.0),
            Column::new("how many", 70.0),
        ],
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    if table_ui(ui, board, &sheet, &mut grid).changed {
        draft.cut_parts = (0..grid.rows.len())
            .map(|row| DraftCutPart {
                name: grid.cell(row, 0).to_owned(),
                deduction: grid.cell(row, 1).to_owned(),
                count: grid.cell(row, 2).parse().unwrap_or(1),
            })
            .collect();
    }
}

/// Pivots and end angle.
pub(super) fn motion_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let linkage = &mut draft.linkage;
    let hint = "Opening angle of the door, or turn of the arms, when fully open.";
    board.number(
        ui,
        "linkage.end_angle",
        "fully open at, degrees",
        hint,
        &mut linkage.end_angle,
    );
    board.choice(
        ui,
        "linkage.front",
        "back counts from",
        "",
        &mut linkage.front,
        &FRONTS,
    );
    ui.add_space(4.0);
    if draft.kind == OpeningKind::TopHingedFlap {
        let mut table = matches!(linkage.bodies, DraftBodies::PoseTable { .. });
        let all = [
            (false, "about a fixed axis"),
            (true, "as a table of places says"),
        ];
        let hint = "A linked hinge has no fixed axis: type the places of a point of the door.";
        if board.choice(ui, "linkage.how", "the door turns", hint, &mut table, &all) {
            linkage.bodies = if table {
                DraftBodies::blank_pose_table()
            } else {
                DraftBodies::blank(draft.kind)
            };
        }
    }
    ui.label(bold(
        "Pivots, door closed: down from the underside of the top, back from the front",
    ));
    bodies_ui(ui, board, &mut linkage.bodies);
    ui.add_space(6.0);
    let hint = "How far the true path may lie off the one that these numbers give; empty for none.";
    board.number(
        ui,
        "linkage.path_tolerance",
        "path may stray by",
        hint,
        &mut linkage.path_tolerance,
    );
    let hint = "Damping about the first arm or the axis, N·m·s; empty for none.";
    board.number(
        ui,
        "linkage.damping",
        "damping, N·m·s",
        hint,
        &mut linkage.damping,
    );
}

fn pivot_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    name: &str,
    word: &str,
    hint: &str,
    pivot: &mut DraftPivot,
) {
    let (down, back) = (
        format!("linkage.bodies.{name}.down"),
        format!("linkage.bodies.{name}.back"),
    );
    let fields = [
        (&*down, "down", &mut pivot.down),
        (&*back, "back", &mut pivot.back),
    ];
    board.pair(ui, word, hint, fields);
}

fn bodies_ui(ui: &mut Ui, board: &mut Board<'_>, bodies: &mut DraftBodies) {
    let in_box = "Stands still in the box.";
    let on_door = "Where it is while the door is closed.";
    match bodies {
        DraftBodies::FixedAxis { axis } => {
            pivot_ui(ui, board, "axis", "axis", "The door turns about it.", axis);
        }
        DraftBodies::PoseTable { reference, poses } => {
            let hint = "The point of the door whose path the table gives, door closed.";
            pivot_ui(ui, board, "reference", "point of the door", hint, reference);
            poses_ui(ui, board, poses);
        }
        DraftBodies::Parallel {
            box_pivot,
            door_pivot,
            second_down,
            second_back,
        } => {
            pivot_ui(ui, board, "box_pivot", "arm in the box", in_box, box_pivot);
            pivot_ui(
                ui,
                board,
                "door_pivot",
                "arm on the door",
                on_door,
                door_pivot,
            );
            let hint = "The second arm is as long as the first and lies beside it.";
            let fields = [
                ("linkage.bodies.second_down", "down", second_down),
                ("linkage.bodies.second_back", "back", second_back),
            ];
            board.pair(ui, "second arm from first", hint, fields);
        }
        DraftBodies::Folding {
            axis,
            joint_behind,
            link_box,
            link_below_joint,
            link_behind,
        } => {
            pivot_ui(ui, board, "axis", "axis of the upper leaf", in_box, axis);
            let hint = "The axis between the leaves behind their back face.";
            board.number(
                ui,
                "linkage.bodies.joint_behind",
                "joint behind the back",
                hint,
                joint_behind,
            );
            pivot_ui(ui, board, "link_box", "link in the box", in_box, link_box);
            let hint = "The link's pivot on the lower leaf below the joint.";
            board.number(
                ui,
                "linkage.bodies.link_below_joint",
                "link below the joint",
                hint,
                link_below_joint,
            );
            let hint = "The same behind the back face of the lower leaf.";
            board.number(
                ui,
                "linkage.bodies.link_behind",
                "link behind the back",
                hint,
                link_behind,
            );
        }
        DraftBodies::TwoArms {
            box_first,
            door_first,
            box_second,
            door_second,
        } => {
            pivot_ui(
                ui,
                board,
                "box_first",
                "first arm in the box",
                in_box,
                box_first,
            );
            pivot_ui(
                ui,
                board,
                "door_first",
                "first arm on the door",
                on_door,
                door_first,
            );
            pivot_ui(
                ui,
                board,
                "box_second",
                "second arm in the box",
                in_box,
                box_second,
            );
            pivot_ui(
                ui,
                board,
                "door_second",
                "second arm on the door",
                on_door,
                door_second,
            );
        }
    }
}

fn poses_ui(ui: &mut Ui, board: &mut Board<'_>, poses: &mut Grid) {
    let field = |row: usize, column: usize| {
        let title = ["angle", "out", "up"]
            .get(column)
            .copied()
            .unwrap_or_default();
        format!("linkage.bodies.poses[{row}] \"{title}\"")
    };
    let new_row = |_: &Grid, _: usize| Vec::new();
    let sheet = Table {
        path: "linkage.bodies.poses",
        name: "Places of the point",
        columns: vec![
            Column::new("opening angle", 100.0),
            Column::new("out", 90.0),
            Column::new("up", 90.0),
        ],
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, poses);
}

/// The worked example.
pub(super) fn example_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let mut has = draft.example.is_some();
    let hint = "A card without an example is not proved, and every sheet says so.";
    if board.tick(ui, "example.has", "the paper has one", hint, &mut has) {
        draft.example = has.then(DraftExample::default);
    }
    let folding = draft.kind == OpeningKind::FoldingPair;
    let Some(example) = &mut draft.example else {
        return;
    };
    board.number(
        ui,
        "example.size",
        "size",
        "Name of the size that it is worked for.",
        &mut example.size,
    );
    let hint = "Thickness of the top and sides; the top stands between the sides, no face frame.";
    board.number(
        ui,
        "example.panel_thickness",
        "panels",
        hint,
        &mut example.panel_thickness,
    );
    let [left, right, top, bottom] = &mut example.overlays;
    let hint = "How far the door laps over the panels.";
    let fields = [
        ("example.overlays.left", "left", left),
        ("example.overlays.right", "right", right),
    ];
    board.pair(ui, "overlay", hint, fields);
    let fields = [
        ("example.overlays.top", "top", top),
        ("example.overlays.bottom", "bottom", bottom),
    ];
    board.pair(ui, "overlay", hint, fields);
    let hint = "Packing between side and fitting; empty for none.";
    board.number(ui, "example.packing", "packing", hint, &mut example.packing);
    if folding {
        let hint = "The middle of the joint below the underside of the top.";
        board.number(
            ui,
            "example.joint_down",
            "joint down",
            hint,
            &mut example.joint_down,
        );
    }
    ui.add_space(4.0);
    ui.label(bold(
        "Bores in the side: down from its top end, back from its front",
    ));
    places_ui(
        ui,
        board,
        ("example.side", "Example, side"),
        ["down", "back"],
        &mut example.side,
    );
    ui.add_space(4.0);
    ui.label(bold(
        "Bores in the door: in from its edge, down from its top (no spread ones)",
    ));
    places_ui(
        ui,
        board,
        ("example.door", "Example, door"),
        ["in", "down"],
        &mut example.door,
    );
}

fn places_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    (path, name): (&str, &str),
    titles: [&str; 2],
    grid: &mut Grid,
) {
    let field = |row: usize, column: usize| {
        let title = titles.get(column).copied().unwrap_or_default();
        format!("{path}[{row}] \"{title}\"")
    };
    let new_row = |_: &Grid, _: usize| Vec::new();
    let sheet = Table {
        path,
        name,
        columns: titles.map(|title| Column::new(title, 110.0)).to_vec(),
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, grid);
}
