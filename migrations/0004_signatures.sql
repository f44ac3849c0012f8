-- What customers are shown and what they answer.

-- Only the token's SHA-256 is kept; the token itself is in the customer's link and nowhere else.
CREATE TABLE customer_link (
    shop_id    uuid        NOT NULL,
    id         uuid        NOT NULL,
    token_hash bytea       NOT NULL,
    ticket_id  uuid        NOT NULL,
    revision   integer     NOT NULL,
    purpose    text        NOT NULL,
    made_at    timestamptz NOT NULL,
    made_by    text        NOT NULL,
    expires_at timestamptz NOT NULL,
    revoked_at timestamptz,
    revoked_by text,
    CONSTRAINT customer_link_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT customer_link_token_once UNIQUE (shop_id, token_hash),
    CONSTRAINT customer_link_of_revision FOREIGN KEY (shop_id, ticket_id, revision)
        REFERENCES revision (shop_id, ticket_id, number)
);
CREATE INDEX customer_link_by_ticket ON customer_link (shop_id, ticket_id);

CREATE TABLE signature (
    shop_id   uuid        NOT NULL,
    id        uuid        NOT NULL,
    ticket_id uuid        NOT NULL,
    revision  integer     NOT NULL,
    purpose   text        NOT NULL,
    answer    text        NOT NULL,
    channel   text        NOT NULL,
    link_id   uuid,
    witness   text,
    name      text        NOT NULL,
    at        timestamptz NOT NULL,
    -- The canonical text of the whole record, its SHA-256, and the reference drawn from that.
    record    text        NOT NULL,
    digest    bytea       NOT NULL,
    reference text        NOT NULL,
    CONSTRAINT signature_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT signature_reference_once UNIQUE (shop_id, reference),
    CONSTRAINT signature_once_a_link UNIQUE (shop_id, link_id),
    CONSTRAINT signature_of_revision FOREIGN KEY (shop_id, ticket_id, revision)
        REFERENCES revision (shop_id, ticket_id, number),
    CONSTRAINT signature_by_link FOREIGN KEY (shop_id, link_id) REFERENCES customer_link (shop_id, id)
);
CREATE INDEX signature_by_ticket ON signature (shop_id, ticket_id, at);

CREATE TABLE gate_override (
    shop_id   uuid        NOT NULL,
    id        uuid        NOT NULL,
    ticket_id uuid        NOT NULL,
    revision  integer     NOT NULL,
    gate      text        NOT NULL,
    reason    text        NOT NULL,
    -- What stood when it was decided: an override holds only while that is so.
    covers    text        NOT NULL,
    stops     text[]      NOT NULL,
    staff_id  uuid        NOT NULL,
    made_by   text        NOT NULL,
    at        timestamptz NOT NULL,
    CONSTRAINT gate_override_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT gate_override_of_revision FOREIGN KEY (shop_id, ticket_id, revision)
        REFERENCES revision (shop_id, ticket_id, number),
    CONSTRAINT gate_override_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);
CREATE INDEX gate_override_by_ticket ON gate_override (shop_id, ticket_id);

GRANT SELECT, INSERT, UPDATE ON customer_link TO endplay_service;
GRANT SELECT, INSERT ON signature, gate_override TO endplay_service;
