-- Fills a demo database up to a busy workshop to measure with: 8 bays, 12 technicians, 10 parking places, and 2,000 visits over the
-- next 90 days, each with arrival, work, warm run, test ride and hand-over; the first of a bay's day soaks overnight. All invented.
\set ON_ERROR_STOP on
begin;
set local session_replication_role = replica;
create function pg_temp.key(word text) returns uuid language sql immutable as $$ select md5(word)::uuid $$;

update opening_hours set closes_at = '17:30';
delete from holidays;
delete from absences;
update occupancies set live = false where upper(span) > now();
update job_cards set state = 'cancelled' where state in ('booked', 'checked_in');

insert into people (id, name, is_staff) select pg_temp.key('person ' || n), 'Busy ' || n, true from generate_series(1, 7) n;
insert into resources (id, kind, name, capabilities, retired, person_id)
select pg_temp.key('bay ' || n), 'bay', 'Bay ' || n, array['lift', 'exhaust extraction'], false, null::uuid from generate_series(4, 8) n
union all
select pg_temp.key('technician ' || n), 'technician', 'T' || n, array['valve work', 'service', 'brakes'], false, pg_temp.key('person ' || n) from generate_series(1, 7) n
union all
select pg_temp.key('place ' || n), 'parking_place', 'Stand ' || n, array[]::text[], false, null from generate_series(5, 10) n;
insert into work_breaks (id, resource_id, weekday, starts_at, ends_at)
select pg_temp.key('break ' || r.id || d), r.id, d, '12:15', '12:45' from resources r, generate_series(1, 5) d where r.kind = 'technician';

create temp table kinds on commit drop as
  select id, kind, (row_number() over (partition by kind order by name) - 1)::int as place from resources where not retired;
create temp table days on commit drop as
  select day, lag(day) over (order by day) as before from (
    select d::date as day from generate_series(current_date, current_date + 89, interval '1 day') d
    where extract(isodow from d) <= 5) open_days;
create temp table riders on commit drop as
  select f.motorcycle_id, f.engine_id, m.id as version_id, (row_number() over (order by f.motorcycle_id) - 1)::int as place
  from engine_fittings f join engines e on e.id = f.engine_id
  join lateral (select v.id from engine_model_versions v where v.engine_model_id = e.engine_model_id order by v.version desc limit 1) m on true
  where f.removed_on is null;
create temp table visits on commit drop as
  select 100000 + row_number() over (order by day, slot, bay)::int as number, day, before, slot, bay,
    (day + (array['08:00', '10:15', '12:45', '15:00'])[slot + 1]::time) at time zone 'Europe/Vienna' as starts
  from days, generate_series(0, 3) slot, generate_series(0, 7) bay
  order by 1 limit 2000;

insert into job_cards (number, motorcycle_id, engine_id, engine_model_version_id, state, booked_by, booked_at, starts_at, ends_at, plan_revision)
overriding system value
select v.number, r.motorcycle_id, r.engine_id, r.version_id, 'booked', (select id from people where is_staff order by id limit 1), now(),
  case when v.slot = 0 and v.before is not null then (v.before + time '17:00') at time zone 'Europe/Vienna' else v.starts - interval '15 minutes' end,
  v.starts + interval '135 minutes', 0
from visits v join riders r on r.place = v.number % (select count(*) from riders);

create temp table phases on commit drop as
  select number, 'work' as phase, starts as begins, starts + interval '95 minutes' as ends from visits
  union all select number, 'warm_run', starts + interval '95 minutes', starts + interval '105 minutes' from visits
  union all select number, 'test_ride', starts + interval '105 minutes', starts + interval '120 minutes' from visits
  union all select number, 'hand_over', starts + interval '120 minutes', starts + interval '135 minutes' from visits
  union all select number, 'cold_soak', ((before + time '17:15') at time zone 'Europe/Vienna'), starts from visits where slot = 0 and before is not null
  union all select number, 'arrival', ((before + time '17:00') at time zone 'Europe/Vienna'), ((before + time '17:15') at time zone 'Europe/Vienna')
    from visits where slot = 0 and before is not null
  union all select number, 'arrival', starts - interval '15 minutes', starts from visits where slot > 0 or before is null;
insert into planned_phases (job_card_number, phase, span) select number, phase, tstzrange(begins, ends) from phases;

insert into occupancies (id, job_card_number, phase, resource_id, span, live)
select pg_temp.key('occupancy ' || p.number || p.phase || k.kind), p.number, p.phase, k.id, tstzrange(p.begins, p.ends), true
from phases p join visits v on v.number = p.number
join kinds k on (k.kind = 'bay' and k.place = v.bay and p.phase in ('work', 'warm_run', 'test_ride'))
  or (k.kind = 'technician' and k.place = (v.bay + 8 * v.slot) % 12 and p.phase in ('work', 'warm_run', 'test_ride'))
  or (k.kind = 'parking_place' and k.place = v.bay and p.phase = 'cold_soak');
commit;
analyze;
