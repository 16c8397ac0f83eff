-- Editors: each revision says what kind of act made it and with which key, and other processes hear of it at once.

-- Nothing but the seed was written before, and it names its action.
ALTER TABLE public.catalogue_revision ALTER COLUMN action DROP DEFAULT;
-- The key of the organisation that `author` names; null where the service itself is the author.
ALTER TABLE public.catalogue_revision ADD COLUMN key_id text;

-- Whoever listens hears the number once the edit is committed, and nothing of one that is undone.
CREATE FUNCTION public.tell_of_revision() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_notify('catalogue_revision', NEW.number::text);
  RETURN NULL;
END $$;

CREATE TRIGGER tell AFTER INSERT ON public.catalogue_revision
  FOR EACH ROW EXECUTE FUNCTION public.tell_of_revision();
