-- Variants of a job: what it could be instead, kept for the customer to choose from.

-- Every version is a row; the latest of a variant stands, unless it says that the variant is withdrawn.
CREATE TABLE variant (
    shop_id   uuid        NOT NULL,
    ticket_id uuid        NOT NULL,
    nth       integer     NOT NULL,
    version   integer     NOT NULL,
    -- The revision it was made from.
    revision  integer     NOT NULL,
    name      text        NOT NULL,
    edit      jsonb       NOT NULL,
    minutes   integer,
    withdrawn boolean     NOT NULL,
    staff_id  uuid        NOT NULL,
    made_by   text        NOT NULL,
    at        timestamptz NOT NULL,
    CONSTRAINT variant_pkey PRIMARY KEY (shop_id, ticket_id, nth, version),
    CONSTRAINT variant_of_revision FOREIGN KEY (shop_id, ticket_id, revision)
        REFERENCES revision (shop_id, ticket_id, number),
    CONSTRAINT variant_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- What a customer chose: once a link.
CREATE TABLE variant_choice (
    shop_id   uuid        NOT NULL,
    link_id   uuid        NOT NULL,
    ticket_id uuid        NOT NULL,
    nth       integer     NOT NULL,
    version   integer     NOT NULL,
    name      text        NOT NULL,
    at        timestamptz NOT NULL,
    CONSTRAINT variant_choice_pkey PRIMARY KEY (shop_id, link_id),
    CONSTRAINT variant_choice_by_link FOREIGN KEY (shop_id, link_id) REFERENCES customer_link (shop_id, id),
    CONSTRAINT variant_choice_of_variant FOREIGN KEY (shop_id, ticket_id, nth, version)
        REFERENCES variant (shop_id, ticket_id, nth, version)
);
CREATE INDEX variant_choice_by_ticket ON variant_choice (shop_id, ticket_id);

GRANT SELECT, INSERT ON variant, variant_choice TO endplay_service;
