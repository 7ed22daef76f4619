//! The oil of a build: what the pressure should be and why, priming, the first
//! fire, and what comes after it.

mod after;
mod before;
mod clock;
mod cylinder;
mod cylinders;
mod film;
mod gauge;
mod in_sight;
mod lacks;
mod oils;
mod page;
mod place;
mod plugs;
mod pressure;
mod prime;
mod row_table;
mod run;
mod said;
mod share_map;
mod shares;
mod system;
mod trend;
mod used;
mod what_if;

pub use page::oil_page;
pub use place::Place;
