-- Buying: the shop's terms of its items, suppliers, their offers, and what was insisted on for an order. Money is in its
-- smallest unit. A plan's items stand in its document, so that an offer may name one that has no row here.

CREATE TABLE item (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id)
);

CREATE TABLE supplier (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  lead int GENERATED ALWAYS AS ((row ->> 'lead')::int) STORED NOT NULL CHECK (lead >= 0)
);

CREATE TABLE offer (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  supplier text GENERATED ALWAYS AS (row ->> 'supplier') STORED NOT NULL REFERENCES supplier (id),
  pack_size numeric GENERATED ALWAYS AS ((row ->> 'packSize')::numeric) STORED NOT NULL CHECK (pack_size > 0)
);

CREATE TABLE line_pin (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  supplier text GENERATED ALWAYS AS (row #>> '{pin,supplier}') STORED REFERENCES supplier (id)
);

-- As approved: frozen but for being cancelled.
CREATE TABLE purchase_order (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  supplier text GENERATED ALWAYS AS (row ->> 'supplier') STORED NOT NULL REFERENCES supplier (id)
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT, UPDATE (row) ON item, supplier, offer, line_pin, purchase_order TO slipmark_app;
  END IF;
END $$;
