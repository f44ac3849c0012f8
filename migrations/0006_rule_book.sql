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

-- Which rules have ever fired on which tickets, set aside or not.
CREATE TABLE rule_fired (
    shop_id   uuid NOT NULL,
    code      text NOT NULL,
    ticket_id uuid NOT NULL,
    CONSTRAINT rule_fired_pkey PRIMARY KEY (shop_id, code, ticket_id),
    CONSTRAINT rule_fired_on_ticket FOREIGN KEY (shop_id, ticket_id) REFERENCES ticket (shop_id, id)
);
INSERT INTO rule_fired (shop_id, code, ticket_id)
SELECT DISTINCT shop_id, found ->> 'code', ticket_id
FROM revision CROSS JOIN LATERAL jsonb_array_elements(judgement -> 'findings') AS found;

GRANT SELECT, INSERT ON limit_change, rule_fired TO endplay_service;
