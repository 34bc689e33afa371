//! One bat through an innings of fifty, looked at every ten runs.
#![allow(missing_docs)]

mod setting;

use std::hint::black_box;

use backlift::fit::setting::Setting;
use backlift::innings::played::play;
use backlift::swing::batter::Batter;
use criterion::{Criterion, criterion_group, criterion_main};
use setting::demo;

const SCORES: [f64; 6] = [0.0, 10.0, 20.0, 30.0, 40.0, 50.0];

fn innings(c: &mut Criterion) {
    let demo = demo();
    let bat = &demo.bats[0].bat;
    let batter = Batter::new(&demo.player, &demo.strokes, bat).unwrap();
    let factor = demo.scenario.fit.asked_time_factor;
    let asked_s = Setting::asked_times_s(&batter, bat, factor).unwrap();
    let plan = &demo.scenario.innings;
    let ball = demo.scenario.bowling;
    c.bench_function("innings of fifty", |b| {
        b.iter(|| play(&batter, black_box(bat), plan, ball, &asked_s, &SCORES).unwrap());
    });
}

criterion_group! { name = benches; config = Criterion::default().sample_size(10); targets = innings }
criterion_main!(benches);
