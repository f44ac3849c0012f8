-- Rules of the shop's own. Every version is kept; which one is in force is the latest turn of the switch.

CREATE TABLE house_rule (
    shop_id          uuid        NOT NULL,
    nth              integer     NOT NULL,
    version          integer     NOT NULL,
    severity         text        NOT NULL,
    due              text        NOT NULL,
    customer_accepts boolean     NOT NULL,
    title            text        NOT NULL,
    told_shop        text        NOT NULL,
    told_customer    text        NOT NULL,
    fix              text        NOT NULL,
    condition        text        NOT NULL,
    staff_id         uuid        NOT NULL,
    made_by          text        NOT NULL,
    at               timestamptz NOT NULL,
    CONSTRAINT house_rule_pkey PRIMARY KEY (shop_id, nth, version),
    CONSTRAINT house_rule_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

-- What a version would have said of the jobs there were.
CREATE TABLE house_rule_trial (
    shop_id  uuid        NOT NULL,
    nth      integer     NOT NULL,
    version  integer     NOT NULL,
    turn     integer     NOT NULL,
    jobs     integer     NOT NULL,
    fired    integer     NOT NULL,
    open     integer     NOT NULL,
    -- Were those all the jobs of the shop?
    whole    boolean     NOT NULL,
    -- Numbers of jobs on which it would have fired, newest first; not all when there are many.
    on_jobs  bigint[]    NOT NULL,
    staff_id uuid        NOT NULL,
    made_by  text        NOT NULL,
    at       timestamptz NOT NULL,
    CONSTRAINT house_rule_trial_pkey PRIMARY KEY (shop_id, nth, version, turn),
    CONSTRAINT house_rule_trial_of_rule FOREIGN KEY (shop_id, nth, version) REFERENCES house_rule (shop_id, nth, version),
    CONSTRAINT house_rule_trial_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

CREATE TABLE house_rule_switch (
    shop_id  uuid        NOT NULL,
    nth      integer     NOT NULL,
    turn     integer     NOT NULL,
    version  integer     NOT NULL,
    in_force boolean     NOT NULL,
    staff_id uuid        NOT NULL,
    made_by  text        NOT NULL,
    at       timestamptz NOT NULL,
    CONSTRAINT house_rule_switch_pkey PRIMARY KEY (shop_id, nth, turn),
    CONSTRAINT house_rule_switch_of_rule FOREIGN KEY (shop_id, nth, version) REFERENCES house_rule (shop_id, nth, version),
    CONSTRAINT house_rule_switch_by_staff FOREIGN KEY (shop_id, staff_id) REFERENCES staff (shop_id, id)
);

GRANT SELECT, INSERT ON house_rule, house_rule_trial, house_rule_switch TO endplay_service;
