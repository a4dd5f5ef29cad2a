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
        Wrench { force: [0.0; 3], moment: [0.0, 0.0, 50.0] },
        Wrench { force: [0.0, 0.0, 300.0], moment: [0.0; 3] },
        Wrench { force: [300.0, 0.0, 300.0], moment: [10.0, 20.0, -5.0] },
        Wrench { force: [0.0, 0.0, 0.0], moment: [10.0, 20.0, 0.0] },
    ] {
        std::println!("{:?}", part.hold(&w).unwrap());
    }
    let part = Clamped::new(&grip(0.3, 5).contacts(5, 3).unwrap(), 0.1, Some(Seat { radius: 0.04, z: -0.03 })).unwrap();
    for w in [
        Wrench { force: [0.0; 3], moment: [0.0, 0.0, 50.0] },
        Wrench { force: [0.0, 0.0, -300.0], moment: [0.0; 3] },
        Wrench { force: [0.0, 0.0, -300.0], moment: [0.0, 0.0, -50.0] },
        Wrench { force: [300.0, 0.0, 300.0], moment: [10.0, 20.0, -5.0] },
        Wrench { force: [0.0, 0.0, -20.0], moment: [10.0, 20.0, 0.0] },
    ] {
        std::println!("{:?}", part.hold(&w).unwrap());
    }
}

#[test]
fn timing() {
    let part = Clamped::new(&grip(0.3, 5).contacts(5, 3).unwrap(), 0.1, None).unwrap();
    let load = crate::cutting::CutLoad {
        tool: crate::cutting::ToolPosition { radius: 0.04, z: 0.04 },
        radial: -300.0,
        tangential: -1000.0,
        axial: -400.0,
        couple: 0.0,
    }
    .rotating();
    for seat in [None, Some(Seat { radius: 0.04, z: -0.03 })] {
        let part = Clamped { seat, ..Clamped::new(&part.contacts, 0.1, seat).unwrap() };
        let t = std::time::Instant::now();
        let mut w = part.worst(&load, 3).unwrap();
        for _ in 0..99 {
            w = part.worst(&load, 3).unwrap();
        }
        std::println!("{:?} {:?}", t.elapsed() / 100, w);
        let dense = (0..3000)
            .filter_map(|k| {
                part.hold(&load.at(core::f64::consts::TAU / 3.0 * k as f64 / 3000.0))
                    .unwrap()
                    .limit()
                    .map(|l| (l.upper, k))
            })
            .reduce(|a, b| if b.0 < a.0 { b } else { a });
        std::println!("{dense:?}");
    }
}
