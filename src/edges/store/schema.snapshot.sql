CREATE TABLE event (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  at TEXT NOT NULL,
  device TEXT NOT NULL,
  kind TEXT NOT NULL,
  version INTEGER NOT NULL,
  checked_version INTEGER NOT NULL,
  body TEXT NOT NULL
) STRICT;

CREATE TRIGGER event_is_not_deleted BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'the log is never edited'); END;

CREATE TRIGGER event_is_not_edited BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'the log is never edited'); END;

CREATE TABLE item_count (
  status TEXT PRIMARY KEY,
  count INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE item_row (
  rank INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  number INTEGER NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  model_id TEXT NOT NULL,
  status TEXT NOT NULL,
  lot_id TEXT,
  lot_title TEXT NOT NULL,
  seller TEXT NOT NULL,
  place TEXT NOT NULL,
  slot TEXT NOT NULL,
  cost_minor INTEGER NOT NULL,
  grade TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  changed_seq INTEGER NOT NULL
) STRICT;

CREATE TRIGGER item_row_counted AFTER INSERT ON item_row BEGIN
  INSERT INTO item_count (status, count) VALUES (new.status, 1) ON CONFLICT (status) DO UPDATE SET count = count + 1;
END;

CREATE TRIGGER item_row_recounted AFTER UPDATE OF status ON item_row BEGIN
  UPDATE item_count SET count = count - 1 WHERE status = old.status;
  INSERT INTO item_count (status, count) VALUES (new.status, 1) ON CONFLICT (status) DO UPDATE SET count = count + 1;
END;

CREATE TRIGGER item_row_uncounted AFTER DELETE ON item_row BEGIN
  UPDATE item_count SET count = count - 1 WHERE status = old.status;
END;

CREATE VIRTUAL TABLE item_word USING fts5(words, content='', contentless_delete=1, detail=none, tokenize="ascii tokenchars ':#._-%'");

CREATE TABLE meta (
  name TEXT PRIMARY KEY,
  value INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
