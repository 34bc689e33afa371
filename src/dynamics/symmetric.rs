//! Small dense symmetric matrices: Cholesky factor and its solves, sized at compile time.

/// Replaces the lower triangle of a positive definite matrix by its Cholesky factor.
/// The upper triangle is neither read nor written.
pub fn cholesky<const N: usize>(m: &mut [[f64; N]; N]) {
    for j in 0..N {
        let (done, rest) = m.split_at_mut(j);
        let row = &mut rest[0];
        for l in 0..j {
            let other = &done[l];
            let mut s = row[l];
            for x in 0..l {
                s -= row[x] * other[x];
            }
            row[l] = s / other[l];
        }
        let mut s = row[j];
        for x in row.iter().take(j) {
            s -= x * x;
        }
        row[j] = s.sqrt();
    }
}

/// Solves `L y = x` in place.
pub fn forward<const N: usize>(l: &[[f64; N]; N], x: &mut [f64; N]) {
    for j in 0..N {
        let mut s = x[j];
        for i in 0..j {
            s -= l[j][i] * x[i];
        }
        x[j] = s / l[j][j];
    }
}

/// Solves `Lᵀ y = x` in place.
pub fn backward<const N: usize>(l: &[[f64; N]; N], x: &mut [f64; N]) {
    for j in (0..N).rev() {
        let y = x[j] / l[j][j];
        x[j] = y;
        for i in 0..j {
            x[i] -= l[j][i] * y;
        }
    }
}

/// Inverse from a Cholesky factor, both triangles filled.
pub fn inverse<const N: usize>(l: &[[f64; N]; N]) -> [[f64; N]; N] {
    // Columns of L⁻¹, stored as rows of its transpose: t[c][r] = (L⁻¹)[r][c].
    let mut t = [[0.0; N]; N];
    for c in 0..N {
        t[c][c] = 1.0 / l[c][c];
        for r in c + 1..N {
            let mut s = 0.0;
            for x in c..r {
                s += l[r][x] * t[c][x];
            }
            t[c][r] = -s / l[r][r];
        }
    }
    let mut out = [[0.0; N]; N];
    for a in 0..N {
        for b in 0..=a {
            let mut s = 0.0;
            for x in a..N {
                s += t[a][x] * t[b][x];
            }
            out[a][b] = s;
            out[b][a] = s;
        }
    }
    out
}
