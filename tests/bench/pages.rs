//! The page of pictures against the same page with nothing drawn, and against the job's own page, through the router.

use crate::client::{Client, Shop};
use crate::measure::{by_turns, ratio};
use endplay::demo::{self, PASSWORD, TECHNICIAN};
use jiff::Timestamp;

const ROUNDS: usize = 101;
/// The bracket coupe of the invented shop: every fact is known.
const KNOWN: usize = 2;
/// Its newest ticket: hardly anything is known, so nothing is drawn.
const BLANK: usize = 18;

pub fn with_pictures() {
    let runtime = tokio::runtime::Runtime::new().expect("threads to run on");
    let (shop, known, blank, client) = runtime.block_on(async {
        let shop = Shop::open().await;
        let demo = demo::fill(shop.service.clone(), Timestamp::now()).await.expect("every story can be told");
        let mut client = shop.nobody();
        client.sign_in(TECHNICIAN, PASSWORD).await;
        (shop, demo.tickets[KNOWN], demo.tickets[BLANK], client)
    });
    let get = |client: &Client, path: &str| {
        let page = runtime.block_on(client.get(path));
        assert!(page.status.is_success(), "{path}: {}", page.status);
        page.text
    };
    let drawn = format!("/tickets/{known}/pictures");
    let others = [
        ("the same with nothing drawn", format!("/tickets/{blank}/pictures")),
        ("its job's own page", format!("/tickets/{known}")),
    ];
    let count = |path: &str| get(&client, path).matches("<svg role=\"img\"").count();
    assert!(count(&drawn) >= 10 && count(&others[0].1) == 0, "the one is drawn, the other is not");
    for (what, other) in others {
        let (with, without) = by_turns(ROUNDS, || drop(get(&client, &drawn)), || drop(get(&client, &other)));
        println!(
            "page with its pictures / {what}: {:.2}  ({:.2} ms against {:.2} ms; reach 1.50 or less)",
            ratio(with, without),
            with.as_secs_f64() * 1e3,
            without.as_secs_f64() * 1e3,
        );
    }
    drop(shop);
}
