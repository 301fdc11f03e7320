-- Lots that came off the donor of a car, put aside for it until they are shared.

ALTER TABLE lot
  ADD COLUMN donor_of text GENERATED ALWAYS AS (row -> 'donor' ->> 'car') STORED REFERENCES car (id),
  ADD COLUMN donor_shared boolean GENERATED ALWAYS AS ((row -> 'donor' ->> 'isShared')::boolean) STORED,
  ADD CONSTRAINT lot_donor_check CHECK ((donor_of IS NULL) = (donor_shared IS NULL));
