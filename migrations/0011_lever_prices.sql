-- What changes cost in the shop: labour and parts of a lever, and the labour rate under the name labour-hour.

-- Each time the owner set one. The latest turn of a name stands; both numbers null means: as supplied.
CREATE TABLE lever_price (
    shop_id  uuid        NOT NULL,
    name     text        NOT NULL,
    turn     integer     NOT NULL,
    minutes  integer,
    cents    bigint,
    staff_id uuid        NOT NULL,
    made_by  text        NOT NULL,
    at       timestamptz NOT NULL,
    CONSTRAINT lever_price_pkey PRIMARY KEY (shop_id, name, turn),
    CONSTRAINT lever_price_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id),
    CONSTRAINT lever_price_whole CHECK ((minutes IS NULL) = (cents IS NULL)),
    CONSTRAINT lever_price_not_negative CHECK (minutes >= 0 AND cents >= 0)
);

GRANT SELECT, INSERT ON lever_price TO endplay_service;
