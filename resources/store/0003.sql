-- Schema 3: PINs.

-- Hashes of PINs (Argon2id), and the wrong tries since the last right one.
CREATE TABLE s_pin (
    staff       TEXT NOT NULL PRIMARY KEY,
    hash        TEXT NOT NULL,
    wrong_tries BIGINT NOT NULL,
    wait_until  BIGINT NOT NULL -- ms of UTC since 1970
) /*rows*/;
