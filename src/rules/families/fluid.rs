use super::rules;
use crate::job::{ConverterOrigin, CoolerAction};
use crate::quantity::Quantity;

rules! {
    /// Compares the fluid in the unit with the one the build asks for.
    ///
    /// How the clutches grip depends on it. The maker of the frictions and the valve-body sheet decide, not what is
    /// on the shelf. Drain and fill again. Source: common practice.
    "FLD-01" Stop Delivery {
        accepts: true,
        title: "The fluid is not the one the frictions were made for",
        shop: "This is not the fluid that the friction maker and the valve-body sheet ask for, and the clutches may \
               not grip as they should. Drain it, with gloves and face shield, and fill with the right one.",
        customer: Some("Another fluid went into this unit than your sheet names. It has to come out again, and the \
                        right one goes in."),
        fix: "Drain it and fill with the right fluid.",
        basis: "Common practice.",
        when: |j, _, _| j.fluid.used.differs_from(&j.fluid.required),
        fires: |j| j.fluid.used.set("type_2".to_owned()),
        clears: |j| j.fluid.used.set("type_1".to_owned()),
    }

    /// Compares the fluid put in with what the dry unit takes, from below.
    ///
    /// A rebuilt unit that is driven short of fluid can come to harm on its first day. It is not moved until it is full.
    /// Source: common practice.
    "FLD-02" Stop Delivery {
        accepts: false,
        title: "Too little fluid is in",
        shop: "Far less fluid went in than this unit takes. Do not move the vehicle. Fill it, let it idle, and top up \
               to the mark.",
        customer: None,
        fix: "Fill, idle, and top up to the mark.",
        basis: "Common practice.",
        limits: [fill_least],
        when: |j, _, l| {
            let least = j.fluid.capacity_qt.known().map(|full| full * l.fill_least.value());
            j.fluid.shipped_dry.no() & j.fluid.added_qt.less_than(&least)
        },
        fires: |j| j.fluid.added_qt.set(Quantity::new(7.0)),
        clears: |j| j.fluid.added_qt.set(Quantity::new(10.5)),
    }

    /// Compares the fluid put in with what the dry unit takes, from above.
    ///
    /// Too high, it is beaten to foam and spits out of the vent. Draw it down to the mark. Source: common practice.
    "FLD-03" Caution Delivery {
        accepts: false,
        title: "Too much fluid is in",
        shop: "More fluid went in than this unit takes. It will foam and come out of the vent. Draw it down to the \
               mark on the stick.",
        customer: None,
        fix: "Draw the fluid down to the mark.",
        basis: "Common practice.",
        limits: [fill_most],
        when: |j, _, l| {
            let most = j.fluid.capacity_qt.known().map(|full| full * l.fill_most.value());
            j.fluid.added_qt.more_than(&most)
        },
        fires: |j| j.fluid.added_qt.set(Quantity::new(13.0)),
        clears: |j| j.fluid.added_qt.set(Quantity::new(11.0)),
    }

    /// Asks whether the old fluid is out of the converter and the cooler.
    ///
    /// It mixes with the new charge, and then nobody knows what the clutches really run in. Drain it, or write down
    /// what it was. Source: common practice.
    "FLD-04" Caution Delivery {
        accepts: false,
        title: "New fluid would mix with old from converter or cooler",
        shop: "Old fluid in the converter or the cooler mixes with the new. Drain the converter; if the customer would \
               rather not, write down which types are now in the unit.",
        customer: None,
        fix: "Drain the converter and the cooler.",
        basis: "Common practice.",
        when: |j, _, _| j.fluid.mixed.yes(),
        fires: |j| j.fluid.mixed.set(true),
        clears: |j| j.fluid.mixed.set(false),
    }

    /// Looks for the tags on a unit that leaves without fluid.
    ///
    /// Somebody will start it dry, and its pump is gone in a minute. Tags on stick and converter say so where the
    /// installer has his hands. Source: common practice.
    "FLD-05" Stop Delivery {
        accepts: true,
        title: "Nobody is warned that this unit has no fluid in it",
        shop: "Started without fluid, the pump is gone in a minute. Hang one tag on the dipstick and one on the \
               converter that say so in large letters.",
        customer: Some("Your unit leaves us with no fluid in it. Fill it before the engine is turned, or the pump \
                        inside will be ruined."),
        fix: "Tag the dipstick and the converter.",
        basis: "Common practice.",
        when: |j, _, _| j.fluid.shipped_dry.yes() & j.fluid.dry_tag.no(),
        fires: |j| {
            j.fluid.shipped_dry.set(true);
            j.fluid.added_qt.set(Quantity::new(0.0));
        },
        clears: |j| {
            j.fluid.shipped_dry.set(true);
            j.fluid.added_qt.set(Quantity::new(0.0));
            j.fluid.dry_tag.set(true);
        },
    }

    /// Looks for coolant in the unit.
    ///
    /// It makes scrap of the frictions and the converter, and of more than that. As long as the radiator
    /// leaks into the fluid, the next set goes the same way. Source: common practice (looked up).
    "FLD-06" Stop Teardown {
        accepts: true,
        title: "Water or coolant got in among the frictions",
        shop: "Replace all frictions and seals, the converter and the cooler. Find where the radiator leaks into the \
               fluid, or the new parts will go the same way.",
        customer: Some("Coolant got into your unit. It ruins the clutches, so we need new ones, a new cooler and a new \
                        converter (the part that joins engine and unit)."),
        fix: "Replace frictions, seals, converter and cooler, and mend the leak.",
        basis: "Common practice (looked up).",
        when: |j, _, _| j.case.coolant_found.yes(),
        fires: |j| {
            j.case.coolant_found.set(true);
            j.converter.origin.set(ConverterOrigin::New);
            j.cooling.action.set(CoolerAction::Replaced);
        },
        clears: |j| j.case.coolant_found.set(false),
    }
}
