//! Setting up, signing in and out, staff.

use crate::shop::{self, PASSWORD};
use endplay::service::{AddStaff, ChangePassword, DisableStaff, Failure, FirstStart, Key, Pass, SetUp, Who};
use endplay::ticket::Role;
use jiff::SignedDuration;

#[tokio::test]
async fn the_first_start_hands_out_a_link_that_makes_one_owner_once() {
    let (_database, service, _) = shop::bare().await;
    let FirstStart::SetUpWith(first) = service.first_start().await.expect("a start") else {
        panic!("nobody set it up")
    };
    // A second start makes the first link worthless.
    let FirstStart::SetUpWith(pass) = service.first_start().await.expect("a start") else { panic!("nobody set it up") };
    assert_eq!(first.shop(), pass.shop());
    assert!(!service.setup_opens(&first.to_string()).await.expect("an answer"));
    assert!(service.setup_opens(&pass.to_string()).await.expect("an answer"));

    let short = SetUp { password: "too short".into(), zone: "Somewhere".into(), ..shop::set_up_form() };
    let refused = service.set_up(&pass.to_string(), Key::fresh(), short, "Desk").await;
    assert!(matches!(refused, Err(Failure::Problems(ref problems)) if problems.len() == 2), "{refused:?}");
    service.set_up(&pass.to_string(), Key::fresh(), shop::set_up_form(), "Desk").await.expect("set up");
    let again = SetUp { name: "Somebody Else".into(), ..shop::set_up_form() };
    let refused = service.set_up(&pass.to_string(), Key::fresh(), again, "Desk").await;
    assert!(matches!(refused, Err(Failure::LinkClosed)), "{refused:?}");
    let FirstStart::Ready(shop) = service.first_start().await.expect("a start") else { panic!("it is set up") };
    assert_eq!((shop.name.as_str(), shop.zone.as_str()), ("Harbor Lane Gearbox", "America/Denver"));
}

#[tokio::test]
async fn an_old_set_up_link_no_longer_opens() {
    let (_database, service, clock) = shop::bare().await;
    let FirstStart::SetUpWith(pass) = service.first_start().await.expect("a start") else { panic!("nobody set it up") };
    clock.fetch_add(25 * 3_600_000_000, std::sync::atomic::Ordering::Relaxed);
    let refused = service.set_up(&pass.to_string(), Key::fresh(), shop::set_up_form(), "Desk").await;
    assert!(matches!(refused, Err(Failure::LinkClosed)), "{refused:?}");
}

#[tokio::test]
async fn two_instances_that_start_at_once_make_one_shop() {
    let (_database, service, _) = shop::bare().await;
    let starts =
        (0..6).map(|_| service.clone()).map(|service| tokio::spawn(async move { service.first_start().await }));
    let mut shops = std::collections::HashSet::new();
    for start in starts.collect::<Vec<_>>() {
        match start.await.expect("it ran").expect("a start") {
            FirstStart::SetUpWith(pass) => shops.insert(pass.shop()),
            FirstStart::Ready(_) => panic!("nobody set it up"),
        };
    }
    assert_eq!(shops.len(), 1);
}

#[tokio::test]
async fn a_session_is_new_at_each_sign_in_and_only_its_hash_is_kept() {
    let shop = shop::open().await;
    let sign_in = || shop.service.sign_in(shop.owner.shop, "Tomas Reed", PASSWORD, "Bench tablet");
    let (one, other) = (sign_in().await.expect("signed in"), sign_in().await.expect("signed in"));
    let (a, b) = (one.pass.to_string(), other.pass.to_string());
    assert_ne!(a, b);
    assert_eq!(shop.service.signed_in(&a).await.expect("a session").name, "Tomas Reed");
    let token = a.split_once('.').expect("shop and token").1.to_owned();
    let dump: String = sqlx::query_scalar(
        "SELECT string_agg(s::text, ' ') || (SELECT string_agg(i::text, ' ') FROM idempotency i) FROM session s",
    )
    .fetch_one(&shop.database.owner_pool)
    .await
    .expect("the rows");
    assert!(!dump.contains(&token));
    shop.service.sign_out(&one.caller).await.expect("signed out");
    assert!(matches!(shop.service.signed_in(&a).await, Err(Failure::SignedOut)));
    assert!(shop.service.signed_in(&b).await.is_ok(), "the other device stays signed in");
    let forged = Pass::read(&b).map(|pass| pass.to_string().replace(&b[33..40], "AAAAAAA")).expect("a pass");
    assert!(matches!(shop.service.signed_in(&forged).await, Err(Failure::SignedOut)));
}

