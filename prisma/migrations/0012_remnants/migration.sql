-- Rests in the rack, by item, as somebody last counted them.

CREATE TABLE remnant (
  id text PRIMARY KEY,
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'item' = id),
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id),
  lengths jsonb GENERATED ALWAYS AS (row -> 'lengths') STORED NOT NULL CHECK (jsonb_typeof(lengths) = 'array')
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row) ON remnant TO slipmark_app;
  END IF;
END $$;
