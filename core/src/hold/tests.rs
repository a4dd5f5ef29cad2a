extern crate std;
use super::*;

fn grip(half_angle: f64, along: usize) -> JawGrip {
    let _ = along;
    JawGrip {
        jaws: 3,
        half_angle,
        radius: 0.05,
        length: 0.03,
        force: 20_000.0,
        side: Side::Outside,
        wrap: Wrap::Ignored,
    }
}

#[test]
fn smoke() {
    let part = Clamped::new(&grip(0.3, 5).contacts(5, 3).unwrap(), 0.1, None).unwrap();
    for w in [
        Wrench {
            force: [0.0; 3],
            moment: [0.0, 0.0, 50.0],
        },
        Wrench {
            force: [0.0, 0.0, 300.0],
            moment: [0.0; 3],
        },
        Wrench {
            force: [300.0, 0.0, 300.0],
            moment: [10.0, 20.0, -5.0],
        },
        Wrench {
            force: [0.0, 0.0, 0.0],
            moment: [10.0, 20.0, 0.0],
        },
    ] {
        std::println!("{:?}", part.hold(&w).unwrap());
    }
    let part = Clamped::new(
        &grip(0.3, 5).contacts(5, 3).unwrap(),
        0.1,
        Some(Seat {
            radius: 0.04,
            z: -0.03,
        }),
    )
    .unwrap();
    for w in [
        Wrench {
            force: [0.0; 3],
            moment: [0.0, 0.0, 50.0],
        },
        Wrench {
            force: [0.0, 0.0, -300.0],
            moment: [0.0; 3],
        },
        Wrench {
            force: [0.0, 0.0, -300.0],
            moment: [0.0, 0.0, -50.0],
        },
        Wrench {
            force: [300.0, 0.0, 300.0],
            moment: [10.0, 20.0, -5.0],
        },
        Wrench {
            force: [0.0, 0.0, -20.0],
            moment: [10.0, 20.0, 0.0],
        },
    ] {
        std::println!("{:?}", part.hold(&w).unwrap());
    }
}
