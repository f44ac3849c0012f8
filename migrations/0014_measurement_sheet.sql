-- The measurement sheet: what was read, with what, and what was chosen by it.

-- Instruments of the shop. Calibrating one, or taking it out of use, is a new version; the latest stands.
CREATE TABLE instrument (
    shop_id    uuid        NOT NULL,
    nth        integer     NOT NULL,
    version    integer     NOT NULL,
    name       text        NOT NULL,
    kind       text        NOT NULL,
    calibrated date,
    due        date,
    retired    boolean     NOT NULL,
    staff_id   uuid        NOT NULL,
    made_by    text        NOT NULL,
    at         timestamptz NOT NULL,
    CONSTRAINT instrument_pkey PRIMARY KEY (shop_id, nth, version),
    CONSTRAINT instrument_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- What is on the shelf of each selective set, as it was typed. The latest version stands.
CREATE TABLE selective_set (
    shop_id  uuid        NOT NULL,
    code     text        NOT NULL,
    version  integer     NOT NULL,
    parts    jsonb       NOT NULL,
    staff_id uuid        NOT NULL,
    made_by  text        NOT NULL,
    at       timestamptz NOT NULL,
    CONSTRAINT selective_set_pkey PRIMARY KEY (shop_id, code, version),
    CONSTRAINT selective_set_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- The units that the shop writes numbers in. The latest turn stands.
CREATE TABLE bench_unit (
    shop_id  uuid        NOT NULL,
    turn     integer     NOT NULL,
    habit    jsonb       NOT NULL,
    staff_id uuid        NOT NULL,
    made_by  text        NOT NULL,
    at       timestamptz NOT NULL,
    CONSTRAINT bench_unit_pkey PRIMARY KEY (shop_id, turn),
    CONSTRAINT bench_unit_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- Every time something was measured. The latest turn of a measurement stands; the earlier ones stay.
CREATE TABLE reading (
    shop_id            uuid             NOT NULL,
    ticket_id          uuid             NOT NULL,
    measurement        text             NOT NULL,
    turn               integer          NOT NULL,
    -- The revision that holds the number, when it fills a fact; the current one otherwise.
    revision           integer          NOT NULL,
    -- Each number as it was typed, with its unit and its value; then what was fitted while it was read.
    taken              jsonb            NOT NULL,
    fitted             jsonb            NOT NULL,
    number             double precision NOT NULL,
    spread             double precision NOT NULL,
    -- What was said of it on that day, and what it was held against.
    verdict            text             NOT NULL,
    held_against       text             NOT NULL,
    instrument         integer,
    instrument_version integer,
    -- Was the instrument past its calibration date on that day? So it stays.
    past_due           boolean          NOT NULL,
    staff_id           uuid             NOT NULL,
    made_by            text             NOT NULL,
    at                 timestamptz      NOT NULL,
    CONSTRAINT reading_pkey PRIMARY KEY (shop_id, ticket_id, measurement, turn),
    CONSTRAINT reading_in_revision FOREIGN KEY (shop_id, ticket_id, revision)
        REFERENCES revision (shop_id, ticket_id, number),
    CONSTRAINT reading_with_instrument FOREIGN KEY (shop_id, instrument, instrument_version)
        REFERENCES instrument (shop_id, nth, version),
    CONSTRAINT reading_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- The part that was chosen by a reading. The latest turn stands.
CREATE TABLE part_choice (
    shop_id     uuid        NOT NULL,
    ticket_id   uuid        NOT NULL,
    measurement text        NOT NULL,
    reading     integer     NOT NULL,
    turn        integer     NOT NULL,
    part        text        NOT NULL,
    leaves      text        NOT NULL,
    fits        boolean     NOT NULL,
    staff_id    uuid        NOT NULL,
    made_by     text        NOT NULL,
    at          timestamptz NOT NULL,
    CONSTRAINT part_choice_pkey PRIMARY KEY (shop_id, ticket_id, measurement, reading, turn),
    CONSTRAINT part_choice_by_reading FOREIGN KEY (shop_id, ticket_id, measurement, reading)
        REFERENCES reading (shop_id, ticket_id, measurement, turn),
    CONSTRAINT part_choice_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

GRANT SELECT, INSERT ON instrument, selective_set, bench_unit, reading, part_choice TO endplay_service;
