//! Small dense symmetric matrices: Cholesky factor and its solves, sized at compile time.
//!
//! `A = Uᵀ U` with U in the upper triangle, so that every inner loop runs along a row. Inlined always, so that
//! a caller compiled for wider registers has these loops in them; no sum is reordered, so that the
//! bytes are the same on every processor.
#![allow(
    clippy::needless_range_loop,
    reason = "rows and columns of matrices read as in the textbook"
)]

/// `y += a x` over the common length.
#[inline(always)]
pub fn add_scaled(y: &mut [f64], a: f64, x: &[f64]) {
    for (y, x) in y.iter_mut().zip(x) {
        *y += a * x;
    }
}

/// Sum of products, in four sums side by side: one after another each would wait for the one before.
#[inline(always)]
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let (a4, b4) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest: f64 = a4.remainder().iter().zip(b4.remainder()).map(|(a, b)| a * b).sum();
    let mut sums = [0.0; 4];
    for (a, b) in a4.zip(b4) {
        for (sum, (a, b)) in sums.iter_mut().zip(a.iter().zip(b)) {
            *sum += a * b;
        }
    }
    sums.iter().sum::<f64>() + rest
}

/// Replaces a positive definite matrix by its factor U, with the reciprocals 1/U_kk on the diagonal; what is left in
/// the lower triangle means nothing (whole rows are quicker than ends of rows).
#[inline(always)]
pub fn cholesky<const N: usize>(m: &mut [[f64; N]; N]) {
    for k in 0..N {
        let (done, rest) = m.split_at_mut(k + 1);
        let scale = 1.0 / done[k][k].sqrt();
        let row = done[k].map(|x| x * scale);
        for (i, below) in rest.iter_mut().enumerate() {
            add_scaled(below, -row[k + 1 + i], &row);
        }
        done[k] = row;
        done[k][k] = scale;
    }
}

/// Solves `Uᵀ U y = x` in place.
#[inline(always)]
pub fn solve<const N: usize>(u: &[[f64; N]; N], x: &mut [f64; N]) {
    for k in 0..N {
        let y = x[k] * u[k][k];
        x[k] = y;
        add_scaled(&mut x[k + 1..], -y, &u[k][k + 1..]);
    }
    for k in (0..N).rev() {
        x[k] = (x[k] - dot(&u[k][k + 1..], &x[k + 1..])) * u[k][k];
    }
}

/// Inverse from a factor, both triangles filled.
#[inline(always)]
pub fn inverse<const N: usize>(u: &[[f64; N]; N]) -> [[f64; N]; N] {
    // W = U⁻ᵀ, lower triangular, row by row; the inverse is Wᵀ W.
    let mut w = [[0.0; N]; N];
    let mut out = [[0.0; N]; N];
    for i in 0..N {
        let (done, rest) = w.split_at_mut(i);
        let row = &mut rest[0];
        row[i] = 1.0;
        for (k, earlier) in done.iter().enumerate() {
            add_scaled(&mut row[..=k], -u[k][i], &earlier[..=k]);
        }
        for x in &mut row[..=i] {
            *x *= u[i][i];
        }
        for j in 0..=i {
            add_scaled(&mut out[j][..=j], row[j], &row[..=j]);
        }
    }
    mirror(&mut out);
    out
}

/// Fills the upper triangle from the lower.
#[inline(always)]
pub fn mirror<const N: usize>(m: &mut [[f64; N]; N]) {
    for i in 1..N {
        for j in 0..i {
            m[j][i] = m[i][j];
        }
    }
}

/// Adds `scale · x xᵀ` to the lower triangle.
#[inline(always)]
pub fn add_outer<const N: usize>(m: &mut [[f64; N]; N], scale: f64, x: &[f64; N]) {
    for (i, row) in m.iter_mut().enumerate() {
        add_scaled(&mut row[..=i], scale * x[i], &x[..=i]);
    }
}
