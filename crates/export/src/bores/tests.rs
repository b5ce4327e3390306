//! The table and its three files.

use std::sync::Arc;

use std::collections::BTreeSet;
use std::path::Path;

use flapwright_answer::inspect;
use flapwright_model::cabinet::Drilled;
use flapwright_model::card::Depth;
use flapwright_model::file::read_job;
use flapwright_model::job::Job;

use super::*;

fn demo() -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../assets/demo/houseboat-galley.ron");
    read_job(&std::fs::read_to_string(path).expect("demo")).expect("sound")
}

fn listed(job: &Job, options: &BoreOptions) -> BoreList {
    bore_list(job, &inspect(job), options).expect("list")
}

fn turned(face_up: FaceUp, zero: ZeroCorner) -> BoreOptions {
    BoreOptions {
        face_up,
        zero,
        layers: LayerPattern::default(),
    }
}

fn panel<'a>(list: &'a BoreList, box_name: &str, name: &str) -> &'a BorePanel {
    list.panels
        .iter()
        .find(|panel| panel.box_name == box_name && panel.panel == name)
        .expect(name)
}

/// By hand: sides lie with the front edge outward of the pair, so a bore u behind the front edge
/// is at x = u on the left side and at width - u on the right one; y runs up from the bottom end.
#[test]
fn left_and_right_sides_are_mirrored() {
    let list = listed(&demo(), &BoreOptions::default());
    let (left, right) = (
        panel(&list, "plates", "left side"),
        panel(&list, "plates", "right side"),
    );
    assert_eq!((left.hand, right.hand), (Some("left"), Some("right")));
    assert_eq!(left.zero, "front edge, bottom end");
    assert_eq!(right.zero, "back edge, bottom end");
    assert_eq!(right.sheet_zero, "front edge, top end");
    assert_ne!(left.file, right.file);
    for side in [left, right] {
        assert_eq!((side.width, side.height), (330.0, 380.0));
        for bore in &side.bores {
            let x = if side.hand == Some("left") {
                bore.u
            } else {
                330.0 - bore.u
            };
            assert!(
                (bore.x - x).abs() < 1e-6 && (bore.y - (380.0 - bore.v)).abs() < 1e-6,
                "{bore:?}"
            );
        }
    }
}

/// Amendment of the sheets' rule: 1 mm of band takes 1 mm off the distance from that edge.
#[test]
fn before_banding_the_cut_edges_count() {
    let mut job = demo();
    let side = &mut job.boxes[1].left;
    side.bands.front = 1.0;
    side.bands.top_or_left = 2.0;
    side.drilled = Drilled::AfterBanding;
    let after = listed(&job, &BoreOptions::default());
    job.boxes[1].left.drilled = Drilled::BeforeBanding;
    let before = listed(&job, &BoreOptions::default());
    let (after, before) = (
        panel(&after, "plates", "left side"),
        panel(&before, "plates", "left side"),
    );
    assert_eq!((after.edges, before.edges), ("finished", "cut"));
    assert_eq!((before.width, before.height), (329.0, 378.0));
    for (finished, cut) in after.bores.iter().zip(&before.bores) {
        assert!((finished.u - cut.u - 1.0).abs() < 1e-6);
        assert!((finished.v - cut.v - 2.0).abs() < 1e-6);
        assert!((finished.x - cut.x - 1.0).abs() < 1e-6);
        // The bottom end has no band: distances from it stay.
        assert!((finished.y - cut.y).abs() < 1e-6);
    }
}

#[test]
fn a_zero_corner_moves_the_origin_and_never_the_hand() {
    let job = demo();
    let base = listed(&job, &BoreOptions::default());
    for zero in [
        ZeroCorner::LowerLeft,
        ZeroCorner::LowerRight,
        ZeroCorner::UpperLeft,
        ZeroCorner::UpperRight,
    ] {
        let moved = listed(&job, &turned(FaceUp::Inner, zero));
        for (panel, other) in base.panels.iter().zip(&moved.panels) {
            let x = if zero.words().contains("right") {
                panel.width
            } else {
                0.0
            };
            let y = if zero.words().contains("upper") {
                panel.height
            } else {
                0.0
            };
            for (bore, other) in panel.bores.iter().zip(&other.bores) {
                assert!((bore.x - x - other.x).abs() < 2e-6, "{zero:?}");
                assert!((bore.y - y - other.y).abs() < 2e-6, "{zero:?}");
                assert_eq!((bore.u, bore.v), (other.u, other.v));
            }
        }
    }
}

