//! What the tests of this room hold every drawing against.

use super::canvas::{TEXT, WIDTH, width_of};
use super::{Cell, Picture};
use std::collections::BTreeSet;

/// Well-formed, titled, every id once, every coordinate and every word inside the view box.
pub(super) fn sound_svg(svg: &str) {
    let document = roxmltree::Document::parse(svg).unwrap_or_else(|error| panic!("{error}: {svg}"));
    let root = document.root_element();
    let view: Vec<f64> = root.attribute("viewBox").expect("a view box").split(' ').map(parsed).collect();
    let (wide, high) = (view[2], view[3]);
    assert!((wide - WIDTH).abs() < 0.1 && high > 0.0);
    // Every number is rounded to a tenth for itself, so a sum of two may be that much off.
    let inside = |x: f64, y: f64| {
        let rounding = 0.11;
        let within = |value: f64, most: f64| (-rounding..=most + rounding).contains(&value);
        assert!(within(x, wide) && within(y, high), "{x} {y} is outside {wide} {high}: {svg}");
    };
    let mut ids = BTreeSet::new();
    for node in document.descendants().filter(roxmltree::Node::is_element) {
        if let Some(id) = node.attribute("id") {
            assert!(ids.insert(id.to_owned()), "the id {id} twice: {svg}");
        }
        assert!(node.attribute("style").is_none(), "the policy of the pages forbids inline style");
        let of = |name: &str| node.attribute(name).map_or(0.0, parsed);
        let in_pattern = node.ancestors().any(|above| above.has_tag_name("pattern"));
        match node.tag_name().name() {
            _ if in_pattern => {}
            "path" => {
                let numbers: Vec<f64> = node
                    .attribute("d")
                    .unwrap_or_default()
                    .split(['M', 'L', ' '])
                    .filter(|part| !part.is_empty())
                    .map(parsed)
                    .collect();
                numbers.chunks(2).for_each(|pair| inside(pair[0], pair[1]));
            }
            "rect" => {
                inside(of("x"), of("y"));
                inside(of("x") + of("width"), of("y") + of("height"));
            }
            "circle" => {
                inside(of("cx") - of("r"), of("cy") - of("r"));
                inside(of("cx") + of("r"), of("cy") + of("r"));
            }
            "text" => {
                let size = node.attribute("font-size").map_or(TEXT, parsed);
                let long = width_of(text_of(node)) * size / TEXT - 0.5;
                let before = match node.attribute("text-anchor") {
                    Some("middle") => long / 2.0,
                    Some("end") => long,
                    _ => 0.0,
                };
                inside(of("x") - before, of("y") - TEXT);
                inside(of("x") - before + long, of("y"));
            }
            _ => {}
        }
    }
    let labelled = root.attribute("aria-labelledby").expect("a name for those who hear it");
    assert!(labelled.split(' ').all(|id| ids.contains(id)), "{labelled}");
    assert_eq!(root.attribute("role"), Some("img"));
}

/// A sound drawing whose table holds just the numbers that were drawn.
pub(super) fn sound_picture(picture: &Picture) {
    sound_svg(&picture.svg);
    let document = roxmltree::Document::parse(&picture.svg).expect("it was just parsed");
    let texts: Vec<&str> = document.descendants().filter(|node| node.has_tag_name("text")).map(text_of).collect();
    let heading =
        |tag| document.descendants().find(|node| node.has_tag_name(tag)).map(text_of).unwrap_or_default().to_owned();
    assert_eq!((heading("title"), heading("desc")), (picture.title.clone(), picture.description.clone()));
    assert!(!picture.table.rows.is_empty(), "{}: a picture without numbers", picture.name);
    for row in &picture.table.rows {
        assert_eq!(row.len(), picture.table.columns.len(), "{}: {row:?}", picture.name);
        for cell in row {
            if let Cell::Drawn(number) = cell {
                assert!(drawn(&texts, number), "{}: {number} is in the table and not in {texts:?}", picture.name);
            }
        }
    }
    for words in texts.iter().chain([&picture.description.as_str()]) {
        assert!(!words.contains("NaN") && !words.contains("inf "), "{}: {words}", picture.name);
    }
}

/// Does the number stand in one of the texts, as itself and not as part of a longer one?
fn drawn(texts: &[&str], number: &str) -> bool {
    let digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
    texts.iter().any(|text| {
        text.match_indices(number)
            .any(|(at, _)| !digit(text[..at].chars().next_back()) && !digit(text[at + number.len()..].chars().next()))
    })
}

fn text_of<'a>(node: roxmltree::Node<'a, '_>) -> &'a str {
    node.text().unwrap_or_default()
}

fn parsed(number: &str) -> f64 {
    number.parse().unwrap_or_else(|_| panic!("{number} is no number"))
}
