//! A described bat: its mass, all its figures, and blades for a card.
#![allow(missing_docs)]

use std::hint::black_box;

use backlift::bat::shaped::figures;
use backlift::bat::sizes::named;
use backlift::bat::willow::USUAL_DENSITY_KG_M3;
use backlift::files::{assets, card};
use backlift::workshop::carved::Held;
use backlift::workshop::to_card::{Start, to_card};
use criterion::{Criterion, criterion_group, criterion_main};

fn shape(c: &mut Criterion) {
    let (sizes, limits) = (assets::sizes().unwrap(), assets::limits().unwrap());
    let card = card::read(include_str!("../tests/commands/card.ron")).unwrap();
    let size = named(&sizes, &card.size).unwrap();
    c.bench_function("mass, centre and tensor of a shape", |b| {
        b.iter(|| black_box(&size.reference).mass_moments().I_Com_B());
    });
    c.bench_function("all figures of a shape", |b| {
        b.iter(|| {
            let shape = black_box(&size.reference).clone();
            figures("", shape, USUAL_DENSITY_KG_M3, size, &limits).unwrap()
        });
    });
    let start = Start {
        shape: size.reference.clone(),
        density_kg_m3: USUAL_DENSITY_KG_M3,
        willow_given: false,
        cleft: None,
        size,
        limits: &limits,
        held: Held::default(),
    };
    c.bench_function("blades for a card", |b| {
        b.iter(|| to_card(black_box(&start), &card, &|| false))
    });
}

criterion_group!(benches, shape);
criterion_main!(benches);
