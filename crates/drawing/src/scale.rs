//! The scales that a sheet may have.

/// A scale: so many millimetres on paper for so many in the workshop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Scale {
    /// Paper side of the ratio.
    pub paper: u32,
    /// Workshop side of the ratio.
    pub model: u32,
}

/// ISO 5455 clause 3: the recommended scales, largest first.
///
/// Source: ISO 5455:1979 clause 3 (EN ISO 5455:1994), as quoted in teaching texts on the use of
/// scales; the list is closed between its ends, so 1:2.5, 1:3, 1:4 and 1:8 are not in it.
pub const ISO_5455: [Scale; 19] = [
    Scale::new(50, 1),
    Scale::new(20, 1),
    Scale::new(10, 1),
    Scale::new(5, 1),
    Scale::new(2, 1),
    Scale::new(1, 1),
    Scale::new(1, 2),
    Scale::new(1, 5),
    Scale::new(1, 10),
    Scale::new(1, 20),
    Scale::new(1, 50),
    Scale::new(1, 100),
    Scale::new(1, 200),
    Scale::new(1, 500),
    Scale::new(1, 1000),
    Scale::new(1, 2000),
    Scale::new(1, 5000),
    Scale::new(1, 10000),
    Scale::new(1, 20000),
];

impl Scale {
    /// Full size.
    pub const FULL: Self = Self::new(1, 1);

    /// `paper`:`model`.
    #[must_use]
    pub const fn new(paper: u32, model: u32) -> Self {
        Self { paper, model }
    }

    /// Paper mm per workshop mm.
    #[must_use]
    pub fn ratio(self) -> f64 {
        f64::from(self.paper) / f64::from(self.model)
    }

    /// As the title block prints it, e.g. `1:5`.
    #[must_use]
    pub fn words(self) -> String {
        format!("{}:{}", self.paper, self.model)
    }

    /// The scales that may be set as the largest of a set of sheets, largest first: below the last
    /// a box is smaller than the figures beside it.
    pub fn limits() -> impl Iterator<Item = Self> {
        Self::reductions().filter(|scale| scale.model <= 50)
    }

    /// The recommended scales for working drawings of panels: full size and reductions, largest
    /// first. An enlarged panel would be taken for a template.
    pub fn reductions() -> impl Iterator<Item = Self> {
        ISO_5455.into_iter().filter(|scale| scale.paper == 1)
    }
}

/// The largest recommended scale, at most `no_larger_than`, at which `model` (width and height,
/// workshop mm) fits into `room` (paper mm). `None` when even the smallest does not fit.
#[must_use]
pub fn largest_that_fits(model: [f64; 2], room: [f64; 2], no_larger_than: Scale) -> Option<Scale> {
    ISO_5455.into_iter().find(|scale| {
        let ratio = scale.ratio();
        ratio <= no_larger_than.ratio()
            && model[0] * ratio <= room[0]
            && model[1] * ratio <= room[1]
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 5455:1979 clause 3: enlargement 50:1 20:1 10:1 5:1 2:1, full size 1:1, reduction
    /// 1:2 1:5 1:10 1:20 1:50 1:100 1:200 1:500 1:1000 1:2000 1:5000 1:10000, extended by
    /// powers of ten.
    #[test]
    fn the_list_is_that_of_the_standard() {
        let words: Vec<String> = ISO_5455.iter().map(|scale| scale.words()).collect();
        assert_eq!(
            words[..18].join(" "),
            "50:1 20:1 10:1 5:1 2:1 1:1 1:2 1:5 1:10 1:20 1:50 1:100 1:200 1:500 1:1000 1:2000 \
             1:5000 1:10000"
        );
        assert!(
            ISO_5455
                .windows(2)
                .all(|pair| pair[0].ratio() > pair[1].ratio())
        );
    }

    #[test]
    fn what_may_be_set_as_the_largest_is_of_the_list_and_readable() {
        let limits: Vec<String> = Scale::limits().map(Scale::words).collect();
        assert_eq!(limits.join(" "), "1:1 1:2 1:5 1:10 1:20 1:50");
    }

    #[test]
    fn the_largest_that_fits_is_chosen() {
        // 720 x 330 in 180 x 240: 1:2 needs 360 x 165, 1:5 needs 144 x 66.
        let scale = largest_that_fits([720.0, 330.0], [180.0, 240.0], Scale::FULL);
        assert_eq!(scale, Some(Scale::new(1, 5)));
        // Just fits and just does not.
        let room = [100.0, 100.0];
        assert_eq!(
            largest_that_fits([100.0, 10.0], room, Scale::FULL),
            Some(Scale::FULL)
        );
        let wide = largest_that_fits([100.001, 10.0], room, Scale::FULL);
        assert_eq!(wide, Some(Scale::new(1, 2)));
    }

    #[test]
    fn a_small_part_is_not_enlarged_unless_that_is_asked() {
        let room = [100.0, 100.0];
        assert_eq!(
            largest_that_fits([40.0, 40.0], room, Scale::FULL),
            Some(Scale::FULL)
        );
        let enlarged = largest_that_fits([40.0, 40.0], room, Scale::new(5, 1));
        assert_eq!(enlarged, Some(Scale::new(2, 1)));
    }
}
