-- Copies every motorcycle of a demo database :copies times, with its engine, odometer, readings, shims and what was done: a large
-- fleet to measure with. Copies have no job cards; ids follow from the original's, so that references stay together.
\set ON_ERROR_STOP on
create function pg_temp.copy_of(id uuid, copy int) returns uuid language sql immutable as
  $$ select md5(id::text || '/' || copy)::uuid $$;

begin;
-- Stock, audit and what is only ever added keep triggers that these rows do not concern.
set local session_replication_role = replica;

insert into motorcycles
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'registration', 'F' || copy || '-' || right(o.registration, 3), 'vin', null))).*
from motorcycles o, generate_series(1, :copies) copy;

insert into engines
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'serial_number', o.serial_number || '-' || copy))).*
from engines o, generate_series(1, :copies) copy;

insert into engine_fittings
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'engine_id', pg_temp.copy_of(o.engine_id, copy),
  'motorcycle_id', pg_temp.copy_of(o.motorcycle_id, copy)))).*
from engine_fittings o, generate_series(1, :copies) copy;

insert into odometers
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'motorcycle_id', pg_temp.copy_of(o.motorcycle_id, copy)))).*
from odometers o, generate_series(1, :copies) copy;

insert into odometer_readings
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'odometer_id', pg_temp.copy_of(o.odometer_id, copy),
  'motorcycle_id', pg_temp.copy_of(o.motorcycle_id, copy), 'job_card_number', null,
  'supersedes_id', pg_temp.copy_of(o.supersedes_id, copy)))).*
from odometer_readings o, generate_series(1, :copies) copy;

insert into clearance_readings
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'engine_id', pg_temp.copy_of(o.engine_id, copy),
  'odometer_reading_id', pg_temp.copy_of(o.odometer_reading_id, copy), 'job_card_number', null,
  'supersedes_id', pg_temp.copy_of(o.supersedes_id, copy)))).*
from clearance_readings o, generate_series(1, :copies) copy;

insert into shim_observations
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'engine_id', pg_temp.copy_of(o.engine_id, copy),
  'odometer_reading_id', pg_temp.copy_of(o.odometer_reading_id, copy), 'job_card_number', null,
  'supersedes_id', pg_temp.copy_of(o.supersedes_id, copy)))).*
from shim_observations o, generate_series(1, :copies) copy;

insert into valve_events
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'engine_id', pg_temp.copy_of(o.engine_id, copy),
  'odometer_reading_id', pg_temp.copy_of(o.odometer_reading_id, copy), 'job_card_number', null))).*
from valve_events o, generate_series(1, :copies) copy;

insert into done_items
select (jsonb_populate_record(o, jsonb_build_object(
  'id', pg_temp.copy_of(o.id, copy), 'motorcycle_id', pg_temp.copy_of(o.motorcycle_id, copy), 'job_card_number', null))).*
from done_items o, generate_series(1, :copies) copy;
commit;
analyze;
