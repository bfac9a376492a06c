-- Makes :motorcycles motorcycles of one engine model with six service items, each with an owner, eight odometer readings over some
-- four years and what was done last: a large fleet to measure Due with. Nothing here is random: figures follow from the number.
\set ON_ERROR_STOP on
begin;
-- Audit and what is only ever added keep triggers that these rows do not concern.
set local session_replication_role = replica;

create temp table bench_model on commit drop as
select gen_random_uuid() id, gen_random_uuid() version_id, v.created_by,
  jsonb_set(v.specification, '{serviceItems}', (
    select jsonb_agg(item order by place) from (
      select item, place from jsonb_array_elements(v.specification -> 'serviceItems') with ordinality i (item, place)
      where item -> 'interval' <> 'null' order by place limit 6) six)) specification
from engine_models m join engine_model_versions v on v.engine_model_id = m.id and v.version = m.current_version
where v.specification ->> 'valveTrain' = 'shimUnderBucket' limit 1;

insert into engine_models (id, maker, name, invented, current_version) select id, 'Measured', 'Fleet', true, 1 from bench_model;
insert into engine_model_versions (id, engine_model_id, version, specification, created_by, created_at)
select version_id, id, 1, specification, created_by, now() from bench_model;

create temp table bench on commit drop as
select n, gen_random_uuid() id, gen_random_uuid() owner, gen_random_uuid() engine, gen_random_uuid() odometer,
  current_date - 1300 - n % 400 since, 4 + (n * 7919) % 37 km_a_day
from generate_series(1, :motorcycles) n;

insert into people (id, name, is_staff) select owner, 'Owner ' || n, false from bench;
insert into motorcycles (id, registration, maker, model, model_year, owner_id, retired)
select id, 'M-' || n, 'Measured', 'Fleet', 2022, owner, false from bench;
insert into engines (id, engine_model_id, serial_number) select engine, (select id from bench_model), 'M-' || n from bench;
insert into engine_fittings (id, engine_id, motorcycle_id, fitted_on, motorcycle_metres, engine_metres)
select gen_random_uuid(), engine, id, since, 0, 0 from bench;
insert into odometers (id, motorcycle_id, unit, fitted_on, offset_metres) select odometer, id, 'kilometres', since, 0 from bench;
insert into odometer_readings (id, odometer_id, motorcycle_id, read_on, count, unit, metres, measured_by, entered_by, entered_at)
select gen_random_uuid(), odometer, b.id, since + days, km, 'kilometres', km * 1000, created_by, created_by, now()
from bench b, bench_model, generate_series(1, 8) r,
  lateral (select r * 155 + (n * r) % 40 as days) d, lateral (select km_a_day * days + (n * 31 + r * 17) % 300 as km) k;
insert into done_items (id, motorcycle_id, service_item_code, done_on, metres, done_by, entered_at)
select gen_random_uuid(), b.id, item ->> 'code', since + days, (km_a_day * days)::bigint * 1000, created_by, now()
from bench b, bench_model m, jsonb_array_elements(m.specification -> 'serviceItems') with ordinality i (item, place),
  lateral (select 700 + (n * place::int) % 500 as days) d
where (n + place) % 5 > 0;
commit;
analyze;
