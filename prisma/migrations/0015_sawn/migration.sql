-- Pieces that are sawn, by the run of the work that takes them: no cut list asks for them once more.

CREATE TABLE sawn_piece (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  car text GENERATED ALWAYS AS (row ->> 'car') STORED NOT NULL REFERENCES car (id),
  item text GENERATED ALWAYS AS (row ->> 'item') STORED NOT NULL,
  count int GENERATED ALWAYS AS ((row ->> 'count')::int) STORED NOT NULL CHECK (count >= 0),
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id)
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row) ON sawn_piece TO slipmark_app;
  END IF;
END $$;
