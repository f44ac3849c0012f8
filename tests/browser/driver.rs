//! A person at a real browser: Debian's Chromium without a window, driven over WebDriver.

use crate::wire::Ask;
use base64::Engine;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::io::{BufRead, BufReader};
use std::os::unix::process::CommandExt;
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};

/// A screen a person works at.
#[derive(Clone, Copy)]
pub struct Screen {
    /// Width in CSS pixels.
    pub width: u32,
    /// Height in CSS pixels.
    pub height: u32,
    /// What the pictures are called after.
    pub name: &'static str,
}

/// The front desk.
pub const DESK: Screen = Screen { width: 1280, height: 800, name: "desk" };
/// The shop tablet.
pub const TABLET: Screen = Screen { width: 1024, height: 768, name: "tablet" };
/// The customer's phone.
pub const PHONE: Screen = Screen { width: 360, height: 640, name: "phone" };

/// A page at 400 % of 1280 pixels.
pub const NARROW: Screen = Screen { width: 320, height: 640, name: "narrow" };

/// A browser of its own with an empty profile; both end with it.
pub struct Browser {
    /// The WebDriver client.
    pub client: Client,
    /// The screen it pretends to be.
    pub screen: Screen,
    driver: Child,
    profile: PathBuf,
}

impl Browser {
    /// Opens a browser of this size, with or without script.
    pub async fn open(screen: Screen, script: bool) -> Self {
        let (driver, port) = start_driver();
        let profile = std::env::temp_dir().join(format!("endplay-browser-{}", uuid::Uuid::now_v7()));
        let mut arguments: Vec<String> = [
            "--headless",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--disable-dev-shm-usage",
            "--hide-scrollbars",
            // A page that glides is still on its way when the next tap comes.
            "--force-prefers-reduced-motion",
        ]
        .map(String::from)
        .into();
        arguments.push(format!("--user-data-dir={}", profile.display()));
        arguments.push(format!("--window-size={},{}", screen.width, screen.height));
        if rustix::process::geteuid().is_root() {
            arguments.push("--no-sandbox".into());
        }
        let mut options = json!({
            "args": arguments,
            "binary": "/usr/bin/chromium",
            "perfLoggingPrefs": {"enableNetwork": true, "enablePage": false},
            // Chromium's own window is never narrower than 500 px, so a phone has to be emulated.
            "mobileEmulation": {"deviceMetrics": {
                "width": screen.width, "height": screen.height, "pixelRatio": 1.0, "touch": screen.width < 1200, "mobile": screen.width < 600,
            }},
        });
        if !script {
            options["prefs"] = json!({"profile.managed_default_content_settings.javascript": 2});
        }
        let capabilities = match json!({"goog:chromeOptions": options, "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}})
        {
            Value::Object(map) => map,
            _ => unreachable!("an object literal"),
        };
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities)
            .connect(&format!("http://127.0.0.1:{port}"))
            .await
            .expect("chromium and chromedriver are installed (`.ci/setup test`)");
        Self { client, screen, driver, profile }
    }

    /// Makes the screen another one; the page stays.
    pub async fn resize(&mut self, screen: Screen) {
        let metrics = json!({
            "width": screen.width, "height": screen.height, "deviceScaleFactor": 1, "mobile": screen.width < 600,
        });
        self.chromium("Emulation.setDeviceMetricsOverride", metrics).await;
        self.screen = screen;
    }

    /// Keeps a picture of the whole page among the test's output.
    pub async fn picture(&self, name: &str) {
        self.keep(name, json!({"format": "png", "captureBeyondViewport": true})).await;
    }

    /// Keeps a picture of what the screen shows of the page.
    pub async fn snapshot(&self, name: &str) {
        self.keep(name, json!({"format": "png"})).await;
    }

    async fn keep(&self, name: &str, how: Value) {
        let png = bytes(&self.chromium("Page.captureScreenshot", how).await);
        let name = format!("{name}-{}.png", self.screen.name);
        std::fs::write(output("screenshots").join(name), png).expect("room for a picture");
    }

    /// Prints the page and returns the PDF.
    pub async fn print(&self) -> Vec<u8> {
        bytes(&self.chromium("Page.printToPDF", json!({"preferCSSPageSize": true, "printBackground": false})).await)
    }

    /// A command of the browser's own protocol.
    pub async fn chromium(&self, command: &str, parameters: Value) -> Value {
        self.client.issue_cmd(Ask::chromium(command, parameters)).await.expect("chromium obeys")
    }

    /// What was logged since this was last asked: `browser` for the console, `performance` for the network.
    pub async fn log(&self, kind: &str) -> Vec<Value> {
        let log = self.client.issue_cmd(Ask::log(kind)).await.expect("a log");
        log.as_array().cloned().unwrap_or_default()
    }

    /// Runs a function's body in the page; works without script, too, since it comes from the driver.
    pub async fn ask(&self, script: &str, arguments: Vec<Value>) -> Value {
        self.client.execute(script, arguments).await.expect("the page answers")
    }

    /// The same for a script that returns a list of sentences.
    pub async fn sentences(&self, script: &str, arguments: Vec<Value>) -> Vec<String> {
        let found = self.ask(script, arguments).await;
        found.as_array().expect("a list").iter().map(|line| line.as_str().unwrap_or_default().to_owned()).collect()
    }

    /// Runs axe-core over the page and returns each violation as a line. Needs a browser with script.
    pub async fn violations(&self) -> Vec<String> {
        if !self.ask("return 'axe' in window", vec![]).await.as_bool().unwrap_or_default() {
            self.ask(include_str!("vendor/axe-core/axe.min.js"), vec![]).await;
        }
        let run = include_str!("script/axe.js");
        let found = self.client.execute_async(run, vec![]).await.expect("axe answers");
        found.as_array().expect("a list").iter().map(|line| line.as_str().unwrap_or_default().to_owned()).collect()
    }
}

/// A folder among the test's output.
pub fn output(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder).expect("a folder for pictures");
    folder
}

fn bytes(answer: &Value) -> Vec<u8> {
    let data = answer["data"].as_str().expect("data in the answer");
    base64::engine::general_purpose::STANDARD.decode(data).expect("base 64")
}

impl Drop for Browser {
    fn drop(&mut self) {
        // Chromium shares its driver's process group; the profile is worth nothing afterwards.
        if let Some(group) = rustix::process::Pid::from_raw(self.driver.id() as i32) {
            let _ = rustix::process::kill_process_group(group, rustix::process::Signal::KILL);
        }
        let _ = self.driver.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

/// Starts a driver on a free port and waits until it says which.
///
/// It asks for a free port of one address family and wants the same one of the other; when somebody
/// else has that, it gives up at once, and the next try gets another port.
fn start_driver() -> (Child, u16) {
    for _ in 0..20 {
        let mut driver = Command::new("chromedriver")
            .arg("--port=0")
            .process_group(0)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver is installed (`.ci/setup test`)");
        let output = driver.stdout.take().expect("a pipe was asked for");
        let mut lines = BufReader::new(output).lines().map_while(Result::ok);
        let port =
            lines.find_map(|line| line.split("successfully on port ").nth(1)?.trim_end_matches('.').parse().ok());
        if let Some(port) = port {
            // Keep the pipe drained, or the driver stops when it is full.
            std::thread::spawn(move || lines.for_each(drop));
            return (driver, port);
        }
        let _ = driver.wait();
    }
    panic!("chromedriver found no free port in twenty tries");
}
