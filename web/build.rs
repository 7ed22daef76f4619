//! Keeps what cutting the page apart needs to know of its own parts.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    if std::env::var_os("CARGO_FEATURE_APART").is_some() {
        println!("cargo::rustc-link-arg-bins=--emit-relocs");
    }
}
