-- Which browsers are the shop's own tablets, where a PIN may be given; and when a session locks. Outside the log like
-- everything of signing in (0002): a tablet says nothing about a car. Who enrolled and who revoked stands in its row.

ALTER TABLE device
  ADD COLUMN enrolled_at timestamptz(3),
  ADD COLUMN enrolled_by text REFERENCES person (id),
  ADD COLUMN revoked_at timestamptz(3),
  ADD COLUMN revoked_by text REFERENCES person (id),
  ADD COLUMN lock_minutes int NOT NULL DEFAULT 5 CHECK (lock_minutes BETWEEN 1 AND 240),
  -- A tablet has a name by which people know it, and somebody who answers for it.
  ADD CHECK (enrolled_at IS NULL OR (name IS NOT NULL AND enrolled_by IS NOT NULL)),
  ADD CHECK ((revoked_at IS NULL) = (revoked_by IS NULL)),
  ADD CHECK (revoked_at IS NULL OR enrolled_at IS NOT NULL);

-- A person's hand, not merely a request; and since when the screen is covered.
ALTER TABLE session
  ADD COLUMN active_at timestamptz(3) NOT NULL DEFAULT now(),
  ADD COLUMN locked_at timestamptz(3);
CREATE INDEX session_of_device ON session (device);

CREATE TABLE tablet_code (
  code text PRIMARY KEY CHECK (code ~ '^[0-9a-f]{64}$'),
  name text NOT NULL CHECK (name ~ '\S' AND length(name) <= 60),
  lock_minutes int NOT NULL CHECK (lock_minutes BETWEEN 1 AND 240),
  made_by text NOT NULL REFERENCES person (id),
  made_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3) NOT NULL CHECK (expires_at > made_at),
  used_at timestamptz(3) CHECK (used_at >= made_at)
);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT UPDATE (enrolled_at, enrolled_by, revoked_at, revoked_by, lock_minutes) ON device TO slipmark_app;
    GRANT UPDATE (active_at, locked_at) ON session TO slipmark_app;
    GRANT SELECT, INSERT ON tablet_code TO slipmark_app;
    GRANT UPDATE (used_at) ON tablet_code TO slipmark_app;
  END IF;
END $$;
