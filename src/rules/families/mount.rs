use super::rules;
use crate::job::{EngineMount, MountKind};

rules! {
    /// Looks for a mount under the tail of the unit.
    ///
    /// Without one the whole unit hangs from the back of the engine. That is never done, whatever the engine's
    /// own mounts are. Source: common practice.
    "MNT-01" Stop Spec {
        accepts: true,
        title: "Unit has no mount of its own",
        shop: "Do not hang the unit from the engine alone. Put a mount of its own under the tail, firm plastic or \
               rubber.",
        customer: Some("Nothing holds up the back of your unit. It must have a mount of its own there, and not hang \
                        from the engine alone."),
        fix: "Fit a firm plastic or rubber mount.",
        basis: "Common practice.",
        when: |j, _, _| j.mount.kind.is(MountKind::None),
        fires: |j| j.mount.kind.set(MountKind::None),
        clears: |j| {
            j.mount.kind.set(MountKind::Poly);
            j.vehicle.engine_mount.set(EngineMount::Poly);
        },
    }

    /// Finds a solid mount at the rear of an engine that stands on rubber.
    ///
    /// The engine rocks, the tail is held fast, and the case between them twists until it cracks. The rear is
    /// what gets softer. Source: common practice.
    "MNT-02" Stop Spec {
        accepts: true,
        title: "Engine can rock, the unit behind it cannot",
        shop: "The engine rocks in its rubber while the solid mount holds the tail, so the case twists and cracks. \
               Fit a softer mount at the rear; firm plastic is the shop's choice.",
        customer: Some("Your engine moves in its soft mounts, but the solid mount at the back does not. The case \
                        between them would crack. It needs a softer mount at the back."),
        fix: "Fit a firm plastic mount at the rear.",
        basis: "Common practice.",
        when: |j, _, _| j.mount.kind.is(MountKind::Solid) & j.vehicle.engine_mount.is(EngineMount::Rubber),
        fires: |j| {
            j.mount.kind.set(MountKind::Solid);
            j.vehicle.engine_mount.set(EngineMount::Rubber);
        },
        clears: |j| {
            j.mount.kind.set(MountKind::Poly);
            j.vehicle.engine_mount.set(EngineMount::Solid);
        },
    }

    /// Finds a solid mount at the rear where the engine is mounted firmly, too.
    ///
    /// That is usual in tube cars, yet the case takes every twist of the frame. Source: common practice.
    "MNT-03" Caution Spec {
        accepts: true,
        title: "Rear mount is solid and strains the case",
        shop: "A solid rear mount is common in tube cars, but it loads the case. The shop's choice is firm plastic at \
               the rear, whatever holds the engine.",
        customer: Some("A solid mount at the back puts strain on the case of your unit. We advise a firm one that \
                        gives a little."),
        fix: "Fit a firm plastic mount at the rear.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.mount.kind.is(MountKind::Solid)
                & j.vehicle.engine_mount.one_of(&[EngineMount::Poly, EngineMount::Solid])
        },
        fires: |j| {
            j.mount.kind.set(MountKind::Solid);
            j.vehicle.engine_mount.set(EngineMount::Solid);
        },
        clears: |j| {
            j.mount.kind.set(MountKind::Poly);
            j.vehicle.engine_mount.set(EngineMount::Solid);
        },
    }

    /// Finds firm plastic at the rear of an engine that stands on rubber.
    ///
    /// The rear should never be the stiffer end. This pair works, but whoever looks at a cracked ear later
    /// should find it written down. Source: common practice.
    "MNT-04" Caution Spec {
        accepts: false,
        title: "Rear mount gives less than the engine mounts",
        shop: "Firm plastic at the rear works with rubber at the engine, but the rear is then the stiffer end. Write \
               it on the ticket, or fit mounts that match.",
        customer: Some("The mount at the back of your unit is firmer than those of your engine. It will work, but \
                        mounts that match are kinder to the case."),
        fix: "Match the mounts.",
        basis: "Common practice.",
        when: |j, _, _| j.mount.kind.is(MountKind::Poly) & j.vehicle.engine_mount.is(EngineMount::Rubber),
        fires: |j| {
            j.mount.kind.set(MountKind::Poly);
            j.vehicle.engine_mount.set(EngineMount::Rubber);
        },
        clears: |j| {
            j.mount.kind.set(MountKind::Rubber);
            j.vehicle.engine_mount.set(EngineMount::Rubber);
        },
    }

    /// Asks whether the crossmember met the mount by itself.
    ///
    /// A case that is drawn down with bolts stays under strain, and its tail or an ear cracks later. Source: common practice.
    "MNT-05" Stop Delivery {
        accepts: false,
        title: "Bolts pulled the unit down onto its crossmember",
        shop: "Slot or shim the crossmember until its bolts start by hand. Bolts that pull the unit into place leave \
               it under strain, and an ear or the tail of the case cracks.",
        customer: Some("The bar that carries the back of your unit does not line up. We will adjust it, so that the \
                        case is not bent."),
        fix: "Let the crossmember meet the unit: slot its holes or put shims under it.",
        basis: "Common practice.",
        when: |j, _, _| j.mount.pulled.yes(),
        fires: |j| j.mount.pulled.set(true),
        clears: |j| j.mount.pulled.set(false),
    }

    /// Looks for the ground strap between engine and body.
    ///
    /// Without it the starter draws its current through cables, through the bushings of the unit and through the
    /// cooler. Source: memory, medium.
    "MNT-06" Caution Delivery {
        accepts: false,
        title: "No strap takes the starter current to ground",
        shop: "With no strap, the current of the starter goes through cables, bushings and the cooler. Fit a heavy \
               strap from the engine to the body.",
        customer: Some("A cable between your engine and the body is missing. Without it, the starter's current runs \
                        through parts that were not made for it."),
        fix: "Fit a ground strap.",
        basis: "Memory, medium.",
        when: |j, _, _| j.vehicle.ground_strap.no(),
        fires: |j| j.vehicle.ground_strap.set(false),
        clears: |j| j.vehicle.ground_strap.set(true),
    }
}
