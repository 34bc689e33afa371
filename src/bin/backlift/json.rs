//! Figures for other programs, in SI, on standard output.

use std::io::Write;

use backlift::comparison::figure::StrokeFigure;
use backlift::files::fault::Fault;
use backlift::innings::played::StrokeNow;
use backlift::player::Strength;
use backlift::player::joints::{JOINTS, Joint};
use backlift::uncertain::Uncertain;
use serde_json::{Map, Number, Value, json};

use crate::outcome::Stop;

/// Digits that are shown: more than any figure is worth, fewer than show how binary fractions round.
const DIGITS: usize = 12;

/// The name of a command's figures, `backlift/<command>/<number>`: one more when a key's meaning changed.
pub fn schema(command: &str) -> String {
    let number = match command {
        "check" | "fit" | "pickup" | "trial" => 2,
        _ => 1,
    };
    format!("backlift/{command}/{number}")
}

/// The result of a command as JSON text, its [`schema`] first.
pub fn document(command: &str, result: Value) -> Result<String, Stop> {
    let mut document = joined([json!({ "schema": schema(command) }), result]);
    shorten(&mut document);
    let text = serde_json::to_string_pretty(&document);
    text.map(|it| it + "\n")
        .map_err(|it| Stop::our_mistake(format!("the result cannot be put into JSON: {it}")))
}

/// The keys of several objects in one, in their order.
pub fn joined<const N: usize>(objects: [Value; N]) -> Value {
    let fields = |it| match it {
        Value::Object(fields) => fields,
        _ => Map::new(),
    };
    objects.into_iter().flat_map(fields).collect()
}

/// A figure and its doubt: `mass_kg` and `mass_sd_kg`.
pub fn doubted(name: &str, unit: &str, it: Uncertain) -> Value {
    json!({ (format!("{name}_{unit}")): it.value, (format!("{name}_sd_{unit}")): it.sd })
}

/// Figures of one stroke, each by its key.
pub fn of_stroke(now: &StrokeNow, figures: &[StrokeFigure]) -> Value {
    figures.iter().map(|it| (it.key(), json!(it.of(now)))).collect()
}

/// What every joint gives at rest in either direction, and the speed at which it gives nothing.
pub fn joints(strength: &Strength) -> Value {
    let row = |(j, joint): (usize, &Joint)| {
        json!({
            "joint": joint.name,
            "positive_n_m": strength.positive_n_m[j],
            "negative_n_m": strength.negative_n_m[j],
            "max_rate_rad_s": strength.max_rate_rad_s[j],
        })
    };
    JOINTS.iter().enumerate().map(row).collect()
}

/// Rounds every fraction to [`DIGITS`] significant digits.
fn shorten(value: &mut Value) {
    match value {
        Value::Number(number) if number.is_f64() => {
            let rounded = number.as_f64().map(|it| format!("{it:.*e}", DIGITS - 1));
            let rounded = rounded.and_then(|it| it.parse().ok()).and_then(Number::from_f64);
            if let Some(rounded) = rounded {
                *number = rounded;
            }
        }
        Value::Array(all) => all.iter_mut().for_each(shorten),
        Value::Object(all) => all.values_mut().for_each(shorten),
        _ => {}
    }
}

/// Writes to standard output. A reader that has gone away (`| head`) wants no more: that is no fault.
pub fn print(text: &str) -> Result<(), Stop> {
    match std::io::stdout().lock().write_all(text.as_bytes()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            let fault = format!("the result cannot be written to standard output: {error}");
            Err(Fault::new(fault).help("make room, or send it elsewhere").into())
        }
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::document;

    #[test]
    fn sums_of_tenths_show_no_trace_of_binary_fractions() {
        let text = document("weigh", json!({"T": [0.1 + 0.2, 3, 1e-9]})).unwrap();
        assert!(text.contains("0.3,\n    3,\n    1e-9"), "{text}");
    }

    #[test]
    fn the_schema_comes_first() {
        let text = document("weigh", json!({"bats": [1]})).unwrap();
        assert!(
            text.starts_with("{\n  \"schema\": \"backlift/weigh/1\",\n  \"bats\": ["),
            "{text}"
        );
    }
}
