-- What came and what went, by lot or by item; bins. Lots of measured goods (a roll of 7.5 m) have no whole quantity.

ALTER TABLE lot DROP COLUMN quantity;
ALTER TABLE lot ADD COLUMN quantity numeric GENERATED ALWAYS AS ((row ->> 'quantity')::numeric) STORED NOT NULL
  CHECK (quantity >= 0);

CREATE TABLE bin (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'bin' ~ '^[0-9]{2}[A-Z]$')
);

CREATE TABLE stock (
  id text PRIMARY KEY,
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  item text GENERATED ALWAYS AS (row ->> 'item') STORED NOT NULL CHECK (item <> ''),
  lot text GENERATED ALWAYS AS (row ->> 'lot') STORED REFERENCES lot (id),
  came numeric GENERATED ALWAYS AS ((row ->> 'came')::numeric) STORED NOT NULL CHECK (came >= 0),
  went numeric GENERATED ALWAYS AS ((row ->> 'went')::numeric) STORED NOT NULL CHECK (went >= 0),
  CHECK (id = item || '|' || coalesce(lot, ''))
);
CREATE INDEX stock_of_item ON stock (item);

-- Lots from before: what was received came, and what went into cars then is for the next count to say.
INSERT INTO stock (id, row)
SELECT (row ->> 'item') || '|' || id, jsonb_build_object('item', row -> 'item', 'lot', row -> 'id',
  'came', row ->> 'quantity', 'went', '0', 'counted', NULL) FROM lot;

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT ON bin, stock TO slipmark_app;
    GRANT UPDATE (row) ON bin, stock TO slipmark_app;
  END IF;
END $$;
