-- What an hour of the shop costs, by the day from which on it does. Money is in its smallest unit.

CREATE TABLE hour_rate (
  id text PRIMARY KEY CHECK (id ~ '^\d{4}-\d{2}-\d{2}$'),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  money bigint GENERATED ALWAYS AS ((row ->> 'money')::bigint) STORED NOT NULL CHECK (money >= 0)
);

-- What the shop took out for a car, for whoever asks what that car cost: the shop's stream is as long as the shop is old.
CREATE INDEX drawn_for_car ON event (((body::jsonb) #>> '{event,forCar}')) WHERE type = 'stock-drawn';

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row) ON hour_rate TO slipmark_app;
  END IF;
END $$;
