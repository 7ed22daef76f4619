//! Serving the app, and telling how to reach it.

use std::io::Write as _;
use std::net::UdpSocket;

use crate::host::{Host, Listening, Reach};
use crate::page;
use crate::places::Places;
use crate::problem::{Outcome, While};

/// The port when none is asked for.
pub const USUAL_PORT: u16 = 8080;

/// How many ports are tried after the usual one.
const TRIES: u16 = 20;

/// Builds the app and serves it until it is stopped.
pub fn serve(places: &Places, port: Option<u16>, reach: Reach) -> Outcome<()> {
    page::build_app(places)?;
    let host = |port| Host {
        dist: places.dist(),
        port,
        base: "/".to_owned(),
        reach,
        print_requests: false,
    };
    let listening = match port {
        Some(port) => host(port).listen()?,
        None => first_free(host)?,
    };
    print!(
        "{}",
        how_to_reach(&listening, reach, own_address().as_deref())
    );
    listening.serve()
}

/// Serves a finished page until it is stopped, and says one line when it is
/// ready: `listening` and the origin.
pub fn host(host: Host) -> Outcome<()> {
    let listening = host.listen()?;
    let mut out = std::io::stdout().lock();
    writeln!(out, "listening http://127.0.0.1:{}", listening.port)
        .and_then(|()| out.flush())
        .during("saying where the page is")?;
    drop(out);
    listening.serve()
}

fn first_free(host: impl Fn(u16) -> Host) -> Outcome<Listening> {
    let last = USUAL_PORT + TRIES;
    for port in USUAL_PORT..last {
        if let Ok(listening) = host(port).listen() {
            return Ok(listening);
        }
    }
    host(last).listen()
}

/// The address of this machine on the network it would send through. Nothing
/// is sent to find it.
fn own_address() -> Option<String> {
    let socket = UdpSocket::bind(("0.0.0.0", 0)).ok()?;
    // An address kept for documentation (RFC 5737).
    socket.connect(("192.0.2.1", 9)).ok()?;
    let address = socket.local_addr().ok()?.ip();
    (!address.is_loopback() && !address.is_unspecified()).then(|| address.to_string())
}

fn how_to_reach(listening: &Listening, reach: Reach, own: Option<&str>) -> String {
    let port = listening.port;
    let here = listening.address();
    let phone = match reach {
        Reach::ThisMachine => "\
From a phone on the same network: stop this and run `cargo xtask serve --lan`."
            .to_owned(),
        Reach::LocalNetwork => {
            let own = own.unwrap_or("ADDRESS-OF-THIS-MACHINE");
            format!(
                "\
From a phone on the same network:  http://{own}:{port}/

There the page works as long as it reaches this machine. A browser installs a
page and opens it without a signal only when it came over https or from the
device itself, so for that either
  - copy dist/ to any static host with https and open it from there, or
  - connect the phone by USB, forward its port {port} to port {port} of this
    machine with the tools of its maker (\"reverse port forwarding\"), and open
    http://127.0.0.1:{port}/ on the phone."
            )
        }
    };
    format!("\nThoubook is open at  {here}\n\n{phone}\n\nCtrl-C stops it.\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn listening(name: &str) -> Listening {
        let dist =
            std::env::temp_dir().join(format!("thoubook-serve-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&dist).unwrap();
        std::fs::write(dist.join("index.html"), "page").unwrap();
        let base = "/".to_owned();
        Host {
            dist,
            port: 0,
            base,
            reach: Reach::ThisMachine,
            print_requests: false,
        }
        .listen()
        .unwrap()
    }

    #[test]
    fn the_address_on_this_machine_is_always_said() {
        let listening = listening("here");
        let words = how_to_reach(&listening, Reach::ThisMachine, None);
        assert!(words.contains(&format!("http://127.0.0.1:{}/", listening.port)));
        assert!(words.contains("--lan"));
    }

    #[test]
    fn a_phone_is_told_the_address_and_what_will_not_work() {
        let listening = listening("phone");
        let words = how_to_reach(&listening, Reach::LocalNetwork, Some("192.0.2.7"));
        assert!(words.contains(&format!("http://192.0.2.7:{}/", listening.port)));
        assert!(words.contains("https"));
    }
}
