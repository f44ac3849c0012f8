-- A reading that was taken by mistake: it stays where it is, and here stands who struck it out and why. It counts no more.
CREATE TABLE struck_reading (
    shop_id     uuid        NOT NULL,
    ticket_id   uuid        NOT NULL,
    measurement text        NOT NULL,
    turn        integer     NOT NULL,
    reason      text        NOT NULL,
    staff_id    uuid        NOT NULL,
    made_by     text        NOT NULL,
    at          timestamptz NOT NULL,
    CONSTRAINT struck_reading_pkey PRIMARY KEY (shop_id, ticket_id, measurement, turn),
    CONSTRAINT struck_reading_of_reading FOREIGN KEY (shop_id, ticket_id, measurement, turn)
        REFERENCES reading (shop_id, ticket_id, measurement, turn),
    CONSTRAINT struck_reading_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

GRANT SELECT, INSERT ON struck_reading TO endplay_service;
