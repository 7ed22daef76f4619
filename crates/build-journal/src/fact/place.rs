//! A place on an engine in JSON: reading and writing, side by side.

use build_plan::{At, Direction, Place, Ring, Station, ValveSide};

use super::body::Spot;
use super::compact::compact;
use super::fields::Fields;
use super::unreadable::Unreadable;
use super::write::Line;

pub(super) const A_PLACE: &str = "a place, such as {\"main\":3,\"station\":\"front\"}";

/// The place in the field `place`, if there is one. A place that this version
/// does not know is kept as it came.
pub(super) fn read_spot(fields: &Fields) -> Result<Option<Spot>, Unreadable> {
    read_spot_in(fields, "place")
}

/// The place in the field of this name, if there is one.
pub(super) fn read_spot_in(fields: &Fields, name: &str) -> Result<Option<Spot>, Unreadable> {
    fields.json(name).map(read_one).transpose()
}

/// The places in the field `places`; none when it is absent.
pub(super) fn read_spots(fields: &Fields) -> Result<Vec<Spot>, Unreadable> {
    let items = fields.items("places", "a list of places")?;
    items.iter().map(|json| read_one(json.get())).collect()
}

fn read_one(json: &str) -> Result<Spot, Unreadable> {
    let place = Fields::read(json).map_err(|_| Unreadable::Wrong {
        field: "place",
        wanted: A_PLACE,
        read: json.chars().take(60).collect(),
    })?;
    Ok(read_place(&place).map_or_else(|| Spot::Unknown(compact(json).into()), Spot::Known))
}

/// A place that this version knows, with nothing in it that it does not know.
fn read_place(place: &Fields) -> Option<Place> {
    let count = |name| u8::try_from(place.count(name, "").ok()?).ok();
    let word = |name| place.text(name, "").ok();
    let has = |name: &str| place.json(name).is_some();
    let (at, names): (At, &[&str]) = if has("main") {
        (At::Main(count("main")?), &["main"])
    } else if has("crankpin") {
        (At::Crankpin(count("crankpin")?), &["crankpin"])
    } else if has("rod") {
        (At::Rod(count("rod")?), &["rod"])
    } else if has("ring") {
        let ring = Ring::from_id(&word("ring")?)?;
        let cylinder = count("cylinder")?;
        (At::Ring { cylinder, ring }, &["cylinder", "ring"])
    } else if has("valve") {
        let valve = At::Valve {
            cylinder: count("cylinder")?,
            side: ValveSide::from_id(&word("valve")?)?,
            number: count("number")?,
        };
        (valve, &["cylinder", "valve", "number"])
    } else if has("cylinder") {
        (At::Cylinder(count("cylinder")?), &["cylinder"])
    } else if has("bearing") {
        let bearing = At::CamBearing {
            camshaft: count("camshaft")?,
            bearing: count("bearing")?,
        };
        (bearing, &["camshaft", "bearing"])
    } else if has("camshaft") {
        (At::Camshaft(count("camshaft")?), &["camshaft"])
    } else if has("bank") {
        (At::Bank(count("bank")?), &["bank"])
    } else if word("engine")? == "whole" {
        (At::Engine, &["engine"])
    } else {
        return None;
    };
    if !place.only(&[names, &["station", "direction"]].concat()) {
        return None;
    }
    Some(Place {
        at,
        station: match place.json("station") {
            Some(_) => Some(Station::from_id(&word("station")?)?),
            None => None,
        },
        direction: match place.json("direction") {
            Some(_) => Some(Direction::from_id(&word("direction")?)?),
            None => None,
        },
    })
}

/// Writes the field `place`.
pub(super) fn write_spot(line: Line, spot: Option<&Spot>) -> Line {
    write_spot_in(line, "place", spot)
}

/// Writes the field of this name.
pub(super) fn write_spot_in(line: Line, name: &str, spot: Option<&Spot>) -> Line {
    match spot {
        None => line,
        Some(spot) => line.json(name, &json_of(spot)),
    }
}

/// Writes the field `places`, if there are any.
pub(super) fn write_spots(line: Line, spots: &[Spot]) -> Line {
    if spots.is_empty() {
        return line;
    }
    let all: Vec<String> = spots.iter().map(json_of).collect();
    line.json("places", &format!("[{}]", all.join(",")))
}

fn json_of(spot: &Spot) -> String {
    match spot {
        Spot::Unknown(json) => json.clone(),
        Spot::Known(place) => write_at(Line::new(), place.at)
            .optional_text("station", place.station.map(Station::id))
            .optional_text("direction", place.direction.map(Direction::id))
            .end(),
    }
}

fn write_at(line: Line, at: At) -> Line {
    let number = |number: u8| i64::from(number);
    match at {
        At::Main(main) => line.whole("main", number(main)),
        At::Crankpin(pin) => line.whole("crankpin", number(pin)),
        At::Rod(rod) => line.whole("rod", number(rod)),
        At::Cylinder(cylinder) => line.whole("cylinder", number(cylinder)),
        At::Ring { cylinder, ring } => line
            .whole("cylinder", number(cylinder))
            .text("ring", ring.id()),
        At::Valve {
            cylinder,
            side,
            number: which,
        } => line
            .whole("cylinder", number(cylinder))
            .text("valve", side.id())
            .whole("number", number(which)),
        At::CamBearing { camshaft, bearing } => line
            .whole("camshaft", number(camshaft))
            .whole("bearing", number(bearing)),
        At::Camshaft(camshaft) => line.whole("camshaft", number(camshaft)),
        At::Bank(bank) => line.whole("bank", number(bank)),
        // A part that the plan knows and this file does not would be a defect;
        // the test of all places catches it.
        _ => line.text("engine", "whole"),
    }
}
