//! Child processes that are ended the hard way, with all their children.

use std::fs::File;
use std::os::unix::process::CommandExt as _;
use std::path::Path;
use std::process::{Child, Command, Stdio};

use rustix::process::{Pid, Signal, kill_process, kill_process_group};

/// A process and everything it starts.
pub struct Group {
    leader: Child,
}

impl Group {
    /// Starts the command at the head of a process group of its own. What it
    /// says goes into the log.
    pub fn start(command: &mut Command, log: &Path) -> Self {
        let said = File::options()
            .create(true)
            .append(true)
            .open(log)
            .unwrap_or_else(|cause| panic!("{}: {cause}", log.display()));
        let told = said.try_clone().unwrap();
        command
            .process_group(0)
            .stdin(Stdio::null())
            .stdout(said)
            .stderr(told);
        let leader = command.spawn().unwrap_or_else(|cause| {
            panic!(
                "{} can't be started: {cause}",
                command.get_program().display()
            )
        });
        Self { leader }
    }

    /// Whether the first process is still there.
    pub fn is_alive(&mut self) -> bool {
        matches!(self.leader.try_wait(), Ok(None))
    }

    /// SIGKILL to all of them at once: nobody gets to write anything more.
    pub fn kill(&mut self) {
        if let Some(group) = pid(self.leader.id()) {
            let _ = kill_process_group(group, Signal::KILL);
        }
        let _ = self.leader.wait();
    }
}

impl Drop for Group {
    fn drop(&mut self) {
        self.kill();
    }
}

/// SIGKILL to every process that was started with this text in its command
/// line or its environment, and says how many there were. The text has to be
/// one that nothing else can contain, such as the folder of one test.
pub fn kill_all_with(text: &str) -> usize {
    let own = std::process::id();
    let mut found = 0;
    for entry in std::fs::read_dir("/proc").into_iter().flatten().flatten() {
        let Some(id) = entry
            .file_name()
            .to_str()
            .and_then(|name| name.parse().ok())
        else {
            continue;
        };
        if id == own || !mentions(&entry.path(), text) {
            continue;
        }
        if let Some(process) = pid(id)
            && kill_process(process, Signal::KILL).is_ok()
        {
            found += 1;
        }
    }
    found
}

fn mentions(process: &Path, text: &str) -> bool {
    ["cmdline", "environ"].iter().any(|file| {
        std::fs::read(process.join(file)).is_ok_and(|bytes| {
            bytes
                .windows(text.len())
                .any(|window| window == text.as_bytes())
        })
    })
}

fn pid(id: u32) -> Option<Pid> {
    Pid::from_raw(i32::try_from(id).ok()?)
}
