//! What can be asked of the yard.

use std::path::PathBuf;

use lexopt::{Arg, Parser, ValueExt as _};

use crate::host::{Host, Reach};
use crate::places::Places;
use crate::problem::{Outcome, Problem, While};
use crate::report::{self, Budgets};
use crate::test::{self, Part};
use crate::{icons, page, serve};

const HELP: &str = "\
cargo xtask COMMAND

  serve [--port N] [--lan]   build the app and serve it on this machine;
                             with --lan, on the local network too
  build                      build the app into dist/, for any static host
  test [--only PART]... [-- WORDS]
                             run every test, or these parts: format, lint,
                             host, page, build, browser; what stands behind
                             `--` goes to the test programs
  ci                         report with its budgets enforced, then every test
  report [--enforce]         what the page costs: bytes, start-up, the wait for
                             a verdict; with --enforce a broken budget fails
  screenshots                pictures of every screen into tests/screenshots,
                             and the one that the readme shows
  host [--port N] [--dist FOLDER] [--base /PATH/] [--print-requests] [--lan]
                             serve a finished page; port 0 is any free one
  icons                      draw the icons anew from static/icons/icon.svg

Tools of pinned versions are put into .tools/ of the project when they are
not there yet. Browsers and what else `test` needs come from Debian's packages.
";

/// A command with what was said about it.
#[derive(Debug)]
pub enum Command {
    /// Say what can be asked.
    Help,
    /// Build the app.
    Build,
    /// Build the app and serve it.
    Serve {
        /// The port that was asked for, if any.
        port: Option<u16>,
        /// From where it can be reached.
        reach: Reach,
    },
    /// Draw the icons.
    Icons,
    /// Run tests.
    Test {
        /// The parts to run.
        parts: Vec<Part>,
        /// What goes to the test programs.
        besides: Vec<String>,
    },
    /// Measure what the page costs.
    Report(Budgets),
    /// Take pictures of every screen.
    Screenshots,
    /// The report, then every test.
    Everything,
    /// Serve a finished page.
    Host {
        /// The folder, if not `dist/`.
        dist: Option<PathBuf>,
        /// The port.
        port: u16,
        /// The path the page lies under.
        base: String,
        /// From where it can be reached.
        reach: Reach,
        /// Whether each request is printed.
        print_requests: bool,
    },
}

/// What may stand behind a command.
struct Options {
    port: Option<u16>,
    dist: Option<PathBuf>,
    base: String,
    reach: Reach,
    print_requests: bool,
    parts: Vec<Part>,
    besides: Vec<String>,
    budgets: Budgets,
}

/// Reads the command line.
pub fn read(mut parser: Parser) -> Outcome<Command> {
    let mut name = None;
    let mut options = Options {
        port: None,
        dist: None,
        base: "/".to_owned(),
        reach: Reach::ThisMachine,
        print_requests: false,
        parts: Vec::new(),
        besides: Vec::new(),
        budgets: Budgets::Reported,
    };
    let reading = "reading the command line (`cargo xtask help` shows what there is)";
    while let Some(argument) = parser.next().during(reading)? {
        match argument {
            Arg::Value(word) if name.is_none() => name = Some(word.string().during(reading)?),
            // Only what stands behind `--` may begin with a dash.
            Arg::Value(word) => options.besides.push(word.string().during(reading)?),
            Arg::Short('h') | Arg::Long("help") => return Ok(Command::Help),
            Arg::Long("port") => {
                options.port = Some(
                    parser
                        .value()
                        .and_then(|value| value.parse())
                        .during(reading)?,
                );
            }
            Arg::Long("dist") => options.dist = Some(parser.value().during(reading)?.into()),
            Arg::Long("base") => {
                options.base = base(
                    &parser
                        .value()
                        .and_then(|value| value.string())
                        .during(reading)?,
                );
            }
            Arg::Long("enforce") => options.budgets = Budgets::Enforced,
            Arg::Long("only") => {
                let part = parser
                    .value()
                    .and_then(|value| value.string())
                    .during(reading)?;
                options.parts.push(Part::named(&part)?);
            }
            Arg::Long("lan") => options.reach = Reach::LocalNetwork,
            Arg::Long("print-requests") => options.print_requests = true,
            other => return Err(other.unexpected()).during(reading),
        }
    }
    named(name.as_deref(), options)
}

