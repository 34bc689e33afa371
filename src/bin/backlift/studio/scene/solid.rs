//! Surfaces to be shown: corners, normals, colours and triangles; no more than a graphics card wants.

use backlift::drawing::palette::Colour;
use backlift::frames::DVec3;

/// A colour, red, green, blue, each 0 to 1 as written in style sheets.
pub type Tone = [f32; 3];

pub fn tone(colour: Colour) -> Tone {
    colour.0.map(|it| f32::from(it) / 255.0)
}

#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solid {
    /// Corners, m.
    pub positions: Vec<[f32; 3]>,
    /// Outward, unit length.
    pub normals: Vec<[f32; 3]>,
    pub tones: Vec<Tone>,
    /// Corners of each triangle, anticlockwise from outside.
    pub triangles: Vec<[u32; 3]>,
}

/// An ellipse across a limb.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Its middle, m.
    pub middle: DVec3,
    /// Half-axes along x and y, m.
    pub half_m: [f64; 2],
}

impl Ring {
    pub fn new(z_m: f64, half_m: [f64; 2]) -> Self {
        Self { middle: DVec3::new(0.0, 0.0, z_m), half_m }
    }

    /// The same with its middle moved across.
    pub fn aside(mut self, x_m: f64, y_m: f64) -> Self {
        self.middle += DVec3::new(x_m, y_m, 0.0);
        self
    }

    fn points(&self, around: usize) -> Vec<DVec3> {
        let [a, b] = self.half_m;
        let point = |n: usize| {
            let (sin, cos) = turned(n, around);
            self.middle + DVec3::new(a * cos, b * sin, 0.0)
        };
        (0..around).map(point).collect()
    }
}

/// Sine and cosine of so many of `of` equal parts of a whole turn.
pub fn turned(n: usize, of: usize) -> (f64, f64) {
    libm::sincos(std::f64::consts::TAU * n as f64 / of as f64)
}

impl Solid {
    /// A smooth skin over ellipses one above the other, closed at both ends by round caps.
    pub fn limb(rings: &[Ring], around: usize, tone: Tone) -> Self {
        let mut all = Vec::with_capacity(rings.len() + 8);
        if let [first, second, ..] = rings {
            all.extend(cap(first, (first.middle - second.middle).normalize_or_zero()).rev());
        }
        all.extend_from_slice(rings);
        if let [.., second, last] = rings {
            all.extend(cap(last, (last.middle - second.middle).normalize_or_zero()));
        }
        Self::skin(&all, around, tone)
    }

    /// A smooth skin over ellipses one above the other, left open at both ends.
    pub fn skin(rings: &[Ring], around: usize, tone: Tone) -> Self {
        let rows: Vec<_> = rings.iter().map(|it| it.points(around)).collect();
        let mut it = Self::default();
        it.sheet(&rows, true, |_, _| tone);
        it.outward()
    }

    /// A tube bent into a closed ring about the x axis.
    pub fn torus(middle_x_m: f64, radius_m: f64, tube_m: f64, around: usize, tone: Tone) -> Self {
        let tube = (around / 2).max(6);
        let row = |n: usize| {
            let (sin, cos) = turned(n, around);
            let point = |k: usize| {
                let (out, along) = turned(k, tube);
                let r = radius_m + tube_m * along;
                DVec3::new(middle_x_m + tube_m * out, r * cos, r * sin)
            };
            (0..tube).map(point).collect::<Vec<_>>()
        };
        let mut it = Self::default();
        it.sheet(&(0..=around).map(row).collect::<Vec<_>>(), true, |_, _| tone);
        it.outward()
    }

    /// A box between two corners.
    pub fn block(low: DVec3, high: DVec3, tone: Tone) -> Self {
        let (l, h) = (low, high);
        let ring = |z: f64| {
            [(l.x, l.y), (h.x, l.y), (h.x, h.y), (l.x, h.y)].map(|(x, y)| DVec3::new(x, y, z))
        };
        let (bottom, top) = (ring(low.z), ring(high.z));
        let mut it = Self::default();
        for n in 0..4 {
            let m = (n + 1) % 4;
            it.sheet(&[vec![bottom[n], bottom[m]], vec![top[n], top[m]]], false, |_, _| tone);
        }
        it.sheet(&[vec![bottom[1], bottom[0]], vec![bottom[2], bottom[3]]], false, |_, _| tone);
        it.sheet(&[vec![top[0], top[1]], vec![top[3], top[2]]], false, |_, _| tone);
        it.outward()
    }

