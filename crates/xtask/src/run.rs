//! Running other programs, with their own output let through.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Instant;

use crate::problem::{Outcome, Problem, While};

/// Says what happens next, on a line that stands out between other programs'
/// output.
pub fn say(words: impl AsRef<str>) {
    println!("\n── {}", words.as_ref());
}

/// Runs a program to its end. Its output goes straight to the terminal, so
/// that its own progress shows.
pub fn run(command: &mut Command) -> Outcome<()> {
    let line = shown(command);
    let started = Instant::now();
    let status = command.status().during(format!("starting `{line}`"))?;
    if status.success() {
        return Ok(());
    }
    Err(Problem::new(format!(
        "`{line}` failed ({status}) after {:.0} s",
        started.elapsed().as_secs_f64()
    )))
}

/// What a program prints, when it ran and succeeded.
pub fn printed(program: impl AsRef<std::ffi::OsStr>, arguments: &[&str]) -> Option<String> {
    let output = Command::new(program)
        .args(arguments)
        .stdin(Stdio::null())
        .stderr(Stdio::null())
        .output()
        .ok()?;
    if !output.status.success() {
        return None;
    }
    String::from_utf8(output.stdout).ok()
}

/// The first executable of this name on the search path.
pub fn on_path(name: &str) -> Option<PathBuf> {
    let folders = std::env::var_os("PATH")?;
    std::env::split_paths(&folders)
        .map(|folder| folder.join(name))
        .find(|file| is_executable(file))
}

/// Whether a file is there and may be executed.
pub fn is_executable(file: &Path) -> bool {
    use std::os::unix::fs::PermissionsExt as _;
    file.metadata()
        .is_ok_and(|about| about.is_file() && about.permissions().mode() & 0o111 != 0)
}

/// The command as a person would type it.
fn shown(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(
        command
            .get_args()
            .map(|word| word.to_string_lossy().into_owned()),
    );
    words.join(" ")
}
