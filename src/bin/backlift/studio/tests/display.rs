//! A display that nobody sees, a program on it, a mouse and a keyboard: Xvfb and xdotool.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// Size of the screen, pixels.
pub const SCREEN: [u32; 2] = [1366, 768];

/// The display; gone with this value.
pub struct Display {
    server: Child,
    name: String,
    frame: PathBuf,
}

impl Display {
    /// Starts it; its picture is kept in a file of `folder`.
    pub fn start(folder: &Path) -> Self {
        let screen = format!("{}x{}x24", SCREEN[0], SCREEN[1]);
        let mut server = Command::new("Xvfb")
            .args(["-displayfd", "1", "-nolisten", "tcp", "-screen", "0", &screen, "-fbdir"])
            .arg(folder)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("Xvfb is installed");
        let mut number = String::new();
        BufReader::new(server.stdout.take().unwrap()).read_line(&mut number).unwrap();
        let name = format!(":{}", number.trim());
        Self { server, name, frame: folder.join("Xvfb_screen0") }
    }

    pub fn open(&self, arguments: &[&str], folder: &Path) -> Child {
        let tests = std::env::current_exe().unwrap();
        let program = tests.parent().unwrap().parent().unwrap().join("backlift");
        Command::new(program)
            .args(arguments)
            .current_dir(folder)
            .env("DISPLAY", &self.name)
            .env_remove("WAYLAND_DISPLAY")
            .env("XDG_STATE_HOME", folder.join("state"))
            .spawn()
            .unwrap()
    }

    /// Mouse and keyboard.
    pub fn tool(&self, arguments: &[&str]) {
        let done = Command::new("xdotool").args(arguments).env("DISPLAY", &self.name).output();
        let done = done.expect("xdotool is installed");
        assert!(done.status.success(), "xdotool {arguments:?}: {done:?}");
    }

    /// A click at a place, and the mouse out of the way again. A window that works may be slow: each step waits until
    /// what came of the one before is seen, if anything is.
    pub fn click(&self, at: egui::Pos2) {
        let [x, y] = [at.x, at.y].map(|it| format!("{it:.0}"));
        let [away_x, away_y] = SCREEN.map(|it| (it - 2).to_string());
        for step in [
            &["mousemove", &x, &y][..],
            &["mousedown", "1"],
            &["mouseup", "1"],
            &["mousemove", &away_x, &away_y],
        ] {
            let before = self.picture();
            self.tool(step);
            let _ = (0..40).find(|_| {
                pause(100);
                self.picture() != before
            });
            pause(500);
        }
    }

    /// A drag from one place to another, and the mouse out of the way again.
    pub fn drag(&self, from: egui::Pos2, to: egui::Pos2) {
        let place = |at: egui::Pos2| [at.x, at.y].map(|it| format!("{it:.0}"));
        let move_to = |[x, y]: [String; 2]| self.tool(&["mousemove", &x, &y]);
        move_to(place(from));
        pause(900);
        self.tool(&["mousedown", "1"]);
        pause(900);
        move_to(place(to));
        pause(1_500);
        self.tool(&["mouseup", "1"]);
        pause(900);
        move_to(SCREEN.map(|it| (it - 2).to_string()));
        pause(300);
    }

    /// A key with Ctrl, held long enough for a slow picture.
    pub fn with_control(&self, key: &str) {
        for word in [["keydown", "ctrl"], ["key", key], ["keyup", "ctrl"]] {
            self.tool(&word);
            pause(700);
        }
    }

    /// Red, green, blue of every pixel, row by row.
    pub fn picture(&self) -> Vec<[u8; 3]> {
        // An X window dump: a header of big-endian words, colours, pixels.
        let bytes = std::fs::read(&self.frame).unwrap();
        let word =
            |n: usize| u32::from_be_bytes(bytes[4 * n..4 * n + 4].try_into().unwrap()) as usize;
        let (start, row) = (word(0) + 12 * word(19), word(12));
        assert_eq!([word(4), word(5)], SCREEN.map(|it| it as usize));
        let pixel = |x: usize, y: usize| {
            let at = start + y * row + 4 * x;
            [bytes[at + 2], bytes[at + 1], bytes[at]]
        };
        let places = (0..word(5)).flat_map(|y| (0..word(4)).map(move |x| (x, y)));
        places.map(|(x, y)| pixel(x, y)).collect()
    }

    /// The picture when it no longer changes.
    pub fn still_picture(&self) -> Vec<[u8; 3]> {
        let mut before = self.picture();
        for _ in 0..200 {
            pause(1_500);
            let now = self.picture();
            if now == before {
                return now;
            }
            before = now;
        }
        panic!("the window does not come to rest");
    }
}

impl Drop for Display {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}

pub fn pause(ms: u64) {
    std::thread::sleep(std::time::Duration::from_millis(ms));
}
