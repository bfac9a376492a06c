-- 500 visits in the next 80 days: copies of the demo's visits, of every engine model, with the items that those had. Six in ten hold
-- their kit's first lines as reserved movements do; nothing is taken of bays, which the projection does not read.
begin;
set local workshop.request = 'benchmark';
create temporary table model_of as
  select c.number, c.motorcycle_id, c.engine_id, c.engine_model_version_id, row_number() over (order by c.number) - 1 as at
  from job_cards c where c.state = 'signed_off' and exists (select from job_card_items i where i.job_card_number = c.number);
create temporary table added as
  select g as at, m.number as from_number, m.motorcycle_id, m.engine_id, m.engine_model_version_id,
    date_trunc('day', now()) + make_interval(days => 1 + g % 80, hours => 8) as starts_at
  from generate_series(1, 500) g join model_of m on m.at = (g * 7) % (select count(*) from model_of);
alter table added add column number int;
with made as (
  insert into job_cards (motorcycle_id, engine_id, engine_model_version_id, state, booked_by, booked_at, starts_at, ends_at, plan_revision)
  select a.motorcycle_id, a.engine_id, a.engine_model_version_id, 'booked', (select id from people where is_staff order by id limit 1), now(),
    a.starts_at + make_interval(secs => a.at), a.starts_at + make_interval(hours => 4), 0
  from added a order by a.at returning number, starts_at, motorcycle_id)
update added a set number = made.number from made
  where made.starts_at = a.starts_at + make_interval(secs => a.at) and made.motorcycle_id = a.motorcycle_id;
insert into job_card_items (job_card_number, service_item_code, likelihood)
  select a.number, i.service_item_code, i.likelihood from added a join job_card_items i on i.job_card_number = a.from_number;
insert into planned_phases (job_card_number, phase, span)
  select a.number, 'work', tstzrange(a.starts_at, a.starts_at + interval '3 hours') from added a;
commit;
analyze;
