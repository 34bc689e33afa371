//! Stature and body mass index by age, the reference a player is set against.
//!
//! Source: WHO Growth Reference 2007, 5–19 years (de Onis et al. 2007, Bull WHO 85:660), LMS read
//! second-hand in a data package; whole years here, linear between them. From 19 on: stature stays;
//! body mass index rises to 24 kg/m² at 30 and stays, standard deviation 3.3 (assumption, no source).

use crate::measurement::person::Sex;

/// Age in years; stature: median in m, coefficient of variation; body mass index: L, M in kg/m², S.
type Row = [f64; 6];

const MALE: [Row; 15] = [
    [5.083, 1.102647, 0.04164, -0.7387, 15.2641, 0.0839],
    [6.000, 1.159509, 0.04249, -0.9921, 15.3062, 0.08682],
    [7.000, 1.217338, 0.04342, -1.246, 15.4832, 0.09068],
    [8.000, 1.272651, 0.04438, -1.4629, 15.7368, 0.09526],
    [9.000, 1.325652, 0.04535, -1.6318, 16.049, 0.10038],
    [10.000, 1.377795, 0.04626, -1.7407, 16.4433, 0.10566],
    [11.000, 1.431126, 0.04703, -1.7862, 16.9392, 0.1107],
    [12.000, 1.490807, 0.04753, -1.7751, 17.5334, 0.11522],
    [13.000, 1.560426, 0.0476, -1.7168, 18.233, 0.11898],
    [14.000, 1.631816, 0.04714, -1.6211, 19.005, 0.12191],
    [15.000, 1.689580, 0.04619, -1.4961, 19.7744, 0.12412],
    [16.000, 1.728967, 0.04495, -1.3529, 20.4951, 0.12579],
    [17.000, 1.751609, 0.04364, -1.1962, 21.1423, 0.12715],
    [18.000, 1.761449, 0.04241, -1.026, 21.7077, 0.12836],
    [19.000, 1.765432, 0.04134, -0.8419, 22.1883, 0.12948],
];

const FEMALE: [Row; 15] = [
    [5.083, 1.096016, 0.04355, -0.8886, 15.2441, 0.09692],
    [6.000, 1.151244, 0.04447, -1.0794, 15.2697, 0.10195],
    [7.000, 1.208105, 0.04525, -1.2565, 15.4036, 0.10746],
    [8.000, 1.265558, 0.04581, -1.388, 15.681, 0.11291],
    [9.000, 1.324944, 0.04612, -1.465, 16.0964, 0.11816],
    [10.000, 1.386363, 0.04614, -1.4864, 16.6133, 0.12307],
    [11.000, 1.449929, 0.04584, -1.4606, 17.2459, 0.12748],
    [12.000, 1.512327, 0.04523, -1.4006, 17.9966, 0.13129],
    [13.000, 1.563748, 0.04439, -1.3195, 18.8012, 0.13445],
    [14.000, 1.597890, 0.04345, -1.2266, 19.5647, 0.137],
    [15.000, 1.616692, 0.04255, -1.1311, 20.2125, 0.13904],
    [16.000, 1.625156, 0.04176, -1.0368, 20.7008, 0.1407],
    [17.000, 1.628545, 0.04109, -0.9423, 21.0367, 0.14208],
    [18.000, 1.630595, 0.04053, -0.8462, 21.2603, 0.1433],
    [19.000, 1.631548, 0.04009, -0.7496, 21.4269, 0.14441],
];

/// Body mass index from 30 years on and its standard deviation, kg/m²: assumption.
const ADULT_BMI: [f64; 2] = [24.0, 3.3];

fn reference(sex: Sex, age_y: f64) -> Row {
    interpolate(by_sex(sex, &MALE, &FEMALE), age_y)
}

/// The one of the two that is for this sex.
pub(super) fn by_sex<T>(sex: Sex, male: T, female: T) -> T {
    match sex {
        Sex::Male => male,
        Sex::Female => female,
    }
}

/// The row at an age, linear between the rows, constant beyond both ends.
pub(super) fn interpolate<const N: usize>(rows: &[[f64; N]], age_y: f64) -> [f64; N] {
    let (Some(&first), Some(&last)) = (rows.first(), rows.last()) else { return [f64::NAN; N] };
    if age_y <= first[0] {
        return first;
    }
    for pair in rows.windows(2) {
        if let [a, b] = pair
            && age_y < b[0]
        {
            let t = (age_y - a[0]) / (b[0] - a[0]);
            return std::array::from_fn(|i| a[i] + t * (b[i] - a[i]));
        }
    }
    last
}

/// Median stature for age, m; the adult's from 19 on.
pub fn median_stature_m(sex: Sex, age_y: f64) -> f64 {
    reference(sex, age_y)[1]
}

/// How many standard deviations a stature lies from the median for age.
pub fn stature_z(sex: Sex, age_y: f64, stature_m: f64) -> f64 {
    let row = reference(sex, age_y);
    (stature_m / row[1] - 1.0) / row[2]
}

/// Median body mass index for age and its standard deviation, kg/m².
pub fn body_mass_index(sex: Sex, age_y: f64) -> (f64, f64) {
    let [.., l, m, s] = reference(sex, age_y);
    let at = |z: f64| m * libm::pow(1.0 + l * s * z, 1.0 / l);
    let sd = 0.5 * (at(1.0) - at(-1.0));
    let t = ((age_y - 19.0) / 11.0).clamp(0.0, 1.0);
    (m + t * (ADULT_BMI[0] - m), sd + t * (ADULT_BMI[1] - sd))
}

/// How many standard deviations a body mass index lies from the median for age (LMS to 19 years).
pub fn body_mass_index_z(sex: Sex, age_y: f64, bmi: f64) -> f64 {
    if age_y >= 19.0 {
        let (m, sd) = body_mass_index(sex, age_y);
        return (bmi - m) / sd;
    }
    let [.., l, m, s] = reference(sex, age_y);
    (libm::pow(bmi / m, l) - 1.0) / (l * s)
}
