//! Words that a fact may hold: each has a stable name.

/// Declares an enum whose variants have a stable name, as they stand in a file.
macro_rules! words {
    ($(#[$about:meta])* $name:ident { $( $(#[$meaning:meta])* $variant:ident = $id:literal; )+ }) => {
        $(#[$about])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub enum $name { $( $(#[$meaning])* $variant, )+ }

        impl $name {
            /// All of them, in the order they are offered.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];
            /// All their names, for a message.
            pub(in crate::fact) const NAMES: &'static str = concat!("one of:" $(, " ", $id)+);

            /// Stable name.
            #[must_use]
            pub const fn id(self) -> &'static str {
                match self { $( Self::$variant => $id, )+ }
            }

            /// The one with this stable name.
            #[must_use]
            pub fn from_id(id: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.id() == id)
            }
        }
    };
}

pub(super) use words;

words! {
    /// What is said of a step.
    Mark {
        /// It was decided on; machine work is only done when it is.
        Planned = "planned";
        /// It was begun.
        Begun = "begun";
        /// It was done. Once more means that it was done again.
        Done = "done";
        /// It was taken apart again.
        Apart = "apart";
        /// It is not needed on this build.
        NotNeeded = "not-needed";
    }
}

words! {
    /// How a check came out.
    Outcome {
        /// Good.
        Good = "good";
        /// Not good.
        Bad = "bad";
    }
}

words! {
    /// What is done about readings taken at another temperature than 20 °C.
    WarmthAnswer {
        /// They are brought to 20 °C.
        ToReference = "to-20";
        /// They count as they were read.
        AsRead = "as-read";
    }
}

words! {
    /// What sort of result a fact speaks of.
    Sort {
        /// A measure.
        Measure = "measure";
        /// A check.
        Check = "check";
        /// A step.
        Step = "step";
    }
}

words! {
    /// How far a part on the parts list has come.
    PartStage {
        /// It is wanted.
        Wanted = "wanted";
        /// It is ordered.
        Ordered = "ordered";
        /// It is here.
        Here = "here";
        /// It was looked over and is right.
        Checked = "checked";
        /// It is fitted.
        Fitted = "fitted";
        /// It went back, or was left over.
        Returned = "returned";
    }
}

words! {
    /// How far machine work has come.
    WorkStage {
        /// It is at the shop.
        Sent = "sent";
        /// It is back, not looked over yet.
        Back = "back";
        /// It was looked over and taken.
        Accepted = "accepted";
        /// It was looked over and is not as ordered.
        Refused = "refused";
    }
}

words! {
    /// The side of the limits that wrecks engines.
    Danger {
        /// Too little of it.
        TooLittle = "too-little";
        /// Too much of it.
        TooMuch = "too-much";
    }
}
