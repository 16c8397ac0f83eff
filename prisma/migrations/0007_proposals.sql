-- What readings say of the catalogue's typical draws: the readings of real power in all inventories, where they can be found by
-- category, and which proposals editors turned down.

-- A copy of what lies in inventory.content, never written by itself: a trigger keeps it, so that no way of storing an inventory
-- can forget it. One row for each device, mode and visit that was read with a wattmeter or an energy meter.
CREATE TABLE public.device_reading (
  -- Later ones are greater: pages go on after it.
  id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  organisation text NOT NULL,
  inventory text NOT NULL,
  visit date NOT NULL,
  -- The device's place in its visit's list, 0 first.
  place integer NOT NULL,
  -- The device's own id, where it has one.
  device text,
  -- As the organisation wrote it: a code, a name or an alias.
  category text NOT NULL,
  mode text NOT NULL,
  year integer,
  quantity integer,
  -- json and not jsonb, as in the inventory.
  reading json NOT NULL,
  CONSTRAINT device_reading_inventory_fkey FOREIGN KEY (organisation, inventory)
    REFERENCES public.inventory (organisation, id) ON UPDATE RESTRICT ON DELETE CASCADE
);

-- All readings of a category, page by page; and which names of categories there are.
CREATE INDEX device_reading_category_idx ON public.device_reading (category, id);
-- Those of an inventory, which go and come with it.
CREATE INDEX device_reading_inventory_idx ON public.device_reading (organisation, inventory);

CREATE FUNCTION public.real_power_readings_in(content json)
RETURNS TABLE (visit date, place integer, device text, category text, mode text, year integer, quantity integer, reading json)
LANGUAGE sql STABLE AS $$
  SELECT
    (visits.visit ->> 'date')::date,
    (devices.place - 1)::integer,
    devices.device ->> 'id',
    devices.device ->> 'category',
    modes.mode ->> 'mode',
    (devices.device ->> 'year')::integer,
    (devices.device ->> 'quantity')::integer,
    modes.mode -> 'reading'
  FROM json_array_elements(content -> 'visits') AS visits (visit)
  CROSS JOIN json_array_elements(visits.visit -> 'devices') WITH ORDINALITY AS devices (device, place)
  CROSS JOIN json_array_elements(devices.device -> 'modes') AS modes (mode)
  WHERE modes.mode -> 'reading' ->> 'kind' IN ('power', 'energy', 'samples')
$$;

CREATE FUNCTION public.keep_device_readings() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' THEN
    DELETE FROM public.device_reading WHERE organisation = NEW.organisation AND inventory = NEW.id;
  END IF;
  INSERT INTO public.device_reading
    (organisation, inventory, visit, place, device, category, mode, year, quantity, reading)
  SELECT NEW.organisation, NEW.id, found.* FROM public.real_power_readings_in(NEW.content) AS found;
  RETURN NULL;
END $$;

CREATE TRIGGER keep_device_readings AFTER INSERT OR UPDATE OF content ON public.inventory
  FOR EACH ROW EXECUTE FUNCTION public.keep_device_readings();

INSERT INTO public.device_reading
  (organisation, inventory, visit, place, device, category, mode, year, quantity, reading)
SELECT inventory.organisation, inventory.id, found.*
FROM public.inventory CROSS JOIN public.real_power_readings_in(inventory.content) AS found;

-- A proposal that an editor turned down, as it was then.
CREATE TABLE public.proposal_rejection (
  id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  category text NOT NULL,
  mode text NOT NULL,
  -- Years of manufacture; null is open.
  year_from integer,
  year_to integer,
  version text NOT NULL,
  n integer NOT NULL CHECK (n > 0),
  low_w double precision NOT NULL CHECK (low_w >= 0),
  typical_w double precision NOT NULL CHECK (typical_w >= low_w),
  high_w double precision NOT NULL CHECK (high_w >= typical_w),
  -- The organisation that runs the service, and which of its keys.
  author text NOT NULL REFERENCES public.organisation (code) ON UPDATE RESTRICT ON DELETE RESTRICT,
  key_id text NOT NULL,
  reason text NOT NULL,
  at timestamp(3) with time zone NOT NULL
);

CREATE INDEX proposal_rejection_category_idx ON public.proposal_rejection (category, id);

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON public.proposal_rejection
  FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change_of_history();
-- ALWAYS: also for a session that calls itself a replica.
ALTER TABLE public.proposal_rejection ENABLE ALWAYS TRIGGER append_only;
