//! Photos of jaws: made small, kept, taken along, deleted and brought back; what is none is refused.

use holdround_core::record::{IMAGE, LONGEST_IMAGE};
use holdround_tests::browser::{Browser, Viewport};
use serde_json::json;

use crate::records::{KEPT, act, file, keep, open_records, read, settle, take_over};
use crate::sheet::{come_to_rest, on_both_pages, open};

/// Chooses a file for the jaws; `make` is a script that gives its content for `new File`.
fn choose_photo(browser: &Browser, id: &str, name: &str, kind: &str, make: &str) {
    let script = format!(
        "return (async (id, name, type) => {{
            const files = new DataTransfer();
            files.items.add(new File([await ({make})], name, {{ type }}));
            const field = document.getElementById(`photo-take-${{id}}`);
            field.files = files.files;
            field.dispatchEvent(new Event('change', {{ bubbles: true }}));
        }})(...arguments)"
    );
    browser.execute(&script, vec![json!(id), json!(name), json!(kind)]);
}

/// A picture of noise, which JPEG hardly makes smaller, of 2400 by 1600 pixels.
const NOISE: &str = "new Promise((done) => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2400, 1600];
    const context = canvas.getContext('2d');
    const noise = context.createImageData(2400, 1600);
    for (let at = 0; at < noise.data.length; at += 65536) crypto.getRandomValues(noise.data.subarray(at, Math.min(at + 65536, noise.data.length)));
    for (let at = 3; at < noise.data.length; at += 4) noise.data[at] = 255;
    context.putImageData(noise, 0, 0);
    canvas.toBlob(done, 'image/png');
})";
/// A plain picture, upright, smaller than what is kept.
const PLAIN: &str = "new Promise((done) => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [300, 500];
    canvas.getContext('2d').fillRect(20, 20, 200, 200);
    canvas.toBlob(done, 'image/png');
})";

const SEEN: &str = "[...document.querySelectorAll('.record img')].filter((image) => image.complete).map((image) => [image.naturalWidth, image.naturalHeight])";

#[test]
fn a_photo_is_kept_small_with_the_record_and_in_its_file() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let id = keep(browser);
        choose_photo(browser, &id, "jaws.png", "image/png", PLAIN);
        browser.eventually(SEEN, &json!([[300, 500]]), "a small one stays as it is");
        choose_photo(browser, &id, "noise.png", "image/png", NOISE);
        browser.wait_until("document.querySelectorAll('.record img[src]').length === 2");
        let sides = "[...document.querySelectorAll('.record img')].every((image) => Math.max(image.naturalWidth, image.naturalHeight) <= 1000)";
        browser.wait_until(sides);
        settle(browser);
        let alternatives = browser
            .execute("return [...document.querySelectorAll('.record img')].map((image) => image.alt)", Vec::new());
        let alternatives = alternatives.to_string();
        assert!(
            alternatives.contains("Photo 1 of ") && alternatives.contains("Photo 2 of "),
            "in words: {alternatives}"
        );

        let saved = file(browser);
        let records = read(&saved);
        let photos = &records.get(&id).unwrap().photos;
        let lengths: Vec<_> = photos.0.iter().map(|(_, photo)| photo.get(IMAGE).len()).collect();
        assert!(
            lengths.len() == 2 && lengths.iter().all(|length| (1000..=LONGEST_IMAGE).contains(length)),
            "{lengths:?}"
        );

        browser.reload();
        open_records(browser);
        browser.tap(&format!("#record-{id} > summary"));
        browser.wait_until("document.querySelectorAll('.record img[src]').length === 2");

        let elsewhere = Browser::open(Viewport::DESK);
        open(&elsewhere, url);
        open_records(&elsewhere);
        take_over(&elsewhere, &saved);
        elsewhere.eventually("document.querySelectorAll('.record img').length", &json!(2), "both came along");
        assert_eq!(read(&file(&elsewhere)), records, "the same");

        let (first, _) = photos.0.first().unwrap();
        come_to_rest(browser);
        // Pictures and what is still drawn above them move the button: a finger waits until it stands.
        browser.wait_until(&format!(
            "((button) => {{
                const place = button.getBoundingClientRect().top + scrollY;
                window.still = window.stood === place ? window.still + 1 : 0;
                window.stood = place;
                return window.still > 40 && [...document.querySelectorAll('.record img')].every((photo) => photo.complete);
            }})(document.getElementById('record-delete-{id}/{first}'))"
        ));
        browser.tap(&format!("[id='record-delete-{id}/{first}']"));
        browser.eventually("document.querySelectorAll('.record img').length", &json!(1), "one is deleted");
        browser.eventually(KEPT, &json!("kept"), "for good");
        let without = file(browser);
        browser.tap(&format!("#record-undelete-photo-{id}"));
        browser.eventually("document.querySelectorAll('.record img[src]').length", &json!(2), "and brought back");
        take_over(&elsewhere, &without);
        elsewhere.eventually(
            "document.querySelectorAll('.record img').length",
            &json!(1),
            "the deletion comes along too",
        );
        assert_eq!(file(&elsewhere).matches("base64").count(), 1, "and its picture is gone");
    });
}

#[test]
fn what_is_no_photo_is_refused_in_plain_words() {
    on_both_pages(Viewport::DESK, |browser, _| {
        let id = keep(browser);
        let drawing = "'<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\"><script>top.ran = true</script></svg>'";
        let hostile = [
            ("words.jpg", "image/jpeg", "'This is no picture.'"),
            ("drawing.svg", "image/svg+xml", drawing),
            ("drawing.png", "image/png", drawing),
            ("empty.png", "image/png", "''"),
            ("page.html", "text/html", "'<script>top.ran = true</script>'"),
            ("huge.png", "image/png", "new Uint8Array(68_000_000)"),
        ];
        for (name, kind, make) in hostile {
            choose_photo(browser, &id, name, kind, make);
            browser
                .wait_until(&format!("document.querySelector('#notices').textContent.includes('{name} was not kept')"));
        }
        assert_eq!(browser.count(".record img"), 0, "none of them is shown");
        assert_eq!(browser.execute("return window.ran === undefined", Vec::new()), json!(true), "and nothing ran");
        act(browser, "add", &id);
        settle(browser);
        assert!(read(&file(browser)).get(&id).unwrap().photos.0.is_empty(), "nor kept");
    });
}
