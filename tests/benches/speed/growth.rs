//! How the time of shape work grows; `evidence.html` shows the same as multiplications.

use std::hint::black_box;

use holdround_tests::evidence::growth::{LENGTHS, elements_along, tube};
use holdround_tests::evidence::power;
use holdround_tests::speed::least;

pub(crate) fn tell() {
    println!("\na tube, longer and longer: one harmonic");
    let models = LENGTHS.map(|lengths| tube(lengths).unwrap());
    let points = models.each_ref().map(|model| {
        let time = least(20, |_| {
            black_box(black_box(model).respond(3).unwrap());
        });
        [elements_along(model) as f64, time]
    });
    print(&points, "elements along the part");
    println!("a tube, with more and more harmonics");
    let points = [1, 2, 4, 8, 16].map(|harmonics| {
        let time = least(20, |_| {
            (1..=harmonics).for_each(|k| {
                black_box(black_box(&models[0]).respond(3 * k).unwrap());
            });
        });
        [harmonics as f64, time]
    });
    print(&points, "harmonics");
}

fn print(points: &[[f64; 2]], what: &str) {
    for [count, time] in points {
        println!("    {count} {what}: {time:.2} ms, {:.1} µs each", time / count * 1e3);
    }
    println!("    grows by the power {:.2}; 1 is in proportion", power(points));
}
