//! A page served by the yard's own server, with a note of every request.

use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex, PoisonError};

use crate::chromium::Failure;

/// A page that is being served. It stops when this is dropped.
pub struct Hosted {
    /// The page's folder.
    pub dist: PathBuf,
    /// Where it is.
    pub address: String,
    server: Child,
    requests: Arc<Mutex<Vec<String>>>,
}

impl Hosted {
    /// Serves the page in this folder.
    pub fn start(dist: &Path) -> Result<Self, Failure> {
        let xtask = std::env::var_os("THOUBOOK_XTASK")
            .ok_or_else(|| Failure::new("THOUBOOK_XTASK is not set; run `cargo xtask report`"))?;
        let mut server = Command::new(xtask)
            .args(["host", "--port", "0", "--print-requests", "--dist"])
            .arg(dist)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()?;
        let output = server
            .stdout
            .take()
            .ok_or_else(|| Failure::new("the server says nothing"))?;
        let mut lines = BufReader::new(output).lines();
        let first = lines.next().transpose()?.unwrap_or_default();
        let origin = first
            .strip_prefix("listening ")
            .ok_or_else(|| Failure::new(format!("the server said `{first}`")))?;
        let address = format!("{origin}/");
        let requests = Arc::new(Mutex::new(Vec::new()));
        let noted = Arc::clone(&requests);
        std::thread::spawn(move || {
            for line in lines.map_while(Result::ok) {
                noted
                    .lock()
                    .unwrap_or_else(PoisonError::into_inner)
                    .push(line);
            }
        });
        Ok(Self {
            dist: dist.to_owned(),
            address,
            server,
            requests,
        })
    }

    /// The requests since this was last asked, each as `GET /path 200`.
    pub fn take_requests(&self) -> Vec<String> {
        std::mem::take(&mut *self.requests.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

impl Drop for Hosted {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}
