//! Equilibrium moisture: how much water wood holds when it has lain long in one air.

/// Equilibrium moisture content of wood, kg of water for each kg of dry wood.
///
/// Two hydrates beside dissolved water, h the relative humidity (0 to 1), T in °C:
/// `M = 18/W · [K h/(1 − K h) + (K₁ K h + 2 K₁ K₂ K² h²)/(1 + K₁ K h + K₁ K₂ K² h²)]`, with W, K, K₁, K₂
/// quadratics in T. Range: the Handbook's table, −1 to 55 °C and 5 to 95 %; checked from −1 to 38 °C. For wood in
/// general: species, and whether it dries or wets, are not in it.
///
/// Source: Simpson 1998, FPL-RN-0268, as in the Wood Handbook, FPL-GTR-190 (Glass & Zelinka 2010), ch. 4, eq. 4-5, SI form
/// (read second-hand).
pub fn equilibrium_moisture(air_celsius: f64, relative_humidity: f64) -> f64 {
    let t = air_celsius;
    let w = 349.0 + 1.29 * t + 0.0135 * t * t;
    let k = 0.805 + 0.000_736 * t - 0.000_002_73 * t * t;
    let k1 = 6.27 - 0.009_38 * t - 0.000_303 * t * t;
    let k2 = 1.91 + 0.0407 * t - 0.000_293 * t * t;
    let kh = k * relative_humidity;
    let (one, two) = (k1 * kh, k1 * k2 * kh * kh);
    18.0 / w * (kh / (1.0 - kh) + (one + 2.0 * two) / (1.0 + one + two))
}
