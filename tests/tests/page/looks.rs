//! What the page looks like, beside pictures of it that were looked at.
//!
//! A picture is kept as one colour for each square of the screen, so that it does not hang on how a machine draws its
//! letters. After a change that is meant to be seen: `HOLDROUND_BLESS=1 cargo test -p holdround-tests --test page looks`,
//! then look at the page on every screen.

use std::fs::File;
use std::io::{BufReader, BufWriter};
use std::path::{Path, PathBuf};

use holdround_tests::browser::{Browser, Viewport, serve_site};

use crate::sheet::{come_to_rest, open};

const BLESS: &str = "HOLDROUND_BLESS";
/// Width and height of a square, in pixels: about two lines of text.
const SQUARE: usize = 40;
/// By how many of 256 levels, in the mean of its three colours, a square may be another one. Paper and white are 16
/// apart.
const LEVELS: u32 = 12;
/// How many squares in 100 may be beyond that. Seen on the twelve pictures: none in the browser that drew them; 7 to 14
/// with every letter of the page from a face with serifs, 20 at worst on a phone; 18 and more with each fault that the
/// test tries.
const ALLOWED: usize = 15;

const SCREENS: [(&str, Viewport); 4] = [
    ("tablet", Viewport::TABLET),
    ("upright", Viewport::TABLET_UPRIGHT),
    ("phone", Viewport::PHONE),
    ("desk", Viewport::DESK),
];
const LOOKS: [&str; 3] = ["paper", "blueprint", "shop"];

/// The colours of the squares of a screen.
struct Picture {
    across: usize,
    colours: Vec<[u8; 3]>,
}

/// The pixels of a PNG file, and how many lie side by side.
fn pixels(path: &Path) -> (usize, Vec<[u8; 3]>) {
    let file = BufReader::new(File::open(path).unwrap());
    let mut reader = png::Decoder::new(file).read_info().unwrap();
    let mut bytes = vec![0; reader.output_buffer_size().unwrap()];
    let told = reader.next_frame(&mut bytes).unwrap();
    let each = told.color_type.samples();
    assert!(each >= 3, "a picture in colours");
    let colours = bytes[..told.buffer_size()].chunks_exact(each).map(|pixel| [pixel[0], pixel[1], pixel[2]]);
    (told.width as usize, colours.collect())
}

impl Picture {
    /// What is on the screen now.
    fn of(browser: &Browser) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("screen.png");
        browser.screenshot(&path);
        let (wide, pixels) = pixels(&path);
        let high = pixels.len() / wide;
        let mean = |left: usize, top: usize| {
            let square = (top..(top + SQUARE).min(high))
                .flat_map(|y| pixels[y * wide + left..y * wide + (left + SQUARE).min(wide)].iter());
            let (mut sums, mut count) = ([0_u32; 3], 0);
            for pixel in square {
                count += 1;
                for (sum, level) in sums.iter_mut().zip(pixel) {
                    *sum += u32::from(*level);
                }
            }
            sums.map(|sum| (sum / count) as u8)
        };
        let tops = (0..high).step_by(SQUARE);
        let colours = tops.flat_map(|top| (0..wide).step_by(SQUARE).map(move |left| (left, top)));
        Self { across: wide.div_ceil(SQUARE), colours: colours.map(|(left, top)| mean(left, top)).collect() }
    }

    fn kept(path: &Path) -> Self {
        let (across, colours) = pixels(path);
        Self { across, colours }
    }

    fn keep(&self, path: &Path) {
        let (across, down) = (self.across as u32, (self.colours.len() / self.across) as u32);
        let mut encoder = png::Encoder::new(BufWriter::new(File::create(path).unwrap()), across, down);
        encoder.set_color(png::ColorType::Rgb);
        encoder.write_header().unwrap().write_image_data(self.colours.as_flattened()).unwrap();
    }

    /// How many squares in 100 are others than in `kept`; all of them on another screen.
    fn differs(&self, kept: &Self) -> usize {
        if (self.across, self.colours.len()) != (kept.across, kept.colours.len()) {
            return 100;
        }
        let apart = |(is, was): (&[u8; 3], &[u8; 3])| {
            is.iter().zip(was).map(|(is, was)| u32::from(is.abs_diff(*was))).sum::<u32>() > 3 * LEVELS
        };
        100 * self.colours.iter().zip(&kept.colours).filter(|pair| apart(*pair)).count() / self.colours.len()
    }
}

fn path(screen: &str, look: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("pictures/{screen}-{look}.png"))
}

/// Styles of the test's own, in place of those it had before.
fn restyle(browser: &Browser, styles: &str) {
    browser.execute(
        "const styles = new CSSStyleSheet();
        styles.replaceSync(arguments[0]);
        document.adoptedStyleSheets = [styles]",
        vec![styles.into()],
    );
}

#[test]
fn the_first_page_looks_as_it_was_looked_at_on_every_screen_and_in_every_look() {
    let site = serve_site();
    for (screen, viewport) in SCREENS {
        let browser = Browser::open(viewport);
        open(&browser, &site.url());
        come_to_rest(&browser);
        for look in LOOKS {
            browser.click(&format!("#prefer-theme option[value='{look}']"));
            browser.execute("document.activeElement.blur(); scrollTo(0, 0)", Vec::new());
            browser.wait_until(&format!("document.documentElement.dataset.theme === '{look}'"));
            let (seen, path) = (Picture::of(&browser), path(screen, look));
            if std::env::var_os(BLESS).is_some() {
                seen.keep(&path);
                continue;
            }
            let kept = Picture::kept(&path);
            let differs = seen.differs(&kept);
            assert!(differs <= ALLOWED, "{screen}, {look}: {differs} squares in 100 look otherwise");
            for (fault, styles) in [
                ("without its views", ".bench { visibility: hidden }"),
                ("pushed down", "body { padding-top: 200px }"),
                ("without styles", "body * { all: revert }"),
            ] {
                restyle(&browser, styles);
                let differs = Picture::of(&browser).differs(&kept);
                assert!(differs > ALLOWED, "{screen}, {look}: {fault} is not noticed, {differs} squares in 100");
            }
            restyle(&browser, "");
            for other in LOOKS.iter().filter(|other| **other != look) {
                let differs = seen.differs(&Picture::kept(&self::path(screen, other)));
                assert!(differs > ALLOWED, "{screen}: {look} is taken for {other}, {differs} squares in 100");
            }
        }
    }
}
