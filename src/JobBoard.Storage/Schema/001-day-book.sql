-- The day book, the outcomes of commands, and what is kept beside them.
-- One file holds one shop. Instants are Unix milliseconds, ids of commands are lower-case text.

CREATE TABLE journal
(
    seq             INTEGER PRIMARY KEY,   -- 1, 2, 3 ... without gaps; being the rowid, it has no second key to be replaced by
    shop_id         TEXT    NOT NULL,
    stream          TEXT    NOT NULL,
    version         INTEGER NOT NULL,      -- 1, 2, 3 ... within the stream
    kind            TEXT    NOT NULL,
    schema          INTEGER NOT NULL,
    body            TEXT    NOT NULL,
    actor           TEXT    NOT NULL,
    occurred_at     INTEGER NOT NULL,
    recorded_at     INTEGER NOT NULL,
    command_id      TEXT    NOT NULL,
    body_salt       BLOB    NOT NULL,
    body_commitment BLOB    NOT NULL,      -- SHA-256 of salt and body; stays when the body is blanked
    prev_hash       BLOB    NOT NULL,
    entry_hash      BLOB    NOT NULL,      -- SHA-256 of prev_hash, the commitment and every other column but salt and body
    UNIQUE (stream, version)
) STRICT;

-- Which bodies were blanked, and the entry that says so.
CREATE TABLE blankings
(
    seq    INTEGER PRIMARY KEY REFERENCES journal (seq),
    by_seq INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;

CREATE INDEX blankings_by ON blankings (by_seq);

-- A replacing insert deletes without firing delete triggers unless the connection asks for it;
-- this trigger runs before any conflict is resolved, on every connection.
CREATE TRIGGER journal_next_only BEFORE INSERT ON journal
WHEN NEW.seq IS NOT (SELECT COALESCE(MAX(seq), 0) + 1 FROM journal)
  OR NEW.version IS NOT (SELECT COALESCE(MAX(version), 0) + 1 FROM journal WHERE stream = NEW.stream)
  OR NEW.shop_id IS NOT (SELECT value FROM meta WHERE key = 'shop_id')
BEGIN
    SELECT RAISE(ABORT, 'the day book is append-only: an entry takes the next number of its shop and of its stream');
END;

CREATE TRIGGER journal_no_delete BEFORE DELETE ON journal
BEGIN
    SELECT RAISE(ABORT, 'the day book is append-only: no entry is ever deleted');
END;

CREATE TRIGGER journal_no_update BEFORE UPDATE ON journal
WHEN NOT COALESCE(
        NEW.body = '' AND length(NEW.body_salt) = 0
        AND NEW.seq IS OLD.seq AND NEW.shop_id IS OLD.shop_id AND NEW.stream IS OLD.stream AND NEW.version IS OLD.version
        AND NEW.kind IS OLD.kind AND NEW.schema IS OLD.schema AND NEW.actor IS OLD.actor
        AND NEW.occurred_at IS OLD.occurred_at AND NEW.recorded_at IS OLD.recorded_at AND NEW.command_id IS OLD.command_id
        AND NEW.body_commitment IS OLD.body_commitment AND NEW.prev_hash IS OLD.prev_hash AND NEW.entry_hash IS OLD.entry_hash
        AND EXISTS (SELECT 1 FROM blankings WHERE seq = OLD.seq), 0)
BEGIN
    SELECT RAISE(ABORT, 'the day book is append-only: an entry is never changed; a correction is a new entry');
END;

CREATE TRIGGER blankings_named_only BEFORE INSERT ON blankings
WHEN EXISTS (SELECT 1 FROM blankings WHERE seq = NEW.seq OR by_seq = NEW.seq)
  OR NEW.by_seq <= NEW.seq
  OR NOT EXISTS (SELECT 1 FROM journal AS entry, json_each(entry.body, '$.blanks') AS named
                 WHERE entry.seq = NEW.by_seq AND json_valid(entry.body) AND named.value = NEW.seq)
BEGIN
    SELECT RAISE(ABORT, 'a body is blanked once, and only by a later entry whose "blanks" names it');
END;

CREATE TRIGGER blankings_no_update BEFORE UPDATE ON blankings
BEGIN
    SELECT RAISE(ABORT, 'a blanking is never changed');
END;

CREATE TRIGGER blankings_no_delete BEFORE DELETE ON blankings
BEGIN
    SELECT RAISE(ABORT, 'a blanking is never deleted');
END;

-- What was answered to each command, so that asking twice does nothing twice. Old ones are deleted.
CREATE TABLE commands
(
    command_id TEXT    NOT NULL PRIMARY KEY,
    hash       BLOB    NOT NULL,
    accepted   INTEGER NOT NULL CHECK (accepted IN (0, 1)),
    outcome    TEXT    NOT NULL,
    first_seq  INTEGER,
    last_seq   INTEGER,
    actor      TEXT    NOT NULL,
    at         INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX commands_at ON commands (at);

CREATE TRIGGER commands_once BEFORE INSERT ON commands
WHEN EXISTS (SELECT 1 FROM commands WHERE command_id = NEW.command_id)
BEGIN
    SELECT RAISE(ABORT, 'a command has one outcome');
END;

CREATE TRIGGER commands_no_update BEFORE UPDATE ON commands
BEGIN
    SELECT RAISE(ABORT, 'an outcome once given is never changed');
END;

-- Which code filled the history tables.
CREATE TABLE history_stamps
(
    name  TEXT NOT NULL PRIMARY KEY,
    stamp TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Not in the day book, and never rebuilt from it.
CREATE TABLE credentials
(
    person_id  TEXT    NOT NULL PRIMARY KEY,
    pin_hash   TEXT    NOT NULL,
    updated_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE tokens
(
    id           TEXT    NOT NULL PRIMARY KEY,
    kind         TEXT    NOT NULL,
    hash         BLOB    NOT NULL UNIQUE,   -- SHA-256 of the token; the token itself is kept nowhere
    label        TEXT    NOT NULL,
    created_at   INTEGER NOT NULL,
    expires_at   INTEGER,
    withdrawn_at INTEGER,
    last_used_at INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE devices
(
    id            TEXT    NOT NULL PRIMARY KEY,
    wrong_count   INTEGER NOT NULL,
    blocked_until INTEGER
) STRICT, WITHOUT ROWID;
