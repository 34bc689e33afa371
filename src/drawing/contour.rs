//! Bands and level lines of a field on a grid, linear on the four triangles of each cell, so that the lines
//! are exactly the bands' edges. A node may have no value: triangles that touch it are left out.

/// A field on a rectangular grid.
pub struct Field<'a> {
    /// Columns, rising.
    pub x: &'a [f64],
    /// Rows, rising.
    pub y: &'a [f64],
    /// Row by row; none where there is nothing to show.
    pub value: &'a [Option<f64>],
}

/// A corner: x, y, value.
type Corner = [f64; 3];

impl Field<'_> {
    fn node(&self, column: usize, row: usize) -> Option<Corner> {
        let value = (*self.value.get(row * self.x.len() + column)?)?;
        Some([*self.x.get(column)?, *self.y.get(row)?, value])
    }

    fn triangles(&self) -> Vec<[Corner; 3]> {
        let mut triangles = Vec::new();
        for row in 1..self.y.len() {
            for column in 1..self.x.len() {
                let corners = [(1, 1), (0, 1), (0, 0), (1, 0)]
                    .map(|(back_x, back_y)| self.node(column - back_x, row - back_y));
                let known: Vec<Corner> = corners.into_iter().flatten().collect();
                match known.as_slice() {
                    [a, b, c] => triangles.push([*a, *b, *c]),
                    [a, b, c, d] => {
                        let middle = [0, 1, 2].map(|k| 0.25 * (a[k] + b[k] + c[k] + d[k]));
                        for (from, to) in [(a, b), (b, c), (c, d), (d, a)] {
                            triangles.push([*from, *to, middle]);
                        }
                    }
                    _ => {}
                }
            }
        }
        triangles
    }

    /// Polygons that cover all places with a value between the two.
    pub fn band(&self, low: f64, high: f64) -> Vec<Vec<[f64; 2]>> {
        let mut band = Vec::new();
        for triangle in self.triangles() {
            let above = clipped(&triangle, |it| it[2] - low);
            let inside = clipped(&above, |it| high - it[2]);
            if inside.len() > 2 {
                band.push(inside.iter().map(|it| [it[0], it[1]]).collect());
            }
        }
        band
    }

    /// Lines along which the value is `level`.
    pub fn lines(&self, level: f64) -> Vec<Vec<[f64; 2]>> {
        let mut pieces = Vec::new();
        for [a, b, c] in self.triangles() {
            let crossings: Vec<[f64; 2]> = [(a, b), (b, c), (c, a)]
                .into_iter()
                .filter(|(from, to)| (from[2] < level) != (to[2] < level))
                .map(|(from, to)| crossing(from, to, |it| it[2] - level))
                .map(|it| [it[0], it[1]])
                .collect();
            if let [from, to] = crossings.as_slice() {
                pieces.push(vec![*from, *to]);
            }
        }
        self.chained(pieces)
    }

    /// Pieces that share an end become one line.
    fn chained(&self, mut pieces: Vec<Vec<[f64; 2]>>) -> Vec<Vec<[f64; 2]>> {
        let span = |ticks: &[f64]| ticks.last().unwrap_or(&1.0) - ticks.first().unwrap_or(&0.0);
        let near = [1e-9 * span(self.x).abs(), 1e-9 * span(self.y).abs()];
        let same = |a: [f64; 2], b: [f64; 2]| {
            (a[0] - b[0]).abs() <= near[0] && (a[1] - b[1]).abs() <= near[1]
        };
        let mut lines = Vec::new();
        while let Some(mut line) = pieces.pop() {
            // Grow at the end; when nothing fits there, turn the line round once and grow the other end.
            let mut turned = false;
            while let Some(end) = line.last().copied() {
                let next = pieces.iter().position(|it| it.iter().any(|point| same(*point, end)));
                match next.map(|k| pieces.swap_remove(k)) {
                    Some(piece) => line.extend(piece.into_iter().find(|it| !same(*it, end))),
                    None if turned => break,
                    None => {
                        line.reverse();
                        turned = true;
                    }
                }
            }
            lines.push(line);
        }
        lines
    }
}

/// Where `side` is zero between two corners.
fn crossing(from: Corner, to: Corner, side: impl Fn(Corner) -> f64) -> Corner {
    // From the lower side always, so that the two triangles of an edge agree to the last digit.
    let (from, to) = if side(from) < side(to) { (from, to) } else { (to, from) };
    let part = side(from) / (side(from) - side(to));
    [0, 1, 2].map(|k| from[k] + part * (to[k] - from[k]))
}

/// The part of a polygon where `side` is not negative (Sutherland & Hodgman).
fn clipped(polygon: &[Corner], side: impl Fn(Corner) -> f64) -> Vec<Corner> {
    let mut kept = Vec::new();
    let nexts = polygon.iter().cycle().skip(1);
    for (from, to) in polygon.iter().zip(nexts) {
        let (here, there) = (side(*from), side(*to));
        if here >= 0.0 {
            kept.push(*from);
        }
        if (here > 0.0 && there < 0.0) || (here < 0.0 && there > 0.0) {
            kept.push(crossing(*from, *to, &side));
        }
    }
    kept
}
