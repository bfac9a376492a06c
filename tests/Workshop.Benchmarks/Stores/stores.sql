-- Invented stores of many parts with a long ledger, into the demo's database. Psql variables: parts, each (movements of a part).
-- The triggers are off while the rows go in, since a million of them would take minutes; balances are then summed from the ledger,
-- and the database's own check has the last word.
\set ON_ERROR_STOP on
begin;
set local session_replication_role = replica;

create temporary table who on commit drop as
  select (select id from people where is_staff order by name limit 1) as person,
         (select array_agg(number order by number) from job_cards where state in ('booked', 'checked_in')) as cards;

insert into storage_places (id, name, code, walk_order, retired)
  select gen_random_uuid(), 'Rack ' || n, 'R' || lpad(n::text, 3, '0'), 1000 + n, false from generate_series(1, 60) n;
create temporary table racks on commit drop as
  select id, row_number() over (order by code) - 1 as n from storage_places where code like 'R___';

insert into parts (id, code, name, kind, unit, inner_diameter_mm, section_mm, discontinued, fitted_once, stocked, reorder_point, shelf_life_months)
  select gen_random_uuid(), 'many-' || lpad(n::text, 6, '0'),
         (array['Sealing ring', 'O-ring', 'Gasket', 'Oil filter', 'Spark plug', 'Bolt, used once', 'Sealant', 'Fluid'])[1 + n % 8]
           || ' ' || (5 + n % 90) || ' x ' || (1 + n % 7) || ', invented ' || n,
         (array['sealing_ring', 'o_ring', 'gasket', 'general', 'spark_plug', 'fastener_used_once', 'sealant', 'fluid'])[1 + n % 8],
         case when n % 8 = 7 then 'millilitre' else 'piece' end, 5 + n % 90, 1 + n % 7, n % 97 = 0, n % 8 in (0, 5), n % 5 <> 0,
         case when n % 40 = 0 then 60 end, case when n % 8 in (6, 7) then 24 end
  from generate_series(1, :parts) n;
create temporary table many on commit drop as
  select id, substr(code, 6)::int as n, shelf_life_months is not null as by_lot from parts where code like 'many-%';
create index on many (n);

insert into part_scan_codes (code, part_id, quantity) select '9' || lpad((n * 7919 % 100000000)::text, 12, '0') || n, id, 1 + n % 10 from many;
insert into stock_lots (id, part_id, code, expires_on, received_on)
  select gen_random_uuid(), m.id, 'L' || l, current_date - 20 + (m.n * 13 + l * 301) % 700, current_date - 300
  from many m cross join generate_series(1, 2) l where m.by_lot;

-- Of five rows each: received, reserved, issued, reserved, and let go or kept. Every part lies in two racks.
insert into stock_movements (id, part_id, place_id, lot_id, kind, condition, on_hand_change, reserved_change, job_card_number, moved_by, moved_at)
  select gen_random_uuid(), m.id, r.id, case when m.by_lot then (select l.id from stock_lots l where l.part_id = m.id and l.code = 'L' || (1 + (i / 5) % 2)) end,
         (array['received', 'reserved', 'issued', 'reserved', 'released'])[1 + i % 5], 'new',
         (array[4, 0, -1, 0, 0])[1 + i % 5],
         case when i >= :each - 5 and i % 5 = 4 and m.n % 3 = 0 then 0 else (array[0, 1, -1, 1, -1])[1 + i % 5] end,
         case when i % 5 = 0 then null else w.cards[1 + (m.n + i / 5) % array_length(w.cards, 1)] end,
         w.person, now() - make_interval(mins => (:each - i) * 700 + m.n % 600)
  from many m cross join generate_series(0, :each - 1) i cross join who w
  join racks r on r.n = (m.n + (i / 5) % 2) % 60;

-- A rest that is reserved is kept by the card that reserved it: the row that lets nothing go is none.
-- One part in fifty is used up.
insert into stock_movements (id, part_id, place_id, lot_id, kind, condition, on_hand_change, reserved_change, moved_by, moved_at)
  select gen_random_uuid(), s.part_id, s.place_id, s.lot_id, 'scrapped', 'new', -s.free, 0, w.person, now()
  from (select part_id, place_id, lot_id, sum(on_hand_change - reserved_change) as free from stock_movements
        where part_id in (select id from many where n % 50 = 0) group by part_id, place_id, lot_id) s cross join who w
  where s.free > 0;

insert into stock_balances (id, part_id, place_id, condition, lot_id, on_hand, reserved)
  select gen_random_uuid(), part_id, place_id, condition, lot_id, sum(on_hand_change), sum(reserved_change)
  from stock_movements where part_id in (select id from many) group by part_id, place_id, condition, lot_id;
commit;
analyze;
select format('| rows: parts, movements, balances | %s, %s, %s |',
  (select count(*) from parts), (select count(*) from stock_movements), (select count(*) from stock_balances));
select format('| balances that are not the sum of their movements | %s |', (select count(*) from stock_differences));
