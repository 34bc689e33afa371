//! Figures for other programs, in SI, on standard output.

use std::io::Write;

use backlift::files::fault::Fault;
use serde::Serialize;
use serde_json::{Number, Value};

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
pub fn document(command: &str, result: &impl Serialize) -> Result<String, Stop> {
    #[derive(Serialize)]
    struct Document<'a, T> {
        schema: String,
        #[serde(flatten)]
        result: &'a T,
    }
    let text = serde_json::to_value(Document { schema: schema(command), result })
        .map(|mut it| {
            shorten(&mut it);
            it
        })
        .and_then(|it| serde_json::to_string_pretty(&it));
    text.map(|it| it + "\n")
        .map_err(|it| Stop::OurMistake(format!("the result cannot be put into JSON: {it}")))
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
    #[test]
    fn sums_of_tenths_show_no_trace_of_binary_fractions() {
        let text =
            super::document("weigh", &serde_json::json!({"T": [0.1 + 0.2, 3, 1e-9]})).unwrap();
        assert!(text.contains("0.3,\n    3,\n    1e-9"), "{text}");
    }

    #[test]
    fn the_schema_comes_first() {
        #[derive(serde::Serialize)]
        struct Result {
            bats: [u8; 1],
        }
        let text = super::document("weigh", &Result { bats: [1] }).unwrap();
        assert!(
            text.starts_with("{\n  \"schema\": \"backlift/weigh/1\",\n  \"bats\": ["),
            "{text}"
        );
    }
}
