-- Customers, vehicles, tickets and their history.

CREATE TABLE customer (
    shop_id uuid NOT NULL,
    id      uuid NOT NULL,
    name    text NOT NULL,
    phone   text NOT NULL,
    email   text NOT NULL,
    CONSTRAINT customer_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT customer_of_shop FOREIGN KEY (shop_id) REFERENCES shop (shop_id)
);

CREATE TABLE vehicle (
    shop_id     uuid NOT NULL,
    id          uuid NOT NULL,
    customer_id uuid NOT NULL,
    words       text NOT NULL,
    plate       text NOT NULL,
    CONSTRAINT vehicle_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT vehicle_of_customer FOREIGN KEY (shop_id, customer_id) REFERENCES customer (shop_id, id)
);
CREATE INDEX vehicle_by_customer ON vehicle (shop_id, customer_id);

-- What stands now; everything it was before is in revision and event.
CREATE TABLE ticket (
    shop_id       uuid        NOT NULL,
    id            uuid        NOT NULL,
    number        bigint      NOT NULL,
    customer_id   uuid        NOT NULL,
    vehicle_id    uuid        NOT NULL,
    comeback_of   uuid,
    stage         text        NOT NULL,
    waits_for     text        NOT NULL,
    promised      date,
    revision      integer     NOT NULL,
    -- Digest of what a signature on the current revision would cover.
    covers        text        NOT NULL,
    open_stops    integer     NOT NULL,
    open_cautions integer     NOT NULL,
    open_questions integer    NOT NULL,
    -- The customer's latest answers; the papers themselves are in signature.
    intake_answer text,
    build_answer  text,
    build_covers  text,
    last_seq      integer     NOT NULL,
    opened_at     timestamptz NOT NULL,
    changed_at    timestamptz NOT NULL,
    CONSTRAINT ticket_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT ticket_number_once UNIQUE (shop_id, number),
    CONSTRAINT ticket_of_customer FOREIGN KEY (shop_id, customer_id) REFERENCES customer (shop_id, id),
    CONSTRAINT ticket_of_vehicle FOREIGN KEY (shop_id, vehicle_id) REFERENCES vehicle (shop_id, id),
    CONSTRAINT ticket_comes_back FOREIGN KEY (shop_id, comeback_of) REFERENCES ticket (shop_id, id)
);
CREATE INDEX ticket_board ON ticket (shop_id, promised, number) WHERE stage NOT IN ('closed', 'declined');
CREATE INDEX ticket_by_vehicle ON ticket (shop_id, vehicle_id);
CREATE INDEX ticket_by_customer ON ticket (shop_id, customer_id);

-- The words a ticket is found by, apart from the ticket's own row: a stage change must not touch an index of words.
-- kind: name (one word of the customer's name), phone (digits backwards, so that the last four find it), plate.
CREATE TABLE ticket_search (
    shop_id   uuid             NOT NULL,
    kind      text             NOT NULL,
    term      text COLLATE "C" NOT NULL,
    ticket_id uuid             NOT NULL,
    CONSTRAINT ticket_search_pkey PRIMARY KEY (shop_id, kind, term, ticket_id),
    CONSTRAINT ticket_search_of_ticket FOREIGN KEY (shop_id, ticket_id) REFERENCES ticket (shop_id, id)
);
CREATE INDEX ticket_search_by_ticket ON ticket_search (shop_id, ticket_id);

CREATE TABLE revision (
    shop_id     uuid        NOT NULL,
    ticket_id   uuid        NOT NULL,
    number      integer     NOT NULL,
    made_at     timestamptz NOT NULL,
    staff_id    uuid        NOT NULL,
    made_by     text        NOT NULL,
    facts       jsonb       NOT NULL,
    words       jsonb       NOT NULL,
    price       jsonb,
    price_cents bigint,
    -- What the rules said when it was made.
    judgement   jsonb       NOT NULL,
    covers      text        NOT NULL,
    CONSTRAINT revision_pkey PRIMARY KEY (shop_id, ticket_id, number),
    CONSTRAINT revision_of_ticket FOREIGN KEY (shop_id, ticket_id) REFERENCES ticket (shop_id, id),
    CONSTRAINT revision_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- Everything that happened. The id is the key the form was sent with, so that nothing can happen twice.
CREATE TABLE event (
    shop_id   uuid        NOT NULL,
    id        uuid        NOT NULL,
    ticket_id uuid,
    seq       integer,
    at        timestamptz NOT NULL,
    staff_id  uuid,
    by_name   text        NOT NULL,
    device    text        NOT NULL,
    happened  jsonb       NOT NULL,
    CONSTRAINT event_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT event_in_turn UNIQUE (shop_id, ticket_id, seq),
    CONSTRAINT event_of_shop FOREIGN KEY (shop_id) REFERENCES shop (shop_id),
    CONSTRAINT event_of_ticket FOREIGN KEY (shop_id, ticket_id) REFERENCES ticket (shop_id, id),
    CONSTRAINT event_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id),
    CONSTRAINT event_has_a_turn CHECK ((ticket_id IS NULL) = (seq IS NULL))
);

CREATE TABLE outbox (
    shop_id   uuid        NOT NULL,
    event_id  uuid        NOT NULL,
    ticket_id uuid,
    at        timestamptz NOT NULL,
    CONSTRAINT outbox_pkey PRIMARY KEY (shop_id, event_id),
    CONSTRAINT outbox_of_event FOREIGN KEY (shop_id, event_id) REFERENCES event (shop_id, id)
);

-- What was answered to each key a form was ever sent with; kept for ever.
CREATE TABLE idempotency (
    shop_id uuid        NOT NULL,
    key     uuid        NOT NULL,
    payload bytea       NOT NULL,
    answer  jsonb       NOT NULL,
    at      timestamptz NOT NULL,
    CONSTRAINT idempotency_pkey PRIMARY KEY (shop_id, key),
    CONSTRAINT idempotency_of_shop FOREIGN KEY (shop_id) REFERENCES shop (shop_id)
);

GRANT SELECT, INSERT, UPDATE ON customer, vehicle, ticket TO endplay_service;
GRANT SELECT, INSERT, DELETE ON ticket_search, outbox TO endplay_service;
-- History: written once, read for ever.
GRANT SELECT, INSERT ON revision, event, idempotency TO endplay_service;
