//! The program that steers the browser.

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;

/// A running driver; it ends when dropped.
pub(crate) struct Driver {
    process: Child,
    pub(crate) url: String,
}

impl Driver {
    /// A driver asked for any port takes a free one and then wants the same of the other kind of address, which one
    /// that starts beside it may hold; it then gives up, and another try gets another port.
    pub(crate) fn start(program: &Path) -> Self {
        const TRIES: usize = 20;
        (0..TRIES).find_map(|_| Self::try_start(program)).expect("the WebDriver program must print its port")
    }

    fn try_start(program: &Path) -> Option<Self> {
        let mut process = Command::new(program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the WebDriver program must start");
        let mut lines = BufReader::new(process.stdout.take().expect("its output is piped")).lines();
        let port = lines
            .by_ref()
            .map_while(Result::ok)
            .find_map(|line| line.rsplit_once("successfully on port ")?.1.trim_end_matches('.').parse::<u16>().ok());
        let mut driver = Self { process, url: String::new() };
        driver.url = format!("http://127.0.0.1:{}", port?);
        // It would stop at a full pipe.
        thread::spawn(move || lines.map_while(Result::ok).for_each(drop));
        Some(driver)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let _ended = self.process.kill().and_then(|()| self.process.wait());
    }
}