#[test]
fn turned_over_a_panel_is_mirrored_from_left_to_right_and_says_so() {
    let job = demo();
    let up = listed(&job, &BoreOptions::default());
    let down = listed(&job, &turned(FaceUp::Outer, ZeroCorner::LowerLeft));
    for (up, down) in up.panels.iter().zip(&down.panels) {
        for (bore, other) in up.bores.iter().zip(&down.bores) {
            assert!((bore.x + other.x - up.width).abs() < 2e-6);
            assert_eq!(bore.y, other.y);
        }
    }
    // The left side's front edge was at the left hand; turned over it lies at the right.
    assert_eq!(
        panel(&down, "plates", "left side").zero,
        "back edge, bottom end"
    );
    let file = bores_dxf(&down, &down.panels[0]).expect("dxf");
    assert!(String::from_utf8_lossy(&file).contains("drilled face down, mirrored"));
}

#[test]
fn every_bore_of_every_sheet_is_listed() {
    let job = demo();
    let inspection = inspect(&job);
    let list = listed(&job, &BoreOptions::default());
    let drilled = inspection.boxes.iter().flat_map(|it| &it.panels);
    let drilled: Vec<_> = drilled.filter(|panel| !panel.bores.is_empty()).collect();
    assert_eq!(list.panels.len(), drilled.len());
    for (panel, report) in list.panels.iter().zip(drilled) {
        assert_eq!(panel.bores.len(), report.bores.len(), "{}", panel.panel);
        for (row, bore) in panel.bores.iter().zip(&report.bores) {
            assert_eq!(row.number, bore.number);
            assert!((row.diameter - bore.drill.diameter).abs() < 1e-6);
            match bore.drill.depth {
                Depth::Blind(depth) => assert!((row.depth.expect("blind") - depth).abs() < 1e-6),
                Depth::Through => assert!(row.through && row.depth.is_none()),
            }
        }
    }
}

/// Everything about the bores that the DXF holds, read back by the library that wrote it; another
/// reader looks at it in `tests/outside/python`.
#[test]
fn a_dxf_file_holds_outline_circles_and_units() {
    let list = listed(&demo(), &BoreOptions::default());
    for panel in &list.panels {
        let file = bores_dxf(&list, panel).expect("dxf");
        let drawing = ::dxf::Drawing::load(&mut file.as_slice()).expect("readable");
        assert_eq!(
            drawing.header.default_drawing_units,
            ::dxf::enums::Units::Millimeters
        );
        let circles = drawing.entities().filter_map(|it| match &it.specific {
            ::dxf::entities::EntityType::Circle(circle) => Some((circle, &it.common.layer)),
            _ => None,
        });
        let circles: Vec<_> = circles.collect();
        assert_eq!(circles.len(), panel.bores.len());
        for ((circle, layer), bore) in circles.iter().zip(&panel.bores) {
            assert!((circle.center.x - bore.x).abs() < 1e-9);
            assert!((circle.center.y - bore.y).abs() < 1e-9);
            assert!((circle.radius * 2.0 - bore.diameter).abs() < 1e-9);
            assert_eq!(**layer, bore.layer);
        }
    }
}

#[test]
fn no_clock_and_no_number_of_the_run_reaches_a_file() {
    let list = listed(&demo(), &BoreOptions::default());
    let first = bores_dxf(&list, &list.panels[0]).expect("dxf");
    std::thread::sleep(std::time::Duration::from_millis(1100));
    let second = bores_dxf(&list, &list.panels[0]).expect("dxf");
    assert!(first == second, "the files differ");
    let text = String::from_utf8(first).expect("ASCII");
    assert!(text.is_ascii());
    for name in ["$TDCREATE", "$TDUPDATE", "GUID"] {
        assert!(!text.contains(name), "{name}");
    }
    assert!(text.contains("$INSUNITS") && text.ends_with("EOF\r\n"));
    let again = listed(&demo(), &BoreOptions::default());
    assert_eq!(
        bores_json(&list).expect("json"),
        bores_json(&again).expect("json")
    );
    assert_eq!(
        bores_csv(&list).expect("csv"),
        bores_csv(&again).expect("csv")
    );
}

/// Names that try to leave the folder or to break a file.
const ODD: [&str; 9] = [
    "../../etc/passwd",
    "a/b\\c:d",
    "..",
    "=HYPERLINK(\"http://x\")",
    "line\r\nbreak\u{0}\u{7}",
    "\u{202E}sgum\u{202C}",
    "galley \u{1F6A2}\u{FE0F}",
    "\"quoted\", with; commas",
    "%%d \\U+0041 ^J",
];

