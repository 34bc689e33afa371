//! The estimators against functions whose indices are known in closed form.

use approx::assert_relative_eq;
use backlift::normal::quantile;
use backlift::sensitivity::design::Row;
use backlift::sensitivity::design::{Design, MOST_COORDINATES};
use backlift::sensitivity::indices::{Divided, divide};
use core::f64::consts::PI;

/// Draws a function whose inputs lie evenly between 0 and 1, and divides its variance.
fn divided(design: &Design, rows: usize, f: impl Fn(&[f64]) -> f64) -> Divided {
    let rows: Vec<Row> = (0..rows).map(|number| row(design, number, &f)).collect();
    divide(design, &rows).unwrap()
}

fn row(design: &Design, number: usize, f: impl Fn(&[f64]) -> f64) -> Row {
    Row {
        number,
        a: f(&design.a(number)),
        b: f(&design.b(number)),
        mixed: (0..design.inputs()).map(|input| f(&design.mixed(number, input))).collect(),
    }
}

/// sin x₁ + 7 sin² x₂ + 0.1 x₃⁴ sin x₁ over −π to π.
fn ishigami(x: &[f64]) -> f64 {
    let [a, b, c] = [x[0], x[1], x[2]].map(|u| PI * (2.0 * u - 1.0));
    let sin_b = libm::sin(b);
    libm::sin(a) + 7.0 * sin_b * sin_b + 0.1 * c * c * c * c * libm::sin(a)
}

/// Source: Ishigami & Homma 1990, a = 7, b = 0.1; the closed form stands in every textbook on the
/// subject (Saltelli et al. 2008, Global Sensitivity Analysis: The Primer, section 4.5): S 0.3139,
/// 0.4424, 0; T 0.5576, 0.4424, 0.2437; mean a/2, variance 13.845.
#[test]
fn published_indices_of_the_ishigami_function_come_back() {
    let it = divided(&Design::new(&[1, 1, 1]).unwrap(), 4096, ishigami);
    assert_relative_eq!(it.mean, 3.5, max_relative = 0.01);
    assert_relative_eq!(it.sd * it.sd, 13.845, max_relative = 0.02);
    for (index, [first, total]) in
        it.indices.iter().zip([[0.3139, 0.5576], [0.4424, 0.4424], [0.0, 0.2437]])
    {
        println!("{index:?}");
        assert!((index.first.value - first).abs() < 0.02, "{index:?} {first}");
        assert!((index.total.value - total).abs() < 0.02, "{index:?} {total}");
        let [low, high] = index.total.interval;
        assert!(low < total && total < high, "{index:?} {total}");
    }
}

/// `∏ (|4x − 2| + a) / (1 + a)`: V_i = 1/(3 (1 + a_i)²), V = ∏(1 + V_i) − 1, S_i = V_i/V,
/// T_i = V_i ∏_{j≠i}(1 + V_j)/V. Source: Saltelli & Sobol' 1995; with these a the usual case.
#[test]
fn published_indices_of_the_sobol_g_function_come_back() {
    let a = [0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0];
    let g = |x: &[f64]| {
        x.iter().zip(a).map(|(x, a)| ((4.0 * x - 2.0).abs() + a) / (1.0 + a)).product::<f64>()
    };
    let it = divided(&Design::new(&[1; 8]).unwrap(), 4096, g);
    let v = a.map(|a| 1.0 / (3.0 * (1.0 + a) * (1.0 + a)));
    let all: f64 = v.iter().map(|v| 1.0 + v).product();
    for (index, v) in it.indices.iter().zip(v) {
        println!("{index:?}");
        assert!((index.first.value - v / (all - 1.0)).abs() < 0.02, "{index:?}");
        assert!((index.total.value - v * all / (1.0 + v) / (all - 1.0)).abs() < 0.02, "{index:?}");
    }
    assert_relative_eq!(it.indices[0].first.value, 0.7162, epsilon = 0.02);
}

/// A sum: each input carries its own variance and nothing together with others, whatever the draws.
#[test]
fn a_sum_is_divided_exactly_by_few_draws_and_its_shares_add_to_one() {
    let f = |x: &[f64]| 3.0 * quantile(x[0]) + 2.0 * quantile(x[1]) + quantile(x[2]) + 10.0;
    let it = divided(&Design::new(&[1, 1, 1, 1]).unwrap(), 16, f);
    for (index, variance) in it.indices.iter().zip([9.0, 4.0, 1.0, 0.0]) {
        assert_relative_eq!(index.first.value, variance / 14.0, epsilon = 1e-9);
        assert_relative_eq!(index.total.value, variance / 14.0, epsilon = 1e-9);
    }
    assert_relative_eq!(it.mean, 10.0, epsilon = 1e-9);
    assert_relative_eq!(it.sd * it.sd, 14.0, max_relative = 1e-9);
}

