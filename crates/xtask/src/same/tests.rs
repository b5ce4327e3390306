//! The comparison on a small made-up job, whole and broken in one place at a time.

use std::path::Path;

use anyhow::Result;

use super::compare;
use super::tally::{Kind, Tally};

const LIST: &str = r#"{"format": "bore list", "panels": [
  {"file": "a.dxf", "box": "tea", "box_number": 1, "panel": "left side", "width": 300.0, "fingerprint": "AAAA",
   "bores": [{"number": 1, "u": 0.30000000000000004, "x": 37.0, "depth": 12.5, "through": false, "purpose": "screw"},
             {"number": 2, "u": 69.0, "x": 69.0, "depth": 12.5, "through": false, "purpose": "screw"}]}]}"#;
const LINES: &str = "file,box,box_number,panel,number,u,x,depth,purpose\na.dxf,tea,1,left side,1,37,37,12.5,screw\n";
const MACHINE: &str = "0\nSECTION\n2\nTABLES\n0\nLAYER\n5\n7\n2\nbore 5\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n\
    0\nLWPOLYLINE\n5\n14\n8\noutline\n90\n2\n10\n0.0\n20\n0.0\n10\n300.0\n20\n0.0\n1001\nAPP\n1000\nbox\n1000\ntea\n\
    1000\nbox number\n1071\n1\n1000\npanel\n1000\nleft side\n0\nCIRCLE\n5\n15\n8\nbore 5\n10\n37.0\n20\n69.0\n40\n2.5\n\
    1001\nAPP\n1000\ndepth\n1040\n12.5\n1000\npurpose\n1000\nscrew\n0\nENDSEC\n0\nEOF\n";
const PAGE: &str = r#"<svg xmlns="http://www.w3.org/2000/svg"><title>tea: left side</title>
<g class="sheet"><text x="5" y="6">LEFT SIDE</text><line x1="0" y1="8" x2="90" y2="8"/></g>
<g id="bores" class="bores"><circle cx="37" cy="69" r="2.5"/><circle cx="37" cy="101" r="2.5"/></g></svg>"#;
const FINDINGS: &str = r#"[{"check": "too-thin", "severity": "stop", "message": "thin", "numbers": [{"value": 3.0}]}]"#;

/// What is compared when the four files of the made-up job are changed as `change` has it.
fn against(change: impl Fn(&str) -> String) -> Result<Tally> {
    let (old, new) = (tempfile::tempdir()?, tempfile::tempdir()?);
    write(old.path(), "one", str::to_owned)?;
    write(new.path(), "another", change)?;
    compare(old.path(), new.path())
}

fn write(top: &Path, stem: &str, change: impl Fn(&str) -> String) -> Result<()> {
    let folder = top.join("job");
    std::fs::create_dir(&folder)?;
    let files = [
        ("json", LIST),
        ("csv", LINES),
        ("dxf", MACHINE),
        ("svg", PAGE),
        ("check.json", FINDINGS),
    ];
    for (ending, text) in files {
        std::fs::write(folder.join(format!("{stem}.{ending}")), change(text))?;
    }
    Ok(())
}

/// Compares with `from` replaced by `to` and says how many things of a kind differ, and whether
/// the geometry does.
fn changed(kind: Kind, from: &str, to: &str) -> (usize, bool) {
    let tally = against(|text| text.replace(from, to)).unwrap();
    (tally.differing(kind), !tally.same())
}

#[test]
fn the_same_job_under_other_file_names_is_the_same() {
    let tally = against(str::to_owned).unwrap();
    assert!(tally.same(), "{}", tally.report(true));
    for kind in [
        Kind::Jobs,
        Kind::Panels,
        Kind::CsvLines,
        Kind::Outlines,
        Kind::Circles,
        Kind::Layers,
        Kind::Pages,
    ] {
        assert_eq!(
            (tally.compared(kind), tally.differing(kind)),
            (1, 0),
            "{kind:?}"
        );
    }
    assert_eq!(
        (tally.compared(Kind::Bores), tally.compared(Kind::Drawn)),
        (2, 2)
    );
}

#[test]
fn the_last_bit_of_a_bore_counts() {
    assert_eq!(
        changed(Kind::Bores, "0.30000000000000004", "0.3"),
        (1, true)
    );
    assert_eq!(
        changed(Kind::Bores, "0.30000000000000004", "0.300000000000000041"),
        (0, false)
    );
}