#[test]
fn odd_names_neither_leave_the_folder_nor_break_a_file() {
    let long = "x".repeat(300);
    for name in ODD.iter().copied().chain([long.as_str()]) {
        let mut job = demo();
        job.name = name.to_owned();
        job.title_block.revision = name.to_owned();
        for wall_box in &mut job.boxes {
            wall_box.name = name.to_owned();
        }
        let list = listed(&job, &BoreOptions::default());
        let files: BTreeSet<_> = list
            .panels
            .iter()
            .map(|it| it.file.to_lowercase())
            .collect();
        assert_eq!(files.len(), list.panels.len(), "{name:?}: names clash");
        for panel in &list.panels {
            let own = Path::new(&panel.file).file_name().expect("a name");
            assert_eq!(own, panel.file.as_str(), "{name:?}");
            assert!(panel.file.len() <= 200, "{}", panel.file);
            let end = format!("{}.dxf", panel.panel);
            assert!(panel.file.ends_with(&end), "{} lacks {end}", panel.file);
            assert!(
                !panel
                    .file
                    .contains(['/', '\\', ':', '\n', '\0', '\u{202E}'])
            );
        }
        let panel = &list.panels[0];
        let file = bores_dxf(&list, panel).expect("dxf");
        let lines = String::from_utf8(file.clone()).expect("ASCII");
        assert!(lines.lines().all(|line| line.len() <= 255), "{name:?}");
        let drawing = ::dxf::Drawing::load(&mut file.as_slice()).expect("readable");
        assert!(drawing.entities().count() > panel.bores.len());
        let json: serde_json::Value =
            serde_json::from_slice(&bores_json(&list).expect("json")).expect("JSON");
        assert_eq!(json["panels"][0]["box"], list.panels[0].box_name.as_str());
        let csv = bores_csv(&list).expect("csv");
        let mut reader = ::csv::Reader::from_reader(csv.as_slice());
        let rows: Vec<_> = reader.records().map(|row| row.expect("a row")).collect();
        let bores: usize = list.panels.iter().map(|panel| panel.bores.len()).sum();
        assert_eq!(rows.len(), bores, "{name:?}");
        let cells = rows.iter().flatten();
        for cell in cells.filter(|cell| cell.parse::<f64>().is_err()) {
            assert!(!cell.starts_with(['=', '+', '-', '@']), "{cell}");
        }
    }
}

#[test]
fn a_place_that_is_no_number_is_refused_by_name() {
    let job = demo();
    let mut inspection = inspect(&job);
    Arc::make_mut(&mut inspection.boxes[0]).panels[0].bores[0]
        .drill
        .diameter = f64::NAN;
    let error = bore_list(&job, &inspection, &BoreOptions::default()).expect_err("nowhere");
    assert!(
        error
            .to_string()
            .starts_with("mugs: left side: bore 1 has no finite place"),
        "{error}"
    );
}

#[test]
fn an_open_stop_is_said_in_the_list_and_on_the_drawing() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../assets/demo/houseboat-galley-tweaked.ron");
    let job = read_job(&std::fs::read_to_string(path).expect("demo")).expect("sound");
    let list = listed(&job, &BoreOptions::default());
    let door = panel(&list, "plates", "door");
    assert!(door.open_stops > 0);
    let file = bores_dxf(&list, door).expect("dxf");
    assert!(String::from_utf8_lossy(&file).contains("DO NOT DRILL"));
    assert_eq!(panel(&list, "mugs", "left side").open_stops, 0);
}

#[test]
fn no_handle_of_a_drawing_is_given_twice() {
    let list = listed(&demo(), &BoreOptions::default());
    let file = bores_dxf(&list, &list.panels[0]).expect("dxf");
    let text = String::from_utf8(file).expect("ASCII");
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let value = |line: usize| u64::from_str_radix(lines[line], 16).expect("a handle");
    let pairs = || (0..lines.len() / 2).map(|pair| 2 * pair);
    let own = |pair: usize| lines[pair] == "5" && lines[pair - 2] != "9";
    let handles: Vec<u64> = pairs()
        .filter(|it| own(*it))
        .map(|it| value(it + 1))
        .collect();
    let different: BTreeSet<u64> = handles.iter().copied().collect();
    assert_eq!(handles.len(), different.len());
    let seed = pairs()
        .find(|it| lines[it + 1] == "$HANDSEED")
        .expect("seed");
    assert!(different.iter().all(|it| *it < value(seed + 3)));
    let heads = pairs().filter(|it| lines[*it] == "0" && lines[it + 1] == "TABLE");
    for head in heads {
        assert_eq!((lines[head + 2], lines[head + 4]), ("2", "5"));
    }
}
