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
fn safe_remedies_are_applied_into_another_file_or_the_job_itself() {
    let folder = folder();
    let job = folder.path().join("job.ron");
    let out = folder.path().join("out.ron");
    let tweaked = Path::new(env!("CARGO_MANIFEST_DIR")).join(TWEAKED);
    std::fs::copy(tweaked, &job).unwrap();
    let before = std::fs::read(&job).unwrap();
    let (job, out) = (job.to_str().unwrap(), out.to_str().unwrap());

    let run = flapwright(&["check", job, "--apply-safe", "--out", out]);
    let said = text(&run.stdout);
    assert!(
        said.contains("applied (bores-off-fitting): plates"),
        "{said}"
    );
    // The door is then too tall, as it was: that needs a person.
    assert!(!said.contains("stop (bores-off-fitting)"), "{said}");
    assert_eq!(run.status.code(), Some(1), "{said}");
    assert_eq!(std::fs::read(job).unwrap(), before);
    assert_eq!(flapwright(&["check", out]).status.code(), Some(1));

    let run = flapwright(&["check", job, "--apply-safe", "--json"]);
    let said: serde_json::Value = serde_json::from_slice(&run.stdout).unwrap();
    assert_eq!(said["applied"][0]["check"], "bores-off-fitting");
    assert_eq!(std::fs::read(job).unwrap(), std::fs::read(out).unwrap());

    let run = flapwright(&["check", job, "--apply-safe"]);
    assert!(text(&run.stdout).contains("no finding has a safe remedy"));
    let refused = flapwright(&["check", job, "--out", out]);
    assert_eq!(refused.status.code(), Some(2));
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

#[cfg(unix)]
#[test]
fn a_link_among_the_sheets_is_not_written_through() {
    let parent = folder();
    let victim = parent.path().join("victim.txt");
    std::fs::write(&victim, "mine").unwrap();
    let out = parent.path().join("sheets");
    std::fs::create_dir(&out).unwrap();
    let link = out.join("houseboat-galley.pdf");
    std::os::unix::fs::symlink("../victim.txt", link).unwrap();
    let run = flapwright(&["sheets", DEMO, "--out", out.to_str().unwrap()]);
    assert_eq!(run.status.code(), Some(2));
    let said = text(&run.stderr);
    assert!(said.contains("houseboat-galley.pdf` is a link"), "{said}");
    assert_eq!(std::fs::read_to_string(&victim).unwrap(), "mine");
    assert_eq!(names(&out), ["houseboat-galley.pdf"]);
}

#[test]
fn a_resolution_out_of_bounds_is_refused() {
    for dpi in ["149", "601", "many"] {
        let run = flapwright(&["sheets", DEMO, "--out", ".", "--png", "--dpi", dpi]);
        assert_eq!(run.status.code(), Some(2), "{dpi}");
    }
}

#[test]
fn a_largest_scale_is_kept_and_another_one_is_refused_with_what_is_allowed() {
    let out = folder();
    let to = out.path().to_str().unwrap();
    let pages = ["--svg", "--pages", "panels"];
    let run = flapwright(
        &[
            &["sheets", DEMO, "--out", to, "--scale", "1:10"],
            &pages[..],
        ]
        .concat(),
    );
    assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    let written = names(out.path());
    assert!(written.len() > 10, "{written:?}");
    for name in written {
        let page = std::fs::read_to_string(out.path().join(&name)).unwrap();
        assert!(page.contains(">1:10<"), "{name}");
    }
    for bad in ["1:3", "2:1", "1:100", "half"] {
        let run = flapwright(&["sheets", DEMO, "--out", to, "--scale", bad]);
        assert_eq!(run.status.code(), Some(2), "{bad}");
        let said = text(&run.stderr);
        for words in ["--scale", bad, "1:1, 1:2, 1:5, 1:10, 1:20, 1:50"] {
            assert!(said.contains(words), "{bad}: {said}");
        }
    }
}

#[test]
fn an_archive_pdf_carries_the_day_of_issue_and_is_refused_without_one() {
    let parent = folder();
    let demo = std::fs::read_to_string(DEMO).unwrap();
    let out = parent.path().join("out");
    let to = out.to_str().unwrap();
    for (date, given) in [
        ("", "``"),
        ("next week", "next week"),
        ("2026-02-30", "2026-02-30"),
    ] {
        let dated = demo.replace("date_of_issue: \"\"", &format!("date_of_issue: \"{date}\""));
        let job = parent.path().join("job.ron");
        std::fs::write(&job, dated).unwrap();
        let run = flapwright(&["sheets", job.to_str().unwrap(), "--out", to, "--archive"]);
        assert_eq!(run.status.code(), Some(2), "{date}");
        for words in ["date of issue", given, "2026-01-31"] {
            let said = text(&run.stderr);
            assert!(said.contains(words), "{date}: {said}");
        }
        assert!(!out.exists() || names(&out).is_empty());
    }
    let dated = demo.replace("date_of_issue: \"\"", "date_of_issue: \"2026-03-04\"");
    let job = parent.path().join("job.ron");
    std::fs::write(&job, dated).unwrap();
    let mut written = Vec::new();
    for _ in 0..2 {
        let run = flapwright(&["sheets", job.to_str().unwrap(), "--out", to, "--archive"]);
        assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
        assert_eq!(names(&out), ["job.pdf"]);
        written.push(std::fs::read(out.join("job.pdf")).unwrap());
    }
    assert!(
        written[0] == written[1],
        "an archive PDF differs from run to run"
    );
    let date = b"20260304";
    assert!(written[0].windows(date.len()).any(|part| part == date));
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
            |text| text.replacen("version: 2,", "version: 2,\n colour: 3,", 1),
            &["line 4", "colour"],
        ),
        (
            "missing card",
            |text| text.replacen(" card: 20,", " card: 99,", 1),
            &["plates", "fitting.card", "c99", "choose a card"],
        ),
        (
            "negative length",
            |text| text.replacen("width: 900.0", "width: -900.0", 1),
            &["\"mugs\".width", "-900", "5000 mm"],
        ),
        (
            "absurd length",
            |text| text.replacen("width: 900.0", "width: 9000.0", 1),
            &["\"mugs\".width", "9000", "5000 mm"],
        ),
        (
            "not a number",
            |text| text.replacen("width: 900.0", "width: NaN", 1),
            &["\"mugs\".width", "NaN"],
        ),
        (
            "shelf outside the box",
            |text| text.replacen("up: 224", "up: 2240", 1),
            &["\"mugs\".shelf", ".up is 2240 mm", "outside the opening"],
        ),
        (
            "newer version",
            |text| text.replacen("version: 2,", "version: 99,", 1),
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
    for line in list.lines() {
        let name = line.split_whitespace().next().unwrap();
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
fn bores_are_written_in_all_formats_and_the_same_twice() {
    let (one, two) = (folder(), folder());
    for folder in [&one, &two] {
        let out = folder.path().to_str().unwrap();
        let run = flapwright(&["bores", DEMO, "--out", out]);
        assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
        assert!(run.stderr.is_empty(), "{}", text(&run.stderr));
    }
    let written = names(one.path());
    assert_eq!(written, names(two.path()));
    for name in [
        "01-mugs-left side.dxf",
        "01-mugs-right side.dxf",
        "houseboat-galley-bores.csv",
        "houseboat-galley-bores.json",
    ] {
        assert!(written.contains(&name.to_owned()), "{name}: {written:?}");
    }
    for name in written {
        let read = |folder: &tempfile::TempDir| std::fs::read(folder.path().join(&name)).unwrap();
        assert!(read(&one) == read(&two), "{name} differs from run to run");
    }
}

#[test]
fn a_format_that_is_named_is_the_only_one() {
    let folder = folder();
    let out = folder.path().to_str().unwrap();
    let run = flapwright(&["bores", DEMO, "--out", out, "--json"]);
    assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    assert_eq!(names(folder.path()), ["houseboat-galley-bores.json"]);
    let run = flapwright(&["sheets", DEMO, "--out", out, "--svg"]);
    assert_eq!(run.status.code(), Some(0), "{}", text(&run.stderr));
    let sheets = names(folder.path());
    assert!(sheets.iter().filter(|name| name.ends_with(".svg")).count() >= 12);
    assert!(
        !sheets.iter().any(|name| name.ends_with(".pdf")),
        "{sheets:?}"
    );
}

#[test]
fn an_open_stop_is_told_beside_the_machine_files() {
    let folder = folder();
    let out = folder.path().to_str().unwrap();
    let run = flapwright(&["bores", TWEAKED, "--out", out]);
    assert_eq!(run.status.code(), Some(0));
    let said = text(&run.stderr);
    assert!(said.contains("do not drill plates: door"), "{said}");
}

#[test]
fn bad_options_of_bores_are_refused_with_a_remedy() {
    let cases: [(&[&str], &str); 4] = [
        (
            &["--layers", "{diameter} {dept}"],
            "{dept}, which is not known",
        ),
        (&["--layers", "bores"], "lacks {diameter}"),
        (&["--zero", "middle"], "lower-left"),
        (&["--face-up", "both"], "inner"),
    ];
    for (options, words) in cases {
        let folder = folder();
        let mut arguments = vec!["bores", DEMO, "--out", folder.path().to_str().unwrap()];
        arguments.extend(options);
        let run = flapwright(&arguments);
        assert_eq!(run.status.code(), Some(2), "{options:?}");
        assert!(text(&run.stderr).contains(words), "{}", text(&run.stderr));
        assert!(names(folder.path()).is_empty());
    }
}

/// Names that try to leave the folder or to break a file; all four boxes have the same one.
#[test]
fn odd_names_stay_in_the_folder_and_never_overwrite_each_other() {
    for name in [
        "../../out",
        "a/b",
        "..",
        "\\u{202E}gnp.x",
        "\\u{1F6A2}",
        &"x".repeat(300),
    ] {
        let parent = folder();
        let mut odd = std::fs::read_to_string(DEMO).unwrap();
        for plain in ["mugs", "plates", "spices", "charts"] {
            let named = format!("name: \"{plain}\"");
            assert!(odd.contains(&named));
            odd = odd.replacen(&named, &format!("name: \"{name}\""), 1);
        }
        let job = parent.path().join("job.ron");
        std::fs::write(&job, odd).unwrap();
        let out = parent.path().join("out");
        let to = out.to_str().unwrap();
        let job = job.to_str().unwrap();
        for command in [
            &["bores", job, "--out", to, "--dxf"][..],
            &["sheets", job, "--out", to, "--svg", "--pages", "panels"],
        ] {
            let run = flapwright(command);
            assert_eq!(run.status.code(), Some(0), "{name}: {}", text(&run.stderr));
            let said = text(&run.stdout);
            let paths: Vec<&Path> = said.lines().map(Path::new).collect();
            assert!(
                paths
                    .iter()
                    .all(|path| path.parent() == Some(&out) && path.is_file())
            );
        }
        assert_eq!(names(parent.path()), ["job.ron", "out"], "{name}");
        let written = names(&out);
        let of = |ending: &str| written.iter().filter(|it| it.ends_with(ending)).count();
        // One of each for every drilled panel: the demo has that many.
        assert_eq!(of(".dxf"), 17, "{written:?}");
        // Long names can send a hole table on to a further page.
        assert!(of(".svg") >= 17, "{written:?}");
        assert!(
            written.iter().all(|it| it.chars().count() <= 80),
            "{written:?}"
        );
    }
}

/// The limit on file sizes stands in for a disk that is full: the third kilobyte cannot be written.
#[cfg(unix)]
#[test]
fn a_write_that_fails_ends_in_a_message_and_leaves_nothing() {
    for command in ["bores --csv", "sheets --svg", "sheets --pdf"] {
        let parent = folder();
        let out = parent.path().join("out");
        let (command, format) = command.split_once(' ').unwrap();
        let script = format!(
            "trap '' XFSZ; ulimit -f 4; exec '{}' {command} {DEMO} --out '{}' {format}",
            env!("CARGO_BIN_EXE_flapwright"),
            out.display()
        );
        let run = Command::new("sh")
            .args(["-c", &script])
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .output()
            .unwrap();
        let said = text(&run.stderr);
        assert_eq!(run.status.code(), Some(2), "{said}");
        assert!(
            said.contains("cannot be written and was left as it was"),
            "{said}"
        );
        assert!(
            names(parent.path()).is_empty(),
            "{:?}",
            names(parent.path())
        );
    }
}

/// `/proc` takes no new files, not even from an administrator.
#[cfg(target_os = "linux")]
#[test]
fn a_folder_that_takes_no_files_is_named() {
    for command in ["bores", "sheets"] {
        let run = flapwright(&[command, DEMO, "--out", "/proc"]);
        assert_eq!(run.status.code(), Some(2));
        let said = text(&run.stderr);
        assert!(
            said.contains("/proc` cannot be written to; choose"),
            "{said}"
        );
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
