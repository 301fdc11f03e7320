-- What lies in the box of a run of an operation: still the shop's, but put aside for it.

CREATE TABLE car_kit (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  run int GENERATED ALWAYS AS ((row ->> 'run')::int) STORED NOT NULL CHECK (run >= 1),
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id),
  lines jsonb GENERATED ALWAYS AS (row -> 'lines') STORED NOT NULL CHECK (jsonb_typeof(lines) = 'array'),
  PRIMARY KEY (car, key)
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row), DELETE ON car_kit TO slipmark_app;
  END IF;
END $$;
