//! What the sums that were put on a job say its elements hold: of most of them a job has no fact.

use crate::calc::converter::torque_curve::TorqueCurve;
use crate::calc::power_flow::three_speed::name;
use crate::quantity::{PoundFoot, Quantity};
use crate::rules::Limits;
use crate::sums::{Outcome, of_address};

/// The direct clutch as it backs up.
pub(super) const DIRECT_BACKING: &str = "direct clutch, reverse";

/// The rear band as it backs up.
pub(super) const BAND_BACKING: &str = "rear band, reverse";

/// The sums that were put on a job, as addresses, the latest last.
#[derive(Clone, Copy, Debug, Default)]
pub struct Put<'a>(pub &'a [String]);

impl Put<'_> {
    /// What the latest sum of this name gives, when there is one and it can still be worked.
    fn latest(self, name: &str, limits: &Limits) -> Option<Option<Outcome>> {
        let mut all = self.0.iter().rev().filter_map(|address| of_address(address));
        let (sum, typed) = all.find(|(sum, _)| sum.name == name)?;
        let text = |name: &str| {
            typed.iter().find(|(input, _)| input == name).map_or_else(String::new, |(_, text)| text.clone())
        };
        Some(sum.answer(text, limits).outcome)
    }

    /// The engine's torque curve, when a sum with one was put on the job.
    pub(super) fn curve(self, limits: &Limits) -> Option<TorqueCurve> {
        self.latest("stall-by-curve", limits)??.curve
    }

    /// What this element holds by the latest of its sums, with its working; or why that is not known.
    pub(super) fn holds(self, element: &str, limits: &Limits) -> Result<(Quantity<PoundFoot>, String), String> {
        let own = sum_of(element).ok_or("no sum gives it")?;
        let latest = self.latest(own, limits);
        let holds = latest.ok_or("the job has no fact for it, and no sum of it is put on the job")?;
        let holds = holds.and_then(|outcome| outcome.holds);
        let (holds, worked) = holds.ok_or("the sum that was put on the job cannot be worked any more")?;
        Ok((holds, format!("sum put on this job: {worked}")))
    }
}

/// The sum that tells what an element holds.
pub(super) fn sum_of(element: &str) -> Option<&'static str> {
    Some(match element {
        name::FORWARD => "forward-holds",
        name::INTERMEDIATE => "intermediate-holds",
        name::LOW_ONE_WAY => "low-one-way-holds",
        name::FRONT_BAND => "front-band-holds",
        name::REAR_BAND => "rear-band-holds",
        DIRECT_BACKING => "direct-holds-in-reverse",
        BAND_BACKING => "rear-band-holds-in-reverse",
        _ => return None,
    })
}
