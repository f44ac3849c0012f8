//! What a job's facts amount to: every computed quantity, worked out once a job.
//!
//! Whatever is worked out from an unknown is unknown itself, and so is a choice
//! whose test is. The least or greatest of several wants them all.

use super::ask::{Ask, YesNo};
use super::known::{Known, Together};
use super::limits::{LimitId, Limits};
use crate::calc::{clutch, converter, driveshaft, gear_set, one_way, speedometer, tire};
use crate::job::{BrakeKind, FactSet, FactValue, Job, Kind, TireKind, Year};
use crate::quantity::{Celsius, Inch, Kilowatt, One, PoundFoot, Quantity, Rpm};
use serde_json::Value;

/// What is said about one computed quantity.
#[derive(Debug)]
pub struct DerivedDeclaration {
    /// `group.name`, as the findings and the command line spell it.
    pub path: &'static str,
    /// What it is: its doc comment.
    pub doc: &'static str,
    /// Every limit that goes into it.
    pub limits: &'static [LimitId],
    /// What kind of value it is.
    pub kind: Kind,
}

/// Declares the computed quantities in the order they build on each other.
macro_rules! derived {
    (|$job:ident, $limits:ident| $(
        $(#[doc = $doc:literal])+
        $name:ident: $type:ty, $path:literal, [$($limit:ident),*] = $formula:expr;
    )+) => {
        /// Every computed quantity of one job.
        #[derive(Clone, Debug, PartialEq)]
        pub struct Derived {
            $($(#[doc = $doc])+ pub $name: Known<$type>,)+
        }

        /// Which computed quantity: the name of its field.
        #[allow(non_camel_case_types)]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum DerivedId {
            $($(#[doc = $doc])+ $name,)+
        }

        impl DerivedId {
            /// Every computed quantity, in the order they are worked out.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// What is said about it.
            pub fn declaration(self) -> &'static DerivedDeclaration {
                static DECLARATIONS: &[DerivedDeclaration] = &[$(DerivedDeclaration {
                    path: $path,
                    doc: concat!($($doc),+),
                    limits: &[$(LimitId::$limit),*],
                    kind: <$type as FactValue>::KIND,
                }),+];
                &DECLARATIONS[self as usize]
            }
        }

        impl Derived {
            /// Works everything out that can be worked out.
            pub fn of($job: &Job, $limits: &Limits) -> Self {
                $(let $name: Known<$type> = $formula;)+
                Self { $($name),+ }
            }

            /// Makes one quantity unknown, to see who asks for it.
            #[cfg(test)]
            pub(in crate::rules) fn forget(&mut self, which: DerivedId) {
                match which {
                    $(DerivedId::$name => self.$name = Known::Waits(FactSet::EMPTY),)+
                }
            }

            /// The value as the command line prints it, and the facts behind it; no value while unknown.
            pub fn get(&self, which: DerivedId) -> (Option<Value>, FactSet) {
                match which {
                    $(DerivedId::$name => (self.$name.value().map(FactValue::json), self.$name.facts()),)+
                }
            }
        }
    };
}

derived! { |job, limits|
    /// Does the class want a certified shield at this pass?
    need_shield: bool, "need.shield", [] = {
        let timed = job.event.quarter_mile_s.not_more_than(&job.class_table.shield_s)
            | job.event.trap_mph.not_less_than(&job.class_table.shield_mph);
        let with_brake = job.valve_body.brake.is_not(BrakeKind::None) & job.class_table.shield_with_brake.yes();
        job.usage.raced.yes() & (job.class_table.shield_always.yes() | timed | with_brake)
    };
    /// Does the class want a dipstick that locks at this pass?
    need_locking_stick: bool, "need.locking_stick", [] =
        job.usage.raced.yes() & job.event.quarter_mile_s.not_more_than(&job.class_table.stick_s);
    /// Does the class want a certified flexplate and its shield at this pass?
    need_flexplate: bool, "need.flexplate", [] = job.usage.raced.yes()
        & (job.event.quarter_mile_s.not_more_than(&job.class_table.flexplate_s)
            | job.event.trap_mph.not_less_than(&job.class_table.flexplate_mph));
    /// Does the class want a driveshaft loop at this pass on these tires?
    need_loop: bool, "need.loop", [] = job.usage.raced.yes()
        & ((job.vehicle.tire_kind.is(TireKind::Slick) & job.event.quarter_mile_s.not_more_than(&job.class_table.loop_slick_s))
            | (job.vehicle.tire_kind.is(TireKind::Street)
                & job.event.quarter_mile_s.not_more_than(&job.class_table.loop_street_s)));
    /// Bolts that can really hold a bolt-on bell: the shortest count of ring, case and pump.
    usable_bolts: u32, "bell.usable_bolts", [] =
        (job.bell.ring_holes.known(), job.case.pump_bosses.known(), job.pump.holes.known())
            .together()
            .map(|(ring, bosses, pump)| ring.min(bosses).min(pump));
    /// Stall speed behind this engine, estimated from the torque the converter was rated at.
    stall_here: Quantity<Rpm>, "converter.stall_here_rpm", [] =
        (job.converter.stall_rpm.known(), job.engine.torque_lbft.known(), job.converter.rated_torque_lbft.known())
            .together()
            .map(|(stall, here, rated)| converter::stall_at(stall, here, rated))
            .finite();
    /// Engine speed at cruise in direct drive.
    cruise_rpm: Quantity<Rpm>, "use.cruise_rpm", [] =
        (job.usage.cruise_mph.known(), job.vehicle.axle_ratio.known(), job.vehicle.tire_diameter_in.known())
            .together()
            .map(|(road, axle, tire)| tire::cruise_speed(road, axle, tire))
            .finite();
    /// Torque the intermediate one-way clutch must hold in second.
    one_way_load: Quantity<PoundFoot>, "one_way.load_lbft",
    [coupling, shock_street, shock_street_strip, shock_drag, shock_tow, shock_offroad, shock_pull] =
        (job.gears.second_ratio.known(), job.engine.torque_lbft.known(), job.usage.kind.known())
            .together()
            .map(|(second, torque, usage)| {
                one_way::second_gear_load(second, torque, limits.coupling, limits.shock(usage))
            })
            .finite();
    /// That torque as a share of what the shop lets this one-way clutch carry.
    one_way_share: Quantity<One>, "one_way.load_share",
    [coupling, shock_street, shock_street_strip, shock_drag, shock_tow, shock_offroad, shock_pull,
     one_way_roller, one_way_sprag, one_way_34, one_way_36] =
        (one_way_load, job.one_way.kind.known(), job.one_way.elements.known())
            .together()
            .map(|(load, kind, elements)| one_way::load_share(load, limits.one_way(kind, elements)))
            .finite();
    /// Teeth of a driven gear that would make the speedometer read exactly.
    exact_driven_teeth: Quantity<One>, "speedometer.exact_driven_teeth", [] =
        (job.speedometer.drive_teeth.known(), job.vehicle.axle_ratio.known(), job.vehicle.tire_diameter_in.known())
            .together()
            .map(|(drive, axle, tire)| speedometer::exact_driven_teeth(drive, axle, tire))
            .finite();
    /// How far the speedometer is off, as a share of true speed; above nought it reads high.
    speedometer_error: Quantity<One>, "speedometer.error", [] =
        (exact_driven_teeth, job.speedometer.driven_teeth.known())
            .together()
            .map(|(exact, fitted)| speedometer::error(exact, fitted))
            .finite();
    /// Speed at which the driveshaft tube would whip.
    critical_rpm: Quantity<Rpm>, "driveshaft.critical_rpm", [tube_steel, tube_aluminum] = (
        job.driveshaft.material.known(),
        job.driveshaft.od_in.known(),
        job.driveshaft.wall_in.known(),
        job.driveshaft.length_in.known(),
    )
        .together()
        .map(|(material, od, wall, length)| driveshaft::critical_speed(limits.tube(material), od, wall, length))
        .finite();
    /// Highest engine speed as a share of that speed.
    critical_share: Quantity<One>, "driveshaft.critical_share", [tube_steel, tube_aluminum] =
        (job.engine.max_rpm.known(), critical_rpm)
            .together()
            .map(|(highest, critical)| driveshaft::critical_share(highest, critical))
            .finite();
    /// Length of converter pilot inside the crank after spacers.
    pilot_engaged: Quantity<Inch>, "converter.pilot_engaged_in", [] =
        (job.converter.pilot_length_in.known(), job.converter.spacer_in.known(), job.flexplate.pilot_recess_in.known())
            .together()
            .map(|(pilot, spacer, recess)| converter::pilot_engaged(pilot, spacer, recess))
            .finite();
    /// Share of turbine torque that the direct clutch carries on the brake.
    direct_share: Quantity<One>, "trans_brake.direct_share", [] =
        (job.gears.first_ratio.known(), job.gears.reverse_ratio.known())
            .together()
            .map(|(first, reverse)| gear_set::direct_share_on_brake(first, reverse))
            .finite();
    /// Torque the direct clutch must hold, margin included.
    direct_need: Quantity<PoundFoot>, "direct.need_lbft", [clutch_margin, coupling] = {
        let on_brake = job.valve_body.brake.is_not(BrakeKind::None).choose(
            || {
                (direct_share, job.engine.torque_lbft.known(), job.converter.stall_ratio.known())
                    .together()
                    .map(|(share, torque, stall)| Some(clutch::direct_load_on_brake(share, torque, stall)))
            },
            || Known::given(None),
        );
        (job.gears.second_ratio.known(), job.engine.torque_lbft.known(), on_brake)
            .together()
            .map(|(second, torque, brake)| {
                clutch::direct_need(second, torque, limits.coupling, brake, limits.clutch_margin)
            })
            .finite()
    };
    /// Torque the direct clutch can hold as built.
    direct_capacity: Quantity<PoundFoot>, "direct.capacity_lbft", [] = (
        job.direct.friction_mu.known(),
        job.direct.frictions.known(),
        job.bench.line_stall_psi.known(),
        job.direct.piston_area_in2.known(),
        job.direct.spring_lb.known(),
        job.direct.mean_radius_in.known(),
    )
        .together()
        .map(|(friction, plates, pressure, piston, springs, mean_radius)| {
            clutch::capacity(&clutch::Pack { friction, plates, pressure, piston, springs, mean_radius })
        })
        .finite();
    /// Power that turns to heat while the brake holds.
    brake_power: Quantity<Kilowatt>, "trans_brake.power_kw", [] =
        (job.engine.torque_lbft.known(), stall_here)
            .together()
            .map(|(torque, stall)| converter::brake_power(torque, stall))
            .finite();
    /// Degrees the converter warms during one hold.
    brake_rise: Quantity<Celsius>, "trans_brake.temp_rise_c", [] = (
        brake_power,
        job.trans_brake.hold_s.known(),
        job.converter.fluid_kg.known(),
        job.converter.metal_kg.known(),
    )
        .together()
        .map(|(power, held, fluid, metal)| converter::temperature_rise(power, held, fluid, metal))
        .finite();
    /// Year of the event, whose rulebook counts.
    event_year: Year, "event.year", [] = job.event.date.known().map(|date| Year(date.year()));
}
