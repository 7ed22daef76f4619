//! What can be made to go wrong, and when.

use std::cell::RefCell;
use std::rc::Rc;

use crate::storage::error::StorageError;

/// Something that goes wrong at one operation.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Fault {
    /// It is not done, and says so.
    Fails(StorageError),
    /// It is done, and says that it was not.
    DoneButFails(StorageError),
    /// A shelf's write leaves half of the text and says that all is well; a
    /// read gives half of it. A vault's write is not torn: it is not done.
    Tears,
    /// A read gives the text of another key, a list of keys gives some more; a
    /// shelf's write goes lost and says that all is well.
    Strays,
    /// Full from here on.
    FullFromNow,
}

/// Which of the two an operation is on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Side {
    /// The shelf.
    Shelf,
    /// The vault.
    Vault,
}

#[derive(Debug, Default)]
struct Script {
    done: Vec<Side>,
    at: Vec<(usize, Fault)>,
    full: bool,
}

/// Counts operations, and says which one is to go wrong. Clones share the count.
#[derive(Clone, Debug, Default)]
pub struct Faults(Rc<RefCell<Script>>);

impl Faults {
    /// Nothing goes wrong.
    #[must_use]
    pub fn none() -> Self {
        Self::default()
    }

    /// This goes wrong at the operation with this number, counted from 0.
    #[must_use]
    pub fn at(operation: usize, fault: Fault) -> Self {
        let faults = Self::default();
        faults.and_at(operation, fault)
    }

    /// The same, and this goes wrong at that operation as well.
    #[must_use]
    pub fn and_at(self, operation: usize, fault: Fault) -> Self {
        self.0.borrow_mut().at.push((operation, fault));
        self
    }

    /// The operations so far.
    #[must_use]
    pub fn operations(&self) -> Vec<Side> {
        self.0.borrow().done.clone()
    }

    /// Nothing goes wrong any more.
    pub fn clear(&self) {
        let mut script = self.0.borrow_mut();
        script.at.clear();
        script.full = false;
    }

    /// Counts one operation; gives what goes wrong at it.
    pub(super) fn next(&self, side: Side) -> Option<Fault> {
        let mut script = self.0.borrow_mut();
        let number = script.done.len();
        script.done.push(side);
        let due = script.at.iter().find(|(at, _)| *at == number);
        let fault = due.map(|(_, fault)| fault.clone());
        script.full |= fault == Some(Fault::FullFromNow);
        fault
    }

    pub(super) fn is_full(&self) -> bool {
        self.0.borrow().full
    }
}