/// Two coordinates of one input are moved together.
#[test]
fn an_input_of_two_coordinates_carries_what_both_do() {
    let f = |x: &[f64]| quantile(x[0]) + quantile(x[1]) * quantile(x[2]) + quantile(x[3]);
    let it = divided(&Design::new(&[1, 2, 1]).unwrap(), 2048, f);
    for index in &it.indices {
        assert_relative_eq!(index.first.value, 1.0 / 3.0, epsilon = 0.03);
        assert_relative_eq!(index.total.value, 1.0 / 3.0, epsilon = 0.03);
    }
}

/// Intervals of 95 % over forty parts of the sequence, each of 32 rows, of a smooth product whose
/// indices are known (those of the g function, with V_i = exp(s_i²) − 1 for a lognormal factor): they
/// hold the truth oftener than they say, since evenly spread points are surer than the bootstrap knows.
#[test]
fn an_interval_holds_the_truth_at_least_nine_times_in_ten() {
    let sd = [0.3, 0.2, 0.1];
    let f = |x: &[f64]| libm::exp(x.iter().zip(sd).map(|(x, sd)| sd * quantile(*x)).sum());
    let v = sd.map(|sd| libm::expm1(sd * sd));
    let all: f64 = v.iter().map(|v| 1.0 + v).product();
    let design = Design::new(&[1, 1, 1]).unwrap();
    let mut held = [0; 2];
    for part in 0..40 {
        let row = |n: usize| row(&design, 32 * part + n, f);
        let it = divide(&design, &(0..32).map(row).collect::<Vec<_>>()).unwrap();
        for (index, v) in it.indices.iter().zip(v) {
            let within = |[low, high]: [f64; 2], truth: f64| low <= truth && truth <= high;
            let total = v * all / (1.0 + v) / (all - 1.0);
            held[0] += usize::from(within(index.first.interval, v / (all - 1.0)));
            held[1] += usize::from(within(index.total.interval, total));
        }
    }
    println!("{held:?} of 120");
    assert!(held.iter().all(|it| *it >= 108), "{held:?} of 120");
}

#[test]
fn what_never_varies_is_nobodys_and_one_row_says_nothing() {
    let design = Design::new(&[1, 1]).unwrap();
    let it = divided(&design, 8, |_| 5.0);
    assert_relative_eq!(it.mean, 5.0, max_relative = 1e-12);
    assert_relative_eq!(it.sd, 0.0, epsilon = 1e-12);
    assert!(it.indices.iter().all(|it| it.first.value == 0.0 && it.total.value == 0.0));
    let row = Row { number: 0, a: 1.0, b: 2.0, mixed: vec![1.0, 2.0] };
    assert_eq!(divide(&design, &[row]), None);
    assert_eq!(Design::new(&[MOST_COORDINATES, 1]), None);
}

#[test]
fn a_row_mixed_differs_from_the_first_set_in_one_input_only() {
    let design = Design::new(&[1, 2, 1]).unwrap();
    let (a, b, mixed) = (design.a(5), design.b(5), design.mixed(5, 1));
    assert_eq!(mixed, vec![a[0], b[1], b[2], a[3]]);
    assert!(a.iter().chain(&b).all(|u| 0.0 < *u && *u < 1.0));
}

/// Φ(z) = erfc(−z/√2)/2, and the quantiles that every table of the normal distribution has.
#[test]
fn published_quantiles_of_the_normal_distribution_come_back() {
    for (p, z) in [(0.5, 0.0), (0.975, 1.959_964), (0.95, 1.644_854), (0.001, -3.090_232)] {
        assert_relative_eq!(quantile(p), z, epsilon = 1e-6);
    }
    for k in 1..2000 {
        let p = f64::from(k) / 2000.0;
        let back = 0.5 * libm::erfc(-quantile(p) / core::f64::consts::SQRT_2);
        assert_relative_eq!(back, p, max_relative = 2e-6);
    }
    assert_relative_eq!(quantile(1e-12), -7.034_484, epsilon = 1e-5);
    assert_eq!((quantile(0.0), quantile(1.0)), (f64::NEG_INFINITY, f64::INFINITY));
}