    /// Rows of points joined to a skin, smooth within it; `closed` joins the end of each row to its start.
    pub fn sheet(
        &mut self,
        rows: &[Vec<DVec3>],
        closed: bool,
        tone: impl Fn(usize, usize) -> Tone,
    ) {
        let Some(width) = rows.first().map(Vec::len).filter(|it| *it > 1) else { return };
        let start = self.positions.len();
        for (r, row) in rows.iter().enumerate() {
            for (c, point) in row.iter().enumerate().take(width) {
                self.positions.push(point.as_vec3().to_array());
                self.tones.push(tone(r, c));
            }
        }
        let first = self.triangles.len();
        let columns = if closed { width } else { width - 1 };
        for r in 0..rows.len().saturating_sub(1) {
            for c in 0..columns {
                let at = |r: usize, c: usize| (start + r * width + c % width) as u32;
                let (a, b, d, e) = (at(r, c), at(r, c + 1), at(r + 1, c), at(r + 1, c + 1));
                self.triangles.push([a, b, e]);
                self.triangles.push([a, e, d]);
            }
        }
        self.smooth(start, first);
    }

    pub fn add(&mut self, other: Self) {
        let start = self.positions.len() as u32;
        self.positions.extend(other.positions);
        self.normals.extend(other.normals);
        self.tones.extend(other.tones);
        self.triangles.extend(other.triangles.iter().map(|it| it.map(|corner| corner + start)));
    }

    /// Turned inside out where it is inside out.
    pub fn outward(mut self) -> Self {
        if self.volume_m3() < 0.0 {
            self.triangles.iter_mut().for_each(|it| it.swap(1, 2));
            self.normals.iter_mut().flatten().for_each(|it| *it = -*it);
        }
        self
    }

    /// Volume that it encloses, m³; below nought where it is inside out.
    pub fn volume_m3(&self) -> f64 {
        let sixfold = self.triangles.iter().map(|corners| {
            let [a, b, c] = corners.map(|it| self.corner(it));
            a.dot(b.cross(c))
        });
        sixfold.sum::<f64>() / 6.0
    }

    fn corner(&self, n: u32) -> DVec3 {
        let [x, y, z] = self.positions.get(n as usize).copied().unwrap_or_default();
        DVec3::new(f64::from(x), f64::from(y), f64::from(z))
    }

    /// Normals of the corners from `start` on, from the triangles from `first` on.
    fn smooth(&mut self, start: usize, first: usize) {
        let mut sums = vec![DVec3::ZERO; self.positions.len() - start];
        for triangle in self.triangles.iter().skip(first) {
            let [a, b, c] = triangle.map(|it| self.corner(it));
            let across = (b - a).cross(c - a);
            for corner in triangle {
                if let Some(sum) = sums.get_mut(*corner as usize - start) {
                    *sum += across;
                }
            }
        }
        self.normals.extend(sums.iter().map(|it| it.normalize_or_zero().as_vec3().to_array()));
    }
}

/// Rings that round an end off towards `outward`.
fn cap(end: &Ring, outward: DVec3) -> impl DoubleEndedIterator<Item = Ring> {
    const STEPS: usize = 4;
    let end = *end;
    let height_m = 0.5 * (end.half_m[0] + end.half_m[1]);
    (1..=STEPS).map(move |n| {
        let (sin, cos) = libm::sincos(std::f64::consts::FRAC_PI_2 * n as f64 / STEPS as f64);
        // Not quite to a point, where no normal is.
        let share = cos.max(0.02);
        Ring {
            middle: end.middle + outward * height_m * sin,
            half_m: end.half_m.map(|it| it * share),
        }
    })
}
