//! A field dragged as far as the blade allows: there it stops, and it is known why.

use backlift::bat::shape_fault::ShapeFault;
use backlift::bat::shaped::shaped;
use backlift::files::document::TextFile;
use backlift::files::fault::{Fault, Source};
use backlift::files::shape::{ShapeV1, load_text};
use backlift::files::shape_text::{mm, percent};

use super::{Stop, Wood, is_share};

/// Steps of a dragged figure: a tenth of a millimetre, or half a percent.
fn step(path: &str) -> f64 {
    if is_share(path) { 0.005 } else { 1e-4 }
}

fn written(path: &str, value: f64) -> String {
    if is_share(path) { percent(value).0 } else { mm(value).0 }
}

impl Wood {
    /// Drags a field to a figure, SI, or as near to it as the blade allows.
    pub(super) fn drag(&mut self, path: &str, from: f64, to: f64) -> Result<(), Fault> {
        // Further the same way there is nothing new to find.
        if self.stop.as_ref().is_some_and(|it| it.holds(path, to)) {
            return Ok(());
        }
        self.stop = None;
        let mut to = to;
        if self.faults.is_empty()
            && let Some(why) = self.in_the_way(path, to)
        {
            (to, self.stop) = self.stopped(path, [from, to], why);
        }
        self.paper.drag(path, &written(path, to))?;
        self.follow();
        Ok(())
    }

    /// The last figure between two that the blade allows, the first being allowed, and why.
    fn stopped(
        &self,
        path: &str,
        [from, to]: [f64; 2],
        mut why: &'static str,
    ) -> (f64, Option<Stop>) {
        let step = (to - from).signum() * step(path);
        let most = ((to - from) / step).floor();
        // So many steps back from where it was dragged to; the last of all is where it came from.
        let at = |back: f64| if back > most { from } else { to - back * step };
        let (mut far, mut fine) = (0.0, most + 1.0);
        while fine - far > 1.0 {
            let middle = (0.5 * (fine + far)).floor();
            match self.in_the_way(path, at(middle)) {
                None => fine = middle,
                Some(it) => (far, why) = (middle, it),
            }
        }
        let value = at(fine);
        let stop = Stop { path: path.to_owned(), value, why, is_most: to > from };
        (value, Some(stop))
    }

    /// Why the blade does not allow a figure; none where it does.
    fn in_the_way(&self, path: &str, value: f64) -> Option<&'static str> {
        let mut file = TextFile::<ShapeV1>::clone(&self.paper);
        file.put(path, &written(path, value)).ok()?;
        let Ok(loaded) = load_text(Source::new("dragged", file.text()), &[], &self.sizes) else {
            return Some("no bat goes further");
        };
        let faults = shaped(&loaded.title, &loaded.described, &loaded.size, &self.limits).err()?;
        faults.first().map(ShapeFault::why)
    }
}
