--
-- PostgreSQL database dump
--


-- Dumped from database version 15.18 (Debian 15.18-0+deb12u1)
-- Dumped by pg_dump version 15.18 (Debian 15.18-0+deb12u1)

SET statement_timeout = 0;
SET lock_timeout = 0;
SET idle_in_transaction_session_timeout = 0;
SET client_encoding = 'UTF8';
SET standard_conforming_strings = on;
SELECT pg_catalog.set_config('search_path', '', false);
SET check_function_bodies = false;
SET xmloption = content;
SET client_min_messages = warning;
SET row_security = off;

--
-- Name: btree_gist; Type: EXTENSION; Schema: -; Owner: -
--

CREATE EXTENSION IF NOT EXISTS btree_gist WITH SCHEMA public;


--
-- Name: EXTENSION btree_gist; Type: COMMENT; Schema: -; Owner: -
--



--
-- Name: keep_append_only(text); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.keep_append_only(of_table text) RETURNS void
    LANGUAGE plpgsql
    AS $$
begin
  execute format('create trigger append_only before update or delete on %I for each row execute function refuse_change()', of_table);
  execute format('create trigger append_only_truncate before truncate on %I for each statement execute function refuse_change()', of_table);
  execute format('revoke update, delete, truncate on %I from workshop_service', of_table);
end $$;


--
-- Name: keep_audit(text, boolean); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.keep_audit(of_table text, hide_values boolean) RETURNS void
    LANGUAGE plpgsql
    AS $$
begin
  execute format('create trigger audit after insert or update or delete on %I for each row execute function write_audit(%L)',
    of_table, hide_values::text);
end $$;


