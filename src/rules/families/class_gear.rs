use super::rules;
use crate::job::{FlexplateShield, FlexplateSpec, ShieldKind};
use crate::quantity::Quantity;
use crate::rules::examples::{raced_with_gear, raced_without_gear};
use jiff::civil::date;

rules! {
    /// Looks for a race car whose class asks for a transmission shield and that has none.
    ///
    /// The case is thin and sits beside the driver's legs; without the shield nothing holds the pieces, and the car is
    /// not let run. Fit a certified one, and read the current rulebook. Source: common practice; the shop's class
    /// table; standard SFI 4.1.
    "SFT-01" Stop Spec {
        accepts: true,
        title: "Bare case in a class that asks for a shield",
        shop: "The class table asks for a transmission shield at this time, at this speed or with this brake, and none \
               is fitted. Fit a shield or a blanket with an SFI 4.1 label in date before the car runs.",
        customer: Some("The way you plan to run, your class asks for a strong cover around the unit, called a shield. \
                        Please fit one before you run. The official and this year's book decide."),
        fix: "Fit a shield or blanket with an SFI 4.1 label in date.",
        basis: "Common practice; the shop's class table; standard SFI 4.1.",
        numbers: [need_shield],
        when: |j, d, _| d.need_shield.yes() & j.shield.kind.is(ShieldKind::None),
        fires: |j| {
            raced_without_gear(j);
            j.event.quarter_mile_s.set(Quantity::new(10.5));
            j.event.trap_mph.set(Quantity::new(128.0));
        },
        clears: |j| {
            raced_without_gear(j);
            j.event.quarter_mile_s.set(Quantity::new(12.0));
            j.event.trap_mph.set(Quantity::new(112.0));
        },
    }

    /// Holds the date on the shield's label against the day of the event.
    ///
    /// An inspector goes by the date and not by the condition, so a shield without a fault can still keep the car from
    /// running. Have it certified again, or replace it, while there is time. Source: common practice; the date is the
    /// label's, the valid years are those of the shop's table (five for SFI 4.1, memory, medium).
    "SFT-02" Stop Spec {
        accepts: true,
        title: "Shield's date has run out for this event",
        shop: "The shield's label runs out before the event. The inspector goes by the date, however good the part is. \
               Send it in to be certified again or replace it, and photograph the new label.",
        customer: Some("The label on your shield runs out before your event. An inspector goes by that date. Please \
                        have the shield checked again, or get another one."),
        fix: "Have the shield certified again, or replace it.",
        basis: "Common practice; SFI label date; valid years from the shop's table (five for 4.1: memory, medium).",
        numbers: [need_shield],
        when: |j, d, _| {
            d.need_shield.yes() & j.shield.kind.is_not(ShieldKind::None) & j.shield.expires.less_than(&j.event.date)
        },
        fires: |j| {
            raced_with_gear(j);
            j.shield.expires.set(date(2026, 11, 30));
        },
        clears: raced_with_gear,
    }

    /// Looks for a race car whose class asks for a certified flexplate and that has a plain one.
    ///
    /// A plate that bursts sits beside the driver's feet, and the car is not let run. The plate is changed while
    /// engine and unit are apart. Source: the shop's class table; standard SFI 29.1.
    "SFT-03" Stop Spec {
        accepts: true,
        title: "Flexplate has no certificate and the class asks for one",
        shop: "The class table asks for a certified flexplate at this time or speed, and this plate carries no label. \
               Fit one to SFI 29.1 while engine and unit are apart, and check the current rulebook.",
        customer: Some("The way you plan to run, your class asks for a flexplate (the thin plate between engine and \
                        unit) with a special label. Yours has none. Please change it before you run."),
        fix: "Fit a flexplate with an SFI 29.1 label in date.",
        basis: "The shop's class table; standard SFI 29.1.",
        numbers: [need_flexplate],
        when: |j, d, _| d.need_flexplate.yes() & j.flexplate.spec.is_not(FlexplateSpec::Sfi291),
        fires: |j| {
            raced_with_gear(j);
            j.flexplate.spec.set(FlexplateSpec::None);
            j.flexplate.expires.forget();
        },
        clears: raced_with_gear,
    }

    /// Holds the date on the flexplate's label against the day of the event.
    ///
    /// Found at the track, it means taking the unit out again. Changing the plate now costs only the part. Source:
    /// standard SFI 29.1; three valid years is memory, medium: read the label and the current program list.
    "SFT-04" Stop Spec {
        accepts: true,
        title: "Flexplate's date has run out for this event",
        shop: "The flexplate's label runs out before the event. It sits between engine and unit, so replace it now, \
               before the unit goes in, and photograph the label where it can be read.",
        customer: Some("The label on your flexplate (the thin plate between engine and unit) runs out before your \
                        event. It is hard to reach later, so it is best changed now."),
        fix: "Replace the flexplate with one whose label is in date.",
        basis: "Standard SFI 29.1; three valid years: memory, medium.",
        numbers: [need_flexplate],
        when: |j, d, _| {
            d.need_flexplate.yes()
                & j.flexplate.spec.is(FlexplateSpec::Sfi291)
                & j.flexplate.expires.less_than(&j.event.date)
        },
        fires: |j| {
            raced_with_gear(j);
            j.flexplate.expires.set(date(2027, 1, 1));
        },
        clears: raced_with_gear,
    }

    /// Looks for a race car whose class asks for a flexplate shield and that has none.
    ///
    /// The shield catches the pieces of a plate that bursts. It shares its room with the transmission shield, so the
    /// two are tried together on the bench. Source: common practice; standard SFI 30.1.
    "SFT-05" Stop Spec {
        accepts: true,
        title: "Class wants a shield round the flexplate",
        shop: "Where the class asks for a certified flexplate it asks for the shield around it, too, and none is \
               fitted. Fit one to SFI 30.1, and mock it up together with the transmission shield.",
        customer: Some("The way you plan to run, your class asks for a steel ring around the plate between engine and \
                        unit. Yours has none with the right label. Please fit one before you run."),
        fix: "Fit a flexplate shield with an SFI 30.1 label in date.",
        basis: "Common practice; standard SFI 30.1.",
        numbers: [need_flexplate],
        when: |j, d, _| d.need_flexplate.yes() & j.flexplate.shield.is_not(FlexplateShield::Sfi301),
        fires: |j| {
            raced_with_gear(j);
            j.flexplate.shield.set(FlexplateShield::None);
            j.flexplate.shield_expires.forget();
        },
        clears: raced_with_gear,
    }

    /// Holds the date on the flexplate shield's label against the day of the event.
    ///
    /// Out of date, it may be turned away like one that is missing. Send it in or replace it while it can still be
    /// reached. Source: standard SFI 30.1; five valid years is memory, medium: read the label and the current program
    /// list.
    "SFT-06" Stop Spec {
        accepts: true,
        title: "Flexplate shield's date has run out for this event",
        shop: "The label on the flexplate shield runs out before the event. Have it certified again or replace it \
               before the unit goes in, because it is hard to reach afterward.",
        customer: Some("The label on the steel ring around the plate behind your engine runs out before your event. \
                        Please have the ring checked again, or get another one."),
        fix: "Have the flexplate shield certified again, or replace it.",
        basis: "Standard SFI 30.1; five valid years: memory, medium.",
        numbers: [need_flexplate],
        when: |j, d, _| {
            d.need_flexplate.yes()
                & j.flexplate.shield.is(FlexplateShield::Sfi301)
                & j.flexplate.shield_expires.less_than(&j.event.date)
        },
        fires: |j| {
            raced_with_gear(j);
            j.flexplate.shield_expires.set(date(2027, 4, 1));
        },
        clears: raced_with_gear,
    }

    /// Compares the bolts the shield's maker asks for with those that can really go through it.
    ///
    /// A shield on fewer bolts than it was made for does not hold what it should hold. The missing one is most often
    /// the upper bell hole; a thread insert there gives it a place. Source: common practice.
    "SFT-07" Stop Assembly {
        accepts: false,
        title: "Shield gets fewer bolts than its maker asks for",
        shop: "One of the shield's bolts has no thread to go into, and on the rest alone it may come off. Set a thread \
               insert into that hole of the bell before the final wash, and hang the shield on every bolt its maker \
               calls for.",
        customer: Some("Your shield cannot yet be held by all the bolts it was made for. We add the place that is \
                        missing."),
        fix: "Give the bell its missing thread with an insert.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.shield.kind.is_not(ShieldKind::None) & j.shield.bolts_available.less_than(&j.shield.bolts_needed)
        },
        fires: |j| {
            raced_with_gear(j);
            j.shield.bolts_available.set(3);
        },
        clears: raced_with_gear,
    }

    /// Looks for a shield that somebody cut, bent, drilled or welded.
    ///
    /// The certificate covers the shield as it left its maker and nothing else; altered, it may not hold and does not
    /// count. If something is in its way, change the other part. Source: rulebook text: certified parts may not be
    /// altered.
    "SFT-08" Stop Intake {
        accepts: true,
        title: "Somebody has cut, drilled or welded the shield",
        shop: "This shield was cut, bent, drilled or welded, and that voids its label. Replace it, and change the \
               dipstick tube or the exhaust where the new one does not clear. Never cut a certified shield.",
        customer: Some("Somebody cut, bent or drilled your shield. Its label no longer counts after that. Please get \
                        another one."),
        fix: "Replace the shield.",
        basis: "Rulebook text: certified parts may not be altered.",
        when: |j, _, _| j.shield.kind.is_not(ShieldKind::None) & j.shield.modified.yes(),
        fires: |j| {
            raced_with_gear(j);
            j.shield.modified.set(true);
        },
        clears: raced_with_gear,
    }
}
