//! What the page costs: bytes, start-up, and the wait for a verdict. Run it
//! with `cargo xtask report`, which builds both pages first.
//!
//! Times depend on the machine, so no time is a limit. The two budgets are a
//! number of bytes and a ratio; with `--enforce` a broken budget fails the run.

mod bench;
mod big_build;
mod chromium;
mod clock;
mod figures;
mod films;
mod hosted;
mod keystroke;
mod size;
mod startup;
mod taps;

use std::path::PathBuf;
use std::process::ExitCode;

use chromium::Failure;
use hosted::Hosted;

/// All that a first visit loads, in bytes after brotli at its best.
const SIZE_BUDGET: usize = 220 * 1024;

/// The app's warm start, as a multiple of the bare page's.
const WARM_BUDGET: f64 = 1.6;

fn main() -> ExitCode {
    let enforce = std::env::args().any(|word| word == "--enforce");
    let only: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| !word.starts_with("--"))
        .collect();
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build();
    let done = runtime
        .map_err(Failure::from)
        .and_then(|runtime| runtime.block_on(report(&only)));
    match done {
        Ok(broken) if broken.is_empty() => ExitCode::SUCCESS,
        Ok(broken) => {
            for budget in &broken {
                println!("OVER BUDGET: {budget}");
            }
            if enforce {
                ExitCode::FAILURE
            } else {
                ExitCode::SUCCESS
            }
        }
        Err(failure) => {
            eprintln!("the report could not be made: {failure}");
            ExitCode::FAILURE
        }
    }
}

/// Measures and prints everything, or only what is named of `keys` and `taps`,
/// for who works on that; says which budgets are broken.
async fn report(only: &[String]) -> Result<Vec<String>, Failure> {
    let app = Hosted::start(&folder("THOUBOOK_DIST")?)?;
    let mut broken = Vec::new();
    if !only.is_empty() {
        let named = |part: &str| only.iter().any(|name| name == part);
        if named("keys") {
            println!("{}", big_build::measure(&app).await?);
        }
        if named("taps") {
            println!("{}", taps::measure(&app).await?);
        }
        return Ok(broken);
    }
    let bare = Hosted::start(&folder("THOUBOOK_BARE")?)?;

    let visit = startup::first_visit(&app).await?;
    let size = size::of(&app.dist, &visit.loaded)?;
    println!("What a first visit loads, in bytes (brotli 11)\n{size}");
    let kept = size::of(&app.dist, &visit.kept)?;
    println!("What is then fetched behind it, to open without a signal\n{kept}");
    println!(
        "budget {SIZE_BUDGET} bytes, {:.0} % used\n",
        figures::percent(size.total(), SIZE_BUDGET)
    );
    if size.total() > SIZE_BUDGET {
        broken.push(format!("{} bytes of {SIZE_BUDGET}", size.total()));
    }

    let startup = startup::measure(&app, &bare).await?;
    println!("{startup}");
    println!("budget {WARM_BUDGET} for the warm start\n");
    if startup.warm_ratio() > WARM_BUDGET {
        broken.push(format!(
            "warm start {:.2} times the bare page, of {WARM_BUDGET}",
            startup.warm_ratio()
        ));
    }

    println!("{}", keystroke::measure(&app).await?);
    println!("{}", big_build::measure(&app).await?);
    println!("{}", taps::measure(&app).await?);
    println!("{}", films::measure(&app).await?);
    Ok(broken)
}

fn folder(variable: &str) -> Result<PathBuf, Failure> {
    std::env::var_os(variable)
        .map(PathBuf::from)
        .ok_or_else(|| Failure::new(format!("{variable} is not set; run `cargo xtask report`")))
}
