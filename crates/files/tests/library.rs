//! The library on disk.

#![expect(clippy::unwrap_used, reason = "a test that lacks its part is to fail")]

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use flapwright_files::library::{Library, LibraryError, Query, Shelf, read_record};
use flapwright_files::write_atomic;
use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::card_difference::differences;
use flapwright_model::card_record::Signature;
use flapwright_model::file::{read_card, write_card};

const DEMO: [&str; 5] = [
    include_str!("../../../assets/demo/cards/wren.ron"),
    include_str!("../../../assets/demo/cards/dipper.ron"),
    include_str!("../../../assets/demo/cards/heron.ron"),
    include_str!("../../../assets/demo/cards/swift.ron"),
    include_str!("../../../assets/demo/cards/owl.ron"),
];

fn card(index: usize) -> Card {
    read_card(DEMO[index]).unwrap()
}

fn by(note: &str) -> Signature {
    Signature {
        who: "M. Ankers".to_owned(),
        when: "2026-11-25".to_owned(),
        note: note.to_owned(),
    }
}

struct Place {
    folder: tempfile::TempDir,
}

impl Place {
    fn new() -> Self {
        Self {
            folder: tempfile::tempdir().unwrap(),
        }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn library(&self) -> Library {
        Library::new(self.path("own"), Vec::new())
    }
}

fn names(shelf: &Shelf) -> Vec<&str> {
    shelf
        .entries
        .iter()
        .map(|entry| entry.card().name.as_str())
        .collect()
}

#[test]
fn an_empty_library_is_no_error_and_its_folder_is_made_with_the_first_card() {
    let place = Place::new();
    let library = place.library();
    let shelf = library.shelf();
    assert!(shelf.entries.is_empty() && shelf.broken.is_empty());
    let path = library.add(card(0), by("from its paper")).unwrap();
    assert_eq!(path, place.path("own").join("wren.ron"));
    let shelf = library.shelf();
    assert_eq!(names(&shelf), ["Wren"]);
    assert_eq!(shelf.entries[0].record.current.note, "from its paper");
    assert_eq!(*shelf.entries[0].card(), card(0));
}

#[test]
fn two_cards_of_one_name_do_not_overwrite_each_other() {
    let place = Place::new();
    let library = place.library();
    let mut other = card(0);
    other.notes = "another fitting of that name".to_owned();
    library.add(card(0), by("")).unwrap();
    let second = library.add(other.clone(), by("")).unwrap();
    assert_eq!(second.file_name().unwrap(), "wren-2.ron");
    let shelf = library.shelf();
    assert_eq!(names(&shelf), ["Wren", "Wren"]);
    assert!(shelf.entries.iter().all(|entry| entry.name_taken));
    let cards: Vec<&Card> = shelf
        .named("Wren")
        .map(flapwright_files::library::Entry::card)
        .collect();
    assert!(cards.contains(&&card(0)) && cards.contains(&&other));
}

#[test]
fn a_revision_keeps_what_was_and_says_what_moved() {
    let place = Place::new();
    let library = place.library();
    library.add(card(0), by("first")).unwrap();
    let entry = library.shelf().entries.remove(0);
    let mut changed = card(0);
    changed.sizes[1].door_height.max = 430.0;
    assert!(!library.revise(&entry, card(0), by("nothing")).unwrap());
    assert!(
        library
            .revise(&entry, changed.clone(), by("misread"))
            .unwrap()
    );
    let now = library.shelf().entries.remove(0);
    assert_eq!(now.record.current.number, 2);
    assert_eq!(*now.card(), changed);
    let first = &now.record.older[0].card;
    let moved = differences(first, now.card());
    assert_eq!(moved.len(), 1);
    assert_eq!(moved[0].by, Some(10.0));
    // The file is not what `entry` was listed from any more.
    let late = library.revise(&entry, card(1), by("")).unwrap_err();
    assert!(matches!(late, LibraryError::Changed { .. }), "{late}");
    assert_eq!(*library.shelf().entries[0].card(), changed);
}

#[test]
fn shared_folders_are_read_and_never_written() {
    let place = Place::new();
    let shared = place.path("shop");
    fs::create_dir(&shared).unwrap();
    fs::write(shared.join("heron.ron"), DEMO[2]).unwrap();
    let library = Library::new(place.path("own"), vec![shared.clone(), place.path("gone")]);
    library.add(card(2), by("")).unwrap();
    let shelf = library.shelf();
    assert_eq!(names(&shelf), ["Heron", "Heron"]);
    // A bare card file is a first revision; the user's own stands first.
    let found: Vec<bool> = shelf.named("Heron").map(|entry| entry.shared).collect();
    assert_eq!(found, [false, true]);
    assert_eq!(
        shelf.broken.len(),
        1,
        "a shared folder that is gone is told"
    );
    let theirs = shelf.named("Heron").nth(1).unwrap();
    let error = library.revise(theirs, card(0), by("")).unwrap_err();
    assert!(matches!(error, LibraryError::ReadOnly { .. }), "{error}");
    assert_eq!(
        fs::read_to_string(shared.join("heron.ron")).unwrap(),
        DEMO[2]
    );
}

#[test]
fn broken_files_are_listed_with_their_message_and_hide_no_other() {
    let place = Place::new();
    let library = place.library();
    library.add(card(0), by("")).unwrap();
    let own = library.own().to_owned();
    fs::write(own.join("cut.ron"), &DEMO[1][..700]).unwrap();
    fs::write(own.join("binary.ron"), [0xff, 0xfe, 0x00]).unwrap();
    fs::write(own.join("note.txt"), "no card").unwrap();
    fs::create_dir(own.join("folder.ron")).unwrap();
    let negative = DEMO[2].replacen("Blind(", "Blind(-", 1);
    fs::write(own.join("negative.ron"), negative).unwrap();
    let shelf = library.shelf();
    assert_eq!(names(&shelf), ["Wren"]);
    let told: Vec<String> = shelf.broken.iter().map(|it| it.error.to_string()).collect();
    assert_eq!(told.len(), 4, "{told:?}");
    let about = |name: &str| told.iter().find(|it| it.contains(name)).unwrap();
    assert!(about("cut.ron").contains("line "), "{told:?}");
    assert!(about("binary.ron").contains("UTF-8"), "{told:?}");
    let negative = about("negative.ron");
    assert!(
        negative.contains("line ") && negative.contains(".drill.depth"),
        "{negative}"
    );
}

#[cfg(unix)]
#[test]
fn a_pipe_in_a_shared_folder_is_listed_as_broken_and_holds_nothing_up() {
    let place = Place::new();
    let shared = place.path("shop");
    fs::create_dir(&shared).unwrap();
    fs::write(shared.join("wren.ron"), DEMO[0]).unwrap();
    let pipe = std::process::Command::new("mkfifo")
        .arg(shared.join("pipe.ron"))
        .status();
    assert!(pipe.unwrap().success());
    let library = Library::new(place.path("own"), vec![shared]);
    let (sender, receiver) = std::sync::mpsc::channel();
    std::thread::spawn(move || sender.send(library.shelf()));
    let shelf = receiver.recv_timeout(Duration::from_secs(10)).unwrap();
    assert_eq!(names(&shelf), ["Wren"]);
    let told: Vec<String> = shelf.broken.iter().map(|it| it.error.to_string()).collect();
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].contains("pipe.ron is a pipe"), "{told:?}");
}

