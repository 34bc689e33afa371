//! Points spread evenly over a normal distribution, without chance.

/// The `i`-th number of the van der Corput sequence in a prime base, in 0 to 1 (i from 1). Several
/// primes together are Halton's sequence. Source: Halton 1960, Numer Math 2:84, from memory (high).
fn radical_inverse(mut i: usize, base: usize) -> f64 {
    let (mut place, mut sum) = (1.0, 0.0);
    while i > 0 {
        place /= base as f64;
        sum += place * (i % base) as f64;
        i /= base;
    }
    sum
}

/// Bases of Halton's sequence.
const BASES: [usize; 4] = [2, 3, 5, 7];

/// The `i`-th of evenly spread points of the unit cube (i from 0).
pub fn even_point(i: usize) -> [f64; 4] {
    // The first points lie on a line through the cube; they are left out.
    BASES.map(|base| radical_inverse(i + 20, base))
}
