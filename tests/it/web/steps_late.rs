//! The steps of a job that came to a late stage without a word in its log.

use super::client::Shop;
use super::steps::{known_job, ticked};
use endplay::ticket::{Role, Stage};

/// The job as if it had been brought to this stage, whatever its gates would have asked for.
async fn stands_at(shop: &Shop, ticket: i64, stage: Stage) {
    let update = "UPDATE ticket SET stage = $1 WHERE number = $2";
    let at = sqlx::query(update).bind(stage.code()).bind(ticket).execute(&shop.database.owner_pool).await;
    assert_eq!(at.expect("the stage is written").rows_affected(), 1);
}

#[tokio::test]
async fn the_next_step_is_one_of_the_phase_the_job_is_in_and_hold_points_left_behind_stay_in_sight() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    let bench = shop.client(Role::Technician).await;
    let list = format!("/tickets/{ticket}/steps");
    let next = async || bench.get(&list).await.attributes(".findings-summary a", "href").join(" ");
    assert_eq!(next().await, "#s-IN-01");
    assert!(bench.get(&list).await.texts(".step-unlogged").is_empty(), "nothing lies behind yet");

    stands_at(&shop, ticket, Stage::Assembly).await;
    let page = bench.get(&list).await;
    assert_eq!(next().await, "#s-WA-01", "what was cut is washed first");
    page.assert_says("of earlier phases not logged");
    let folded = page.attributes(".step-unlogged .step", "id");
    assert!(folded.contains(&"s-IN-01".to_owned()), "{folded:?}");
    assert!(page.texts(".step-unlogged .step-hold").is_empty(), "no hold point is folded away");
    let all_holds = page.texts(".step-hold").len();

    stands_at(&shop, ticket, Stage::Test).await;
    let page = bench.get(&list).await;
    assert!(next().await.starts_with("#s-TE-"), "{}", next().await);
    assert_eq!(page.texts(".step-hold").len(), all_holds, "each hold point is there");
    assert!(page.texts(".step-unlogged .step-hold").is_empty());
    let summary = page.texts(".findings-summary + p").join("");
    assert!(summary.contains("hold point"), "{summary}");
    assert!(page.texts(".step-unlogged summary")[0].starts_with("Not logged: "), "named for what it is");
}

#[tokio::test]
async fn a_phase_with_a_word_in_the_log_shows_all_of_its_steps() {
    let shop = Shop::staffed().await;
    let ticket = known_job(&shop, &[]).await;
    ticked(&shop, ticket, &["IN-01"]).await;
    stands_at(&shop, ticket, Stage::Assembly).await;
    let page = shop.client(Role::Technician).await.get(&format!("/tickets/{ticket}/steps")).await;
    let folded = page.attributes(".step-unlogged .step", "id");
    assert!(folded.iter().all(|id| !id.starts_with("s-IN-")) && !folded.is_empty(), "{folded:?}");
    assert!(page.attributes(".step", "id").contains(&"s-IN-02".to_owned()));
}
