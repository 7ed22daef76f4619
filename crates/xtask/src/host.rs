//! A small web server for a finished page.

use std::io::Write as _;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;

use crate::dist::is_hashed;
use crate::http::{self, Response};
use crate::problem::{Outcome, Problem, While};

/// What to serve and where.
#[derive(Debug, Clone)]
pub struct Host {
    /// The folder of the page.
    pub dist: PathBuf,
    /// The port, or 0 for any that is free.
    pub port: u16,
    /// The path the page lies under, with a slash at both ends.
    pub base: String,
    /// Whether other machines may reach it.
    pub reach: Reach,
    /// Whether each request is printed as it comes.
    pub print_requests: bool,
}

/// From where the page can be reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// From this machine only.
    ThisMachine,
    /// From the whole local network.
    LocalNetwork,
}

/// A server that is ready to answer.
pub struct Listening {
    listener: TcpListener,
    host: Host,
    /// The port it got.
    pub port: u16,
}

impl Host {
    /// Takes the port.
    pub fn listen(self) -> Outcome<Listening> {
        if !self.dist.join("index.html").is_file() {
            return Err(Problem::new(format!(
                "{} holds no page; `cargo xtask build` makes one",
                self.dist.display()
            )));
        }
        let address = match self.reach {
            Reach::ThisMachine => IpAddr::V4(Ipv4Addr::LOCALHOST),
            Reach::LocalNetwork => IpAddr::V4(Ipv4Addr::UNSPECIFIED),
        };
        let listening = || format!("listening on port {}", self.port);
        let listener = TcpListener::bind(SocketAddr::new(address, self.port)).during(listening())?;
        let port = listener.local_addr().during(listening())?.port();
        Ok(Listening {
            listener,
            host: self,
            port,
        })
    }
}

impl Listening {
    /// The address on this machine.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{}", self.port, self.host.base)
    }

    /// Answers until the process ends.
    pub fn serve(self) -> Outcome<()> {
        let host = Arc::new(self.host);
        for stream in self.listener.incoming() {
            let Ok(stream) = stream else { continue };
            let host = Arc::clone(&host);
            // A slow phone must not hold up the others.
            thread::spawn(move || {
                // A browser that went away is no trouble of ours.
                let _ = answer(&host, stream);
            });
        }
        Err(Problem::new("the web server stopped"))
    }
}

fn answer(host: &Host, mut stream: TcpStream) -> std::io::Result<()> {
    let Some(request) = http::read(&mut stream)? else {
        return Ok(());
    };
    let found = find(host, &request.method, &request.target);
    if host.print_requests {
        let mut out = std::io::stdout().lock();
        writeln!(
            out,
            "{} {} {}",
            request.method, request.target, found.status
        )?;
        out.flush()?;
    }
    http::write(&mut stream, &request, &found)
}

fn find(host: &Host, method: &str, url: &str) -> Response {
    if !matches!(method, "GET" | "HEAD") {
        return plain(405, "Only reading is possible here.");
    }
    let path = url.split(['?', '#']).next().unwrap_or(url);
    if format!("{path}/") == host.base {
        return Response {
            status: 308,
            headers: vec![("Location", host.base.clone())],
            body: Vec::new(),
        };
    }
    let Some(path) = path.strip_prefix(host.base.as_str()) else {
        return plain(404, &format!("The page lies under {}", host.base));
    };
    let path = if path.is_empty() { "index.html" } else { path };
    match inside(&host.dist, path).and_then(|file| std::fs::read(file).ok()) {
        Some(body) => file(200, path, body),
        None => match std::fs::read(host.dist.join("404.html")) {
            Ok(body) => file(404, "404.html", body),
            Err(_) => plain(404, "There is no such file."),
        },
    }
}

/// The file a path names, when it stays within the folder.
fn inside(dist: &Path, path: &str) -> Option<PathBuf> {
    let plain = path
        .split('/')
        .all(|part| !part.is_empty() && part != "." && part != ".." && !part.contains(['\\', '%']));
    plain.then(|| dist.join(path)).filter(|file| file.is_file())
}

