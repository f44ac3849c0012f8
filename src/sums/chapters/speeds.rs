//! Turns of a tire, road speed in a gear, engine speed at cruise.

use super::shared::{AXLE, ENGINE_SPEED, TIRE, ratio, tire_remark, tire_said};
use crate::calc::shift::{Final, Shift, engine_speed_slipping, shifts, speeds};
use crate::calc::tire::{
    cruise_speed, road_speed, turns_per_mile_geometric, turns_per_mile_rolling, turns_per_mile_shop,
};
use crate::quantity::{MilePerHour, One, Quantity, Rpm};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, Table, short};

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "turns-a-mile",
        title: "Tire: turns in a mile",
        what: "How often a tire turns in one mile. Three answers, because a real tire is no rigid circle.",
        inputs: &[TIRE],
        work: turns,
        care: "",
    },
    Sum {
        name: "speed-in-gear",
        title: "Road speed in a gear",
        what: "How fast the vehicle goes at an engine speed, in one gear, with nothing slipping.",
        inputs: &[
            ENGINE_SPEED.fact("engine.max_rpm"),
            AXLE,
            Input::ratio("gear", "Gear ratio", (0.3, 6.0), "1.00").hint("1.00 is direct drive."),
            TIRE,
        ],
        work: road,
        care: "A speed on paper is no leave to drive it: tires, driveshaft and road each have a limit of their own.",
    },
    Sum {
        name: "shift-recovery",
        title: "Where the engine falls to at a shift",
        what: "The road speed of each shift at one engine speed, and where the engine falls to.",
        inputs: &[
            Input::numbers::<One>("ratios", "Gear ratios", (0.3, 6.0), (2, 8), "2.48 1.48 1.00")
                .hint("From first up, with blanks between them."),
            ENGINE_SPEED.fact("engine.max_rpm"),
            AXLE,
            TIRE,
        ],
        work: falls,
        care: "",
    },
    Sum {
        name: "cruise",
        title: "Engine speed at cruise",
        what: "How fast the engine turns at a steady road speed in direct drive.",
        inputs: &[
            Input::number::<MilePerHour>("road", "Road speed", (5.0, 250.0), "65").fact("use.cruise_mph"),
            AXLE,
            TIRE,
            Input::percent("slip", "Converter slip", (0.0, 50.0), "5")
                .hint("3 to 8 % without lockup (common practice); blank for none.")
                .optional(),
        ],
        work: cruise,
        care: "",
    },
];

fn turns(given: &Given<'_>) -> Worked {
    let tire = given.tire("tire")?;
    let said = tire_said(tire);
    let diameter = tire.diameter;
    let mut shop = Line::new(
        "As shops reckon",
        turns_per_mile_shop(diameter).to_places(1),
        "20,168 / diameter",
        format!("20,168 / {said}"),
        "arithmetic for the diameter given; measure it loaded",
    );
    if tire.trust.is_some() {
        shop = shop.plans("vehicle.tire_diameter_in", (diameter.value() * 1000.0).round() / 1000.0);
    }
    Ok(Outcome::default()
        .line(shop)
        .line(Line::new(
            "As a rigid circle",
            turns_per_mile_geometric(diameter).to_places(1),
            "63,360 / (π × diameter)",
            format!("63,360 / (π × {said})"),
            "geometry",
        ))
        .line(Line::new(
            "As a radial rolls",
            turns_per_mile_rolling(diameter).to_places(1),
            "63,360 / (3.05 × diameter)",
            format!("63,360 / (3.05 × {said})"),
            "European convention for rolling circumference (memory, high)",
        ))
        .remarks(tire_remark(tire)))
}

fn road(given: &Given<'_>) -> Worked {
    let (engine, axle, gear) =
        (given.number::<Rpm>("rpm")?, given.number::<One>("axle")?, given.number::<One>("gear")?);
    let tire = given.tire("tire")?;
    let speed = road_speed(engine, axle, gear, tire.diameter);
    Ok(Outcome::default()
        .line(Line::new(
            "Road speed",
            speed.to_places(1),
            "rpm × tire / (336.13 × gear × axle)",
            format!("{} × {} / (336.13 × {} × {})", short(engine), tire_said(tire), ratio(gear), ratio(axle)),
            "exact with nothing slipping",
        ))
        .remark("A converter that is not locked slips 3 to 8 % (common practice): the real speed is that much lower.")
        .remarks(tire_remark(tire)))
}

