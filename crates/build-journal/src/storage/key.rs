//! The names that facts are kept under.

use std::fmt;

use sha2::{Digest, Sha256};

use crate::id::{BuildId, FactId};

/// All keys of the book begin with this.
pub const PREFIX: &str = "thoubook/";

/// The name something is kept under.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Key {
    /// A fact: `thoubook/<build>/<fact>`.
    Fact {
        /// The build it belongs to.
        build: BuildId,
        /// The fact.
        fact: FactId,
    },
    /// A text set aside: `thoubook/<build>/aside/<digest>`. The digest is of
    /// the text, so the same text has the same name everywhere.
    Aside {
        /// The build it belongs to.
        build: BuildId,
        /// The first half of the text's SHA-256, in hexadecimal.
        digest: String,
    },
    /// Something else within a build. Its text is set aside.
    Other {
        /// The build.
        build: BuildId,
    },
}

impl Key {
    /// The key of a fact.
    #[must_use]
    pub const fn fact(build: BuildId, fact: FactId) -> Self {
        Self::Fact { build, fact }
    }

    /// The key of a text set aside.
    #[must_use]
    pub fn aside(build: BuildId, text: &str) -> Self {
        Self::Aside {
            build,
            digest: digest(text),
        }
    }

    /// What a key names; `None` when it is not the name of anything in a build.
    #[must_use]
    pub fn parse(key: &str) -> Option<Self> {
        let (build, rest) = key.strip_prefix(PREFIX)?.split_once('/')?;
        let build = BuildId::parse(build).ok()?;
        // One spelling each: an id in capitals is another key to the storage.
        if let Ok(fact) = FactId::parse(rest)
            && fact.to_string() == rest
        {
            return Some(Self::Fact { build, fact });
        }
        match rest.strip_prefix("aside/") {
            Some(digest) if digest.len() == 32 => Some(Self::Aside {
                build,
                digest: digest.to_owned(),
            }),
            _ => Some(Self::Other { build }),
        }
    }

    /// The build it belongs to.
    #[must_use]
    pub const fn build(&self) -> BuildId {
        match self {
            Self::Fact { build, .. } | Self::Aside { build, .. } | Self::Other { build } => *build,
        }
    }

    /// What all keys of a build begin with.
    #[must_use]
    pub fn prefix(build: BuildId) -> String {
        format!("{PREFIX}{build}/")
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Fact { build, fact } => write!(f, "{PREFIX}{build}/{fact}"),
            Self::Aside { build, digest } => write!(f, "{PREFIX}{build}/aside/{digest}"),
            Self::Other { build } => write!(f, "{PREFIX}{build}/"),
        }
    }
}

pub(super) fn digest(text: &str) -> String {
    let hash = Sha256::digest(text.as_bytes());
    hash.iter()
        .take(16)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}