fn file(status: u16, path: &str, body: Vec<u8>) -> Response {
    let keep = if is_hashed(path) {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    Response {
        status,
        headers: vec![
            ("Content-Type", content_type(path).to_owned()),
            ("Cache-Control", keep.to_owned()),
            ("X-Content-Type-Options", "nosniff".to_owned()),
        ],
        body,
    }
}

fn plain(status: u16, words: &str) -> Response {
    Response {
        status,
        headers: vec![("Content-Type", "text/plain; charset=utf-8".to_owned())],
        body: words.as_bytes().to_vec(),
    }
}

/// The media type by the end of the name.
fn content_type(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, end)| end) {
        Some("html") => "text/html; charset=utf-8",
        Some("js" | "mjs") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A page of a few files in a folder of its own.
    fn host(name: &str, base: &str) -> Host {
        let dist =
            std::env::temp_dir().join(format!("thoubook-host-{name}-{}", std::process::id()));
        std::fs::create_dir_all(dist.join("icons")).unwrap();
        for file in [
            "index.html",
            "404.html",
            "sw.js",
            "a-0123456789abcdef_bg.wasm",
            "icons/i.png",
        ] {
            std::fs::write(dist.join(file), file).unwrap();
        }
        std::fs::write(dist.with_extension("secret"), "secret").unwrap();
        Host {
            dist,
            port: 0,
            base: base.to_owned(),
            reach: Reach::ThisMachine,
            print_requests: false,
        }
    }

    fn header(found: &Response, name: &str) -> String {
        found
            .headers
            .iter()
            .find(|(key, _)| *key == name)
            .map(|(_, value)| value.clone())
            .unwrap_or_default()
    }

    #[test]
    fn the_page_and_its_parts_have_their_types_and_lifetimes() {
        let host = host("types", "/");
        let page = find(&host, "GET", "/?x=1");
        assert_eq!(
            (page.status, page.body.as_slice()),
            (200, &b"index.html"[..])
        );
        assert_eq!(header(&page, "Cache-Control"), "no-cache");
        let worker = find(&host, "GET", "/sw.js");
        assert_eq!(header(&worker, "Cache-Control"), "no-cache");
        assert_eq!(
            header(&worker, "Content-Type"),
            "text/javascript; charset=utf-8"
        );
        let wasm = find(&host, "GET", "/a-0123456789abcdef_bg.wasm");
        assert_eq!(header(&wasm, "Content-Type"), "application/wasm");
        assert!(header(&wasm, "Cache-Control").contains("immutable"));
    }

    #[test]
    fn nothing_outside_the_folder_is_served() {
        let host = host("outside", "/");
        let secret = host.dist.with_extension("secret");
        let name = secret.file_name().unwrap().to_str().unwrap();
        for path in [
            format!("/../{name}"),
            format!("/icons/../../{name}"),
            format!("/%2e%2e/{name}"),
            format!("//{}", secret.display()),
        ] {
            let found = find(&host, "GET", &path);
            assert_eq!(found.status, 404, "{path}");
            assert_ne!(found.body, b"secret", "{path}");
        }
    }

    #[test]
    fn a_page_under_a_sub_path_is_found_there_only() {
        let host = host("base", "/some/book/");
        assert_eq!(find(&host, "GET", "/some/book/").status, 200);
        assert_eq!(find(&host, "GET", "/some/book/icons/i.png").status, 200);
        let moved = find(&host, "GET", "/some/book");
        assert_eq!(
            (moved.status, header(&moved, "Location")),
            (308, "/some/book/".to_owned())
        );
        assert_eq!(find(&host, "GET", "/").status, 404);
        assert_eq!(find(&host, "GET", "/icons/i.png").status, 404);
    }

    #[test]
    fn a_wrong_address_is_answered_with_the_page_and_said_to_be_wrong() {
        let host = host("wrong", "/");
        let found = find(&host, "GET", "/no/such/place");
        assert_eq!(
            (found.status, found.body.as_slice()),
            (404, &b"404.html"[..])
        );
    }

    #[test]
    fn only_reading_is_possible() {
        let host = host("reading", "/");
        assert_eq!(find(&host, "POST", "/").status, 405);
        assert_eq!(find(&host, "HEAD", "/").status, 200);
    }

    #[test]
    fn many_connections_at_once_are_all_answered() {
        let listening = host("many", "/").listen().unwrap();
        let port = listening.port;
        thread::spawn(move || listening.serve());
        // Browsers keep some connections open without asking anything.
        let open = || TcpStream::connect((Ipv4Addr::LOCALHOST, port)).unwrap();
        let _silent: Vec<TcpStream> = (0..20).map(|_| open()).collect();
        let mut asking: Vec<TcpStream> = (0..40).map(|_| open()).collect();
        for stream in &mut asking {
            stream.write_all(b"GET / HTTP/1.1\r\n\r\n").unwrap();
        }
        for stream in &mut asking {
            let mut answer = String::new();
            std::io::Read::read_to_string(stream, &mut answer).unwrap();
            assert!(answer.starts_with("HTTP/1.1 200 OK\r\n"), "{answer}");
            assert!(answer.ends_with("\r\n\r\nindex.html"), "{answer}");
        }
    }

    #[test]
    fn any_free_port_is_taken_when_asked_for() {
        let listening = host("port", "/").listen().unwrap();
        assert_ne!(listening.port, 0);
        assert_eq!(
            listening.address(),
            format!("http://127.0.0.1:{}/", listening.port)
        );
    }
}
