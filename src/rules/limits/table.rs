//! The table of limits.

use super::{Mark, limits};
use crate::quantity::{
    Celsius, Degree, Diameter, Inch, InchMercury, Minute, One, PoundFoot, PoundMass, Psi, Quantity, Quart, Rpm,
    SecondPerQuart, Volt,
};

limits! {
    /// How much harder than steady torque street driving hits the parts.
    shock_street "shock factor, street": Quantity<One> = 1.5, Mark::MemoryLow, 1 to 4;
    /// How much harder than steady torque street and strip driving hits the parts.
    shock_street_strip "shock factor, street and strip": Quantity<One> = 2.0, Mark::MemoryLow, 1 to 4;
    /// How much harder than steady torque drag launches hit the parts.
    shock_drag "shock factor, drag": Quantity<One> = 2.5, Mark::MemoryLow, 1 to 4;
    /// How much harder than steady torque towing hits the parts.
    shock_tow "shock factor, tow": Quantity<One> = 1.5, Mark::MemoryLow, 1 to 4;
    /// How much harder than steady torque off-road driving hits the parts.
    shock_offroad "shock factor, off-road": Quantity<One> = 2.0, Mark::MemoryLow, 1 to 4;
    /// How much harder than steady torque pulling a sled hits the parts.
    shock_pull "shock factor, pull": Quantity<One> = 2.5, Mark::MemoryLow, 1 to 4;
    /// Torque multiplication left in the converter when second gear takes hold.
    coupling "coupling factor in second": Quantity<One> = 1.1, Mark::MemoryLow, 1 to 2;
    /// What a clutch pack must hold beyond its need.
    clutch_margin "clutch margin": Quantity<One> = 1.25, Mark::ShopSetting, 1 to 2;

    /// Torque the shop lets an intermediate roller clutch on ramps carry.
    one_way_roller "one-way clutch limit, rollers": Quantity<PoundFoot> = 450, Mark::MemoryLow, 200 to 1000;
    /// Torque the shop lets 16 tilting elements carry, or any count that has no line of its own.
    one_way_sprag "one-way clutch limit, 16 elements": Quantity<PoundFoot> = 450, Mark::MemoryLow, 200 to 1000;
    /// Torque the shop lets 34 tilting elements carry.
    one_way_34 "one-way clutch limit, 34 elements": Quantity<PoundFoot> = 1500, Mark::MemoryLow, 600 to 3000;
    /// Torque the shop lets 36 tilting elements on the large hub carry.
    one_way_36 "one-way clutch limit, 36 elements": Quantity<PoundFoot> = 4000, Mark::MemoryLow, 1500 to 6000;
    /// Share of its limit above which the intermediate one-way clutch is overloaded.
    one_way_over "one-way clutch load share": Quantity<One> = 1, Mark::ShopSetting, 0.5 to 1.2;
    /// Share of its limit above which the intermediate one-way clutch must not be built.
    one_way_far_over "one-way clutch load share, highest": Quantity<One> = 1.5, Mark::ShopSetting, 1.2 to 2;

    /// Diameters of thread that must be engaged in cast aluminum.
    thread_engaged "thread engaged in aluminum": Quantity<Diameter> = 1.5, Mark::CommonPractice, 1 to 2.5;
    /// How far a thread insert may stand above the engine face of the bell; nought is flush.
    insert_proud "insert above the bell face": Quantity<Inch> = 0, Mark::Standard("ASME B18.29.1"), -0.06 to 0;
    /// How far an accessory bolt may stand above the engine face of the bell; nought is flush.
    insert_bolt_proud "bolt above the bell face": Quantity<Inch> = 0, Mark::CommonPractice, -0.06 to 0;

    /// Pump bolts that are still too few to hang a bolt-on bell from.
    bell_bolts_too_few "bell bolts that are too few": u32 = 6, Mark::CommonPractice, 6 to 7;
    /// Dowels that must locate the bell on the engine.
    dowels "dowels at the bell": u32 = 2, Mark::MemoryHigh, 2 to 2;
    /// Total runout of the bell bore, swept from the crank, above which offset dowels are wanted.
    bell_runout "bell bore runout": Quantity<Inch> = 0.010, Mark::MemoryMedium, 0.004 to 0.015;

    /// Engine torque above which the small output shaft is too weak.
    small_output_torque "torque for the small output": Quantity<PoundFoot> = 450, Mark::ShopSetting, 250 to 600;
    /// Clearance below which a slip yoke is too tight in the tail bushing.
    yoke_clear_least "yoke clearance, least": Quantity<Inch> = 0.0015, Mark::MemoryLow, 0.001 to 0.003;
    /// Clearance above which a slip yoke is loose in the tail bushing.
    yoke_clear_most "yoke clearance, most": Quantity<Inch> = 0.006, Mark::MemoryLow, 0.004 to 0.010;
    /// Length of spline that must stay engaged with the axle hanging.
    droop_engaged "spline engaged at droop": Quantity<Inch> = 2, Mark::MemoryLow, 1.5 to 4;
    /// Room that must be left before the slip yoke touches, with the axle fully up.
    bump_gap "yoke gap at full bump": Quantity<Inch> = 0.25, Mark::CommonPractice, 0.125 to 1;
    /// Whip constant of a steel tube, in inches and rpm.
    tube_steel "tube constant, steel": Quantity<One> = 4_770_000, Mark::Derived, 4_300_000 to 4_900_000;
    /// Whip constant of an aluminum tube, in inches and rpm.
    tube_aluminum "tube constant, aluminum": Quantity<One> = 4_680_000, Mark::Derived, 4_300_000 to 4_900_000;
    /// Share of its critical speed above which a driveshaft turns too close to it.
    critical_near "driveshaft share of critical speed": Quantity<One> = 0.75, Mark::CommonPractice, 0.5 to 0.8;
    /// Share of its critical speed above which a driveshaft must not be run.
    critical_at "driveshaft share of critical speed, highest": Quantity<One> = 0.9, Mark::CommonPractice, 0.8 to 0.95;
    /// Largest working angle of the front joint.
    joint_angle "joint angle": Quantity<Degree> = 3, Mark::CommonPractice, 1 to 6;
    /// Largest difference between the two joint angles.
    joint_difference "difference of joint angles": Quantity<Degree> = 1, Mark::CommonPractice, 0.25 to 2;

    /// Share of true speed that the speedometer may be off, either way.
    speedometer_error "speedometer error": Quantity<One> = 0.04, Mark::CommonPractice, 0.01 to 0.1;

    /// Longest time to fill one quart from the cooler return at hot idle.
    cooler_flow "cooler flow": Quantity<SecondPerQuart> = 20, Mark::CommonPractice, 8 to 25;
    /// Inside width of cooler line below which a hard job wants more.
    cooler_line "cooler line bore": Quantity<Inch> = 0.30, Mark::MemoryMedium, 0.25 to 0.5;
    /// Trailer weight above which both coolers are wanted.
    heavy_trailer "heavy trailer": Quantity<PoundMass> = 5000, Mark::ShopSetting, 1000 to 10000;

    /// Clearance between the pump gears and the pump face below which they score.
    pump_face_least "pump gear clearance, least": Quantity<Inch> = 0.0008, Mark::Manual("TM 9-2320-289-34"), 0.0005 to 0.0015;
    /// Clearance between the pump gears and the pump face above which pressure is lost.
    pump_face_most "pump gear clearance, most": Quantity<Inch> = 0.0035, Mark::Manual("TM 9-2320-289-34"), 0.0025 to 0.0045;

    /// Height of the pan above the ground that an off-road vehicle wants.
    pan_ground_offroad "pan above the ground, off-road": Quantity<Inch> = 9, Mark::ShopSetting, 6 to 14;
    /// Height of the pan above the ground that a road vehicle wants.
    pan_ground_road "pan above the ground, road": Quantity<Inch> = 4.5, Mark::ShopSetting, 3 to 6;

    /// End play of a planet pinion below which it binds when hot.
    pinion_play_least "pinion end play, least": Quantity<Inch> = 0.009, Mark::Manual("TM 9-2320-387-24, medium for this unit"), 0.005 to 0.012;
    /// End play of a planet pinion above which the carrier is worn.
    pinion_play_most "pinion end play, most": Quantity<Inch> = 0.024, Mark::Manual("TM 9-2320-387-24, medium for this unit"), 0.018 to 0.030;
    /// Engine torque above which a stock input shaft on a trans brake is no longer advised.
    input_shaft_torque "torque for the stock input shaft": Quantity<PoundFoot> = 550, Mark::MemoryLow, 350 to 700;
    /// Engine torque above which a stock input shaft on a trans brake must not be built.
    input_shaft_torque_most "torque for the stock input shaft, highest": Quantity<PoundFoot> = 800, Mark::MemoryLow, 700 to 1000;
    /// Vehicle weight above which a trans brake wants more than a stock input shaft.
    heavy_on_brake "heavy vehicle on a trans brake": Quantity<PoundMass> = 4500, Mark::MemoryLow, 3000 to 6000;
    /// First ratio over second ratio above which the engine drops far on the shift.
    first_step "step from first to second": Quantity<One> = 1.85, Mark::CommonPractice, 1.6 to 2.2;
    /// Engine speed at cruise above which a customer should be told of it.
    cruise_rpm_most "engine speed at cruise": Quantity<Rpm> = 3200, Mark::ShopSetting, 2400 to 4200;

    /// Clearance for each friction below which a clutch pack drags.
    pack_clear_least "pack clearance for each friction, least": Quantity<Inch> = 0.006, Mark::MemoryLow, 0.004 to 0.009;
    /// Clearance for each friction above which a clutch pack is loose.
    pack_clear_most "pack clearance for each friction, most": Quantity<Inch> = 0.020, Mark::MemoryLow, 0.012 to 0.025;
    /// Engine torque above which the light-duty relative is too weak inside.
    light_duty_torque "torque for the light-duty relative": Quantity<PoundFoot> = 400, Mark::ShopSetting, 250 to 500;
    /// Shortest time that frictions soak before they are stacked.
    friction_soak "soak of the frictions": Quantity<Minute> = 30, Mark::CommonPractice, 10 to 120;
    /// Release springs that a direct drum must have to be turned fast.
    direct_springs "release springs in the direct drum": u32 = 14, Mark::Manual("TM 9-2320-280-34"), 12 to 16;
    /// Engine speed above which the direct drum wants its full count of release springs.
    direct_springs_speed "speed that wants all the springs": Quantity<Rpm> = 6000, Mark::MemoryLow, 4500 to 7500;
    /// Sealing rings that the center support must carry when the direct clutch is fed in two areas.
    support_rings "support rings for a split feed": u32 = 4, Mark::Manual("TM 9-2320-289-34"), 4 to 4;

    /// Converter gap below which the pump would be crushed.
    gap_crushing "converter gap, crushing": Quantity<Inch> = 0.0625, Mark::CommonPractice, 0.04 to 0.09;
    /// Converter gap below which it is tight and wants a second look.
    gap_tight "converter gap, tight": Quantity<Inch> = 0.125, Mark::LookedUp, 0.1 to 0.15;
    /// Converter gap above which spacers are wanted.
    gap_wide "converter gap, wide": Quantity<Inch> = 0.1875, Mark::LookedUp, 0.16 to 0.21;
    /// Converter gap above which the pump tangs are only part engaged.
    gap_too_wide "converter gap, too wide": Quantity<Inch> = 0.25, Mark::CommonPractice, 0.22 to 0.28;
    /// Length of converter pilot that must be held in the crank.
    pilot_held "pilot held in the crank": Quantity<Inch> = 0.125, Mark::LookedUp, 0.1 to 0.25;
    /// How far the stall must stay below the engine speed at cruise on the road.
    stall_under_cruise "stall below cruise": Quantity<Rpm> = 200, Mark::ShopSetting, 0 to 800;
    /// Stall speed above which a converter heats too much for towing.
    tow_stall "stall for towing": Quantity<Rpm> = 2300, Mark::CommonPractice, 1600 to 3000;
    /// How far the stall may lie below peak torque before a launch off the brake is soft.
    soft_launch "stall below peak torque": Quantity<Rpm> = 500, Mark::CommonPractice, 100 to 1500;
    /// Share by which the stall may differ from its label before it is worth saying.
    stall_off_label "stall against its label": Quantity<One> = 0.15, Mark::CommonPractice, 0.05 to 0.3;
    /// Engine torque above which a plain converter must not go on a trans brake.
    plain_cover_torque "torque for a plain converter cover": Quantity<PoundFoot> = 500, Mark::MemoryMedium, 300 to 700;
    /// End play inside the converter above which it is worn out.
    converter_end_play "converter end play": Quantity<Inch> = 0.024, Mark::LookedUp, 0.015 to 0.03;
    /// Fluid that must be in the converter before it goes on.
    converter_prefill "fluid in the converter first": Quantity<Quart> = 1, Mark::CommonPractice, 0.5 to 3;
    /// Total runout of the flexplate at the converter bolt circle.
    flexplate_runout "flexplate runout": Quantity<Inch> = 0.010, Mark::ShopSetting, 0.004 to 0.015;
    /// Degrees that one hold on the trans brake may warm the converter.
    brake_heat "warming in one brake hold": Quantity<Celsius> = 60, Mark::ShopSetting, 20 to 100;
    /// End play of the crankshaft above which its thrust bearing is suspect; the engine maker's figure decides.
    crank_end_play "crank end play": Quantity<Inch> = 0.010, Mark::MemoryMedium, 0.006 to 0.015;

    /// Distance behind the center of the front joint beyond which a driveshaft loop sits too far back.
    loop_distance "driveshaft loop behind the joint": Quantity<Inch> = 6, Mark::LookedUp, 3 to 8;
    /// Room that must be left between the shield and exhaust, floor or solenoid.
    shield_gap "gap around the shield": Quantity<Inch> = 0.25, Mark::ShopSetting, 0.125 to 1;

    /// Front end play below which the unit binds when it is hot.
    front_play_least "front end play, least": Quantity<Inch> = 0.003, Mark::MemoryHigh, 0.002 to 0.010;
    /// Front end play above which the drums walk into each other.
    front_play_most "front end play, most": Quantity<Inch> = 0.024, Mark::MemoryHigh, 0.015 to 0.028;
    /// Rear end play below which a unit must not be closed.
    rear_play_least "rear end play, least": Quantity<Inch> = 0.005, Mark::Manual("TM 9-2320-280-34, close relative"), 0.003 to 0.007;
    /// Rear end play above which a unit must not be closed.
    rear_play_most "rear end play, most": Quantity<Inch> = 0.025, Mark::Manual("TM 9-2320-280-34, close relative"), 0.019 to 0.028;
    /// Rear end play below which a unit is tighter than the shop builds it.
    rear_play_tight "rear end play, tight": Quantity<Inch> = 0.007, Mark::MemoryMedium, 0.007 to 0.010;
    /// Rear end play above which a unit is looser than the shop builds it.
    rear_play_loose "rear end play, loose": Quantity<Inch> = 0.019, Mark::MemoryMedium, 0.012 to 0.019;
    /// Line pressure in drive at hot idle that automatic shifts need at least.
    auto_line_least "idle pressure for automatic shifts, least": Quantity<Psi> = 55, Mark::MemoryLow, 40 to 70;
    /// Line pressure in drive at hot idle above which automatic shifts have something wrong.
    auto_line_most "idle pressure for automatic shifts, most": Quantity<Psi> = 95, Mark::MemoryLow, 80 to 130;
    /// Line pressure at hot idle that a valve body shifted by hand needs at least.
    manual_line_least "idle pressure for manual shifts, least": Quantity<Psi> = 140, Mark::MemoryLow, 100 to 180;
    /// Line pressure at hot idle above which a valve body shifted by hand strains pump and cooler.
    manual_line_most "idle pressure for manual shifts, most": Quantity<Psi> = 230, Mark::MemoryLow, 190 to 270;

    /// How far the total may go past the signed estimate, as a multiple of it.
    estimate_margin "total over the signed estimate": Quantity<One> = 1.1, Mark::ShopSetting, 1 to 1.25;

    /// Room that an outside brake solenoid must have to floor, shield and exhaust.
    solenoid_gap "gap around the outside solenoid": Quantity<Inch> = 0.5, Mark::MemoryLow, 0.25 to 2;
    /// Voltage that must stand at the brake solenoid while it is applied.
    brake_volts "voltage at the brake solenoid": Quantity<Volt> = 11.5, Mark::MemoryLow, 11 to 12.5;
    /// Vacuum at hot idle in gear below which a modulator works poorly.
    idle_vacuum "idle vacuum": Quantity<InchMercury> = 13, Mark::MemoryMedium, 10 to 16;
    /// How far out of flat the case face may be under a valve body without gaskets.
    face_flat "valve-body face out of flat": Quantity<Inch> = 0.003, Mark::MemoryLow, 0.001 to 0.005;

    /// Share of what the dry unit takes that must be in it.
    fill_least "fluid put in, least share": Quantity<One> = 0.85, Mark::CommonPractice, 0.8 to 0.95;
    /// Share of what the dry unit takes above which it is too full.
    fill_most "fluid put in, highest share": Quantity<One> = 1.10, Mark::CommonPractice, 1.02 to 1.2;

    /// Front end play that the choice of a washer aims at.
    front_play_aim "front end play, aim": Quantity<Inch> = 0.012, Mark::MemoryHigh, 0.006 to 0.020;
    /// Rear end play that the choice of a washer aims at.
    rear_play_aim "rear end play, aim": Quantity<Inch> = 0.010, Mark::MemoryMedium, 0.007 to 0.016;
    /// Clearance for each friction that the choice of steels aims at.
    pack_clear_aim "pack clearance for each friction, aim": Quantity<Inch> = 0.010, Mark::MemoryLow, 0.007 to 0.015;
    /// How far a needle-bearing kit may stand above or below the pair of washers it replaces.
    kit_stack "needle-bearing kit against the old pair": Quantity<Inch> = 0.002, Mark::LookedUp, 0.001 to 0.004;
    /// Clearance of the converter hub in the pump bushing below which it seizes.
    pump_bushing_least "pump bushing clearance, least": Quantity<Inch> = 0.002, Mark::MemoryLow, 0.001 to 0.003;
    /// Clearance of the converter hub in the pump bushing above which the seal leaks.
    pump_bushing_most "pump bushing clearance, most": Quantity<Inch> = 0.005, Mark::MemoryLow, 0.004 to 0.008;
    /// Clearance that the tail bushing is honed to.
    yoke_clear_aim "yoke clearance, aim": Quantity<Inch> = 0.003, Mark::MemoryLow, 0.002 to 0.005;
    /// Sweep of the bore for the pump that a careful job stays below.
    bell_sweep_wanted "sweep of the pump bore, wanted": Quantity<Inch> = 0.005, Mark::MemoryMedium, 0.002 to 0.010;
    /// Converter gap that spacers are chosen for, 5/32 in.
    gap_aim "converter gap, aim": Quantity<Inch> = 0.15625, Mark::LookedUp, 0.125 to 0.1875;
    /// Free travel of the slip yoke below which it sits too deep at ride height.
    ride_free_least "slip left at ride height, least": Quantity<Inch> = 0.75, Mark::MemoryLow, 0.5 to 1;
    /// Free travel of the slip yoke above which it is pulled too far out at ride height.
    ride_free_most "slip left at ride height, most": Quantity<Inch> = 1, Mark::MemoryLow, 0.75 to 1.5;

    /// Line pressure of automatic shifts at full throttle that forward ranges need at least.
    auto_full_least "full-throttle pressure for automatic shifts, least": Quantity<Psi> = 140, Mark::MemoryLow, 120 to 160;
    /// Line pressure of automatic shifts at full throttle above which something is stuck.
    auto_full_most "full-throttle pressure for automatic shifts, most": Quantity<Psi> = 170, Mark::MemoryLow, 160 to 220;
    /// Line pressure of automatic shifts with second or low held, at least.
    auto_held_least "held-range pressure for automatic shifts, least": Quantity<Psi> = 130, Mark::MemoryLow, 110 to 150;
    /// Line pressure of automatic shifts with second or low held, at most.
    auto_held_most "held-range pressure for automatic shifts, most": Quantity<Psi> = 170, Mark::MemoryLow, 160 to 220;
    /// Line pressure of automatic shifts in reverse at hot idle, at least.
    auto_reverse_least "reverse idle pressure for automatic shifts, least": Quantity<Psi> = 95, Mark::MemoryLow, 70 to 120;
    /// Line pressure of automatic shifts in reverse at hot idle, at most.
    auto_reverse_most "reverse idle pressure for automatic shifts, most": Quantity<Psi> = 150, Mark::MemoryLow, 130 to 180;
    /// Line pressure of automatic shifts in reverse at full throttle, at least.
    auto_reverse_full_least "reverse full-throttle pressure, least": Quantity<Psi> = 200, Mark::MemoryLow, 180 to 230;
    /// Line pressure of automatic shifts in reverse at full throttle, at most.
    auto_reverse_full_most "reverse full-throttle pressure, most": Quantity<Psi> = 270, Mark::MemoryLow, 240 to 290;

    /// Torque of the bolts that hold the pump to the case.
    torque_pump "torque, pump to case": Quantity<PoundFoot> = 18, Mark::MemoryMedium, 14 to 22;
    /// Torque of the bolt that locks the center support.
    torque_support "torque, center-support bolt": Quantity<PoundFoot> = 23, Mark::MemoryMedium, 18 to 32;
    /// Torque of the bolts that hold the valve body.
    torque_valve_body "torque, valve body": Quantity<PoundFoot> = 8, Mark::MemoryMedium, 6 to 11;
    /// Torque of the pan bolts; the feel of the hand matters more.
    torque_pan "torque, pan": Quantity<PoundFoot> = 12, Mark::MemoryMedium, 8 to 14;
    /// Torque of the bolts that hold the rear housing.
    torque_tail "torque, rear housing": Quantity<PoundFoot> = 23, Mark::MemoryMedium, 18 to 30;
    /// Torque of the bolt that clamps the modulator.
    torque_modulator "torque, modulator clamp": Quantity<PoundFoot> = 19, Mark::MemoryMedium, 15 to 22;
    /// Torque of the bolts that hold the governor cover.
    torque_governor "torque, governor cover": Quantity<PoundFoot> = 18, Mark::MemoryMedium, 14 to 22;
    /// Torque of the bolts between converter and flexplate.
    torque_converter "torque, converter to flexplate": Quantity<PoundFoot> = 35, Mark::MemoryMedium, 28 to 45;
    /// Torque of the bolts between bell and engine.
    torque_bell "torque, bell to engine": Quantity<PoundFoot> = 35, Mark::MemoryMedium, 28 to 45;
    /// Share by which a bolt's torque may be off its figure, either way.
    torque_off "torque against its figure": Quantity<One> = 0.1, Mark::ShopSetting, 0.03 to 0.2;
}
