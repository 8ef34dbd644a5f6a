-- Schema 4: files that entries name.

-- Files as they came, once each, by the hash of their bytes (core/acts/ACTS.md, 4, attachments).
CREATE TABLE j_attachment (
    content TEXT NOT NULL PRIMARY KEY, -- hash of bytes, hexadecimal
    size    BIGINT NOT NULL,           -- of bytes
    bytes   BLOB NOT NULL
) /*rows*/;
-- append_only: j_attachment
