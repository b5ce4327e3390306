//! Machine files (DXF), read as what they are: lines in pairs of a code and a value.

use anyhow::{Context, Result, bail};

use super::output::Output;
use super::tally::{Kind, Tally, pair};

/// What is compared of a machine file.
#[derive(Debug, Default)]
struct Drawing {
    /// Box number and box of its extended data.
    of_box: String,
    /// Panel of its extended data.
    panel: String,
    layers: Vec<String>,
    outlines: Vec<String>,
    circles: Vec<String>,
    others: Vec<String>,
    texts: Vec<String>,
}

impl Drawing {
    fn name(&self) -> String {
        format!("{}: {}", self.of_box, self.panel)
    }
}

/// Compares the machine files of a job by their panels, whatever the files are called.
pub(super) fn compare(job: &str, old: &Output, new: &Output, tally: &mut Tally) -> Result<()> {
    let read = |output: &Output| {
        output
            .dxf
            .iter()
            .map(|text| drawing(text))
            .collect::<Result<Vec<_>>>()
    };
    let (old, new) = (read(old)?, read(new)?);
    let of_box = |drawing: &Drawing| drawing.of_box.clone();
    let (pairs, gone, come) = pair(&old, &new, &[&Drawing::name, &of_box]);
    for (old, new) in pairs {
        let place = format!("{job}/{}", old.name());
        let mut both = |kind, part: fn(&Drawing) -> &Vec<String>| {
            tally.compare(
                kind,
                &place,
                part(old).iter().cloned(),
                part(new).iter().cloned(),
            );
        };
        both(Kind::Layers, |drawing| &drawing.layers);
        both(Kind::Outlines, |drawing| &drawing.outlines);
        both(Kind::Circles, |drawing| &drawing.circles);
        both(Kind::OtherEntities, |drawing| &drawing.others);
        both(Kind::MachineTexts, |drawing| &drawing.texts);
    }
    let names = |left: Vec<&Drawing>| left.into_iter().map(Drawing::name).collect::<Vec<_>>();
    tally.compare(Kind::Outlines, job, names(gone), names(come));
    Ok(())
}

/// Reads layers and entities of a machine file.
fn drawing(text: &str) -> Result<Drawing> {
    let mut drawing = Drawing::default();
    let (mut section, mut record) = (String::new(), Vec::new());
    let mut lines = text.lines().map(str::trim);
    while let Some(code) = lines.next() {
        let code: i32 = code
            .parse()
            .with_context(|| format!("“{code}” is no code of a DXF"))?;
        let Some(value) = lines.next() else {
            bail!("a DXF ends within a pair")
        };
        if code == 0 {
            drawing.take(&section, &record);
            record.clear();
        } else if code == 2 && record.first() == Some(&(0, "SECTION")) {
            section = value.to_owned();
        }
        record.push((code, value));
    }
    Ok(drawing)
}

impl Drawing {
    /// Takes up one record, which starts with its kind.
    fn take(&mut self, section: &str, record: &[(i32, &str)]) {
        let Some((kind, pairs)) = record.split_first() else {
            return;
        };
        match (section, kind.1) {
            ("TABLES", "LAYER") => {
                let name = pairs.iter().find(|(code, _)| *code == 2);
                self.layers.extend(name.map(|(_, name)| (*name).to_owned()));
            }
            ("ENTITIES", "LWPOLYLINE" | "POLYLINE" | "VERTEX" | "LINE") => {
                self.outlines.push(geometry(kind.1, pairs));
            }
            ("ENTITIES", "CIRCLE") => self.circles.push(geometry(kind.1, pairs)),
            ("ENTITIES", "TEXT" | "MTEXT") => self.texts.push(geometry(kind.1, pairs)),
            ("ENTITIES", "SECTION" | "ENDSEC") => {}
            ("ENTITIES", other) => self.others.push(geometry(other, pairs)),
            _ => {}
        }
        if section == "ENTITIES" {
            self.take_words(pairs);
        }
    }

    /// Takes up the words of the extended data: a label, then its value.
    fn take_words(&mut self, pairs: &[(i32, &str)]) {
        let mut label = None;
        for (code, value) in pairs {
            match (*code, label.take()) {
                (1000, None) => label = Some(*value),
                (1000, Some(label)) => self.take_word(label, value),
                (1071, Some("box number")) => self.of_box.insert_str(0, value),
                _ => {}
            }
        }
    }

    fn take_word(&mut self, label: &str, value: &str) {
        match label {
            "box" => self.of_box.push_str(&format!(" {value}")),
            "panel" => value.clone_into(&mut self.panel),
            _ => {}
        }
        self.texts.push(format!("{label}: {value}"));
    }
}

/// An entity as a text: its layer, all its numbers digit by digit, and the numbers of its extended
/// data under their labels. Handles and words of the extended data are left out.
fn geometry(kind: &str, pairs: &[(i32, &str)]) -> String {
    let mut words = vec![kind.to_owned()];
    let mut label = "";
    for (code, value) in pairs {
        match code {
            1 | 8 | 10..=59 | 70..=79 | 90..=99 | 210..=239 => {
                words.push(format!("{code}={value}"));
            }
            1000 => label = value,
            1040 | 1071 => words.push(format!("{label}={value}")),
            _ => {}
        }
    }
    words.join(" ")
}
