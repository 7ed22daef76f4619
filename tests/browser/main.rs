//! The main jobs end to end, as a person does them, in real browsers: a
//! driver presses what a finger would press. "Offline" means that the
//! server's process has been killed.
//!
//! Each test is named by the fact it proves and stands once for each engine.

/// Makes three tests of one flow, one for each engine.
macro_rules! each_engine {
    ($($fact:ident),+ $(,)?) => {
        each_engine!(crate::rig::run; $($fact),+);
    };
    ($run:path; $($fact:ident),+) => {
        $(mod $fact {
            use crate::engine::Engine;

            #[test]
            fn in_chromium() {
                $run(Engine::Chromium, stringify!($fact), super::$fact);
            }

            #[test]
            fn in_firefox() {
                $run(Engine::Firefox, stringify!($fact), super::$fact);
            }

            #[test]
            fn in_webkit() {
                $run(Engine::WebKit, stringify!($fact), super::$fact);
            }
        })+
    };
}

mod browser;
mod builds;
mod engine;
mod keypad;
mod measuring;
mod page;
mod places;
mod prepared;
mod process;
mod rig;
mod second_build;
mod server;
mod tightening;
mod wait;

mod flows;
