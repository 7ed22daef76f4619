//! Waiting for conditions. The limit only ends a test that would hang; no
//! test says anything about how long a thing takes.

use std::time::{Duration, Instant};

/// Long enough for the slowest machine. Who mends a test may have less
/// patience and say so, in seconds.
fn patience() -> Duration {
    let said = std::env::var("THOUBOOK_PATIENCE").ok();
    Duration::from_secs(said.and_then(|text| text.parse().ok()).unwrap_or(90))
}

const STEP: Duration = Duration::from_millis(40);

/// Asks until there is an answer.
pub async fn until<T>(what: &str, mut ask: impl AsyncFnMut() -> Option<T>) -> T {
    let start = Instant::now();
    loop {
        if let Some(answer) = ask().await {
            return answer;
        }
        assert!(start.elapsed() < patience(), "waited in vain for {what}");
        tokio::time::sleep(STEP).await;
    }
}

/// The same where nothing else goes on.
pub fn until_now<T>(what: &str, mut ask: impl FnMut() -> Option<T>) -> T {
    let start = Instant::now();
    loop {
        if let Some(answer) = ask() {
            return answer;
        }
        assert!(start.elapsed() < patience(), "waited in vain for {what}");
        std::thread::sleep(STEP);
    }
}
