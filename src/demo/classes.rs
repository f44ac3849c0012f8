//! The invented class tables: what three classes of a book that never was ask for.

/// Whose rulebook it is.
pub const BODY: &str = "Tin Bridge Timing";
/// The year on its cover.
pub const YEAR: i16 = 2026;

/// Each class with what it asks for; what its book does not say is left out.
pub const CLASSES: [(&str, &str); 3] = [
    (
        "A",
        r#"{"class_table.shield_always": false, "class_table.shield_s": 10.99, "class_table.shield_mph": 135,
        "class_table.shield_with_brake": false, "class_table.stick_s": 10.99, "class_table.flexplate_s": 9.99,
        "class_table.flexplate_mph": 135, "class_table.loop_slick_s": 13.99, "class_table.loop_street_s": 11.49,
        "class_table.brake_allowed": true}"#,
    ),
    (
        "B",
        r#"{"class_table.shield_always": false, "class_table.shield_s": 9.99, "class_table.shield_mph": 135,
        "class_table.shield_with_brake": true, "class_table.stick_s": 10.99, "class_table.flexplate_s": 9.99,
        "class_table.flexplate_mph": 135, "class_table.loop_slick_s": 13.99, "class_table.loop_street_s": 11.49,
        "class_table.brake_allowed": true}"#,
    ),
    ("C", r#"{"class_table.shield_always": true, "class_table.brake_allowed": false}"#),
];
