//! One panel as DXF: outline and one circle for each bore.

use std::collections::BTreeMap;

use dxf::entities::{Circle, Entity, EntityType, LwPolyline, Text};
use dxf::enums::{AcadVersion, DrawingUnits, Units};
use dxf::tables::{AppId, Layer};
use dxf::{Color, Drawing, Handle, LwPolylineVertex, Point, XData, XDataItem};

use super::layers::{NOTES_LAYER, outline_layer};
use super::list::{BoreList, BorePanel, BoreRow};
use super::options::FaceUp;
use crate::error::ExportError;
use crate::number::number;

/// Name under which outline and circles carry extended data.
pub const APPLICATION: &str = "FLAPWRIGHT";

/// Height of the words, mm.
const WORDS_HEIGHT: f64 = 10.0;
/// Baseline to baseline, mm.
const WORDS_PITCH: f64 = 16.0;

/// No more tables than this are in a file: there are nine kinds.
const TABLES: u64 = 16;

/// Header variables that say when and by which run a file was made. They would make the same job
/// give other bytes at another time or in another time zone, and no reader needs them.
const VOLATILE: [&str; 6] = [
    "$TDCREATE",
    "$TDUCREATE",
    "$TDUPDATE",
    "$TDUUPDATE",
    "$FINGERPRINTGUID",
    "$VERSIONGUID",
];

/// The panel as an ASCII DXF file of the year 2000's form, in mm, x to the right and y away from
/// the reader as the panel lies, the origin at the list's zero corner.
///
/// - The outline is one closed polyline on [`outline_layer`].
/// - Each bore is one circle of its diameter at z = 0 on the layer of its operation.
/// - Outline and circles carry extended data under [`APPLICATION`]: name and value in turn. A
///   circle has `number`, `diameter`, `depth` (a real, or `through`), `face`, `pass`, `purpose`,
///   and `u` and `v` of the drilling sheet.
/// - Words below the outline, on [`NOTES_LAYER`], say what it is and how it lies.
///
/// # Errors
/// [`ExportError::List`] when the library gives up, which is a fault of the program.
pub fn bores_dxf(list: &BoreList, panel: &BorePanel) -> Result<Vec<u8>, ExportError> {
    let mut drawing = Drawing::new();
    drawing.header.version = AcadVersion::R2000;
    drawing.header.default_drawing_units = Units::Millimeters;
    drawing.header.drawing_units = DrawingUnits::Metric;
    drawing.add_app_id(AppId {
        name: APPLICATION.to_owned(),
        ..AppId::default()
    });
    layers(&mut drawing, panel);
    let origin = origin(list, panel);
    let outline = outline_layer(panel.edges);
    add(
        &mut drawing,
        outline,
        outline_entity(origin, panel),
        panel_data(list, panel),
    );
    for bore in &panel.bores {
        let circle = Circle::new(Point::new(bore.x, bore.y, 0.0), 0.5 * bore.diameter);
        let data = bore_data(panel, bore);
        add(&mut drawing, &bore.layer, EntityType::Circle(circle), data);
    }
    for (line, words) in words(list, panel).into_iter().enumerate() {
        let y = origin[1] - WORDS_PITCH * (line as f64 + 1.5);
        let text = Text {
            location: Point::new(origin[0], y, 0.0),
            text_height: WORDS_HEIGHT,
            value: narrow(&words),
            ..Text::default()
        };
        add(
            &mut drawing,
            NOTES_LAYER,
            EntityType::Text(text),
            Vec::new(),
        );
    }
    let first_free = drawing.header.next_available_handle.0;
    drawing.header.next_available_handle = Handle(first_free + TABLES);
    let mut bytes = Vec::new();
    drawing.save(&mut bytes).map_err(|error| failed(&error))?;
    let text = String::from_utf8(bytes).map_err(|error| failed(&error))?;
    Ok(tidied(&text, first_free).into_bytes())
}

fn failed(error: &dyn std::fmt::Display) -> ExportError {
    ExportError::List {
        format: "DXF",
        cause: error.to_string(),
    }
}

/// One layer for the outline, one for the words, one for each operation, in colours of their own.
fn layers(drawing: &mut Drawing, panel: &BorePanel) {
    let mut colours = BTreeMap::new();
    // Colours 1 to 6 are red, yellow, green, cyan, blue, magenta; 7 is black or white; 8 is grey.
    colours.insert(outline_layer(panel.edges), 7);
    colours.insert(NOTES_LAYER, 8);
    let mut next = 0;
    for bore in &panel.bores {
        colours.entry(&bore.layer).or_insert_with(|| {
            next = next % 6 + 1;
            next
        });
    }
    for (name, colour) in colours {
        drawing.add_layer(Layer {
            name: name.to_owned(),
            color: Color::from_index(colour),
            ..Layer::default()
        });
    }
}

/// The corner of the outline at the left, next to the reader.
fn origin(list: &BoreList, panel: &BorePanel) -> [f64; 2] {
    let corner = list.zero_corner;
    [
        if corner.is_right() { -panel.width } else { 0.0 },
        if corner.is_upper() {
            -panel.height
        } else {
            0.0
        },
    ]
}

