//! One bat from the bench.
#![allow(missing_docs)]

mod setting;

use std::hint::black_box;

use backlift::bat::figures::weigh;
use criterion::{Criterion, criterion_group, criterion_main};
use setting::demo;

fn weigh_one_bat(c: &mut Criterion) {
    let demo = demo();
    let reading = &demo.scenario.bats[0];
    c.bench_function("weigh a bat", |b| {
        b.iter(|| weigh(black_box(reading), &demo.sizes, &demo.laws).unwrap());
    });
}

criterion_group!(benches, weigh_one_bat);
criterion_main!(benches);
