//! What comes out of the printer.

use crate::driver::{DESK, output};
use crate::server::Shop;
use crate::visitor::Visitor;
use endplay::demo::DESK as CLERK;
use std::path::Path;
use std::process::Command;

/// So many points of a list fit on a sheet beside the headings.
const SHEET: u64 = 25;
/// Dots in an inch of a label printer.
const LABEL_PRINTER: &str = "203";

fn run(program: &str, arguments: &[&str]) -> String {
    let done = Command::new(program).args(arguments).output();
    let done = done.unwrap_or_else(|error| panic!("{program} is installed (`.ci/setup test`): {error}"));
    assert!(done.status.success(), "{program}: {}", String::from_utf8_lossy(&done.stderr));
    String::from_utf8_lossy(&done.stdout).into_owned()
}

fn text(path: &Path) -> &str {
    path.to_str().expect("a plain path")
}

/// Prints the page, and gives what it says and what its codes say. What has room on one sheet takes no second.
async fn printed(visitor: &Visitor, name: &str) -> (String, String) {
    let lines = visitor.browser.ask("return document.querySelectorAll('main li').length", vec![]).await;
    let folder = output("print");
    let (pdf, picture) = (folder.join(format!("{name}.pdf")), folder.join(name));
    std::fs::write(&pdf, visitor.browser.print().await).expect("room for a page");
    let about = run("pdfinfo", &[text(&pdf)]);
    let one_sheet = about.lines().any(|line| line.starts_with("Pages:") && line.ends_with(" 1"));
    assert!(one_sheet || lines.as_u64() > Some(SHEET), "{name} with {lines} lines: {about}");
    run("pdftoppm", &["-r", LABEL_PRINTER, "-png", "-singlefile", text(&pdf), text(&picture)]);
    let words = run("pdftotext", &["-layout", text(&pdf), "-"]);
    let codes = Command::new("zbarimg").args(["-q", "--raw", text(&picture.with_extension("png"))]).output();
    let codes = codes.expect("zbarimg is installed (`.ci/setup test`)").stdout;
    (words, String::from_utf8_lossy(&codes).trim().to_owned())
}

#[tokio::test(flavor = "multi_thread")]
async fn the_tag_and_the_intake_receipt_are_one_sheet_and_hold_no_secret() {
    let (shop, demo) = Shop::full().await;
    let visitor = Visitor::with(&shop, DESK, true).await;
    visitor.sign_in(CLERK).await;
    let (_, _, secret) = &demo.links[0];
    let jobs = demo.links.iter().map(|(job, _, pass)| (job, pass));
    let with_little = demo.tickets.iter().rev().take(2).map(|job| (job, secret));
    for (job, pass) in jobs.chain(with_little) {
        let page = format!("/tickets/{job}");
        visitor.goto(&format!("{page}/tag")).await;
        let (words, code) = printed(&visitor, &format!("tag-{job}")).await;
        assert_eq!(code, format!("{}{page}", shop.origin), "the code opens the job for the staff");
        assert!(words.contains(&job.to_string()), "the number is there to be read: {words}");
        assert!(!words.contains("Back to job"), "what only the screen needs is not printed: {words}");
        visitor.goto(&format!("{page}/receipt")).await;
        let (receipt, _) = printed(&visitor, &format!("receipt-{job}")).await;
        assert!(receipt.contains(&format!("Intake receipt, job {job}")), "{receipt}");
        for paper in [words, code, receipt] {
            assert!(!paper.contains(pass) && !paper.contains("/c/"), "the customer's link is printed: {paper}");
        }
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_signed_receipt_prints_what_was_signed() {
    let (shop, demo) = Shop::full().await;
    let visitor = Visitor::with(&shop, DESK, true).await;
    let (_, _, pass) = &demo.links[0];
    visitor.goto(&format!("/c/{pass}")).await;
    visitor.sign_all("Perrin Oakhollow").await;
    let pdf = output("print").join("signed.pdf");
    std::fs::write(&pdf, visitor.browser.print().await).expect("room for a page");
    let words = run("pdftotext", &["-layout", text(&pdf), "-"]);
    assert!(words.contains("Receipt number") && words.contains("Perrin Oakhollow"), "{words}");
    assert!(!words.contains("Print this page"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn pictures_print_in_black_with_their_numbers_unfolded() {
    let (shop, demo) = Shop::full().await;
    let visitor = Visitor::with(&shop, DESK, true).await;
    visitor.sign_in(CLERK).await;
    // The bracket coupe, of which everything is known.
    visitor.goto(&format!("/tickets/{}/pictures", demo.tickets[2])).await;
    let folder = output("print");
    let pdf = folder.join("pictures.pdf");
    std::fs::write(&pdf, visitor.browser.print().await).expect("room for a page");
    let words = run("pdftotext", &["-layout", text(&pdf), "-"]);
    for title in ["Power flow: first", "Load against capacity", "Stall: where", "Driveshaft speed"] {
        assert!(words.contains(title), "{title} is not printed: {words}");
    }
    assert!(words.contains("Power passed"), "the tables are printed, though folded on the screen: {words}");
    assert!(!words.contains("The numbers as a table"), "what only the screen needs is not printed: {words}");
    let dots = Command::new("pdftoppm").args(["-r", "40", text(&pdf)]).output().expect("pdftoppm is installed").stdout;
    // Each page is `P6`, its size, the most of a color, then red, green and blue of every dot.
    let mut rest = &dots[..];
    let mut pages = 0;
    while !rest.is_empty() {
        let mut head = rest.splitn(4, |byte| *byte == b'\n');
        let (kind, size, most) = (head.next(), head.next(), head.next());
        assert_eq!((kind, most), (Some(&b"P6"[..]), Some(&b"255"[..])));
        let size = String::from_utf8_lossy(size.expect("a size")).into_owned();
        let (wide, high) = size.split_once(' ').expect("two numbers");
        let bytes = 3 * wide.parse::<usize>().expect("a width") * high.parse::<usize>().expect("a height");
        let body = head.next().expect("dots");
        let colored = body[..bytes].chunks(3).filter(|dot| dot.iter().any(|part| part.abs_diff(dot[0]) > 8)).count();
        assert_eq!(colored, 0, "page {pages} has dots that are neither black nor gray");
        rest = &body[bytes..];
        pages += 1;
    }
    assert!(pages >= 2, "{pages} pages");
}
