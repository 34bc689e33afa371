//! Figures for other programs, in SI, on standard output.

use std::io::Write;

use serde::Serialize;

/// The result of a command as JSON text, `"schema": "backlift/<command>/1"` first.
pub fn document(command: &str, result: &impl Serialize) -> serde_json::Result<String> {
    #[derive(Serialize)]
    struct Document<'a, T> {
        schema: String,
        #[serde(flatten)]
        result: &'a T,
    }
    let schema = format!("backlift/{command}/1");
    serde_json::to_string_pretty(&Document { schema, result }).map(|it| it + "\n")
}

/// Writes to standard output. A reader that has gone away (`| head`) wants no more: that is no fault.
pub fn print(text: &str) -> std::io::Result<()> {
    match std::io::stdout().lock().write_all(text.as_bytes()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => Err(error),
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
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
