-- The steps of the work.

-- What was done on a job, in the order it was done. A step is taken back by another line, never by taking one out.
CREATE TABLE step_log (
    shop_id   uuid        NOT NULL,
    ticket_id uuid        NOT NULL,
    place     integer     NOT NULL,
    step      text        NOT NULL,
    act       text        NOT NULL,
    initials  text        NOT NULL,
    -- What was read, as it was typed: path of the fact to text.
    typed     jsonb       NOT NULL,
    reason    text        NOT NULL,
    -- The fact of order that this place is, when it is one.
    fills     text,
    staff_id  uuid        NOT NULL,
    made_by   text        NOT NULL,
    at        timestamptz NOT NULL,
    CONSTRAINT step_log_pkey PRIMARY KEY (shop_id, ticket_id, place),
    CONSTRAINT step_log_of_ticket FOREIGN KEY (shop_id, ticket_id) REFERENCES ticket (shop_id, id),
    CONSTRAINT step_log_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- The steps that the shop added to the job by hand.
ALTER TABLE revision ADD COLUMN added text[] NOT NULL DEFAULT '{}';

GRANT SELECT, INSERT ON step_log TO endplay_service;