--
-- Name: move_shim(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.move_shim() RETURNS trigger
    LANGUAGE plpgsql SECURITY DEFINER
    SET search_path TO 'public', 'pg_temp'
    AS $$
declare
  moved integer;
begin
  if new.shim_id is null then
    if new.thickness_mm is not null then
      raise exception 'a movement with a thickness moves one shim and names it'
        using errcode = 'check_violation', constraint = 'ck_stock_movements_shim';
    end if;
    return new;
  end if;
  if new.thickness_mm is null or new.reserved_change <> 0 or new.on_hand_change not in (-1, 0, 1) then
    raise exception 'a movement of a shim has its thickness and moves one'
      using errcode = 'check_violation', constraint = 'ck_stock_movements_shim';
  end if;

  if new.on_hand_change = 1 then
    insert into shims as s (id, part_id, thickness_mm, nominal_mm, condition, place_id)
      values (new.shim_id, new.part_id, new.thickness_mm, new.nominal_mm, new.condition, new.place_id)
      on conflict (id) do update
        set thickness_mm = new.thickness_mm, condition = new.condition, place_id = new.place_id,
            valve = null, bench_card_number = null, gone = null
        where s.part_id = new.part_id and s.place_id is null and s.engine_id is null and s.gone is distinct from 'scrapped';
  elsif new.on_hand_change = -1 then
    update shims
      set place_id = null, engine_id = new.engine_id, valve = new.valve,
          gone = case when new.engine_id is not null then null when new.kind = 'scrapped' then 'scrapped'
                      when new.kind = 'counted' then 'missing' else 'issued' end
      where id = new.shim_id and part_id = new.part_id and place_id = new.place_id
        and thickness_mm = new.thickness_mm and condition = new.condition;
  elsif new.kind = 'came_out' then
    insert into shims as s (id, part_id, thickness_mm, condition, bench_card_number, valve, came_from_motorcycle_id)
      select new.shim_id, new.part_id, new.thickness_mm, new.condition, c.number, new.valve, c.motorcycle_id
        from job_cards c where c.number = new.job_card_number and c.engine_id = new.engine_id
      on conflict (id) do update
        set thickness_mm = new.thickness_mm, condition = new.condition, engine_id = null, valve = new.valve,
            bench_card_number = excluded.bench_card_number,
            came_from_motorcycle_id = case when new.condition = 'used' then excluded.came_from_motorcycle_id end
        where s.part_id = new.part_id and s.engine_id = new.engine_id and s.valve = new.valve;
  elsif new.kind = 'issued' then
    insert into shims as s (id, part_id, thickness_mm, condition, engine_id, valve)
      values (new.shim_id, new.part_id, new.thickness_mm, new.condition, new.engine_id, new.valve)
      on conflict (id) do update
        set engine_id = new.engine_id, valve = new.valve, bench_card_number = null
        where s.part_id = new.part_id and s.bench_card_number = new.job_card_number;
  elsif new.kind = 'scrapped' then
    update shims set bench_card_number = null, valve = null, gone = 'scrapped'
      where id = new.shim_id and part_id = new.part_id and bench_card_number is not null;
  elsif new.kind = 'counted' then
    update shims set engine_id = null, valve = null, gone = 'missing'
      where id = new.shim_id and part_id = new.part_id and engine_id = new.engine_id and shims.valve = new.valve;
  end if;

  get diagnostics moved = row_count;
  if moved <> 1 then
    raise exception 'shim % is not where this movement takes it from', new.shim_id
      using errcode = 'check_violation', constraint = 'ck_shims_moved_from';
  end if;
  return new;
end $$;


--
-- Name: move_stock_balance(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.move_stock_balance() RETURNS trigger
    LANGUAGE plpgsql SECURITY DEFINER
    SET search_path TO 'public', 'pg_temp'
    AS $$
begin
  loop
    update stock_balances
      set on_hand = on_hand + new.on_hand_change, reserved = reserved + new.reserved_change
      where part_id = new.part_id and place_id = new.place_id
        and thickness_mm is not distinct from new.thickness_mm and condition = new.condition
        and lot_id is not distinct from new.lot_id;
    if found then
      return null;
    end if;
    insert into stock_balances (id, part_id, place_id, thickness_mm, condition, lot_id, on_hand, reserved)
      values (gen_random_uuid(), new.part_id, new.place_id, new.thickness_mm, new.condition, new.lot_id, 0, 0)
      on conflict do nothing;
  end loop;
end $$;


--
-- Name: refuse_change(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.refuse_change() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
begin
  raise exception 'rows of % are only ever added; a correction is a new row that supersedes the old one', tg_table_name
    using errcode = 'restrict_violation';
end $$;


--
-- Name: refuse_change_but_blanked_reason(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.refuse_change_but_blanked_reason() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
begin
  if tg_op = 'UPDATE' and new.reason = '' and to_jsonb(new) - 'reason' = to_jsonb(old) - 'reason' then
    return new;
  end if;
  raise exception 'rows of % are only ever added; an erasure blanks the reason and nothing else', tg_table_name
    using errcode = 'restrict_violation';
end $$;


--
-- Name: refuse_change_but_emptied_words(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.refuse_change_but_emptied_words() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
begin
  if tg_op = 'UPDATE' and new.words = '{}'::jsonb and to_jsonb(new) - 'words' = to_jsonb(old) - 'words' then
    return new;
  end if;
  raise exception 'rows of % are only ever added; an erasure empties the words and nothing else', tg_table_name
    using errcode = 'restrict_violation';
end $$;


--
-- Name: refuse_change_of_record_link(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.refuse_change_of_record_link() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
begin
  if tg_op = 'UPDATE'
    and to_jsonb(new) - array['revoked_at', 'revoked_by', 'opened', 'last_opened_at'] = to_jsonb(old) - array['revoked_at', 'revoked_by', 'opened', 'last_opened_at']
    and (old.revoked_at is null or new.revoked_at = old.revoked_at) and new.opened >= old.opened then
    return new;
  end if;
  raise exception 'a link to a record is revoked or opened; it lives no longer, leads nowhere else and is not revived'
    using errcode = 'restrict_violation';
end $$;


--
-- Name: refuse_comeback(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.refuse_comeback() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
declare
  comes job_cards;
  earlier job_cards;
begin
  select * into comes from job_cards where number = new.job_card_number;
  select * into earlier from job_cards where number = new.of_job_card_number;
  if earlier.motorcycle_id <> comes.motorcycle_id then
    raise exception 'job card % is of another motorcycle', new.of_job_card_number
      using errcode = 'check_violation', constraint = 'ck_comebacks_same_motorcycle';
  end if;
  if earlier.state <> 'signed_off' then
    raise exception 'job card % is not signed off', new.of_job_card_number
      using errcode = 'check_violation', constraint = 'ck_comebacks_signed';
  end if;
  return new;
end $$;


--
-- Name: refuse_stock_of_what_is_gone(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.refuse_stock_of_what_is_gone() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
declare
  other uuid;
  is_retired boolean;
begin
  select merged_into_id into other from parts where id = new.part_id for key share;
  if other is not null then
    raise exception 'part % was merged into another; nothing lies under it', new.part_id
      using errcode = 'check_violation', constraint = 'ck_stock_movements_part_merged';
  end if;
  if new.on_hand_change > 0 then
    select retired into is_retired from storage_places where id = new.place_id for key share;
    if is_retired then
      raise exception 'place % is retired; nothing is put there', new.place_id
        using errcode = 'check_violation', constraint = 'ck_stock_movements_place_retired';
    end if;
  end if;
  return new;
end $$;


--
-- Name: tell_floor(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.tell_floor() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
begin
  perform pg_notify('workshop_floor', tg_table_name);
  return null;
end $$;


--
-- Name: write_audit(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.write_audit() RETURNS trigger
    LANGUAGE plpgsql SECURITY DEFINER
    SET search_path TO 'public', 'pg_temp'
    AS $$
declare
  before jsonb := case when tg_op = 'INSERT' then '{}' else to_jsonb(old) end;
  after jsonb := case when tg_op = 'DELETE' then '{}' else to_jsonb(new) end;
  hide_values boolean := tg_argv[0]::boolean;
  changes jsonb;
  row_key jsonb;
begin
  select coalesce(jsonb_object_agg(k, case when hide_values then 'null'::jsonb else jsonb_build_array(before -> k, after -> k) end), '{}')
    into changes
    from (select jsonb_object_keys(before || after) as k) as keys
    where before -> k is distinct from after -> k;
  if changes = '{}' then
    return null;
  end if;
  select jsonb_object_agg(a.attname, coalesce(after -> a.attname, before -> a.attname))
    into row_key
    from pg_index i join pg_attribute a on a.attrelid = i.indrelid and a.attnum = any (i.indkey)
    where i.indrelid = tg_relid and i.indisprimary;
  insert into audit_rows (person_id, request_id, table_name, operation, row_key, changes)
    values (nullif(current_setting('workshop.person', true), '')::uuid,
            nullif(current_setting('workshop.request', true), ''),
            tg_table_name, lower(tg_op), row_key, changes);
  return null;
end $$;


SET default_tablespace = '';

SET default_table_access_method = heap;

--
-- Name: __EFMigrationsHistory; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public."__EFMigrationsHistory" (
    migration_id character varying(150) NOT NULL,
    product_version character varying(32) NOT NULL
);


--
-- Name: absences; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.absences (
    id uuid NOT NULL,
    resource_id uuid NOT NULL,
    span tstzrange NOT NULL,
    reason character varying(40) NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    withdrawn_at timestamp with time zone,
    CONSTRAINT ck_absences_span CHECK (((NOT isempty(span)) AND (lower(span) IS NOT NULL) AND (upper(span) IS NOT NULL)))
);


--
-- Name: account_claims; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.account_claims (
    id integer NOT NULL,
    user_id uuid NOT NULL,
    claim_type text,
    claim_value text
);


--
-- Name: account_claims_id_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.account_claims ALTER COLUMN id ADD GENERATED BY DEFAULT AS IDENTITY (
    SEQUENCE NAME public.account_claims_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: account_logins; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.account_logins (
    login_provider text NOT NULL,
    provider_key text NOT NULL,
    provider_display_name text,
    user_id uuid NOT NULL
);


--
-- Name: account_roles; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.account_roles (
    user_id uuid NOT NULL,
    role_id uuid NOT NULL
);


--
-- Name: account_tokens; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.account_tokens (
    user_id uuid NOT NULL,
    login_provider text NOT NULL,
    name text NOT NULL,
    value text
);


--
-- Name: accounts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.accounts (
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    user_name character varying(256),
    normalized_user_name character varying(256),
    email character varying(256),
    normalized_email character varying(256),
    email_confirmed boolean NOT NULL,
    password_hash text,
    security_stamp text,
    concurrency_stamp text,
    phone_number text,
    phone_number_confirmed boolean NOT NULL,
    two_factor_enabled boolean NOT NULL,
    lockout_end timestamp with time zone,
    lockout_enabled boolean NOT NULL,
    access_failed_count integer NOT NULL
);


--
-- Name: arrival_notes; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.arrival_notes (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    stage character varying(40) NOT NULL,
    kind character varying(40) NOT NULL,
    subject character varying(40),
    state character varying(40) NOT NULL,
    struck boolean NOT NULL,
    words_remark_id uuid,
    noted_by uuid NOT NULL,
    noted_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_arrival_notes_reason CHECK (((supersedes_id IS NULL) OR (reason_remark_id IS NOT NULL))),
    CONSTRAINT ck_arrival_notes_struck CHECK (((NOT struck) OR (supersedes_id IS NOT NULL))),
    CONSTRAINT ck_arrival_notes_subject CHECK (((subject IS NULL) = ((state)::text = 'none_seen'::text)))
);


--
-- Name: as_left_marks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.as_left_marks (
    id uuid NOT NULL,
    engine_model_id uuid,
    marked_by uuid NOT NULL,
    marked_at timestamp with time zone NOT NULL
);


--
-- Name: as_left_witnesses; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.as_left_witnesses (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    readings_seen integer NOT NULL,
    witnessed_by uuid NOT NULL,
    witnessed_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_as_left_witnesses_readings CHECK ((readings_seen > 0))
);


--
-- Name: audit_rows; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.audit_rows (
    id bigint NOT NULL,
    at timestamp with time zone DEFAULT clock_timestamp() NOT NULL,
    person_id uuid,
    request_id text,
    table_name character varying(63) NOT NULL,
    operation character varying(6) NOT NULL,
    row_key jsonb NOT NULL,
    changes jsonb NOT NULL
);


--
-- Name: audit_rows_id_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.audit_rows ALTER COLUMN id ADD GENERATED BY DEFAULT AS IDENTITY (
    SEQUENCE NAME public.audit_rows_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: balance_runs; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.balance_runs (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    stage character varying(40) NOT NULL,
    attempt integer NOT NULL,
    speed_rpm integer NOT NULL,
    hot_at_c numeric(4,1) NOT NULL,
    hot_of character varying(40) NOT NULL,
    gauge_id uuid NOT NULL,
    measured_at timestamp with time zone NOT NULL,
    measured_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_balance_runs_attempt CHECK (((attempt >= 1) AND (speed_rpm > 0)))
);


--
-- Name: balance_vacuums; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.balance_vacuums (
    run_id uuid NOT NULL,
    cylinder integer NOT NULL,
    vacuum_kpa numeric(7,2) NOT NULL,
    CONSTRAINT ck_balance_vacuums_cylinder CHECK (((cylinder >= 1) AND (vacuum_kpa >= (0)::numeric)))
);


--
-- Name: blade_checks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.blade_checks (
    id uuid NOT NULL,
    blade_id uuid NOT NULL,
    measured_mm numeric(5,4),
    micrometer_id uuid,
    withdrawn boolean NOT NULL,
    remark_id uuid,
    checked_by uuid NOT NULL,
    checked_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_blade_checks_micrometer CHECK (((measured_mm IS NULL) = (micrometer_id IS NULL)))
);


--
-- Name: calendar_feeds; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.calendar_feeds (
    id uuid NOT NULL,
    resource_id uuid NOT NULL,
    secret_digest bytea NOT NULL,
    created_by uuid NOT NULL,
    created_at timestamp with time zone NOT NULL,
    revoked_at timestamp with time zone
);


--
-- Name: calibrations; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.calibrations (
    id uuid NOT NULL,
    instrument_id uuid NOT NULL,
    done_on date NOT NULL,
    due_on date,
    certificate character varying(120) NOT NULL,
    laboratory character varying(120) NOT NULL,
    uncertainty numeric(14,4),
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL
);


--
-- Name: cam_rechecks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.cam_rechecks (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    drive_code character varying(60) NOT NULL,
    wrench_id uuid,
    confirmed_by uuid NOT NULL,
    confirmed_at timestamp with time zone NOT NULL
);


--
-- Name: cam_timing_checks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.cam_timing_checks (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer NOT NULL,
    camshaft_code character varying(60) NOT NULL,
    stage character varying(40) NOT NULL,
    method character varying(40) NOT NULL,
    side character varying(40),
    attempt integer NOT NULL,
    passes boolean,
    dead_centre character varying(40),
    stop_before_degrees numeric(6,2),
    stop_after_degrees numeric(6,2),
    lift_mm numeric(14,4),
    station character varying(40),
    in_running_direction boolean NOT NULL,
    instrument_id uuid,
    dial_gauge_id uuid,
    odometer_reading_id uuid NOT NULL,
    measured_at timestamp with time zone NOT NULL,
    measured_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_cam_timing_checks_attempt CHECK ((attempt >= 1)),
    CONSTRAINT ck_cam_timing_checks_method CHECK (
CASE method
    WHEN 'alignment'::text THEN ((passes IS NOT NULL) AND (side IS NULL) AND (lift_mm IS NULL))
    ELSE ((passes IS NULL) AND (side IS NOT NULL) AND (dead_centre IS NOT NULL) AND (lift_mm IS NOT NULL) AND (station IS NOT NULL))
END),
    CONSTRAINT ck_cam_timing_checks_stops CHECK ((((stop_before_degrees IS NULL) = (stop_after_degrees IS NULL)) AND ((dead_centre IS NULL) OR ((dead_centre)::text = 'marks'::text) OR (stop_before_degrees IS NOT NULL))))
);


--
-- Name: cam_timing_readings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.cam_timing_readings (
    check_id uuid NOT NULL,
    repeat integer NOT NULL,
    opens_degrees numeric(6,2) NOT NULL,
    closes_degrees numeric(6,2) NOT NULL,
    CONSTRAINT ck_cam_timing_readings_repeat CHECK (((repeat >= 1) AND ((opens_degrees + closes_degrees) > ('-180'::integer)::numeric)))
);


--
-- Name: cancellations; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.cancellations (
    job_card_number integer NOT NULL,
    reason_remark_id uuid NOT NULL,
    cancelled_by uuid NOT NULL,
    cancelled_at timestamp with time zone NOT NULL
);


--
-- Name: caution_acknowledgements; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.caution_acknowledgements (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    caution_code character varying(60) NOT NULL,
    acknowledged_by uuid NOT NULL,
    acknowledged_at timestamp with time zone NOT NULL
);


--
-- Name: chain_changes; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.chain_changes (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer NOT NULL,
    drive_code character varying(60) NOT NULL,
    kind character varying(40) NOT NULL,
    odometer_reading_id uuid NOT NULL,
    happened_at timestamp with time zone NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL
);


--
-- Name: chain_readings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.chain_readings (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer NOT NULL,
    drive_code character varying(60) NOT NULL,
    stage character varying(40) NOT NULL,
    attempt integer NOT NULL,
    extension_mm numeric(14,4),
    at_stop boolean NOT NULL,
    length_mm numeric(14,4),
    instrument_id uuid,
    odometer_reading_id uuid NOT NULL,
    measured_at timestamp with time zone NOT NULL,
    measured_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_chain_readings_something CHECK (((attempt >= 1) AND ((extension_mm IS NOT NULL) OR at_stop OR (length_mm IS NOT NULL)) AND (NOT ((extension_mm IS NOT NULL) AND at_stop)) AND (COALESCE(extension_mm, (0)::numeric) >= (0)::numeric) AND (COALESCE(length_mm, (1)::numeric) > (0)::numeric)))
);


--
-- Name: check_ins; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.check_ins (
    job_card_number integer NOT NULL,
    odometer_reading_id uuid NOT NULL,
    owners_words_remark_id uuid,
    seen_on_arrival_remark_id uuid,
    engine_stopped_at timestamp with time zone NOT NULL,
    checked_in_by uuid NOT NULL,
    checked_in_at timestamp with time zone NOT NULL
);


--
-- Name: clearance_forecasts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.clearance_forecasts (
    engine_id uuid NOT NULL,
    valve character varying(16) NOT NULL,
    lobe integer NOT NULL,
    computed_at timestamp with time zone NOT NULL,
    readings integer NOT NULL,
    present_mm numeric(8,4),
    drift_mm_per_10000_km numeric(10,6),
    drift_deviation numeric(10,6),
    leaves_limits_at_metres numeric(14,3),
    leaves_limits_earliest_at_metres numeric(14,3),
    leaves_limits_on date,
    reason character varying(400),
    fit_version integer,
    leaves_limits_earliest_on date,
    leaves_limits_latest_at_metres numeric(14,3),
    leaves_limits_latest_on date,
    outside_at_next_check double precision,
    present_at_metres numeric(14,3),
    present_deviation_mm numeric(8,4)
);


--
-- Name: clearance_readings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.clearance_readings (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer,
    import_id uuid,
    valve character varying(16) NOT NULL,
    lobe integer NOT NULL,
    stage character varying(40) NOT NULL,
    attempt integer NOT NULL,
    kind character varying(40) NOT NULL,
    go_mm numeric(5,4),
    no_go_mm numeric(5,4),
    stacked boolean NOT NULL,
    instrument_id uuid,
    head_temperature_c numeric(4,1),
    temperature_method character varying(120),
    not_cold boolean NOT NULL,
    not_remeasured boolean NOT NULL,
    odometer_reading_id uuid NOT NULL,
    measured_at timestamp with time zone NOT NULL,
    measured_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_clearance_readings_ends CHECK (
CASE kind
    WHEN 'go_and_no_go'::text THEN ((go_mm IS NOT NULL) AND (no_go_mm IS NOT NULL))
    WHEN 'none_enters'::text THEN ((go_mm IS NULL) AND (no_go_mm IS NOT NULL))
    ELSE ((go_mm IS NOT NULL) AND (no_go_mm IS NULL))
END),
    CONSTRAINT ck_clearance_readings_no_go_above_go CHECK ((no_go_mm > go_mm)),
    CONSTRAINT ck_clearance_readings_valve CHECK ((((valve)::text ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'::text) AND (lobe = ANY (ARRAY[1, 2])) AND (attempt >= 1)))
);


--
-- Name: comebacks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.comebacks (
    job_card_number integer NOT NULL,
    of_job_card_number integer NOT NULL,
    reason_remark_id uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_comebacks_earlier CHECK ((of_job_card_number <> job_card_number))
);


--
-- Name: consents; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.consents (
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    channel character varying(40) NOT NULL,
    given_on date NOT NULL,
    how_given character varying(400) NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    withdrawn_at timestamp with time zone,
    withdrawn_by uuid
);


--
-- Name: contacts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.contacts (
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    motorcycle_id uuid,
    channel character varying(40) NOT NULL,
    at timestamp with time zone NOT NULL,
    by uuid NOT NULL,
    outcome character varying(40) NOT NULL,
    call_back_on date,
    remark_id uuid,
    message_id uuid,
    entered_at timestamp with time zone NOT NULL
);


--
-- Name: count_explanations; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.count_explanations (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    thing_code character varying(60) NOT NULL,
    difference integer NOT NULL,
    words_remark_id uuid NOT NULL,
    explained_by uuid NOT NULL,
    explained_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_count_explanations_difference CHECK ((difference <> 0))
);


--
-- Name: count_taps; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.count_taps (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    thing_code character varying(60) NOT NULL,
    thing_name character varying(120) NOT NULL,
    way character varying(40) NOT NULL,
    change integer NOT NULL,
    counted_by uuid NOT NULL,
    counted_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_count_taps_change CHECK ((change <> 0))
);


--
-- Name: cylinder_tests; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.cylinder_tests (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer NOT NULL,
    cylinder integer NOT NULL,
    method character varying(40) NOT NULL,
    stage character varying(40) NOT NULL,
    attempt integer NOT NULL,
    pressure_kpa numeric(7,2) NOT NULL,
    loss_percent numeric(14,4),
    heard_at_intake boolean NOT NULL,
    heard_at_exhaust boolean NOT NULL,
    heard_at_crankcase boolean NOT NULL,
    heard_in_coolant boolean NOT NULL,
    warmth character varying(40) NOT NULL,
    throttle_open boolean NOT NULL,
    tries integer,
    instrument_id uuid,
    odometer_reading_id uuid NOT NULL,
    measured_at timestamp with time zone NOT NULL,
    measured_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_cylinder_tests_attempt CHECK (((attempt >= 1) AND (cylinder >= 1) AND (pressure_kpa >= (0)::numeric) AND (COALESCE(tries, 1) >= 1))),
    CONSTRAINT ck_cylinder_tests_loss CHECK (
CASE method
    WHEN 'leak_down'::text THEN (((loss_percent >= (0)::numeric) AND (loss_percent <= (100)::numeric)) AND (pressure_kpa > (0)::numeric) AND (tries IS NULL))
    ELSE ((loss_percent IS NULL) AND (NOT (heard_at_intake OR heard_at_exhaust OR heard_at_crankcase OR heard_in_coolant)))
END),
    CONSTRAINT ck_cylinder_tests_reason CHECK (((supersedes_id IS NULL) OR (reason_remark_id IS NOT NULL)))
);


--
-- Name: data_protection_keys; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.data_protection_keys (
    id integer NOT NULL,
    friendly_name text,
    xml text
);


--
-- Name: data_protection_keys_id_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.data_protection_keys ALTER COLUMN id ADD GENERATED BY DEFAULT AS IDENTITY (
    SEQUENCE NAME public.data_protection_keys_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: done_items; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.done_items (
    id uuid NOT NULL,
    motorcycle_id uuid NOT NULL,
    service_item_code character varying(60) NOT NULL,
    done_on date NOT NULL,
    metres numeric(14,3) NOT NULL,
    job_card_number integer,
    done_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    import_id uuid,
    remark_id uuid
);


--
-- Name: drift_fits; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.drift_fits (
    engine_model_id uuid NOT NULL,
    version integer NOT NULL,
    computed_at timestamp with time zone NOT NULL,
    readings integer NOT NULL,
    log_likelihood double precision,
    fit jsonb,
    why_not character varying(400),
    CONSTRAINT ck_drift_fits_fit_or_reason CHECK (((fit IS NULL) = (why_not IS NOT NULL)))
);


--
-- Name: drift_pools; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.drift_pools (
    kind character varying(40) NOT NULL,
    version integer NOT NULL,
    computed_at timestamp with time zone NOT NULL,
    readings integer NOT NULL,
    pool jsonb
);


--
-- Name: drift_refits; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.drift_refits (
    engine_model_id uuid NOT NULL,
    requested_at timestamp with time zone NOT NULL,
    wanted_since timestamp with time zone,
    started_at timestamp with time zone,
    fit_version integer,
    engines integer NOT NULL,
    engines_written integer NOT NULL,
    last_engine uuid,
    finished_at timestamp with time zone
);


--
-- Name: due_items; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.due_items (
    motorcycle_id uuid NOT NULL,
    service_item_code character varying(60) NOT NULL,
    name character varying(120) NOT NULL,
    due_on date,
    due_at_metres numeric(14,3),
    expected_on date NOT NULL,
    earliest_on date,
    latest_on date,
    computed_at timestamp with time zone NOT NULL,
    last_done_at_metres numeric(14,3),
    last_done_on date,
    rate_basis character varying(40),
    by_forecast boolean DEFAULT false NOT NULL,
    advice character varying(40) DEFAULT ''::character varying NOT NULL,
    comes_on date DEFAULT '0001-01-01'::date NOT NULL,
    included_in character varying(60),
    left_metres numeric(14,3),
    put_off_id uuid,
    saves_minutes integer DEFAULT 0 NOT NULL
);


--
-- Name: due_recomputes; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.due_recomputes (
    id uuid NOT NULL,
    requested_by uuid,
    requested_at timestamp with time zone NOT NULL,
    started_at timestamp with time zone,
    fleet_riding_version integer,
    motorcycles integer NOT NULL,
    written integer NOT NULL,
    last_motorcycle uuid,
    finished_at timestamp with time zone
);


--
-- Name: due_visits; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.due_visits (
    motorcycle_id uuid NOT NULL,
    engine_model_id uuid NOT NULL,
    comes_on date NOT NULL,
    left_metres numeric(14,3),
    labour_minutes integer NOT NULL,
    saves_minutes integer NOT NULL,
    special_tools text[] NOT NULL,
    computed_at timestamp with time zone NOT NULL
);


--
-- Name: engine_fittings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.engine_fittings (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    motorcycle_id uuid NOT NULL,
    fitted_on date NOT NULL,
    removed_on date,
    motorcycle_metres numeric(14,3) NOT NULL,
    engine_metres numeric(14,3) NOT NULL,
    CONSTRAINT ck_engine_fittings_order CHECK ((removed_on > fitted_on))
);


--
-- Name: engine_model_versions; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.engine_model_versions (
    id uuid NOT NULL,
    engine_model_id uuid NOT NULL,
    version integer NOT NULL,
    specification jsonb NOT NULL,
    created_by uuid NOT NULL,
    created_at timestamp with time zone NOT NULL,
    note character varying(4000)
);


--
-- Name: engine_models; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.engine_models (
    id uuid NOT NULL,
    maker character varying(120) NOT NULL,
    name character varying(120) NOT NULL,
    invented boolean NOT NULL,
    current_version integer NOT NULL
);


--
-- Name: engine_outlooks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.engine_outlooks (
    engine_id uuid NOT NULL,
    computed_at timestamp with time zone NOT NULL,
    fit_version integer,
    next_check_at_metres numeric(14,3),
    next_check_on date,
    outside_at_next_check double precision,
    intake_outside_at_next_check double precision,
    exhaust_outside_at_next_check double precision,
    passes_threshold_at_metres numeric(14,3),
    passes_threshold_on date,
    soonest_on date,
    soonest_intake_on date,
    soonest_exhaust_on date
);


--
-- Name: engine_stops; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.engine_stops (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    stopped_at timestamp with time zone NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL
);


--
-- Name: engines; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.engines (
    id uuid NOT NULL,
    engine_model_id uuid NOT NULL,
    serial_number character varying(120) NOT NULL
);


--
-- Name: estimate_answers; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.estimate_answers (
    id uuid NOT NULL,
    estimate_id uuid,
    finding_id uuid,
    decision character varying(40) NOT NULL,
    person_id uuid,
    way character varying(40) NOT NULL,
    said_at timestamp with time zone NOT NULL,
    told_of_danger boolean NOT NULL,
    remark_id uuid,
    recorded_by uuid NOT NULL,
    recorded_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_estimate_answers_to_what CHECK (((estimate_id IS NOT NULL) OR ((finding_id IS NOT NULL) AND ((decision)::text = 'declined'::text))))
);


--
-- Name: estimate_lines; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.estimate_lines (
    estimate_id uuid NOT NULL,
    place integer NOT NULL,
    source character varying(70) NOT NULL,
    kind character varying(40) NOT NULL,
    charge character varying(40) NOT NULL,
    option character varying(60),
    text character varying(4000) NOT NULL,
    part_code character varying(60),
    quantity numeric(14,4) NOT NULL,
    unit character varying(40) NOT NULL,
    unit_price numeric(14,4) NOT NULL,
    proposed_unit_price numeric(14,4),
    reason_remark_id uuid,
    unit_cost numeric(14,4),
    tax_code character varying(60) NOT NULL,
    tax_percent numeric(14,4) NOT NULL,
    net numeric(14,4) NOT NULL,
    dropped boolean NOT NULL
);


--
-- Name: estimates; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.estimates (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    version integer NOT NULL,
    finding_id uuid,
    currency character varying(3) NOT NULL,
    net numeric(14,4) NOT NULL,
    tax numeric(14,4) NOT NULL,
    gross numeric(14,4) NOT NULL,
    valid_until date,
    made_by uuid NOT NULL,
    made_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_estimates_gross CHECK ((gross = (net + tax)))
);


--
-- Name: expected_deliveries; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.expected_deliveries (
    id uuid NOT NULL,
    part_id uuid NOT NULL,
    thickness_mm numeric(5,3),
    quantity numeric(14,4) NOT NULL,
    expected_on date NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    closed_at timestamp with time zone,
    order_line_id uuid,
    CONSTRAINT ck_expected_deliveries_quantity CHECK ((quantity > (0)::numeric))
);


--
-- Name: fastener_ticks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.fastener_ticks (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    fastener_code character varying(60) NOT NULL,
    tightened boolean NOT NULL,
    wrench_id uuid,
    supersedes_id uuid,
    ticked_by uuid NOT NULL,
    ticked_at timestamp with time zone NOT NULL,
    adapter_angle_degrees numeric(14,4),
    adapter_id uuid,
    cycles integer,
    dialled numeric(14,4)
);


--
-- Name: feeler_blades; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.feeler_blades (
    id uuid NOT NULL,
    instrument_id uuid NOT NULL,
    nominal_mm numeric(5,4) NOT NULL,
    measured_mm numeric(5,4),
    withdrawn boolean NOT NULL
);


--
-- Name: findings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.findings (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    text_remark_id uuid NOT NULL,
    place character varying(120) NOT NULL,
    gravity character varying(40) NOT NULL,
    service_item_code character varying(60),
    found_by uuid NOT NULL,
    found_at timestamp with time zone NOT NULL,
    done_at timestamp with time zone,
    done_by uuid,
    withdrawn_at timestamp with time zone,
    withdrawn_by uuid,
    withdrawn_remark_id uuid
);


--
-- Name: fleet_ridings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.fleet_ridings (
    version integer NOT NULL,
    computed_at timestamp with time zone NOT NULL,
    metres_per_day numeric(14,3) NOT NULL,
    log_deviation double precision NOT NULL,
    wander_days double precision NOT NULL,
    season_cosine double precision NOT NULL,
    season_sine double precision NOT NULL,
    season_probability double precision,
    motorcycles integer NOT NULL
);


--
-- Name: gauge_trial_appraisers; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.gauge_trial_appraisers (
    trial_id uuid NOT NULL,
    person_id uuid NOT NULL,
    place integer NOT NULL
);


--
-- Name: gauge_trial_readings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.gauge_trial_readings (
    id uuid NOT NULL,
    trial_id uuid NOT NULL,
    appraiser_id uuid NOT NULL,
    part integer NOT NULL,
    trial integer NOT NULL,
    value numeric(14,4) NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_gauge_trial_readings_reason CHECK (((supersedes_id IS NULL) = (reason_remark_id IS NULL)))
);


--
-- Name: gauge_trials; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.gauge_trials (
    id uuid NOT NULL,
    name character varying(120) NOT NULL,
    design character varying(40) NOT NULL,
    instrument_id uuid,
    unit character varying(12) NOT NULL,
    parts integer NOT NULL,
    trials integer NOT NULL,
    tolerance numeric(14,4),
    started_by uuid NOT NULL,
    started_at timestamp with time zone NOT NULL,
    given_up_at timestamp with time zone,
    CONSTRAINT ck_gauge_trials_two CHECK (((LEAST(parts, trials) >= 2) AND (tolerance > (0)::numeric)))
);


--
-- Name: goods_in_imports; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.goods_in_imports (
    id uuid NOT NULL,
    file_name character varying(120) NOT NULL,
    lines integer NOT NULL,
    content_hash bytea NOT NULL,
    imported_by uuid NOT NULL,
    imported_at timestamp with time zone NOT NULL
);


--
-- Name: hand_turns; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.hand_turns (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    confirmed_by uuid NOT NULL,
    confirmed_at timestamp with time zone NOT NULL
);


--
-- Name: history_imports; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.history_imports (
    id uuid NOT NULL,
    file_name character varying(120) NOT NULL,
    lines integer NOT NULL,
    content_hash bytea NOT NULL,
    imported_by uuid NOT NULL,
    imported_at timestamp with time zone NOT NULL
);


--
-- Name: holidays; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.holidays (
    day date NOT NULL,
    name character varying(80) NOT NULL
);


--
-- Name: instrument_events; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.instrument_events (
    id uuid NOT NULL,
    instrument_id uuid NOT NULL,
    kind character varying(40) NOT NULL,
    remark_id uuid,
    holder_id uuid,
    until date,
    entered_by uuid NOT NULL,
    at timestamp with time zone NOT NULL
);


--
-- Name: instruments; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.instruments (
    id uuid NOT NULL,
    kind character varying(40) NOT NULL,
    name character varying(120) NOT NULL,
    serial_number character varying(120) NOT NULL,
    unit character varying(12) NOT NULL,
    range_lowest numeric(14,4),
    range_highest numeric(14,4),
    uncertainty numeric(14,4),
    calibrated_on date,
    calibration_due_on date,
    state character varying(40) NOT NULL,
    holder_id uuid,
    calibration_cycles integer,
    calibration_months integer,
    damage character varying(40),
    damaged_on date,
    drive character varying(40),
    graduation numeric(14,4),
    length_mm numeric(14,4),
    released_beyond_cycles boolean DEFAULT false NOT NULL,
    released_on date,
    released_until date,
    CONSTRAINT ck_instruments_scale CHECK (((graduation > (0)::numeric) AND (length_mm > (0)::numeric) AND (calibration_months > 0) AND (calibration_cycles > 0)))
);


--
-- Name: issued_records; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.issued_records (
    job_card_number integer NOT NULL,
    issued_at timestamp with time zone NOT NULL,
    issued_by uuid NOT NULL,
    is_later boolean NOT NULL,
    document jsonb NOT NULL,
    words jsonb NOT NULL
);


--
-- Name: job_card_items; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.job_card_items (
    job_card_number integer NOT NULL,
    service_item_code character varying(60) NOT NULL,
    likelihood character varying(40) NOT NULL,
    started_at timestamp with time zone
);


--
-- Name: job_cards; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.job_cards (
    number integer NOT NULL,
    motorcycle_id uuid NOT NULL,
    engine_id uuid NOT NULL,
    engine_model_version_id uuid NOT NULL,
    state character varying(40) NOT NULL,
    booked_by uuid NOT NULL,
    booked_at timestamp with time zone NOT NULL,
    starts_at timestamp with time zone NOT NULL,
    ends_at timestamp with time zone NOT NULL,
    plan_revision integer DEFAULT 0 NOT NULL,
    CONSTRAINT ck_job_cards_span CHECK ((ends_at > starts_at))
);


--
-- Name: job_cards_number_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.job_cards ALTER COLUMN number ADD GENERATED BY DEFAULT AS IDENTITY (
    SEQUENCE NAME public.job_cards_number_seq
    START WITH 1001
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: kit_substitutions; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.kit_substitutions (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    part_code character varying(60) NOT NULL,
    instead_id uuid NOT NULL,
    reason_remark_id uuid,
    chosen_by uuid NOT NULL,
    chosen_at timestamp with time zone NOT NULL
);


--
-- Name: leak_looks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.leak_looks (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    place_code character varying(60) NOT NULL,
    place_name character varying(120) NOT NULL,
    attempt integer NOT NULL,
    state character varying(40) NOT NULL,
    words_remark_id uuid,
    run_minutes integer NOT NULL,
    looked_at timestamp with time zone NOT NULL,
    looked_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_leak_looks_words CHECK (((attempt >= 1) AND (run_minutes > 0) AND (((state)::text = 'dry'::text) OR (words_remark_id IS NOT NULL))))
);


--
-- Name: left_out_visits; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.left_out_visits (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer,
    odometer_reading_id uuid NOT NULL,
    left_out boolean NOT NULL,
    reason_remark_id uuid NOT NULL,
    decided_by uuid NOT NULL,
    decided_at timestamp with time zone NOT NULL
);


--
-- Name: message_templates; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.message_templates (
    id uuid NOT NULL,
    name character varying(120) NOT NULL,
    channel character varying(40) NOT NULL,
    subject character varying(200) NOT NULL,
    body character varying(10000) NOT NULL
);


--
-- Name: motorcycle_moves; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.motorcycle_moves (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    resource_id uuid NOT NULL,
    tag_remark_id uuid,
    moved_at timestamp with time zone NOT NULL,
    moved_by uuid NOT NULL
);


--
-- Name: motorcycles; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.motorcycles (
    id uuid NOT NULL,
    registration character varying(16) NOT NULL,
    vin character varying(17),
    maker character varying(120) NOT NULL,
    model character varying(120) NOT NULL,
    model_year integer NOT NULL,
    owner_id uuid,
    retired boolean NOT NULL,
    options text[] DEFAULT '{}'::text[] NOT NULL,
    use character varying(40) DEFAULT 'normal'::character varying NOT NULL,
    use_said_at timestamp with time zone,
    use_said_by uuid
);


--
-- Name: occupancies; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.occupancies (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    phase character varying(40) NOT NULL,
    resource_id uuid NOT NULL,
    span tstzrange NOT NULL,
    live boolean NOT NULL,
    CONSTRAINT ck_occupancies_span CHECK (((NOT isempty(span)) AND (lower(span) IS NOT NULL) AND (upper(span) IS NOT NULL)))
);


--
-- Name: odometer_readings; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.odometer_readings (
    id uuid NOT NULL,
    odometer_id uuid NOT NULL,
    motorcycle_id uuid NOT NULL,
    read_on date NOT NULL,
    count integer NOT NULL,
    unit character varying(40) NOT NULL,
    metres numeric(14,3) NOT NULL,
    job_card_number integer,
    supersedes_id uuid,
    reason_remark_id uuid,
    measured_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    confirmed boolean DEFAULT false NOT NULL,
    CONSTRAINT ck_odometer_readings_count CHECK (((count >= 0) AND (count <= 999999)))
);


--
-- Name: odometers; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.odometers (
    id uuid NOT NULL,
    motorcycle_id uuid NOT NULL,
    unit character varying(40) NOT NULL,
    fitted_on date NOT NULL,
    removed_on date,
    offset_metres numeric(14,3) NOT NULL
);


--
-- Name: opening_hours; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.opening_hours (
    weekday integer NOT NULL,
    opens_at time without time zone NOT NULL,
    closes_at time without time zone NOT NULL,
    CONSTRAINT ck_opening_hours_order CHECK ((closes_at > opens_at))
);


--
-- Name: outbox_messages; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.outbox_messages (
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    motorcycle_id uuid NOT NULL,
    channel character varying(40) NOT NULL,
    "to" character varying(160) NOT NULL,
    subject character varying(200) NOT NULL,
    body character varying(10000) NOT NULL,
    state character varying(40) NOT NULL,
    attempts integer NOT NULL,
    next_try_at timestamp with time zone,
    claimed_until timestamp with time zone,
    claim_id uuid,
    internet_message_id character varying(400),
    last_fault character varying(400),
    created_by uuid NOT NULL,
    created_at timestamp with time zone NOT NULL,
    sent_by uuid,
    sent_at timestamp with time zone,
    CONSTRAINT ck_outbox_messages_claim CHECK ((((state)::text = 'being_sent'::text) <= ((claim_id IS NOT NULL) AND (claimed_until IS NOT NULL))))
);


--
-- Name: part_alternatives; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.part_alternatives (
    part_id uuid NOT NULL,
    alternative_id uuid NOT NULL,
    note character varying(120),
    CONSTRAINT ck_part_alternatives_two CHECK ((part_id <> alternative_id))
);


--
-- Name: part_changes; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.part_changes (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    valve character varying(16),
    part character varying(40) NOT NULL,
    kind character varying(40) NOT NULL,
    job_card_number integer,
    odometer_reading_id uuid NOT NULL,
    changed_on date NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    remark_id uuid,
    CONSTRAINT ck_part_changes_valve CHECK (((valve)::text ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'::text))
);


--
-- Name: part_scan_codes; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.part_scan_codes (
    code character varying(80) NOT NULL,
    part_id uuid NOT NULL,
    quantity numeric(14,4) NOT NULL,
    CONSTRAINT ck_part_scan_codes_quantity CHECK ((quantity > (0)::numeric))
);


--
-- Name: part_supplies; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.part_supplies (
    id uuid NOT NULL,
    part_id uuid NOT NULL,
    supplier_id uuid NOT NULL,
    supplier_code character varying(60),
    pack_quantity numeric(14,4) NOT NULL,
    smallest_quantity numeric(14,4),
    unit_cost numeric(14,4),
    delivery_days integer,
    preferred boolean NOT NULL,
    CONSTRAINT ck_part_supplies_pack CHECK (((pack_quantity > (0)::numeric) AND (smallest_quantity > (0)::numeric)))
);


--
-- Name: parts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.parts (
    id uuid NOT NULL,
    code character varying(60) NOT NULL,
    name character varying(120) NOT NULL,
    kind character varying(40) NOT NULL,
    unit character varying(40) NOT NULL,
    inner_diameter_mm numeric(14,4),
    outer_diameter_mm numeric(14,4),
    section_mm numeric(14,4),
    material character varying(120),
    discontinued boolean NOT NULL,
    delivery_days integer,
    designation character varying(60),
    fitted_once boolean DEFAULT false NOT NULL,
    form character varying(60),
    hardness integer,
    merged_into_id uuid,
    net_price numeric(14,4),
    pack_quantity numeric(14,4),
    reorder_point numeric(14,4),
    replaced_by_id uuid,
    service_level double precision,
    shelf_life_months integer,
    stocked boolean DEFAULT true NOT NULL,
    tax_rate_code character varying(60),
    CONSTRAINT ck_parts_merged CHECK (((merged_into_id IS DISTINCT FROM id) AND (replaced_by_id IS DISTINCT FROM id)))
);


--
-- Name: people; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.people (
    id uuid NOT NULL,
    name character varying(120) NOT NULL,
    phone character varying(40),
    email character varying(160),
    is_staff boolean NOT NULL,
    erased_at timestamp with time zone
);


--
-- Name: phase_starts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.phase_starts (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    phase character varying(40) NOT NULL,
    technician_id uuid,
    started_at timestamp with time zone NOT NULL,
    entered_by uuid NOT NULL,
    reason_remark_id uuid
);


--
-- Name: photos; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.photos (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    finding_id uuid,
    media_type character varying(20) NOT NULL,
    content bytea NOT NULL,
    thumbnail bytea NOT NULL,
    width_px integer NOT NULL,
    height_px integer NOT NULL,
    caption_remark_id uuid,
    added_by uuid NOT NULL,
    added_at timestamp with time zone NOT NULL,
    removed_at timestamp with time zone,
    removed_by uuid,
    removed_remark_id uuid,
    CONSTRAINT ck_photos_content CHECK (((octet_length(content) = 0) = (removed_at IS NOT NULL)))
);


--
-- Name: planned_phases; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.planned_phases (
    job_card_number integer NOT NULL,
    phase character varying(40) NOT NULL,
    span tstzrange NOT NULL,
    CONSTRAINT ck_planned_phases_span CHECK (((NOT isempty(span)) AND (lower(span) IS NOT NULL) AND (upper(span) IS NOT NULL)))
);


--
-- Name: plug_checks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.plug_checks (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer NOT NULL,
    cylinder integer NOT NULL,
    plug integer NOT NULL,
    attempt integer NOT NULL,
    condition character varying(40) NOT NULL,
    gap_found_mm numeric(14,4),
    renewed boolean NOT NULL,
    part_code character varying(60),
    gap_left_mm numeric(14,4) NOT NULL,
    gauge character varying(40) NOT NULL,
    instrument_id uuid,
    odometer_reading_id uuid NOT NULL,
    checked_at timestamp with time zone NOT NULL,
    checked_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_plug_checks_attempt CHECK (((attempt >= 1) AND (cylinder >= 1) AND (plug >= 1))),
    CONSTRAINT ck_plug_checks_gaps CHECK (((gap_left_mm > (0)::numeric) AND (COALESCE(gap_found_mm, (1)::numeric) > (0)::numeric))),
    CONSTRAINT ck_plug_checks_part CHECK ((renewed OR (part_code IS NULL))),
    CONSTRAINT ck_plug_checks_reason CHECK (((supersedes_id IS NULL) OR (reason_remark_id IS NOT NULL)))
);


--
-- Name: position_confirmations; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.position_confirmations (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    stage character varying(40) NOT NULL,
    "position" character varying(120) NOT NULL,
    confirmed_by uuid NOT NULL,
    confirmed_at timestamp with time zone NOT NULL
);


--
-- Name: purchase_order_lines; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.purchase_order_lines (
    id uuid NOT NULL,
    order_number integer NOT NULL,
    part_id uuid NOT NULL,
    thickness_mm numeric(5,3),
    quantity numeric(14,4) NOT NULL,
    unit_cost numeric(14,4),
    expected_on date,
    received numeric(14,4) NOT NULL,
    reason character varying(4000),
    CONSTRAINT ck_purchase_order_lines_quantity CHECK (((quantity > (0)::numeric) AND (received >= (0)::numeric)))
);


--
-- Name: purchase_orders; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.purchase_orders (
    number integer NOT NULL,
    supplier_id uuid NOT NULL,
    state character varying(40) NOT NULL,
    made_by uuid NOT NULL,
    made_at timestamp with time zone NOT NULL,
    placed_by uuid,
    placed_at timestamp with time zone,
    remark_id uuid
);


--
-- Name: purchase_orders_number_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.purchase_orders ALTER COLUMN number ADD GENERATED BY DEFAULT AS IDENTITY (
    SEQUENCE NAME public.purchase_orders_number_seq
    START WITH 501
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: put_offs; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.put_offs (
    id uuid NOT NULL,
    motorcycle_id uuid NOT NULL,
    service_item_code character varying(60) NOT NULL,
    until date,
    reason character varying(400) NOT NULL,
    decided_on date NOT NULL,
    decided_by uuid NOT NULL,
    decided_at timestamp with time zone NOT NULL
);


--
-- Name: reading_imports; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.reading_imports (
    id uuid NOT NULL,
    file_name character varying(120) NOT NULL,
    rows integer NOT NULL,
    imported_by uuid NOT NULL,
    imported_at timestamp with time zone NOT NULL
);


--
-- Name: record_links; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.record_links (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    secret_digest bytea NOT NULL,
    created_by uuid NOT NULL,
    created_at timestamp with time zone NOT NULL,
    expires_at timestamp with time zone NOT NULL,
    revoked_at timestamp with time zone,
    revoked_by uuid,
    opened integer NOT NULL,
    last_opened_at timestamp with time zone,
    CONSTRAINT ck_record_links_lives CHECK ((expires_at > created_at)),
    CONSTRAINT ck_record_links_opened CHECK (((opened >= 0) AND ((opened > 0) = (last_opened_at IS NOT NULL))))
);


--
-- Name: remarks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.remarks (
    id uuid NOT NULL,
    text character varying(4000) NOT NULL,
    written_by uuid NOT NULL,
    written_at timestamp with time zone NOT NULL,
    erased_at timestamp with time zone
);


--
-- Name: reminder_resets; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.reminder_resets (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    attempt integer NOT NULL,
    outcome character varying(40) NOT NULL,
    words_remark_id uuid,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_reminder_resets_words CHECK (((attempt >= 1) AND (((outcome)::text <> 'not_reset'::text) OR (words_remark_id IS NOT NULL))))
);


--
-- Name: resources; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.resources (
    id uuid NOT NULL,
    kind character varying(40) NOT NULL,
    name character varying(80) NOT NULL,
    person_id uuid,
    capabilities text[] NOT NULL,
    retired boolean NOT NULL,
    grade character varying(40)
);


--
-- Name: role_claims; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.role_claims (
    id integer NOT NULL,
    role_id uuid NOT NULL,
    claim_type text,
    claim_value text
);


--
-- Name: role_claims_id_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.role_claims ALTER COLUMN id ADD GENERATED BY DEFAULT AS IDENTITY (
    SEQUENCE NAME public.role_claims_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: roles; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.roles (
    id uuid NOT NULL,
    name character varying(256),
    normalized_name character varying(256),
    concurrency_stamp text
);


--
-- Name: seal_inspections; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.seal_inspections (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    place_code character varying(60) NOT NULL,
    part_code character varying(60) NOT NULL,
    verdict character varying(40) NOT NULL,
    taken numeric(14,4) NOT NULL,
    remark_id uuid,
    supersedes_id uuid,
    inspected_by uuid NOT NULL,
    inspected_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_seal_inspections_taken CHECK (((taken >= (0)::numeric) AND ((taken > (0)::numeric) OR ((verdict)::text = 'fit'::text))))
);


--
-- Name: second_person_marks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.second_person_marks (
    engine_model_id uuid NOT NULL,
    fastener_code character varying(60) NOT NULL,
    marked_by uuid NOT NULL,
    marked_at timestamp with time zone NOT NULL
);


--
-- Name: sessions; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.sessions (
    id uuid NOT NULL,
    account_id uuid NOT NULL,
    kind integer NOT NULL,
    token_hash bytea NOT NULL,
    device character varying(200) NOT NULL,
    created_at timestamp with time zone NOT NULL,
    expires_at timestamp with time zone NOT NULL,
    revoked_at timestamp with time zone
);


--
-- Name: shim_observations; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.shim_observations (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer,
    import_id uuid,
    valve character varying(16) NOT NULL,
    stage character varying(40) NOT NULL,
    thickness_mm numeric(5,3),
    micrometer_id uuid,
    odometer_reading_id uuid NOT NULL,
    measured_at timestamp with time zone NOT NULL,
    measured_by uuid NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_shim_observations_valve CHECK (((valve)::text ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'::text))
);


--
-- Name: shim_plan_choices; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.shim_plan_choices (
    job_card_number integer NOT NULL,
    version integer NOT NULL,
    aim character varying(40) NOT NULL,
    set_all boolean NOT NULL,
    guard character varying(40) NOT NULL,
    locks jsonb NOT NULL,
    chosen_by uuid NOT NULL,
    chosen_at timestamp with time zone NOT NULL
);


--
-- Name: shim_series; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.shim_series (
    part_id uuid NOT NULL,
    seat character varying(40) NOT NULL,
    diameter_mm numeric(6,3) NOT NULL,
    smallest_mm numeric(5,3) NOT NULL,
    largest_mm numeric(5,3) NOT NULL,
    step_mm numeric(5,3) NOT NULL,
    place_id uuid NOT NULL,
    columns integer NOT NULL,
    source character varying(4000) NOT NULL,
    CONSTRAINT ck_shim_series_sizes CHECK (((largest_mm >= smallest_mm) AND (step_mm > (0)::numeric) AND ((columns >= 1) AND (columns <= 26))))
);


--
-- Name: shims; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.shims (
    id uuid NOT NULL,
    part_id uuid NOT NULL,
    thickness_mm numeric(5,3) NOT NULL,
    nominal_mm numeric(5,3),
    condition character varying(40) NOT NULL,
    came_from_motorcycle_id uuid,
    place_id uuid,
    engine_id uuid,
    valve character varying(16),
    bench_card_number integer,
    gone character varying(40),
    CONSTRAINT ck_shims_in_one_place CHECK ((num_nonnulls(place_id, engine_id, bench_card_number, gone) = 1)),
    CONSTRAINT ck_shims_valve CHECK (((valve IS NULL) = ((engine_id IS NULL) AND (bench_card_number IS NULL))))
);


--
-- Name: sign_offs; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.sign_offs (
    job_card_number integer NOT NULL,
    odometer_reading_id uuid NOT NULL,
    signed_by uuid NOT NULL,
    signed_at timestamp with time zone NOT NULL,
    remark_id uuid
);


--
-- Name: specification_drafts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.specification_drafts (
    engine_model_id uuid NOT NULL,
    person_id uuid NOT NULL,
    based_on_version integer NOT NULL,
    maker character varying(120),
    name character varying(120),
    invented boolean NOT NULL,
    specification jsonb NOT NULL,
    started_at timestamp with time zone NOT NULL,
    changed_at timestamp with time zone NOT NULL
);


--
-- Name: stock_balances; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.stock_balances (
    id uuid NOT NULL,
    part_id uuid NOT NULL,
    place_id uuid NOT NULL,
    thickness_mm numeric(5,3),
    condition character varying(40) NOT NULL,
    on_hand numeric(14,4) NOT NULL,
    reserved numeric(14,4) NOT NULL,
    lot_id uuid,
    CONSTRAINT ck_stock_balances_not_below_zero CHECK (((on_hand >= (0)::numeric) AND (reserved >= (0)::numeric)))
);


--
-- Name: stock_count_lines; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.stock_count_lines (
    id uuid NOT NULL,
    count_id uuid NOT NULL,
    number integer NOT NULL,
    part_id uuid NOT NULL,
    lot_id uuid,
    counted numeric(14,4) NOT NULL,
    expected numeric(14,4) NOT NULL,
    reason character varying(40),
    remark_id uuid,
    counted_by uuid NOT NULL,
    counted_at timestamp with time zone NOT NULL,
    explained_by uuid,
    CONSTRAINT ck_stock_count_lines_counted CHECK ((counted >= (0)::numeric))
);


--
-- Name: stock_counts; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.stock_counts (
    id uuid NOT NULL,
    place_id uuid NOT NULL,
    started_by uuid NOT NULL,
    started_at timestamp with time zone NOT NULL,
    closed_by uuid,
    closed_at timestamp with time zone,
    given_up boolean NOT NULL,
    CONSTRAINT ck_stock_counts_given_up CHECK (((NOT given_up) OR (closed_at IS NOT NULL)))
);


--
-- Name: stock_movements; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.stock_movements (
    id uuid NOT NULL,
    part_id uuid NOT NULL,
    place_id uuid NOT NULL,
    thickness_mm numeric(5,3),
    condition character varying(40) NOT NULL,
    kind character varying(40) NOT NULL,
    on_hand_change numeric(14,4) NOT NULL,
    reserved_change numeric(14,4) NOT NULL,
    job_card_number integer,
    moved_by uuid NOT NULL,
    moved_at timestamp with time zone NOT NULL,
    engine_id uuid,
    nominal_mm numeric(5,3),
    reason_remark_id uuid,
    scrap_reason character varying(40),
    shim_id uuid,
    valve character varying(16),
    count_id uuid,
    lot_id uuid,
    order_line_id uuid,
    unit_cost numeric(14,4),
    CONSTRAINT ck_stock_movements_valve CHECK (((engine_id IS NULL) = (valve IS NULL)))
);


--
-- Name: stock_differences; Type: VIEW; Schema: public; Owner: -
--

CREATE VIEW public.stock_differences AS
 WITH ledger AS (
         SELECT stock_movements.part_id,
            stock_movements.place_id,
            stock_movements.thickness_mm,
            stock_movements.condition,
            stock_movements.lot_id,
            sum(stock_movements.on_hand_change) AS on_hand,
            sum(stock_movements.reserved_change) AS reserved
           FROM public.stock_movements
          GROUP BY stock_movements.part_id, stock_movements.place_id, stock_movements.thickness_mm, stock_movements.condition, stock_movements.lot_id
        ), both_sides AS (
         SELECT ledger.part_id,
            ledger.place_id,
            ledger.thickness_mm,
            ledger.condition,
            ledger.lot_id,
            ledger.on_hand,
            ledger.reserved,
            0.0 AS balance_on_hand,
            0.0 AS balance_reserved
           FROM ledger
        UNION ALL
         SELECT stock_balances.part_id,
            stock_balances.place_id,
            stock_balances.thickness_mm,
            stock_balances.condition,
            stock_balances.lot_id,
            0,
            0,
            stock_balances.on_hand,
            stock_balances.reserved
           FROM public.stock_balances
        )
 SELECT both_sides.part_id,
    both_sides.place_id,
    both_sides.thickness_mm,
    both_sides.condition,
    both_sides.lot_id,
    sum(both_sides.on_hand) AS ledger_on_hand,
    sum(both_sides.balance_on_hand) AS balance_on_hand,
    sum(both_sides.reserved) AS ledger_reserved,
    sum(both_sides.balance_reserved) AS balance_reserved
   FROM both_sides
  GROUP BY both_sides.part_id, both_sides.place_id, both_sides.thickness_mm, both_sides.condition, both_sides.lot_id
 HAVING ((sum(both_sides.on_hand) <> sum(both_sides.balance_on_hand)) OR (sum(both_sides.reserved) <> sum(both_sides.balance_reserved)))
UNION ALL
 SELECT COALESCE(b.part_id, s.part_id) AS part_id,
    COALESCE(b.place_id, s.place_id) AS place_id,
    COALESCE(b.thickness_mm, s.thickness_mm) AS thickness_mm,
    COALESCE(b.condition, s.condition) AS condition,
    NULL::uuid AS lot_id,
    COALESCE(s.there, (0)::bigint) AS ledger_on_hand,
    COALESCE(b.on_hand, (0)::numeric) AS balance_on_hand,
    0 AS ledger_reserved,
    0 AS balance_reserved
   FROM (( SELECT stock_balances.id,
            stock_balances.part_id,
            stock_balances.place_id,
            stock_balances.thickness_mm,
            stock_balances.condition,
            stock_balances.on_hand,
            stock_balances.reserved,
            stock_balances.lot_id
           FROM public.stock_balances
          WHERE ((stock_balances.thickness_mm IS NOT NULL) AND (stock_balances.on_hand <> (0)::numeric))) b
     FULL JOIN ( SELECT shims.part_id,
            shims.place_id,
            shims.thickness_mm,
            shims.condition,
            count(*) AS there
           FROM public.shims
          WHERE (shims.place_id IS NOT NULL)
          GROUP BY shims.part_id, shims.place_id, shims.thickness_mm, shims.condition) s ON (((s.part_id = b.part_id) AND (s.place_id = b.place_id) AND (s.thickness_mm = b.thickness_mm) AND ((s.condition)::text = (b.condition)::text))))
  WHERE ((COALESCE(s.there, (0)::bigint))::numeric <> COALESCE(b.on_hand, (0)::numeric));


--
-- Name: stock_lots; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.stock_lots (
    id uuid NOT NULL,
    part_id uuid NOT NULL,
    code character varying(60) NOT NULL,
    expires_on date,
    received_on date NOT NULL
);


--
-- Name: storage_place_codes; Type: SEQUENCE; Schema: public; Owner: -
--

CREATE SEQUENCE public.storage_place_codes
    AS integer
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;


--
-- Name: storage_places; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.storage_places (
    id uuid NOT NULL,
    name character varying(120) NOT NULL,
    code character varying(60) DEFAULT ('P'::text || lpad((nextval('public.storage_place_codes'::regclass))::text, 3, '0'::text)) NOT NULL,
    retired boolean DEFAULT false NOT NULL,
    walk_order integer DEFAULT 0 NOT NULL
);


--
-- Name: stored_answers; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.stored_answers (
    person_id uuid NOT NULL,
    use_case character varying(120) NOT NULL,
    key character varying(100) NOT NULL,
    request_hash bytea NOT NULL,
    answer jsonb NOT NULL,
    answered_at timestamp with time zone NOT NULL
);


--
-- Name: suppliers; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.suppliers (
    id uuid NOT NULL,
    name character varying(120) NOT NULL,
    email character varying(160),
    customer_number character varying(60),
    delivery_days integer NOT NULL,
    delivery_days_sd double precision NOT NULL,
    smallest_order numeric(14,4),
    retired boolean NOT NULL,
    CONSTRAINT ck_suppliers_delivery CHECK (((delivery_days >= 0) AND (delivery_days_sd >= (0)::double precision)))
);


--
-- Name: tax_rates; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.tax_rates (
    code character varying(60) NOT NULL,
    valid_from date NOT NULL,
    name character varying(120) NOT NULL,
    percent numeric(14,4) NOT NULL,
    CONSTRAINT ck_tax_rates_percent CHECK (((percent >= (0)::numeric) AND (percent <= (100)::numeric)))
);


--
-- Name: test_rides; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.test_rides (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    attempt integer NOT NULL,
    why_not character varying(40),
    rider_id uuid,
    distance_m numeric(14,3),
    odometer_reading_id uuid,
    words_remark_id uuid,
    ridden_at timestamp with time zone NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_test_rides_ridden CHECK (((attempt >= 1) AND
CASE
    WHEN (why_not IS NULL) THEN ((rider_id IS NOT NULL) AND (distance_m IS NOT NULL))
    ELSE ((rider_id IS NULL) AND (distance_m IS NULL) AND (odometer_reading_id IS NULL))
END))
);


--
-- Name: tick_witnesses; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.tick_witnesses (
    tick_id uuid NOT NULL,
    witnessed_by uuid NOT NULL,
    witnessed_at timestamp with time zone NOT NULL
);


--
-- Name: valve_events; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.valve_events (
    id uuid NOT NULL,
    engine_id uuid NOT NULL,
    job_card_number integer,
    import_id uuid,
    valve character varying(16) NOT NULL,
    kind character varying(40) NOT NULL,
    odometer_reading_id uuid NOT NULL,
    happened_at timestamp with time zone NOT NULL,
    entered_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    CONSTRAINT ck_valve_events_valve CHECK (((valve)::text ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'::text))
);


--
-- Name: visit_rechecks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.visit_rechecks (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    point character varying(40) NOT NULL,
    fastener_code character varying(60),
    attempt integer NOT NULL,
    in_order boolean NOT NULL,
    words_remark_id uuid,
    early_remark_id uuid,
    wrench_id uuid,
    rechecked_at timestamp with time zone NOT NULL,
    rechecked_by uuid NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    supersedes_id uuid,
    reason_remark_id uuid,
    CONSTRAINT ck_visit_rechecks_point CHECK (((attempt >= 1) AND (((point)::text = 'torque'::text) = (fastener_code IS NOT NULL)) AND (((point)::text = 'torque'::text) OR (wrench_id IS NULL)) AND (in_order OR (words_remark_id IS NOT NULL))))
);


--
-- Name: visit_waits; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.visit_waits (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    "for" character varying(40) NOT NULL,
    since timestamp with time zone NOT NULL,
    expected_until timestamp with time zone NOT NULL,
    ended_at timestamp with time zone,
    remark_id uuid,
    entered_by uuid NOT NULL,
    CONSTRAINT ck_visit_waits_order CHECK ((expected_until > since))
);


--
-- Name: visit_wishes; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.visit_wishes (
    job_card_number integer NOT NULL,
    not_before timestamp with time zone,
    ready_by timestamp with time zone,
    technician_id uuid,
    bay_id uuid,
    test_run_at_arrival boolean NOT NULL,
    work_minutes integer,
    CONSTRAINT ck_visit_wishes_minutes CHECK ((work_minutes > 0))
);


--
-- Name: work_breaks; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.work_breaks (
    id uuid NOT NULL,
    resource_id uuid NOT NULL,
    weekday integer NOT NULL,
    starts_at time without time zone NOT NULL,
    ends_at time without time zone NOT NULL,
    CONSTRAINT ck_work_breaks_order CHECK ((ends_at > starts_at))
);


--
-- Name: work_spells; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.work_spells (
    id uuid NOT NULL,
    job_card_number integer NOT NULL,
    person_id uuid NOT NULL,
    started_at timestamp with time zone NOT NULL,
    ended_at timestamp with time zone,
    ended_for character varying(40),
    CONSTRAINT ck_work_spells_span CHECK (((ended_at >= started_at) AND ((ended_at IS NULL) = (ended_for IS NULL))))
);


--
-- Name: working_hours; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.working_hours (
    resource_id uuid NOT NULL,
    weekday integer NOT NULL,
    starts_at time without time zone NOT NULL,
    ends_at time without time zone NOT NULL,
    CONSTRAINT ck_working_hours_order CHECK ((ends_at > starts_at))
);


--
-- Name: workshop_profiles; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.workshop_profiles (
    id integer NOT NULL,
    name character varying(120) NOT NULL,
    time_zone character varying(60) NOT NULL,
    invented boolean NOT NULL,
    used_shims character varying(40) DEFAULT 'yes'::character varying NOT NULL,
    drift_threshold double precision DEFAULT 0.050000000000000003 NOT NULL,
    arrival_minutes integer DEFAULT 15 NOT NULL,
    hand_over_minutes integer DEFAULT 15 NOT NULL,
    test_ride_minutes integer DEFAULT 20 NOT NULL,
    warm_run_minutes integer DEFAULT 15 NOT NULL,
    together_within_days integer DEFAULT 30 NOT NULL,
    together_within_metres numeric(14,3) DEFAULT 500000.0 NOT NULL,
    phone character varying(40),
    currency character varying(3) DEFAULT 'EUR'::character varying NOT NULL,
    labour_net_per_hour numeric(14,4),
    service_level double precision DEFAULT 0.94999999999999996 NOT NULL,
    tax_rate_code character varying(60),
    CONSTRAINT ck_workshop_profiles_minutes CHECK ((LEAST(arrival_minutes, warm_run_minutes, test_ride_minutes, hand_over_minutes) >= 0)),
    CONSTRAINT ck_workshop_profiles_one CHECK ((id = 1)),
    CONSTRAINT ck_workshop_profiles_together CHECK ((LEAST(together_within_metres, (together_within_days)::numeric) >= (0)::numeric))
);


--
-- Name: wrench_adapters; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.wrench_adapters (
    id uuid NOT NULL,
    name character varying(120) NOT NULL,
    kind character varying(40) NOT NULL,
    effective_length_mm numeric(14,4) NOT NULL,
    thickness_mm numeric(14,4),
    drive character varying(40),
    tool character varying(120) NOT NULL,
    retired boolean NOT NULL,
    CONSTRAINT ck_wrench_adapters_length CHECK ((effective_length_mm >= (0)::numeric))
);


--
-- Data for Name: __EFMigrationsHistory; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125073616_Initial', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125073629_DatabaseRules', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125080235_DueRates', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125081635_Cancellations', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125105557_ShimBox', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125113104_DriftModel', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261125115016_ShimPlanChoices', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126142856_VisitPhases', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126145531_WorkshopVersion', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126152200_SpecificationDrafts', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126153819_PhaseReasons', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126154656_DueRules', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126155915_Contacts', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126180000_KitsAndStores', '10.0.15');
INSERT INTO public."__EFMigrationsHistory" VALUES ('20261126210000_BeforeAndAfter', '10.0.15');


--
-- Data for Name: absences; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: account_claims; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: account_logins; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: account_roles; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.account_roles VALUES ('019cad8f-ac00-73bc-96ff-bdb2ed56e6eb', '019cad8f-ac00-796f-936a-9e5dc2378012');
INSERT INTO public.account_roles VALUES ('019cad8f-ac00-7e5b-aea4-472970833724', '019cad8f-ac00-7d5e-8fa7-af87846f5033');
INSERT INTO public.account_roles VALUES ('019cad8f-ac00-7df3-be44-d7c9ae9f7da1', '019cad8f-ac00-72bf-b9a0-93f7170362c2');


--
-- Data for Name: account_tokens; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: accounts; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.accounts VALUES ('019cad8f-ac00-73bc-96ff-bdb2ed56e6eb', '00000001-0000-0000-0000-000000000001', 'advisor', 'ADVISOR', NULL, NULL, false, 'AQAAAAIAAYagAAAAEKZ+nds1LhrCgMsbMgWs4XyBgLo3B8bCk+xJJC6WWBAd5uEGo8cEeDnJ1Pdo/e9OiA==', 'AWWJNQ7C4GRY3WZKXR4J4Y2XCBRUKHLS', 'd14db70c-d0ee-4b79-b99e-8ffdfbfedfda', NULL, false, false, NULL, true, 0);
INSERT INTO public.accounts VALUES ('019cad8f-ac00-7e5b-aea4-472970833724', '00000002-0000-0000-0000-000000000001', 'technician', 'TECHNICIAN', NULL, NULL, false, 'AQAAAAIAAYagAAAAEMocsBxU8uxljp1xL7IiHbD5ia0JIm4Wi941DkH3IKlaln5Bgsq3J0ZVWYzNo6TJ7w==', 'HGDCMZWIDC55R27ORLZRNMQT4BNC47DM', '74c49677-abe4-405b-857d-045e1dcbabe8', NULL, false, false, NULL, true, 0);
INSERT INTO public.accounts VALUES ('019cad8f-ac00-7df3-be44-d7c9ae9f7da1', '00000003-0000-0000-0000-000000000001', 'manager', 'MANAGER', NULL, NULL, false, 'AQAAAAIAAYagAAAAEOp59hw9PJuJFaMtrk9/sAQgsWF1w9Vp0PDQoiuEOfw/Vglop2kTJjT1sQMftI6nmQ==', 'YRHU3RSPMRFIVJT7HEHZRLTMO7EYXCZC', '15f1b450-9ada-42cc-bd62-a10eefb57c74', NULL, false, false, NULL, true, 0);


--
-- Data for Name: arrival_notes; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: as_left_marks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: as_left_witnesses; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: audit_rows; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.audit_rows VALUES (1, '2026-11-26 22:14:06.786929+00', NULL, NULL, 'engine_models', 'insert', '{"id": "0000000a-0000-0000-0000-000000000001"}', '{"id": [null, "0000000a-0000-0000-0000-000000000001"], "name": [null, "Twin 600"], "maker": [null, "Testwerk"], "invented": [null, true], "current_version": [null, 1]}');
INSERT INTO public.audit_rows VALUES (2, '2026-11-26 22:14:06.795504+00', NULL, NULL, 'instruments', 'insert', '{"id": "0000001e-0000-0000-0000-000000000001"}', '{"id": [null, "0000001e-0000-0000-0000-000000000001"], "kind": [null, "feeler_set"], "name": [null, "Feeler set, steps of 0.01 mm"], "unit": [null, "mm"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, "2026-01-05"], "range_highest": [null, null], "serial_number": [null, "F-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, "2028-01-05"], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (3, '2026-11-26 22:14:06.796092+00', NULL, NULL, 'instruments', 'insert', '{"id": "0000001f-0000-0000-0000-000000000001"}', '{"id": [null, "0000001f-0000-0000-0000-000000000001"], "kind": [null, "micrometer"], "name": [null, "Micrometer 0 to 25 mm"], "unit": [null, "mm"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, 0.0020], "range_lowest": [null, null], "calibrated_on": [null, "2026-01-05"], "range_highest": [null, null], "serial_number": [null, "M-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, "2028-01-05"], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (4, '2026-11-26 22:14:06.79639+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000020-0000-0000-0000-000000000001"}', '{"id": [null, "00000020-0000-0000-0000-000000000001"], "kind": [null, "torque_wrench"], "name": [null, "Torque wrench 5 to 25 N.m"], "unit": [null, "N.m"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, 4.0000], "range_lowest": [null, 5.0000], "calibrated_on": [null, "2026-01-05"], "range_highest": [null, 25.0000], "serial_number": [null, "W-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, "2028-01-05"], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (5, '2026-11-26 22:14:06.796652+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000021-0000-0000-0000-000000000001"}', '{"id": [null, "00000021-0000-0000-0000-000000000001"], "kind": [null, "degree_wheel"], "name": [null, "Degree wheel"], "unit": [null, "degree"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, null], "range_highest": [null, null], "serial_number": [null, "D-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, null], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (6, '2026-11-26 22:14:06.796906+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000022-0000-0000-0000-000000000001"}', '{"id": [null, "00000022-0000-0000-0000-000000000001"], "kind": [null, "dial_gauge"], "name": [null, "Dial gauge"], "unit": [null, "mm"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, "2026-01-05"], "range_highest": [null, null], "serial_number": [null, "G-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, "2028-01-05"], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (7, '2026-11-26 22:14:06.797167+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000023-0000-0000-0000-000000000001"}', '{"id": [null, "00000023-0000-0000-0000-000000000001"], "kind": [null, "dial_gauge"], "name": [null, "Dial gauge"], "unit": [null, "mm"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, "2023-01-05"], "range_highest": [null, null], "serial_number": [null, "G-0"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, "2025-01-05"], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (8, '2026-11-26 22:14:06.797333+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000032-0000-0000-0000-000000000001"}', '{"id": [null, "00000032-0000-0000-0000-000000000001"], "kind": [null, "compression_gauge"], "name": [null, "Compression gauge"], "unit": [null, "bar"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, null], "range_highest": [null, null], "serial_number": [null, "C-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, null], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (9, '2026-11-26 22:14:06.797486+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000033-0000-0000-0000-000000000001"}', '{"id": [null, "00000033-0000-0000-0000-000000000001"], "kind": [null, "leak_down_tester"], "name": [null, "Leak-down tester"], "unit": [null, "bar"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, null], "range_highest": [null, null], "serial_number": [null, "L-1"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, null], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (25, '2026-11-26 22:14:06.829423+00', NULL, NULL, 'resources', 'insert', '{"id": "00000014-0000-0000-0000-000000000001"}', '{"id": [null, "00000014-0000-0000-0000-000000000001"], "kind": [null, "bay"], "name": [null, "Bay 1"], "grade": [null, null], "retired": [null, false], "person_id": [null, null], "capabilities": [null, ["lift"]]}');
INSERT INTO public.audit_rows VALUES (10, '2026-11-26 22:14:06.797704+00', NULL, NULL, 'instruments', 'insert', '{"id": "00000034-0000-0000-0000-000000000001"}', '{"id": [null, "00000034-0000-0000-0000-000000000001"], "kind": [null, "compression_gauge"], "name": [null, "Compression gauge"], "unit": [null, "bar"], "drive": [null, null], "state": [null, "in_use"], "damage": [null, null], "holder_id": [null, null], "length_mm": [null, null], "damaged_on": [null, null], "graduation": [null, null], "released_on": [null, null], "uncertainty": [null, null], "range_lowest": [null, null], "calibrated_on": [null, "2023-01-05"], "range_highest": [null, null], "serial_number": [null, "C-0"], "released_until": [null, null], "calibration_cycles": [null, null], "calibration_due_on": [null, "2025-01-05"], "calibration_months": [null, null], "released_beyond_cycles": [null, false]}');
INSERT INTO public.audit_rows VALUES (11, '2026-11-26 22:14:06.798608+00', NULL, NULL, 'opening_hours', 'insert', '{"weekday": 1}', '{"weekday": [null, 1], "opens_at": [null, "08:00:00"], "closes_at": [null, "17:00:00"]}');
INSERT INTO public.audit_rows VALUES (12, '2026-11-26 22:14:06.798808+00', NULL, NULL, 'opening_hours', 'insert', '{"weekday": 2}', '{"weekday": [null, 2], "opens_at": [null, "08:00:00"], "closes_at": [null, "17:00:00"]}');
INSERT INTO public.audit_rows VALUES (13, '2026-11-26 22:14:06.798984+00', NULL, NULL, 'opening_hours', 'insert', '{"weekday": 3}', '{"weekday": [null, 3], "opens_at": [null, "08:00:00"], "closes_at": [null, "17:00:00"]}');
INSERT INTO public.audit_rows VALUES (14, '2026-11-26 22:14:06.799149+00', NULL, NULL, 'opening_hours', 'insert', '{"weekday": 4}', '{"weekday": [null, 4], "opens_at": [null, "08:00:00"], "closes_at": [null, "17:00:00"]}');
INSERT INTO public.audit_rows VALUES (15, '2026-11-26 22:14:06.79931+00', NULL, NULL, 'opening_hours', 'insert', '{"weekday": 5}', '{"weekday": [null, 5], "opens_at": [null, "08:00:00"], "closes_at": [null, "17:00:00"]}');
INSERT INTO public.audit_rows VALUES (16, '2026-11-26 22:14:06.817063+00', NULL, NULL, 'parts', 'insert', '{"id": "00000032-0000-0000-0000-000000000001"}', '{"id": [null, "00000032-0000-0000-0000-000000000001"], "code": [null, "ring-14x18"], "form": [null, null], "kind": [null, "sealing_ring"], "name": [null, "Sealing ring 14 x 18 x 1.5"], "unit": [null, "piece"], "stocked": [null, true], "hardness": [null, null], "material": [null, null], "net_price": [null, null], "section_mm": [null, null], "designation": [null, null], "fitted_once": [null, false], "discontinued": [null, false], "delivery_days": [null, null], "pack_quantity": [null, null], "reorder_point": [null, null], "service_level": [null, null], "tax_rate_code": [null, null], "merged_into_id": [null, null], "replaced_by_id": [null, null], "inner_diameter_mm": [null, null], "outer_diameter_mm": [null, null], "shelf_life_months": [null, null]}');
INSERT INTO public.audit_rows VALUES (17, '2026-11-26 22:14:06.817482+00', NULL, NULL, 'parts', 'insert', '{"id": "00000033-0000-0000-0000-000000000001"}', '{"id": [null, "00000033-0000-0000-0000-000000000001"], "code": [null, "cover-gasket"], "form": [null, null], "kind": [null, "gasket"], "name": [null, "Head cover gasket"], "unit": [null, "piece"], "stocked": [null, true], "hardness": [null, null], "material": [null, null], "net_price": [null, null], "section_mm": [null, null], "designation": [null, null], "fitted_once": [null, false], "discontinued": [null, false], "delivery_days": [null, null], "pack_quantity": [null, null], "reorder_point": [null, null], "service_level": [null, null], "tax_rate_code": [null, null], "merged_into_id": [null, null], "replaced_by_id": [null, null], "inner_diameter_mm": [null, null], "outer_diameter_mm": [null, null], "shelf_life_months": [null, null]}');
INSERT INTO public.audit_rows VALUES (18, '2026-11-26 22:14:06.817845+00', NULL, NULL, 'parts', 'insert', '{"id": "00000034-0000-0000-0000-000000000001"}', '{"id": [null, "00000034-0000-0000-0000-000000000001"], "code": [null, "plug-well-o-ring"], "form": [null, null], "kind": [null, "o_ring"], "name": [null, "Plug well O-ring"], "unit": [null, "piece"], "stocked": [null, true], "hardness": [null, null], "material": [null, null], "net_price": [null, null], "section_mm": [null, null], "designation": [null, null], "fitted_once": [null, false], "discontinued": [null, false], "delivery_days": [null, null], "pack_quantity": [null, null], "reorder_point": [null, null], "service_level": [null, null], "tax_rate_code": [null, null], "merged_into_id": [null, null], "replaced_by_id": [null, null], "inner_diameter_mm": [null, null], "outer_diameter_mm": [null, null], "shelf_life_months": [null, null]}');
INSERT INTO public.audit_rows VALUES (19, '2026-11-26 22:14:06.818144+00', NULL, NULL, 'parts', 'insert', '{"id": "00000035-0000-0000-0000-000000000001"}', '{"id": [null, "00000035-0000-0000-0000-000000000001"], "code": [null, "oil-filter"], "form": [null, null], "kind": [null, "general"], "name": [null, "Oil filter"], "unit": [null, "piece"], "stocked": [null, true], "hardness": [null, null], "material": [null, null], "net_price": [null, null], "section_mm": [null, null], "designation": [null, null], "fitted_once": [null, false], "discontinued": [null, false], "delivery_days": [null, null], "pack_quantity": [null, null], "reorder_point": [null, null], "service_level": [null, null], "tax_rate_code": [null, null], "merged_into_id": [null, null], "replaced_by_id": [null, null], "inner_diameter_mm": [null, null], "outer_diameter_mm": [null, null], "shelf_life_months": [null, null]}');
INSERT INTO public.audit_rows VALUES (20, '2026-11-26 22:14:06.818431+00', NULL, NULL, 'parts', 'insert', '{"id": "00000036-0000-0000-0000-000000000001"}', '{"id": [null, "00000036-0000-0000-0000-000000000001"], "code": [null, "oil-10w-40"], "form": [null, null], "kind": [null, "fluid"], "name": [null, "Engine oil 10W-40"], "unit": [null, "millilitre"], "stocked": [null, true], "hardness": [null, null], "material": [null, null], "net_price": [null, null], "section_mm": [null, null], "designation": [null, null], "fitted_once": [null, false], "discontinued": [null, false], "delivery_days": [null, null], "pack_quantity": [null, null], "reorder_point": [null, null], "service_level": [null, null], "tax_rate_code": [null, null], "merged_into_id": [null, null], "replaced_by_id": [null, null], "inner_diameter_mm": [null, null], "outer_diameter_mm": [null, null], "shelf_life_months": [null, null]}');
INSERT INTO public.audit_rows VALUES (21, '2026-11-26 22:14:06.818729+00', NULL, NULL, 'parts', 'insert', '{"id": "00000037-0000-0000-0000-000000000001"}', '{"id": [null, "00000037-0000-0000-0000-000000000001"], "code": [null, "shim-test-9"], "form": [null, null], "kind": [null, "shim"], "name": [null, "Shim 9 mm, disc under finger follower"], "unit": [null, "piece"], "stocked": [null, true], "hardness": [null, null], "material": [null, null], "net_price": [null, null], "section_mm": [null, null], "designation": [null, null], "fitted_once": [null, false], "discontinued": [null, false], "delivery_days": [null, null], "pack_quantity": [null, null], "reorder_point": [null, null], "service_level": [null, null], "tax_rate_code": [null, null], "merged_into_id": [null, null], "replaced_by_id": [null, null], "inner_diameter_mm": [null, null], "outer_diameter_mm": [null, null], "shelf_life_months": [null, null]}');
INSERT INTO public.audit_rows VALUES (22, '2026-11-26 22:14:06.819506+00', NULL, NULL, 'people', 'insert', '{"id": "00000001-0000-0000-0000-000000000001"}', '{"id": null, "name": null, "email": null, "phone": null, "is_staff": null, "erased_at": null}');
INSERT INTO public.audit_rows VALUES (23, '2026-11-26 22:14:06.82803+00', NULL, NULL, 'people', 'insert', '{"id": "00000002-0000-0000-0000-000000000001"}', '{"id": null, "name": null, "email": null, "phone": null, "is_staff": null, "erased_at": null}');
INSERT INTO public.audit_rows VALUES (24, '2026-11-26 22:14:06.828483+00', NULL, NULL, 'people', 'insert', '{"id": "00000003-0000-0000-0000-000000000001"}', '{"id": null, "name": null, "email": null, "phone": null, "is_staff": null, "erased_at": null}');
INSERT INTO public.audit_rows VALUES (26, '2026-11-26 22:14:06.829813+00', NULL, NULL, 'resources', 'insert', '{"id": "00000015-0000-0000-0000-000000000001"}', '{"id": [null, "00000015-0000-0000-0000-000000000001"], "kind": [null, "bay"], "name": [null, "Bay 2"], "grade": [null, null], "retired": [null, false], "person_id": [null, null], "capabilities": [null, []]}');
INSERT INTO public.audit_rows VALUES (27, '2026-11-26 22:14:06.830105+00', NULL, NULL, 'resources', 'insert', '{"id": "00000017-0000-0000-0000-000000000001"}', '{"id": [null, "00000017-0000-0000-0000-000000000001"], "kind": [null, "special_tool"], "name": [null, "Cam alignment jig"], "grade": [null, null], "retired": [null, false], "person_id": [null, null], "capabilities": [null, ["cam-alignment-jig"]]}');
INSERT INTO public.audit_rows VALUES (28, '2026-11-26 22:14:06.83035+00', NULL, NULL, 'resources', 'insert', '{"id": "00000018-0000-0000-0000-000000000001"}', '{"id": [null, "00000018-0000-0000-0000-000000000001"], "kind": [null, "parking_place"], "name": [null, "Stand 1"], "grade": [null, null], "retired": [null, false], "person_id": [null, null], "capabilities": [null, []]}');
INSERT INTO public.audit_rows VALUES (29, '2026-11-26 22:14:06.830583+00', NULL, NULL, 'resources', 'insert', '{"id": "00000019-0000-0000-0000-000000000001"}', '{"id": [null, "00000019-0000-0000-0000-000000000001"], "kind": [null, "parking_place"], "name": [null, "Stand 2"], "grade": [null, null], "retired": [null, false], "person_id": [null, null], "capabilities": [null, []]}');
INSERT INTO public.audit_rows VALUES (30, '2026-11-26 22:14:06.831518+00', NULL, NULL, 'storage_places', 'insert', '{"id": "00000028-0000-0000-0000-000000000001"}', '{"id": [null, "00000028-0000-0000-0000-000000000001"], "code": [null, "P001"], "name": [null, "Shelf A"], "retired": [null, false], "walk_order": [null, 0]}');
INSERT INTO public.audit_rows VALUES (31, '2026-11-26 22:14:06.840006+00', NULL, NULL, 'storage_places', 'insert', '{"id": "00000029-0000-0000-0000-000000000001"}', '{"id": [null, "00000029-0000-0000-0000-000000000001"], "code": [null, "P002"], "name": [null, "Shim box"], "retired": [null, false], "walk_order": [null, 0]}');
INSERT INTO public.audit_rows VALUES (32, '2026-11-26 22:14:06.841201+00', NULL, NULL, 'workshop_profiles', 'insert', '{"id": 1}', '{"id": [null, 1], "name": [null, "Test workshop"], "phone": [null, null], "currency": [null, "EUR"], "invented": [null, true], "time_zone": [null, "Europe/Vienna"], "used_shims": [null, "yes"], "service_level": [null, 0.95], "tax_rate_code": [null, null], "arrival_minutes": [null, 15], "drift_threshold": [null, 0.05], "warm_run_minutes": [null, 15], "hand_over_minutes": [null, 15], "test_ride_minutes": [null, 20], "labour_net_per_hour": [null, null], "together_within_days": [null, 30], "together_within_metres": [null, 500000.000]}');
INSERT INTO public.audit_rows VALUES (33, '2026-11-26 22:14:06.84301+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003ed-0000-0000-0000-000000000001"}', '{"id": [null, "000003ed-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.0500], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (34, '2026-11-26 22:14:06.84335+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003ee-0000-0000-0000-000000000001"}', '{"id": [null, "000003ee-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.0600], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (35, '2026-11-26 22:14:06.843608+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003ef-0000-0000-0000-000000000001"}', '{"id": [null, "000003ef-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.0700], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (36, '2026-11-26 22:14:06.852175+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f0-0000-0000-0000-000000000001"}', '{"id": [null, "000003f0-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.0800], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (37, '2026-11-26 22:14:06.852632+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f1-0000-0000-0000-000000000001"}', '{"id": [null, "000003f1-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.0900], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (38, '2026-11-26 22:14:06.85291+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f2-0000-0000-0000-000000000001"}', '{"id": [null, "000003f2-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1000], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (39, '2026-11-26 22:14:06.853032+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f3-0000-0000-0000-000000000001"}', '{"id": [null, "000003f3-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1100], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (40, '2026-11-26 22:14:06.854302+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f4-0000-0000-0000-000000000001"}', '{"id": [null, "000003f4-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1200], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (41, '2026-11-26 22:14:06.854402+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f5-0000-0000-0000-000000000001"}', '{"id": [null, "000003f5-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1300], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (42, '2026-11-26 22:14:06.85449+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f6-0000-0000-0000-000000000001"}', '{"id": [null, "000003f6-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1400], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (43, '2026-11-26 22:14:06.854568+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f7-0000-0000-0000-000000000001"}', '{"id": [null, "000003f7-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1500], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (44, '2026-11-26 22:14:06.854643+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f8-0000-0000-0000-000000000001"}', '{"id": [null, "000003f8-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1600], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (45, '2026-11-26 22:14:06.854718+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003f9-0000-0000-0000-000000000001"}', '{"id": [null, "000003f9-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1700], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (46, '2026-11-26 22:14:06.85479+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003fa-0000-0000-0000-000000000001"}', '{"id": [null, "000003fa-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1800], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (47, '2026-11-26 22:14:06.854866+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003fb-0000-0000-0000-000000000001"}', '{"id": [null, "000003fb-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.1900], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (48, '2026-11-26 22:14:06.855006+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003fc-0000-0000-0000-000000000001"}', '{"id": [null, "000003fc-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2000], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (49, '2026-11-26 22:14:06.855081+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003fd-0000-0000-0000-000000000001"}', '{"id": [null, "000003fd-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2100], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (50, '2026-11-26 22:14:06.856977+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003fe-0000-0000-0000-000000000001"}', '{"id": [null, "000003fe-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2200], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (51, '2026-11-26 22:14:06.85714+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "000003ff-0000-0000-0000-000000000001"}', '{"id": [null, "000003ff-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2300], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (52, '2026-11-26 22:14:06.857226+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000400-0000-0000-0000-000000000001"}', '{"id": [null, "00000400-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2400], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (53, '2026-11-26 22:14:06.857313+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000401-0000-0000-0000-000000000001"}', '{"id": [null, "00000401-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2500], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (54, '2026-11-26 22:14:06.857388+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000402-0000-0000-0000-000000000001"}', '{"id": [null, "00000402-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2600], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (55, '2026-11-26 22:14:06.857462+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000403-0000-0000-0000-000000000001"}', '{"id": [null, "00000403-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2700], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (56, '2026-11-26 22:14:06.857574+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000404-0000-0000-0000-000000000001"}', '{"id": [null, "00000404-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2800], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (57, '2026-11-26 22:14:06.857659+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000405-0000-0000-0000-000000000001"}', '{"id": [null, "00000405-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.2900], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (58, '2026-11-26 22:14:06.85774+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000406-0000-0000-0000-000000000001"}', '{"id": [null, "00000406-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3000], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (59, '2026-11-26 22:14:06.857812+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000407-0000-0000-0000-000000000001"}', '{"id": [null, "00000407-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3100], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (60, '2026-11-26 22:14:06.857885+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000408-0000-0000-0000-000000000001"}', '{"id": [null, "00000408-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3200], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (61, '2026-11-26 22:14:06.857959+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000409-0000-0000-0000-000000000001"}', '{"id": [null, "00000409-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3300], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (62, '2026-11-26 22:14:06.858069+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "0000040a-0000-0000-0000-000000000001"}', '{"id": [null, "0000040a-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3400], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (63, '2026-11-26 22:14:06.85815+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "0000040b-0000-0000-0000-000000000001"}', '{"id": [null, "0000040b-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3500], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (64, '2026-11-26 22:14:06.858221+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "0000040c-0000-0000-0000-000000000001"}', '{"id": [null, "0000040c-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3600], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (65, '2026-11-26 22:14:06.858293+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "0000040d-0000-0000-0000-000000000001"}', '{"id": [null, "0000040d-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3700], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (66, '2026-11-26 22:14:06.858366+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "0000040e-0000-0000-0000-000000000001"}', '{"id": [null, "0000040e-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3800], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (67, '2026-11-26 22:14:06.858441+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "0000040f-0000-0000-0000-000000000001"}', '{"id": [null, "0000040f-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.3900], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (68, '2026-11-26 22:14:06.858518+00', NULL, NULL, 'feeler_blades', 'insert', '{"id": "00000410-0000-0000-0000-000000000001"}', '{"id": [null, "00000410-0000-0000-0000-000000000001"], "withdrawn": [null, false], "nominal_mm": [null, 0.4000], "measured_mm": [null, null], "instrument_id": [null, "0000001e-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (91, '2026-11-26 22:15:07.064189+00', NULL, NULL, 'engines', 'insert', '{"id": "019cad8f-ac00-738d-a80d-09c6687964cc"}', '{"id": [null, "019cad8f-ac00-738d-a80d-09c6687964cc"], "serial_number": [null, "E-2"], "engine_model_id": [null, "0000000a-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (69, '2026-11-26 22:14:06.858957+00', NULL, NULL, 'resources', 'insert', '{"id": "00000016-0000-0000-0000-000000000001"}', '{"id": [null, "00000016-0000-0000-0000-000000000001"], "kind": [null, "technician"], "name": [null, "TN"], "grade": [null, null], "retired": [null, false], "person_id": [null, "00000002-0000-0000-0000-000000000001"], "capabilities": [null, ["valve work"]]}');
INSERT INTO public.audit_rows VALUES (70, '2026-11-26 22:14:06.870464+00', NULL, NULL, 'shim_series', 'insert', '{"part_id": "00000037-0000-0000-0000-000000000001"}', '{"seat": [null, "shim_under_finger_follower"], "source": [null, "made up for tests"], "columns": [null, 10], "part_id": [null, "00000037-0000-0000-0000-000000000001"], "step_mm": [null, 0.025], "place_id": [null, "00000029-0000-0000-0000-000000000001"], "largest_mm": [null, 3.200], "diameter_mm": [null, 9.000], "smallest_mm": [null, 1.200]}');
INSERT INTO public.audit_rows VALUES (71, '2026-11-26 22:14:08.905495+00', NULL, NULL, 'accounts', 'insert', '{"id": "019cad8f-ac00-73bc-96ff-bdb2ed56e6eb"}', '{"id": null, "email": null, "person_id": null, "user_name": null, "lockout_end": null, "phone_number": null, "password_hash": null, "security_stamp": null, "email_confirmed": null, "lockout_enabled": null, "normalized_email": null, "concurrency_stamp": null, "two_factor_enabled": null, "access_failed_count": null, "normalized_user_name": null, "phone_number_confirmed": null}');
INSERT INTO public.audit_rows VALUES (72, '2026-11-26 22:14:09.693714+00', NULL, NULL, 'account_roles', 'insert', '{"role_id": "019cad8f-ac00-796f-936a-9e5dc2378012", "user_id": "019cad8f-ac00-73bc-96ff-bdb2ed56e6eb"}', '{"role_id": [null, "019cad8f-ac00-796f-936a-9e5dc2378012"], "user_id": [null, "019cad8f-ac00-73bc-96ff-bdb2ed56e6eb"]}');
INSERT INTO public.audit_rows VALUES (73, '2026-11-26 22:14:09.694659+00', NULL, NULL, 'accounts', 'update', '{"id": "019cad8f-ac00-73bc-96ff-bdb2ed56e6eb"}', '{"concurrency_stamp": null}');
INSERT INTO public.audit_rows VALUES (74, '2026-11-26 22:14:10.370736+00', NULL, NULL, 'accounts', 'insert', '{"id": "019cad8f-ac00-7e5b-aea4-472970833724"}', '{"id": null, "email": null, "person_id": null, "user_name": null, "lockout_end": null, "phone_number": null, "password_hash": null, "security_stamp": null, "email_confirmed": null, "lockout_enabled": null, "normalized_email": null, "concurrency_stamp": null, "two_factor_enabled": null, "access_failed_count": null, "normalized_user_name": null, "phone_number_confirmed": null}');
INSERT INTO public.audit_rows VALUES (75, '2026-11-26 22:14:10.966388+00', NULL, NULL, 'account_roles', 'insert', '{"role_id": "019cad8f-ac00-7d5e-8fa7-af87846f5033", "user_id": "019cad8f-ac00-7e5b-aea4-472970833724"}', '{"role_id": [null, "019cad8f-ac00-7d5e-8fa7-af87846f5033"], "user_id": [null, "019cad8f-ac00-7e5b-aea4-472970833724"]}');
INSERT INTO public.audit_rows VALUES (76, '2026-11-26 22:14:10.967306+00', NULL, NULL, 'accounts', 'update', '{"id": "019cad8f-ac00-7e5b-aea4-472970833724"}', '{"concurrency_stamp": null}');
INSERT INTO public.audit_rows VALUES (77, '2026-11-26 22:14:12.331662+00', NULL, NULL, 'accounts', 'insert', '{"id": "019cad8f-ac00-7df3-be44-d7c9ae9f7da1"}', '{"id": null, "email": null, "person_id": null, "user_name": null, "lockout_end": null, "phone_number": null, "password_hash": null, "security_stamp": null, "email_confirmed": null, "lockout_enabled": null, "normalized_email": null, "concurrency_stamp": null, "two_factor_enabled": null, "access_failed_count": null, "normalized_user_name": null, "phone_number_confirmed": null}');
INSERT INTO public.audit_rows VALUES (78, '2026-11-26 22:14:12.6955+00', NULL, NULL, 'account_roles', 'insert', '{"role_id": "019cad8f-ac00-72bf-b9a0-93f7170362c2", "user_id": "019cad8f-ac00-7df3-be44-d7c9ae9f7da1"}', '{"role_id": [null, "019cad8f-ac00-72bf-b9a0-93f7170362c2"], "user_id": [null, "019cad8f-ac00-7df3-be44-d7c9ae9f7da1"]}');
INSERT INTO public.audit_rows VALUES (79, '2026-11-26 22:14:12.721314+00', NULL, NULL, 'accounts', 'update', '{"id": "019cad8f-ac00-7df3-be44-d7c9ae9f7da1"}', '{"concurrency_stamp": null}');
INSERT INTO public.audit_rows VALUES (80, '2026-11-26 22:14:56.572399+00', NULL, NULL, 'engines', 'insert', '{"id": "019cad8f-ac00-7a77-8abd-77c372f2eeb2"}', '{"id": [null, "019cad8f-ac00-7a77-8abd-77c372f2eeb2"], "serial_number": [null, "E-1"], "engine_model_id": [null, "0000000a-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (81, '2026-11-26 22:14:56.57384+00', NULL, NULL, 'motorcycles', 'insert', '{"id": "019cad8f-ac00-770e-87c2-ae47c0be0a7f"}', '{"id": [null, "019cad8f-ac00-770e-87c2-ae47c0be0a7f"], "use": [null, "normal"], "vin": [null, null], "maker": [null, "Testwerk"], "model": [null, "Twin 600"], "options": [null, []], "retired": [null, false], "owner_id": [null, null], "model_year": [null, 2020], "use_said_at": [null, null], "use_said_by": [null, null], "registration": [null, "VISIT 1"]}');
INSERT INTO public.audit_rows VALUES (82, '2026-11-26 22:14:56.575369+00', NULL, NULL, 'engine_fittings', 'insert', '{"id": "019cad8f-ac00-741e-bae4-853127949a3b"}', '{"id": [null, "019cad8f-ac00-741e-bae4-853127949a3b"], "engine_id": [null, "019cad8f-ac00-7a77-8abd-77c372f2eeb2"], "fitted_on": [null, "2020-01-01"], "removed_on": [null, null], "engine_metres": [null, 0.000], "motorcycle_id": [null, "019cad8f-ac00-770e-87c2-ae47c0be0a7f"], "motorcycle_metres": [null, 0.000]}');
INSERT INTO public.audit_rows VALUES (83, '2026-11-26 22:14:56.583648+00', NULL, NULL, 'job_cards', 'insert', '{"number": 1001}', '{"state": [null, "booked"], "number": [null, 1001], "ends_at": [null, "2026-03-02T12:00:00+00:00"], "booked_at": [null, "2026-03-02T08:00:00+00:00"], "booked_by": [null, "00000001-0000-0000-0000-000000000001"], "engine_id": [null, "019cad8f-ac00-7a77-8abd-77c372f2eeb2"], "starts_at": [null, "2026-03-02T08:00:00+00:00"], "motorcycle_id": [null, "019cad8f-ac00-770e-87c2-ae47c0be0a7f"], "plan_revision": [null, 0], "engine_model_version_id": [null, "0000000b-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (84, '2026-11-26 22:14:56.59327+00', NULL, NULL, 'odometers', 'insert', '{"id": "019cad8f-ac00-70b1-a898-e718e1a4f15f"}', '{"id": [null, "019cad8f-ac00-70b1-a898-e718e1a4f15f"], "unit": [null, "kilometres"], "fitted_on": [null, "2020-01-01"], "removed_on": [null, null], "motorcycle_id": [null, "019cad8f-ac00-770e-87c2-ae47c0be0a7f"], "offset_metres": [null, 0.000]}');
INSERT INTO public.audit_rows VALUES (85, '2026-11-26 22:14:56.663279+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1001, "service_item_code": "oil-and-filter"}', '{"likelihood": [null, "certain"], "started_at": [null, null], "job_card_number": [null, 1001], "service_item_code": [null, "oil-and-filter"]}');
INSERT INTO public.audit_rows VALUES (86, '2026-11-26 22:14:56.663682+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1001, "service_item_code": "valve-clearance-adjustment"}', '{"likelihood": [null, "likely"], "started_at": [null, null], "job_card_number": [null, 1001], "service_item_code": [null, "valve-clearance-adjustment"]}');
INSERT INTO public.audit_rows VALUES (87, '2026-11-26 22:14:56.665119+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1001, "service_item_code": "valve-clearance-check"}', '{"likelihood": [null, "certain"], "started_at": [null, null], "job_card_number": [null, 1001], "service_item_code": [null, "valve-clearance-check"]}');
INSERT INTO public.audit_rows VALUES (88, '2026-11-26 22:14:57.213393+00', NULL, NULL, 'job_cards', 'update', '{"number": 1001}', '{"state": ["booked", "checked_in"]}');
INSERT INTO public.audit_rows VALUES (89, '2026-11-26 22:14:57.216605+00', NULL, NULL, 'check_ins', 'insert', '{"job_card_number": 1001}', '{"checked_in_at": [null, "2026-03-02T08:00:00+00:00"], "checked_in_by": [null, "00000001-0000-0000-0000-000000000001"], "job_card_number": [null, 1001], "engine_stopped_at": [null, "2026-03-01T18:00:00+00:00"], "odometer_reading_id": [null, "019cad8f-ac00-7636-9c29-1b707e35529e"], "owners_words_remark_id": [null, null], "seen_on_arrival_remark_id": [null, null]}');
INSERT INTO public.audit_rows VALUES (90, '2026-11-26 22:15:03.200573+00', '00000002-0000-0000-0000-000000000001', '0HNQC1AIVUEE0', 'job_cards', 'update', '{"number": 1001}', '{"state": ["checked_in", "signed_off"]}');
INSERT INTO public.audit_rows VALUES (92, '2026-11-26 22:15:07.066104+00', NULL, NULL, 'motorcycles', 'insert', '{"id": "019cad8f-ac00-7716-9257-e36a1642f78d"}', '{"id": [null, "019cad8f-ac00-7716-9257-e36a1642f78d"], "use": [null, "normal"], "vin": [null, null], "maker": [null, "Testwerk"], "model": [null, "Twin 600"], "options": [null, []], "retired": [null, false], "owner_id": [null, null], "model_year": [null, 2020], "use_said_at": [null, null], "use_said_by": [null, null], "registration": [null, "VISIT 2"]}');
INSERT INTO public.audit_rows VALUES (93, '2026-11-26 22:15:07.066712+00', NULL, NULL, 'engine_fittings', 'insert', '{"id": "019cad8f-ac00-7cee-8097-be9be34f8921"}', '{"id": [null, "019cad8f-ac00-7cee-8097-be9be34f8921"], "engine_id": [null, "019cad8f-ac00-738d-a80d-09c6687964cc"], "fitted_on": [null, "2020-01-01"], "removed_on": [null, null], "engine_metres": [null, 0.000], "motorcycle_id": [null, "019cad8f-ac00-7716-9257-e36a1642f78d"], "motorcycle_metres": [null, 0.000]}');
INSERT INTO public.audit_rows VALUES (94, '2026-11-26 22:15:07.067301+00', NULL, NULL, 'job_cards', 'insert', '{"number": 1002}', '{"state": [null, "booked"], "number": [null, 1002], "ends_at": [null, "2026-03-02T12:00:00+00:00"], "booked_at": [null, "2026-03-02T08:00:00+00:00"], "booked_by": [null, "00000001-0000-0000-0000-000000000001"], "engine_id": [null, "019cad8f-ac00-738d-a80d-09c6687964cc"], "starts_at": [null, "2026-03-02T08:00:00+00:00"], "motorcycle_id": [null, "019cad8f-ac00-7716-9257-e36a1642f78d"], "plan_revision": [null, 0], "engine_model_version_id": [null, "0000000b-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (95, '2026-11-26 22:15:07.07184+00', NULL, NULL, 'odometers', 'insert', '{"id": "019cad8f-ac00-7cd5-adcf-de0ea0187616"}', '{"id": [null, "019cad8f-ac00-7cd5-adcf-de0ea0187616"], "unit": [null, "kilometres"], "fitted_on": [null, "2020-01-01"], "removed_on": [null, null], "motorcycle_id": [null, "019cad8f-ac00-7716-9257-e36a1642f78d"], "offset_metres": [null, 0.000]}');
INSERT INTO public.audit_rows VALUES (96, '2026-11-26 22:15:07.074801+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1002, "service_item_code": "oil-and-filter"}', '{"likelihood": [null, "certain"], "started_at": [null, null], "job_card_number": [null, 1002], "service_item_code": [null, "oil-and-filter"]}');
INSERT INTO public.audit_rows VALUES (97, '2026-11-26 22:15:07.075073+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1002, "service_item_code": "valve-clearance-adjustment"}', '{"likelihood": [null, "likely"], "started_at": [null, null], "job_card_number": [null, 1002], "service_item_code": [null, "valve-clearance-adjustment"]}');
INSERT INTO public.audit_rows VALUES (98, '2026-11-26 22:15:07.075299+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1002, "service_item_code": "valve-clearance-check"}', '{"likelihood": [null, "certain"], "started_at": [null, null], "job_card_number": [null, 1002], "service_item_code": [null, "valve-clearance-check"]}');
INSERT INTO public.audit_rows VALUES (99, '2026-11-26 22:15:07.10564+00', NULL, NULL, 'job_cards', 'update', '{"number": 1002}', '{"state": ["booked", "checked_in"]}');
INSERT INTO public.audit_rows VALUES (100, '2026-11-26 22:15:07.106566+00', NULL, NULL, 'check_ins', 'insert', '{"job_card_number": 1002}', '{"checked_in_at": [null, "2026-03-02T08:00:00+00:00"], "checked_in_by": [null, "00000001-0000-0000-0000-000000000001"], "job_card_number": [null, 1002], "engine_stopped_at": [null, "2026-03-01T18:00:00+00:00"], "odometer_reading_id": [null, "019cad8f-ac00-7351-b346-0439e2a21ffd"], "owners_words_remark_id": [null, null], "seen_on_arrival_remark_id": [null, null]}');
INSERT INTO public.audit_rows VALUES (101, '2026-11-26 22:15:07.284681+00', NULL, NULL, 'engines', 'insert', '{"id": "019cad8f-ac00-7c6a-a347-6a065469c20d"}', '{"id": [null, "019cad8f-ac00-7c6a-a347-6a065469c20d"], "serial_number": [null, "E-3"], "engine_model_id": [null, "0000000a-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (102, '2026-11-26 22:15:07.285127+00', NULL, NULL, 'motorcycles', 'insert', '{"id": "019cad8f-ac00-74a6-bff1-533ef6dfe266"}', '{"id": [null, "019cad8f-ac00-74a6-bff1-533ef6dfe266"], "use": [null, "normal"], "vin": [null, null], "maker": [null, "Testwerk"], "model": [null, "Twin 600"], "options": [null, []], "retired": [null, false], "owner_id": [null, null], "model_year": [null, 2020], "use_said_at": [null, null], "use_said_by": [null, null], "registration": [null, "VISIT 3"]}');
INSERT INTO public.audit_rows VALUES (103, '2026-11-26 22:15:07.285623+00', NULL, NULL, 'engine_fittings', 'insert', '{"id": "019cad8f-ac00-7c97-9406-f52b1bf92074"}', '{"id": [null, "019cad8f-ac00-7c97-9406-f52b1bf92074"], "engine_id": [null, "019cad8f-ac00-7c6a-a347-6a065469c20d"], "fitted_on": [null, "2020-01-01"], "removed_on": [null, null], "engine_metres": [null, 0.000], "motorcycle_id": [null, "019cad8f-ac00-74a6-bff1-533ef6dfe266"], "motorcycle_metres": [null, 0.000]}');
INSERT INTO public.audit_rows VALUES (104, '2026-11-26 22:15:07.286289+00', NULL, NULL, 'job_cards', 'insert', '{"number": 1003}', '{"state": [null, "booked"], "number": [null, 1003], "ends_at": [null, "2026-03-02T12:00:00+00:00"], "booked_at": [null, "2026-03-02T08:00:00+00:00"], "booked_by": [null, "00000001-0000-0000-0000-000000000001"], "engine_id": [null, "019cad8f-ac00-7c6a-a347-6a065469c20d"], "starts_at": [null, "2026-03-02T08:00:00+00:00"], "motorcycle_id": [null, "019cad8f-ac00-74a6-bff1-533ef6dfe266"], "plan_revision": [null, 0], "engine_model_version_id": [null, "0000000b-0000-0000-0000-000000000001"]}');
INSERT INTO public.audit_rows VALUES (105, '2026-11-26 22:15:07.286698+00', NULL, NULL, 'odometers', 'insert', '{"id": "019cad8f-ac00-7878-a88f-66b4d353f83e"}', '{"id": [null, "019cad8f-ac00-7878-a88f-66b4d353f83e"], "unit": [null, "kilometres"], "fitted_on": [null, "2020-01-01"], "removed_on": [null, null], "motorcycle_id": [null, "019cad8f-ac00-74a6-bff1-533ef6dfe266"], "offset_metres": [null, 0.000]}');
INSERT INTO public.audit_rows VALUES (106, '2026-11-26 22:15:07.304803+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1003, "service_item_code": "oil-and-filter"}', '{"likelihood": [null, "certain"], "started_at": [null, null], "job_card_number": [null, 1003], "service_item_code": [null, "oil-and-filter"]}');
INSERT INTO public.audit_rows VALUES (107, '2026-11-26 22:15:07.305001+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1003, "service_item_code": "valve-clearance-adjustment"}', '{"likelihood": [null, "likely"], "started_at": [null, null], "job_card_number": [null, 1003], "service_item_code": [null, "valve-clearance-adjustment"]}');
INSERT INTO public.audit_rows VALUES (108, '2026-11-26 22:15:07.305132+00', NULL, NULL, 'job_card_items', 'insert', '{"job_card_number": 1003, "service_item_code": "valve-clearance-check"}', '{"likelihood": [null, "certain"], "started_at": [null, null], "job_card_number": [null, 1003], "service_item_code": [null, "valve-clearance-check"]}');


--
-- Data for Name: balance_runs; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: balance_vacuums; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: blade_checks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: calendar_feeds; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: calibrations; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: cam_rechecks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: cam_timing_checks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: cam_timing_readings; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: cancellations; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: caution_acknowledgements; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.caution_acknowledgements VALUES ('019cad8f-ac00-7dea-997a-0bf5d4976cb1', 1001, 'eye-protection', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');
INSERT INTO public.caution_acknowledgements VALUES ('019cad8f-ac00-7499-8c5c-4da6e8148c6f', 1001, 'hot-oil', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');
INSERT INTO public.caution_acknowledgements VALUES ('019cad8f-ac00-7ab3-93cd-7620b1aa099d', 1001, 'used-oil', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');
INSERT INTO public.caution_acknowledgements VALUES ('019cad8f-ac00-719f-8c7f-466ec9c0c19e', 1001, 'cam-chain-taut', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');
INSERT INTO public.caution_acknowledgements VALUES ('019cad8f-ac00-7c69-ae2a-1a6d1090b8b1', 1001, 'turn-by-hand', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');


--
-- Data for Name: chain_changes; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: chain_readings; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: check_ins; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.check_ins VALUES (1001, '019cad8f-ac00-7636-9c29-1b707e35529e', NULL, NULL, '2026-03-01 18:00:00+00', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');
INSERT INTO public.check_ins VALUES (1002, '019cad8f-ac00-7351-b346-0439e2a21ffd', NULL, NULL, '2026-03-01 18:00:00+00', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');


--
-- Data for Name: clearance_forecasts; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.clearance_forecasts VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '1-intake-1', 1, '2026-03-02 08:00:00+00', 0, NULL, NULL, NULL, NULL, NULL, NULL, 'No forecast yet: the drift of its engine model has not been worked out.', NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.clearance_forecasts VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '1-intake-1', 2, '2026-03-02 08:00:00+00', 0, NULL, NULL, NULL, NULL, NULL, NULL, 'No forecast yet: the drift of its engine model has not been worked out.', NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.clearance_forecasts VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '1-exhaust-1', 1, '2026-03-02 08:00:00+00', 0, NULL, NULL, NULL, NULL, NULL, NULL, 'No forecast yet: the drift of its engine model has not been worked out.', NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.clearance_forecasts VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '2-intake-1', 1, '2026-03-02 08:00:00+00', 0, NULL, NULL, NULL, NULL, NULL, NULL, 'No forecast yet: the drift of its engine model has not been worked out.', NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.clearance_forecasts VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '2-intake-1', 2, '2026-03-02 08:00:00+00', 0, NULL, NULL, NULL, NULL, NULL, NULL, 'No forecast yet: the drift of its engine model has not been worked out.', NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.clearance_forecasts VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '2-exhaust-1', 1, '2026-03-02 08:00:00+00', 0, NULL, NULL, NULL, NULL, NULL, NULL, 'No forecast yet: the drift of its engine model has not been worked out.', NULL, NULL, NULL, NULL, NULL, NULL, NULL);


--
-- Data for Name: clearance_readings; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.clearance_readings VALUES ('019cad8f-ac00-7109-ac42-922e34cffa0e', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', 1001, NULL, '1-exhaust-1', 1, 'as_found', 1, 'go_and_no_go', 0.2500, 0.2600, false, '0000001e-0000-0000-0000-000000000001', 20.0, 'surface probe at the head', false, false, '019cad8f-ac00-7636-9c29-1b707e35529e', '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);
INSERT INTO public.clearance_readings VALUES ('019cad8f-ac00-717b-9884-69afedf1533a', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', 1001, NULL, '2-exhaust-1', 1, 'as_found', 1, 'go_and_no_go', 0.2500, 0.2600, false, '0000001e-0000-0000-0000-000000000001', 20.0, 'surface probe at the head', false, false, '019cad8f-ac00-7636-9c29-1b707e35529e', '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);
INSERT INTO public.clearance_readings VALUES ('019cad8f-ac00-77ba-9833-21557d5282bf', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', 1001, NULL, '1-intake-1', 2, 'as_found', 1, 'go_and_no_go', 0.1500, 0.1600, false, '0000001e-0000-0000-0000-000000000001', 20.0, 'surface probe at the head', false, false, '019cad8f-ac00-7636-9c29-1b707e35529e', '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);
INSERT INTO public.clearance_readings VALUES ('019cad8f-ac00-7902-bc82-d9e75364a450', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', 1001, NULL, '1-intake-1', 1, 'as_found', 1, 'go_and_no_go', 0.1500, 0.1600, false, '0000001e-0000-0000-0000-000000000001', 20.0, 'surface probe at the head', false, false, '019cad8f-ac00-7636-9c29-1b707e35529e', '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);
INSERT INTO public.clearance_readings VALUES ('019cad8f-ac00-7aab-8ee1-81f9373d718d', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', 1001, NULL, '2-intake-1', 1, 'as_found', 1, 'go_and_no_go', 0.1500, 0.1600, false, '0000001e-0000-0000-0000-000000000001', 20.0, 'surface probe at the head', false, false, '019cad8f-ac00-7636-9c29-1b707e35529e', '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);
INSERT INTO public.clearance_readings VALUES ('019cad8f-ac00-7b29-9e23-5344d431ac79', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', 1001, NULL, '2-intake-1', 2, 'as_found', 1, 'go_and_no_go', 0.1500, 0.1600, false, '0000001e-0000-0000-0000-000000000001', 20.0, 'surface probe at the head', false, false, '019cad8f-ac00-7636-9c29-1b707e35529e', '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);


--
-- Data for Name: comebacks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: consents; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: contacts; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: count_explanations; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: count_taps; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: cylinder_tests; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: data_protection_keys; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.data_protection_keys VALUES (1, 'key-5396a0a8-efd8-4f0a-ae33-3979e29c165a', '<key id="5396a0a8-efd8-4f0a-ae33-3979e29c165a" version="1"><creationDate>2026-11-26T22:13:43.0656814Z</creationDate><activationDate>2026-11-26T22:13:43.0656814Z</activationDate><expirationDate>2027-02-24T22:13:43.0656814Z</expirationDate><descriptor deserializerType="Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption.ConfigurationModel.AuthenticatedEncryptorDescriptorDeserializer, Microsoft.AspNetCore.DataProtection, Version=10.0.0.0, Culture=neutral, PublicKeyToken=adb9793829ddae60"><descriptor><encryption algorithm="AES_256_CBC" /><validation algorithm="HMACSHA256" /><masterKey p4:requiresEncryption="true" xmlns:p4="http://schemas.asp.net/2015/03/dataProtection"><!-- Warning: the key below is in an unencrypted form. --><value>uX1Lc/CBimu2iDOhuNBUp4HsnYLsm4oUvspyhAc4Yxo4/KSSgA4FjkCmXEajFCvtax4L85bJ7WGnVZJ/jX7dzA==</value></masterKey></descriptor></descriptor></key>');


--
-- Data for Name: done_items; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.done_items VALUES ('019cad8f-ac00-70e1-a01b-932d46af7f60', '019cad8f-ac00-770e-87c2-ae47c0be0a7f', 'oil-and-filter', '2026-03-02', 24001000.000, 1001, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);
INSERT INTO public.done_items VALUES ('019cad8f-ac00-7512-bbf1-d094402417de', '019cad8f-ac00-770e-87c2-ae47c0be0a7f', 'valve-clearance-check', '2026-03-02', 24001000.000, 1001, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL);


--
-- Data for Name: drift_fits; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: drift_pools; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: drift_refits; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.drift_refits VALUES ('0000000a-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', '2026-03-02 08:00:00+00', NULL, NULL, 0, 0, NULL, NULL);


--
-- Data for Name: due_items; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.due_items VALUES ('019cad8f-ac00-770e-87c2-ae47c0be0a7f', 'oil-and-filter', 'Engine oil and filter', '2027-03-02', 34001000.000, '2027-03-02', '2027-03-02', '2027-03-02', '2026-03-02 08:00:00+00', 24001000.000, '2026-03-02', 'borrowed', false, 'first', '2027-03-02', NULL, 10000000.000, NULL, 0);
INSERT INTO public.due_items VALUES ('019cad8f-ac00-770e-87c2-ae47c0be0a7f', 'valve-clearance-check', 'Valve clearance check', NULL, 48001000.000, '2032-04-15', '2031-02-02', '2033-10-13', '2026-03-02 08:00:00+00', 24001000.000, '2026-03-02', 'borrowed', false, 'later', '2032-04-15', NULL, 24000000.000, NULL, 0);


--
-- Data for Name: due_recomputes; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: due_visits; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.due_visits VALUES ('019cad8f-ac00-770e-87c2-ae47c0be0a7f', '0000000a-0000-0000-0000-000000000001', '2027-03-02', 10000000.000, 30, 0, '{}', '2026-03-02 08:00:00+00');


--
-- Data for Name: engine_fittings; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.engine_fittings VALUES ('019cad8f-ac00-741e-bae4-853127949a3b', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', '019cad8f-ac00-770e-87c2-ae47c0be0a7f', '2020-01-01', NULL, 0.000, 0.000);
INSERT INTO public.engine_fittings VALUES ('019cad8f-ac00-7cee-8097-be9be34f8921', '019cad8f-ac00-738d-a80d-09c6687964cc', '019cad8f-ac00-7716-9257-e36a1642f78d', '2020-01-01', NULL, 0.000, 0.000);
INSERT INTO public.engine_fittings VALUES ('019cad8f-ac00-7c97-9406-f52b1bf92074', '019cad8f-ac00-7c6a-a347-6a065469c20d', '019cad8f-ac00-74a6-bff1-533ef6dfe266', '2020-01-01', NULL, 0.000, 0.000);


--
-- Data for Name: engine_model_versions; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.engine_model_versions VALUES ('0000000b-0000-0000-0000-000000000001', '0000000a-0000-0000-0000-000000000001', 1, '{"cold": {"method": "surface probe at the head", "lowestC": 5, "highestC": 35, "soakHours": 8, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}}, "shims": {"form": "disc under finger follower", "stepMm": 0.025, "partCode": "shim-test-9", "largestMm": 3.2, "diameterMm": 9, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "smallestMm": 1.2}, "joints": [{"code": "head-cover", "name": "Head cover", "seals": [{"policy": "inspectAndReuse", "partCode": "cover-gasket", "quantity": 1, "reuseAllowedBy": null}, {"policy": "replaceIfDamaged", "partCode": "plug-well-o-ring", "quantity": 2, "reuseAllowedBy": null}], "sealant": null, "fasteners": ["cover-bolt"]}, {"code": "cam-caps", "name": "Camshaft caps", "seals": [], "sealant": null, "fasteners": ["cam-cap-bolt"]}, {"code": "sump-drain", "name": "Oil drain", "seals": [{"policy": "replaceAlways", "partCode": "ring-14x18", "quantity": 1, "reuseAllowedBy": null}], "sealant": null, "fasteners": ["drain-plug"]}], "layout": {"turning": "clockwise", "cylinders": [{"bank": "only", "number": 1}, {"bank": "only", "number": 2}], "description": "Parallel twin made up for tests", "firingOrder": [1, 2], "timingMarks": "Notch at the case joint, lobes of cylinder 1 outward", "turningSeenFrom": "the right side", "numberingSeenFrom": "the rider''s left"}, "limits": [{"lobe": 1, "side": "intake", "lowerMm": 0.10, "setToMm": 0.15, "upperMm": 0.20, "leverRatio": 0.6, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}}, {"lobe": 2, "side": "intake", "lowerMm": 0.10, "setToMm": 0.16, "upperMm": 0.22, "leverRatio": 0.6, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}}, {"lobe": 1, "side": "exhaust", "lowerMm": 0.20, "setToMm": 0.25, "upperMm": 0.30, "leverRatio": 0.6, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}}], "valves": [{"lobes": 2, "valve": "1-intake-1"}, {"lobes": 1, "valve": "1-exhaust-1"}, {"lobes": 2, "valve": "2-intake-1"}, {"lobes": 1, "valve": "2-exhaust-1"}], "options": [], "accesses": [{"code": "covers-off", "name": "Tank and head cover off", "joints": ["head-cover"], "minutes": 40, "fasteners": []}], "together": null, "afterWork": null, "camDrives": [], "camshafts": [{"code": "intake-cam", "name": "Intake camshaft", "valves": ["1-intake-1", "2-intake-1"]}, {"code": "exhaust-cam", "name": "Exhaust camshaft", "valves": ["1-exhaust-1", "2-exhaust-1"]}], "fasteners": [{"code": "cover-bolt", "form": null, "into": null, "name": "Head cover bolt", "note": null, "tool": "8 mm socket", "count": 6, "seals": [], "thread": "M6x1", "pattern": null, "useOnce": false, "sequence": "crosswise from the middle", "stagesNm": [], "torqueNm": 10, "treatment": "dry", "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "spaceOverMm": null, "angleDegrees": null, "propertyClass": null, "threadCompound": null, "torqueLowestNm": null, "torqueHighestNm": null, "angleToleranceDegrees": null}, {"code": "cam-cap-bolt", "form": null, "into": null, "name": "Camshaft cap bolt", "note": null, "tool": "8 mm socket", "count": 8, "seals": [], "thread": "M6x1", "pattern": null, "useOnce": false, "sequence": "evenly, from the middle outward", "stagesNm": [5], "torqueNm": 12, "treatment": "oiled", "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "spaceOverMm": null, "angleDegrees": null, "propertyClass": null, "threadCompound": null, "torqueLowestNm": null, "torqueHighestNm": null, "angleToleranceDegrees": null}, {"code": "drain-plug", "form": null, "into": null, "name": "Oil drain plug", "note": null, "tool": "12 mm hexagon", "count": 1, "seals": [], "thread": "M14x1.5", "pattern": null, "useOnce": false, "sequence": null, "stagesNm": [], "torqueNm": 24, "treatment": "dry", "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "spaceOverMm": null, "angleDegrees": null, "propertyClass": null, "threadCompound": null, "torqueLowestNm": null, "torqueHighestNm": null, "angleToleranceDegrees": null}], "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "sparkPlugs": null, "valveTrain": "shimUnderFingerFollower", "compression": null, "visitChecks": [], "serviceItems": [{"code": "valve-clearance-check", "kind": "valveClearanceCheck", "name": "Valve clearance check", "grade": "apprentice", "parts": [], "joints": [], "skills": ["valve work"], "onlyFor": null, "accesses": ["covers-off"], "cautions": ["eye-protection", "turn-by-hand"], "includes": [], "interval": {"once": false, "severe": null, "everyKm": 24000, "firstKm": null, "counting": "fromLastDone", "afterDate": null, "everyMiles": null, "firstMiles": null, "everyMonths": null, "firstMonths": null}, "fasteners": [], "drainsWarm": false, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "specialTools": [], "labourMinutes": 90, "adjustmentItem": "valve-clearance-adjustment", "bayCapabilities": []}, {"code": "valve-clearance-adjustment", "kind": "valveClearanceAdjustment", "name": "Valve clearance adjustment", "grade": "apprentice", "parts": [], "joints": ["cam-caps"], "skills": ["valve work"], "onlyFor": null, "accesses": ["covers-off"], "cautions": ["cam-chain-taut"], "includes": [], "interval": null, "fasteners": [], "drainsWarm": false, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "specialTools": ["cam-alignment-jig"], "labourMinutes": 120, "adjustmentItem": null, "bayCapabilities": []}, {"code": "oil-and-filter", "kind": "routine", "name": "Engine oil and filter", "grade": "apprentice", "parts": [{"partCode": "oil-filter", "quantity": 1, "haveReady": false}, {"partCode": "oil-10w-40", "quantity": 3200, "haveReady": false}], "joints": ["sump-drain"], "skills": [], "onlyFor": null, "accesses": [], "cautions": ["hot-oil", "used-oil"], "includes": [], "interval": {"once": false, "severe": null, "everyKm": 10000, "firstKm": 1000, "counting": "fromLastDone", "afterDate": null, "everyMiles": null, "firstMiles": null, "everyMonths": 12, "firstMonths": 6}, "fasteners": [], "drainsWarm": false, "provenance": {"source": "Invented for tests", "edition": "1", "checkedBy": null, "checkedOn": null}, "specialTools": [], "labourMinutes": 30, "adjustmentItem": null, "bayCapabilities": []}], "measuringPositions": [{"mark": "Notch 1", "name": "Compression dead centre of cylinder 1", "lobes": [{"lobe": 1, "valve": "1-intake-1"}, {"lobe": 2, "valve": "1-intake-1"}, {"lobe": 1, "valve": "1-exhaust-1"}], "crankDegrees": 0}, {"mark": "Notch 2", "name": "Compression dead centre of cylinder 2", "lobes": [{"lobe": 1, "valve": "2-intake-1"}, {"lobe": 2, "valve": "2-intake-1"}, {"lobe": 1, "valve": "2-exhaust-1"}], "crankDegrees": 360}]}', '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL);


--
-- Data for Name: engine_models; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.engine_models VALUES ('0000000a-0000-0000-0000-000000000001', 'Testwerk', 'Twin 600', true, 1);


--
-- Data for Name: engine_outlooks; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.engine_outlooks VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '2026-03-02 08:00:00+00', NULL, 48001000.000, '2032-04-15', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);


--
-- Data for Name: engine_stops; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: engines; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.engines VALUES ('019cad8f-ac00-7a77-8abd-77c372f2eeb2', '0000000a-0000-0000-0000-000000000001', 'E-1');
INSERT INTO public.engines VALUES ('019cad8f-ac00-738d-a80d-09c6687964cc', '0000000a-0000-0000-0000-000000000001', 'E-2');
INSERT INTO public.engines VALUES ('019cad8f-ac00-7c6a-a347-6a065469c20d', '0000000a-0000-0000-0000-000000000001', 'E-3');


--
-- Data for Name: estimate_answers; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: estimate_lines; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: estimates; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: expected_deliveries; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: fastener_ticks; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.fastener_ticks VALUES ('019cad8f-ac00-779f-b88b-1c78a0e883cc', 1001, 'drain-plug', true, '00000020-0000-0000-0000-000000000001', NULL, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, 1, 24.0000);
INSERT INTO public.fastener_ticks VALUES ('019cad8f-ac00-732e-bbc7-34304dba949f', 1001, 'cover-bolt', true, '00000020-0000-0000-0000-000000000001', NULL, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, 6, 10.0000);


--
-- Data for Name: feeler_blades; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.feeler_blades VALUES ('000003ed-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.0500, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003ee-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.0600, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003ef-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.0700, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f0-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.0800, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f1-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.0900, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f2-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1000, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f3-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1100, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f4-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1200, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f5-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1300, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f6-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1400, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f7-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1500, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f8-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1600, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003f9-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1700, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003fa-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1800, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003fb-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.1900, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003fc-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2000, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003fd-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2100, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003fe-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2200, NULL, false);
INSERT INTO public.feeler_blades VALUES ('000003ff-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2300, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000400-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2400, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000401-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2500, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000402-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2600, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000403-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2700, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000404-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2800, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000405-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.2900, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000406-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3000, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000407-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3100, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000408-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3200, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000409-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3300, NULL, false);
INSERT INTO public.feeler_blades VALUES ('0000040a-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3400, NULL, false);
INSERT INTO public.feeler_blades VALUES ('0000040b-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3500, NULL, false);
INSERT INTO public.feeler_blades VALUES ('0000040c-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3600, NULL, false);
INSERT INTO public.feeler_blades VALUES ('0000040d-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3700, NULL, false);
INSERT INTO public.feeler_blades VALUES ('0000040e-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3800, NULL, false);
INSERT INTO public.feeler_blades VALUES ('0000040f-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.3900, NULL, false);
INSERT INTO public.feeler_blades VALUES ('00000410-0000-0000-0000-000000000001', '0000001e-0000-0000-0000-000000000001', 0.4000, NULL, false);


--
-- Data for Name: findings; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: fleet_ridings; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: gauge_trial_appraisers; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: gauge_trial_readings; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: gauge_trials; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: goods_in_imports; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: hand_turns; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: history_imports; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: holidays; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: instrument_events; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: instruments; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.instruments VALUES ('0000001e-0000-0000-0000-000000000001', 'feeler_set', 'Feeler set, steps of 0.01 mm', 'F-1', 'mm', NULL, NULL, NULL, '2026-01-05', '2028-01-05', 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('0000001f-0000-0000-0000-000000000001', 'micrometer', 'Micrometer 0 to 25 mm', 'M-1', 'mm', NULL, NULL, 0.0020, '2026-01-05', '2028-01-05', 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000020-0000-0000-0000-000000000001', 'torque_wrench', 'Torque wrench 5 to 25 N.m', 'W-1', 'N.m', 5.0000, 25.0000, 4.0000, '2026-01-05', '2028-01-05', 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000021-0000-0000-0000-000000000001', 'degree_wheel', 'Degree wheel', 'D-1', 'degree', NULL, NULL, NULL, NULL, NULL, 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000022-0000-0000-0000-000000000001', 'dial_gauge', 'Dial gauge', 'G-1', 'mm', NULL, NULL, NULL, '2026-01-05', '2028-01-05', 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000023-0000-0000-0000-000000000001', 'dial_gauge', 'Dial gauge', 'G-0', 'mm', NULL, NULL, NULL, '2023-01-05', '2025-01-05', 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000032-0000-0000-0000-000000000001', 'compression_gauge', 'Compression gauge', 'C-1', 'bar', NULL, NULL, NULL, NULL, NULL, 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000033-0000-0000-0000-000000000001', 'leak_down_tester', 'Leak-down tester', 'L-1', 'bar', NULL, NULL, NULL, NULL, NULL, 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);
INSERT INTO public.instruments VALUES ('00000034-0000-0000-0000-000000000001', 'compression_gauge', 'Compression gauge', 'C-0', 'bar', NULL, NULL, NULL, '2023-01-05', '2025-01-05', 'in_use', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, false, NULL, NULL);


--
-- Data for Name: issued_records; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.issued_records VALUES (1001, '2026-03-02 08:00:00+00', '00000002-0000-0000-0000-000000000001', false, '{"items": [{"code": "oil-and-filter", "done": true, "name": "Engine oil and filter"}, {"code": "valve-clearance-check", "done": true, "name": "Valve clearance check"}], "parts": [{"name": "Oil filter", "unit": "piece", "quantity": 1.0000, "designation": null}, {"name": "Sealing ring 14 x 18 x 1.5", "unit": "piece", "quantity": 1.0000, "designation": null}, {"name": "Engine oil 10W-40", "unit": "millilitre", "quantity": 3200.0000, "designation": null}], "phone": null, "plugs": [], "shims": [], "agreed": null, "arrival": [], "nextDue": [{"on": "2027-03-02", "atKm": 34001.000, "name": "Engine oil and filter", "sentence": "At 34,001 km or on 2027-03-02, whichever comes first.", "byForecast": false}, {"on": null, "atKm": 48001.000, "name": "Valve clearance check", "sentence": "At 48,001 km; by what was ridden so far about 2032-04-15.", "byForecast": false}], "findings": [], "signedBy": "Tek Nician", "signedOn": "2026-03-02", "workshop": "Test workshop", "afterWork": [], "arrivedOn": "2026-03-02", "camTiming": [], "cylinders": [], "fasteners": [{"name": "Oil drain plug", "count": 1, "joint": "Oil drain", "thread": "M14x1.5", "torque": "24 N.m (17.7 lbf.ft); thread dry", "wrench": "calibrated on 2026-01-05, holds until 2028-01-05", "torqueNm": 24, "tightenedOn": "2026-03-02", "confirmedBySecond": false}, {"name": "Head cover bolt", "count": 6, "joint": "Head cover", "thread": "M6x1", "torque": "10 N.m (7.4 lbf.ft); thread dry", "wrench": "calibrated on 2026-01-05, holds until 2028-01-05", "torqueNm": 10, "tightenedOn": "2026-03-02", "confirmedBySecond": false}], "forecasts": [{"side": "intake", "toKm": null, "fromKm": null, "sentence": "Of the intake valves there is no forecast, because the drift of its engine model has not been worked out.", "isForetold": false}, {"side": "exhaust", "toKm": null, "fromKm": null, "sentence": "Of the exhaust valves there is no forecast, because the drift of its engine model has not been worked out.", "isForetold": false}], "measuring": ["Feeler set, steps of 0.01 mm: calibrated on 2026-01-05, holds until 2028-01-05.", "Cylinder head at 20 °C by surface probe at the head; clearances hold for 5 °C to 35 °C."], "clearances": [{"set": false, "left": null, "lobe": 1, "name": "cylinder 1, intake 1", "found": {"goMm": 0.1500, "kind": "goAndNoGo", "noGoMm": 0.1600, "carried": false, "notCold": false, "verdict": "within"}, "valve": "1-intake-1", "lowerMm": 0.10, "setToMm": 0.15, "upperMm": 0.20, "sentence": "Within limits."}, {"set": false, "left": null, "lobe": 2, "name": "cylinder 1, intake 1, lobe 2", "found": {"goMm": 0.1500, "kind": "goAndNoGo", "noGoMm": 0.1600, "carried": false, "notCold": false, "verdict": "within"}, "valve": "1-intake-1", "lowerMm": 0.10, "setToMm": 0.16, "upperMm": 0.22, "sentence": "Within limits."}, {"set": false, "left": null, "lobe": 1, "name": "cylinder 1, exhaust 1", "found": {"goMm": 0.2500, "kind": "goAndNoGo", "noGoMm": 0.2600, "carried": false, "notCold": false, "verdict": "within"}, "valve": "1-exhaust-1", "lowerMm": 0.20, "setToMm": 0.25, "upperMm": 0.30, "sentence": "Within limits."}, {"set": false, "left": null, "lobe": 1, "name": "cylinder 2, intake 1", "found": {"goMm": 0.1500, "kind": "goAndNoGo", "noGoMm": 0.1600, "carried": false, "notCold": false, "verdict": "within"}, "valve": "2-intake-1", "lowerMm": 0.10, "setToMm": 0.15, "upperMm": 0.20, "sentence": "Within limits."}, {"set": false, "left": null, "lobe": 2, "name": "cylinder 2, intake 1, lobe 2", "found": {"goMm": 0.1500, "kind": "goAndNoGo", "noGoMm": 0.1600, "carried": false, "notCold": false, "verdict": "within"}, "valve": "2-intake-1", "lowerMm": 0.10, "setToMm": 0.16, "upperMm": 0.22, "sentence": "Within limits."}, {"set": false, "left": null, "lobe": 1, "name": "cylinder 2, exhaust 1", "found": {"goMm": 0.2500, "kind": "goAndNoGo", "noGoMm": 0.2600, "carried": false, "notCold": false, "verdict": "within"}, "valve": "2-exhaust-1", "lowerMm": 0.20, "setToMm": 0.25, "upperMm": 0.30, "sentence": "Within limits."}], "comebackOf": null, "motorcycle": {"vin": null, "maker": "Testwerk", "model": "Twin 600", "invented": true, "modelYear": 2020, "engineModel": "Testwerk Twin 600", "registration": "VISIT 1", "engineSerialNumber": "E-1"}, "odometerIn": 24000, "odometerOut": 24001, "odometerUnit": "kilometres", "jobCardNumber": 1001, "specification": {"sources": ["Invented for tests, edition 1, checked by nobody yet"], "version": 1}}', '{}');


--
-- Data for Name: job_card_items; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.job_card_items VALUES (1001, 'oil-and-filter', 'certain', NULL);
INSERT INTO public.job_card_items VALUES (1001, 'valve-clearance-adjustment', 'likely', NULL);
INSERT INTO public.job_card_items VALUES (1001, 'valve-clearance-check', 'certain', NULL);
INSERT INTO public.job_card_items VALUES (1002, 'oil-and-filter', 'certain', NULL);
INSERT INTO public.job_card_items VALUES (1002, 'valve-clearance-adjustment', 'likely', NULL);
INSERT INTO public.job_card_items VALUES (1002, 'valve-clearance-check', 'certain', NULL);
INSERT INTO public.job_card_items VALUES (1003, 'oil-and-filter', 'certain', NULL);
INSERT INTO public.job_card_items VALUES (1003, 'valve-clearance-adjustment', 'likely', NULL);
INSERT INTO public.job_card_items VALUES (1003, 'valve-clearance-check', 'certain', NULL);


--
-- Data for Name: job_cards; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.job_cards VALUES (1001, '019cad8f-ac00-770e-87c2-ae47c0be0a7f', '019cad8f-ac00-7a77-8abd-77c372f2eeb2', '0000000b-0000-0000-0000-000000000001', 'signed_off', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', '2026-03-02 08:00:00+00', '2026-03-02 12:00:00+00', 0);
INSERT INTO public.job_cards VALUES (1002, '019cad8f-ac00-7716-9257-e36a1642f78d', '019cad8f-ac00-738d-a80d-09c6687964cc', '0000000b-0000-0000-0000-000000000001', 'checked_in', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', '2026-03-02 08:00:00+00', '2026-03-02 12:00:00+00', 0);
INSERT INTO public.job_cards VALUES (1003, '019cad8f-ac00-74a6-bff1-533ef6dfe266', '019cad8f-ac00-7c6a-a347-6a065469c20d', '0000000b-0000-0000-0000-000000000001', 'booked', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', '2026-03-02 08:00:00+00', '2026-03-02 12:00:00+00', 0);


--
-- Data for Name: kit_substitutions; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: leak_looks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: left_out_visits; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: message_templates; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.message_templates VALUES ('01927000-0000-7000-8000-000000000001', 'Service is due, e-mail', 'email', '{registration}: service is due', 'Dear {owner},

your {motorcycle}, registration {registration}, is due for service {expected}. This is what we would do in one visit, so that the machine is opened once:

{items}

Days follow from what you rode so far; if you ride more or less now, they move. Please call us on {phone} to agree on a day.

Kind regards
{workshop}

You receive this because you agreed to be written to. Tell us if you no longer wish it.
');
INSERT INTO public.message_templates VALUES ('01927000-0000-7000-8000-000000000002', 'Service is due, letter', 'letter', '{motorcycle}, {registration}: service is due', 'Dear {owner},

your {motorcycle}, registration {registration}, is due for service {expected}. This is what we would do in one visit, so that the machine is opened once:

{items}

Days follow from what you rode so far; if you ride more or less now, they move. Please call us on {phone} to agree on a day.

Kind regards
{workshop}

You receive this because you agreed to be written to. Tell us if you no longer wish it.
');


--
-- Data for Name: motorcycle_moves; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: motorcycles; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.motorcycles VALUES ('019cad8f-ac00-770e-87c2-ae47c0be0a7f', 'VISIT 1', NULL, 'Testwerk', 'Twin 600', 2020, NULL, false, '{}', 'normal', NULL, NULL);
INSERT INTO public.motorcycles VALUES ('019cad8f-ac00-7716-9257-e36a1642f78d', 'VISIT 2', NULL, 'Testwerk', 'Twin 600', 2020, NULL, false, '{}', 'normal', NULL, NULL);
INSERT INTO public.motorcycles VALUES ('019cad8f-ac00-74a6-bff1-533ef6dfe266', 'VISIT 3', NULL, 'Testwerk', 'Twin 600', 2020, NULL, false, '{}', 'normal', NULL, NULL);


--
-- Data for Name: occupancies; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: odometer_readings; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.odometer_readings VALUES ('019cad8f-ac00-7636-9c29-1b707e35529e', '019cad8f-ac00-70b1-a898-e718e1a4f15f', '019cad8f-ac00-770e-87c2-ae47c0be0a7f', '2026-03-02', 24000, 'kilometres', 24000000.000, 1001, NULL, NULL, '00000001-0000-0000-0000-000000000001', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', false);
INSERT INTO public.odometer_readings VALUES ('019cad8f-ac00-7216-9031-23c4aa8d8fb7', '019cad8f-ac00-70b1-a898-e718e1a4f15f', '019cad8f-ac00-770e-87c2-ae47c0be0a7f', '2026-03-02', 24001, 'kilometres', 24001000.000, 1001, NULL, NULL, '00000002-0000-0000-0000-000000000001', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', false);
INSERT INTO public.odometer_readings VALUES ('019cad8f-ac00-7351-b346-0439e2a21ffd', '019cad8f-ac00-7cd5-adcf-de0ea0187616', '019cad8f-ac00-7716-9257-e36a1642f78d', '2026-03-02', 24000, 'kilometres', 24000000.000, 1002, NULL, NULL, '00000001-0000-0000-0000-000000000001', '00000001-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', false);


--
-- Data for Name: odometers; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.odometers VALUES ('019cad8f-ac00-70b1-a898-e718e1a4f15f', '019cad8f-ac00-770e-87c2-ae47c0be0a7f', 'kilometres', '2020-01-01', NULL, 0.000);
INSERT INTO public.odometers VALUES ('019cad8f-ac00-7cd5-adcf-de0ea0187616', '019cad8f-ac00-7716-9257-e36a1642f78d', 'kilometres', '2020-01-01', NULL, 0.000);
INSERT INTO public.odometers VALUES ('019cad8f-ac00-7878-a88f-66b4d353f83e', '019cad8f-ac00-74a6-bff1-533ef6dfe266', 'kilometres', '2020-01-01', NULL, 0.000);


--
-- Data for Name: opening_hours; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.opening_hours VALUES (1, '08:00:00', '17:00:00');
INSERT INTO public.opening_hours VALUES (2, '08:00:00', '17:00:00');
INSERT INTO public.opening_hours VALUES (3, '08:00:00', '17:00:00');
INSERT INTO public.opening_hours VALUES (4, '08:00:00', '17:00:00');
INSERT INTO public.opening_hours VALUES (5, '08:00:00', '17:00:00');


--
-- Data for Name: outbox_messages; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: part_alternatives; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: part_changes; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: part_scan_codes; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: part_supplies; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: parts; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.parts VALUES ('00000032-0000-0000-0000-000000000001', 'ring-14x18', 'Sealing ring 14 x 18 x 1.5', 'sealing_ring', 'piece', NULL, NULL, NULL, NULL, false, NULL, NULL, false, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, true, NULL);
INSERT INTO public.parts VALUES ('00000033-0000-0000-0000-000000000001', 'cover-gasket', 'Head cover gasket', 'gasket', 'piece', NULL, NULL, NULL, NULL, false, NULL, NULL, false, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, true, NULL);
INSERT INTO public.parts VALUES ('00000034-0000-0000-0000-000000000001', 'plug-well-o-ring', 'Plug well O-ring', 'o_ring', 'piece', NULL, NULL, NULL, NULL, false, NULL, NULL, false, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, true, NULL);
INSERT INTO public.parts VALUES ('00000035-0000-0000-0000-000000000001', 'oil-filter', 'Oil filter', 'general', 'piece', NULL, NULL, NULL, NULL, false, NULL, NULL, false, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, true, NULL);
INSERT INTO public.parts VALUES ('00000036-0000-0000-0000-000000000001', 'oil-10w-40', 'Engine oil 10W-40', 'fluid', 'millilitre', NULL, NULL, NULL, NULL, false, NULL, NULL, false, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, true, NULL);
INSERT INTO public.parts VALUES ('00000037-0000-0000-0000-000000000001', 'shim-test-9', 'Shim 9 mm, disc under finger follower', 'shim', 'piece', NULL, NULL, NULL, NULL, false, NULL, NULL, false, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, true, NULL);


--
-- Data for Name: people; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.people VALUES ('00000001-0000-0000-0000-000000000001', 'Ada Visor', NULL, NULL, true, NULL);
INSERT INTO public.people VALUES ('00000002-0000-0000-0000-000000000001', 'Tek Nician', NULL, NULL, true, NULL);
INSERT INTO public.people VALUES ('00000003-0000-0000-0000-000000000001', 'Mana Ger', NULL, NULL, true, NULL);


--
-- Data for Name: phase_starts; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: photos; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: planned_phases; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: plug_checks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: position_confirmations; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: purchase_order_lines; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: purchase_orders; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: put_offs; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: reading_imports; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: record_links; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: remarks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: reminder_resets; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: resources; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.resources VALUES ('00000014-0000-0000-0000-000000000001', 'bay', 'Bay 1', NULL, '{lift}', false, NULL);
INSERT INTO public.resources VALUES ('00000015-0000-0000-0000-000000000001', 'bay', 'Bay 2', NULL, '{}', false, NULL);
INSERT INTO public.resources VALUES ('00000017-0000-0000-0000-000000000001', 'special_tool', 'Cam alignment jig', NULL, '{cam-alignment-jig}', false, NULL);
INSERT INTO public.resources VALUES ('00000018-0000-0000-0000-000000000001', 'parking_place', 'Stand 1', NULL, '{}', false, NULL);
INSERT INTO public.resources VALUES ('00000019-0000-0000-0000-000000000001', 'parking_place', 'Stand 2', NULL, '{}', false, NULL);
INSERT INTO public.resources VALUES ('00000016-0000-0000-0000-000000000001', 'technician', 'TN', '00000002-0000-0000-0000-000000000001', '{"valve work"}', false, NULL);


--
-- Data for Name: role_claims; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: roles; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.roles VALUES ('019cad8f-ac00-796f-936a-9e5dc2378012', 'advisor', 'ADVISOR', '12c77b9b-14f4-4d19-a69f-29aec0ec1550');
INSERT INTO public.roles VALUES ('019cad8f-ac00-7d5e-8fa7-af87846f5033', 'technician', 'TECHNICIAN', '33361f48-2ef5-47a4-b799-c3ba0c6a8b95');
INSERT INTO public.roles VALUES ('019cad8f-ac00-72bf-b9a0-93f7170362c2', 'manager', 'MANAGER', 'ebe5a156-7693-45e3-a38a-e977b833113f');


--
-- Data for Name: seal_inspections; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.seal_inspections VALUES ('019cad8f-ac00-7ef2-aeaf-5e7b482ba066', 1001, 'head-cover', 'cover-gasket', 'fit', 0.0000, NULL, NULL, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00');


--
-- Data for Name: second_person_marks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: sessions; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.sessions VALUES ('019cad8f-ac00-7b4e-98db-8ae3bf95bfd2', '019cad8f-ac00-7e5b-aea4-472970833724', 1, '\xe5bd33e69ac4236f667c78cd0e591efcc6ef77f5fbd5a3dfd72f4ebba67871d4', '', '2026-03-02 08:00:00+00', '2026-04-01 08:00:00+00', NULL);


--
-- Data for Name: shim_observations; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: shim_plan_choices; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: shim_series; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.shim_series VALUES ('00000037-0000-0000-0000-000000000001', 'shim_under_finger_follower', 9.000, 1.200, 3.200, 0.025, '00000029-0000-0000-0000-000000000001', 10, 'made up for tests');


--
-- Data for Name: shims; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.shims VALUES ('019cad8f-ac00-7fd2-b99a-022d27a421e8', '00000037-0000-0000-0000-000000000001', 2.250, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7725-a6ec-71e2e30bc867', '00000037-0000-0000-0000-000000000001', 2.000, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7327-9f19-c699bf100d7d', '00000037-0000-0000-0000-000000000001', 2.075, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-78c8-8d1f-e0e5575a0af7', '00000037-0000-0000-0000-000000000001', 1.925, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7f44-b39b-92ed6c870b53', '00000037-0000-0000-0000-000000000001', 1.825, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-76f4-b15e-4daa1fa1f1e5', '00000037-0000-0000-0000-000000000001', 1.900, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7f32-b066-72604fc41b9e', '00000037-0000-0000-0000-000000000001', 2.000, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7243-95ef-56d4903f206c', '00000037-0000-0000-0000-000000000001', 2.350, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7e2a-8d1c-e166e68af2e8', '00000037-0000-0000-0000-000000000001', 2.050, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7e97-9100-b6e1aa643ced', '00000037-0000-0000-0000-000000000001', 2.075, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7401-bf44-863559cf66aa', '00000037-0000-0000-0000-000000000001', 2.375, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7095-aa0e-2d78fe930030', '00000037-0000-0000-0000-000000000001', 2.250, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7d11-aa9b-129c87d24648', '00000037-0000-0000-0000-000000000001', 1.875, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7169-8a5d-bd1e6556cfeb', '00000037-0000-0000-0000-000000000001', 2.275, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7b99-abfe-3c97407c8b65', '00000037-0000-0000-0000-000000000001', 1.950, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7e20-a748-a5f50f74fbde', '00000037-0000-0000-0000-000000000001', 1.950, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-78cd-959d-ff00b154808d', '00000037-0000-0000-0000-000000000001', 2.200, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-78e2-9e6f-9b1e7e45841f', '00000037-0000-0000-0000-000000000001', 2.325, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7575-aa27-f35a041ad7ff', '00000037-0000-0000-0000-000000000001', 2.100, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7646-8755-cd99e523dfb3', '00000037-0000-0000-0000-000000000001', 1.975, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7084-aab6-5d71b6eddbe0', '00000037-0000-0000-0000-000000000001', 2.150, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-77a8-8e1d-af9247ff124e', '00000037-0000-0000-0000-000000000001', 1.975, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7fe8-bf4b-7e61ba499931', '00000037-0000-0000-0000-000000000001', 2.400, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-79ee-86dc-cb3a6c7ca748', '00000037-0000-0000-0000-000000000001', 2.375, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7b30-bd51-81073543545e', '00000037-0000-0000-0000-000000000001', 2.025, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7646-9e14-36fca0487f7d', '00000037-0000-0000-0000-000000000001', 1.900, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-721f-8078-d2b0844efaa7', '00000037-0000-0000-0000-000000000001', 1.850, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-74d8-a9f4-fa76d59fc25f', '00000037-0000-0000-0000-000000000001', 1.800, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7e6e-ab3c-58dcada1388b', '00000037-0000-0000-0000-000000000001', 2.025, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7bc0-a5c1-a32127ea03a5', '00000037-0000-0000-0000-000000000001', 2.175, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-783f-a81e-3cfbbadfa995', '00000037-0000-0000-0000-000000000001', 2.050, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7a3e-84b2-dc5528f8067a', '00000037-0000-0000-0000-000000000001', 2.175, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-71ec-88ba-e5c44710b846', '00000037-0000-0000-0000-000000000001', 2.350, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-758f-b3ce-38704f6a0c1f', '00000037-0000-0000-0000-000000000001', 2.100, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7bad-808e-18643ce9a0a8', '00000037-0000-0000-0000-000000000001', 1.850, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-72b3-93a2-b53c1fdabc34', '00000037-0000-0000-0000-000000000001', 2.150, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7381-aebb-c995e791da64', '00000037-0000-0000-0000-000000000001', 1.800, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-75e1-a99c-6768fd580eb8', '00000037-0000-0000-0000-000000000001', 2.125, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-72eb-8dc8-e83ba065b043', '00000037-0000-0000-0000-000000000001', 2.300, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-781c-8b92-ffbffa31ceff', '00000037-0000-0000-0000-000000000001', 2.300, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-70ab-a31d-f6c3f83bce8c', '00000037-0000-0000-0000-000000000001', 2.200, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7456-bb34-b0d8f3271719', '00000037-0000-0000-0000-000000000001', 2.275, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7173-b2ea-92a0c38a54a0', '00000037-0000-0000-0000-000000000001', 2.400, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-77f7-983e-f6349c763521', '00000037-0000-0000-0000-000000000001', 2.325, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-786f-a868-4bd9d9096e42', '00000037-0000-0000-0000-000000000001', 2.225, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7dce-a83c-d95d6f76ed08', '00000037-0000-0000-0000-000000000001', 2.125, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-76ec-bb6f-1310ccbd73f6', '00000037-0000-0000-0000-000000000001', 2.225, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-709f-8cb4-7cc3b3dcdc94', '00000037-0000-0000-0000-000000000001', 1.925, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-7b4a-b569-a9afae673e3e', '00000037-0000-0000-0000-000000000001', 1.825, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);
INSERT INTO public.shims VALUES ('019cad8f-ac00-703e-8808-a2f45985bc1a', '00000037-0000-0000-0000-000000000001', 1.875, NULL, 'new', NULL, '00000029-0000-0000-0000-000000000001', NULL, NULL, NULL, NULL);


--
-- Data for Name: sign_offs; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.sign_offs VALUES (1001, '019cad8f-ac00-7216-9031-23c4aa8d8fb7', '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL);


--
-- Data for Name: specification_drafts; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: stock_balances; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.stock_balances VALUES ('aa639798-8181-4542-ab25-5b5e4ae6ab2a', '00000033-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('2324a027-22e7-4cba-aadc-c1ff3afcab70', '00000034-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 8.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('79bb9c20-d139-4926-a913-03cc867a3167', '00000032-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 9.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('699365e3-f70b-459b-ad61-279ab2b2f97a', '00000035-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('00c0ad27-ec4d-40d4-95c8-dde0e728d41a', '00000036-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 16800.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('60b89093-87e3-41d4-85bd-10c596365b0e', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.000, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('50ac450a-2bd9-4008-ae58-dd0c5346db4f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.075, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('7cb303a3-9a5e-48e0-a8d6-9101301d5fc7', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.250, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('2d3dd8b3-fa8f-4080-a63d-eefd06c1c68f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.950, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('04f2a7b3-49f4-4e76-a0e8-586b56106ec1', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.975, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('185f9322-f64a-426b-b9d6-90fa6707cfe9', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.375, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('590cb42a-1933-492a-8f4f-d8d3e9b441c7', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.900, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('939830a8-5b7b-4f3e-8416-59ba480ff374', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.025, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('4f2fbc92-8d5d-4841-b6b8-9856dbe9cb7a', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.050, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('8a192ea1-2e12-4f16-8c34-36f6c0310e18', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.175, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('39b746c0-07be-425a-bc07-3fb7f4e4a80a', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.350, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('703ad902-a34d-4184-9c55-050b295d0144', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.100, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('6462597a-8617-4d82-9ae0-ba5a00d46d60', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.850, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('32ef093c-2e4c-46b5-8d19-2b865a3aaecc', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.150, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('8bea8927-2155-47e9-938e-f9a6c1c25cf9', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.800, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('410f5f71-c69a-439a-ba67-55c8b81a0b38', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.300, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('99b2fb88-a15f-4ea3-ab02-654eb45973fe', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.200, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('5ec8853c-9346-461f-b302-69d9c4bf946f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.275, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('55ad308a-d3da-4f9b-b60f-32eb76b7fd2f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.400, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('11791d2b-8c64-4e10-9747-1837d39c8513', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.325, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('55463409-e160-4491-bbbf-921e93849e4a', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.125, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('385b031c-7e48-472a-8fce-13557c1cda92', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.225, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('090ea0b6-f100-4417-b05a-e5e6dce4b099', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.925, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('3705d366-8b5c-43dc-aaf4-0d31f803ef04', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.825, 'new', 2.0000, 0.0000, NULL);
INSERT INTO public.stock_balances VALUES ('5efa61b9-c353-4e05-8615-a04e766ecfa7', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.875, 'new', 2.0000, 0.0000, NULL);


--
-- Data for Name: stock_count_lines; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: stock_counts; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: stock_lots; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: stock_movements; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.stock_movements VALUES ('00000bea-0000-0000-0000-000000000001', '00000032-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'received', 10.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('00000beb-0000-0000-0000-000000000001', '00000033-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'received', 2.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('00000bec-0000-0000-0000-000000000001', '00000034-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'received', 8.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('00000bed-0000-0000-0000-000000000001', '00000035-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'received', 3.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('00000bee-0000-0000-0000-000000000001', '00000036-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'received', 20000.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-701b-a883-0aa24d0e77e6', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.250, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7fd2-b99a-022d27a421e8', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-707f-bede-248b8caf4785', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.000, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7725-a6ec-71e2e30bc867', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7089-8476-937d473509d9', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.075, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7327-9f19-c699bf100d7d', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-708a-a883-0727bae748cc', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.925, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-78c8-8d1f-e0e5575a0af7', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-70a1-ac77-84be325ea3b8', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.825, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7f44-b39b-92ed6c870b53', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7133-bc5c-6d6acef1607d', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.900, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-76f4-b15e-4daa1fa1f1e5', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7142-9706-99a37c7d58d8', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.000, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7f32-b066-72604fc41b9e', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7158-9ebd-56135d79aa11', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.350, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7243-95ef-56d4903f206c', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-718d-8517-a9ec694d473d', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.050, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7e2a-8d1c-e166e68af2e8', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7200-a0ae-a6810c07bc9d', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.075, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7e97-9100-b6e1aa643ced', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7208-a240-71299fd19d4c', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.375, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7401-bf44-863559cf66aa', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-72a7-bd88-8019a2a7e214', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.250, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7095-aa0e-2d78fe930030', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-72b3-bd26-32321443f2fc', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.875, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7d11-aa9b-129c87d24648', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-72b7-ab96-c36a1a4e09d2', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.275, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7169-8a5d-bd1e6556cfeb', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-733d-8bc1-e5dcb0210f43', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.950, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7b99-abfe-3c97407c8b65', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7369-9b35-a8bcada318eb', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.950, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7e20-a748-a5f50f74fbde', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-73b7-ab34-4b4ade835da1', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.200, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-78cd-959d-ff00b154808d', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-743d-83bb-a868158a5fe1', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.325, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-78e2-9e6f-9b1e7e45841f', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7456-927b-999b1114f7fc', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.100, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7575-aa27-f35a041ad7ff', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-745c-93aa-7905ada6a64b', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.975, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7646-8755-cd99e523dfb3', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-745d-b84b-cfaeb331731d', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.150, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7084-aab6-5d71b6eddbe0', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-747c-87e4-ebbfd789e79d', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.975, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-77a8-8e1d-af9247ff124e', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-74ba-8409-a040a48c00fb', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.400, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7fe8-bf4b-7e61ba499931', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7522-bbaa-86fbc692a340', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.375, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-79ee-86dc-cb3a6c7ca748', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7527-9410-606ece95564e', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.025, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7b30-bd51-81073543545e', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-75c3-b614-783f208481a8', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.900, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7646-9e14-36fca0487f7d', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7602-a15b-240927aaaa6f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.850, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-721f-8078-d2b0844efaa7', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7718-9846-683d513e792f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.800, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-74d8-a9f4-fa76d59fc25f', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-77bc-b4d5-3dd006980970', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.025, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7e6e-ab3c-58dcada1388b', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-77f5-8bff-afd79e3d2983', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.175, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7bc0-a5c1-a32127ea03a5', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7846-ab25-b15c5d4c8dad', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.050, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-783f-a81e-3cfbbadfa995', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-787b-a3be-3c34ef04816b', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.175, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7a3e-84b2-dc5528f8067a', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-78cd-900e-a348febb2d11', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.350, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-71ec-88ba-e5c44710b846', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-793d-804f-ce1d51450acd', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.100, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-758f-b3ce-38704f6a0c1f', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-796a-ac34-1bd3eae78289', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.850, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7bad-808e-18643ce9a0a8', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7a26-a456-5b83173df308', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.150, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-72b3-93a2-b53c1fdabc34', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7a62-9f7b-d6ae3d686475', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.800, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7381-aebb-c995e791da64', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7aba-9921-826ec92a36ad', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.125, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-75e1-a99c-6768fd580eb8', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7af5-87a3-e5a291109546', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.300, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-72eb-8dc8-e83ba065b043', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7ba3-a4da-efe12a2e29e7', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.300, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-781c-8b92-ffbffa31ceff', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7bd4-803d-ce1ee9f84ab3', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.200, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-70ab-a31d-f6c3f83bce8c', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7bda-9e79-a29af97441cc', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.275, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7456-bb34-b0d8f3271719', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7d5d-bb00-817776aab8ce', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.400, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7173-b2ea-92a0c38a54a0', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7e50-ae7b-68299813e76d', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.325, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-77f7-983e-f6349c763521', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7e98-9e98-ccc13f212d52', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.225, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-786f-a868-4bd9d9096e42', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7eb8-bdd9-2300fbf01a18', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.125, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7dce-a83c-d95d6f76ed08', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7ee5-8eac-2ddf1315903f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 2.225, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-76ec-bb6f-1310ccbd73f6', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7f91-99d9-47469328550f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.925, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-709f-8cb4-7cc3b3dcdc94', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7f93-b160-c1ae5d08f722', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.825, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-7b4a-b569-a9afae673e3e', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7fbd-9e8f-42a29f055f2f', '00000037-0000-0000-0000-000000000001', '00000029-0000-0000-0000-000000000001', 1.875, 'new', 'received', 1.0000, 0.0000, NULL, '00000003-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, '019cad8f-ac00-703e-8808-a2f45985bc1a', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-757a-bc74-3601728684c9', '00000032-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'issued', -1.0000, 0.0000, 1001, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7606-b0cc-2f05a33b7b93', '00000035-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'issued', -1.0000, 0.0000, 1001, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.stock_movements VALUES ('019cad8f-ac00-7aa9-af43-8157718cdbad', '00000036-0000-0000-0000-000000000001', '00000028-0000-0000-0000-000000000001', NULL, 'new', 'issued', -3200.0000, 0.0000, 1001, '00000002-0000-0000-0000-000000000001', '2026-03-02 08:00:00+00', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);


--
-- Data for Name: storage_places; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.storage_places VALUES ('00000028-0000-0000-0000-000000000001', 'Shelf A', 'P001', false, 0);
INSERT INTO public.storage_places VALUES ('00000029-0000-0000-0000-000000000001', 'Shim box', 'P002', false, 0);


--
-- Data for Name: stored_answers; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'TickFastener', 'test-5673132-2', '\x99f9fd7ebf0fcbee3e5eb72d40e49b8afabd7d6bfcea4d2f75d493e8342daf39', '{"state": "tightened", "tickId": "019cad8f-ac00-779f-b88b-1c78a0e883cc", "dialled": "24 N.m", "fastenerCode": "drain-plug", "notTightened": 1}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'TickFastener', 'test-5673132-3', '\xf5b3824a675e544f602146e94709633e39e2eb42a571dff927c81a25196bbf41', '{"state": "tightened", "tickId": "019cad8f-ac00-732e-bbc7-34304dba949f", "dialled": "10 N.m", "fastenerCode": "cover-bolt", "notTightened": 0}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'InspectSeals', 'test-5673132-4', '\x439cd29d4d8e45fdef565be78dca78c6c258829a69026fffe2c8bf17b9e81942', '{"seals": [{"name": "Head cover gasket", "unit": "piece", "place": "Head cover", "policy": "inspectAndReuse", "allowed": null, "earlier": [], "partCode": "cover-gasket", "quantity": 1, "placeCode": "head-cover", "inspection": {"at": "2026-03-02T08:00:00Z", "by": "Tek Nician", "taken": 0.0000, "remark": null, "verdict": "fit"}}, {"name": "Plug well O-ring", "unit": "piece", "place": "Head cover", "policy": "replaceIfDamaged", "allowed": null, "earlier": [], "partCode": "plug-well-o-ring", "quantity": 2, "placeCode": "head-cover", "inspection": null}], "state": "checkedIn", "notInspected": 0, "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'AcknowledgeCautions', 'test-5673132-5', '\x397a0729113749035179b0d27c2416fe0b66214faf7b33c00316508baeac1b29', '{"open": ["hot-oil", "used-oil", "cam-chain-taut", "turn-by-hand"], "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'AcknowledgeCautions', 'test-5673132-6', '\xab32fb2b4c85b124bcaeb5a715d932877640b12eaefb45ff80a3b9775ea4acbf', '{"open": ["used-oil", "cam-chain-taut", "turn-by-hand"], "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'AcknowledgeCautions', 'test-5673132-7', '\x18e02172445ff9469f56ceee3b3b892c404a82d5108e080b25972a7f65a043e3', '{"open": ["cam-chain-taut", "turn-by-hand"], "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'AcknowledgeCautions', 'test-5673132-8', '\x215c6f38f14e2930aa1d86447c1cf10a901a27b1c204c34c72e755bdad6a991a', '{"open": ["turn-by-hand"], "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'AcknowledgeCautions', 'test-5673132-9', '\xababfee56e458e3d1b839947e70c1401d71ee08834ceb5ca82407bc99acdac12', '{"open": [], "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');
INSERT INTO public.stored_answers VALUES ('00000002-0000-0000-0000-000000000001', 'SignOffCard', 'test-5673132-10', '\x174df36b460ad49e76e763b905dace0c74d0b1a94f397bb06e90ef3b884c648a', '{"signedAt": "2026-03-02T08:00:00Z", "doneItems": ["oil-and-filter", "valve-clearance-check"], "jobCardNumber": 1001}', '2026-03-02 08:00:00+00');


--
-- Data for Name: suppliers; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: tax_rates; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: test_rides; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: tick_witnesses; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: valve_events; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: visit_rechecks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: visit_waits; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: visit_wishes; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: work_breaks; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: work_spells; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: working_hours; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Data for Name: workshop_profiles; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.workshop_profiles VALUES (1, 'Test workshop', 'Europe/Vienna', true, 'yes', 0.05, 15, 15, 20, 15, 30, 500000.000, NULL, 'EUR', NULL, 0.95, NULL);


--
-- Data for Name: wrench_adapters; Type: TABLE DATA; Schema: public; Owner: -
--



--
-- Name: account_claims_id_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.account_claims_id_seq', 1, false);


--
-- Name: audit_rows_id_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.audit_rows_id_seq', 108, true);


--
-- Name: data_protection_keys_id_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.data_protection_keys_id_seq', 1, true);


--
-- Name: job_cards_number_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.job_cards_number_seq', 1003, true);


--
-- Name: purchase_orders_number_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.purchase_orders_number_seq', 501, false);


--
-- Name: role_claims_id_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.role_claims_id_seq', 1, false);


--
-- Name: storage_place_codes; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.storage_place_codes', 2, true);


--
-- Name: engine_fittings ex_engine_fittings_one_engine; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_fittings
    ADD CONSTRAINT ex_engine_fittings_one_engine EXCLUDE USING gist (motorcycle_id WITH =, daterange(fitted_on, removed_on) WITH &&);


--
-- Name: engine_fittings ex_engine_fittings_one_motorcycle; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_fittings
    ADD CONSTRAINT ex_engine_fittings_one_motorcycle EXCLUDE USING gist (engine_id WITH =, daterange(fitted_on, removed_on) WITH &&);


--
-- Name: occupancies ex_occupancies_no_overlap; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.occupancies
    ADD CONSTRAINT ex_occupancies_no_overlap EXCLUDE USING gist (resource_id WITH =, span WITH &&) WHERE (live);


--
-- Name: work_spells ex_work_spells_no_overlap; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.work_spells
    ADD CONSTRAINT ex_work_spells_no_overlap EXCLUDE USING gist (person_id WITH =, tstzrange(started_at, ended_at) WITH &&);


--
-- Name: __EFMigrationsHistory pk___ef_migrations_history; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public."__EFMigrationsHistory"
    ADD CONSTRAINT pk___ef_migrations_history PRIMARY KEY (migration_id);


--
-- Name: absences pk_absences; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.absences
    ADD CONSTRAINT pk_absences PRIMARY KEY (id);


--
-- Name: account_claims pk_account_claims; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_claims
    ADD CONSTRAINT pk_account_claims PRIMARY KEY (id);


--
-- Name: account_logins pk_account_logins; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_logins
    ADD CONSTRAINT pk_account_logins PRIMARY KEY (login_provider, provider_key);


--
-- Name: account_roles pk_account_roles; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_roles
    ADD CONSTRAINT pk_account_roles PRIMARY KEY (user_id, role_id);


--
-- Name: account_tokens pk_account_tokens; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_tokens
    ADD CONSTRAINT pk_account_tokens PRIMARY KEY (user_id, login_provider, name);


--
-- Name: accounts pk_accounts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.accounts
    ADD CONSTRAINT pk_accounts PRIMARY KEY (id);


--
-- Name: arrival_notes pk_arrival_notes; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.arrival_notes
    ADD CONSTRAINT pk_arrival_notes PRIMARY KEY (id);


--
-- Name: as_left_marks pk_as_left_marks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.as_left_marks
    ADD CONSTRAINT pk_as_left_marks PRIMARY KEY (id);


--
-- Name: as_left_witnesses pk_as_left_witnesses; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.as_left_witnesses
    ADD CONSTRAINT pk_as_left_witnesses PRIMARY KEY (id);


--
-- Name: audit_rows pk_audit_rows; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.audit_rows
    ADD CONSTRAINT pk_audit_rows PRIMARY KEY (id);


--
-- Name: balance_runs pk_balance_runs; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_runs
    ADD CONSTRAINT pk_balance_runs PRIMARY KEY (id);


--
-- Name: balance_vacuums pk_balance_vacuums; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_vacuums
    ADD CONSTRAINT pk_balance_vacuums PRIMARY KEY (run_id, cylinder);


--
-- Name: blade_checks pk_blade_checks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.blade_checks
    ADD CONSTRAINT pk_blade_checks PRIMARY KEY (id);


--
-- Name: calendar_feeds pk_calendar_feeds; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.calendar_feeds
    ADD CONSTRAINT pk_calendar_feeds PRIMARY KEY (id);


--
-- Name: calibrations pk_calibrations; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.calibrations
    ADD CONSTRAINT pk_calibrations PRIMARY KEY (id);


--
-- Name: cam_rechecks pk_cam_rechecks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_rechecks
    ADD CONSTRAINT pk_cam_rechecks PRIMARY KEY (id);


--
-- Name: cam_timing_checks pk_cam_timing_checks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT pk_cam_timing_checks PRIMARY KEY (id);


--
-- Name: cam_timing_readings pk_cam_timing_readings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_readings
    ADD CONSTRAINT pk_cam_timing_readings PRIMARY KEY (check_id, repeat);


--
-- Name: cancellations pk_cancellations; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cancellations
    ADD CONSTRAINT pk_cancellations PRIMARY KEY (job_card_number);


--
-- Name: caution_acknowledgements pk_caution_acknowledgements; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.caution_acknowledgements
    ADD CONSTRAINT pk_caution_acknowledgements PRIMARY KEY (id);


--
-- Name: chain_changes pk_chain_changes; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_changes
    ADD CONSTRAINT pk_chain_changes PRIMARY KEY (id);


--
-- Name: chain_readings pk_chain_readings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT pk_chain_readings PRIMARY KEY (id);


--
-- Name: check_ins pk_check_ins; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.check_ins
    ADD CONSTRAINT pk_check_ins PRIMARY KEY (job_card_number);


--
-- Name: clearance_forecasts pk_clearance_forecasts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_forecasts
    ADD CONSTRAINT pk_clearance_forecasts PRIMARY KEY (engine_id, valve, lobe);


--
-- Name: clearance_readings pk_clearance_readings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT pk_clearance_readings PRIMARY KEY (id);


--
-- Name: comebacks pk_comebacks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.comebacks
    ADD CONSTRAINT pk_comebacks PRIMARY KEY (job_card_number);


--
-- Name: consents pk_consents; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.consents
    ADD CONSTRAINT pk_consents PRIMARY KEY (id);


--
-- Name: contacts pk_contacts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.contacts
    ADD CONSTRAINT pk_contacts PRIMARY KEY (id);


--
-- Name: count_explanations pk_count_explanations; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_explanations
    ADD CONSTRAINT pk_count_explanations PRIMARY KEY (id);


--
-- Name: count_taps pk_count_taps; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_taps
    ADD CONSTRAINT pk_count_taps PRIMARY KEY (id);


--
-- Name: cylinder_tests pk_cylinder_tests; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT pk_cylinder_tests PRIMARY KEY (id);


--
-- Name: data_protection_keys pk_data_protection_keys; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.data_protection_keys
    ADD CONSTRAINT pk_data_protection_keys PRIMARY KEY (id);


--
-- Name: done_items pk_done_items; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.done_items
    ADD CONSTRAINT pk_done_items PRIMARY KEY (id);


--
-- Name: drift_fits pk_drift_fits; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.drift_fits
    ADD CONSTRAINT pk_drift_fits PRIMARY KEY (engine_model_id, version);


--
-- Name: drift_pools pk_drift_pools; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.drift_pools
    ADD CONSTRAINT pk_drift_pools PRIMARY KEY (kind, version);


--
-- Name: drift_refits pk_drift_refits; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.drift_refits
    ADD CONSTRAINT pk_drift_refits PRIMARY KEY (engine_model_id);


--
-- Name: due_items pk_due_items; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_items
    ADD CONSTRAINT pk_due_items PRIMARY KEY (motorcycle_id, service_item_code);


--
-- Name: due_recomputes pk_due_recomputes; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_recomputes
    ADD CONSTRAINT pk_due_recomputes PRIMARY KEY (id);


--
-- Name: due_visits pk_due_visits; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_visits
    ADD CONSTRAINT pk_due_visits PRIMARY KEY (motorcycle_id);


--
-- Name: engine_fittings pk_engine_fittings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_fittings
    ADD CONSTRAINT pk_engine_fittings PRIMARY KEY (id);


--
-- Name: engine_model_versions pk_engine_model_versions; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_model_versions
    ADD CONSTRAINT pk_engine_model_versions PRIMARY KEY (id);


--
-- Name: engine_models pk_engine_models; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_models
    ADD CONSTRAINT pk_engine_models PRIMARY KEY (id);


--
-- Name: engine_outlooks pk_engine_outlooks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_outlooks
    ADD CONSTRAINT pk_engine_outlooks PRIMARY KEY (engine_id);


--
-- Name: engine_stops pk_engine_stops; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_stops
    ADD CONSTRAINT pk_engine_stops PRIMARY KEY (id);


--
-- Name: engines pk_engines; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engines
    ADD CONSTRAINT pk_engines PRIMARY KEY (id);


--
-- Name: estimate_answers pk_estimate_answers; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_answers
    ADD CONSTRAINT pk_estimate_answers PRIMARY KEY (id);


--
-- Name: estimate_lines pk_estimate_lines; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_lines
    ADD CONSTRAINT pk_estimate_lines PRIMARY KEY (estimate_id, place);


--
-- Name: estimates pk_estimates; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimates
    ADD CONSTRAINT pk_estimates PRIMARY KEY (id);


--
-- Name: expected_deliveries pk_expected_deliveries; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.expected_deliveries
    ADD CONSTRAINT pk_expected_deliveries PRIMARY KEY (id);


--
-- Name: fastener_ticks pk_fastener_ticks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fastener_ticks
    ADD CONSTRAINT pk_fastener_ticks PRIMARY KEY (id);


--
-- Name: feeler_blades pk_feeler_blades; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.feeler_blades
    ADD CONSTRAINT pk_feeler_blades PRIMARY KEY (id);


--
-- Name: findings pk_findings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT pk_findings PRIMARY KEY (id);


--
-- Name: fleet_ridings pk_fleet_ridings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fleet_ridings
    ADD CONSTRAINT pk_fleet_ridings PRIMARY KEY (version);


--
-- Name: gauge_trial_appraisers pk_gauge_trial_appraisers; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_appraisers
    ADD CONSTRAINT pk_gauge_trial_appraisers PRIMARY KEY (trial_id, person_id);


--
-- Name: gauge_trial_readings pk_gauge_trial_readings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_readings
    ADD CONSTRAINT pk_gauge_trial_readings PRIMARY KEY (id);


--
-- Name: gauge_trials pk_gauge_trials; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trials
    ADD CONSTRAINT pk_gauge_trials PRIMARY KEY (id);


--
-- Name: goods_in_imports pk_goods_in_imports; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.goods_in_imports
    ADD CONSTRAINT pk_goods_in_imports PRIMARY KEY (id);


--
-- Name: hand_turns pk_hand_turns; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.hand_turns
    ADD CONSTRAINT pk_hand_turns PRIMARY KEY (id);


--
-- Name: history_imports pk_history_imports; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.history_imports
    ADD CONSTRAINT pk_history_imports PRIMARY KEY (id);


--
-- Name: holidays pk_holidays; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.holidays
    ADD CONSTRAINT pk_holidays PRIMARY KEY (day);


--
-- Name: instrument_events pk_instrument_events; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instrument_events
    ADD CONSTRAINT pk_instrument_events PRIMARY KEY (id);


--
-- Name: instruments pk_instruments; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instruments
    ADD CONSTRAINT pk_instruments PRIMARY KEY (id);


--
-- Name: issued_records pk_issued_records; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.issued_records
    ADD CONSTRAINT pk_issued_records PRIMARY KEY (job_card_number);


--
-- Name: job_card_items pk_job_card_items; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_card_items
    ADD CONSTRAINT pk_job_card_items PRIMARY KEY (job_card_number, service_item_code);


--
-- Name: job_cards pk_job_cards; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_cards
    ADD CONSTRAINT pk_job_cards PRIMARY KEY (number);


--
-- Name: kit_substitutions pk_kit_substitutions; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.kit_substitutions
    ADD CONSTRAINT pk_kit_substitutions PRIMARY KEY (id);


--
-- Name: leak_looks pk_leak_looks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.leak_looks
    ADD CONSTRAINT pk_leak_looks PRIMARY KEY (id);


--
-- Name: left_out_visits pk_left_out_visits; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.left_out_visits
    ADD CONSTRAINT pk_left_out_visits PRIMARY KEY (id);


--
-- Name: message_templates pk_message_templates; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.message_templates
    ADD CONSTRAINT pk_message_templates PRIMARY KEY (id);


--
-- Name: motorcycle_moves pk_motorcycle_moves; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycle_moves
    ADD CONSTRAINT pk_motorcycle_moves PRIMARY KEY (id);


--
-- Name: motorcycles pk_motorcycles; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycles
    ADD CONSTRAINT pk_motorcycles PRIMARY KEY (id);


--
-- Name: occupancies pk_occupancies; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.occupancies
    ADD CONSTRAINT pk_occupancies PRIMARY KEY (id);


--
-- Name: odometer_readings pk_odometer_readings; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT pk_odometer_readings PRIMARY KEY (id);


--
-- Name: odometers pk_odometers; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometers
    ADD CONSTRAINT pk_odometers PRIMARY KEY (id);


--
-- Name: opening_hours pk_opening_hours; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.opening_hours
    ADD CONSTRAINT pk_opening_hours PRIMARY KEY (weekday);


--
-- Name: outbox_messages pk_outbox_messages; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.outbox_messages
    ADD CONSTRAINT pk_outbox_messages PRIMARY KEY (id);


--
-- Name: part_alternatives pk_part_alternatives; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_alternatives
    ADD CONSTRAINT pk_part_alternatives PRIMARY KEY (part_id, alternative_id);


--
-- Name: part_changes pk_part_changes; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_changes
    ADD CONSTRAINT pk_part_changes PRIMARY KEY (id);


--
-- Name: part_scan_codes pk_part_scan_codes; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_scan_codes
    ADD CONSTRAINT pk_part_scan_codes PRIMARY KEY (code);


--
-- Name: part_supplies pk_part_supplies; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_supplies
    ADD CONSTRAINT pk_part_supplies PRIMARY KEY (id);


--
-- Name: parts pk_parts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.parts
    ADD CONSTRAINT pk_parts PRIMARY KEY (id);


--
-- Name: people pk_people; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.people
    ADD CONSTRAINT pk_people PRIMARY KEY (id);


--
-- Name: phase_starts pk_phase_starts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.phase_starts
    ADD CONSTRAINT pk_phase_starts PRIMARY KEY (id);


--
-- Name: photos pk_photos; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT pk_photos PRIMARY KEY (id);


--
-- Name: planned_phases pk_planned_phases; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.planned_phases
    ADD CONSTRAINT pk_planned_phases PRIMARY KEY (job_card_number, phase);


--
-- Name: plug_checks pk_plug_checks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT pk_plug_checks PRIMARY KEY (id);


--
-- Name: position_confirmations pk_position_confirmations; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.position_confirmations
    ADD CONSTRAINT pk_position_confirmations PRIMARY KEY (id);


--
-- Name: purchase_order_lines pk_purchase_order_lines; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_order_lines
    ADD CONSTRAINT pk_purchase_order_lines PRIMARY KEY (id);


--
-- Name: purchase_orders pk_purchase_orders; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_orders
    ADD CONSTRAINT pk_purchase_orders PRIMARY KEY (number);


--
-- Name: put_offs pk_put_offs; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.put_offs
    ADD CONSTRAINT pk_put_offs PRIMARY KEY (id);


--
-- Name: reading_imports pk_reading_imports; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reading_imports
    ADD CONSTRAINT pk_reading_imports PRIMARY KEY (id);


--
-- Name: record_links pk_record_links; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.record_links
    ADD CONSTRAINT pk_record_links PRIMARY KEY (id);


--
-- Name: remarks pk_remarks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.remarks
    ADD CONSTRAINT pk_remarks PRIMARY KEY (id);


--
-- Name: reminder_resets pk_reminder_resets; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reminder_resets
    ADD CONSTRAINT pk_reminder_resets PRIMARY KEY (id);


--
-- Name: resources pk_resources; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.resources
    ADD CONSTRAINT pk_resources PRIMARY KEY (id);


--
-- Name: role_claims pk_role_claims; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.role_claims
    ADD CONSTRAINT pk_role_claims PRIMARY KEY (id);


--
-- Name: roles pk_roles; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.roles
    ADD CONSTRAINT pk_roles PRIMARY KEY (id);


--
-- Name: seal_inspections pk_seal_inspections; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.seal_inspections
    ADD CONSTRAINT pk_seal_inspections PRIMARY KEY (id);


--
-- Name: second_person_marks pk_second_person_marks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.second_person_marks
    ADD CONSTRAINT pk_second_person_marks PRIMARY KEY (engine_model_id, fastener_code);


--
-- Name: sessions pk_sessions; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sessions
    ADD CONSTRAINT pk_sessions PRIMARY KEY (id);


--
-- Name: shim_observations pk_shim_observations; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT pk_shim_observations PRIMARY KEY (id);


--
-- Name: shim_plan_choices pk_shim_plan_choices; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_plan_choices
    ADD CONSTRAINT pk_shim_plan_choices PRIMARY KEY (job_card_number, version);


--
-- Name: shim_series pk_shim_series; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_series
    ADD CONSTRAINT pk_shim_series PRIMARY KEY (part_id);


--
-- Name: shims pk_shims; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shims
    ADD CONSTRAINT pk_shims PRIMARY KEY (id);


--
-- Name: sign_offs pk_sign_offs; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sign_offs
    ADD CONSTRAINT pk_sign_offs PRIMARY KEY (job_card_number);


--
-- Name: specification_drafts pk_specification_drafts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.specification_drafts
    ADD CONSTRAINT pk_specification_drafts PRIMARY KEY (engine_model_id, person_id);


--
-- Name: stock_balances pk_stock_balances; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_balances
    ADD CONSTRAINT pk_stock_balances PRIMARY KEY (id);


--
-- Name: stock_count_lines pk_stock_count_lines; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT pk_stock_count_lines PRIMARY KEY (id);


--
-- Name: stock_counts pk_stock_counts; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_counts
    ADD CONSTRAINT pk_stock_counts PRIMARY KEY (id);


--
-- Name: stock_lots pk_stock_lots; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_lots
    ADD CONSTRAINT pk_stock_lots PRIMARY KEY (id);


--
-- Name: stock_movements pk_stock_movements; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT pk_stock_movements PRIMARY KEY (id);


--
-- Name: storage_places pk_storage_places; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.storage_places
    ADD CONSTRAINT pk_storage_places PRIMARY KEY (id);


--
-- Name: stored_answers pk_stored_answers; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stored_answers
    ADD CONSTRAINT pk_stored_answers PRIMARY KEY (person_id, use_case, key);


--
-- Name: suppliers pk_suppliers; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.suppliers
    ADD CONSTRAINT pk_suppliers PRIMARY KEY (id);


--
-- Name: tax_rates pk_tax_rates; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.tax_rates
    ADD CONSTRAINT pk_tax_rates PRIMARY KEY (code, valid_from);


--
-- Name: test_rides pk_test_rides; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT pk_test_rides PRIMARY KEY (id);


--
-- Name: tick_witnesses pk_tick_witnesses; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.tick_witnesses
    ADD CONSTRAINT pk_tick_witnesses PRIMARY KEY (tick_id);


--
-- Name: valve_events pk_valve_events; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.valve_events
    ADD CONSTRAINT pk_valve_events PRIMARY KEY (id);


--
-- Name: visit_rechecks pk_visit_rechecks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT pk_visit_rechecks PRIMARY KEY (id);


--
-- Name: visit_waits pk_visit_waits; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_waits
    ADD CONSTRAINT pk_visit_waits PRIMARY KEY (id);


--
-- Name: visit_wishes pk_visit_wishes; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_wishes
    ADD CONSTRAINT pk_visit_wishes PRIMARY KEY (job_card_number);


--
-- Name: work_breaks pk_work_breaks; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.work_breaks
    ADD CONSTRAINT pk_work_breaks PRIMARY KEY (id);


--
-- Name: work_spells pk_work_spells; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.work_spells
    ADD CONSTRAINT pk_work_spells PRIMARY KEY (id);


--
-- Name: working_hours pk_working_hours; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.working_hours
    ADD CONSTRAINT pk_working_hours PRIMARY KEY (resource_id, weekday);


--
-- Name: workshop_profiles pk_workshop_profiles; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.workshop_profiles
    ADD CONSTRAINT pk_workshop_profiles PRIMARY KEY (id);


--
-- Name: wrench_adapters pk_wrench_adapters; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.wrench_adapters
    ADD CONSTRAINT pk_wrench_adapters PRIMARY KEY (id);


--
-- Name: EmailIndex; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX "EmailIndex" ON public.accounts USING btree (normalized_email);


--
-- Name: RoleNameIndex; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX "RoleNameIndex" ON public.roles USING btree (normalized_name);


--
-- Name: UserNameIndex; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX "UserNameIndex" ON public.accounts USING btree (normalized_user_name);


--
-- Name: ix_absences_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_absences_entered_by ON public.absences USING btree (entered_by);


--
-- Name: ix_absences_resource_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_absences_resource_id ON public.absences USING btree (resource_id);


--
-- Name: ix_absences_span; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_absences_span ON public.absences USING gist (span);


--
-- Name: ix_account_claims_user_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_account_claims_user_id ON public.account_claims USING btree (user_id);


--
-- Name: ix_account_logins_user_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_account_logins_user_id ON public.account_logins USING btree (user_id);


--
-- Name: ix_account_roles_role_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_account_roles_role_id ON public.account_roles USING btree (role_id);


--
-- Name: ix_accounts_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_accounts_person_id ON public.accounts USING btree (person_id);


--
-- Name: ix_arrival_notes_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_arrival_notes_job_card_number ON public.arrival_notes USING btree (job_card_number);


--
-- Name: ix_arrival_notes_noted_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_arrival_notes_noted_by ON public.arrival_notes USING btree (noted_by);


--
-- Name: ix_arrival_notes_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_arrival_notes_reason_remark_id ON public.arrival_notes USING btree (reason_remark_id);


--
-- Name: ix_arrival_notes_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_arrival_notes_supersedes_id ON public.arrival_notes USING btree (supersedes_id);


--
-- Name: ix_arrival_notes_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_arrival_notes_words_remark_id ON public.arrival_notes USING btree (words_remark_id);


--
-- Name: ix_as_left_marks_engine_model_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_as_left_marks_engine_model_id ON public.as_left_marks USING btree (engine_model_id) NULLS NOT DISTINCT;


--
-- Name: ix_as_left_marks_marked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_as_left_marks_marked_by ON public.as_left_marks USING btree (marked_by);


--
-- Name: ix_as_left_witnesses_job_card_number_readings_seen; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_as_left_witnesses_job_card_number_readings_seen ON public.as_left_witnesses USING btree (job_card_number, readings_seen);


--
-- Name: ix_as_left_witnesses_witnessed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_as_left_witnesses_witnessed_by ON public.as_left_witnesses USING btree (witnessed_by);


--
-- Name: ix_audit_rows_table_name_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_audit_rows_table_name_at ON public.audit_rows USING btree (table_name, at);


--
-- Name: ix_balance_runs_gauge_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_balance_runs_gauge_id ON public.balance_runs USING btree (gauge_id);


--
-- Name: ix_balance_runs_job_card_number_stage_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_balance_runs_job_card_number_stage_attempt ON public.balance_runs USING btree (job_card_number, stage, attempt);


--
-- Name: ix_balance_runs_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_balance_runs_measured_by ON public.balance_runs USING btree (measured_by);


--
-- Name: ix_balance_runs_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_balance_runs_reason_remark_id ON public.balance_runs USING btree (reason_remark_id);


--
-- Name: ix_balance_runs_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_balance_runs_supersedes_id ON public.balance_runs USING btree (supersedes_id);


--
-- Name: ix_blade_checks_blade_id_checked_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_blade_checks_blade_id_checked_at ON public.blade_checks USING btree (blade_id, checked_at);


--
-- Name: ix_blade_checks_checked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_blade_checks_checked_by ON public.blade_checks USING btree (checked_by);


--
-- Name: ix_blade_checks_micrometer_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_blade_checks_micrometer_id ON public.blade_checks USING btree (micrometer_id);


--
-- Name: ix_blade_checks_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_blade_checks_remark_id ON public.blade_checks USING btree (remark_id);


--
-- Name: ix_calendar_feeds_created_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_calendar_feeds_created_by ON public.calendar_feeds USING btree (created_by);


--
-- Name: ix_calendar_feeds_resource_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_calendar_feeds_resource_id ON public.calendar_feeds USING btree (resource_id);


--
-- Name: ix_calendar_feeds_secret_digest; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_calendar_feeds_secret_digest ON public.calendar_feeds USING btree (secret_digest);


--
-- Name: ix_calibrations_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_calibrations_entered_by ON public.calibrations USING btree (entered_by);


--
-- Name: ix_calibrations_instrument_id_done_on; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_calibrations_instrument_id_done_on ON public.calibrations USING btree (instrument_id, done_on);


--
-- Name: ix_cam_rechecks_confirmed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_rechecks_confirmed_by ON public.cam_rechecks USING btree (confirmed_by);


--
-- Name: ix_cam_rechecks_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_rechecks_job_card_number ON public.cam_rechecks USING btree (job_card_number);


--
-- Name: ix_cam_rechecks_wrench_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_rechecks_wrench_id ON public.cam_rechecks USING btree (wrench_id);


--
-- Name: ix_cam_timing_checks_dial_gauge_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_dial_gauge_id ON public.cam_timing_checks USING btree (dial_gauge_id);


--
-- Name: ix_cam_timing_checks_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_engine_id ON public.cam_timing_checks USING btree (engine_id);


--
-- Name: ix_cam_timing_checks_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_entered_by ON public.cam_timing_checks USING btree (entered_by);


--
-- Name: ix_cam_timing_checks_instrument_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_instrument_id ON public.cam_timing_checks USING btree (instrument_id);


--
-- Name: ix_cam_timing_checks_job_card_number_camshaft_code_stage_metho; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_cam_timing_checks_job_card_number_camshaft_code_stage_metho ON public.cam_timing_checks USING btree (job_card_number, camshaft_code, stage, method, side, attempt) NULLS NOT DISTINCT;


--
-- Name: ix_cam_timing_checks_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_measured_by ON public.cam_timing_checks USING btree (measured_by);


--
-- Name: ix_cam_timing_checks_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_odometer_reading_id ON public.cam_timing_checks USING btree (odometer_reading_id);


--
-- Name: ix_cam_timing_checks_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cam_timing_checks_reason_remark_id ON public.cam_timing_checks USING btree (reason_remark_id);


--
-- Name: ix_cam_timing_checks_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_cam_timing_checks_supersedes_id ON public.cam_timing_checks USING btree (supersedes_id);


--
-- Name: ix_cancellations_cancelled_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cancellations_cancelled_by ON public.cancellations USING btree (cancelled_by);


--
-- Name: ix_cancellations_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cancellations_reason_remark_id ON public.cancellations USING btree (reason_remark_id);


--
-- Name: ix_caution_acknowledgements_acknowledged_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_caution_acknowledgements_acknowledged_by ON public.caution_acknowledgements USING btree (acknowledged_by);


--
-- Name: ix_caution_acknowledgements_job_card_number_caution_code; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_caution_acknowledgements_job_card_number_caution_code ON public.caution_acknowledgements USING btree (job_card_number, caution_code);


--
-- Name: ix_chain_changes_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_changes_engine_id ON public.chain_changes USING btree (engine_id);


--
-- Name: ix_chain_changes_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_changes_entered_by ON public.chain_changes USING btree (entered_by);


--
-- Name: ix_chain_changes_job_card_number_drive_code_kind; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_chain_changes_job_card_number_drive_code_kind ON public.chain_changes USING btree (job_card_number, drive_code, kind);


--
-- Name: ix_chain_changes_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_changes_odometer_reading_id ON public.chain_changes USING btree (odometer_reading_id);


--
-- Name: ix_chain_readings_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_readings_engine_id ON public.chain_readings USING btree (engine_id);


--
-- Name: ix_chain_readings_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_readings_entered_by ON public.chain_readings USING btree (entered_by);


--
-- Name: ix_chain_readings_instrument_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_readings_instrument_id ON public.chain_readings USING btree (instrument_id);


--
-- Name: ix_chain_readings_job_card_number_drive_code_stage_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_chain_readings_job_card_number_drive_code_stage_attempt ON public.chain_readings USING btree (job_card_number, drive_code, stage, attempt);


--
-- Name: ix_chain_readings_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_readings_measured_by ON public.chain_readings USING btree (measured_by);


--
-- Name: ix_chain_readings_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_readings_odometer_reading_id ON public.chain_readings USING btree (odometer_reading_id);


--
-- Name: ix_chain_readings_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_chain_readings_reason_remark_id ON public.chain_readings USING btree (reason_remark_id);


--
-- Name: ix_chain_readings_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_chain_readings_supersedes_id ON public.chain_readings USING btree (supersedes_id);


--
-- Name: ix_check_ins_checked_in_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_check_ins_checked_in_by ON public.check_ins USING btree (checked_in_by);


--
-- Name: ix_check_ins_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_check_ins_odometer_reading_id ON public.check_ins USING btree (odometer_reading_id);


--
-- Name: ix_check_ins_owners_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_check_ins_owners_words_remark_id ON public.check_ins USING btree (owners_words_remark_id);


--
-- Name: ix_check_ins_seen_on_arrival_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_check_ins_seen_on_arrival_remark_id ON public.check_ins USING btree (seen_on_arrival_remark_id);


--
-- Name: ix_clearance_forecasts_leaves_limits_on_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_forecasts_leaves_limits_on_engine_id ON public.clearance_forecasts USING btree (leaves_limits_on, engine_id);


--
-- Name: ix_clearance_readings_engine_id_valve_lobe_measured_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_engine_id_valve_lobe_measured_at ON public.clearance_readings USING btree (engine_id, valve, lobe, measured_at);


--
-- Name: ix_clearance_readings_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_entered_by ON public.clearance_readings USING btree (entered_by);


--
-- Name: ix_clearance_readings_import_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_import_id ON public.clearance_readings USING btree (import_id);


--
-- Name: ix_clearance_readings_instrument_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_instrument_id ON public.clearance_readings USING btree (instrument_id);


--
-- Name: ix_clearance_readings_job_card_number_valve_lobe_stage_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_clearance_readings_job_card_number_valve_lobe_stage_attempt ON public.clearance_readings USING btree (job_card_number, valve, lobe, stage, attempt);


--
-- Name: ix_clearance_readings_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_measured_by ON public.clearance_readings USING btree (measured_by);


--
-- Name: ix_clearance_readings_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_odometer_reading_id ON public.clearance_readings USING btree (odometer_reading_id);


--
-- Name: ix_clearance_readings_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_clearance_readings_reason_remark_id ON public.clearance_readings USING btree (reason_remark_id);


--
-- Name: ix_clearance_readings_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_clearance_readings_supersedes_id ON public.clearance_readings USING btree (supersedes_id);


--
-- Name: ix_comebacks_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_comebacks_entered_by ON public.comebacks USING btree (entered_by);


--
-- Name: ix_comebacks_of_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_comebacks_of_job_card_number ON public.comebacks USING btree (of_job_card_number);


--
-- Name: ix_comebacks_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_comebacks_reason_remark_id ON public.comebacks USING btree (reason_remark_id);


--
-- Name: ix_consents_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_consents_entered_by ON public.consents USING btree (entered_by);


--
-- Name: ix_consents_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_consents_person_id ON public.consents USING btree (person_id);


--
-- Name: ix_consents_standing; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_consents_standing ON public.consents USING btree (person_id, channel) WHERE (withdrawn_at IS NULL);


--
-- Name: ix_consents_withdrawn_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_consents_withdrawn_by ON public.consents USING btree (withdrawn_by);


--
-- Name: ix_contacts_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_contacts_by ON public.contacts USING btree (by);


--
-- Name: ix_contacts_message_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_contacts_message_id ON public.contacts USING btree (message_id);


--
-- Name: ix_contacts_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_contacts_motorcycle_id ON public.contacts USING btree (motorcycle_id);


--
-- Name: ix_contacts_person_id_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_contacts_person_id_at ON public.contacts USING btree (person_id, at);


--
-- Name: ix_contacts_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_contacts_remark_id ON public.contacts USING btree (remark_id);


--
-- Name: ix_count_explanations_explained_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_count_explanations_explained_by ON public.count_explanations USING btree (explained_by);


--
-- Name: ix_count_explanations_job_card_number_thing_code; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_count_explanations_job_card_number_thing_code ON public.count_explanations USING btree (job_card_number, thing_code);


--
-- Name: ix_count_explanations_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_count_explanations_words_remark_id ON public.count_explanations USING btree (words_remark_id);


--
-- Name: ix_count_taps_counted_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_count_taps_counted_by ON public.count_taps USING btree (counted_by);


--
-- Name: ix_count_taps_job_card_number_thing_code; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_count_taps_job_card_number_thing_code ON public.count_taps USING btree (job_card_number, thing_code);


--
-- Name: ix_cylinder_tests_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cylinder_tests_engine_id ON public.cylinder_tests USING btree (engine_id);


--
-- Name: ix_cylinder_tests_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cylinder_tests_entered_by ON public.cylinder_tests USING btree (entered_by);


--
-- Name: ix_cylinder_tests_instrument_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cylinder_tests_instrument_id ON public.cylinder_tests USING btree (instrument_id);


--
-- Name: ix_cylinder_tests_job_card_number_cylinder_method_stage_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_cylinder_tests_job_card_number_cylinder_method_stage_attempt ON public.cylinder_tests USING btree (job_card_number, cylinder, method, stage, attempt);


--
-- Name: ix_cylinder_tests_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cylinder_tests_measured_by ON public.cylinder_tests USING btree (measured_by);


--
-- Name: ix_cylinder_tests_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cylinder_tests_odometer_reading_id ON public.cylinder_tests USING btree (odometer_reading_id);


--
-- Name: ix_cylinder_tests_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_cylinder_tests_reason_remark_id ON public.cylinder_tests USING btree (reason_remark_id);


--
-- Name: ix_cylinder_tests_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_cylinder_tests_supersedes_id ON public.cylinder_tests USING btree (supersedes_id);


--
-- Name: ix_done_items_done_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_done_items_done_by ON public.done_items USING btree (done_by);


--
-- Name: ix_done_items_import_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_done_items_import_id ON public.done_items USING btree (import_id);


--
-- Name: ix_done_items_job_card_number_service_item_code; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_done_items_job_card_number_service_item_code ON public.done_items USING btree (job_card_number, service_item_code);


--
-- Name: ix_done_items_motorcycle_id_service_item_code_done_on; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_done_items_motorcycle_id_service_item_code_done_on ON public.done_items USING btree (motorcycle_id, service_item_code, done_on);


--
-- Name: ix_done_items_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_done_items_remark_id ON public.done_items USING btree (remark_id);


--
-- Name: ix_drift_refits_wanted_since; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_drift_refits_wanted_since ON public.drift_refits USING btree (wanted_since);


--
-- Name: ix_due_items_comes_on_motorcycle_id_service_item_code; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_due_items_comes_on_motorcycle_id_service_item_code ON public.due_items USING btree (comes_on, motorcycle_id, service_item_code);


--
-- Name: ix_due_recomputes_requested_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_due_recomputes_requested_at ON public.due_recomputes USING btree (requested_at);


--
-- Name: ix_due_recomputes_requested_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_due_recomputes_requested_by ON public.due_recomputes USING btree (requested_by);


--
-- Name: ix_due_visits_comes_on_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_due_visits_comes_on_motorcycle_id ON public.due_visits USING btree (comes_on, motorcycle_id);


--
-- Name: ix_due_visits_engine_model_id_comes_on_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_due_visits_engine_model_id_comes_on_motorcycle_id ON public.due_visits USING btree (engine_model_id, comes_on, motorcycle_id);


--
-- Name: ix_due_visits_with_tools; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_due_visits_with_tools ON public.due_visits USING btree (comes_on, motorcycle_id) WHERE (cardinality(special_tools) > 0);


--
-- Name: ix_engine_fittings_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_fittings_engine_id ON public.engine_fittings USING btree (engine_id);


--
-- Name: ix_engine_fittings_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_fittings_motorcycle_id ON public.engine_fittings USING btree (motorcycle_id);


--
-- Name: ix_engine_model_versions_created_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_model_versions_created_by ON public.engine_model_versions USING btree (created_by);


--
-- Name: ix_engine_model_versions_engine_model_id_version; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_engine_model_versions_engine_model_id_version ON public.engine_model_versions USING btree (engine_model_id, version);


--
-- Name: ix_engine_models_maker_name; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_engine_models_maker_name ON public.engine_models USING btree (maker, name);


--
-- Name: ix_engine_outlooks_soonest_exhaust_on_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_outlooks_soonest_exhaust_on_engine_id ON public.engine_outlooks USING btree (soonest_exhaust_on, engine_id);


--
-- Name: ix_engine_outlooks_soonest_intake_on_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_outlooks_soonest_intake_on_engine_id ON public.engine_outlooks USING btree (soonest_intake_on, engine_id);


--
-- Name: ix_engine_outlooks_soonest_on_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_outlooks_soonest_on_engine_id ON public.engine_outlooks USING btree (soonest_on, engine_id);


--
-- Name: ix_engine_stops_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_stops_entered_by ON public.engine_stops USING btree (entered_by);


--
-- Name: ix_engine_stops_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engine_stops_job_card_number ON public.engine_stops USING btree (job_card_number);


--
-- Name: ix_engines_engine_model_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_engines_engine_model_id ON public.engines USING btree (engine_model_id);


--
-- Name: ix_estimate_answers_estimate_id_recorded_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimate_answers_estimate_id_recorded_at ON public.estimate_answers USING btree (estimate_id, recorded_at);


--
-- Name: ix_estimate_answers_finding_id_recorded_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimate_answers_finding_id_recorded_at ON public.estimate_answers USING btree (finding_id, recorded_at);


--
-- Name: ix_estimate_answers_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimate_answers_person_id ON public.estimate_answers USING btree (person_id);


--
-- Name: ix_estimate_answers_recorded_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimate_answers_recorded_by ON public.estimate_answers USING btree (recorded_by);


--
-- Name: ix_estimate_answers_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimate_answers_remark_id ON public.estimate_answers USING btree (remark_id);


--
-- Name: ix_estimate_lines_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimate_lines_reason_remark_id ON public.estimate_lines USING btree (reason_remark_id);


--
-- Name: ix_estimates_finding_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimates_finding_id ON public.estimates USING btree (finding_id);


--
-- Name: ix_estimates_job_card_number_version; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_estimates_job_card_number_version ON public.estimates USING btree (job_card_number, version);


--
-- Name: ix_estimates_made_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_estimates_made_by ON public.estimates USING btree (made_by);


--
-- Name: ix_expected_deliveries_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_expected_deliveries_entered_by ON public.expected_deliveries USING btree (entered_by);


--
-- Name: ix_expected_deliveries_order_line_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_expected_deliveries_order_line_id ON public.expected_deliveries USING btree (order_line_id);


--
-- Name: ix_expected_deliveries_part_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_expected_deliveries_part_id ON public.expected_deliveries USING btree (part_id);


--
-- Name: ix_fastener_ticks_adapter_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_fastener_ticks_adapter_id ON public.fastener_ticks USING btree (adapter_id);


--
-- Name: ix_fastener_ticks_job_card_number_fastener_code; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_fastener_ticks_job_card_number_fastener_code ON public.fastener_ticks USING btree (job_card_number, fastener_code);


--
-- Name: ix_fastener_ticks_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_fastener_ticks_supersedes_id ON public.fastener_ticks USING btree (supersedes_id);


--
-- Name: ix_fastener_ticks_ticked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_fastener_ticks_ticked_by ON public.fastener_ticks USING btree (ticked_by);


--
-- Name: ix_fastener_ticks_wrench_id_ticked_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_fastener_ticks_wrench_id_ticked_at ON public.fastener_ticks USING btree (wrench_id, ticked_at);


--
-- Name: ix_feeler_blades_instrument_id_nominal_mm; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_feeler_blades_instrument_id_nominal_mm ON public.feeler_blades USING btree (instrument_id, nominal_mm);


--
-- Name: ix_findings_done_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_findings_done_by ON public.findings USING btree (done_by);


--
-- Name: ix_findings_found_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_findings_found_by ON public.findings USING btree (found_by);


--
-- Name: ix_findings_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_findings_job_card_number ON public.findings USING btree (job_card_number);


--
-- Name: ix_findings_text_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_findings_text_remark_id ON public.findings USING btree (text_remark_id);


--
-- Name: ix_findings_withdrawn_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_findings_withdrawn_by ON public.findings USING btree (withdrawn_by);


--
-- Name: ix_findings_withdrawn_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_findings_withdrawn_remark_id ON public.findings USING btree (withdrawn_remark_id);


--
-- Name: ix_gauge_trial_appraisers_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_gauge_trial_appraisers_person_id ON public.gauge_trial_appraisers USING btree (person_id);


--
-- Name: ix_gauge_trial_appraisers_trial_id_place; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_gauge_trial_appraisers_trial_id_place ON public.gauge_trial_appraisers USING btree (trial_id, place);


--
-- Name: ix_gauge_trial_readings_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_gauge_trial_readings_entered_by ON public.gauge_trial_readings USING btree (entered_by);


--
-- Name: ix_gauge_trial_readings_first; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_gauge_trial_readings_first ON public.gauge_trial_readings USING btree (trial_id, appraiser_id, part, trial) WHERE (supersedes_id IS NULL);


--
-- Name: ix_gauge_trial_readings_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_gauge_trial_readings_reason_remark_id ON public.gauge_trial_readings USING btree (reason_remark_id);


--
-- Name: ix_gauge_trial_readings_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_gauge_trial_readings_supersedes_id ON public.gauge_trial_readings USING btree (supersedes_id);


--
-- Name: ix_gauge_trials_instrument_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_gauge_trials_instrument_id ON public.gauge_trials USING btree (instrument_id);


--
-- Name: ix_gauge_trials_started_at_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_gauge_trials_started_at_id ON public.gauge_trials USING btree (started_at, id);


--
-- Name: ix_gauge_trials_started_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_gauge_trials_started_by ON public.gauge_trials USING btree (started_by);


--
-- Name: ix_goods_in_imports_content_hash; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_goods_in_imports_content_hash ON public.goods_in_imports USING btree (content_hash);


--
-- Name: ix_goods_in_imports_imported_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_goods_in_imports_imported_by ON public.goods_in_imports USING btree (imported_by);


--
-- Name: ix_hand_turns_confirmed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_hand_turns_confirmed_by ON public.hand_turns USING btree (confirmed_by);


--
-- Name: ix_hand_turns_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_hand_turns_job_card_number ON public.hand_turns USING btree (job_card_number);


--
-- Name: ix_history_imports_content_hash; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_history_imports_content_hash ON public.history_imports USING btree (content_hash);


--
-- Name: ix_history_imports_imported_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_history_imports_imported_by ON public.history_imports USING btree (imported_by);


--
-- Name: ix_instrument_events_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_instrument_events_entered_by ON public.instrument_events USING btree (entered_by);


--
-- Name: ix_instrument_events_holder_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_instrument_events_holder_id ON public.instrument_events USING btree (holder_id);


--
-- Name: ix_instrument_events_instrument_id_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_instrument_events_instrument_id_at ON public.instrument_events USING btree (instrument_id, at);


--
-- Name: ix_instrument_events_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_instrument_events_remark_id ON public.instrument_events USING btree (remark_id);


--
-- Name: ix_instruments_holder_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_instruments_holder_id ON public.instruments USING btree (holder_id);


--
-- Name: ix_instruments_kind_serial_number; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_instruments_kind_serial_number ON public.instruments USING btree (kind, serial_number);


--
-- Name: ix_issued_records_issued_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_issued_records_issued_by ON public.issued_records USING btree (issued_by);


--
-- Name: ix_job_cards_booked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_job_cards_booked_by ON public.job_cards USING btree (booked_by);


--
-- Name: ix_job_cards_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_job_cards_engine_id ON public.job_cards USING btree (engine_id);


--
-- Name: ix_job_cards_engine_model_version_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_job_cards_engine_model_version_id ON public.job_cards USING btree (engine_model_version_id);


--
-- Name: ix_job_cards_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_job_cards_motorcycle_id ON public.job_cards USING btree (motorcycle_id);


--
-- Name: ix_job_cards_state_starts_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_job_cards_state_starts_at ON public.job_cards USING btree (state, starts_at);


--
-- Name: ix_kit_substitutions_chosen_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_kit_substitutions_chosen_by ON public.kit_substitutions USING btree (chosen_by);


--
-- Name: ix_kit_substitutions_instead_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_kit_substitutions_instead_id ON public.kit_substitutions USING btree (instead_id);


--
-- Name: ix_kit_substitutions_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_kit_substitutions_job_card_number ON public.kit_substitutions USING btree (job_card_number);


--
-- Name: ix_kit_substitutions_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_kit_substitutions_reason_remark_id ON public.kit_substitutions USING btree (reason_remark_id);


--
-- Name: ix_leak_looks_job_card_number_place_code_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_leak_looks_job_card_number_place_code_attempt ON public.leak_looks USING btree (job_card_number, place_code, attempt);


--
-- Name: ix_leak_looks_looked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_leak_looks_looked_by ON public.leak_looks USING btree (looked_by);


--
-- Name: ix_leak_looks_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_leak_looks_reason_remark_id ON public.leak_looks USING btree (reason_remark_id);


--
-- Name: ix_leak_looks_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_leak_looks_supersedes_id ON public.leak_looks USING btree (supersedes_id);


--
-- Name: ix_leak_looks_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_leak_looks_words_remark_id ON public.leak_looks USING btree (words_remark_id);


--
-- Name: ix_left_out_visits_decided_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_left_out_visits_decided_by ON public.left_out_visits USING btree (decided_by);


--
-- Name: ix_left_out_visits_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_left_out_visits_engine_id ON public.left_out_visits USING btree (engine_id);


--
-- Name: ix_left_out_visits_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_left_out_visits_job_card_number ON public.left_out_visits USING btree (job_card_number);


--
-- Name: ix_left_out_visits_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_left_out_visits_odometer_reading_id ON public.left_out_visits USING btree (odometer_reading_id);


--
-- Name: ix_left_out_visits_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_left_out_visits_reason_remark_id ON public.left_out_visits USING btree (reason_remark_id);


--
-- Name: ix_message_templates_name; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_message_templates_name ON public.message_templates USING btree (name);


--
-- Name: ix_motorcycle_moves_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_motorcycle_moves_job_card_number ON public.motorcycle_moves USING btree (job_card_number);


--
-- Name: ix_motorcycle_moves_moved_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_motorcycle_moves_moved_by ON public.motorcycle_moves USING btree (moved_by);


--
-- Name: ix_motorcycle_moves_resource_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_motorcycle_moves_resource_id ON public.motorcycle_moves USING btree (resource_id);


--
-- Name: ix_motorcycle_moves_tag_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_motorcycle_moves_tag_remark_id ON public.motorcycle_moves USING btree (tag_remark_id);


--
-- Name: ix_motorcycles_owner_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_motorcycles_owner_id ON public.motorcycles USING btree (owner_id);


--
-- Name: ix_motorcycles_registration; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_motorcycles_registration ON public.motorcycles USING btree (registration);


--
-- Name: ix_motorcycles_use_said_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_motorcycles_use_said_by ON public.motorcycles USING btree (use_said_by);


--
-- Name: ix_occupancies_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_occupancies_job_card_number ON public.occupancies USING btree (job_card_number);


--
-- Name: ix_occupancies_resource_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_occupancies_resource_id ON public.occupancies USING btree (resource_id);


--
-- Name: ix_odometer_readings_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_odometer_readings_entered_by ON public.odometer_readings USING btree (entered_by);


--
-- Name: ix_odometer_readings_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_odometer_readings_job_card_number ON public.odometer_readings USING btree (job_card_number);


--
-- Name: ix_odometer_readings_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_odometer_readings_measured_by ON public.odometer_readings USING btree (measured_by);


--
-- Name: ix_odometer_readings_motorcycle_id_read_on; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_odometer_readings_motorcycle_id_read_on ON public.odometer_readings USING btree (motorcycle_id, read_on);


--
-- Name: ix_odometer_readings_odometer_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_odometer_readings_odometer_id ON public.odometer_readings USING btree (odometer_id);


--
-- Name: ix_odometer_readings_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_odometer_readings_reason_remark_id ON public.odometer_readings USING btree (reason_remark_id);


--
-- Name: ix_odometer_readings_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_odometer_readings_supersedes_id ON public.odometer_readings USING btree (supersedes_id);


--
-- Name: ix_odometers_current; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_odometers_current ON public.odometers USING btree (motorcycle_id) WHERE (removed_on IS NULL);


--
-- Name: ix_outbox_messages_created_at_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_created_at_id ON public.outbox_messages USING btree (created_at, id);


--
-- Name: ix_outbox_messages_created_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_created_by ON public.outbox_messages USING btree (created_by);


--
-- Name: ix_outbox_messages_in_hand; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_in_hand ON public.outbox_messages USING btree (claimed_until) WHERE ((state)::text = 'being_sent'::text);


--
-- Name: ix_outbox_messages_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_motorcycle_id ON public.outbox_messages USING btree (motorcycle_id);


--
-- Name: ix_outbox_messages_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_person_id ON public.outbox_messages USING btree (person_id);


--
-- Name: ix_outbox_messages_sent_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_sent_by ON public.outbox_messages USING btree (sent_by);


--
-- Name: ix_outbox_messages_waiting; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_outbox_messages_waiting ON public.outbox_messages USING btree (next_try_at) WHERE ((state)::text = 'waiting'::text);


--
-- Name: ix_part_alternatives_alternative_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_alternatives_alternative_id ON public.part_alternatives USING btree (alternative_id);


--
-- Name: ix_part_changes_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_changes_engine_id ON public.part_changes USING btree (engine_id);


--
-- Name: ix_part_changes_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_changes_entered_by ON public.part_changes USING btree (entered_by);


--
-- Name: ix_part_changes_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_changes_job_card_number ON public.part_changes USING btree (job_card_number);


--
-- Name: ix_part_changes_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_changes_odometer_reading_id ON public.part_changes USING btree (odometer_reading_id);


--
-- Name: ix_part_changes_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_changes_remark_id ON public.part_changes USING btree (remark_id);


--
-- Name: ix_part_scan_codes_part_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_scan_codes_part_id ON public.part_scan_codes USING btree (part_id);


--
-- Name: ix_part_supplies_part_id_supplier_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_part_supplies_part_id_supplier_id ON public.part_supplies USING btree (part_id, supplier_id);


--
-- Name: ix_part_supplies_preferred; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_part_supplies_preferred ON public.part_supplies USING btree (part_id) WHERE preferred;


--
-- Name: ix_part_supplies_supplier_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_part_supplies_supplier_id ON public.part_supplies USING btree (supplier_id);


--
-- Name: ix_parts_code; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_parts_code ON public.parts USING btree (code);


--
-- Name: ix_parts_kind_inner_diameter_mm_section_mm; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_parts_kind_inner_diameter_mm_section_mm ON public.parts USING btree (kind, inner_diameter_mm, section_mm);


--
-- Name: ix_parts_merged_into_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_parts_merged_into_id ON public.parts USING btree (merged_into_id);


--
-- Name: ix_parts_replaced_by_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_parts_replaced_by_id ON public.parts USING btree (replaced_by_id);


--
-- Name: ix_people_name; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_people_name ON public.people USING btree (name);


--
-- Name: ix_phase_starts_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_phase_starts_entered_by ON public.phase_starts USING btree (entered_by);


--
-- Name: ix_phase_starts_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_phase_starts_job_card_number ON public.phase_starts USING btree (job_card_number);


--
-- Name: ix_phase_starts_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_phase_starts_reason_remark_id ON public.phase_starts USING btree (reason_remark_id);


--
-- Name: ix_phase_starts_technician_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_phase_starts_technician_id ON public.phase_starts USING btree (technician_id);


--
-- Name: ix_photos_added_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_photos_added_by ON public.photos USING btree (added_by);


--
-- Name: ix_photos_caption_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_photos_caption_remark_id ON public.photos USING btree (caption_remark_id);


--
-- Name: ix_photos_finding_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_photos_finding_id ON public.photos USING btree (finding_id);


--
-- Name: ix_photos_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_photos_job_card_number ON public.photos USING btree (job_card_number);


--
-- Name: ix_photos_removed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_photos_removed_by ON public.photos USING btree (removed_by);


--
-- Name: ix_photos_removed_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_photos_removed_remark_id ON public.photos USING btree (removed_remark_id);


--
-- Name: ix_planned_phases_span; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_planned_phases_span ON public.planned_phases USING gist (span);


--
-- Name: ix_plug_checks_checked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_plug_checks_checked_by ON public.plug_checks USING btree (checked_by);


--
-- Name: ix_plug_checks_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_plug_checks_engine_id ON public.plug_checks USING btree (engine_id);


--
-- Name: ix_plug_checks_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_plug_checks_entered_by ON public.plug_checks USING btree (entered_by);


--
-- Name: ix_plug_checks_instrument_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_plug_checks_instrument_id ON public.plug_checks USING btree (instrument_id);


--
-- Name: ix_plug_checks_job_card_number_cylinder_plug_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_plug_checks_job_card_number_cylinder_plug_attempt ON public.plug_checks USING btree (job_card_number, cylinder, plug, attempt);


--
-- Name: ix_plug_checks_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_plug_checks_odometer_reading_id ON public.plug_checks USING btree (odometer_reading_id);


--
-- Name: ix_plug_checks_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_plug_checks_reason_remark_id ON public.plug_checks USING btree (reason_remark_id);


--
-- Name: ix_plug_checks_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_plug_checks_supersedes_id ON public.plug_checks USING btree (supersedes_id);


--
-- Name: ix_position_confirmations_confirmed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_position_confirmations_confirmed_by ON public.position_confirmations USING btree (confirmed_by);


--
-- Name: ix_position_confirmations_job_card_number_confirmed_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_position_confirmations_job_card_number_confirmed_at ON public.position_confirmations USING btree (job_card_number, confirmed_at);


--
-- Name: ix_purchase_order_lines_order_number_part_id_thickness_mm; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_purchase_order_lines_order_number_part_id_thickness_mm ON public.purchase_order_lines USING btree (order_number, part_id, thickness_mm) NULLS NOT DISTINCT;


--
-- Name: ix_purchase_order_lines_part_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_purchase_order_lines_part_id ON public.purchase_order_lines USING btree (part_id);


--
-- Name: ix_purchase_orders_made_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_purchase_orders_made_by ON public.purchase_orders USING btree (made_by);


--
-- Name: ix_purchase_orders_placed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_purchase_orders_placed_by ON public.purchase_orders USING btree (placed_by);


--
-- Name: ix_purchase_orders_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_purchase_orders_remark_id ON public.purchase_orders USING btree (remark_id);


--
-- Name: ix_purchase_orders_state_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_purchase_orders_state_number ON public.purchase_orders USING btree (state, number);


--
-- Name: ix_purchase_orders_supplier_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_purchase_orders_supplier_id ON public.purchase_orders USING btree (supplier_id);


--
-- Name: ix_put_offs_decided_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_put_offs_decided_by ON public.put_offs USING btree (decided_by);


--
-- Name: ix_put_offs_motorcycle_id_service_item_code_decided_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_put_offs_motorcycle_id_service_item_code_decided_at ON public.put_offs USING btree (motorcycle_id, service_item_code, decided_at);


--
-- Name: ix_reading_imports_imported_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_reading_imports_imported_by ON public.reading_imports USING btree (imported_by);


--
-- Name: ix_record_links_created_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_record_links_created_by ON public.record_links USING btree (created_by);


--
-- Name: ix_record_links_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_record_links_job_card_number ON public.record_links USING btree (job_card_number);


--
-- Name: ix_record_links_revoked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_record_links_revoked_by ON public.record_links USING btree (revoked_by);


--
-- Name: ix_record_links_secret_digest; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_record_links_secret_digest ON public.record_links USING btree (secret_digest);


--
-- Name: ix_remarks_written_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_remarks_written_by ON public.remarks USING btree (written_by);


--
-- Name: ix_reminder_resets_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_reminder_resets_entered_by ON public.reminder_resets USING btree (entered_by);


--
-- Name: ix_reminder_resets_job_card_number_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_reminder_resets_job_card_number_attempt ON public.reminder_resets USING btree (job_card_number, attempt);


--
-- Name: ix_reminder_resets_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_reminder_resets_reason_remark_id ON public.reminder_resets USING btree (reason_remark_id);


--
-- Name: ix_reminder_resets_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_reminder_resets_supersedes_id ON public.reminder_resets USING btree (supersedes_id);


--
-- Name: ix_reminder_resets_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_reminder_resets_words_remark_id ON public.reminder_resets USING btree (words_remark_id);


--
-- Name: ix_resources_kind_name; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_resources_kind_name ON public.resources USING btree (kind, name);


--
-- Name: ix_resources_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_resources_person_id ON public.resources USING btree (person_id);


--
-- Name: ix_role_claims_role_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_role_claims_role_id ON public.role_claims USING btree (role_id);


--
-- Name: ix_seal_inspections_inspected_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_seal_inspections_inspected_by ON public.seal_inspections USING btree (inspected_by);


--
-- Name: ix_seal_inspections_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_seal_inspections_job_card_number ON public.seal_inspections USING btree (job_card_number);


--
-- Name: ix_seal_inspections_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_seal_inspections_remark_id ON public.seal_inspections USING btree (remark_id);


--
-- Name: ix_seal_inspections_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_seal_inspections_supersedes_id ON public.seal_inspections USING btree (supersedes_id);


--
-- Name: ix_second_person_marks_marked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_second_person_marks_marked_by ON public.second_person_marks USING btree (marked_by);


--
-- Name: ix_sessions_account_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_sessions_account_id ON public.sessions USING btree (account_id);


--
-- Name: ix_sessions_token_hash; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_sessions_token_hash ON public.sessions USING btree (token_hash);


--
-- Name: ix_shim_observations_engine_id_valve; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_engine_id_valve ON public.shim_observations USING btree (engine_id, valve);


--
-- Name: ix_shim_observations_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_entered_by ON public.shim_observations USING btree (entered_by);


--
-- Name: ix_shim_observations_import_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_import_id ON public.shim_observations USING btree (import_id);


--
-- Name: ix_shim_observations_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_job_card_number ON public.shim_observations USING btree (job_card_number);


--
-- Name: ix_shim_observations_measured_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_measured_by ON public.shim_observations USING btree (measured_by);


--
-- Name: ix_shim_observations_micrometer_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_micrometer_id ON public.shim_observations USING btree (micrometer_id);


--
-- Name: ix_shim_observations_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_odometer_reading_id ON public.shim_observations USING btree (odometer_reading_id);


--
-- Name: ix_shim_observations_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_observations_reason_remark_id ON public.shim_observations USING btree (reason_remark_id);


--
-- Name: ix_shim_observations_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_shim_observations_supersedes_id ON public.shim_observations USING btree (supersedes_id);


--
-- Name: ix_shim_plan_choices_chosen_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_plan_choices_chosen_by ON public.shim_plan_choices USING btree (chosen_by);


--
-- Name: ix_shim_series_place_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shim_series_place_id ON public.shim_series USING btree (place_id);


--
-- Name: ix_shims_bench_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shims_bench_card_number ON public.shims USING btree (bench_card_number);


--
-- Name: ix_shims_came_from_motorcycle_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shims_came_from_motorcycle_id ON public.shims USING btree (came_from_motorcycle_id);


--
-- Name: ix_shims_engine_id_valve; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_shims_engine_id_valve ON public.shims USING btree (engine_id, valve) WHERE (engine_id IS NOT NULL);


--
-- Name: ix_shims_part_id_thickness_mm; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shims_part_id_thickness_mm ON public.shims USING btree (part_id, thickness_mm);


--
-- Name: ix_shims_place_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_shims_place_id ON public.shims USING btree (place_id);


--
-- Name: ix_sign_offs_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_sign_offs_odometer_reading_id ON public.sign_offs USING btree (odometer_reading_id);


--
-- Name: ix_sign_offs_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_sign_offs_remark_id ON public.sign_offs USING btree (remark_id);


--
-- Name: ix_sign_offs_signed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_sign_offs_signed_by ON public.sign_offs USING btree (signed_by);


--
-- Name: ix_specification_drafts_person_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_specification_drafts_person_id ON public.specification_drafts USING btree (person_id);


--
-- Name: ix_stock_balances_lot_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_balances_lot_id ON public.stock_balances USING btree (lot_id);


--
-- Name: ix_stock_balances_part_id_place_id_thickness_mm_condition_lot_; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_stock_balances_part_id_place_id_thickness_mm_condition_lot_ ON public.stock_balances USING btree (part_id, place_id, thickness_mm, condition, lot_id) NULLS NOT DISTINCT;


--
-- Name: ix_stock_balances_place_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_balances_place_id ON public.stock_balances USING btree (place_id);


--
-- Name: ix_stock_count_lines_count_id_number; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_stock_count_lines_count_id_number ON public.stock_count_lines USING btree (count_id, number);


--
-- Name: ix_stock_count_lines_counted_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_count_lines_counted_by ON public.stock_count_lines USING btree (counted_by);


--
-- Name: ix_stock_count_lines_explained_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_count_lines_explained_by ON public.stock_count_lines USING btree (explained_by);


--
-- Name: ix_stock_count_lines_lot_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_count_lines_lot_id ON public.stock_count_lines USING btree (lot_id);


--
-- Name: ix_stock_count_lines_part_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_count_lines_part_id ON public.stock_count_lines USING btree (part_id);


--
-- Name: ix_stock_count_lines_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_count_lines_remark_id ON public.stock_count_lines USING btree (remark_id);


--
-- Name: ix_stock_counts_closed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_counts_closed_by ON public.stock_counts USING btree (closed_by);


--
-- Name: ix_stock_counts_open; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_stock_counts_open ON public.stock_counts USING btree (place_id) WHERE (closed_at IS NULL);


--
-- Name: ix_stock_counts_started_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_counts_started_by ON public.stock_counts USING btree (started_by);


--
-- Name: ix_stock_lots_expires_on; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_lots_expires_on ON public.stock_lots USING btree (expires_on) WHERE (expires_on IS NOT NULL);


--
-- Name: ix_stock_lots_part_id_code; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_stock_lots_part_id_code ON public.stock_lots USING btree (part_id, code);


--
-- Name: ix_stock_movements_count_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_count_id ON public.stock_movements USING btree (count_id);


--
-- Name: ix_stock_movements_engine_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_engine_id ON public.stock_movements USING btree (engine_id);


--
-- Name: ix_stock_movements_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_job_card_number ON public.stock_movements USING btree (job_card_number);


--
-- Name: ix_stock_movements_lot_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_lot_id ON public.stock_movements USING btree (lot_id);


--
-- Name: ix_stock_movements_moved_by_moved_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_moved_by_moved_at ON public.stock_movements USING btree (moved_by, moved_at);


--
-- Name: ix_stock_movements_order_line_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_order_line_id ON public.stock_movements USING btree (order_line_id);


--
-- Name: ix_stock_movements_part_id_moved_at_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_part_id_moved_at_id ON public.stock_movements USING btree (part_id, moved_at, id);


--
-- Name: ix_stock_movements_place_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_place_id ON public.stock_movements USING btree (place_id);


--
-- Name: ix_stock_movements_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_reason_remark_id ON public.stock_movements USING btree (reason_remark_id);


--
-- Name: ix_stock_movements_reserved; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_reserved ON public.stock_movements USING btree (part_id, job_card_number, place_id, lot_id) INCLUDE (reserved_change) WHERE (reserved_change <> (0)::numeric);


--
-- Name: ix_stock_movements_shim_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stock_movements_shim_id ON public.stock_movements USING btree (shim_id);


--
-- Name: ix_storage_places_code; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_storage_places_code ON public.storage_places USING btree (code);


--
-- Name: ix_storage_places_name; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_storage_places_name ON public.storage_places USING btree (name);


--
-- Name: ix_stored_answers_answered_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_stored_answers_answered_at ON public.stored_answers USING btree (answered_at);


--
-- Name: ix_suppliers_name; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_suppliers_name ON public.suppliers USING btree (name);


--
-- Name: ix_test_rides_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_test_rides_entered_by ON public.test_rides USING btree (entered_by);


--
-- Name: ix_test_rides_job_card_number_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_test_rides_job_card_number_attempt ON public.test_rides USING btree (job_card_number, attempt);


--
-- Name: ix_test_rides_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_test_rides_odometer_reading_id ON public.test_rides USING btree (odometer_reading_id);


--
-- Name: ix_test_rides_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_test_rides_reason_remark_id ON public.test_rides USING btree (reason_remark_id);


--
-- Name: ix_test_rides_rider_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_test_rides_rider_id ON public.test_rides USING btree (rider_id);


--
-- Name: ix_test_rides_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_test_rides_supersedes_id ON public.test_rides USING btree (supersedes_id);


--
-- Name: ix_test_rides_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_test_rides_words_remark_id ON public.test_rides USING btree (words_remark_id);


--
-- Name: ix_tick_witnesses_witnessed_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_tick_witnesses_witnessed_by ON public.tick_witnesses USING btree (witnessed_by);


--
-- Name: ix_valve_events_engine_id_valve; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_valve_events_engine_id_valve ON public.valve_events USING btree (engine_id, valve);


--
-- Name: ix_valve_events_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_valve_events_entered_by ON public.valve_events USING btree (entered_by);


--
-- Name: ix_valve_events_import_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_valve_events_import_id ON public.valve_events USING btree (import_id);


--
-- Name: ix_valve_events_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_valve_events_job_card_number ON public.valve_events USING btree (job_card_number);


--
-- Name: ix_valve_events_odometer_reading_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_valve_events_odometer_reading_id ON public.valve_events USING btree (odometer_reading_id);


--
-- Name: ix_visit_rechecks_early_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_rechecks_early_remark_id ON public.visit_rechecks USING btree (early_remark_id);


--
-- Name: ix_visit_rechecks_job_card_number_point_fastener_code_attempt; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_visit_rechecks_job_card_number_point_fastener_code_attempt ON public.visit_rechecks USING btree (job_card_number, point, fastener_code, attempt) NULLS NOT DISTINCT;


--
-- Name: ix_visit_rechecks_reason_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_rechecks_reason_remark_id ON public.visit_rechecks USING btree (reason_remark_id);


--
-- Name: ix_visit_rechecks_rechecked_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_rechecks_rechecked_by ON public.visit_rechecks USING btree (rechecked_by);


--
-- Name: ix_visit_rechecks_supersedes_id; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_visit_rechecks_supersedes_id ON public.visit_rechecks USING btree (supersedes_id);


--
-- Name: ix_visit_rechecks_words_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_rechecks_words_remark_id ON public.visit_rechecks USING btree (words_remark_id);


--
-- Name: ix_visit_rechecks_wrench_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_rechecks_wrench_id ON public.visit_rechecks USING btree (wrench_id);


--
-- Name: ix_visit_waits_entered_by; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_waits_entered_by ON public.visit_waits USING btree (entered_by);


--
-- Name: ix_visit_waits_one_open; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_visit_waits_one_open ON public.visit_waits USING btree (job_card_number) WHERE (ended_at IS NULL);


--
-- Name: ix_visit_waits_remark_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_waits_remark_id ON public.visit_waits USING btree (remark_id);


--
-- Name: ix_visit_wishes_bay_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_wishes_bay_id ON public.visit_wishes USING btree (bay_id);


--
-- Name: ix_visit_wishes_technician_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_visit_wishes_technician_id ON public.visit_wishes USING btree (technician_id);


--
-- Name: ix_work_breaks_resource_id; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_work_breaks_resource_id ON public.work_breaks USING btree (resource_id);


--
-- Name: ix_work_spells_job_card_number; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_work_spells_job_card_number ON public.work_spells USING btree (job_card_number);


--
-- Name: ix_work_spells_person_id_started_at; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX ix_work_spells_person_id_started_at ON public.work_spells USING btree (person_id, started_at);


--
-- Name: ix_wrench_adapters_name; Type: INDEX; Schema: public; Owner: -
--

CREATE UNIQUE INDEX ix_wrench_adapters_name ON public.wrench_adapters USING btree (name);


--
-- Name: comebacks a_refuse_comeback; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER a_refuse_comeback BEFORE INSERT ON public.comebacks FOR EACH ROW EXECUTE FUNCTION public.refuse_comeback();


--
-- Name: stock_movements a_refuse_gone; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER a_refuse_gone BEFORE INSERT ON public.stock_movements FOR EACH ROW WHEN (((new.on_hand_change > (0)::numeric) OR (new.reserved_change > (0)::numeric))) EXECUTE FUNCTION public.refuse_stock_of_what_is_gone();


--
-- Name: arrival_notes append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.arrival_notes FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: as_left_witnesses append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.as_left_witnesses FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: audit_rows append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.audit_rows FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: balance_runs append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.balance_runs FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: balance_vacuums append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.balance_vacuums FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: blade_checks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.blade_checks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: calibrations append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.calibrations FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: cam_rechecks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.cam_rechecks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: cam_timing_checks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.cam_timing_checks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: cam_timing_readings append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.cam_timing_readings FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: cancellations append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.cancellations FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: caution_acknowledgements append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.caution_acknowledgements FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: chain_changes append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.chain_changes FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: chain_readings append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.chain_readings FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: clearance_readings append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.clearance_readings FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: comebacks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.comebacks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: contacts append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.contacts FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: count_explanations append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.count_explanations FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: count_taps append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.count_taps FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: cylinder_tests append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.cylinder_tests FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: done_items append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.done_items FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: drift_fits append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.drift_fits FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: drift_pools append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.drift_pools FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: engine_model_versions append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.engine_model_versions FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: engine_stops append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.engine_stops FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: estimate_answers append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.estimate_answers FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: estimate_lines append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.estimate_lines FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: estimates append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.estimates FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: fastener_ticks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.fastener_ticks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: gauge_trial_readings append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.gauge_trial_readings FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: goods_in_imports append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.goods_in_imports FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: hand_turns append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.hand_turns FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: history_imports append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.history_imports FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: instrument_events append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.instrument_events FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: issued_records append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.issued_records FOR EACH ROW EXECUTE FUNCTION public.refuse_change_but_emptied_words();


--
-- Name: kit_substitutions append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.kit_substitutions FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: leak_looks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.leak_looks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: left_out_visits append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.left_out_visits FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: motorcycle_moves append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.motorcycle_moves FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: odometer_readings append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.odometer_readings FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: part_changes append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.part_changes FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: phase_starts append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.phase_starts FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: plug_checks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.plug_checks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: position_confirmations append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.position_confirmations FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: put_offs append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.put_offs FOR EACH ROW EXECUTE FUNCTION public.refuse_change_but_blanked_reason();


--
-- Name: reading_imports append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.reading_imports FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: reminder_resets append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.reminder_resets FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: seal_inspections append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.seal_inspections FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: shim_observations append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.shim_observations FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: shim_plan_choices append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.shim_plan_choices FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: sign_offs append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.sign_offs FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: stock_count_lines append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.stock_count_lines FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: stock_movements append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.stock_movements FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: test_rides append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.test_rides FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: tick_witnesses append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.tick_witnesses FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: valve_events append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.valve_events FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: visit_rechecks append_only; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only BEFORE DELETE OR UPDATE ON public.visit_rechecks FOR EACH ROW EXECUTE FUNCTION public.refuse_change();


--
-- Name: arrival_notes append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.arrival_notes FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: as_left_witnesses append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.as_left_witnesses FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: audit_rows append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.audit_rows FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: balance_runs append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.balance_runs FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: balance_vacuums append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.balance_vacuums FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: blade_checks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.blade_checks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: calibrations append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.calibrations FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: cam_rechecks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.cam_rechecks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: cam_timing_checks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.cam_timing_checks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: cam_timing_readings append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.cam_timing_readings FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: cancellations append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.cancellations FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: caution_acknowledgements append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.caution_acknowledgements FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: chain_changes append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.chain_changes FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: chain_readings append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.chain_readings FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: clearance_readings append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.clearance_readings FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: comebacks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.comebacks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: contacts append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.contacts FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: count_explanations append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.count_explanations FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: count_taps append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.count_taps FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: cylinder_tests append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.cylinder_tests FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: done_items append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.done_items FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: drift_fits append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.drift_fits FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: drift_pools append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.drift_pools FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: engine_model_versions append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.engine_model_versions FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: engine_stops append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.engine_stops FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: estimate_answers append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.estimate_answers FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: estimate_lines append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.estimate_lines FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: estimates append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.estimates FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: fastener_ticks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.fastener_ticks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: gauge_trial_readings append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.gauge_trial_readings FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: goods_in_imports append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.goods_in_imports FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: hand_turns append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.hand_turns FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: history_imports append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.history_imports FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: instrument_events append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.instrument_events FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: issued_records append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.issued_records FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: kit_substitutions append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.kit_substitutions FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: leak_looks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.leak_looks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: left_out_visits append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.left_out_visits FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: motorcycle_moves append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.motorcycle_moves FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: odometer_readings append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.odometer_readings FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: part_changes append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.part_changes FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: phase_starts append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.phase_starts FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: plug_checks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.plug_checks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: position_confirmations append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.position_confirmations FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: put_offs append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.put_offs FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: reading_imports append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.reading_imports FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: reminder_resets append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.reminder_resets FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: seal_inspections append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.seal_inspections FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: shim_observations append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.shim_observations FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: shim_plan_choices append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.shim_plan_choices FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: sign_offs append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.sign_offs FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: stock_count_lines append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.stock_count_lines FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: stock_movements append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.stock_movements FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: test_rides append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.test_rides FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: tick_witnesses append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.tick_witnesses FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: valve_events append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.valve_events FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: visit_rechecks append_only_truncate; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER append_only_truncate BEFORE TRUNCATE ON public.visit_rechecks FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();


--
-- Name: absences audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.absences FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: account_roles audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.account_roles FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: accounts audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.accounts FOR EACH ROW EXECUTE FUNCTION public.write_audit('true');


--
-- Name: as_left_marks audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.as_left_marks FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: calendar_feeds audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.calendar_feeds FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: check_ins audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.check_ins FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: consents audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.consents FOR EACH ROW EXECUTE FUNCTION public.write_audit('true');


--
-- Name: engine_fittings audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.engine_fittings FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: engine_models audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.engine_models FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: engines audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.engines FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: expected_deliveries audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.expected_deliveries FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: feeler_blades audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.feeler_blades FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: findings audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.findings FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: gauge_trial_appraisers audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.gauge_trial_appraisers FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: gauge_trials audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.gauge_trials FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: holidays audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.holidays FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: instruments audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.instruments FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: job_card_items audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.job_card_items FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: job_cards audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.job_cards FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: message_templates audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.message_templates FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: motorcycles audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.motorcycles FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: occupancies audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.occupancies FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: odometers audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.odometers FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: opening_hours audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.opening_hours FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: outbox_messages audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.outbox_messages FOR EACH ROW EXECUTE FUNCTION public.write_audit('true');


--
-- Name: part_alternatives audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.part_alternatives FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: part_scan_codes audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.part_scan_codes FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: part_supplies audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.part_supplies FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: parts audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.parts FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: people audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.people FOR EACH ROW EXECUTE FUNCTION public.write_audit('true');


--
-- Name: planned_phases audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.planned_phases FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: purchase_order_lines audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.purchase_order_lines FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: purchase_orders audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.purchase_orders FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: remarks audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.remarks FOR EACH ROW EXECUTE FUNCTION public.write_audit('true');


--
-- Name: resources audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.resources FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: second_person_marks audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.second_person_marks FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: shim_series audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.shim_series FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: stock_counts audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.stock_counts FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: stock_lots audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.stock_lots FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: storage_places audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.storage_places FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: suppliers audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.suppliers FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: tax_rates audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.tax_rates FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: visit_waits audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.visit_waits FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: visit_wishes audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.visit_wishes FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: work_breaks audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.work_breaks FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: work_spells audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.work_spells FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: working_hours audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.working_hours FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: workshop_profiles audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.workshop_profiles FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: wrench_adapters audit; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER audit AFTER INSERT OR DELETE OR UPDATE ON public.wrench_adapters FOR EACH ROW EXECUTE FUNCTION public.write_audit('false');


--
-- Name: record_links keep_link; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER keep_link BEFORE DELETE OR UPDATE ON public.record_links FOR EACH ROW EXECUTE FUNCTION public.refuse_change_of_record_link();


--
-- Name: stock_movements move_balance; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER move_balance AFTER INSERT ON public.stock_movements FOR EACH ROW EXECUTE FUNCTION public.move_stock_balance();


--
-- Name: stock_movements move_shim; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER move_shim BEFORE INSERT ON public.stock_movements FOR EACH ROW EXECUTE FUNCTION public.move_shim();


--
-- Name: absences tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.absences FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: check_ins tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.check_ins FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: engine_stops tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.engine_stops FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: job_card_items tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.job_card_items FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: job_cards tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.job_cards FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: motorcycle_moves tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.motorcycle_moves FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: occupancies tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.occupancies FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: phase_starts tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.phase_starts FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: planned_phases tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.planned_phases FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: resources tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.resources FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: sign_offs tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.sign_offs FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: visit_waits tell_floor; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER tell_floor AFTER INSERT OR DELETE OR UPDATE ON public.visit_waits FOR EACH STATEMENT EXECUTE FUNCTION public.tell_floor();


--
-- Name: absences fk_absences_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.absences
    ADD CONSTRAINT fk_absences_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: absences fk_absences_resources_resource_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.absences
    ADD CONSTRAINT fk_absences_resources_resource_id FOREIGN KEY (resource_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: account_claims fk_account_claims_accounts_user_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_claims
    ADD CONSTRAINT fk_account_claims_accounts_user_id FOREIGN KEY (user_id) REFERENCES public.accounts(id) ON DELETE CASCADE;


--
-- Name: account_logins fk_account_logins_accounts_user_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_logins
    ADD CONSTRAINT fk_account_logins_accounts_user_id FOREIGN KEY (user_id) REFERENCES public.accounts(id) ON DELETE CASCADE;


--
-- Name: account_roles fk_account_roles_accounts_user_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_roles
    ADD CONSTRAINT fk_account_roles_accounts_user_id FOREIGN KEY (user_id) REFERENCES public.accounts(id) ON DELETE CASCADE;


--
-- Name: account_roles fk_account_roles_roles_role_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_roles
    ADD CONSTRAINT fk_account_roles_roles_role_id FOREIGN KEY (role_id) REFERENCES public.roles(id) ON DELETE CASCADE;


--
-- Name: account_tokens fk_account_tokens_accounts_user_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.account_tokens
    ADD CONSTRAINT fk_account_tokens_accounts_user_id FOREIGN KEY (user_id) REFERENCES public.accounts(id) ON DELETE CASCADE;


--
-- Name: accounts fk_accounts_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.accounts
    ADD CONSTRAINT fk_accounts_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: arrival_notes fk_arrival_notes_arrival_notes_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.arrival_notes
    ADD CONSTRAINT fk_arrival_notes_arrival_notes_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.arrival_notes(id) ON DELETE RESTRICT;


--
-- Name: arrival_notes fk_arrival_notes_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.arrival_notes
    ADD CONSTRAINT fk_arrival_notes_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: arrival_notes fk_arrival_notes_people_noted_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.arrival_notes
    ADD CONSTRAINT fk_arrival_notes_people_noted_by FOREIGN KEY (noted_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: arrival_notes fk_arrival_notes_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.arrival_notes
    ADD CONSTRAINT fk_arrival_notes_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: arrival_notes fk_arrival_notes_remarks_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.arrival_notes
    ADD CONSTRAINT fk_arrival_notes_remarks_words_remark_id FOREIGN KEY (words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: as_left_marks fk_as_left_marks_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.as_left_marks
    ADD CONSTRAINT fk_as_left_marks_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: as_left_marks fk_as_left_marks_people_marked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.as_left_marks
    ADD CONSTRAINT fk_as_left_marks_people_marked_by FOREIGN KEY (marked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: as_left_witnesses fk_as_left_witnesses_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.as_left_witnesses
    ADD CONSTRAINT fk_as_left_witnesses_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: as_left_witnesses fk_as_left_witnesses_people_witnessed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.as_left_witnesses
    ADD CONSTRAINT fk_as_left_witnesses_people_witnessed_by FOREIGN KEY (witnessed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: balance_runs fk_balance_runs_balance_runs_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_runs
    ADD CONSTRAINT fk_balance_runs_balance_runs_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.balance_runs(id) ON DELETE RESTRICT;


--
-- Name: balance_runs fk_balance_runs_instruments_gauge_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_runs
    ADD CONSTRAINT fk_balance_runs_instruments_gauge_id FOREIGN KEY (gauge_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: balance_runs fk_balance_runs_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_runs
    ADD CONSTRAINT fk_balance_runs_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: balance_runs fk_balance_runs_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_runs
    ADD CONSTRAINT fk_balance_runs_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: balance_runs fk_balance_runs_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_runs
    ADD CONSTRAINT fk_balance_runs_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: balance_vacuums fk_balance_vacuums_balance_runs_run_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.balance_vacuums
    ADD CONSTRAINT fk_balance_vacuums_balance_runs_run_id FOREIGN KEY (run_id) REFERENCES public.balance_runs(id) ON DELETE RESTRICT;


--
-- Name: blade_checks fk_blade_checks_feeler_blades_blade_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.blade_checks
    ADD CONSTRAINT fk_blade_checks_feeler_blades_blade_id FOREIGN KEY (blade_id) REFERENCES public.feeler_blades(id) ON DELETE RESTRICT;


--
-- Name: blade_checks fk_blade_checks_instruments_micrometer_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.blade_checks
    ADD CONSTRAINT fk_blade_checks_instruments_micrometer_id FOREIGN KEY (micrometer_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: blade_checks fk_blade_checks_people_checked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.blade_checks
    ADD CONSTRAINT fk_blade_checks_people_checked_by FOREIGN KEY (checked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: blade_checks fk_blade_checks_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.blade_checks
    ADD CONSTRAINT fk_blade_checks_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: calendar_feeds fk_calendar_feeds_people_created_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.calendar_feeds
    ADD CONSTRAINT fk_calendar_feeds_people_created_by FOREIGN KEY (created_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: calendar_feeds fk_calendar_feeds_resources_resource_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.calendar_feeds
    ADD CONSTRAINT fk_calendar_feeds_resources_resource_id FOREIGN KEY (resource_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: calibrations fk_calibrations_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.calibrations
    ADD CONSTRAINT fk_calibrations_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: calibrations fk_calibrations_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.calibrations
    ADD CONSTRAINT fk_calibrations_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cam_rechecks fk_cam_rechecks_instruments_wrench_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_rechecks
    ADD CONSTRAINT fk_cam_rechecks_instruments_wrench_id FOREIGN KEY (wrench_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: cam_rechecks fk_cam_rechecks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_rechecks
    ADD CONSTRAINT fk_cam_rechecks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: cam_rechecks fk_cam_rechecks_people_confirmed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_rechecks
    ADD CONSTRAINT fk_cam_rechecks_people_confirmed_by FOREIGN KEY (confirmed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_cam_timing_checks_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_cam_timing_checks_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.cam_timing_checks(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_instruments_dial_gauge_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_instruments_dial_gauge_id FOREIGN KEY (dial_gauge_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_checks fk_cam_timing_checks_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_checks
    ADD CONSTRAINT fk_cam_timing_checks_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: cam_timing_readings fk_cam_timing_readings_cam_timing_checks_check_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cam_timing_readings
    ADD CONSTRAINT fk_cam_timing_readings_cam_timing_checks_check_id FOREIGN KEY (check_id) REFERENCES public.cam_timing_checks(id) ON DELETE RESTRICT;


--
-- Name: cancellations fk_cancellations_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cancellations
    ADD CONSTRAINT fk_cancellations_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: cancellations fk_cancellations_people_cancelled_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cancellations
    ADD CONSTRAINT fk_cancellations_people_cancelled_by FOREIGN KEY (cancelled_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cancellations fk_cancellations_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cancellations
    ADD CONSTRAINT fk_cancellations_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: caution_acknowledgements fk_caution_acknowledgements_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.caution_acknowledgements
    ADD CONSTRAINT fk_caution_acknowledgements_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: caution_acknowledgements fk_caution_acknowledgements_people_acknowledged_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.caution_acknowledgements
    ADD CONSTRAINT fk_caution_acknowledgements_people_acknowledged_by FOREIGN KEY (acknowledged_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: chain_changes fk_chain_changes_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_changes
    ADD CONSTRAINT fk_chain_changes_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: chain_changes fk_chain_changes_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_changes
    ADD CONSTRAINT fk_chain_changes_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: chain_changes fk_chain_changes_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_changes
    ADD CONSTRAINT fk_chain_changes_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: chain_changes fk_chain_changes_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_changes
    ADD CONSTRAINT fk_chain_changes_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_chain_readings_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_chain_readings_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.chain_readings(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: chain_readings fk_chain_readings_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain_readings
    ADD CONSTRAINT fk_chain_readings_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: check_ins fk_check_ins_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.check_ins
    ADD CONSTRAINT fk_check_ins_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: check_ins fk_check_ins_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.check_ins
    ADD CONSTRAINT fk_check_ins_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: check_ins fk_check_ins_people_checked_in_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.check_ins
    ADD CONSTRAINT fk_check_ins_people_checked_in_by FOREIGN KEY (checked_in_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: check_ins fk_check_ins_remarks_owners_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.check_ins
    ADD CONSTRAINT fk_check_ins_remarks_owners_words_remark_id FOREIGN KEY (owners_words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: check_ins fk_check_ins_remarks_seen_on_arrival_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.check_ins
    ADD CONSTRAINT fk_check_ins_remarks_seen_on_arrival_remark_id FOREIGN KEY (seen_on_arrival_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: clearance_forecasts fk_clearance_forecasts_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_forecasts
    ADD CONSTRAINT fk_clearance_forecasts_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_clearance_readings_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_clearance_readings_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.clearance_readings(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_reading_imports_import_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_reading_imports_import_id FOREIGN KEY (import_id) REFERENCES public.reading_imports(id) ON DELETE RESTRICT;


--
-- Name: clearance_readings fk_clearance_readings_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.clearance_readings
    ADD CONSTRAINT fk_clearance_readings_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: comebacks fk_comebacks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.comebacks
    ADD CONSTRAINT fk_comebacks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: comebacks fk_comebacks_job_cards_of_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.comebacks
    ADD CONSTRAINT fk_comebacks_job_cards_of_job_card_number FOREIGN KEY (of_job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: comebacks fk_comebacks_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.comebacks
    ADD CONSTRAINT fk_comebacks_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: comebacks fk_comebacks_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.comebacks
    ADD CONSTRAINT fk_comebacks_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: consents fk_consents_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.consents
    ADD CONSTRAINT fk_consents_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: consents fk_consents_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.consents
    ADD CONSTRAINT fk_consents_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: consents fk_consents_people_withdrawn_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.consents
    ADD CONSTRAINT fk_consents_people_withdrawn_by FOREIGN KEY (withdrawn_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: contacts fk_contacts_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.contacts
    ADD CONSTRAINT fk_contacts_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: contacts fk_contacts_outbox_messages_message_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.contacts
    ADD CONSTRAINT fk_contacts_outbox_messages_message_id FOREIGN KEY (message_id) REFERENCES public.outbox_messages(id) ON DELETE RESTRICT;


--
-- Name: contacts fk_contacts_people_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.contacts
    ADD CONSTRAINT fk_contacts_people_by FOREIGN KEY (by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: contacts fk_contacts_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.contacts
    ADD CONSTRAINT fk_contacts_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: contacts fk_contacts_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.contacts
    ADD CONSTRAINT fk_contacts_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: count_explanations fk_count_explanations_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_explanations
    ADD CONSTRAINT fk_count_explanations_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: count_explanations fk_count_explanations_people_explained_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_explanations
    ADD CONSTRAINT fk_count_explanations_people_explained_by FOREIGN KEY (explained_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: count_explanations fk_count_explanations_remarks_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_explanations
    ADD CONSTRAINT fk_count_explanations_remarks_words_remark_id FOREIGN KEY (words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: count_taps fk_count_taps_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_taps
    ADD CONSTRAINT fk_count_taps_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: count_taps fk_count_taps_people_counted_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.count_taps
    ADD CONSTRAINT fk_count_taps_people_counted_by FOREIGN KEY (counted_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_cylinder_tests_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_cylinder_tests_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.cylinder_tests(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: cylinder_tests fk_cylinder_tests_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.cylinder_tests
    ADD CONSTRAINT fk_cylinder_tests_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: done_items fk_done_items_history_imports_import_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.done_items
    ADD CONSTRAINT fk_done_items_history_imports_import_id FOREIGN KEY (import_id) REFERENCES public.history_imports(id) ON DELETE RESTRICT;


--
-- Name: done_items fk_done_items_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.done_items
    ADD CONSTRAINT fk_done_items_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: done_items fk_done_items_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.done_items
    ADD CONSTRAINT fk_done_items_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: done_items fk_done_items_people_done_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.done_items
    ADD CONSTRAINT fk_done_items_people_done_by FOREIGN KEY (done_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: done_items fk_done_items_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.done_items
    ADD CONSTRAINT fk_done_items_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: drift_fits fk_drift_fits_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.drift_fits
    ADD CONSTRAINT fk_drift_fits_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: drift_refits fk_drift_refits_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.drift_refits
    ADD CONSTRAINT fk_drift_refits_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: due_items fk_due_items_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_items
    ADD CONSTRAINT fk_due_items_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: due_recomputes fk_due_recomputes_people_requested_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_recomputes
    ADD CONSTRAINT fk_due_recomputes_people_requested_by FOREIGN KEY (requested_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: due_visits fk_due_visits_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_visits
    ADD CONSTRAINT fk_due_visits_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: due_visits fk_due_visits_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.due_visits
    ADD CONSTRAINT fk_due_visits_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: engine_fittings fk_engine_fittings_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_fittings
    ADD CONSTRAINT fk_engine_fittings_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: engine_fittings fk_engine_fittings_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_fittings
    ADD CONSTRAINT fk_engine_fittings_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: engine_model_versions fk_engine_model_versions_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_model_versions
    ADD CONSTRAINT fk_engine_model_versions_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: engine_model_versions fk_engine_model_versions_people_created_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_model_versions
    ADD CONSTRAINT fk_engine_model_versions_people_created_by FOREIGN KEY (created_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: engine_outlooks fk_engine_outlooks_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_outlooks
    ADD CONSTRAINT fk_engine_outlooks_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: engine_stops fk_engine_stops_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_stops
    ADD CONSTRAINT fk_engine_stops_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: engine_stops fk_engine_stops_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engine_stops
    ADD CONSTRAINT fk_engine_stops_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: engines fk_engines_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.engines
    ADD CONSTRAINT fk_engines_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: estimate_answers fk_estimate_answers_estimates_estimate_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_answers
    ADD CONSTRAINT fk_estimate_answers_estimates_estimate_id FOREIGN KEY (estimate_id) REFERENCES public.estimates(id) ON DELETE RESTRICT;


--
-- Name: estimate_answers fk_estimate_answers_findings_finding_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_answers
    ADD CONSTRAINT fk_estimate_answers_findings_finding_id FOREIGN KEY (finding_id) REFERENCES public.findings(id) ON DELETE RESTRICT;


--
-- Name: estimate_answers fk_estimate_answers_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_answers
    ADD CONSTRAINT fk_estimate_answers_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: estimate_answers fk_estimate_answers_people_recorded_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_answers
    ADD CONSTRAINT fk_estimate_answers_people_recorded_by FOREIGN KEY (recorded_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: estimate_answers fk_estimate_answers_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_answers
    ADD CONSTRAINT fk_estimate_answers_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: estimate_lines fk_estimate_lines_estimates_estimate_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_lines
    ADD CONSTRAINT fk_estimate_lines_estimates_estimate_id FOREIGN KEY (estimate_id) REFERENCES public.estimates(id) ON DELETE RESTRICT;


--
-- Name: estimate_lines fk_estimate_lines_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimate_lines
    ADD CONSTRAINT fk_estimate_lines_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: estimates fk_estimates_findings_finding_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimates
    ADD CONSTRAINT fk_estimates_findings_finding_id FOREIGN KEY (finding_id) REFERENCES public.findings(id) ON DELETE RESTRICT;


--
-- Name: estimates fk_estimates_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimates
    ADD CONSTRAINT fk_estimates_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: estimates fk_estimates_people_made_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.estimates
    ADD CONSTRAINT fk_estimates_people_made_by FOREIGN KEY (made_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: expected_deliveries fk_expected_deliveries_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.expected_deliveries
    ADD CONSTRAINT fk_expected_deliveries_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: expected_deliveries fk_expected_deliveries_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.expected_deliveries
    ADD CONSTRAINT fk_expected_deliveries_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: expected_deliveries fk_expected_deliveries_purchase_order_lines_order_line_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.expected_deliveries
    ADD CONSTRAINT fk_expected_deliveries_purchase_order_lines_order_line_id FOREIGN KEY (order_line_id) REFERENCES public.purchase_order_lines(id) ON DELETE RESTRICT;


--
-- Name: fastener_ticks fk_fastener_ticks_fastener_ticks_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fastener_ticks
    ADD CONSTRAINT fk_fastener_ticks_fastener_ticks_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.fastener_ticks(id) ON DELETE RESTRICT;


--
-- Name: fastener_ticks fk_fastener_ticks_instruments_wrench_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fastener_ticks
    ADD CONSTRAINT fk_fastener_ticks_instruments_wrench_id FOREIGN KEY (wrench_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: fastener_ticks fk_fastener_ticks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fastener_ticks
    ADD CONSTRAINT fk_fastener_ticks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: fastener_ticks fk_fastener_ticks_people_ticked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fastener_ticks
    ADD CONSTRAINT fk_fastener_ticks_people_ticked_by FOREIGN KEY (ticked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: fastener_ticks fk_fastener_ticks_wrench_adapters_adapter_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.fastener_ticks
    ADD CONSTRAINT fk_fastener_ticks_wrench_adapters_adapter_id FOREIGN KEY (adapter_id) REFERENCES public.wrench_adapters(id) ON DELETE RESTRICT;


--
-- Name: feeler_blades fk_feeler_blades_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.feeler_blades
    ADD CONSTRAINT fk_feeler_blades_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: findings fk_findings_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT fk_findings_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: findings fk_findings_people_done_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT fk_findings_people_done_by FOREIGN KEY (done_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: findings fk_findings_people_found_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT fk_findings_people_found_by FOREIGN KEY (found_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: findings fk_findings_people_withdrawn_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT fk_findings_people_withdrawn_by FOREIGN KEY (withdrawn_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: findings fk_findings_remarks_text_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT fk_findings_remarks_text_remark_id FOREIGN KEY (text_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: findings fk_findings_remarks_withdrawn_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.findings
    ADD CONSTRAINT fk_findings_remarks_withdrawn_remark_id FOREIGN KEY (withdrawn_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: gauge_trial_appraisers fk_gauge_trial_appraisers_gauge_trials_trial_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_appraisers
    ADD CONSTRAINT fk_gauge_trial_appraisers_gauge_trials_trial_id FOREIGN KEY (trial_id) REFERENCES public.gauge_trials(id) ON DELETE RESTRICT;


--
-- Name: gauge_trial_appraisers fk_gauge_trial_appraisers_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_appraisers
    ADD CONSTRAINT fk_gauge_trial_appraisers_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: gauge_trial_readings fk_gauge_trial_readings_gauge_trial_appraisers_trial_id_apprai; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_readings
    ADD CONSTRAINT fk_gauge_trial_readings_gauge_trial_appraisers_trial_id_apprai FOREIGN KEY (trial_id, appraiser_id) REFERENCES public.gauge_trial_appraisers(trial_id, person_id) ON DELETE RESTRICT;


--
-- Name: gauge_trial_readings fk_gauge_trial_readings_gauge_trial_readings_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_readings
    ADD CONSTRAINT fk_gauge_trial_readings_gauge_trial_readings_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.gauge_trial_readings(id) ON DELETE RESTRICT;


--
-- Name: gauge_trial_readings fk_gauge_trial_readings_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_readings
    ADD CONSTRAINT fk_gauge_trial_readings_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: gauge_trial_readings fk_gauge_trial_readings_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trial_readings
    ADD CONSTRAINT fk_gauge_trial_readings_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: gauge_trials fk_gauge_trials_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trials
    ADD CONSTRAINT fk_gauge_trials_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: gauge_trials fk_gauge_trials_people_started_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.gauge_trials
    ADD CONSTRAINT fk_gauge_trials_people_started_by FOREIGN KEY (started_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: goods_in_imports fk_goods_in_imports_people_imported_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.goods_in_imports
    ADD CONSTRAINT fk_goods_in_imports_people_imported_by FOREIGN KEY (imported_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: hand_turns fk_hand_turns_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.hand_turns
    ADD CONSTRAINT fk_hand_turns_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: hand_turns fk_hand_turns_people_confirmed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.hand_turns
    ADD CONSTRAINT fk_hand_turns_people_confirmed_by FOREIGN KEY (confirmed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: history_imports fk_history_imports_people_imported_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.history_imports
    ADD CONSTRAINT fk_history_imports_people_imported_by FOREIGN KEY (imported_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: instrument_events fk_instrument_events_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instrument_events
    ADD CONSTRAINT fk_instrument_events_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: instrument_events fk_instrument_events_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instrument_events
    ADD CONSTRAINT fk_instrument_events_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: instrument_events fk_instrument_events_people_holder_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instrument_events
    ADD CONSTRAINT fk_instrument_events_people_holder_id FOREIGN KEY (holder_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: instrument_events fk_instrument_events_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instrument_events
    ADD CONSTRAINT fk_instrument_events_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: instruments fk_instruments_people_holder_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.instruments
    ADD CONSTRAINT fk_instruments_people_holder_id FOREIGN KEY (holder_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: issued_records fk_issued_records_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.issued_records
    ADD CONSTRAINT fk_issued_records_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: issued_records fk_issued_records_people_issued_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.issued_records
    ADD CONSTRAINT fk_issued_records_people_issued_by FOREIGN KEY (issued_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: job_card_items fk_job_card_items_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_card_items
    ADD CONSTRAINT fk_job_card_items_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: job_cards fk_job_cards_engine_model_versions_engine_model_version_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_cards
    ADD CONSTRAINT fk_job_cards_engine_model_versions_engine_model_version_id FOREIGN KEY (engine_model_version_id) REFERENCES public.engine_model_versions(id) ON DELETE RESTRICT;


--
-- Name: job_cards fk_job_cards_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_cards
    ADD CONSTRAINT fk_job_cards_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: job_cards fk_job_cards_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_cards
    ADD CONSTRAINT fk_job_cards_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: job_cards fk_job_cards_people_booked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.job_cards
    ADD CONSTRAINT fk_job_cards_people_booked_by FOREIGN KEY (booked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: kit_substitutions fk_kit_substitutions_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.kit_substitutions
    ADD CONSTRAINT fk_kit_substitutions_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: kit_substitutions fk_kit_substitutions_parts_instead_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.kit_substitutions
    ADD CONSTRAINT fk_kit_substitutions_parts_instead_id FOREIGN KEY (instead_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: kit_substitutions fk_kit_substitutions_people_chosen_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.kit_substitutions
    ADD CONSTRAINT fk_kit_substitutions_people_chosen_by FOREIGN KEY (chosen_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: kit_substitutions fk_kit_substitutions_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.kit_substitutions
    ADD CONSTRAINT fk_kit_substitutions_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: leak_looks fk_leak_looks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.leak_looks
    ADD CONSTRAINT fk_leak_looks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: leak_looks fk_leak_looks_leak_looks_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.leak_looks
    ADD CONSTRAINT fk_leak_looks_leak_looks_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.leak_looks(id) ON DELETE RESTRICT;


--
-- Name: leak_looks fk_leak_looks_people_looked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.leak_looks
    ADD CONSTRAINT fk_leak_looks_people_looked_by FOREIGN KEY (looked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: leak_looks fk_leak_looks_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.leak_looks
    ADD CONSTRAINT fk_leak_looks_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: leak_looks fk_leak_looks_remarks_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.leak_looks
    ADD CONSTRAINT fk_leak_looks_remarks_words_remark_id FOREIGN KEY (words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: left_out_visits fk_left_out_visits_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.left_out_visits
    ADD CONSTRAINT fk_left_out_visits_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: left_out_visits fk_left_out_visits_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.left_out_visits
    ADD CONSTRAINT fk_left_out_visits_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: left_out_visits fk_left_out_visits_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.left_out_visits
    ADD CONSTRAINT fk_left_out_visits_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: left_out_visits fk_left_out_visits_people_decided_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.left_out_visits
    ADD CONSTRAINT fk_left_out_visits_people_decided_by FOREIGN KEY (decided_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: left_out_visits fk_left_out_visits_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.left_out_visits
    ADD CONSTRAINT fk_left_out_visits_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: motorcycle_moves fk_motorcycle_moves_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycle_moves
    ADD CONSTRAINT fk_motorcycle_moves_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: motorcycle_moves fk_motorcycle_moves_people_moved_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycle_moves
    ADD CONSTRAINT fk_motorcycle_moves_people_moved_by FOREIGN KEY (moved_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: motorcycle_moves fk_motorcycle_moves_remarks_tag_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycle_moves
    ADD CONSTRAINT fk_motorcycle_moves_remarks_tag_remark_id FOREIGN KEY (tag_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: motorcycle_moves fk_motorcycle_moves_resources_resource_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycle_moves
    ADD CONSTRAINT fk_motorcycle_moves_resources_resource_id FOREIGN KEY (resource_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: motorcycles fk_motorcycles_people_owner_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycles
    ADD CONSTRAINT fk_motorcycles_people_owner_id FOREIGN KEY (owner_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: motorcycles fk_motorcycles_people_use_said_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.motorcycles
    ADD CONSTRAINT fk_motorcycles_people_use_said_by FOREIGN KEY (use_said_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: occupancies fk_occupancies_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.occupancies
    ADD CONSTRAINT fk_occupancies_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: occupancies fk_occupancies_resources_resource_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.occupancies
    ADD CONSTRAINT fk_occupancies_resources_resource_id FOREIGN KEY (resource_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_odometer_readings_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_odometer_readings_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_odometers_odometer_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_odometers_odometer_id FOREIGN KEY (odometer_id) REFERENCES public.odometers(id) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: odometer_readings fk_odometer_readings_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometer_readings
    ADD CONSTRAINT fk_odometer_readings_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: odometers fk_odometers_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.odometers
    ADD CONSTRAINT fk_odometers_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: outbox_messages fk_outbox_messages_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.outbox_messages
    ADD CONSTRAINT fk_outbox_messages_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: outbox_messages fk_outbox_messages_people_created_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.outbox_messages
    ADD CONSTRAINT fk_outbox_messages_people_created_by FOREIGN KEY (created_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: outbox_messages fk_outbox_messages_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.outbox_messages
    ADD CONSTRAINT fk_outbox_messages_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: outbox_messages fk_outbox_messages_people_sent_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.outbox_messages
    ADD CONSTRAINT fk_outbox_messages_people_sent_by FOREIGN KEY (sent_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: part_alternatives fk_part_alternatives_parts_alternative_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_alternatives
    ADD CONSTRAINT fk_part_alternatives_parts_alternative_id FOREIGN KEY (alternative_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: part_alternatives fk_part_alternatives_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_alternatives
    ADD CONSTRAINT fk_part_alternatives_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: part_changes fk_part_changes_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_changes
    ADD CONSTRAINT fk_part_changes_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: part_changes fk_part_changes_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_changes
    ADD CONSTRAINT fk_part_changes_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: part_changes fk_part_changes_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_changes
    ADD CONSTRAINT fk_part_changes_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: part_changes fk_part_changes_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_changes
    ADD CONSTRAINT fk_part_changes_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: part_changes fk_part_changes_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_changes
    ADD CONSTRAINT fk_part_changes_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: part_scan_codes fk_part_scan_codes_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_scan_codes
    ADD CONSTRAINT fk_part_scan_codes_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: part_supplies fk_part_supplies_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_supplies
    ADD CONSTRAINT fk_part_supplies_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: part_supplies fk_part_supplies_suppliers_supplier_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.part_supplies
    ADD CONSTRAINT fk_part_supplies_suppliers_supplier_id FOREIGN KEY (supplier_id) REFERENCES public.suppliers(id) ON DELETE RESTRICT;


--
-- Name: parts fk_parts_parts_merged_into_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.parts
    ADD CONSTRAINT fk_parts_parts_merged_into_id FOREIGN KEY (merged_into_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: parts fk_parts_parts_replaced_by_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.parts
    ADD CONSTRAINT fk_parts_parts_replaced_by_id FOREIGN KEY (replaced_by_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: phase_starts fk_phase_starts_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.phase_starts
    ADD CONSTRAINT fk_phase_starts_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: phase_starts fk_phase_starts_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.phase_starts
    ADD CONSTRAINT fk_phase_starts_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: phase_starts fk_phase_starts_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.phase_starts
    ADD CONSTRAINT fk_phase_starts_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: phase_starts fk_phase_starts_resources_technician_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.phase_starts
    ADD CONSTRAINT fk_phase_starts_resources_technician_id FOREIGN KEY (technician_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: photos fk_photos_findings_finding_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT fk_photos_findings_finding_id FOREIGN KEY (finding_id) REFERENCES public.findings(id) ON DELETE RESTRICT;


--
-- Name: photos fk_photos_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT fk_photos_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: photos fk_photos_people_added_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT fk_photos_people_added_by FOREIGN KEY (added_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: photos fk_photos_people_removed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT fk_photos_people_removed_by FOREIGN KEY (removed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: photos fk_photos_remarks_caption_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT fk_photos_remarks_caption_remark_id FOREIGN KEY (caption_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: photos fk_photos_remarks_removed_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.photos
    ADD CONSTRAINT fk_photos_remarks_removed_remark_id FOREIGN KEY (removed_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: planned_phases fk_planned_phases_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.planned_phases
    ADD CONSTRAINT fk_planned_phases_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_instruments_instrument_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_instruments_instrument_id FOREIGN KEY (instrument_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_people_checked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_people_checked_by FOREIGN KEY (checked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_plug_checks_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_plug_checks_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.plug_checks(id) ON DELETE RESTRICT;


--
-- Name: plug_checks fk_plug_checks_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.plug_checks
    ADD CONSTRAINT fk_plug_checks_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: position_confirmations fk_position_confirmations_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.position_confirmations
    ADD CONSTRAINT fk_position_confirmations_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: position_confirmations fk_position_confirmations_people_confirmed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.position_confirmations
    ADD CONSTRAINT fk_position_confirmations_people_confirmed_by FOREIGN KEY (confirmed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: purchase_order_lines fk_purchase_order_lines_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_order_lines
    ADD CONSTRAINT fk_purchase_order_lines_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: purchase_order_lines fk_purchase_order_lines_purchase_orders_order_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_order_lines
    ADD CONSTRAINT fk_purchase_order_lines_purchase_orders_order_number FOREIGN KEY (order_number) REFERENCES public.purchase_orders(number) ON DELETE RESTRICT;


--
-- Name: purchase_orders fk_purchase_orders_people_made_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_orders
    ADD CONSTRAINT fk_purchase_orders_people_made_by FOREIGN KEY (made_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: purchase_orders fk_purchase_orders_people_placed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_orders
    ADD CONSTRAINT fk_purchase_orders_people_placed_by FOREIGN KEY (placed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: purchase_orders fk_purchase_orders_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_orders
    ADD CONSTRAINT fk_purchase_orders_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: purchase_orders fk_purchase_orders_suppliers_supplier_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.purchase_orders
    ADD CONSTRAINT fk_purchase_orders_suppliers_supplier_id FOREIGN KEY (supplier_id) REFERENCES public.suppliers(id) ON DELETE RESTRICT;


--
-- Name: put_offs fk_put_offs_motorcycles_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.put_offs
    ADD CONSTRAINT fk_put_offs_motorcycles_motorcycle_id FOREIGN KEY (motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: put_offs fk_put_offs_people_decided_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.put_offs
    ADD CONSTRAINT fk_put_offs_people_decided_by FOREIGN KEY (decided_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: reading_imports fk_reading_imports_people_imported_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reading_imports
    ADD CONSTRAINT fk_reading_imports_people_imported_by FOREIGN KEY (imported_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: record_links fk_record_links_issued_records_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.record_links
    ADD CONSTRAINT fk_record_links_issued_records_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.issued_records(job_card_number) ON DELETE RESTRICT;


--
-- Name: record_links fk_record_links_people_created_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.record_links
    ADD CONSTRAINT fk_record_links_people_created_by FOREIGN KEY (created_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: record_links fk_record_links_people_revoked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.record_links
    ADD CONSTRAINT fk_record_links_people_revoked_by FOREIGN KEY (revoked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: remarks fk_remarks_people_written_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.remarks
    ADD CONSTRAINT fk_remarks_people_written_by FOREIGN KEY (written_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: reminder_resets fk_reminder_resets_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reminder_resets
    ADD CONSTRAINT fk_reminder_resets_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: reminder_resets fk_reminder_resets_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reminder_resets
    ADD CONSTRAINT fk_reminder_resets_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: reminder_resets fk_reminder_resets_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reminder_resets
    ADD CONSTRAINT fk_reminder_resets_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: reminder_resets fk_reminder_resets_remarks_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reminder_resets
    ADD CONSTRAINT fk_reminder_resets_remarks_words_remark_id FOREIGN KEY (words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: reminder_resets fk_reminder_resets_reminder_resets_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.reminder_resets
    ADD CONSTRAINT fk_reminder_resets_reminder_resets_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.reminder_resets(id) ON DELETE RESTRICT;


--
-- Name: resources fk_resources_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.resources
    ADD CONSTRAINT fk_resources_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: role_claims fk_role_claims_roles_role_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.role_claims
    ADD CONSTRAINT fk_role_claims_roles_role_id FOREIGN KEY (role_id) REFERENCES public.roles(id) ON DELETE CASCADE;


--
-- Name: seal_inspections fk_seal_inspections_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.seal_inspections
    ADD CONSTRAINT fk_seal_inspections_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: seal_inspections fk_seal_inspections_people_inspected_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.seal_inspections
    ADD CONSTRAINT fk_seal_inspections_people_inspected_by FOREIGN KEY (inspected_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: seal_inspections fk_seal_inspections_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.seal_inspections
    ADD CONSTRAINT fk_seal_inspections_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: seal_inspections fk_seal_inspections_seal_inspections_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.seal_inspections
    ADD CONSTRAINT fk_seal_inspections_seal_inspections_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.seal_inspections(id) ON DELETE RESTRICT;


--
-- Name: second_person_marks fk_second_person_marks_engine_models_engine_model_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.second_person_marks
    ADD CONSTRAINT fk_second_person_marks_engine_models_engine_model_id FOREIGN KEY (engine_model_id) REFERENCES public.engine_models(id) ON DELETE RESTRICT;


--
-- Name: second_person_marks fk_second_person_marks_people_marked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.second_person_marks
    ADD CONSTRAINT fk_second_person_marks_people_marked_by FOREIGN KEY (marked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: sessions fk_sessions_accounts_account_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sessions
    ADD CONSTRAINT fk_sessions_accounts_account_id FOREIGN KEY (account_id) REFERENCES public.accounts(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_instruments_micrometer_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_instruments_micrometer_id FOREIGN KEY (micrometer_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_people_measured_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_people_measured_by FOREIGN KEY (measured_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_reading_imports_import_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_reading_imports_import_id FOREIGN KEY (import_id) REFERENCES public.reading_imports(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: shim_observations fk_shim_observations_shim_observations_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_observations
    ADD CONSTRAINT fk_shim_observations_shim_observations_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.shim_observations(id) ON DELETE RESTRICT;


--
-- Name: shim_plan_choices fk_shim_plan_choices_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_plan_choices
    ADD CONSTRAINT fk_shim_plan_choices_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: shim_plan_choices fk_shim_plan_choices_people_chosen_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_plan_choices
    ADD CONSTRAINT fk_shim_plan_choices_people_chosen_by FOREIGN KEY (chosen_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: shim_series fk_shim_series_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_series
    ADD CONSTRAINT fk_shim_series_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: shim_series fk_shim_series_storage_places_place_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shim_series
    ADD CONSTRAINT fk_shim_series_storage_places_place_id FOREIGN KEY (place_id) REFERENCES public.storage_places(id) ON DELETE RESTRICT;


--
-- Name: shims fk_shims_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shims
    ADD CONSTRAINT fk_shims_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: shims fk_shims_job_cards_bench_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shims
    ADD CONSTRAINT fk_shims_job_cards_bench_card_number FOREIGN KEY (bench_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: shims fk_shims_motorcycles_came_from_motorcycle_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shims
    ADD CONSTRAINT fk_shims_motorcycles_came_from_motorcycle_id FOREIGN KEY (came_from_motorcycle_id) REFERENCES public.motorcycles(id) ON DELETE RESTRICT;


--
-- Name: shims fk_shims_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shims
    ADD CONSTRAINT fk_shims_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: shims fk_shims_storage_places_place_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.shims
    ADD CONSTRAINT fk_shims_storage_places_place_id FOREIGN KEY (place_id) REFERENCES public.storage_places(id) ON DELETE RESTRICT;


--
-- Name: sign_offs fk_sign_offs_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sign_offs
    ADD CONSTRAINT fk_sign_offs_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: sign_offs fk_sign_offs_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sign_offs
    ADD CONSTRAINT fk_sign_offs_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: sign_offs fk_sign_offs_people_signed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sign_offs
    ADD CONSTRAINT fk_sign_offs_people_signed_by FOREIGN KEY (signed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: sign_offs fk_sign_offs_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.sign_offs
    ADD CONSTRAINT fk_sign_offs_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: specification_drafts fk_specification_drafts_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.specification_drafts
    ADD CONSTRAINT fk_specification_drafts_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: stock_balances fk_stock_balances_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_balances
    ADD CONSTRAINT fk_stock_balances_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: stock_balances fk_stock_balances_stock_lots_lot_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_balances
    ADD CONSTRAINT fk_stock_balances_stock_lots_lot_id FOREIGN KEY (lot_id) REFERENCES public.stock_lots(id) ON DELETE RESTRICT;


--
-- Name: stock_balances fk_stock_balances_storage_places_place_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_balances
    ADD CONSTRAINT fk_stock_balances_storage_places_place_id FOREIGN KEY (place_id) REFERENCES public.storage_places(id) ON DELETE RESTRICT;


--
-- Name: stock_count_lines fk_stock_count_lines_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT fk_stock_count_lines_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: stock_count_lines fk_stock_count_lines_people_counted_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT fk_stock_count_lines_people_counted_by FOREIGN KEY (counted_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: stock_count_lines fk_stock_count_lines_people_explained_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT fk_stock_count_lines_people_explained_by FOREIGN KEY (explained_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: stock_count_lines fk_stock_count_lines_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT fk_stock_count_lines_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: stock_count_lines fk_stock_count_lines_stock_counts_count_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT fk_stock_count_lines_stock_counts_count_id FOREIGN KEY (count_id) REFERENCES public.stock_counts(id) ON DELETE RESTRICT;


--
-- Name: stock_count_lines fk_stock_count_lines_stock_lots_lot_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_count_lines
    ADD CONSTRAINT fk_stock_count_lines_stock_lots_lot_id FOREIGN KEY (lot_id) REFERENCES public.stock_lots(id) ON DELETE RESTRICT;


--
-- Name: stock_counts fk_stock_counts_people_closed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_counts
    ADD CONSTRAINT fk_stock_counts_people_closed_by FOREIGN KEY (closed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: stock_counts fk_stock_counts_people_started_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_counts
    ADD CONSTRAINT fk_stock_counts_people_started_by FOREIGN KEY (started_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: stock_counts fk_stock_counts_storage_places_place_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_counts
    ADD CONSTRAINT fk_stock_counts_storage_places_place_id FOREIGN KEY (place_id) REFERENCES public.storage_places(id) ON DELETE RESTRICT;


--
-- Name: stock_lots fk_stock_lots_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_lots
    ADD CONSTRAINT fk_stock_lots_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_parts_part_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_parts_part_id FOREIGN KEY (part_id) REFERENCES public.parts(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_people_moved_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_people_moved_by FOREIGN KEY (moved_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_purchase_order_lines_order_line_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_purchase_order_lines_order_line_id FOREIGN KEY (order_line_id) REFERENCES public.purchase_order_lines(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_shims_shim_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_shims_shim_id FOREIGN KEY (shim_id) REFERENCES public.shims(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_stock_counts_count_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_stock_counts_count_id FOREIGN KEY (count_id) REFERENCES public.stock_counts(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_stock_lots_lot_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_stock_lots_lot_id FOREIGN KEY (lot_id) REFERENCES public.stock_lots(id) ON DELETE RESTRICT;


--
-- Name: stock_movements fk_stock_movements_storage_places_place_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.stock_movements
    ADD CONSTRAINT fk_stock_movements_storage_places_place_id FOREIGN KEY (place_id) REFERENCES public.storage_places(id) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_people_rider_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_people_rider_id FOREIGN KEY (rider_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_remarks_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_remarks_words_remark_id FOREIGN KEY (words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: test_rides fk_test_rides_test_rides_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.test_rides
    ADD CONSTRAINT fk_test_rides_test_rides_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.test_rides(id) ON DELETE RESTRICT;


--
-- Name: tick_witnesses fk_tick_witnesses_fastener_ticks_tick_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.tick_witnesses
    ADD CONSTRAINT fk_tick_witnesses_fastener_ticks_tick_id FOREIGN KEY (tick_id) REFERENCES public.fastener_ticks(id) ON DELETE RESTRICT;


--
-- Name: tick_witnesses fk_tick_witnesses_people_witnessed_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.tick_witnesses
    ADD CONSTRAINT fk_tick_witnesses_people_witnessed_by FOREIGN KEY (witnessed_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: valve_events fk_valve_events_engines_engine_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.valve_events
    ADD CONSTRAINT fk_valve_events_engines_engine_id FOREIGN KEY (engine_id) REFERENCES public.engines(id) ON DELETE RESTRICT;


--
-- Name: valve_events fk_valve_events_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.valve_events
    ADD CONSTRAINT fk_valve_events_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: valve_events fk_valve_events_odometer_readings_odometer_reading_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.valve_events
    ADD CONSTRAINT fk_valve_events_odometer_readings_odometer_reading_id FOREIGN KEY (odometer_reading_id) REFERENCES public.odometer_readings(id) ON DELETE RESTRICT;


--
-- Name: valve_events fk_valve_events_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.valve_events
    ADD CONSTRAINT fk_valve_events_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: valve_events fk_valve_events_reading_imports_import_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.valve_events
    ADD CONSTRAINT fk_valve_events_reading_imports_import_id FOREIGN KEY (import_id) REFERENCES public.reading_imports(id) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_instruments_wrench_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_instruments_wrench_id FOREIGN KEY (wrench_id) REFERENCES public.instruments(id) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_people_rechecked_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_people_rechecked_by FOREIGN KEY (rechecked_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_remarks_early_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_remarks_early_remark_id FOREIGN KEY (early_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_remarks_reason_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_remarks_reason_remark_id FOREIGN KEY (reason_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_remarks_words_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_remarks_words_remark_id FOREIGN KEY (words_remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: visit_rechecks fk_visit_rechecks_visit_rechecks_supersedes_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_rechecks
    ADD CONSTRAINT fk_visit_rechecks_visit_rechecks_supersedes_id FOREIGN KEY (supersedes_id) REFERENCES public.visit_rechecks(id) ON DELETE RESTRICT;


--
-- Name: visit_waits fk_visit_waits_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_waits
    ADD CONSTRAINT fk_visit_waits_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: visit_waits fk_visit_waits_people_entered_by; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_waits
    ADD CONSTRAINT fk_visit_waits_people_entered_by FOREIGN KEY (entered_by) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: visit_waits fk_visit_waits_remarks_remark_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_waits
    ADD CONSTRAINT fk_visit_waits_remarks_remark_id FOREIGN KEY (remark_id) REFERENCES public.remarks(id) ON DELETE RESTRICT;


--
-- Name: visit_wishes fk_visit_wishes_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_wishes
    ADD CONSTRAINT fk_visit_wishes_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: visit_wishes fk_visit_wishes_resources_bay_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_wishes
    ADD CONSTRAINT fk_visit_wishes_resources_bay_id FOREIGN KEY (bay_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: visit_wishes fk_visit_wishes_resources_technician_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.visit_wishes
    ADD CONSTRAINT fk_visit_wishes_resources_technician_id FOREIGN KEY (technician_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: work_breaks fk_work_breaks_resources_resource_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.work_breaks
    ADD CONSTRAINT fk_work_breaks_resources_resource_id FOREIGN KEY (resource_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: work_spells fk_work_spells_job_cards_job_card_number; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.work_spells
    ADD CONSTRAINT fk_work_spells_job_cards_job_card_number FOREIGN KEY (job_card_number) REFERENCES public.job_cards(number) ON DELETE RESTRICT;


--
-- Name: work_spells fk_work_spells_people_person_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.work_spells
    ADD CONSTRAINT fk_work_spells_people_person_id FOREIGN KEY (person_id) REFERENCES public.people(id) ON DELETE RESTRICT;


--
-- Name: working_hours fk_working_hours_resources_resource_id; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.working_hours
    ADD CONSTRAINT fk_working_hours_resources_resource_id FOREIGN KEY (resource_id) REFERENCES public.resources(id) ON DELETE RESTRICT;


--
-- Name: SCHEMA public; Type: ACL; Schema: -; Owner: -
--

GRANT USAGE ON SCHEMA public TO workshop_service;


--
-- Name: TABLE "__EFMigrationsHistory"; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT ON TABLE public."__EFMigrationsHistory" TO workshop_service;


--
-- Name: TABLE absences; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.absences TO workshop_service;


--
-- Name: TABLE account_claims; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.account_claims TO workshop_service;


--
-- Name: SEQUENCE account_claims_id_seq; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.account_claims_id_seq TO workshop_service;


--
-- Name: TABLE account_logins; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.account_logins TO workshop_service;


--
-- Name: TABLE account_roles; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.account_roles TO workshop_service;


--
-- Name: TABLE account_tokens; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.account_tokens TO workshop_service;


--
-- Name: TABLE accounts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.accounts TO workshop_service;


--
-- Name: TABLE arrival_notes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.arrival_notes TO workshop_service;


--
-- Name: TABLE as_left_marks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.as_left_marks TO workshop_service;


--
-- Name: TABLE as_left_witnesses; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.as_left_witnesses TO workshop_service;


--
-- Name: TABLE audit_rows; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT ON TABLE public.audit_rows TO workshop_service;


--
-- Name: SEQUENCE audit_rows_id_seq; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.audit_rows_id_seq TO workshop_service;


--
-- Name: TABLE balance_runs; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.balance_runs TO workshop_service;


--
-- Name: TABLE balance_vacuums; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.balance_vacuums TO workshop_service;


--
-- Name: TABLE blade_checks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.blade_checks TO workshop_service;


--
-- Name: TABLE calendar_feeds; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.calendar_feeds TO workshop_service;


--
-- Name: TABLE calibrations; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.calibrations TO workshop_service;


--
-- Name: TABLE cam_rechecks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.cam_rechecks TO workshop_service;


--
-- Name: TABLE cam_timing_checks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.cam_timing_checks TO workshop_service;


--
-- Name: TABLE cam_timing_readings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.cam_timing_readings TO workshop_service;


--
-- Name: TABLE cancellations; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.cancellations TO workshop_service;


--
-- Name: TABLE caution_acknowledgements; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.caution_acknowledgements TO workshop_service;


--
-- Name: TABLE chain_changes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.chain_changes TO workshop_service;


--
-- Name: TABLE chain_readings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.chain_readings TO workshop_service;


--
-- Name: TABLE check_ins; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.check_ins TO workshop_service;


--
-- Name: TABLE clearance_forecasts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.clearance_forecasts TO workshop_service;


--
-- Name: TABLE clearance_readings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.clearance_readings TO workshop_service;


--
-- Name: TABLE comebacks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.comebacks TO workshop_service;


--
-- Name: TABLE consents; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.consents TO workshop_service;


--
-- Name: TABLE contacts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.contacts TO workshop_service;


--
-- Name: TABLE count_explanations; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.count_explanations TO workshop_service;


--
-- Name: TABLE count_taps; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.count_taps TO workshop_service;


--
-- Name: TABLE cylinder_tests; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.cylinder_tests TO workshop_service;


--
-- Name: TABLE data_protection_keys; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.data_protection_keys TO workshop_service;


--
-- Name: SEQUENCE data_protection_keys_id_seq; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.data_protection_keys_id_seq TO workshop_service;


--
-- Name: TABLE done_items; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.done_items TO workshop_service;


--
-- Name: TABLE drift_fits; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.drift_fits TO workshop_service;


--
-- Name: TABLE drift_pools; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.drift_pools TO workshop_service;


--
-- Name: TABLE drift_refits; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.drift_refits TO workshop_service;


--
-- Name: TABLE due_items; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.due_items TO workshop_service;


--
-- Name: TABLE due_recomputes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.due_recomputes TO workshop_service;


--
-- Name: TABLE due_visits; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.due_visits TO workshop_service;


--
-- Name: TABLE engine_fittings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.engine_fittings TO workshop_service;


--
-- Name: TABLE engine_model_versions; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.engine_model_versions TO workshop_service;


--
-- Name: TABLE engine_models; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.engine_models TO workshop_service;


--
-- Name: TABLE engine_outlooks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.engine_outlooks TO workshop_service;


--
-- Name: TABLE engine_stops; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.engine_stops TO workshop_service;


--
-- Name: TABLE engines; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.engines TO workshop_service;


--
-- Name: TABLE estimate_answers; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.estimate_answers TO workshop_service;


--
-- Name: TABLE estimate_lines; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.estimate_lines TO workshop_service;


--
-- Name: TABLE estimates; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.estimates TO workshop_service;


--
-- Name: TABLE expected_deliveries; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.expected_deliveries TO workshop_service;


--
-- Name: TABLE fastener_ticks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.fastener_ticks TO workshop_service;


--
-- Name: TABLE feeler_blades; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.feeler_blades TO workshop_service;


--
-- Name: TABLE findings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.findings TO workshop_service;


--
-- Name: TABLE fleet_ridings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.fleet_ridings TO workshop_service;


--
-- Name: TABLE gauge_trial_appraisers; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.gauge_trial_appraisers TO workshop_service;


--
-- Name: TABLE gauge_trial_readings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.gauge_trial_readings TO workshop_service;


--
-- Name: TABLE gauge_trials; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.gauge_trials TO workshop_service;


--
-- Name: TABLE goods_in_imports; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.goods_in_imports TO workshop_service;


--
-- Name: TABLE hand_turns; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.hand_turns TO workshop_service;


--
-- Name: TABLE history_imports; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.history_imports TO workshop_service;


--
-- Name: TABLE holidays; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.holidays TO workshop_service;


--
-- Name: TABLE instrument_events; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.instrument_events TO workshop_service;


--
-- Name: TABLE instruments; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.instruments TO workshop_service;


--
-- Name: TABLE issued_records; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.issued_records TO workshop_service;


--
-- Name: COLUMN issued_records.words; Type: ACL; Schema: public; Owner: -
--

GRANT UPDATE(words) ON TABLE public.issued_records TO workshop_service;


--
-- Name: TABLE job_card_items; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.job_card_items TO workshop_service;


--
-- Name: TABLE job_cards; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.job_cards TO workshop_service;


--
-- Name: SEQUENCE job_cards_number_seq; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.job_cards_number_seq TO workshop_service;


--
-- Name: TABLE kit_substitutions; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.kit_substitutions TO workshop_service;


--
-- Name: TABLE leak_looks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.leak_looks TO workshop_service;


--
-- Name: TABLE left_out_visits; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.left_out_visits TO workshop_service;


--
-- Name: TABLE message_templates; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.message_templates TO workshop_service;


--
-- Name: TABLE motorcycle_moves; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.motorcycle_moves TO workshop_service;


--
-- Name: TABLE motorcycles; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.motorcycles TO workshop_service;


--
-- Name: TABLE occupancies; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.occupancies TO workshop_service;


--
-- Name: TABLE odometer_readings; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.odometer_readings TO workshop_service;


--
-- Name: TABLE odometers; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.odometers TO workshop_service;


--
-- Name: TABLE opening_hours; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.opening_hours TO workshop_service;


--
-- Name: TABLE outbox_messages; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.outbox_messages TO workshop_service;


--
-- Name: TABLE part_alternatives; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.part_alternatives TO workshop_service;


--
-- Name: TABLE part_changes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.part_changes TO workshop_service;


--
-- Name: TABLE part_scan_codes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.part_scan_codes TO workshop_service;


--
-- Name: TABLE part_supplies; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.part_supplies TO workshop_service;


--
-- Name: TABLE parts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.parts TO workshop_service;


--
-- Name: TABLE people; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.people TO workshop_service;


--
-- Name: TABLE phase_starts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.phase_starts TO workshop_service;


--
-- Name: TABLE photos; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.photos TO workshop_service;


--
-- Name: TABLE planned_phases; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.planned_phases TO workshop_service;


--
-- Name: TABLE plug_checks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.plug_checks TO workshop_service;


--
-- Name: TABLE position_confirmations; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.position_confirmations TO workshop_service;


--
-- Name: TABLE purchase_order_lines; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.purchase_order_lines TO workshop_service;


--
-- Name: TABLE purchase_orders; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.purchase_orders TO workshop_service;


--
-- Name: SEQUENCE purchase_orders_number_seq; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.purchase_orders_number_seq TO workshop_service;


--
-- Name: TABLE put_offs; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.put_offs TO workshop_service;


--
-- Name: COLUMN put_offs.reason; Type: ACL; Schema: public; Owner: -
--

GRANT UPDATE(reason) ON TABLE public.put_offs TO workshop_service;


--
-- Name: TABLE reading_imports; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.reading_imports TO workshop_service;


--
-- Name: TABLE record_links; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,UPDATE ON TABLE public.record_links TO workshop_service;


--
-- Name: TABLE remarks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.remarks TO workshop_service;


--
-- Name: TABLE reminder_resets; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.reminder_resets TO workshop_service;


--
-- Name: TABLE resources; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.resources TO workshop_service;


--
-- Name: TABLE role_claims; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.role_claims TO workshop_service;


--
-- Name: SEQUENCE role_claims_id_seq; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.role_claims_id_seq TO workshop_service;


--
-- Name: TABLE roles; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.roles TO workshop_service;


--
-- Name: TABLE seal_inspections; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.seal_inspections TO workshop_service;


--
-- Name: TABLE second_person_marks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.second_person_marks TO workshop_service;


--
-- Name: TABLE sessions; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.sessions TO workshop_service;


--
-- Name: TABLE shim_observations; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.shim_observations TO workshop_service;


--
-- Name: TABLE shim_plan_choices; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.shim_plan_choices TO workshop_service;


--
-- Name: TABLE shim_series; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.shim_series TO workshop_service;


--
-- Name: TABLE shims; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT ON TABLE public.shims TO workshop_service;


--
-- Name: TABLE sign_offs; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.sign_offs TO workshop_service;


--
-- Name: TABLE specification_drafts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.specification_drafts TO workshop_service;


--
-- Name: TABLE stock_balances; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT ON TABLE public.stock_balances TO workshop_service;


--
-- Name: TABLE stock_count_lines; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.stock_count_lines TO workshop_service;


--
-- Name: TABLE stock_counts; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.stock_counts TO workshop_service;


--
-- Name: TABLE stock_movements; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.stock_movements TO workshop_service;


--
-- Name: TABLE stock_differences; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.stock_differences TO workshop_service;


--
-- Name: TABLE stock_lots; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.stock_lots TO workshop_service;


--
-- Name: SEQUENCE storage_place_codes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,USAGE ON SEQUENCE public.storage_place_codes TO workshop_service;


--
-- Name: TABLE storage_places; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.storage_places TO workshop_service;


--
-- Name: TABLE stored_answers; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.stored_answers TO workshop_service;


--
-- Name: TABLE suppliers; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.suppliers TO workshop_service;


--
-- Name: TABLE tax_rates; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.tax_rates TO workshop_service;


--
-- Name: TABLE test_rides; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.test_rides TO workshop_service;


--
-- Name: TABLE tick_witnesses; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.tick_witnesses TO workshop_service;


--
-- Name: TABLE valve_events; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.valve_events TO workshop_service;


--
-- Name: TABLE visit_rechecks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT ON TABLE public.visit_rechecks TO workshop_service;


--
-- Name: TABLE visit_waits; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.visit_waits TO workshop_service;


--
-- Name: TABLE visit_wishes; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.visit_wishes TO workshop_service;


--
-- Name: TABLE work_breaks; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.work_breaks TO workshop_service;


--
-- Name: TABLE work_spells; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.work_spells TO workshop_service;


--
-- Name: TABLE working_hours; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.working_hours TO workshop_service;


--
-- Name: TABLE workshop_profiles; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.workshop_profiles TO workshop_service;


--
-- Name: TABLE wrench_adapters; Type: ACL; Schema: public; Owner: -
--

GRANT SELECT,INSERT,DELETE,UPDATE ON TABLE public.wrench_adapters TO workshop_service;


--
-- Name: DEFAULT PRIVILEGES FOR SEQUENCES; Type: DEFAULT ACL; Schema: public; Owner: -
--



--
-- Name: DEFAULT PRIVILEGES FOR TABLES; Type: DEFAULT ACL; Schema: public; Owner: -
--



--
-- PostgreSQL database dump complete
--


