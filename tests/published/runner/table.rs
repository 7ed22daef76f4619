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
    if column("topic").is_none() {
        let file = path.file_stem().unwrap_or_default().to_string_lossy();
        return whole_table(&file, &headers, reader.records());
    }
    let mut entries = Vec::new();
    for (number, record) in reader.records().enumerate() {
        let record = record.map_err(|error| error.to_string())?;
        let cell = |name: &str| column(name).and_then(|at| record.get(at)).unwrap_or("");
        entries.push(entry_of(cell).map_err(|error| format!("row {}: {error}", number + 1))?);
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

/// A table of plain columns whose rows are not all right, so that only a count
/// over all of them can be checked.
struct Counted {
    file: &'static str,
    /// How many rows the count was made of: of another table it says nothing.
    rows: usize,
    quantity: &'static str,
    expected: &'static str,
}

/// From the `README.md` beside the tables.
const COUNTED: &[Counted] = &[Counted {
    file: "automobile_1985",
    rows: 201,
    quantity: "rows_whose_displacement_agrees_within_2_percent",
    expected: "164",
}];

/// A table of plain columns as one question under the topic `table`: its rows
/// are the input, the count of those that agree is what is asked for.
fn whole_table(
    file: &str,
    headers: &csv::StringRecord,
    records: csv::StringRecordsIter<'_, std::fs::File>,
) -> Result<Vec<Entry>, String> {
    let mut rows = Vec::new();
    for record in records {
        let record = record.map_err(|error| error.to_string())?;
        let columns: Map<String, Json> = headers
            .iter()
            .zip(record.iter())
            .map(|(header, cell)| {
                let value = cell
                    .parse::<f64>()
                    .map_or_else(|_| Json::from(cell), Json::from);
                (header.to_owned(), value)
            })
            .collect();
        rows.push(Json::from(columns));
    }
    let counted = COUNTED
        .iter()
        .find(|one| one.file == file && one.rows == rows.len());
    Ok(vec![Entry {
        id: file.to_owned(),
        topic: "table".to_owned(),
        row: Row {
            quantity: counted.map_or("", |one| one.quantity).to_owned(),
            inputs: Map::from_iter([("rows".to_owned(), Json::from(rows))]),
            unit: String::new(),
        },
        expected: Expected {
            text: counted.map_or("", |one| one.expected).to_owned(),
            tol_abs: Some(0.0),
            tol_rel: None,
        },
    }])
}
