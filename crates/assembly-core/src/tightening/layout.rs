//! Where the bolts of a group sit, as on a drawing.

/// The bolts of a group on a drawing: x along the longer way, any unit.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Layout {
    places: Vec<(f64, f64)>,
}

/// Places nearer than this share of the whole drawing count as one distance.
const ALIKE: f64 = 1e-6;

impl Layout {
    /// Bolts at these places; a place that is no number is put at the origin.
    #[must_use]
    pub fn at(places: &[(f64, f64)]) -> Self {
        let sound = |one: f64| if one.is_finite() { one } else { 0.0 };
        Self {
            places: places.iter().map(|(x, y)| (sound(*x), sound(*y))).collect(),
        }
    }

    /// Rows and columns one unit apart, numbered along the first row, then
    /// along the next.
    #[must_use]
    pub fn grid(rows: u8, columns: u8) -> Self {
        let places = (0..rows)
            .flat_map(|row| (0..columns).map(move |column| (f64::from(column), f64::from(row))))
            .collect();
        Self { places }
    }

    /// Rows of so many bolts each, one unit apart and centred on each other,
    /// numbered along the first row, then along the next.
    ///
    /// ```
    /// use assembly_core::tightening::layout::Layout;
    /// let cover = Layout::rows(&[3, 2]);
    /// assert_eq!(cover.places()[3], (0.5, 1.0));
    /// ```
    #[must_use]
    pub fn rows(rows: &[u8]) -> Self {
        let widest = rows.iter().copied().max().unwrap_or_default();
        let places = (0_u32..).zip(rows).flat_map(|(row, count)| {
            let start = f64::from(widest - count) / 2.0;
            (0..*count).map(move |at| (start + f64::from(at), f64::from(row)))
        });
        Self {
            places: places.collect(),
        }
    }

    /// Bolts evenly around a circle, numbered in the order they lie.
    #[must_use]
    pub fn circle(count: u8) -> Self {
        let places = (0..count)
            .map(|at| {
                let angle = std::f64::consts::TAU * f64::from(at) / f64::from(count.max(1));
                (libm::sin(angle), libm::cos(angle))
            })
            .collect();
        Self { places }
    }

    /// How many bolts.
    #[must_use]
    pub fn count(&self) -> usize {
        self.places.len()
    }

    /// The place of each bolt.
    #[must_use]
    pub fn places(&self) -> &[(f64, f64)] {
        &self.places
    }

    /// The middle of the drawing.
    #[must_use]
    pub fn middle(&self) -> (f64, f64) {
        let (x, y) = (self.range(|place| place.0), self.range(|place| place.1));
        (f64::midpoint(x.0, x.1), f64::midpoint(y.0, y.1))
    }

    /// Least and greatest of a coordinate.
    fn range(&self, of: impl Fn(&(f64, f64)) -> f64) -> (f64, f64) {
        self.places.iter().map(of).fold((0.0, 0.0), {
            let mut first = true;
            move |range: (f64, f64), one| {
                if std::mem::take(&mut first) {
                    (one, one)
                } else {
                    (range.0.min(one), range.1.max(one))
                }
            }
        })
    }

    /// Width and height of the drawing.
    #[must_use]
    pub fn extent(&self) -> (f64, f64) {
        let (x, y) = (self.range(|place| place.0), self.range(|place| place.1));
        (x.1 - x.0, y.1 - y.0)
    }

    /// What counts as no distance on this drawing.
    pub(super) fn alike(&self) -> f64 {
        let (width, height) = self.extent();
        width.max(height).max(f64::MIN_POSITIVE) * ALIKE
    }

    /// How far two bolts are apart; nothing for a bolt that is not there.
    #[must_use]
    pub fn apart(&self, one: usize, other: usize) -> f64 {
        match (self.places.get(one), self.places.get(other)) {
            (Some(one), Some(other)) => (one.0 - other.0).hypot(one.1 - other.1),
            _ => 0.0,
        }
    }
}
