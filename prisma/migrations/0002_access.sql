-- Who may call, and what was done. Keys are stored as a digest; the audit trail takes new events and nothing else.

CREATE TABLE public.organisation (
  code text PRIMARY KEY CHECK (code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
  name text NOT NULL,
  made_at timestamp(3) with time zone NOT NULL
);

CREATE TABLE public.api_key (
  -- The part of a key that it is found by, and that logs and the audit trail name it by. No secret.
  id text PRIMARY KEY,
  organisation text NOT NULL REFERENCES public.organisation (code) ON UPDATE RESTRICT ON DELETE RESTRICT,
  kind text NOT NULL CHECK (kind IN ('secret', 'publishable')),
  name text NOT NULL,
  scopes text[] NOT NULL CHECK (cardinality(scopes) > 0),
  -- Where a publishable key may be used from.
  origins text[] NOT NULL,
  -- SHA-256 of the whole key.
  digest bytea NOT NULL CHECK (octet_length(digest) = 32),
  -- Whether it is the key of the setting BOOTSTRAP_ADMIN_KEY.
  bootstrap boolean NOT NULL,
  issued_at timestamp(3) with time zone NOT NULL,
  -- The key that it was issued with; null where the service issued it at a start.
  issued_by text REFERENCES public.api_key (id) ON UPDATE RESTRICT ON DELETE RESTRICT,
  -- The key that it is the successor of.
  rotated_from text REFERENCES public.api_key (id) ON UPDATE RESTRICT ON DELETE RESTRICT,
  expires_at timestamp(3) with time zone,
  revoked_at timestamp(3) with time zone,
  last_used_at timestamp(3) with time zone,
  CONSTRAINT origins_of_publishable_keys CHECK ((kind = 'publishable') = (cardinality(origins) > 0))
);

-- The list of keys: newest first, of all organisations or of one.
CREATE INDEX api_key_issued_at_idx ON public.api_key (issued_at, id);
CREATE INDEX api_key_organisation_idx ON public.api_key (organisation, issued_at, id);
CREATE INDEX api_key_issued_by_idx ON public.api_key (issued_by);
CREATE INDEX api_key_rotated_from_idx ON public.api_key (rotated_from);

-- A key never becomes another one, lives no longer than was said, and comes back from nothing: whoever can write in
-- this table through the service still can't undo a revocation or give an old key more scopes.
CREATE FUNCTION public.refuse_other_key() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP <> 'UPDATE' THEN
    RAISE EXCEPTION 'api_key keeps every key: % is refused. Revoke the key instead.', TG_OP
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  IF to_jsonb(OLD) - '{expires_at,revoked_at,last_used_at}'::text[]
       <> to_jsonb(NEW) - '{expires_at,revoked_at,last_used_at}'::text[]
     OR NEW.expires_at IS NULL AND OLD.expires_at IS NOT NULL OR NEW.expires_at > OLD.expires_at
     OR OLD.revoked_at IS NOT NULL AND NEW.revoked_at IS DISTINCT FROM OLD.revoked_at
  THEN
    RAISE EXCEPTION 'api_key: % can only end sooner. Issue another key instead.', OLD.id
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER same_key BEFORE UPDATE ON public.api_key
  FOR EACH ROW EXECUTE FUNCTION public.refuse_other_key();
CREATE TRIGGER kept BEFORE DELETE OR TRUNCATE ON public.api_key
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_other_key();

CREATE TABLE public.audit_event (
  -- ALWAYS: nobody chooses a place in the order.
  id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  at timestamp(3) with time zone NOT NULL,
  -- Who did it; null where it was the service itself. No references: an event says what was, whatever becomes of it.
  organisation text,
  key_id text,
  request_id text,
  action text NOT NULL,
  subject_kind text NOT NULL,
  subject_id text NOT NULL,
  -- The organisation whose matter it is, and whose admins may read it. Null: the operator's alone.
  concerns text,
  before jsonb,
  after jsonb
);

CREATE INDEX audit_event_concerns_idx ON public.audit_event (concerns, id);
CREATE INDEX audit_event_action_idx ON public.audit_event (action, id);
CREATE INDEX audit_event_subject_idx ON public.audit_event (subject_kind, subject_id, id);
CREATE INDEX audit_event_at_idx ON public.audit_event (at);

CREATE FUNCTION public.refuse_change_of_audit() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only: % is refused.', TG_TABLE_NAME, TG_OP
    USING ERRCODE = 'object_not_in_prerequisite_state';
END $$;

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.audit_event
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_audit();

-- ALWAYS: also for a session that calls itself a replica.
ALTER TABLE public.api_key ENABLE ALWAYS TRIGGER same_key;
ALTER TABLE public.api_key ENABLE ALWAYS TRIGGER kept;
ALTER TABLE public.audit_event ENABLE ALWAYS TRIGGER append_only;