fn named(name: Option<&str>, options: Options) -> Outcome<Command> {
    if name != Some("test")
        && let Some(word) = options.besides.first()
    {
        return Err(Problem::new(format!("`{word}` is one word too many")));
    }
    match name {
        None | Some("help") => Ok(Command::Help),
        Some("build") => Ok(Command::Build),
        Some("icons") => Ok(Command::Icons),
        Some("ci") => Ok(Command::Everything),
        Some("screenshots") => Ok(Command::Screenshots),
        Some("report") => Ok(Command::Report(options.budgets)),
        Some("test") => Ok(Command::Test {
            parts: if options.parts.is_empty() {
                Part::ALL.to_vec()
            } else {
                options.parts
            },
            besides: options.besides,
        }),
        Some("serve") => Ok(Command::Serve {
            port: options.port,
            reach: options.reach,
        }),
        Some("host") => Ok(Command::Host {
            dist: options.dist,
            port: options.port.unwrap_or(serve::USUAL_PORT),
            base: options.base,
            reach: options.reach,
            print_requests: options.print_requests,
        }),
        Some(other) => Err(Problem::new(format!(
            "there is no command `{other}`\n\n{HELP}"
        ))),
    }
}

/// A path with a slash at both ends.
fn base(path: &str) -> String {
    match path.trim_matches('/') {
        "" => "/".to_owned(),
        path => format!("/{path}/"),
    }
}

/// Does what was asked.
pub fn carry_out(command: Command) -> Outcome<()> {
    let places = Places::find()?;
    match command {
        Command::Help => {
            print!("{HELP}");
            Ok(())
        }
        Command::Build => page::build_app(&places),
        Command::Icons => icons::draw(&places),
        Command::Screenshots => test::screenshots(&places),
        Command::Report(budgets) => report::report(&places, budgets),
        // The tests go last: the last lines are then cargo's own summary.
        Command::Everything => report::report(&places, Budgets::Enforced)
            .and_then(|()| test::test(&places, &Part::ALL, &[])),
        Command::Test { parts, besides } => test::test(&places, &parts, &besides),
        Command::Serve { port, reach } => serve::serve(&places, port, reach),
        Command::Host {
            dist,
            port,
            base,
            reach,
            print_requests,
        } => serve::host(Host {
            dist: dist.unwrap_or_else(|| places.dist()),
            port,
            base,
            reach,
            print_requests,
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_words(words: &[&str]) -> Outcome<Command> {
        read(Parser::from_args(words))
    }

    #[test]
    fn a_host_may_be_given_everything() {
        let command = read_words(&[
            "host",
            "--port",
            "0",
            "--base",
            "some/book",
            "--dist",
            "d",
            "--print-requests",
        ]);
        assert!(matches!(
            command,
            Ok(Command::Host { dist: Some(dist), port: 0, base, reach: Reach::ThisMachine, print_requests: true })
                if dist.as_os_str() == "d" && base == "/some/book/"
        ));
    }

    #[test]
    fn serving_stays_on_this_machine_unless_told_otherwise() {
        assert!(matches!(
            read_words(&["serve"]),
            Ok(Command::Serve {
                port: None,
                reach: Reach::ThisMachine
            })
        ));
        assert!(matches!(
            read_words(&["serve", "--lan"]),
            Ok(Command::Serve {
                port: None,
                reach: Reach::LocalNetwork
            })
        ));
    }

    #[test]
    fn tests_may_be_run_in_part_and_by_name() {
        let command = read_words(&[
            "test", "--only", "host", "--only", "browser", "--", "--exact", "name",
        ]);
        assert!(matches!(
            command,
            Ok(Command::Test { parts, besides })
                if parts == [Part::Host, Part::Browser] && besides == ["--exact", "name"]
        ));
        assert!(matches!(
            read_words(&["test"]),
            Ok(Command::Test { parts, besides }) if parts == Part::ALL && besides.is_empty()
        ));
        assert!(read_words(&["test", "--only", "nothing"]).is_err());
    }

    #[test]
    fn what_is_not_understood_is_refused() {
        assert!(read_words(&["bake"]).is_err());
        assert!(read_words(&["serve", "--port", "many"]).is_err());
        assert!(read_words(&["serve", "--loud"]).is_err());
        assert!(read_words(&["serve", "twice"]).is_err());
    }
}
