-- What each organisation has laid over the shared catalogue for its own callers, with its whole history. An edit adds
-- one revision, which says what became of one category. The organisation stands first in every key, so that the table
-- can be divided by organisation.

CREATE TABLE public.overlay_revision (
  organisation text NOT NULL REFERENCES public.organisation (code) ON UPDATE RESTRICT ON DELETE RESTRICT,
  -- Counted for each organisation by itself.
  number integer NOT NULL CHECK (number > 0),
  -- What kind of act made it: lay, change, remove.
  action text NOT NULL,
  -- Which of the organisation's keys.
  key_id text NOT NULL,
  reason text NOT NULL,
  at timestamp(3) with time zone NOT NULL,
  code text NOT NULL,
  -- The category as it is from this revision on; null where it was taken away.
  content jsonb,
  PRIMARY KEY (organisation, number),
  CONSTRAINT overlay_revision_agrees_with_content
    CHECK (content IS NULL OR content ->> 'code' IS NOT DISTINCT FROM code),
  CONSTRAINT overlay_revision_removes_or_holds_content CHECK ((action = 'remove') = (content IS NULL))
);

-- The newest state of each category.
CREATE INDEX overlay_revision_code_idx ON public.overlay_revision (organisation, code, number);

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.overlay_revision
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_history();

-- An insert can change history too, so an organisation's revisions are numbered without a gap.
CREATE FUNCTION public.refuse_gap_in_overlay() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  newest integer := (
    SELECT coalesce(max(number), 0) FROM public.overlay_revision WHERE organisation = NEW.organisation
  );
BEGIN
  IF NEW.number <> newest + 1 THEN
    RAISE EXCEPTION 'overlay_revision is append-only: revision % does not follow %.', NEW.number, newest
      USING ERRCODE = 'object_not_in_prerequisite_state';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER without_gap BEFORE INSERT ON public.overlay_revision
  FOR EACH ROW EXECUTE FUNCTION public.refuse_gap_in_overlay();

-- Whoever listens hears that there is something new once it is committed; not what, and not whose.
CREATE FUNCTION public.tell_of_overlay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_notify('overlay_revision', '');
  RETURN NULL;
END $$;

CREATE TRIGGER tell AFTER INSERT ON public.overlay_revision
  FOR EACH ROW EXECUTE FUNCTION public.tell_of_overlay();

-- ALWAYS: also for a session that calls itself a replica.
ALTER TABLE public.overlay_revision ENABLE ALWAYS TRIGGER append_only;
ALTER TABLE public.overlay_revision ENABLE ALWAYS TRIGGER without_gap;
