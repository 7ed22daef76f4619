//! Words of the trade as types, each with a stable name and a label; and how the
//! items of the plan are printed.

/// Declares an enum whose variants have a stable name and a label, and the
/// functions that go with them, so that there is one place for each word.
macro_rules! named {
    (
        $(#[$about:meta])*
        $name:ident {
            $( $(#[$meaning:meta])* $variant:ident = $id:literal, $label:literal; )+
        }
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        #[non_exhaustive]
        pub enum $name {
            $( $(#[$meaning])* $variant, )+
        }

        impl $name {
            /// All of them, in the order they are offered.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// Stable name.
            #[must_use]
            pub const fn id(self) -> &'static str {
                match self {
                    $( Self::$variant => $id, )+
                }
            }

            /// What it is called at the bench.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self {
                    $( Self::$variant => $label, )+
                }
            }

            /// The one with this stable name.
            #[must_use]
            pub fn from_id(id: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.id() == id)
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.label())
            }
        }
    };
}

/// Prints items of the plan by their stable names. They refer to each other, a step
/// to its events and those to results of steps: printed whole, there is no end.
macro_rules! printed_by_name {
    ($($kind:ident),+) => {
        $(impl std::fmt::Debug for $kind {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.debug_tuple(stringify!($kind)).field(&self.id).finish()
            }
        })+
    };
}

pub(crate) use {named, printed_by_name};

#[cfg(test)]
mod tests {
    use crate::choice::CHOICES;
    use crate::event::EVENTS;
    use crate::measure::MEASURES;
    use crate::proof::Proof;
    use crate::step::STEPS;

    #[test]
    fn whatever_refers_to_others_is_printed_by_its_name() {
        for step in STEPS {
            assert_eq!(format!("{step:?}"), format!("Step({:?})", step.id));
            let proof = Proof::Step(step);
            assert_eq!(format!("{proof:?}"), format!("Step(Step({:?}))", step.id));
        }
        for event in EVENTS {
            assert_eq!(format!("{event:?}"), format!("Event({:?})", event.id));
        }
        for measure in MEASURES {
            assert_eq!(format!("{measure:?}"), format!("Measure({:?})", measure.id));
        }
        for choice in CHOICES {
            assert_eq!(format!("{choice:?}"), format!("Choice({:?})", choice.id));
        }
    }
}
