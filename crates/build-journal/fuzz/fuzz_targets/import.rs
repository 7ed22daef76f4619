//! Whatever a file holds, importing it ends with a journal or a sentence.
#![no_main]

use libfuzzer_sys::fuzz_target;

fuzz_target!(|file: &[u8]| build_journal::hostile::hold_import(file));
