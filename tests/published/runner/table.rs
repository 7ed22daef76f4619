//! The tables, read from their folder.

use std::path::{Path, PathBuf};

use serde_json::{Map, Value as Json};

use super::row::Row;

/// The variable that names another folder of tables.
const FOLDER_VARIABLE: &str = "ASSEMBLY_REFERENCE_DIR";

/// What a row wants to come out.
#[derive(Clone, Debug)]
pub struct Expected {
    /// As it stands in the table.
    pub text: String,
    /// Absolute tolerance, in the row's unit.
    pub tol_abs: Option<f64>,
    /// Relative tolerance.
    pub tol_rel: Option<f64>,
}

/// A row with its name and what is expected.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Stable name.
    pub id: String,
    /// The topic.
    pub topic: String,
    /// The question.
    pub row: Row,
    /// The answer from outside.
    pub expected: Expected,
}

/// One file of the folder.
pub struct Table {
    /// The file's name without its ending.
    pub file: String,
    /// Its rows; or why they cannot be read.
    pub entries: Result<Vec<Entry>, String>,
}

/// Every table of the folder, in the order of their names.
pub fn read_all() -> Result<Vec<Table>, String> {
    let folder = std::env::var_os(FOLDER_VARIABLE).map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("reference"),
        PathBuf::from,
    );
    let entries = std::fs::read_dir(&folder)
        .map_err(|error| format!("cannot read the folder {}: {error}", folder.display()))?;
    let mut paths: Vec<PathBuf> = entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.extension().is_some_and(|ending| ending == "csv"))
        .collect();
    paths.sort();
    if paths.is_empty() {
        return Err(format!("no table in the folder {}", folder.display()));
    }
    Ok(paths
        .iter()
        .map(|path| Table {
            file: path
                .file_stem()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default(),
            entries: read(path),
        })
        .collect())
}

fn read(path: &Path) -> Result<Vec<Entry>, String> {
    let mut reader = csv::Reader::from_path(path).map_err(|error| error.to_string())?;
    let headers = reader.headers().map_err(|error| error.to_string())?.clone();
    let column = |name: &str| headers.iter().position(|header| header == name);
    let mut entries = Vec::new();
    for (number, record) in reader.records().enumerate() {
        let record = record.map_err(|error| error.to_string())?;
        let cell = |name: &str| column(name).and_then(|at| record.get(at)).unwrap_or("");
        let number = number + 1;
        let entry = if column("topic").is_some() {
            entry_of(cell)
        } else {
            entry_of_plain_columns(&headers, &record, number)
        };
        entries.push(entry.map_err(|error| format!("row {number}: {error}"))?);
    }
    Ok(entries)
}

/// A row in the columns that the tables share.
fn entry_of<'a>(cell: impl Fn(&str) -> &'a str) -> Result<Entry, String> {
    let inputs: Map<String, Json> =
        serde_json::from_str(cell("inputs")).map_err(|error| format!("inputs: {error}"))?;
    Ok(Entry {
        id: cell("id").to_owned(),
        topic: cell("topic").to_owned(),
        row: Row {
            quantity: cell("quantity").to_owned(),
            inputs,
            unit: cell("unit").to_owned(),
        },
        expected: Expected {
            text: cell("expected").to_owned(),
            tol_abs: tolerance(cell("tol_abs"))?,
            tol_rel: tolerance(cell("tol_rel"))?,
        },
    })
}

fn tolerance(text: &str) -> Result<Option<f64>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    text.parse()
        .map(Some)
        .map_err(|_| format!("tolerance {text:?} is not a number"))
}

/// A row of a table of plain columns, such as the cars of 1985: the whole row
/// is the input, under the topic `table`. What is expected of it is the
/// business of the subject that answers such a file.
fn entry_of_plain_columns(
    headers: &csv::StringRecord,
    record: &csv::StringRecord,
    number: usize,
) -> Result<Entry, String> {
    let inputs = headers
        .iter()
        .zip(record.iter())
        .map(|(header, cell)| {
            let value = cell
                .parse::<f64>()
                .map_or_else(|_| Json::from(cell), Json::from);
            (header.to_owned(), value)
        })
        .collect();
    Ok(Entry {
        id: format!("row {number}"),
        topic: "table".to_owned(),
        row: Row {
            quantity: "row".to_owned(),
            inputs,
            unit: String::new(),
        },
        expected: Expected {
            text: String::new(),
            tol_abs: None,
            tol_rel: None,
        },
    })
}
