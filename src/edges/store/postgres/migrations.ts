/**
 * Every step of the schema on PostgreSQL, in order; the nth leads to schema n. As in the embedded store a step is never changed once it has
 * shipped, and it only adds. Texts that are compared or put in order have the collation "C": by code point, as the embedded store does it.
 * `event_subject` finds the events about an item; `item_count` follows `item_row` a statement at a time, so that a row counted in a large change
 * costs no version of its own. More is known of `words` than of other columns, so that a rare one is known for rare: with the usual statistics a stock
 * number was looked for along the whole list of a million items.
 */
export const MIGRATIONS: readonly string[] = [
  `
CREATE TABLE event (
  seq bigint PRIMARY KEY,
  id text COLLATE "C" NOT NULL UNIQUE,
  at text NOT NULL,
  device text NOT NULL,
  kind text NOT NULL,
  version integer NOT NULL,
  checked_version integer NOT NULL,
  body text NOT NULL
);

CREATE FUNCTION log_is_never_edited() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the log is never edited';
END $$;
CREATE TRIGGER event_is_not_edited BEFORE UPDATE OR DELETE OR TRUNCATE ON event
  FOR EACH STATEMENT EXECUTE FUNCTION log_is_never_edited();

CREATE TABLE event_subject (
  item_id text COLLATE "C" NOT NULL,
  seq bigint NOT NULL,
  PRIMARY KEY (item_id, seq)
);
CREATE INDEX event_subject_of_event ON event_subject (seq);

CREATE TABLE meta (
  name text PRIMARY KEY,
  value bigint NOT NULL
);
INSERT INTO meta (name, value) VALUES ('rows_seq', 0), ('rows_version', 0);

CREATE TABLE item_row (
  id text COLLATE "C" PRIMARY KEY,
  number bigint NOT NULL,
  name text NOT NULL,
  kind text COLLATE "C" NOT NULL,
  model_id text COLLATE "C" NOT NULL,
  status text COLLATE "C" NOT NULL,
  lot_id text,
  lot_title text NOT NULL,
  seller text NOT NULL,
  place text COLLATE "C" NOT NULL,
  slot text NOT NULL,
  cost_minor bigint NOT NULL,
  grade text NOT NULL,
  changed_at text NOT NULL,
  changed_seq bigint NOT NULL,
  words tsvector NOT NULL
);
ALTER TABLE item_row ALTER COLUMN words SET STATISTICS 1000;
CREATE INDEX item_row_in_order ON item_row (changed_seq DESC, id);
CREATE INDEX item_row_by_status ON item_row (status, changed_seq DESC, id);
CREATE INDEX item_row_by_kind ON item_row (kind, changed_seq DESC, id);
CREATE INDEX item_row_by_model ON item_row (model_id, changed_seq DESC, id);
CREATE INDEX item_row_by_place ON item_row (place, changed_seq DESC, id);
CREATE INDEX item_row_by_words ON item_row USING gin (words);

CREATE TABLE item_count (
  status text COLLATE "C" PRIMARY KEY,
  count bigint NOT NULL
);
CREATE FUNCTION count_items() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO item_count AS known (status, count)
    SELECT status, CASE TG_OP WHEN 'INSERT' THEN count(*) ELSE -count(*) END FROM changed GROUP BY status
    ON CONFLICT (status) DO UPDATE SET count = known.count + excluded.count;
  RETURN NULL;
END $$;
CREATE TRIGGER item_row_counted AFTER INSERT ON item_row
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION count_items();
CREATE TRIGGER item_row_uncounted AFTER DELETE ON item_row
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION count_items();
`,
];
