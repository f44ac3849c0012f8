//! Square codes for printed papers, as drawings that any printer keeps sharp.

use qrcode::{Color, EcLevel, QrCode};
use std::fmt::Write as _;

/// The empty rim that readers need, in modules (ISO/IEC 18004).
const QUIET: usize = 4;

/// An address as a square code: a drawing in SVG, black on white, rim included.
///
/// A quarter of the code may be dirty or torn (level Q). `None` when the text is too long for a code, which no
/// address of a ticket is.
pub fn drawing(text: &str, name: &str) -> Option<String> {
    let code = QrCode::with_error_correction_level(text, EcLevel::Q).ok()?;
    let (width, colours) = (code.width(), code.to_colors());
    let mut path = String::new();
    for (row, line) in colours.chunks(width).enumerate() {
        let mut column = 0;
        while column < width {
            let dark = line[column..].iter().take_while(|colour| **colour == Color::Dark).count();
            if dark > 0 {
                write!(path, "M{} {}h{dark}v1h-{dark}z", column + QUIET, row + QUIET).ok()?;
            }
            column += dark.max(1);
        }
    }
    let side = width + 2 * QUIET;
    let name = name.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;");
    Some(format!(
        "<svg class=\"qr\" viewBox=\"0 0 {side} {side}\" role=\"img\" aria-label=\"{name}\" \
         shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h{side}v{side}H0z\"/><path d=\"{path}\"/></svg>"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reads the drawing back into modules, so that what is printed is what was coded.
    fn modules(drawing: &str) -> (usize, Vec<(usize, usize)>) {
        let after = |text: &str, mark: &str| text.split_once(mark).expect("a part of the drawing").1.to_owned();
        let side: usize =
            after(drawing, "viewBox=\"0 0 ").split(' ').next().expect("a side").parse().expect("a number");
        let mut dark = Vec::new();
        for run in after(drawing, "\"/><path d=\"M").split('"').next().expect("a path").split('M') {
            let (place, rest) = run.split_once('h').expect("a run");
            let (x, y) = place.split_once(' ').expect("a place");
            let (x, y): (usize, usize) = (x.parse().expect("x"), y.parse().expect("y"));
            let length: usize = rest.split('v').next().expect("a length").parse().expect("a number");
            dark.extend((x..x + length).map(|x| (x, y)));
        }
        (side, dark)
    }

    #[test]
    fn the_drawing_holds_every_module_and_a_rim_of_four() {
        let text = "https://shop.example/tickets/1042";
        let (side, dark) = modules(&drawing(text, "Job 1042").expect("a code"));
        let code = QrCode::with_error_correction_level(text, EcLevel::Q).expect("a code");
        assert_eq!(side, code.width() + 8);
        let coded = code.to_colors().iter().filter(|colour| **colour == Color::Dark).count();
        assert_eq!(dark.len(), coded);
        for (x, y) in dark {
            assert!((4..side - 4).contains(&x) && (4..side - 4).contains(&y), "{x},{y} stands in the rim");
            assert_eq!(code[(x - 4, y - 4)], Color::Dark);
        }
    }

    #[test]
    fn names_cannot_break_out_of_the_drawing() {
        let drawn = drawing("x", "a\"><script>").expect("a code");
        assert!(!drawn.contains("<script"), "{drawn}");
    }
}
