-- Schema 1. README.md beside it says how these files are read.

-- Which schemas this database has been brought to; the greatest is what it has.
CREATE TABLE s_schema (
    version    BIGINT NOT NULL PRIMARY KEY,
    applied_at BIGINT NOT NULL -- ms of UTC since 1970
) /*rows*/;

-- The journal: core/journal/FORMAT.md.
CREATE TABLE j_entry (
    seq   BIGINT NOT NULL PRIMARY KEY,
    hash  TEXT NOT NULL, -- of bytes, hexadecimal
    kind  TEXT NOT NULL, -- as in bytes
    bytes TEXT NOT NULL
) /*rows*/;
-- append_only: j_entry

-- Seals, in the order in which they were made.
CREATE TABLE j_seal (
    number BIGINT NOT NULL PRIMARY KEY,
    line   TEXT NOT NULL
) /*rows*/;
-- append_only: j_seal

-- Every lot control number ever given, so that none is given twice.
CREATE TABLE j_lot (
    sterilizer TEXT NOT NULL,
    day        BIGINT NOT NULL, -- local date, days since 1970-01-01
    sequence   BIGINT NOT NULL,
    PRIMARY KEY (sterilizer, day, sequence)
) /*clustered*/;
-- append_only: j_lot

-- The newest entry; a second witness beside j_entry, and what writers begin with.
CREATE TABLE p_head (
    one  BIGINT NOT NULL PRIMARY KEY CHECK (one = 1),
    seq  BIGINT NOT NULL,
    hash TEXT NOT NULL
) /*rows*/;

-- What each entry is about, in the entry's order.
CREATE TABLE p_subject (
    seq     BIGINT NOT NULL,
    ordinal BIGINT NOT NULL, -- from 0
    subject TEXT NOT NULL,
    PRIMARY KEY (seq, ordinal)
) /*clustered*/;
CREATE INDEX p_subject_by_subject ON p_subject (subject, seq);

-- After a restore: numbers up to floor may stand on labels that the backup does not know.
CREATE TABLE s_lot_floor (
    day   BIGINT NOT NULL PRIMARY KEY, -- as in j_lot
    floor BIGINT NOT NULL
) /*rows*/;