#[tokio::test]
async fn a_session_ends_when_unused_and_after_a_long_day_whatever_happens() {
    let shop = shop::open().await;
    let id = shop.owner.shop;
    let tablet =
        shop.service.sign_in(id, "Tomas Reed", PASSWORD, "Bench tablet").await.expect("signed in").pass.to_string();
    let desk = shop.service.sign_in(id, "Dana Frost", PASSWORD, "Desk").await.expect("signed in").pass.to_string();
    shop.pass_time(SignedDuration::from_mins(14));
    assert!(shop.service.signed_in(&tablet).await.is_ok(), "14 minutes are fine, and count as use");
    shop.pass_time(SignedDuration::from_mins(14));
    assert!(shop.service.signed_in(&tablet).await.is_ok());
    shop.pass_time(SignedDuration::from_mins(17));
    assert!(matches!(shop.service.signed_in(&tablet).await, Err(Failure::SignedOut)));
    assert!(matches!(shop.service.signed_in(&desk).await, Err(Failure::SignedOut)), "45 minutes unused");

    let owner = shop.service.sign_in(id, "Olive Marsh", PASSWORD, "Desk").await.expect("signed in").pass.to_string();
    for _ in 0..35 {
        shop.pass_time(SignedDuration::from_mins(20));
        shop.service.signed_in(&owner).await.expect("used all the time");
    }
    shop.pass_time(SignedDuration::from_mins(20));
    assert!(matches!(shop.service.signed_in(&owner).await, Err(Failure::SignedOut)), "twelve hours are the end");
}

#[tokio::test]
async fn a_wrong_name_and_a_wrong_password_get_the_same_words() {
    let shop = shop::open().await;
    let id = shop.owner.shop;
    let words = async |name: &str, password: &str| {
        shop.service.sign_in(id, name, password, "Desk").await.expect_err("not let in").to_string()
    };
    let wrong_password = words("Dana Frost", "eight herons over the weir").await;
    assert_eq!(words("Nobody Here", PASSWORD).await, wrong_password);
    assert_eq!(words("Dana Frost", "").await, wrong_password);
    assert_eq!(words("No\u{0}body", PASSWORD).await, wrong_password);
}

#[tokio::test]
async fn after_too_many_tries_a_name_is_locked_for_a_while_and_only_that_name() {
    let shop = shop::open().await;
    let id = shop.owner.shop;
    let try_with = |name: &'static str, password: &'static str| shop.service.sign_in(id, name, password, "Desk");
    for _ in 0..5 {
        try_with("Dana Frost", "eight herons over the weir").await.expect_err("not let in");
    }
    let locked = try_with("Dana Frost", PASSWORD).await.expect_err("locked").to_string();
    assert!(locked.contains("wait a minute"), "{locked}");
    assert!(try_with("Tomas Reed", PASSWORD).await.is_ok(), "nobody else is locked out");
    shop.pass_time(SignedDuration::from_secs(31));
    try_with("Dana Frost", "eight herons over the weir").await.expect_err("not let in");
    shop.pass_time(SignedDuration::from_secs(31));
    let longer = try_with("Dana Frost", PASSWORD).await.expect_err("still locked").to_string();
    assert!(longer.contains("too many"), "{longer}");
    shop.pass_time(SignedDuration::from_secs(31));
    try_with("Dana Frost", PASSWORD).await.expect("the right password after the wait");
    try_with("Dana Frost", "eight herons over the weir").await.expect_err("not let in");
    assert!(try_with("Dana Frost", PASSWORD).await.is_ok(), "the count began anew");
}

#[tokio::test]
async fn a_guess_sent_along_with_many_others_does_not_slip_past_the_lock() {
    let shop = shop::open().await;
    let id = shop.owner.shop;
    // Held, so that the right guess is past the check of the lock and not yet let in.
    let mut held = shop.database.owner_pool.begin().await.expect("a transaction");
    sqlx::query("SELECT id FROM staff FOR UPDATE").execute(&mut *held).await.expect("held");
    let service = shop.service.clone();
    let right = tokio::spawn(async move { service.sign_in(id, "Dana Frost", PASSWORD, "Elsewhere").await });
    shop.until("SELECT EXISTS (SELECT FROM pg_stat_activity WHERE wait_event_type = 'Lock')").await;
    for _ in 0..5 {
        let wrong = shop.service.sign_in(id, "Dana Frost", "eight herons over the weir", "Elsewhere").await;
        wrong.expect_err("not let in");
    }
    held.rollback().await.expect("let go");
    let refused = right.await.expect("it ran").expect_err("locked meanwhile").to_string();
    assert!(refused.contains("too many tries"), "{refused}");
}

