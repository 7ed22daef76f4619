//! A symmetric, positive system of equations whose numbers all lie near the
//! diagonal: Cholesky's way, row by row.

/// The system. Row by row the numbers left of the diagonal, as many as the band
/// is wide, and the diagonal.
pub(super) struct Band {
    width: usize,
    left: Vec<f64>,
    diagonal: Vec<f64>,
}

/// The sum of products, four at a time so that the processor can keep busy.
fn dot(one: &[f64], other: &[f64]) -> f64 {
    let (mut a, mut b, mut c, mut d) = (0.0, 0.0, 0.0, 0.0);
    let (ones, others) = (one.chunks_exact(4), other.chunks_exact(4));
    let rest: f64 = ones
        .remainder()
        .iter()
        .zip(others.remainder())
        .map(|(x, y)| x * y)
        .sum();
    for (x, y) in ones.zip(others) {
        if let (&[x0, x1, x2, x3], &[y0, y1, y2, y3]) = (x, y) {
            a += x0 * y0;
            b += x1 * y1;
            c += x2 * y2;
            d += x3 * y3;
        }
    }
    (a + b) + (c + d) + rest
}

impl Band {
    /// A system of so many rows with nothing in it.
    pub(super) fn new(rows: usize, width: usize) -> Self {
        Self {
            width,
            left: vec![0.0; rows * width],
            diagonal: vec![0.0; rows],
        }
    }

    /// Row by row: what lies left of the diagonal, and the diagonal.
    pub(super) fn rows_mut(&mut self) -> impl Iterator<Item = (&mut [f64], &mut f64)> {
        self.left
            .chunks_exact_mut(self.width)
            .zip(self.diagonal.iter_mut())
    }

    /// Solves for this right-hand side, which becomes the solution.
    pub(super) fn solve(mut self, right: &mut [f64]) {
        self.factor();
        self.forward(right);
        self.backward(right);
    }

    fn factor(&mut self) {
        let width = self.width;
        for row in 0..self.diagonal.len() {
            let (done, rest) = self.left.split_at_mut(row * width);
            let Some(mine) = rest.get_mut(..width) else {
                return;
            };
            // A row that hangs together with none before it: a node held at nothing.
            if mine.iter().all(|one| *one == 0.0) {
                if let Some(pivot) = self.diagonal.get_mut(row) {
                    *pivot = pivot.max(f64::MIN_POSITIVE).sqrt();
                }
                continue;
            }
            for place in width.saturating_sub(row)..width {
                let column = row + place - width;
                let theirs = done.get(column * width..).unwrap_or_default();
                let (before, after) = mine.split_at_mut(place);
                let known = theirs.get(width - place..width).unwrap_or_default();
                if let (Some(entry), Some(pivot)) = (after.first_mut(), self.diagonal.get(column)) {
                    *entry = (*entry - dot(before, known)) / pivot;
                }
            }
            let square = dot(mine, mine);
            if let Some(pivot) = self.diagonal.get_mut(row) {
                *pivot = (*pivot - square).max(f64::MIN_POSITIVE).sqrt();
            }
        }
    }

    fn forward(&self, right: &mut [f64]) {
        let rows = self.left.chunks_exact(self.width).zip(&self.diagonal);
        for (row, (left, pivot)) in rows.enumerate() {
            let (known, rest) = right.split_at_mut(row);
            let have = row.min(self.width);
            let near = known.get(row - have..).unwrap_or_default();
            let left = left.get(self.width - have..).unwrap_or_default();
            if let Some(value) = rest.first_mut() {
                *value = (*value - dot(left, near)) / pivot;
            }
        }
    }

    fn backward(&self, right: &mut [f64]) {
        let rows = self.left.chunks_exact(self.width).zip(&self.diagonal);
        for (row, (left, pivot)) in rows.enumerate().rev() {
            let (before, rest) = right.split_at_mut(row);
            let Some(value) = rest.first_mut() else {
                continue;
            };
            *value /= pivot;
            let value = *value;
            for (entry, part) in before.iter_mut().rev().zip(left.iter().rev()) {
                *entry -= part * value;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_of_nine_rows_solves() {
        // Random-looking symmetric band, made heavy on the diagonal.
        let (rows, width) = (9_usize, 3_usize);
        let entry = |i: usize, j: usize| {
            let (i, j) = (i.max(j), i.min(j));
            if i == j {
                10.0 + i as f64
            } else if i - j <= width {
                ((i * 7 + j * 3) % 5) as f64 - 2.0
            } else {
                0.0
            }
        };
        let wanted: Vec<f64> = (0..rows).map(|i| (i as f64 - 4.0) * 0.7).collect();
        let mut right: Vec<f64> = (0..rows)
            .map(|i| (0..rows).map(|j| entry(i, j) * wanted[j]).sum())
            .collect();
        let mut band = Band::new(rows, width);
        for (row, (left, diagonal)) in band.rows_mut().enumerate() {
            *diagonal = entry(row, row);
            for (place, value) in left.iter_mut().enumerate() {
                if row + place >= width {
                    *value = entry(row, row + place - width);
                }
            }
        }
        band.solve(&mut right);
        for (got, wanted) in right.iter().zip(&wanted) {
            assert!((got - wanted).abs() < 1e-12);
        }
    }
}
