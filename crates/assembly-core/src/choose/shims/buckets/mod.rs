//! Lash shims of valve buckets: the shims that came out are used again first.

mod choice;
mod described;

pub use choice::{ShimFor, Valve, choose_bucket_shims};
pub use described::BUCKET_SHIMS;
