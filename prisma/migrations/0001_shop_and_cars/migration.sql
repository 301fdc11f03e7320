-- The shop, its plans, its cars, and the log. The rulebook decides (lib/domain); what stands here is the net under it.
-- Columns beside `row` are generated from it, so that a row can't say one thing and its columns another.

CREATE TABLE stream (
  id text PRIMARY KEY CHECK (id = 'shop' OR id LIKE 'car:_%'),
  version int NOT NULL DEFAULT 0 CHECK (version >= 0),
  head text NOT NULL DEFAULT '' CHECK (head ~ '^([0-9a-f]{64})?$'),
  CHECK ((version = 0) = (head = ''))
);

INSERT INTO stream (id) VALUES ('shop');

CREATE TABLE command (
  id text PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 100),
  body_hash text NOT NULL CHECK (body_hash ~ '^[0-9a-f]{64}$'),
  actor text NOT NULL CHECK (actor <> ''),
  present text,
  device text,
  type text NOT NULL,
  car text,
  received_at timestamptz(3) NOT NULL,
  outcome text CHECK (outcome IN ('accepted', 'refused')),
  answer jsonb,
  CHECK ((outcome IS NULL) = (answer IS NULL))
);
CREATE INDEX command_of_car ON command (car, received_at);

CREATE TABLE event (
  position bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  stream text NOT NULL REFERENCES stream (id),
  version int NOT NULL CHECK (version >= 1),
  type text NOT NULL,
  command text NOT NULL REFERENCES command (id),
  at timestamptz(3) NOT NULL,
  body text NOT NULL CHECK (body <> ''),
  previous text NOT NULL CHECK (previous ~ '^([0-9a-f]{64})?$'),
  hash text NOT NULL CHECK (hash ~ '^[0-9a-f]{64}$'),
  UNIQUE (stream, version),
  CHECK ((version = 1) = (previous = ''))
);

CREATE FUNCTION event_is_insert_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the log is insert only' USING ERRCODE = 'insufficient_privilege';
END $$;
CREATE TRIGGER event_no_change BEFORE UPDATE OR DELETE ON event FOR EACH ROW EXECUTE FUNCTION event_is_insert_only();
CREATE TRIGGER event_no_truncate BEFORE TRUNCATE ON event FOR EACH STATEMENT EXECUTE FUNCTION event_is_insert_only();

-- An answer is final for its id.
CREATE FUNCTION answer_is_final() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.outcome IS NOT NULL OR NEW.id <> OLD.id OR NEW.body_hash <> OLD.body_hash THEN
    RAISE EXCEPTION 'the answer to command % is final', OLD.id USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER command_answered_once BEFORE UPDATE ON command FOR EACH ROW EXECUTE FUNCTION answer_is_final();

CREATE TABLE shop_setting (
  id int PRIMARY KEY DEFAULT 1 CHECK (id = 1),
  name text NOT NULL CHECK (name <> ''),
  zone text NOT NULL CHECK (zone <> ''),
  demo boolean NOT NULL DEFAULT false
);

CREATE TABLE person (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  name text GENERATED ALWAYS AS (row ->> 'name') STORED NOT NULL CHECK (name <> ''),
  "left" boolean GENERATED ALWAYS AS ((row ->> 'left')::boolean) STORED NOT NULL
);

CREATE TABLE tool (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  used int GENERATED ALWAYS AS ((row #>> '{cycles,used}')::int) STORED CHECK (used >= 0)
);

CREATE TABLE tool_suspect (
  tool text NOT NULL REFERENCES tool (id),
  nr int NOT NULL CHECK (nr >= 0),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  since text GENERATED ALWAYS AS (row ->> 'from') STORED NOT NULL,
  until text GENERATED ALWAYS AS (row ->> 'until') STORED,
  PRIMARY KEY (tool, nr)
);

CREATE TABLE adapter (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id)
);

CREATE TABLE lot (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  quantity int GENERATED ALWAYS AS ((row ->> 'quantity')::int) STORED NOT NULL CHECK (quantity >= 0)
);

CREATE TABLE plan_revision (
  hash text PRIMARY KEY CHECK (hash ~ '^[0-9a-f]{64}$'),
  model text NOT NULL CHECK (model <> ''),
  revision text NOT NULL CHECK (revision <> ''),
  document json NOT NULL,
  kept_at timestamptz(3) NOT NULL DEFAULT now(),
  UNIQUE (model, revision)
);

CREATE TABLE plan_release (
  id text PRIMARY KEY REFERENCES plan_revision (hash),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  released_by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id)
);