#[test]
fn a_card_is_found_by_kind_load_height_and_words() {
    let place = Place::new();
    let library = place.library();
    for index in 0..DEMO.len() {
        library.add(card(index), by("")).unwrap();
    }
    let shelf = library.shelf();
    let found = |query: Query| -> Vec<String> {
        let entries = shelf.entries.iter().filter(|entry| entry.answers(&query));
        entries.map(|entry| entry.card().name.clone()).collect()
    };
    assert_eq!(found(Query::default()).len(), 5);
    let kind = Query {
        kind: Some(OpeningKind::ParallelRisingDoor),
        ..Query::default()
    };
    assert_eq!(found(kind.clone()), ["Heron"]);
    // Heron carries 1.8 to 11.6 kg.
    for (mass, count) in [(1.8, 1), (11.6, 1), (11.7, 0), (1.7, 0)] {
        let mass = Some(mass);
        assert_eq!(
            found(Query {
                mass,
                ..kind.clone()
            })
            .len(),
            count,
            "{mass:?}"
        );
    }
    // Wren size 2 carries 2.35 to 4.95 kg at 280 mm, and no size carries 9.5 kg there.
    let flap = |mass, height| {
        let query = Query {
            mass: Some(mass),
            height: Some(height),
            text: "WREN".to_owned(),
            ..Query::default()
        };
        found(query).len()
    };
    assert_eq!(
        (flap(4.0, 280.0), flap(9.5, 280.0), flap(4.0, 900.0)),
        (1, 0, 0)
    );
}

#[test]
fn an_exported_card_is_imported_again() {
    let place = Place::new();
    let path = place.path("given away.ron");
    write_atomic(&path, write_card(&card(4)).as_bytes()).unwrap();
    let record = read_record(&path).unwrap();
    assert_eq!(record.current.card, card(4));
    let library = place.library();
    library.add_record(&record).unwrap();
    assert_eq!(names(&library.shelf()), ["Owl"]);
}

/// Peak of this process's memory, MB, where the system tells it.
fn peak_memory() -> Option<u64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    let kilobytes: u64 = line.split_whitespace().nth(1)?.parse().ok()?;
    Some(kilobytes / 1024)
}

fn refused(path: &Path) -> String {
    let from = Instant::now();
    let error = read_record(path).unwrap_err().to_string();
    let took = from.elapsed();
    assert!(
        took < Duration::from_secs(1),
        "{}: took {took:?}",
        path.display()
    );
    error
}

#[test]
fn files_from_strangers_are_refused_in_a_second_and_200_megabytes() {
    let place = Place::new();
    let write = |name: &str, text: &str| {
        let path = place.path(name);
        fs::write(&path, text).unwrap();
        path
    };
    let large = place.path("large.ron");
    fs::File::create(&large)
        .unwrap()
        .set_len(100 * 1024 * 1024)
        .unwrap();
    assert!(refused(&large).contains("larger than the 4194304 bytes"));
    let deep = write("deep.ron", &"[".repeat(900_000));
    assert!(refused(&deep).contains("line 1"));
    let from = DEMO[0].find("sizes: [").unwrap() + "sizes: [".len();
    let to = DEMO[0].rfind("    ],\n    example").unwrap();
    let one = "(name:\"s\",carries:Mass(min:1,max:2),lift:Spring(table:[],turns:1,friction:0),\
               door_height:(min:1,max:2),door_width:(min:1,max:2),least_inner_depth:1,\
               least_inner_height:1),\n";
    let text = format!("{}{}{}", &DEMO[0][..from], one.repeat(5000), &DEMO[0][to..]);
    let many = refused(&write("many.ron", &text));
    assert!(many.contains("sizes: has more than 200 entries"), "{many}");
    let nan = DEMO[0].replacen("diameter: 5.0", "diameter: NaN", 1);
    let nan = refused(&write("nan.ron", &nan));
    assert!(
        nan.contains("line ") && nan.contains("drill.diameter"),
        "{nan}"
    );
    if let Some(peak) = peak_memory() {
        assert!(peak < 200, "the process took {peak} MB");
    }
}
