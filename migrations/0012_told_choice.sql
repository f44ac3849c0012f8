-- A customer's choice is tied to what the page told when it was made.

-- Empty for choices made before this was kept.
ALTER TABLE variant_choice ADD COLUMN told text NOT NULL DEFAULT '';
