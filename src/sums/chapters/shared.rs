//! Inputs that several sums ask for, and how numbers are said.

use crate::calc::tire::Trust;
use crate::quantity::{One, PoundFoot, Quantity, Rpm};
use crate::sums::declaration::Input;
use crate::sums::given::Tire;
use crate::sums::outcome::{plain, short};

pub(super) const TIRE: Input = Input::tire("tire", "Tire", "28.5")
    .hint("The diameter, measured loaded, or the size on the sidewall, such as 275/60R15.")
    .fact("vehicle.tire_diameter_in");

pub(super) const AXLE: Input = Input::ratio("axle", "Axle ratio", (1.0, 12.0), "3.73")
    .hint("As stamped, such as 3.73.")
    .fact("vehicle.axle_ratio");

pub(super) const FIRST: Input =
    Input::ratio("first", "First gear ratio", (1.05, 6.0), "2.48").fact("gears.first_ratio");

pub(super) const SECOND: Input =
    Input::ratio("second", "Second gear ratio", (1.02, 5.0), "1.48").fact("gears.second_ratio");

pub(super) const REVERSE: Input = Input::ratio("reverse", "Reverse gear ratio", (0.5, 6.0), "2.08")
    .hint("As a plain size.")
    .fact("gears.reverse_ratio");

pub(super) const ENGINE_TORQUE: Input = Input::number::<PoundFoot>("torque", "Engine torque", (1.0, 5000.0), "560")
    .hint("The peak at the crank, from a dyno sheet where there is one.")
    .fact("engine.torque_lbft");

pub(super) const STALL_RATIO: Input = Input::ratio("stall_ratio", "Converter torque ratio at stall", (1.0, 4.0), "2.0")
    .hint("The maker's figure; 1.8 to 2.4 is usual.")
    .fact("converter.stall_ratio");

pub(super) const ENGINE_SPEED: Input = Input::number::<Rpm>("rpm", "Engine speed", (100.0, 15000.0), "6500");

/// A share in per cent, with its sign: `+11.0 %` reads high.
pub(super) fn signed_percent(share: Quantity<One>) -> String {
    let percent = share.to_percent(1);
    if share.value() > 0.0 { format!("+{percent}") } else { percent }
}

/// A tire as it stands in a sum.
pub(super) fn tire_said(tire: Tire) -> String {
    short(tire.diameter)
}

/// What has to be said of a tire whose diameter was not measured.
pub(super) fn tire_remark(tire: Tire) -> Option<String> {
    let from_size = format!("The size gives {} unloaded.", tire.diameter.to_places(2));
    match tire.trust? {
        Trust::Nominal => Some(format!(
            "{from_size} A real tire of that size may differ by half an inch and stands lower under load: measure it."
        )),
        Trust::Guess => Some(format!(
            "{from_size} The size does not say how tall the sidewall is, so this is a guess (memory, low): measure it."
        )),
    }
}

/// A ratio as people write it, `2.48`.
pub(super) fn ratio(ratio: Quantity<One>) -> String {
    plain(ratio.value())
}
