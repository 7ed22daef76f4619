//! The machine-work order: what is asked of the shop, what came back, and what
//! was measured at home, side by side, on the screen and on paper.

mod ordering;
mod page;
mod received;
mod rows;
mod stage;
mod table;
mod wanted;
mod work;

pub use page::shop_page;
