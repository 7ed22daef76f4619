//! The count of each topic, its line, and the test that stands for it.

use std::collections::BTreeMap;
use std::panic::catch_unwind;
use std::process::ExitCode;

use libtest_mimic::{Arguments, Failed, Trial};

use super::Subject;
use super::compare::{agrees, self_check};
use super::table::{Entry, Table, read_all};

/// How the rows of one topic came out.
#[derive(Default)]
struct Count {
    rows: usize,
    passed: usize,
    unanswered: usize,
    /// A sentence for each row that failed.
    failures: Vec<String>,
}

/// Asks every row, prints the lines and reports each topic as a test.
pub fn run(subjects: &[&[Subject]]) -> ExitCode {
    let arguments = Arguments::from_args();
    let mut trials = vec![Trial::test("the_comparing_itself", || {
        self_check().map_err(Failed::from)
    })];
    match read_all() {
        Ok(tables) => {
            for table in tables {
                trials.extend(trials_of(table, subjects, !arguments.list));
            }
        }
        Err(error) => trials.push(failing("tables".to_owned(), error)),
    }
    libtest_mimic::run(&arguments, trials).exit_code()
}

fn trials_of(table: Table, subjects: &[&[Subject]], print: bool) -> Vec<Trial> {
    let entries = match table.entries {
        Ok(entries) => entries,
        Err(error) => return vec![failing(table.file, error)],
    };
    let mut counts: BTreeMap<&str, Count> = BTreeMap::new();
    for entry in &entries {
        let subject = subjects
            .iter()
            .copied()
            .flatten()
            .find(|one| one.file == table.file && one.topic == entry.topic);
        ask(entry, subject, counts.entry(&entry.topic).or_default());
    }
    counts
        .into_iter()
        .map(|(topic, count)| {
            if print {
                print_count(&table.file, topic, &count);
            }
            let name = format!("{}::{topic}", table.file);
            // Nothing checked is nothing proved: such a topic shows as ignored.
            let unproved = count.unanswered == count.rows;
            Trial::test(name, move || {
                if count.failures.is_empty() {
                    Ok(())
                } else {
                    Err(count.failures.join("\n").into())
                }
            })
            .with_ignored_flag(unproved)
        })
        .collect()
}

fn ask(entry: &Entry, subject: Option<&Subject>, count: &mut Count) {
    count.rows += 1;
    let Some(subject) = subject else {
        count.unanswered += 1;
        return;
    };
    match catch_unwind(|| (subject.answer)(&entry.row)) {
        Ok(None) => count.unanswered += 1,
        Ok(Some(got)) if agrees(&got, &entry.expected) => count.passed += 1,
        Ok(Some(got)) => count.failures.push(format!(
            "{} {}: expected {} {} (tolerance {:?} absolute, {:?} relative), got {got:?}",
            entry.id,
            entry.row.quantity,
            entry.expected.text,
            entry.row.unit,
            entry.expected.tol_abs,
            entry.expected.tol_rel,
        )),
        Err(_) => count.failures.push(format!(
            "{} {}: the calculation panicked",
            entry.id, entry.row.quantity
        )),
    }
}

fn print_count(file: &str, topic: &str, count: &Count) {
    println!(
        "reference {file} {topic}: rows {}, passed {}, failed {}, unanswered {}",
        count.rows,
        count.passed,
        count.failures.len(),
        count.unanswered,
    );
    for failure in &count.failures {
        println!("  failed {failure}");
    }
}

fn failing(name: String, error: String) -> Trial {
    Trial::test(name, move || Err(error.into()))
}
