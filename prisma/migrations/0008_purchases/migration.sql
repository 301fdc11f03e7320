-- Orders as they were approved, with what came of each line. Money is in its smallest unit.

CREATE TABLE purchase_order (
  id text PRIMARY KEY CHECK (id ~ '^[1-9][0-9]*$'),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  supplier text GENERATED ALWAYS AS (row ->> 'supplier') STORED NOT NULL REFERENCES supplier (id),
  goods bigint GENERATED ALWAYS AS ((row ->> 'goods')::bigint) STORED NOT NULL CHECK (goods >= 0),
  freight bigint GENERATED ALWAYS AS ((row ->> 'freight')::bigint) STORED NOT NULL CHECK (freight >= 0)
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row) ON purchase_order TO slipmark_app;
  END IF;
END $$;
