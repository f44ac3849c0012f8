-- Class tables as the shop typed them from a rulebook. A correction is a new version; no version is ever changed.
CREATE TABLE class_table (
    shop_id  uuid        NOT NULL,
    id       uuid        NOT NULL,
    version  integer     NOT NULL,
    year     smallint    NOT NULL,
    body     text        NOT NULL,
    class    text        NOT NULL,
    -- Body and class as they are compared, so that one class of one year has one table.
    name_key text        NOT NULL,
    -- Facts of the group class_table, but for the year: path and value. What the book does not say is left out.
    asks     jsonb       NOT NULL,
    offered  boolean     NOT NULL,
    staff_id uuid        NOT NULL,
    made_by  text        NOT NULL,
    made_at  timestamptz NOT NULL,
    CONSTRAINT class_table_pkey PRIMARY KEY (shop_id, id, version),
    CONSTRAINT class_table_once UNIQUE (shop_id, year, name_key, version),
    CONSTRAINT class_table_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- Each time a ticket took its class facts from a table, and the revision they came into. The latest turn stands.
CREATE TABLE class_table_use (
    shop_id   uuid        NOT NULL,
    ticket_id uuid        NOT NULL,
    turn      integer     NOT NULL,
    revision  integer     NOT NULL,
    table_id  uuid        NOT NULL,
    version   integer     NOT NULL,
    made_by   text        NOT NULL,
    at        timestamptz NOT NULL,
    CONSTRAINT class_table_use_pkey PRIMARY KEY (shop_id, ticket_id, turn),
    CONSTRAINT class_table_use_in_revision FOREIGN KEY (shop_id, ticket_id, revision)
        REFERENCES revision (shop_id, ticket_id, number),
    CONSTRAINT class_table_use_of_table FOREIGN KEY (shop_id, table_id, version)
        REFERENCES class_table (shop_id, id, version)
);

GRANT SELECT, INSERT ON class_table, class_table_use TO endplay_service;
