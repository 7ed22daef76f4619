//! Warnings that ride on the step that needs them.

/// What comes to harm when a caution is not heeded.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Harm {
    /// A person.
    Person,
    /// The engine, a part or the work.
    Engine,
}

/// A warning, plain and short.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Caution {
    /// What comes to harm.
    pub harm: Harm,
    /// The warning.
    pub text: &'static str,
}

/// What goes with every warning that somebody may be hurt.
pub const DEFER: &str = "The maker's sheet and local rules come first. Where the work needs a licence or two people, get them.";

/// Somebody may be hurt.
pub(crate) const fn person(text: &'static str) -> Caution {
    Caution {
        harm: Harm::Person,
        text,
    }
}

/// Something may be spoilt.
pub(crate) const fn engine(text: &'static str) -> Caution {
    Caution {
        harm: Harm::Engine,
        text,
    }
}
