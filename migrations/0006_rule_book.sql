-- The shop's own rule book.

-- Each time the owner moved a limit. The latest turn of a name stands; a number that is null means: as supplied.
CREATE TABLE limit_change (
    shop_id  uuid             NOT NULL,
    name     text             NOT NULL,
    turn     integer          NOT NULL,
    number   double precision,
    reason   text             NOT NULL,
    staff_id uuid             NOT NULL,
    made_by  text             NOT NULL,
    at       timestamptz      NOT NULL,
    CONSTRAINT limit_change_pkey PRIMARY KEY (shop_id, name, turn),
    CONSTRAINT limit_change_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

GRANT SELECT, INSERT ON limit_change TO endplay_service;
