//! A load in the form in which the paper has it, shown in the other usual forms.

use egui::{Label, RichText, Ui};
use flapwright_model::card_draft::{CardDraft, LoadGiven, columns};
use flapwright_model::length::{Unit, parse_length};
use flapwright_model::measure::Measure;
use flapwright_motion::load_forms::{
    GivenLoad, LoadDoor, LoadForms, height_times_mass_value, load_forms,
};

use super::board::Board;
use crate::window::tokens::tokens;

/// The form in which a load is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Form {
    /// As the chosen row of the table has it.
    #[default]
    Row,
    Mass,
    HeightTimesMass,
    Moment,
    StrutForce,
}

/// What is asked.
#[derive(Debug, Clone, Default)]
pub(crate) struct LoadAsk {
    form: Form,
    value: String,
    height: String,
    degrees: String,
    arm: String,
}

/// Asks for a load and shows its forms.
pub(super) fn load_forms_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    ask: &mut LoadAsk,
    draft: &mut CardDraft,
    row: usize,
) {
    let header =
        egui::CollapsingHeader::new("The load in other forms").id_salt(("load forms", board.salt));
    header.show(ui, |ui| {
        let forms = [
            (Form::Row, "most of the chosen row"),
            (Form::Mass, "a door mass"),
            (Form::HeightTimesMass, "height times mass"),
            (Form::Moment, "a moment"),
            (Form::StrutForce, "a force at the struts"),
        ];
        board.choice(ui, "load.form", "given is", "", &mut ask.form, &forms);
        if ask.form != Form::Row {
            let hint = "In the unit of the paper's loads.";
            board.number(ui, "load.value", "load", hint, &mut ask.value);
        }
        let hint =
            "Height of the door that the load is said of; empty: the greatest of the chosen size.";
        board.number(ui, "load.height", "door height", hint, &mut ask.height);
        let hint = "Opening angle that moments and forces are said at; empty: 90.";
        board.number(ui, "load.degrees", "at degrees", hint, &mut ask.degrees);
        let hint =
            "Distance of the struts' line from the hinge line at that angle; empty without struts.";
        board.number(ui, "load.arm", "lever of the struts", hint, &mut ask.arm);
        match answer(ask, draft, row) {
            Ok((forms, door)) => {
                for (name, text) in forms.texts(door, draft.paper.loads) {
                    ui.horizontal(|ui| {
                        ui.label(RichText::new(name).color(tokens(ui).text_soft));
                        ui.label(text);
                    });
                }
                if ask.form != Form::Row {
                    put_ui(ui, draft, row, &forms);
                }
            }
            Err(why) => {
                ui.add(Label::new(RichText::new(why).small().color(tokens(ui).text_soft)).wrap());
            }
        }
        let told = "Of an even door that turns about its upper edge.";
        ui.label(RichText::new(told).small().color(tokens(ui).text_soft));
    });
}

/// Buttons that put the mass into the table.
fn put_ui(ui: &mut Ui, draft: &mut CardDraft, row: usize, forms: &LoadForms) {
    if draft.paper.load_given != LoadGiven::MassOrMoment {
        return;
    }
    ui.horizontal(|ui| {
        for (title, words) in [
            (columns::LOAD_MIN, "Put the mass into load min"),
            (columns::LOAD_MAX, "Put the mass into load max"),
        ] {
            if ui.small_button(words).clicked()
                && let Some(column) = draft.sizes.column(title)
                && let Some(cell) = draft
                    .sizes
                    .rows
                    .get_mut(row)
                    .and_then(|row| row.get_mut(column))
            {
                let unit = draft.paper.loads;
                *cell = format!("{:.3}", Measure::Mass.number(forms.mass, unit));
            }
        }
    });
}

/// The load of the question in all forms, or what is still needed.
fn answer(ask: &LoadAsk, draft: &CardDraft, row: usize) -> Result<(LoadForms, LoadDoor), String> {
    let unit = draft.paper.length;
    let length = |what: &str, text: &str| {
        parse_length(text, unit).map_err(|error| format!("the {what} is not known: {error}"))
    };
    let or_row = |text: &str, title: &str| {
        if text.trim().is_empty() {
            draft.sizes.under(row, title).to_owned()
        } else {
            text.to_owned()
        }
    };
    let at_row = draft.sizes.under(row, columns::AT_ANGLE);
    let degrees = match (ask.degrees.trim(), at_row) {
        ("", "") => 90.0,
        ("", text) | (text, _) => plain(text.trim_end_matches('°'), "angle")?,
    };
    let arm = match ask.arm.trim() {
        "" => None,
        text => Some(length("lever", text)?),
    };
    let door = LoadDoor {
        height: length("door height", &or_row(&ask.height, columns::HEIGHT_MAX))?,
        at_degrees: degrees,
        strut_arm: arm,
    };
    let given = given(ask, draft, row)?;
    load_forms(given, door)
        .map(|forms| (forms, door))
        .map_err(|error| error.to_string())
}

fn given(ask: &LoadAsk, draft: &CardDraft, row: usize) -> Result<GivenLoad, String> {
    let loads: Unit = draft.paper.loads;
    let text = match ask.form {
        Form::Row => draft.sizes.under(row, columns::LOAD_MAX),
        _ => ask.value.trim(),
    };
    let number = plain(text, "load")?;
    let moment = !draft.sizes.under(row, columns::AT_ANGLE).is_empty();
    Ok(match ask.form {
        Form::Row if draft.paper.load_given == LoadGiven::HeightTimesMass => {
            GivenLoad::HeightTimesMass(height_times_mass_value(number, loads))
        }
        Form::Row if moment => GivenLoad::Moment(Measure::Moment.value(number, loads)),
        Form::Row | Form::Mass => GivenLoad::Mass(Measure::Mass.value(number, loads)),
        Form::HeightTimesMass => GivenLoad::HeightTimesMass(height_times_mass_value(number, loads)),
        Form::Moment => GivenLoad::Moment(Measure::Moment.value(number, loads)),
        Form::StrutForce => GivenLoad::StrutForce(Measure::Force.value(number, loads)),
    })
}

fn plain(text: &str, what: &str) -> Result<f64, String> {
    let text = text.trim();
    text.replace(',', ".").parse().map_err(|_not_a_number| {
        format!("the {what} is not known: a number such as 12.5 is wanted")
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use flapwright_model::card::OpeningKind;

    #[test]
    fn the_chosen_row_is_shown_in_the_other_forms() {
        let mut draft = CardDraft::blank(OpeningKind::TopHingedFlap);
        for (title, text) in [(columns::LOAD_MAX, "5"), (columns::HEIGHT_MAX, "400")] {
            let column = draft.sizes.column(title).unwrap();
            text.clone_into(&mut draft.sizes.rows[0][column]);
        }
        let (forms, _) = answer(&LoadAsk::default(), &draft, 0).unwrap();
        // 5 kg on a door of 0.4 m, level: m g H/2 = 5 x 9.80665 x 0.2 (statics, by hand).
        assert!((forms.moment - 9.80665).abs() < 1e-9);
        assert!((forms.height_times_mass - 2000.0).abs() < 1e-9);
        draft.sizes.rows[0].iter_mut().for_each(String::clear);
        assert!(
            answer(&LoadAsk::default(), &draft, 0)
                .unwrap_err()
                .contains("not known")
        );
    }
}
