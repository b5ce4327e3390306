//! The command line, run as a user runs it.

#![expect(clippy::unwrap_used, reason = "a test whose tools fail is to fail")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const DEMO: &str = "assets/demo/houseboat-galley.ron";
const TWEAKED: &str = "assets/demo/houseboat-galley-tweaked.ron";

fn flapwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_flapwright"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .env_remove("WAYLAND_SOCKET")
        .output()
        .unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().unwrap()
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

fn changed_demo(folder: &Path, change: impl Fn(&str) -> String) -> PathBuf {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join(DEMO);
    let path = folder.join("job.ron");
    let before = std::fs::read_to_string(demo).unwrap();
    let after = change(&before);
    assert_ne!(before, after, "the test changes nothing");
    std::fs::write(&path, after).unwrap();
    path
}

#[test]
fn the_clean_demo_passes_and_the_tweaked_one_stops() {
    let clean = flapwright(&["check", DEMO]);
    assert_eq!(clean.status.code(), Some(0), "{}", text(&clean.stdout));
    let tweaked = flapwright(&["check", TWEAKED]);
    assert_eq!(tweaked.status.code(), Some(1));
    let out = text(&tweaked.stdout);
    assert!(out.contains("stop (bores-off-fitting)"), "{out}");
    // 3 in = 76.2 mm.
    assert!(out.contains("76.2 mm up"), "{out}");
}

#[test]
fn findings_as_json_carry_their_numbers() {
    let out = flapwright(&["check", TWEAKED, "--json"]);
    assert_eq!(out.status.code(), Some(1));
    let findings: serde_json::Value = serde_json::from_slice(&out.stdout).unwrap();
    let off = findings
        .as_array()
        .unwrap()
        .iter()
        .find(|finding| finding["check"] == "bores-off-fitting")
        .unwrap();
    assert_eq!(off["severity"], "stop");
    let largest = &off["numbers"][0];
    assert_eq!(largest["unit"], "mm");
    assert!((largest["value"].as_f64().unwrap() - 76.2).abs() < 1e-9);
}

#[test]
fn sheets_are_written_and_the_same_twice() {
    let (one, two) = (folder(), folder());
    for folder in [&one, &two] {
        let out = folder.path().to_str().unwrap();
        let run = flapwright(&[
            "sheets", DEMO, "--out", out, "--pdf", "--png", "--dpi", "150",
        ]);
        assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    }
    let written = names(one.path());
    assert_eq!(written, names(two.path()));
    assert!(
        written.contains(&"houseboat-galley.pdf".to_owned()),
        "{written:?}"
    );
    assert!(
        written.iter().filter(|name| name.ends_with(".png")).count() >= 12,
        "{written:?}"
    );
    for name in written {
        let read = |folder: &tempfile::TempDir| std::fs::read(folder.path().join(&name)).unwrap();
        assert!(read(&one) == read(&two), "{name} differs from run to run");
    }
}

#[test]
fn a_missing_last_part_of_the_folder_is_made_and_no_more() {
    let parent = folder();
    let near = parent.path().join("sheets");
    let run = flapwright(&["sheets", DEMO, "--out", near.to_str().unwrap()]);
    assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    assert_eq!(names(&near), ["houseboat-galley.pdf"]);
    let far = parent.path().join("not there").join("sheets");
    let run = flapwright(&["sheets", DEMO, "--out", far.to_str().unwrap()]);
    assert_eq!(run.status.code(), Some(2));
    assert!(
        text(&run.stderr).contains("not there"),
        "{}",
        text(&run.stderr)
    );
    assert!(!parent.path().join("not there").exists());
}

#[test]
fn a_file_in_place_of_the_folder_is_refused_and_kept() {
    let parent = folder();
    let file = parent.path().join("sheets");
    std::fs::write(&file, "mine").unwrap();
    let run = flapwright(&["sheets", DEMO, "--out", file.to_str().unwrap()]);
    assert_eq!(run.status.code(), Some(2));
    assert!(
        text(&run.stderr).contains("not a folder"),
        "{}",
        text(&run.stderr)
    );
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "mine");
}

