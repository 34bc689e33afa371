//! Puts a command's files in their place, and says where they are.

use backlift::files::fault::Fault;
use backlift::files::save::Folder;

/// Commits a folder. A line a file, unless the output is for another program.
pub fn written(folder: Folder, json: bool) -> Result<String, Fault> {
    let files = folder.commit()?;
    let said = files.iter().map(|path| format!("Wrote {}\n", path.display()));
    Ok(if json { String::new() } else { said.collect() })
}
