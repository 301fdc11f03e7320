-- What work outside is expected to cost, by the plan's name and the part or the work that goes. Money is in its smallest unit.

CREATE TABLE outside_quote (
  id text PRIMARY KEY,
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id AND (row ->> 'plan') || '/' || (row ->> 'key') = id),
  money bigint GENERATED ALWAYS AS ((row ->> 'money')::bigint) STORED NOT NULL CHECK (money >= 0)
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row) ON outside_quote TO slipmark_app;
  END IF;
END $$;
