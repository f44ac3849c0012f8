-- The shop, its people and how they sign in.
-- shop_id stands first in every key, so that one shop's rows can live together on a server of many.

CREATE TABLE shop (
    shop_id     uuid        NOT NULL,
    name        text        NOT NULL,
    phone       text        NOT NULL,
    zone        text        NOT NULL,
    next_number bigint      NOT NULL,
    made_at     timestamptz NOT NULL,
    set_up_at   timestamptz,
    CONSTRAINT shop_pkey PRIMARY KEY (shop_id)
);

CREATE TABLE staff (
    shop_id       uuid        NOT NULL,
    id            uuid        NOT NULL,
    name          text        NOT NULL,
    name_key      text        NOT NULL,
    role          text        NOT NULL,
    password_hash text        NOT NULL,
    added_at      timestamptz NOT NULL,
    disabled_at   timestamptz,
    CONSTRAINT staff_pkey PRIMARY KEY (shop_id, id),
    CONSTRAINT staff_of_shop FOREIGN KEY (shop_id) REFERENCES shop (shop_id),
    -- A name stands for one person for ever: histories name people by it.
    CONSTRAINT staff_name_once UNIQUE (shop_id, name_key)
);

CREATE TABLE session (
    shop_id    uuid        NOT NULL,
    token_hash bytea       NOT NULL,
    staff_id   uuid        NOT NULL,
    device     text        NOT NULL,
    made_at    timestamptz NOT NULL,
    seen_at    timestamptz NOT NULL,
    expires_at timestamptz NOT NULL,
    CONSTRAINT session_pkey PRIMARY KEY (shop_id, token_hash),
    CONSTRAINT session_of_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);
CREATE INDEX session_by_staff ON session (shop_id, staff_id);

CREATE TABLE setup_link (
    shop_id    uuid        NOT NULL,
    token_hash bytea       NOT NULL,
    made_at    timestamptz NOT NULL,
    expires_at timestamptz NOT NULL,
    used_at    timestamptz,
    CONSTRAINT setup_link_pkey PRIMARY KEY (shop_id, token_hash),
    CONSTRAINT setup_link_of_shop FOREIGN KEY (shop_id) REFERENCES shop (shop_id)
);

-- Counted by the name that was typed, known or not, so that the answer tells nobody which names exist.
CREATE TABLE sign_in_failure (
    shop_id      uuid        NOT NULL,
    name_key     text        NOT NULL,
    failures     integer     NOT NULL,
    failed_at    timestamptz NOT NULL,
    locked_until timestamptz,
    CONSTRAINT sign_in_failure_pkey PRIMARY KEY (shop_id, name_key),
    CONSTRAINT sign_in_failure_of_shop FOREIGN KEY (shop_id) REFERENCES shop (shop_id)
);

GRANT SELECT, INSERT, UPDATE ON shop, staff, setup_link TO endplay_service;
GRANT SELECT, INSERT, UPDATE, DELETE ON session, sign_in_failure TO endplay_service;
