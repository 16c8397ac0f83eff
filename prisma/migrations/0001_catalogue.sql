-- The shared catalogue and its whole history. An edit adds one revision and, for every category that it changed,
-- the new state of that category. Nothing is overwritten: the triggers below hold that in the database itself.
-- The figures of an organisation's own overlay will get tables of their own and leave these as they are.

CREATE TABLE public.catalogue_revision (
  number integer PRIMARY KEY CHECK (number > 0),
  -- What kind of act made it: seed, edit, import.
  action text NOT NULL DEFAULT 'edit',
  author text NOT NULL,
  reason text NOT NULL,
  at timestamp(3) with time zone NOT NULL
);

CREATE TABLE public.category_state (
  code text NOT NULL,
  revision integer NOT NULL REFERENCES public.catalogue_revision (number) ON UPDATE RESTRICT ON DELETE RESTRICT,
  retired boolean NOT NULL,
  content jsonb NOT NULL,
  PRIMARY KEY (code, revision),
  CONSTRAINT category_state_agrees_with_content
    CHECK (
      content ->> 'code' IS NOT DISTINCT FROM code AND (content ->> 'retired')::boolean IS NOT DISTINCT FROM retired
    )
);

-- What one revision changed, for comparisons of two revisions.
CREATE INDEX category_state_revision_idx ON public.category_state (revision);

CREATE FUNCTION public.refuse_change_of_history() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only: % is refused. Add a new revision instead.', TG_TABLE_NAME, TG_OP
    USING ERRCODE = 'object_not_in_prerequisite_state';
END $$;

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.catalogue_revision
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_history();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.category_state
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_history();

-- An insert can change history too: a revision put in between, or a state added to a revision that others have
-- read already. So revisions are numbered without a gap, and a revision takes states only from the transaction
-- that made it.
CREATE FUNCTION public.refuse_gap_in_revisions() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  newest integer := (SELECT coalesce(max(number), 0) FROM public.catalogue_revision);
BEGIN
  IF NEW.number <> newest + 1 THEN
    RAISE EXCEPTION 'catalogue_revision is append-only: revision % does not follow %.', NEW.number, newest
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION public.refuse_state_of_closed_revision() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  closed integer := (
    SELECT min(made.number) FROM added JOIN public.catalogue_revision made ON made.number = added.revision
    WHERE made.xmin <> pg_current_xact_id()::xid
  );
BEGIN
  IF closed IS NOT NULL THEN
    RAISE EXCEPTION 'category_state is append-only: revision % is closed. Add a new revision instead.', closed
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  RETURN NULL;
END $$;

CREATE TRIGGER without_gap BEFORE INSERT ON public.catalogue_revision
  FOR EACH ROW EXECUTE FUNCTION public.refuse_gap_in_revisions();
CREATE TRIGGER open_revision AFTER INSERT ON public.category_state REFERENCING NEW TABLE AS added
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_state_of_closed_revision();

-- ALWAYS: also for a session that calls itself a replica.
ALTER TABLE public.catalogue_revision ENABLE ALWAYS TRIGGER append_only;
ALTER TABLE public.category_state ENABLE ALWAYS TRIGGER append_only;
ALTER TABLE public.catalogue_revision ENABLE ALWAYS TRIGGER without_gap;
ALTER TABLE public.category_state ENABLE ALWAYS TRIGGER open_revision;
