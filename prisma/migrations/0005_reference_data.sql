-- Tariffs and emission factors and their whole history, kept as the catalogue is (0001): an edit adds one revision and the
-- new state of each entry that it changed, and nothing is overwritten.

CREATE TABLE public.reference_revision (
  number integer PRIMARY KEY CHECK (number > 0),
  action text NOT NULL,
  author text NOT NULL,
  -- The key of the organisation that `author` names; null where the service itself is the author.
  key_id text,
  reason text NOT NULL,
  at timestamp(3) with time zone NOT NULL
);

CREATE TABLE public.reference_state (
  kind text NOT NULL CHECK (kind IN ('tariff', 'emission-factor')),
  code text NOT NULL,
  revision integer NOT NULL REFERENCES public.reference_revision (number) ON UPDATE RESTRICT ON DELETE RESTRICT,
  retired boolean NOT NULL,
  -- json and not jsonb: the fields keep their order, so that what is read back has the very bytes that were stored.
  content json NOT NULL,
  PRIMARY KEY (kind, code, revision),
  CONSTRAINT reference_state_agrees_with_content
    CHECK (
      content ->> 'code' IS NOT DISTINCT FROM code AND (content ->> 'retired')::boolean IS NOT DISTINCT FROM retired
    )
);

-- What one revision changed.
CREATE INDEX reference_state_revision_idx ON public.reference_state (revision);

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.reference_revision
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_history();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.reference_state
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_history();

CREATE FUNCTION public.refuse_gap_in_reference_revisions() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  newest integer := (SELECT coalesce(max(number), 0) FROM public.reference_revision);
BEGIN
  IF NEW.number <> newest + 1 THEN
    RAISE EXCEPTION 'reference_revision is append-only: revision % does not follow %.', NEW.number, newest
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION public.refuse_state_of_closed_reference_revision() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  closed integer := (
    SELECT min(made.number) FROM added JOIN public.reference_revision made ON made.number = added.revision
    WHERE made.xmin <> pg_current_xact_id()::xid
  );
BEGIN
  IF closed IS NOT NULL THEN
    RAISE EXCEPTION 'reference_state is append-only: revision % is closed. Add a new revision instead.', closed
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  RETURN NULL;
END $$;

CREATE TRIGGER without_gap BEFORE INSERT ON public.reference_revision
  FOR EACH ROW EXECUTE FUNCTION public.refuse_gap_in_reference_revisions();
CREATE TRIGGER open_revision AFTER INSERT ON public.reference_state REFERENCING NEW TABLE AS added
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_state_of_closed_reference_revision();

-- On the same channel as new revisions of the catalogue (0003): whoever hears a notice looks at both.
CREATE TRIGGER tell AFTER INSERT ON public.reference_revision
  FOR EACH ROW EXECUTE FUNCTION public.tell_of_revision();

-- ALWAYS: also for a session that calls itself a replica.
ALTER TABLE public.reference_revision ENABLE ALWAYS TRIGGER append_only;
ALTER TABLE public.reference_state ENABLE ALWAYS TRIGGER append_only;
ALTER TABLE public.reference_revision ENABLE ALWAYS TRIGGER without_gap;
ALTER TABLE public.reference_state ENABLE ALWAYS TRIGGER open_revision;
