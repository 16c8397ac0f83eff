-- Households of organisations, the estimates kept of them, and the results of requests that must have their effect once.
-- Every key begins with the organisation: nobody finds what is another's, and the tables can be partitioned by it.

CREATE TABLE public.inventory (
  organisation text NOT NULL REFERENCES public.organisation (code) ON UPDATE RESTRICT ON DELETE RESTRICT,
  id text NOT NULL,
  -- The organisation's own name for the household; it tells nothing of who lives there.
  reference text NOT NULL,
  version integer NOT NULL CHECK (version > 0),
  created_at timestamp(3) with time zone NOT NULL,
  updated_at timestamp(3) with time zone NOT NULL,
  visits integer NOT NULL CHECK (visits >= 0),
  last_visit date,
  -- json and not jsonb: it gives back its fields in the order in which they came.
  content json NOT NULL,
  -- Where it came in with a batch: its line there, and SHA-256 of it, so that nothing is stored twice.
  batch text,
  batch_line integer,
  batch_digest bytea,
  PRIMARY KEY (organisation, id),
  CONSTRAINT batch_is_told_wholly
    CHECK ((batch IS NULL) = (batch_line IS NULL) AND (batch IS NULL) = (batch_digest IS NULL)),
  CONSTRAINT visits_have_a_last_one CHECK ((visits > 0) = (last_visit IS NOT NULL))
);

CREATE UNIQUE INDEX inventory_reference_key ON public.inventory (organisation, reference);
CREATE UNIQUE INDEX inventory_batch_key ON public.inventory (organisation, batch, batch_line);
-- The list: newest first, of all or of those whose last visit was in a span of days.
CREATE INDEX inventory_created_at_idx ON public.inventory (organisation, created_at, id);
CREATE INDEX inventory_last_visit_idx ON public.inventory (organisation, last_visit);

CREATE TABLE public.stored_estimate (
  organisation text NOT NULL,
  inventory text NOT NULL,
  id text NOT NULL,
  visit date NOT NULL,
  made_at timestamp(3) with time zone NOT NULL,
  catalogue_revision integer NOT NULL,
  method_version text NOT NULL,
  household json NOT NULL,
  basis json NOT NULL,
  result json NOT NULL,
  PRIMARY KEY (organisation, inventory, id),
  CONSTRAINT stored_estimate_inventory_fkey FOREIGN KEY (organisation, inventory)
    REFERENCES public.inventory (organisation, id) ON UPDATE RESTRICT ON DELETE CASCADE
);

CREATE INDEX stored_estimate_made_at_idx ON public.stored_estimate (organisation, inventory, made_at, id);

CREATE TABLE public.kept_result (
  organisation text NOT NULL REFERENCES public.organisation (code) ON UPDATE RESTRICT ON DELETE RESTRICT,
  key text NOT NULL,
  -- SHA-256 of what was asked for.
  digest bytea NOT NULL CHECK (octet_length(digest) = 32),
  -- The inventory that it speaks of, so that it goes with it.
  inventory text NOT NULL,
  result json NOT NULL,
  kept_at timestamp(3) with time zone NOT NULL,
  PRIMARY KEY (organisation, key)
);

CREATE INDEX kept_result_inventory_idx ON public.kept_result (organisation, inventory);
CREATE INDEX kept_result_kept_at_idx ON public.kept_result (organisation, kept_at);
