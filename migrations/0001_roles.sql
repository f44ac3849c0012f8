-- The role of the daily work may use what the owner makes here, and make nothing itself.
REVOKE ALL ON SCHEMA public FROM PUBLIC;
GRANT USAGE ON SCHEMA public TO endplay_service;