#[test]
fn a_resolution_out_of_bounds_is_refused() {
    for dpi in ["149", "601", "many"] {
        let run = flapwright(&["sheets", DEMO, "--out", ".", "--png", "--dpi", dpi]);
        assert_eq!(run.status.code(), Some(2), "{dpi}");
    }
}

#[test]
fn bad_job_files_are_refused_with_place_and_remedy() {
    type Change = fn(&str) -> String;
    let cases: [(&str, Change, &[&str]); 8] = [
        (
            "cut short",
            |text| text[..text.len() / 2].to_owned(),
            &["line ", "column "],
        ),
        (
            "unknown field",
            |text| text.replacen("version: 1,", "version: 1,\n colour: 3,", 1),
            &["line 4", "colour"],
        ),
        (
            "missing card",
            |text| text.replacen("card: \"Heron\"", "card: \"Auk\"", 1),
            &["plates", "fitting.card", "\"Auk\"", "choose a card"],
        ),
        (
            "negative length",
            |text| text.replacen("width: 900.0", "width: -900.0", 1),
            &["boxes[0] \"mugs\".width", "-900", "5000 mm"],
        ),
        (
            "absurd length",
            |text| text.replacen("width: 900.0", "width: 9000.0", 1),
            &["boxes[0] \"mugs\".width", "9000", "5000 mm"],
        ),
        (
            "not a number",
            |text| text.replacen("width: 900.0", "width: NaN", 1),
            &["boxes[0] \"mugs\".width", "NaN"],
        ),
        (
            "shelf outside the box",
            |text| text.replacen("up: 224", "up: 2240", 1),
            &["boxes[0] \"mugs\".shelves[0].up", "outside the box"],
        ),
        (
            "newer version",
            |text| text.replacen("version: 1,", "version: 99,", 1),
            &["version 99", "newer"],
        ),
    ];
    for (what, change, expected) in cases {
        let folder = folder();
        let job = changed_demo(folder.path(), change);
        let run = flapwright(&["check", job.to_str().unwrap()]);
        let message = text(&run.stderr);
        assert_eq!(run.status.code(), Some(2), "{what}: {message}");
        assert!(message.contains("job.ron"), "{what}: {message}");
        for words in expected {
            assert!(
                message.contains(words),
                "{what}: {words:?} is not in {message:?}"
            );
        }
    }
}

#[test]
fn a_job_that_is_not_there_is_named() {
    let run = flapwright(&["check", "no-such-job.ron"]);
    assert_eq!(run.status.code(), Some(2));
    assert!(
        text(&run.stderr).contains("no-such-job.ron"),
        "{}",
        text(&run.stderr)
    );
}

#[test]
fn without_a_display_the_window_says_so_in_one_line_and_names_the_other_way() {
    let run = flapwright(&[]);
    assert_eq!(run.status.code(), Some(2));
    let message = text(&run.stderr);
    assert_eq!(message.trim_end().lines().count(), 1, "{message}");
    assert!(message.contains("display"), "{message}");
    assert!(message.contains("flapwright sheets"), "{message}");
}

#[test]
fn every_check_that_is_listed_has_a_page() {
    let list = flapwright(&["explain"]);
    assert_eq!(list.status.code(), Some(0));
    let list = text(&list.stdout);
    assert!(list.lines().count() > 10, "{list}");
    for name in list.lines() {
        let page = flapwright(&["explain", name]);
        assert_eq!(page.status.code(), Some(0));
        assert!(text(&page.stdout).contains("## Why it matters"), "{name}");
    }
    assert_eq!(
        flapwright(&["explain", "no-such-check"]).status.code(),
        Some(2)
    );
}

#[test]
fn sizes_rank_the_chosen_size_of_each_demo_door_first() {
    let run = flapwright(&["sizes", DEMO, "--json"]);
    assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    let doors: serde_json::Value = serde_json::from_slice(&run.stdout).unwrap();
    let doors = doors.as_array().unwrap();
    assert_eq!(doors.len(), 5);
    for door in doors {
        let best = &door["verdicts"][0];
        assert_eq!(best["verdict"], "fits", "{door}");
        assert_eq!(best["chosen"], true, "{door}");
        assert!(!best["reasons"].as_array().unwrap().is_empty());
    }
}

