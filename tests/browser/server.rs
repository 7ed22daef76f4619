//! The page's own server, as a child process that can be stopped for good.

use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::places;
use crate::process::Group;
use crate::wait::until_now;

/// A running server of one folder.
pub struct Server {
    process: Group,
    port: u16,
    log: PathBuf,
    base: String,
}

impl Server {
    /// Serves a finished page under a path with a slash at both ends.
    pub fn start(dist: &Path, base: &str, log: &Path) -> Self {
        assert!(
            dist.join("index.html").is_file(),
            "{} holds no page. Run: cargo xtask test",
            dist.display()
        );
        let mut command = Command::new(places::xtask());
        command
            .args(["host", "--port", "0", "--print-requests", "--base", base])
            .arg("--dist")
            .arg(dist);
        let process = Group::start(&mut command, log);
        let port = until_now("the server to say its port", || {
            let said = std::fs::read_to_string(log).unwrap_or_default();
            said.lines()
                .find_map(|line| line.strip_prefix("listening http://127.0.0.1:"))
                .and_then(|port| port.trim().trim_end_matches('/').parse().ok())
        });
        Self {
            process,
            port,
            log: log.to_owned(),
            base: base.to_owned(),
        }
    }

    /// Where the page is.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{}", self.port, self.base)
    }

    /// Kills the process and makes sure that nobody answers any more.
    pub fn stop(&mut self) {
        self.process.kill();
        until_now("the port to refuse", || {
            TcpStream::connect(("127.0.0.1", self.port))
                .is_err()
                .then_some(())
        });
    }

    /// What was asked of it, a line a request: `GET /path 200`.
    pub fn requests(&self) -> Vec<String> {
        std::fs::read_to_string(&self.log)
            .unwrap_or_default()
            .lines()
            .filter(|line| {
                line.starts_with("GET ") || line.starts_with("HEAD ") || line.starts_with("POST ")
            })
            .map(str::to_owned)
            .collect()
    }
}
