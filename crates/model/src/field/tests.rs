//! Every field of every part, through all that can be done with it.

mod drafts;
mod jobs;
mod parts;

use super::{Fields, Info, Kind, Usual, Value};

/// Values that a field takes: the least, the most, and the usual one.
fn allowed(info: &Info) -> Vec<Value<'static>> {
    let mut values: Vec<Value<'static>> = match info.kind {
        Kind::Number {
            limits, optional, ..
        } => [Value::Number(limits.least), Value::Number(limits.most)]
            .into_iter()
            .chain(optional.then_some(Value::Unset))
            .collect(),
        Kind::Count(limits) => vec![count(limits.least), count(limits.most)],
        Kind::Flag => vec![Value::Flag(true), Value::Flag(false)],
        Kind::Choice(all) => all.iter().map(|it| Value::Choice(it.name.into())).collect(),
        Kind::Text { .. } | Kind::Material | Kind::CardSize => vec![Value::text("Ä \"b\" 2")],
        Kind::AsTyped { .. } => vec![Value::text("37"), Value::text("")],
    };
    values.extend(info.usual.value());
    values
}

/// Values just outside of what it takes.
fn refused(info: &Info) -> Vec<Value<'static>> {
    let past = |limit: f64, by: f64| {
        let step = limit.abs().max(1.0) * 1e-9;
        Value::Number(limit + by * step)
    };
    match info.kind {
        Kind::Number { limits, .. } => vec![
            if limits.least == super::limits::ABOVE_0 {
                Value::Number(0.0)
            } else {
                past(limits.least, -1.0)
            },
            past(limits.most, 1.0),
            Value::Number(f64::NAN),
            Value::Number(f64::INFINITY),
        ],
        Kind::Count(limits) if limits.most < f64::from(u32::MAX) => {
            let below = (limits.least > 0.0).then(|| count(limits.least - 1.0));
            below
                .into_iter()
                .chain([count(limits.most + 1.0)])
                .collect()
        }
        Kind::Text { needed: true } => vec![Value::text(" ")],
        Kind::Count(_)
        | Kind::Text { needed: false }
        | Kind::Material
        | Kind::CardSize
        | Kind::Choice(_)
        | Kind::Flag
        | Kind::AsTyped { .. } => Vec::new(),
    }
}

/// Another value of the same kind, as unlike the first as may be; limits are not looked at.
fn another(info: &Info, now: &Value<'_>) -> Value<'static> {
    match now {
        Value::Number(now) => Value::Number(now + 1000.5),
        Value::Count(now) => Value::Count(now % 200 + 1),
        Value::Flag(now) => Value::Flag(!now),
        Value::Text(now) => Value::Text(format!("{now} x").into()),
        Value::Choice(now) => {
            let Kind::Choice(all) = info.kind else {
                panic!("a choice of no choices: {info:?}")
            };
            let other = all.iter().find(|it| it.name != now);
            Value::Choice(other.expect("a choice has two").name.into())
        }
        Value::Unset => Value::Number(7.5),
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "limits of counts are whole and positive"
)]
fn count(limit: f64) -> Value<'static> {
    Value::Count(limit as u32)
}

#[test]
fn what_a_row_says_of_a_field_suits_itself() {
    fn look<F: Fields>() {
        let mut seen = std::collections::BTreeSet::new();
        for field in F::all() {
            let info = field.info();
            let words = [info.label, info.name, info.meaning, info.usual.source];
            assert!(words.iter().all(|it| !it.trim().is_empty()), "{info:?}");
            assert!(info.meaning.ends_with('.'), "one sentence: {info:?}");
            assert!(info.path.starts_with('.'), "{info:?}");
            let variant = format!("{field:?}");
            let variant = variant.split('(').next().unwrap_or_default();
            assert!(info.key.ends_with(&format!(".{variant}")), "{info:?}");
            if let Some(limits) = info.kind.limits() {
                assert!(limits.least < limits.most, "{info:?}");
                assert!(limits.why.ends_with('.'), "{info:?}");
            }
            if let Some(usual) = info.usual.value() {
                let of_kind = match (info.kind, &usual) {
                    (Kind::Number { .. }, Value::Number(_)) => true,
                    (Kind::Number { optional, .. }, Value::Unset) => optional,
                    (Kind::Count(_), Value::Count(_)) | (Kind::Flag, Value::Flag(_)) => true,
                    (Kind::Text { .. } | Kind::AsTyped { .. }, Value::Text(_)) => true,
                    (Kind::Choice(all), Value::Choice(name)) => {
                        all.iter().any(|it| it.name == name)
                    }
                    _ => false,
                };
                assert!(of_kind, "the usual value is of another kind: {info:?}");
            }
            assert!(
                seen.insert((field.name(), field.path().to_string())),
                "twice: {info:?}"
            );
        }
        assert!(!seen.is_empty());
    }
    look::<super::HeadField>();
    look::<super::ObstacleField>();
    look::<super::MaterialField>();
    look::<super::BoxField>();
    look::<super::PanelField>();
    look::<super::HorizontalField>();
    look::<super::FixedShelfField>();
    look::<super::LooseShelfField>();
    look::<super::DividerField>();
    look::<super::DoorField>();
    look::<super::LeafField>();
    look::<super::BoreField>();
    look::<super::DraftField>();
    look::<super::DraftSideBoreField>();
    look::<super::DraftTopBoreField>();
    look::<super::DraftDoorBoreField>();
    look::<super::EdgeRangeField>();
    look::<super::SpreadField>();
    look::<super::CutPartField>();
}

#[test]
fn what_is_no_number_has_none_to_begin_with() {
    let flag: Usual = super::HeadField::Invented.info().usual;
    assert!(flag.number().is_nan());
    assert_eq!(super::HeadField::GridStep.info().usual.number(), 32.0);
}
