//! The units the shop uses, each an empty type.

/// A unit of measure with the symbol a mechanic reads.
pub trait Unit: Copy + 'static {
    /// Printed after the number; empty for a bare ratio.
    const SYMBOL: &'static str;
}

/// Declares units: the doc, the type, the symbol.
macro_rules! units {
    ($($(#[$doc:meta])* $name:ident = $symbol:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub struct $name;
        impl Unit for $name {
            const SYMBOL: &'static str = $symbol;
        }
    )*};
}

units! {
    /// Inch, 25.4 mm exactly.
    Inch = "in";
    /// Millimetre.
    Millimetre = "mm";
    /// Bolt diameters of thread engaged.
    Diameter = "diameters";
    /// Square inch of piston area.
    SquareInch = "in²";
    /// Square millimetre of thread section.
    SquareMillimetre = "mm²";
    /// Pound-force foot of torque.
    PoundFoot = "lb-ft";
    /// Pound of force (a spring pack).
    PoundForce = "lbf";
    /// Pound of mass (a vehicle, a trailer).
    PoundMass = "lb";
    /// Kilogram.
    Kilogram = "kg";
    /// Revolutions a minute.
    Rpm = "rpm";
    /// Pounds-force a square inch, gauge.
    Psi = "psi";
    /// Pounds of mass a cubic inch of metal.
    PoundPerCubicInch = "lb/in³";
    /// Radians a second, each second.
    RadianPerSecondSquared = "rad/s²";
    /// Turns of a wheel or a cable in one mile.
    TurnPerMile = "turns/mile";
    /// Electric pulses a second.
    Hertz = "Hz";
    /// Inches of mercury of vacuum.
    InchMercury = "inHg";
    /// Degree of angle.
    Degree = "°";
    /// United States liquid quart, 57.75 in³.
    Quart = "qt";
    /// Second.
    Second = "s";
    /// Minute.
    Minute = "min";
    /// Seconds to fill one quart.
    SecondPerQuart = "s/qt";
    /// Statute mile.
    Mile = "mi";
    /// Miles an hour.
    MilePerHour = "mph";
    /// Volt.
    Volt = "V";
    /// Kilowatt.
    Kilowatt = "kW";
    /// Degree Celsius of difference.
    Celsius = "°C";
    /// Temperature on the Celsius scale, not a difference.
    AtCelsius = "°C";
    /// Newton of force.
    Newton = "N";
    /// Newton metre of torque.
    NewtonMetre = "N·m";
    /// Megapascal, one newton on a square millimetre.
    Megapascal = "MPa";
    /// Mechanical horsepower, 550 ft-lb a second.
    Horsepower = "hp";
    /// Cubic inch.
    CubicInch = "in³";
    /// Kilogram a cubic metre of fluid.
    KilogramPerCubicMetre = "kg/m³";
    /// Kilojoules to warm one kilogram by one degree.
    KilojoulePerKilogramCelsius = "kJ/kg°C";
    /// A bare ratio.
    One = "";
}
