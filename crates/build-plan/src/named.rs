//! Words of the trade as types: each has a stable name and a label.

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

pub(crate) use named;
