CREATE TABLE event (
     seq INTEGER PRIMARY KEY,
     id TEXT NOT NULL UNIQUE,
     at TEXT NOT NULL,
     device TEXT NOT NULL,
     version INTEGER NOT NULL,
     kind TEXT NOT NULL,
     body TEXT NOT NULL
   ) STRICT;

CREATE TABLE item_row (
     rank INTEGER PRIMARY KEY AUTOINCREMENT,
     id TEXT NOT NULL UNIQUE,
     status TEXT NOT NULL,
     kind TEXT NOT NULL,
     place TEXT NOT NULL,
     model_id TEXT NOT NULL,
     row TEXT NOT NULL
   ) STRICT;

CREATE INDEX item_row_by_kind ON item_row (kind, rank DESC);

CREATE INDEX item_row_by_model ON item_row (model_id, rank DESC);

CREATE INDEX item_row_by_place ON item_row (place, rank DESC);

CREATE INDEX item_row_by_status ON item_row (status, rank DESC);

CREATE TRIGGER item_row_counted AFTER INSERT ON item_row BEGIN
     INSERT INTO status_count (status, count) VALUES (new.status, 1) ON CONFLICT (status) DO UPDATE SET count = count + 1;
   END;

CREATE TRIGGER item_row_uncounted AFTER DELETE ON item_row BEGIN
     UPDATE status_count SET count = count - 1 WHERE status = old.status;
   END;

CREATE VIRTUAL TABLE item_words USING fts5 (words, content='', contentless_delete=1, detail=none, prefix='1 2 3 4 5 6', tokenize="unicode61 remove_diacritics 2");

CREATE TABLE rows_at (one INTEGER PRIMARY KEY CHECK (one = 1), seq INTEGER NOT NULL, version INTEGER NOT NULL) STRICT;

CREATE TABLE status_count (status TEXT PRIMARY KEY, count INTEGER NOT NULL) STRICT;