CREATE TABLE car (
  id text PRIMARY KEY CHECK (id <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object' AND row ->> 'id' = id),
  stream text GENERATED ALWAYS AS ('car:' || id) STORED NOT NULL REFERENCES stream (id),
  plan text GENERATED ALWAYS AS (row ->> 'plan') STORED NOT NULL REFERENCES plan_revision (hash),
  chassis text GENERATED ALWAYS AS (row ->> 'chassis') STORED NOT NULL CHECK (chassis <> ''),
  stage int GENERATED ALWAYS AS ((row ->> 'stage')::int) STORED NOT NULL CHECK (stage >= 0),
  delivered boolean GENERATED ALWAYS AS ((row ->> 'delivered')::boolean) STORED NOT NULL,
  version int GENERATED ALWAYS AS ((row ->> 'version')::int) STORED NOT NULL CHECK (version >= 1)
);
CREATE INDEX car_in_stage ON car (plan, stage) WHERE NOT delivered;

CREATE TABLE car_operation (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  status text GENERATED ALWAYS AS (row ->> 'status') STORED NOT NULL CHECK (status IN ('running', 'paused', 'finished', 'due-again')),
  run int GENERATED ALWAYS AS ((row ->> 'run')::int) STORED NOT NULL CHECK (run >= 1),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_joint (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  level text GENERATED ALWAYS AS (row ->> 'level') STORED NOT NULL CHECK (level IN ('open', 'snug', 'final', 'verified')),
  cycle int GENERATED ALWAYS AS ((row ->> 'cycle')::int) STORED NOT NULL CHECK (cycle >= 1),
  tool text GENERATED ALWAYS AS (row ->> 'tool') STORED REFERENCES tool (id),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_finding (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  state text GENERATED ALWAYS AS (row ->> 'state') STORED NOT NULL CHECK (state IN ('undecided', 'decided', 'closed')),
  change text GENERATED ALWAYS AS (row ->> 'change') STORED,
  due int GENERATED ALWAYS AS ((row ->> 'due')::int) STORED NOT NULL CHECK (due >= 0),
  PRIMARY KEY (car, key),
  CHECK ((state = 'undecided') = (row ->> 'disposition' IS NULL))
);

CREATE TABLE car_check (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  status text GENERATED ALWAYS AS (row ->> 'status') STORED NOT NULL CHECK (status IN ('running', 'clear', 'failed', 'due-again', 'conceded')),
  round int GENERATED ALWAYS AS ((row ->> 'round')::int) STORED NOT NULL CHECK (round >= 1),
  finding text GENERATED ALWAYS AS (row ->> 'finding') STORED,
  PRIMARY KEY (car, key),
  FOREIGN KEY (car, finding) REFERENCES car_finding (car, key)
);

CREATE TABLE car_condition (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  value boolean GENERATED ALWAYS AS ((row ->> 'value')::boolean) STORED NOT NULL,
  PRIMARY KEY (car, key)
);

CREATE TABLE car_stopgap (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  placed int GENERATED ALWAYS AS ((row ->> 'placed')::int) STORED NOT NULL CHECK (placed >= 1),
  removed int GENERATED ALWAYS AS ((row ->> 'removed')::int) STORED NOT NULL CHECK (removed >= 0),
  PRIMARY KEY (car, key),
  CHECK (removed <= placed)
);

CREATE TABLE car_change (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  state text GENERATED ALWAYS AS (row ->> 'state') STORED NOT NULL CHECK (state IN ('asked', 'approved', 'declined')),
  requested_by text GENERATED ALWAYS AS (row ->> 'requestedBy') STORED NOT NULL REFERENCES person (id),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_hold (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  scope text GENERATED ALWAYS AS (row ->> 'scope') STORED NOT NULL CHECK (scope IN ('gate', 'work', 'things')),
  reason text GENERATED ALWAYS AS (row ->> 'reason') STORED NOT NULL CHECK (reason <> ''),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_part (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  state text GENERATED ALWAYS AS (row ->> 'state') STORED NOT NULL CHECK (state IN ('absent', 'present', 'fitted', 'taken')),
  piece int GENERATED ALWAYS AS ((row ->> 'piece')::int) STORED NOT NULL CHECK (piece >= 1),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_photo (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  hash text GENERATED ALWAYS AS (row ->> 'hash') STORED NOT NULL CHECK (hash <> ''),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_signature (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  act text GENERATED ALWAYS AS (row ->> 'act') STORED NOT NULL,
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id),
  number int GENERATED ALWAYS AS ((row ->> 'number')::int) STORED NOT NULL CHECK (number >= 1),
  joint text GENERATED ALWAYS AS (CASE WHEN row ->> 'act' IN ('snug-joint', 'final-joint', 'verify-joint', 'recheck-joint') THEN row ->> 'subject' END) STORED,
  operation text GENERATED ALWAYS AS (CASE WHEN row ->> 'act' IN ('finish-operation') THEN row ->> 'subject' END) STORED,
  checked text GENERATED ALWAYS AS (CASE WHEN row ->> 'act' IN ('pass-check') THEN row ->> 'subject' END) STORED,
  stopgap text GENERATED ALWAYS AS (CASE WHEN row ->> 'act' IN ('remove-stopgap') THEN row ->> 'subject' END) STORED,
  part text GENERATED ALWAYS AS (CASE WHEN row ->> 'act' IN ('fit-part') THEN row ->> 'subject' END) STORED,
  PRIMARY KEY (car, key),
  FOREIGN KEY (key) REFERENCES command (id),
  FOREIGN KEY (car, joint) REFERENCES car_joint (car, key),
  FOREIGN KEY (car, operation) REFERENCES car_operation (car, key),
  FOREIGN KEY (car, checked) REFERENCES car_check (car, key),
  FOREIGN KEY (car, stopgap) REFERENCES car_stopgap (car, key),
  FOREIGN KEY (car, part) REFERENCES car_part (car, key),
  CHECK (num_nonnulls(joint, operation, checked, stopgap, part) = 1)
);

CREATE TABLE car_gate (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_note (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  by text GENERATED ALWAYS AS (row ->> 'by') STORED NOT NULL REFERENCES person (id),
  PRIMARY KEY (car, key)
);

CREATE TABLE car_assignment (
  car text NOT NULL REFERENCES car (id),
  key text NOT NULL CHECK (key <> ''),
  row jsonb NOT NULL CHECK (jsonb_typeof(row) = 'object'),
  PRIMARY KEY (car, key)
);

ALTER TABLE car_finding ADD FOREIGN KEY (car, change) REFERENCES car_change (car, key);

-- The app may write rows and add to the log, and nothing else. Who starts the database makes the roles; where there is
-- only one user, these lines do nothing and the triggers alone hold the log.
DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'slipmark_app') THEN
    GRANT USAGE ON SCHEMA public TO slipmark_app;
    GRANT SELECT ON ALL TABLES IN SCHEMA public TO slipmark_app;
    GRANT INSERT ON ALL TABLES IN SCHEMA public TO slipmark_app;
    GRANT UPDATE (version, head) ON stream TO slipmark_app;
    GRANT UPDATE (outcome, answer) ON command TO slipmark_app;
    GRANT UPDATE (row) ON person, tool, tool_suspect, adapter, lot, plan_release, car TO slipmark_app;
    GRANT UPDATE (row), DELETE ON car_operation, car_joint, car_finding, car_check, car_condition, car_stopgap,
      car_change, car_hold, car_part, car_photo, car_signature, car_gate, car_note, car_assignment TO slipmark_app;
    GRANT UPDATE (name, zone, demo) ON shop_setting TO slipmark_app;
  END IF;
END $$;
