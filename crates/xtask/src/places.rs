//! Where things lie in the project.

use std::ffi::OsString;
use std::path::{Path, PathBuf};

use crate::problem::{Outcome, While};

/// The folders of this checkout.
#[derive(Debug, Clone)]
pub struct Places {
    /// The project's own folder, the one with the workspace `Cargo.toml`.
    pub root: PathBuf,
    /// This executable. Taken once, at the start: a later build may replace
    /// the file under the same name.
    pub xtask: PathBuf,
}

impl Places {
    /// The places of the checkout that this executable was built from.
    pub fn find() -> Outcome<Self> {
        let here = Path::new(env!("CARGO_MANIFEST_DIR"));
        let root = here.ancestors().nth(2).unwrap_or(here).to_path_buf();
        let xtask = std::env::current_exe().during("finding this executable")?;
        Ok(Self { root, xtask })
    }

    /// The finished page, ready for any static host.
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// Where cargo puts what it builds.
    pub fn target(&self) -> PathBuf {
        std::env::var_os("CARGO_TARGET_DIR")
            .map_or_else(|| self.root.join("target"), |folder| self.root.join(folder))
    }

    /// Tools of pinned versions, installed for this project only.
    pub fn tools(&self) -> PathBuf {
        self.root.join(".tools")
    }

    /// The cargo that runs this, so that what it calls is of the same version.
    pub fn cargo() -> OsString {
        std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into())
    }
}
