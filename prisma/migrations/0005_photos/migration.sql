-- Photographs: a small copy without place or camera, and the fingerprint, length and type of the original, which stays
-- on the device that took it. A store of files beside the log: one is put in once and never changed, and says nothing
-- about a car until a command names it (car_photo).

CREATE TABLE photo (
  sha256 text PRIMARY KEY CHECK (sha256 ~ '^[0-9a-f]{64}$'),
  car text NOT NULL REFERENCES car (id),
  bytes int NOT NULL CHECK (bytes BETWEEN 1 AND 40000000),
  type text NOT NULL CHECK (type IN ('image/jpeg', 'image/png', 'image/webp')),
  copy bytea NOT NULL CHECK (octet_length(copy) BETWEEN 64 AND 1500000),
  copy_sha256 text GENERATED ALWAYS AS (encode(sha256(copy), 'hex')) STORED NOT NULL,
  width int NOT NULL CHECK (width BETWEEN 1 AND 1600),
  height int NOT NULL CHECK (height BETWEEN 1 AND 1600),
  taken_by text NOT NULL REFERENCES person (id),
  device text REFERENCES device (id),
  at timestamptz(3) NOT NULL DEFAULT now(),
  -- Begins and ends as a JPEG does.
  CHECK (substring(copy FROM 1 FOR 3) = '\xffd8ff' AND substring(copy FROM octet_length(copy) - 1) = '\xffd9')
);
-- JPEG is packed already.
ALTER TABLE photo ALTER COLUMN copy SET STORAGE EXTERNAL;
CREATE INDEX photo_of_person ON photo (taken_by, at);

CREATE FUNCTION photo_is_insert_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a photograph is put in once' USING ERRCODE = 'insufficient_privilege';
END $$;
CREATE TRIGGER photo_no_change BEFORE UPDATE OR DELETE ON photo FOR EACH ROW EXECUTE FUNCTION photo_is_insert_only();
CREATE TRIGGER photo_no_truncate BEFORE TRUNCATE ON photo FOR EACH STATEMENT EXECUTE FUNCTION photo_is_insert_only();

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT ON photo TO slipmark_app;
  END IF;
END $$;
