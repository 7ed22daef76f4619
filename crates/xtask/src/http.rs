//! As much of HTTP as serving files on a bench takes: one request a
//! connection, one thread a request.
//!
//! A pool of threads with kept connections was here before. It lost a
//! connection now and then when several came at once, and the page then hung.

use std::io::{self, Read as _, Write as _};
use std::net::TcpStream;
use std::time::Duration;

/// Longer heads are not from a browser.
const HEAD_AT_MOST: usize = 32 * 1024;
/// A connection that says nothing for so long is given up. Browsers open
/// some ahead, for which no request ever comes.
const SILENCE_AT_MOST: Duration = Duration::from_secs(30);

/// What is asked for.
#[derive(Debug, PartialEq, Eq)]
pub struct Request {
    /// `GET` and so on.
    pub method: String,
    /// The path with all that stands behind it.
    pub target: String,
}

/// An answer before it is sent.
#[derive(Debug, PartialEq, Eq)]
pub struct Response {
    /// 200 and so on.
    pub status: u16,
    /// Without the ones that every answer has.
    pub headers: Vec<(&'static str, String)>,
    /// What follows the headers.
    pub body: Vec<u8>,
}

/// Reads the request of a new connection; `None` when there is none, or it is
/// not HTTP.
pub fn read(stream: &mut TcpStream) -> io::Result<Option<Request>> {
    stream.set_read_timeout(Some(SILENCE_AT_MOST))?;
    let mut head = Vec::new();
    let mut part = [0; 4096];
    while head.len() < HEAD_AT_MOST {
        let count = stream.read(&mut part)?;
        if count == 0 {
            return Ok(None);
        }
        head.extend_from_slice(part.get(..count).unwrap_or_default());
        match parse(&head) {
            Parsed::Whole(request) => return Ok(Some(request)),
            Parsed::Part => {}
            Parsed::Nonsense => return Ok(None),
        }
    }
    Ok(None)
}

/// What the bytes so far are.
#[derive(Debug, PartialEq, Eq)]
enum Parsed {
    Whole(Request),
    Part,
    Nonsense,
}

fn parse(head: &[u8]) -> Parsed {
    let mut headers = [httparse::EMPTY_HEADER; 128];
    let mut request = httparse::Request::new(&mut headers);
    match request.parse(head) {
        Ok(httparse::Status::Complete(_)) => Parsed::Whole(Request {
            method: request.method.unwrap_or_default().to_owned(),
            target: request.path.unwrap_or_default().to_owned(),
        }),
        Ok(httparse::Status::Partial) => Parsed::Part,
        Err(_) => Parsed::Nonsense,
    }
}

/// Sends the answer and ends the connection.
pub fn write(stream: &mut TcpStream, request: &Request, response: &Response) -> io::Result<()> {
    let mut head = format!("HTTP/1.1 {} {}\r\n", response.status, name(response.status));
    for (header, value) in &response.headers {
        head.push_str(&format!("{header}: {value}\r\n"));
    }
    head.push_str(&format!(
        "Content-Length: {}\r\nConnection: close\r\n\r\n",
        response.body.len()
    ));
    stream.write_all(head.as_bytes())?;
    if request.method != "HEAD" {
        stream.write_all(&response.body)?;
    }
    stream.flush()
}

const fn name(status: u16) -> &'static str {
    match status {
        200 => "OK",
        308 => "Permanent Redirect",
        405 => "Method Not Allowed",
        _ => "Not Found",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_request_is_read_when_all_of_it_is_there() {
        let whole = b"GET /a?b HTTP/1.1\r\nHost: x\r\n\r\n";
        assert_eq!(
            parse(whole),
            Parsed::Whole(Request {
                method: "GET".to_owned(),
                target: "/a?b".to_owned()
            })
        );
        for end in 0..whole.len() {
            assert_eq!(parse(&whole[..end]), Parsed::Part, "{end}");
        }
        assert_eq!(parse(b"\x16\x03\x01 tls"), Parsed::Nonsense);
    }
}
