//! Random bits and the device's clock.

use build_journal::Day;
use js_sys::{Date, Math};
use web_sys::window;

/// So many random bits. From the browser's own source; where that is missing,
/// from its plain random numbers, which are good enough for names.
#[must_use]
pub fn bits() -> u128 {
    let mut bytes = [0_u8; 16];
    let drawn = window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !drawn {
        for byte in &mut bytes {
            *byte = (Math::random() * 256.0) as u8;
        }
    }
    u128::from_be_bytes(bytes)
}

/// Milliseconds since 1970 as the device's clock says.
#[must_use]
pub fn now() -> i64 {
    Date::now() as i64
}

/// The day it is here, by the device's clock and its time zone.
#[must_use]
pub fn today() -> Day {
    // In minutes, plus when the place is behind universal time.
    let behind = Date::new_0().get_timezone_offset() as i64;
    Day::of(now() - behind * 60_000)
}