#[tokio::test]
async fn disabling_somebody_ends_their_sessions_at_once_but_the_last_owner_stays() {
    let shop = shop::open().await;
    let id = shop.owner.shop;
    let tablet = shop.service.sign_in(id, "Tomas Reed", PASSWORD, "Bench tablet").await.expect("signed in");
    let who = || Who::Staff(shop.owner.clone());
    let disable = |staff| shop.service.write(who(), Key::fresh(), DisableStaff { staff });
    disable(tablet.caller.staff).await.expect("disabled");
    assert!(matches!(shop.service.signed_in(&tablet.pass.to_string()).await, Err(Failure::SignedOut)));
    assert!(shop.service.sign_in(id, "Tomas Reed", PASSWORD, "Bench tablet").await.is_err());
    let last = disable(shop.owner.staff).await.expect_err("the last owner");
    assert!(last.to_string().contains("last owner"), "{last}");
    let staff = shop.service.staff(&shop.owner).await.expect("the list");
    assert_eq!(staff.iter().filter(|person| person.disabled).count(), 1);
    // The name stays taken: histories name people by it.
    let again = AddStaff { name: "TOMAS reed".into(), role: Role::Technician, password: PASSWORD.into() };
    let taken = shop.service.add_staff(&shop.owner, Key::fresh(), again).await.expect_err("taken");
    assert!(matches!(taken, Failure::Problems(ref problems) if problems[0].field == "name"), "{taken:?}");
}

#[tokio::test]
async fn a_new_password_needs_the_old_one_and_ends_the_other_sessions() {
    let shop = shop::open().await;
    let id = shop.owner.shop;
    let here = shop.service.sign_in(id, "Dana Frost", PASSWORD, "Desk").await.expect("signed in");
    let elsewhere = shop.service.sign_in(id, "Dana Frost", PASSWORD, "Home").await.expect("signed in");
    let change = |present: &str, new: &str| ChangePassword { present: present.into(), new: new.into() };
    let new = "a kettle on the north bench";
    for (present, fresh, field) in [
        ("wrong wrong wrong wrong", new, "present"),
        (PASSWORD, "short", "new"),
        (PASSWORD, "harborlanegearbox", "new"),
    ] {
        let refused = shop.service.change_password(&here.caller, Key::fresh(), change(present, fresh)).await;
        assert!(matches!(refused, Err(Failure::Problems(ref problems)) if problems[0].field == field), "{refused:?}");
    }
    shop.service.change_password(&here.caller, Key::fresh(), change(PASSWORD, new)).await.expect("changed");
    assert!(shop.service.signed_in(&here.pass.to_string()).await.is_ok());
    assert!(shop.service.signed_in(&elsewhere.pass.to_string()).await.is_err());
    assert!(shop.service.sign_in(id, "Dana Frost", PASSWORD, "Desk").await.is_err());
    assert!(shop.service.sign_in(id, "Dana Frost", new, "Desk").await.is_ok());
}

#[tokio::test]
async fn a_hash_of_earlier_strength_is_renewed_at_the_next_sign_in() {
    use argon2::password_hash::PasswordHasher;
    let shop = shop::open().await;
    let params = argon2::Params::new(8 * 1024, 1, 1, None).expect("allowed");
    let weak = argon2::Argon2::new(argon2::Algorithm::Argon2id, argon2::Version::V0x13, params);
    let old = weak.hash_password(PASSWORD.as_bytes()).expect("a hash").to_string();
    sqlx::query("UPDATE staff SET password_hash = $1 WHERE name = 'Dana Frost'")
        .bind(&old)
        .execute(&shop.database.owner_pool)
        .await
        .expect("arranged");
    shop.service.sign_in(shop.owner.shop, "Dana Frost", PASSWORD, "Desk").await.expect("signed in");
    let kept: String = sqlx::query_scalar("SELECT password_hash FROM staff WHERE name = 'Dana Frost'")
        .fetch_one(&shop.database.owner_pool)
        .await
        .expect("the hash");
    assert!(kept.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"), "{kept}");
    assert!(shop.service.sign_in(shop.owner.shop, "Dana Frost", PASSWORD, "Desk").await.is_ok());
}

#[tokio::test]
async fn every_sign_in_and_every_refusal_is_in_the_history() {
    let shop = shop::open().await;
    shop.service.sign_in(shop.owner.shop, "Dana Frost", "not this one at all", "Desk").await.expect_err("not let in");
    let kinds: Vec<String> = sqlx::query_scalar(
        "SELECT concat_ws(' ', happened->>'kind', happened->>'because') FROM event WHERE ticket_id IS NULL ORDER BY id",
    )
    .fetch_all(&shop.database.owner_pool)
    .await
    .expect("the events");
    assert_eq!(
        kinds,
        [
            "shop_set_up",
            "signed_in",
            "staff_added",
            "staff_added",
            "signed_in",
            "signed_in",
            "sign_in_refused wrong_password"
        ]
    );
}
