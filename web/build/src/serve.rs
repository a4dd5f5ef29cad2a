//! Serving a site's folder to this machine only.

use std::fs;
use std::io::Write;
use std::net::SocketAddr;
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use std::thread::{self, JoinHandle};

use percent_encoding::percent_decode_str;
use tiny_http::{Method, Request};

use crate::fault::{Fault, Outcome, While};

/// A running server; it stops when dropped.
pub struct Server {
    address: SocketAddr,
    listener: Option<Arc<tiny_http::Server>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves a folder on the loopback address; port 0 takes any free one.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start(folder: PathBuf, port: u16) -> Outcome<Self> {
        let listener = tiny_http::Server::http(("127.0.0.1", port)).during(format!("serving on port {port}"))?;
        let address = listener.server_addr().to_ip().ok_or_else(|| Fault::new("the server has no IP address"))?;
        let listener = Arc::new(listener);
        let accepting = Arc::clone(&listener);
        let thread = thread::spawn(move || {
            for request in accepting.incoming_requests() {
                answer(&folder, request);
            }
        });
        Ok(Self { address, listener: Some(listener), thread: Some(thread) })
    }

    /// The site's address, which ends with a slash.
    pub fn url(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Stops serving; requests that come later get no answer from the site.
    pub fn stop(&mut self) {
        if let Some(listener) = self.listener.take() {
            listener.unblock();
        }
        if let Some(thread) = self.thread.take() {
            let _ended = thread.join();
        }
    }

    /// Serves until the process is ended.
    pub fn wait(mut self) {
        if let Some(thread) = self.thread.take() {
            let _ended = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}

/// Answers, and asks the browser to close: a kept connection holds one of the few threads of the listener, and the
/// requests of connections that wait for one are answered minutes later.
fn answer(folder: &Path, request: Request) {
    let content = file(folder, request.url()).and_then(|path| Some((fs::read(&path).ok()?, kind(&path))));
    let (status, kind, content) = match content {
        Some((content, kind)) => ("200 OK", kind, content),
        None => ("404 Not Found", "text/plain".to_owned(), b"There is no such file.".to_vec()),
    };
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\nConnection: close\r\n\r\n",
        content.len()
    );
    let body: &[u8] = if *request.method() == Method::Head { &[] } else { &content };
    let mut writer = request.into_writer();
    // A browser that has gone away needs no answer.
    let _gone = writer.write_all(head.as_bytes()).and_then(|()| writer.write_all(body)).and_then(|()| writer.flush());
}

/// The file an address means, if it stays within the folder.
fn file(folder: &Path, url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.trim_start_matches('/');
    let path = percent_decode_str(path).decode_utf8().ok()?;
    let inside = Path::new(path.as_ref()).components().all(|part| matches!(part, Component::Normal(_)));
    let path = if path.is_empty() || path.ends_with('/') { format!("{path}index.html") } else { path.into_owned() };
    inside.then(|| folder.join(path))
}

fn kind(path: &Path) -> String {
    let kind = mime_guess::from_path(path).first_or_octet_stream();
    let text = kind.type_() == mime_guess::mime::TEXT;
    if text { format!("{kind}; charset=utf-8") } else { kind.to_string() }
}

#[cfg(test)]
mod tests {
    use std::io::{Read, Write};
    use std::net::TcpStream;
    use std::path::{Path, PathBuf};
    use std::thread;

    use super::{Server, file, kind};

    #[test]
    fn many_connections_at_once_are_all_answered_and_closed() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("a.css"), "p {}").unwrap();
        let server = Server::start(folder.path().into(), 0).unwrap();
        // All are open before the first asks, as those of a browser are, and each is closed once it has its answer.
        let open: Vec<_> = (0..24).map(|_| TcpStream::connect(server.address).unwrap()).collect();
        let readers: Vec<_> = open.into_iter().map(|connection| thread::spawn(move || asked(connection))).collect();
        for reader in readers {
            let told = reader.join().unwrap();
            assert!(told.starts_with("HTTP/1.1 200 OK\r\n") && told.contains("Connection: close"), "{told}");
            assert!(told.ends_with("\r\n\r\np {}"), "the file, whole: {told}");
        }
    }

    fn asked(mut connection: TcpStream) -> String {
        connection.write_all(b"GET /a.css HTTP/1.1\r\nHost: here\r\n\r\n").unwrap();
        let (mut told, mut some) = (String::new(), [0; 512]);
        while !told.ends_with("p {}") {
            let count = connection.read(&mut some).unwrap();
            assert!(count > 0, "closed too early: {told}");
            told.push_str(std::str::from_utf8(&some[..count]).unwrap());
        }
        told
    }

    #[test]
    fn an_address_means_a_file_within_the_folder_or_nothing() {
        let folder = Path::new("site");
        for (url, path) in [
            ("/", Some("site/index.html")),
            ("/?a=b", Some("site/index.html")),
            ("/sw.js", Some("site/sw.js")),
            ("/docs/", Some("site/docs/index.html")),
            ("/../secret", None),
            ("/a%20b/", Some("site/a b/index.html")),
            ("/docs/../../secret", None),
            ("/%2e%2e/secret", None),
        ] {
            assert_eq!(file(folder, url), path.map(PathBuf::from), "{url}");
        }
    }

    /// A module is compiled while it loads, and a manifest is read, only with these types.
    #[test]
    fn files_carry_the_types_browsers_insist_on() {
        for (name, value) in [
            ("a.wasm", "application/wasm"),
            ("a.js", "text/javascript; charset=utf-8"),
            ("a.css", "text/css; charset=utf-8"),
            ("a.html", "text/html; charset=utf-8"),
            ("a.svg", "image/svg+xml"),
            ("a.webmanifest", "application/manifest+json"),
        ] {
            assert_eq!(kind(Path::new(name)), value, "{name}");
        }
    }
}
