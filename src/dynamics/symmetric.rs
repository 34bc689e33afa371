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

/// Elements of a row that are computed together, in wide registers; those of a block that lie beyond the diagonal
/// are computed along with it and mean nothing.
pub const BLOCK: usize = 4;

/// Replaces a positive definite matrix by its factor U, with the reciprocals 1/U_kk on the diagonal; what is left in
/// the lower triangle means nothing.
#[inline(always)]
pub fn cholesky<const N: usize>(m: &mut [[f64; N]; N]) {
    for k in 0..N {
        let (done, below) = m.split_at_mut(k + 1);
        let scale = 1.0 / done[k][k].sqrt();
        let row = done[k].map(|x| x * scale);
        take_off::<0, N>(below, &row);
        take_off::<1, N>(below, &row);
        take_off::<2, N>(below, &row);
        take_off::<3, N>(below, &row);
        take_off::<4, N>(below, &row);
        for block in 5..N.div_ceil(BLOCK) {
            take_off_block(below, &row, block * BLOCK);
        }
        done[k] = row;
        done[k][k] = scale;
    }
}

/// Takes a row of the factor, each time as often as it says, off the rows below it that lie in one block.
#[inline(always)]
fn take_off<const BLOCK_NUMBER: usize, const N: usize>(below: &mut [[f64; N]], row: &[f64; N]) {
    if BLOCK_NUMBER * BLOCK < N {
        take_off_block(below, row, BLOCK_NUMBER * BLOCK);
    }
}

/// The same, for the block from column `from` on.
#[inline(always)]
fn take_off_block<const N: usize>(below: &mut [[f64; N]], row: &[f64; N], from: usize) {
    let first = N - below.len();
    for i in first.max(from)..(from + BLOCK).min(N) {
        add_scaled(&mut below[i - first][from..], -row[i], &row[from..]);
    }
}

/// Solves `Uᵀ U y = x` in place. Each unknown, once it is known, is taken off all that are still to come: no sum waits
/// for its end.
#[inline(always)]
pub fn solve<const N: usize>(u: &[[f64; N]; N], x: &mut [f64; N]) {
    for k in 0..N {
        let y = x[k] * u[k][k];
        x[k] = y;
        add_scaled(&mut x[k + 1..], -y, &u[k][k + 1..]);
    }
    for k in (0..N).rev() {
        let y = x[k] * u[k][k];
        x[k] = y;
        for (x, row) in x[..k].iter_mut().zip(u) {
            *x -= y * row[k];
        }
    }
}

/// Puts the inverse from a factor into `out`, both triangles filled.
#[inline(always)]
pub fn inverse<const N: usize>(u: &[[f64; N]; N], out: &mut [[f64; N]; N]) {
    // W = U⁻ᵀ, lower triangular; the inverse is Wᵀ W.
    let mut w = [[0.0; N]; N];
    for k in 0..N {
        match k / BLOCK {
            0 if N > BLOCK => inverse_row::<BLOCK, N>(u, &mut w, k),
            1 if N > 2 * BLOCK => inverse_row::<{ 2 * BLOCK }, N>(u, &mut w, k),
            2 if N > 3 * BLOCK => inverse_row::<{ 3 * BLOCK }, N>(u, &mut w, k),
            3 if N > 4 * BLOCK => inverse_row::<{ 4 * BLOCK }, N>(u, &mut w, k),
            _ => inverse_row::<N, N>(u, &mut w, k),
        }
    }
    for (j, out) in out.iter_mut().enumerate() {
        match j / BLOCK {
            0 if N > BLOCK => products_row::<BLOCK, N>(&w, j, out),
            1 if N > 2 * BLOCK => products_row::<{ 2 * BLOCK }, N>(&w, j, out),
            2 if N > 3 * BLOCK => products_row::<{ 3 * BLOCK }, N>(&w, j, out),
            3 if N > 4 * BLOCK => products_row::<{ 4 * BLOCK }, N>(&w, j, out),
            _ => products_row::<N, N>(&w, j, out),
        }
    }
    mirror(out);
}

/// Finishes row k of U⁻ᵀ, of which the first TO elements hold all that is not zero, and takes it off the rows below.
#[inline(always)]
fn inverse_row<const TO: usize, const N: usize>(
    u: &[[f64; N]; N],
    w: &mut [[f64; N]; N],
    k: usize,
) {
    let (done, below) = w.split_at_mut(k + 1);
    done[k][k] = 1.0;
    let mut row = [0.0; TO];
    for (x, before) in row.iter_mut().zip(&done[k]) {
        *x = before * u[k][k];
    }
    for (below, share) in below.iter_mut().zip(&u[k][k + 1..]) {
        add_scaled(&mut below[..TO], -share, &row);
    }
    done[k][..TO].copy_from_slice(&row);
}

/// The first TO elements of row j of `Wᵀ W`, of a W that is lower triangular.
#[inline(always)]
fn products_row<const TO: usize, const N: usize>(w: &[[f64; N]; N], j: usize, out: &mut [f64; N]) {
    let mut sums = [0.0; TO];
    for row in &w[j..] {
        add_scaled(&mut sums, row[j], &row[..TO]);
    }
    out[..TO].copy_from_slice(&sums);
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