#[test]
fn a_bore_that_is_gone_or_has_lost_a_number_differs() {
    let second = r#"{"number": 2, "u": 69.0, "x": 69.0, "depth": 12.5, "through": false, "purpose": "screw"}"#;
    let with_comma = format!(",\n             {second}");
    assert_eq!(changed(Kind::Bores, &with_comma, ""), (1, true));
    assert_eq!(changed(Kind::Bores, "\"through\": false, ", ""), (2, true));
    assert_eq!(changed(Kind::Bores, "false", "true"), (2, true));
    assert_eq!(
        changed(Kind::Bores, "\"through\"", "\"id\": 7, \"through\""),
        (0, false)
    );
}

#[test]
fn a_moved_bore_differs_in_each_file() {
    assert_eq!(changed(Kind::CsvLines, ",37,37,", ",37,37.1,"), (1, true));
    assert_eq!(
        changed(Kind::Circles, "10\n37.0", "10\n37.00000000000001"),
        (1, true)
    );
    assert_eq!(
        changed(Kind::Circles, "1040\n12.5", "1040\n13.0"),
        (1, true)
    );
    assert_eq!(changed(Kind::Layers, "2\nbore 5", "2\nbore 6"), (1, true));
    assert_eq!(changed(Kind::Outlines, "10\n300.0", "10\n301.0"), (1, true));
    assert_eq!(
        changed(Kind::Drawn, "cy=\"69\"", "cy=\"69.0001\""),
        (1, true)
    );
    assert_eq!(changed(Kind::Ruled, "y2=\"8\"", "y2=\"9\""), (1, true));
    assert_eq!(
        changed(Kind::Panels, "\"width\": 300.0", "\"width\": 301.0"),
        (1, true)
    );
}

#[test]
fn words_ids_and_handles_are_told_and_no_difference() {
    assert_eq!(changed(Kind::Texts, "LEFT SIDE", "SIDE, LEFT"), (1, false));
    assert_eq!(
        changed(Kind::MachineTexts, "screw", "hinge screw"),
        (1, false)
    );
    assert_eq!(changed(Kind::Circles, "5\n15", "5\n2F"), (0, false));
    assert_eq!(
        changed(Kind::Drawn, "id=\"bores\"", "id=\"b7\" data-of=\"door\""),
        (0, false)
    );
    assert_eq!(changed(Kind::Findings, "stop", "caution"), (1, false));
    assert_eq!(changed(Kind::Findings, "too-thin", "wood-left"), (0, false));
    // A panel by another name, with the same bores.
    assert_eq!(
        changed(Kind::Bores, "left side", "side on the left"),
        (0, false)
    );
}

#[test]
fn a_drawing_may_move_as_a_whole_only_when_its_words_changed() {
    let lower = |text: &str| {
        text.replace("cy=\"69\"", "cy=\"72\"")
            .replace("cy=\"101\"", "cy=\"104\"")
    };
    let moved = against(lower).unwrap();
    assert_eq!((moved.same(), moved.differing(Kind::Drawn)), (false, 2));

    let with_words =
        against(|text| lower(text).replace("LEFT SIDE", "LEFT SIDE, FACE UP")).unwrap();
    assert!(with_words.same(), "{}", with_words.report(true));
    assert_eq!(with_words.differing(Kind::PagesMoved), 1);

    let torn = |text: &str| {
        text.replace("cy=\"69\"", "cy=\"72\"")
            .replace("LEFT SIDE", "LEFT SIDE, FACE UP")
    };
    let torn = against(torn).unwrap();
    assert_eq!((torn.same(), torn.differing(Kind::Drawn)), (false, 1));
}

#[test]
fn a_job_may_come_and_not_go() {
    let (old, new) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    write(old.path(), "one", str::to_owned).unwrap();
    write(new.path(), "one", str::to_owned).unwrap();
    std::fs::create_dir(new.path().join("more")).unwrap();
    std::fs::write(new.path().join("more/a.svg"), PAGE).unwrap();
    assert!(compare(old.path(), new.path()).unwrap().same());
    let gone = compare(new.path(), old.path()).unwrap();
    assert_eq!((gone.same(), gone.differing(Kind::Jobs)), (false, 1));
}

#[test]
fn a_page_with_a_drawing_may_not_go() {
    let tally = against(|text| {
        if text.contains("<svg") {
            "<svg/>".to_owned()
        } else {
            text.to_owned()
        }
    })
    .unwrap();
    assert_eq!((tally.same(), tally.differing(Kind::Pages)), (false, 1));
}
