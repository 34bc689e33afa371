//! SVG to a PDF, a page each, with embedded faces and text that can be selected. No clock: same bytes.

use super::DrawingFault;
use super::type_setting::tree;
use krilla::geom::Size;
use krilla::metadata::Metadata;
use krilla::page::PageSettings;
use krilla::{Document, SerializeSettings};
use krilla_svg::{SurfaceExt, SvgSettings};

/// Points (1/72 in) in a CSS pixel.
const POINTS_PER_PX: f32 = 0.75;

/// The pictures as a PDF, a page of its own size each (a sheet of A4 px gives A4).
pub fn pdf<S: AsRef<str>>(pages: &[S], title: &str) -> Result<Vec<u8>, DrawingFault> {
    // XMP would carry a date or an identity of its own; the plain title is enough.
    let settings = SerializeSettings { xmp_metadata: false, ..SerializeSettings::default() };
    let mut document = Document::new_with(settings);
    document.set_metadata(Metadata::new().title(title.to_owned()).language("en-GB".to_owned()));
    for svg in pages {
        draw(&mut document, svg.as_ref())?;
    }
    document.finish().map_err(|it| DrawingFault::refused("PDF", format!("{it:?}")))
}

fn draw(document: &mut Document, svg: &str) -> Result<(), DrawingFault> {
    let tree = tree(svg)?;
    let (width, height) =
        (tree.size().width() * POINTS_PER_PX, tree.size().height() * POINTS_PER_PX);
    let size = Size::from_wh(width, height);
    let page = PageSettings::from_wh(width, height);
    let (Some(size), Some(page)) = (size, page) else {
        let what = format!("{width} by {height} points is no size for a page");
        return Err(DrawingFault::refused("PDF", what));
    };
    let mut page = document.start_page_with(page);
    let mut surface = page.surface();
    let drawn =
        surface.draw_svg(&tree, size, SvgSettings { embed_text: true, ..SvgSettings::default() });
    surface.finish();
    page.finish();
    match drawn {
        Some(()) => Ok(()),
        None => Err(DrawingFault::refused("PDF", "its shapes were not accepted")),
    }
}
