-- On which jobs a version could not have decided, newest first, each with the facts it waits for; not all when there
-- are many. A trial from before this knows only how many they were.

ALTER TABLE house_rule_trial ADD COLUMN open_on jsonb NOT NULL DEFAULT '[]';
