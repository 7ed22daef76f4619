//! The shape of a step.

use crate::caution::{Caution, DEFER, Harm};
use crate::engine::{ALWAYS, Engine, When};
use crate::event::Event;
use crate::measure::Per;
use crate::named::{named, printed_by_name};
use crate::proof::Proof;
use crate::supply::Supply;

named! {
    /// A stretch of the whole job.
    Phase {
        /// Before the engine comes apart, and taking it apart.
        Teardown = "teardown", "taking apart";
        /// Measuring what came out, and deciding.
        Inspection = "inspection", "measuring and deciding";
        /// At the machine shop.
        Shop = "shop", "machine shop";
        /// Receiving, cleaning and fitting on trial.
        TrialFit = "trial-fit", "cleaning and trial fits";
        /// Assembly for good: the bottom end.
        BottomEnd = "bottom-end", "assembly, bottom end";
        /// Assembly for good: the top end and what is bolted on.
        TopEnd = "top-end", "assembly, top end";
        /// First start, running in, closing the book.
        Running = "running", "first start and running in";
    }
}

/// One thing that is done, with everything the trade knows about it.
pub struct Step {
    /// Stable name.
    pub id: &'static str,
    /// What is done, in a few words.
    pub label: &'static str,
    /// Which stretch of the job it belongs to.
    pub phase: Phase,
    /// On which engines.
    pub when: When,
    /// On which parts, one by one.
    pub per: Per,
    /// Whether it is done only when it was decided on, as machine work is.
    pub optional: bool,
    /// Who does it.
    pub by: By,
    /// What has to be done before it.
    pub needs: &'static [Need],
    /// What has to be on the bench before it.
    pub in_hand: &'static [&'static Supply],
    /// What it proves.
    pub proves: &'static [Proof],
    /// What it does to the engine, and so to earlier results.
    pub causes: &'static [&'static Event],
    /// The tools for it, in the words of the bench.
    pub tools: &'static [&'static str],
    /// How long it takes one careful person, from and to. Common practice.
    pub minutes: (u16, u16),
    /// Whether it may be left half done.
    pub sitting: Sitting,
    /// Warnings.
    pub cautions: &'static [Caution],
}

printed_by_name!(Step);

/// Who does a step.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum By {
    /// The builder.
    Builder,
    /// A machine shop; the step waits for it.
    Shop,
}

/// Whether a step may be left half done.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sitting {
    /// At any time.
    MayPause,
    /// Between one part and the next, not within one.
    BetweenParts(&'static str),
    /// Not once it is begun, for this reason.
    InOneGo(&'static str),
}

/// Something that has to be done before, or better is.
#[derive(Clone, Copy, Debug)]
pub struct Need {
    /// The earlier step.
    pub step: &'static Step,
    /// How strict it is.
    pub strength: Strength,
    /// On which engines it is needed.
    pub when: When,
}

/// How strict a need is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Strength {
    /// Without it the step cannot be done, or spoils something.
    Hard,
    /// Without it work may be done twice.
    Soft,
}

/// Has to be done before.
pub(super) const fn after(step: &'static Step) -> Need {
    Need {
        step,
        strength: Strength::Hard,
        when: ALWAYS,
    }
}

/// Is better done before.
pub(super) const fn better_after(step: &'static Step) -> Need {
    Need {
        step,
        strength: Strength::Soft,
        when: ALWAYS,
    }
}

impl Need {
    /// The same, only on engines like this.
    pub(super) const fn on(mut self, when: When) -> Self {
        self.when = when;
        self
    }
}

/// What steps have in common.
pub(super) const PLAIN: Step = Step {
    id: "",
    label: "",
    phase: Phase::Teardown,
    when: ALWAYS,
    per: Per::Engine,
    optional: false,
    by: By::Builder,
    needs: &[],
    in_hand: &[],
    proves: &[],
    causes: &[],
    tools: &[],
    minutes: (0, 0),
    sitting: Sitting::MayPause,
    cautions: &[],
};

impl Step {
    /// What has to be done before it on this engine. Steps that the engine has
    /// no use for are left out.
    pub fn needs_on(&'static self, engine: &Engine) -> impl Iterator<Item = &'static Need> {
        self.needs
            .iter()
            .filter(move |need| need.when.applies_to(engine) && need.step.when.applies_to(engine))
    }

    /// Whether somebody may be hurt by it.
    #[must_use]
    pub fn can_hurt(&self) -> bool {
        self.cautions
            .iter()
            .any(|caution| caution.harm == Harm::Person)
    }

    /// The warnings as they are shown: those for people first, with what goes
    /// with each of them, then those for the engine.
    pub fn warnings(&self) -> impl Iterator<Item = &'static str> {
        let of = |harm| {
            let cautions = self.cautions.iter();
            cautions.filter_map(move |one| (one.harm == harm).then_some(one.text))
        };
        of(Harm::Person)
            .chain(self.can_hurt().then_some(DEFER))
            .chain(of(Harm::Engine))
    }
}

/// Two steps are the same when their ids are: comparing all they refer to
/// would go round in circles.
impl PartialEq for Step {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Eq for Step {}
