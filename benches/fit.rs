//! The whole search for the built-in demo. Ten runs, a minute or two.
#![allow(missing_docs)]

mod setting;

use std::ops::ControlFlow;

use backlift::fit::fitting::{Order, fit};
use criterion::{Criterion, criterion_group, criterion_main};
use setting::demo;

fn fit_the_demo(c: &mut Criterion) {
    let demo = demo();
    let order = Order {
        player: &demo.player,
        strokes: &demo.strokes,
        strokes_otherwise: &demo.strokes_otherwise,
        bats: &demo.bats,
        plan: &demo.scenario.innings,
        bowling: &demo.scenario.bowling,
        uses: demo.scenario.uses,
        seen: &demo.scenario.seen,
        limits: &demo.scenario.fit,
        sizes: &demo.sizes,
        laws: &demo.laws,
    };
    c.bench_function("fit the demo", |b| {
        b.iter(|| fit(&order, &|_, _| ControlFlow::Continue(())).unwrap());
    });
}

criterion_group! { name = benches; config = Criterion::default().sample_size(10); targets = fit_the_demo }
criterion_main!(benches);
