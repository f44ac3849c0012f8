//! What the invented shop has learnt by itself and keeps as rules of its own.

use crate::service::{Caller, Failure, Key, Service, SwitchHouseRule, Who, WriteHouseRule};

/// Writes them, tries them on the jobs there are, and switches the first on.
///
/// # Errors
/// [`Failure`] when the database cannot be written.
pub(super) async fn write(service: &Service, owner: &Caller) -> Result<(), Failure> {
    for rule in [heavy_trailer(), long_hold()] {
        service.write(Who::Staff(owner.clone()), Key::fresh(), rule).await?;
    }
    service.try_house_rule(owner, Key::fresh(), 1, 1).await?;
    let on = SwitchHouseRule { nth: 1, version: 1, on: true };
    service.write(Who::Staff(owner.clone()), Key::fresh(), on).await
}

fn heavy_trailer() -> WriteHouseRule {
    WriteHouseRule {
        rule: None,
        severity: "note".into(),
        due: "intake".into(),
        customer_accepts: false,
        title: "Tows with a high-winding rear axle".into(),
        condition: "use.kind == 'tow' && vehicle.axle_ratio < 3.5".into(),
        told_shop: "The three that came back with burnt clutches all towed with a tall axle. Talk about the axle \
                    before anything is ordered."
            .into(),
        fix: "Offer to look at the axle ratio with the customer.".into(),
        told_customer: String::new(),
    }
}

fn long_hold() -> WriteHouseRule {
    WriteHouseRule {
        rule: None,
        severity: "caution".into(),
        due: "spec".into(),
        customer_accepts: true,
        title: "Holds the brake long behind a big engine".into(),
        condition: "engine.torque_lbft > 700 && trans_brake.hold_s > 3.0".into(),
        told_shop: "Our own bench gauge saw the fluid go past its limit in less time than the sum says. The fluid is \
                    hot enough to burn: let it cool before the pan comes off."
            .into(),
        fix: "Agree on a shorter hold, or on a bigger cooler.".into(),
        told_customer: "Holding the car on the brake for that long gets the fluid too hot. Please let go sooner, or \
                        let us fit a bigger cooler."
            .into(),
    }
}
