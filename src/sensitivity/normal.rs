//! Quantiles of the normal distribution.

/// The value that a standard normal variable stays below with this probability, to seven digits;
/// minus and plus infinity at 0 and 1.
///
/// Source: Wichura 1988, Appl Stat 37:477, algorithm AS 241, PPND7 (from memory; a test holds it
/// against the error function).
pub fn quantile(probability: f64) -> f64 {
    let q = probability - 0.5;
    if q.abs() <= 0.425 {
        let r = 0.180_625 - q * q;
        return q * polynomial(
            &[3.387_132_717_9, 5.043_427_193_8e1, 1.592_911_320_2e2, 5.910_937_472e1],
            r,
        ) / polynomial(&[1.0, 1.789_516_946_9e1, 7.875_775_766_4e1, 6.718_756_36e1], r);
    }
    let tail = if q < 0.0 { probability } else { 1.0 - probability };
    if tail <= 0.0 {
        return f64::INFINITY.copysign(q);
    }
    let r = libm::sqrt(-libm::log(tail));
    let z = if r <= 5.0 {
        let r = r - 1.6;
        polynomial(&[1.423_437_277_7, 2.756_815_39, 1.306_728_481_6, 1.702_382_110_3e-1], r)
            / polynomial(&[1.0, 7.370_016_425e-1, 1.202_113_297_5e-1], r)
    } else {
        let r = r - 5.0;
        polynomial(&[6.657_905_115, 3.081_226_386, 4.286_829_433_7e-1, 1.733_720_399_7e-2], r)
            / polynomial(&[1.0, 2.419_789_422_5e-1, 1.225_820_263_5e-2], r)
    };
    z.copysign(q)
}

/// Coefficients from the constant upwards.
fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}
