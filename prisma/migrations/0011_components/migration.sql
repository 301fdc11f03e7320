-- Components: how the donor's parts were found and where they have been; trips to who does outside work.

ALTER TABLE car_part DROP CONSTRAINT car_part_state_check;
ALTER TABLE car_part
  ADD CONSTRAINT car_part_state_check CHECK (state IN ('absent', 'present', 'fitted', 'taken', 'out', 'back'));

CREATE TABLE car_component (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  piece int GENERATED ALWAYS AS ((row ->> 'piece')::int) STORED NOT NULL CHECK (piece >= 1),
  grade text GENERATED ALWAYS AS (row ->> 'grade') STORED
    CHECK (grade IN ('reuse', 'refurbish', 'replace', 'scrap')),
  given_by text GENERATED ALWAYS AS (row ->> 'from') STORED REFERENCES car (id),
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id),
  outings jsonb GENERATED ALWAYS AS (row -> 'outings') STORED NOT NULL CHECK (jsonb_typeof(outings) = 'array'),
  PRIMARY KEY (car, key),
  CHECK (given_by <> car)
);

CREATE TABLE trip (
  id text PRIMARY KEY CHECK (id ~ '^[1-9][0-9]*$'),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  supplier text GENERATED ALWAYS AS (row ->> 'supplier') STORED NOT NULL REFERENCES supplier (id),
  goes text GENERATED ALWAYS AS (row ->> 'goes') STORED NOT NULL,
  due text GENERATED ALWAYS AS (row ->> 'due') STORED NOT NULL CHECK (due >= goes),
  bills jsonb GENERATED ALWAYS AS (row -> 'bills') STORED NOT NULL CHECK (jsonb_typeof(bills) = 'array')
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row), DELETE ON car_component TO slipmark_app;
    GRANT SELECT, INSERT, UPDATE (row) ON trip TO slipmark_app;
  END IF;
END $$;