fn falls(given: &Given<'_>) -> Worked {
    let ratios = given.numbers::<One>("ratios")?;
    if let Some(pair) = ratios.windows(2).find(|pair| pair[1] >= pair[0]) {
        let message = format!(
            "Gear ratios cannot be {} and then {}: each higher gear has the smaller ratio.",
            ratio(pair[0]),
            ratio(pair[1])
        );
        return Amiss::clash("ratios", message);
    }
    let (engine, axle, tire) = (given.number::<Rpm>("rpm")?, given.number::<One>("axle")?, given.tire("tire")?);
    let line = |(nth, shift): (usize, &Shift)| {
        Line::new(
            format!("From gear {} to {}", nth + 1, nth + 2),
            format!("{}, at {}", shift.after.to_whole(), shift.road.to_places(1)),
            "engine speed × ratio after / ratio before; the road speed stays",
            format!("{} × {} / {}", short(engine), ratio(shift.to), ratio(shift.from)),
            "gear arithmetic; a converter that flashes leaves the engine higher",
        )
    };
    let last = Final { axle, tire: tire.diameter };
    let (shifts, speeds) = (shifts(&ratios, engine, last), speeds(&ratios, engine, last));
    let row = |(nth, (gear, speed)): (usize, (&Quantity<One>, &Quantity<MilePerHour>))| {
        let falls =
            shifts.get(nth).map(|shift| [shift.after.to_whole(), shift.drop().to_whole(), shift.step().to_percent(0)]);
        let falls = falls.unwrap_or_else(|| ["no shift".to_owned(), "no shift".to_owned(), "no shift".to_owned()]);
        [vec![format!("{}, {}", nth + 1, ratio(*gear)), speed.to_places(1)], falls.to_vec()].concat()
    };
    Ok(Outcome::default()
        .lines(shifts.iter().enumerate().map(line))
        .table(Table {
            title: "Each gear at that engine speed",
            heads: vec!["Gear, ratio", "Road speed", "Falls to", "By", "Left of it"],
            rows: ratios.iter().zip(&speeds).enumerate().map(row).collect(),
            formula: "rpm × tire / (336.13 × gear × axle); engine speed × ratio after / ratio before; the difference; ratio after \
                      / ratio before",
            source: "gear arithmetic, with nothing slipping",
        })
        .remarks(tire_remark(tire)))
}

fn cruise(given: &Given<'_>) -> Worked {
    let (road, axle) = (given.number::<MilePerHour>("road")?, given.number::<One>("axle")?);
    let tire = given.tire("tire")?;
    let speed = cruise_speed(road, axle, tire.diameter);
    let last = Final { axle, tire: tire.diameter };
    let slipping =
        given.maybe::<One>("slip").map(|slip| (slip, engine_speed_slipping(road, Quantity::new(1.0), slip, last)));
    let judged = slipping.map_or(speed, |(_, slipping)| slipping);
    let slipping = slipping.map(|(slip, slipping)| {
        Line::new(
            "With that slip",
            slipping.to_whole(),
            "engine speed / (1 - slip)",
            format!("{} / (1 - {})", speed.to_whole(), ratio(slip)),
            "definition of slip",
        )
    });
    Ok(Outcome::default()
        .line(Line::new(
            "Engine speed",
            speed.to_whole(),
            "mph × axle × 336.13 / tire",
            format!("{} × {} × 336.13 / {}", short(road), ratio(axle), tire_said(tire)),
            "exact with nothing slipping, gear 1.00",
        ))
        .lines(slipping)
        .at_most("Engine speed at cruise", judged.value(), LimitId::cruise_rpm_most, given.limits())
        .remark("A converter without lockup adds 3 to 8 % (common practice).")
        .remarks(tire_remark(tire)))
}