fn outline_entity(origin: [f64; 2], panel: &BorePanel) -> EntityType {
    let corners = [
        [0.0, 0.0],
        [panel.width, 0.0],
        [panel.width, panel.height],
        [0.0, panel.height],
    ];
    let vertices = corners.map(|[x, y]| LwPolylineVertex {
        x: origin[0] + x,
        y: origin[1] + y,
        ..LwPolylineVertex::default()
    });
    let mut outline = LwPolyline {
        vertices: vertices.to_vec(),
        ..LwPolyline::default()
    };
    outline.set_is_closed(true);
    EntityType::LwPolyline(outline)
}

fn add(drawing: &mut Drawing, layer: &str, specific: EntityType, data: Vec<XDataItem>) {
    let mut entity = Entity::new(specific);
    entity.common.layer = layer.to_owned();
    if !data.is_empty() {
        entity.common.x_data.push(XData {
            application_name: APPLICATION.to_owned(),
            items: data,
        });
    }
    drawing.add_entity(entity);
}

fn text(name: &str, value: &str) -> [XDataItem; 2] {
    [
        XDataItem::Str(name.to_owned()),
        XDataItem::Str(narrow(value)),
    ]
}

fn real(name: &str, value: f64) -> [XDataItem; 2] {
    [XDataItem::Str(name.to_owned()), XDataItem::Real(value)]
}

fn whole(name: &str, value: usize) -> [XDataItem; 2] {
    let value = i32::try_from(value).unwrap_or(i32::MAX);
    [XDataItem::Str(name.to_owned()), XDataItem::Long(value)]
}

fn panel_data(list: &BoreList, panel: &BorePanel) -> Vec<XDataItem> {
    [
        text("job", &list.job),
        text("revision", &list.revision),
        text("fingerprint", &panel.fingerprint),
        text("box", &panel.box_name),
        whole("box number", panel.box_number),
        whole("quantity", panel.quantity as usize),
        text("panel", &panel.panel),
        text("hand", panel.hand.unwrap_or("none")),
        text("face", panel.face),
        text("lies", lies(list.face_up)),
        text("edges", panel.edges),
        text("zero", &panel.zero),
        real("thickness", panel.thickness),
        text("material", &panel.material),
    ]
    .concat()
}

fn bore_data(panel: &BorePanel, bore: &BoreRow) -> Vec<XDataItem> {
    [
        whole("number", bore.number),
        real("diameter", bore.diameter),
        bore.depth
            .map_or_else(|| text("depth", "through"), |depth| real("depth", depth)),
        text("face", panel.face),
        whole("pass", usize::from(bore.pass)),
        text("purpose", &bore.purpose),
        real("u", bore.u),
        real("v", bore.v),
    ]
    .concat()
}

const fn lies(face_up: FaceUp) -> &'static str {
    match face_up {
        FaceUp::Inner => "drilled face up",
        FaceUp::Outer => "drilled face down, mirrored",
    }
}

/// What stands below the outline.
fn words(list: &BoreList, panel: &BorePanel) -> Vec<String> {
    let mut lines = vec![
        format!(
            "{} of box {} {}, {} to make",
            panel.panel, panel.box_number, panel.box_name, panel.quantity
        ),
        format!(
            "{}: {}. Zero: {} corner ({})",
            panel.face,
            lies(list.face_up),
            list.zero_corner.words(),
            panel.zero
        ),
        format!(
            "{} edges, {} x {}, {} thick, {}, unit mm",
            panel.edges,
            number(panel.width),
            number(panel.height),
            number(panel.thickness),
            panel.material
        ),
        format!("bores {}, as on the drilling sheet", panel.fingerprint),
        format!("{}, revision {}", list.job, list.revision),
    ];
    if list.revision.is_empty() {
        lines.pop();
        lines.push(list.job.clone());
    }
    if panel.open_stops > 0 {
        lines.insert(
            0,
            format!(
                "DO NOT DRILL: {} open",
                flapwright_rules::plural::count(panel.open_stops, "stop")
            ),
        );
    }
    if panel.invented {
        lines.push("Invented for demonstration: do not drill".to_owned());
    }
    lines
}

/// The text in the part of Unicode that the format can write, at most 200 characters (a string of
/// extended data has at most 255 bytes, and one character can take eight as an escape).
fn narrow(text: &str) -> String {
    let mut bytes = 0;
    text.chars()
        .map(|c| if u32::from(c) > 0xFFFF { '\u{FFFD}' } else { c })
        .take_while(|c| {
            bytes += if c.is_ascii() { 1 } else { 7 };
            bytes <= 250
        })
        .collect()
}

/// The file without the header variables in [`VOLATILE`], and with a handle for each table, which
/// the library leaves out though the format asks for it: `first_handle` and those that follow it.
///
/// A file is lines in pairs, code and value; a variable is its name under code 9 and all pairs up
/// to the next code 9 or 0; a table starts with the pairs 0 `TABLE` and 2 with its name.
fn tidied(file: &str, first_handle: u64) -> String {
    let mut out = String::with_capacity(file.len());
    let mut lines = file.split_inclusive('\n');
    let (mut skipping, mut in_table_head, mut handle) = (false, false, first_handle);
    while let (Some(code), Some(value)) = (lines.next(), lines.next()) {
        match code.trim() {
            "9" => skipping = VOLATILE.contains(&value.trim()),
            "0" => skipping = false,
            _ => {}
        }
        if !skipping {
            out.push_str(code);
            out.push_str(value);
        }
        if in_table_head && code.trim() == "2" {
            out.push_str(&format!("  5\r\n{handle:X}\r\n"));
            handle += 1;
        }
        in_table_head = code.trim() == "0" && value.trim() == "TABLE";
    }
    out
}
