-- Schema 2: what finds loads, labels, controls and vials without reading the journal through. All
-- of it says what entries say, corrected ones and corrections alike: what was ever said is found,
-- and the fold (core/acts/ACTS.md) decides what stands. `seq` is the entry from which on it is said.

-- By which rules the p_ tables were filled from the journal's beginning: a program that goes by
-- others fills them anew before it writes or relies on them. No row: they have not been.
CREATE TABLE s_index_rules (
    one   BIGINT NOT NULL PRIMARY KEY CHECK (one = 1),
    rules BIGINT NOT NULL
) /*rows*/;

-- Entries about something in a register itself (sterilizer, incubator, product, ...), and not those
-- of the loads, vials and controls that only name it.
CREATE TABLE p_own (
    subject TEXT /*bytes*/ NOT NULL,
    seq     BIGINT NOT NULL,
    PRIMARY KEY (subject, seq)
) /*clustered*/;

-- One row a load or test, as last said.
CREATE TABLE p_cycle (
    cycle      TEXT /*bytes*/ NOT NULL PRIMARY KEY,
    sterilizer TEXT /*bytes*/ NOT NULL, -- empty: not said
    lot        TEXT /*bytes*/ NOT NULL, -- empty: not said
    purpose    TEXT NOT NULL,           -- a word of ACTS.md; empty: not said
    at         BIGINT NOT NULL,         -- start as shown, ms; before one is said when it was reserved
    counter    BIGINT NOT NULL,         -- -1: not said
    vials      BIGINT NOT NULL,         -- 1: anything was said of a vial of it
    trouble    BIGINT NOT NULL,         -- 1: anything of it may have failed
    ended      BIGINT NOT NULL,         -- 1: an end was said
    disposed   BIGINT NOT NULL,         -- seq of the newest disposition; 0: none
    newest     BIGINT NOT NULL          -- seq of the newest entry about it
) /*rows*/;
CREATE INDEX p_cycle_by_time ON p_cycle (at, cycle);
CREATE INDEX p_cycle_by_sterilizer ON p_cycle (sterilizer, at, cycle);
CREATE INDEX p_cycle_open ON p_cycle (at, cycle) WHERE disposed = 0;

-- Every lot control number ever said.
CREATE TABLE p_cycle_lot (
    lot   TEXT /*bytes*/ NOT NULL,
    cycle TEXT /*bytes*/ NOT NULL,
    seq   BIGINT NOT NULL,
    PRIMARY KEY (lot, cycle)
) /*clustered*/;

-- What was said of a sterilizer's cycles that decides which of them another one's evidence can rest
-- on (core/acts/ACTS.md, 6), at each time at which that cycle was said to have begun.
CREATE TABLE p_mark (
    sterilizer TEXT /*bytes*/ NOT NULL, -- empty: not said yet
    mark       TEXT /*bytes*/ NOT NULL,
    at         BIGINT NOT NULL,         -- ms as shown; of the mark "counter" the counter
    cycle      TEXT /*bytes*/ NOT NULL,
    detail     TEXT /*bytes*/ NOT NULL,
    said       BIGINT NOT NULL,         -- seq of the entry that says it; 0: does not matter
    time       BIGINT NOT NULL,         -- ms; what of, core/store/indexes/cycle_marks.h says
    seq        BIGINT NOT NULL,
    PRIMARY KEY (sterilizer, mark, at, cycle, detail, said)
) /*clustered*/;
CREATE INDEX p_mark_by_cycle ON p_mark (cycle);

-- Readings of the physical monitors by the revision of the specification that was bound at a start
-- (sp-1@12: the newest entry about it before the start is 12), so that low ones are found.
CREATE TABLE p_reading (
    sterilizer    TEXT /*bytes*/ NOT NULL,
    specification TEXT /*bytes*/ NOT NULL,
    parameter     TEXT NOT NULL,
    unit          TEXT NOT NULL,
    thousandths   BIGINT NOT NULL,
    cycle         TEXT /*bytes*/ NOT NULL,
    at            BIGINT NOT NULL, -- each time at which the cycle was said to have begun, ms
    seq           BIGINT NOT NULL,
    PRIMARY KEY (sterilizer, specification, parameter, unit, thousandths, cycle, at)
) /*clustered*/;

-- Which revisions were bound in a sterilizer's cycles.
CREATE TABLE p_specification_used (
    sterilizer    TEXT /*bytes*/ NOT NULL,
    specification TEXT /*bytes*/ NOT NULL,
    seq           BIGINT NOT NULL,
    PRIMARY KEY (sterilizer, specification)
) /*clustered*/;

-- Labels of items in the loads in which they were said to be.
CREATE TABLE p_label (
    label TEXT /*bytes*/ NOT NULL, -- as labels are compared: without blanks, A to Z made small
    item  TEXT /*bytes*/ NOT NULL,
    cycle TEXT /*bytes*/ NOT NULL,
    said  TEXT NOT NULL,           -- as written
    seq   BIGINT NOT NULL,
    PRIMARY KEY (label, item, cycle)
) /*clustered*/;
CREATE INDEX p_label_by_cycle ON p_label (cycle, label);
CREATE INDEX p_label_by_item ON p_label (item, label);

-- Controls by what they are for: the lot of a product, or a load.
CREATE TABLE p_control (
    reason  TEXT /*bytes*/ NOT NULL, -- id of pl- or ld-
    at      BIGINT NOT NULL,         -- ms when prepared, and each time at which incubated
    control TEXT /*bytes*/ NOT NULL,
    seq     BIGINT NOT NULL,
    PRIMARY KEY (reason, at, control)
) /*clustered*/;
CREATE INDEX p_control_by_control ON p_control (control, reason);

-- Every number that a product's lot was said to have.
CREATE TABLE p_lot_number (
    number TEXT /*bytes*/ NOT NULL,
    lot    TEXT /*bytes*/ NOT NULL,
    seq    BIGINT NOT NULL,
    PRIMARY KEY (number, lot)
) /*clustered*/;
CREATE INDEX p_lot_number_by_lot ON p_lot_number (lot);

-- One row a vial that was placed or of which anything was said, as last said.
CREATE TABLE p_vial (
    vial      TEXT /*bytes*/ NOT NULL PRIMARY KEY,
    cycle     TEXT /*bytes*/ NOT NULL,
    product   TEXT NOT NULL,   -- empty: not said
    incubator TEXT NOT NULL,   -- empty: not said
    incubated BIGINT NOT NULL, -- ms; 0: not said
    finished  BIGINT NOT NULL, -- 1: read without a doubt, lost or voided, and none of that corrected
    newest    BIGINT NOT NULL  -- seq of the newest entry about it
) /*rows*/;
CREATE INDEX p_vial_open ON p_vial (incubated, vial) WHERE finished = 0;
CREATE INDEX p_vial_by_cycle ON p_vial (cycle, vial);
