-- The shop's own words on customers' papers; empty until it has written some.
ALTER TABLE shop
    ADD COLUMN teardown_terms text NOT NULL DEFAULT '',
    ADD COLUMN not_covered    text NOT NULL DEFAULT '';
