//! One swing, one search for the fastest controlled one, one swing on the engine at both steps.
#![allow(missing_docs)]

mod setting;

use std::hint::black_box;

use backlift::player::joints::FRESH;
use backlift::swing::engine::pair::engine_swing;
use criterion::{Criterion, criterion_group, criterion_main};
use setting::pull;

fn swing(c: &mut Criterion) {
    let held = pull();
    let swinger = held.swinger(&FRESH);
    let fastest_s = held.fastest(&FRESH, None).unwrap().stroke_time_s;
    c.bench_function("swing pull", |b| b.iter(|| swinger.swing(black_box(fastest_s), None)));
    c.bench_function("engine pair pull", |b| {
        b.iter(|| engine_swing(&swinger, black_box(fastest_s)).unwrap());
    });
}

fn search(c: &mut Criterion) {
    let held = pull();
    let fastest_s = held.fastest(&FRESH, None).unwrap().stroke_time_s;
    // As far off as a bat of a tenth more swing moment puts it.
    let near_s = 1.03 * fastest_s;
    c.bench_function("fastest pull from afar", |b| b.iter(|| held.fastest(&FRESH, None).unwrap()));
    c.bench_function("fastest pull from near", |b| {
        b.iter(|| held.fastest(&FRESH, black_box(Some(near_s))).unwrap());
    });
}

criterion_group! { name = benches; config = Criterion::default().sample_size(20); targets = swing, search }
criterion_main!(benches);
