-- Secrets, sessions, tries, devices. Outside the log, and written by the server directly: the one exception to the one
-- write path. Nothing here holds a secret that can be read back: passwords, PINs, cookies and links stand as hashes.

CREATE TABLE credential (
  person text PRIMARY KEY REFERENCES person (id),
  password_hash text CHECK (password_hash LIKE '$argon2id$%'),
  pin_hash text CHECK (pin_hash LIKE '$argon2id$%'),
  changed_at timestamptz(3) NOT NULL,
  CHECK (num_nonnulls(password_hash, pin_hash) >= 1)
);

CREATE TABLE device (
  id text PRIMARY KEY CHECK (id ~ '^[0-9a-f]{16}$'),
  name text CHECK (name <> ''),
  made_at timestamptz(3) NOT NULL DEFAULT now(),
  last_contact timestamptz(3),
  last_sequence bigint NOT NULL DEFAULT 0 CHECK (last_sequence >= 0)
);

CREATE TABLE session (
  id text PRIMARY KEY CHECK (id ~ '^[0-9a-f]{64}$'),
  person text NOT NULL REFERENCES person (id),
  device text NOT NULL REFERENCES device (id),
  made_at timestamptz(3) NOT NULL,
  last_seen_at timestamptz(3) NOT NULL CHECK (last_seen_at >= made_at),
  ended_at timestamptz(3) CHECK (ended_at >= made_at)
);
CREATE INDEX session_of_person ON session (person, device);

-- `person` is no foreign key: tries at names that nobody has are counted too, in a few rows of their own.
CREATE TABLE throttle (
  person text NOT NULL,
  place text NOT NULL CHECK (place <> ''),
  wrong int NOT NULL CHECK (wrong >= 0),
  last_at timestamptz(3) NOT NULL,
  until timestamptz(3) CHECK (until >= last_at),
  PRIMARY KEY (person, place)
);

CREATE TABLE enrolment (
  token text PRIMARY KEY CHECK (token ~ '^[0-9a-f]{64}$'),
  person text NOT NULL REFERENCES person (id),
  made_by text REFERENCES person (id),
  made_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3) NOT NULL CHECK (expires_at > made_at),
  used_at timestamptz(3) CHECK (used_at >= made_at)
);
CREATE INDEX enrolment_of_person ON enrolment (person);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT SELECT, INSERT ON credential, device, session, throttle, enrolment TO slipmark_app;
    GRANT UPDATE (password_hash, pin_hash, changed_at) ON credential TO slipmark_app;
    GRANT UPDATE (name, last_contact, last_sequence) ON device TO slipmark_app;
    GRANT UPDATE (last_seen_at, ended_at) ON session TO slipmark_app;
    GRANT UPDATE (wrong, last_at, until) ON throttle TO slipmark_app;
    GRANT UPDATE (expires_at, used_at) ON enrolment TO slipmark_app;
  END IF;
END $$;
