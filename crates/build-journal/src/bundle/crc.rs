//! The checksum of a zip entry.

/// CRC-32 as zip has it: polynomial 0xEDB88320, reflected, start and end
/// inverted. Source: RFC 1952, section 8.
pub(super) fn crc32(bytes: &[u8]) -> u32 {
    let mut crc = u32::MAX;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            let low = crc & 1;
            crc = (crc >> 1) ^ (0xEDB8_8320 * low);
        }
    }
    !crc
}

#[cfg(test)]
mod tests {
    use super::crc32;

    #[test]
    fn the_checksum_is_the_usual_one() {
        // Source: the check value of CRC-32, as Python's zlib.crc32(b"123456789").
        assert_eq!(crc32(b"123456789"), 0xCBF4_3926);
        assert_eq!(crc32(b""), 0);
    }
}
