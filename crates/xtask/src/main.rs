//! The yard: `cargo xtask …` finds or installs what the project needs, then
//! builds, serves and tests it. Start reading at [`command`].

mod browsers;
mod command;
mod cut;
mod dist;
mod host;
mod http;
mod icons;
mod lighthouse;
mod markup;
mod pack;
mod page;
mod places;
mod policy;
mod problem;
mod report;
mod run;
mod serve;
mod styles;
mod test;
mod tools;
mod worker;

use std::process::ExitCode;

fn main() -> ExitCode {
    let done = command::read(lexopt::Parser::from_env()).and_then(command::carry_out);
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("\nxtask: {problem}");
            ExitCode::FAILURE
        }
    }
}