#[test]
fn sizes_answer_a_quick_question_without_a_job() {
    let ask = |mass: &str| {
        let run = flapwright(&[
            "sizes", "--kind", "parallel", "--door", "700x370", "--mass", mass,
        ]);
        assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
        text(&run.stdout)
    };
    // Heron carries 1.8 to 3.4 kg in size 1 and 2.9 to 5.6 kg in size 2.
    assert!(ask("2.5").contains("fits: Heron, size 1"), "{}", ask("2.5"));
    assert!(ask("4.5").contains("fits: Heron, size 2"), "{}", ask("4.5"));
    for wrong in [
        &["sizes", "--kind", "parallel", "--door", "700"][..],
        &[
            "sizes", "--kind", "parallel", "--door", "700x3/0", "--mass", "3",
        ],
        &["sizes", "--kind", "parallel", "--door", "700x370"],
        &[
            "sizes",
            "--kind",
            "parallel",
            "--door",
            "700x370",
            "--material",
            "moon cheese",
        ],
        &[
            "sizes", "--kind", "parallel", "--door", "700x370", "--mass", "-3",
        ],
        &["sizes"],
    ] {
        let run = flapwright(wrong);
        assert_eq!(run.status.code(), Some(2), "{wrong:?}");
        assert!(!run.stderr.is_empty(), "{wrong:?}");
    }
}

#[test]
fn the_shipped_cards_and_those_of_the_papers_are_proved() {
    let cards = [
        "assets/demo/cards/wren.ron",
        "assets/demo/cards/heron.ron",
        "assets/demo/papers/kestrel.ron",
        "assets/demo/papers/milan.ron",
        "assets/demo/papers/mesange.ron",
    ];
    let run = flapwright(&[["card", "check"].as_slice(), cards.as_slice()].concat());
    let out = text(&run.stdout);
    assert_eq!(run.status.code(), Some(0), "{out}{}", text(&run.stderr));
    assert_eq!(out.matches("proved: its own").count(), cards.len(), "{out}");
    assert!(!out.contains("slip"), "{out}");
}

#[test]
fn an_unproved_card_ends_with_1_and_a_broken_one_with_2_and_hides_no_other() {
    let folder = folder();
    let wren = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/demo/cards/wren.ron");
    let wren = std::fs::read_to_string(wren).unwrap();
    let write = |name: &str, text: &str| {
        let path = folder.path().join(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let moved = write("moved.ron", &wren.replacen("All(163.0)", "All(165.0)", 1));
    let broken = write("broken.ron", &wren[..900]);
    let run = flapwright(&["card", "check", &moved]);
    assert_eq!(run.status.code(), Some(1));
    assert!(
        text(&run.stdout).contains("163 mm"),
        "{}",
        text(&run.stdout)
    );
    let run = flapwright(&[
        "card",
        "check",
        &broken,
        &moved,
        "assets/demo/cards/owl.ron",
    ]);
    assert_eq!(run.status.code(), Some(2));
    assert!(text(&run.stderr).contains("line "), "{}", text(&run.stderr));
    assert!(
        text(&run.stdout).contains("\"Owl\", proved"),
        "{}",
        text(&run.stdout)
    );
}

#[test]
fn the_picture_of_a_card_is_an_svg() {
    let run = flapwright(&["card", "show", "assets/demo/cards/swift.ron", "--svg"]);
    assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    let out = text(&run.stdout);
    assert!(out.starts_with("<") && out.contains("<svg") && out.contains("Swift"));
    let run = flapwright(&[
        "card",
        "show",
        "assets/demo/cards/swift.ron",
        "--svg",
        "--size",
        "9",
    ]);
    assert_eq!(run.status.code(), Some(2));
    assert!(
        text(&run.stderr).contains("it has 1, 2"),
        "{}",
        text(&run.stderr)
    );
}
