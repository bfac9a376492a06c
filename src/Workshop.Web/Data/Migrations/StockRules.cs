namespace Workshop.Web.Data.Migrations
{
    /// <summary>What the database keeps by itself of stock: where nothing may lie, and whether ledger and balances agree.</summary>
    internal static class StockRules
    {
        // Locks the rows that it asks: whoever retires the place or merges the part locks them for update, and either waits for this
        // movement or makes it wait, and then it sees what became of them.
        public const string WhereNothingMayLie =
            """
            create function refuse_stock_of_what_is_gone() returns trigger language plpgsql as $$
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
            create trigger a_refuse_gone before insert on stock_movements for each row
              when (new.on_hand_change > 0 or new.reserved_change > 0) execute function refuse_stock_of_what_is_gone();
            select keep_append_only('goods_in_imports');
            select keep_audit('stock_counts', false);
            """;

        // One row for each balance that is not the sum of its movements, and for each shim that is not where the balances say.
        public const string Differences =
            """
            create view stock_differences as
              with ledger as (
                select part_id, place_id, thickness_mm, condition, lot_id, sum(on_hand_change) as on_hand, sum(reserved_change) as reserved
                from stock_movements group by part_id, place_id, thickness_mm, condition, lot_id),
              both_sides as (
                select part_id, place_id, thickness_mm, condition, lot_id, on_hand, reserved, 0.0 as balance_on_hand, 0.0 as balance_reserved from ledger
                union all
                select part_id, place_id, thickness_mm, condition, lot_id, 0, 0, on_hand, reserved from stock_balances)
              select part_id, place_id, thickness_mm, condition, lot_id,
                     sum(on_hand) as ledger_on_hand, sum(balance_on_hand) as balance_on_hand,
                     sum(reserved) as ledger_reserved, sum(balance_reserved) as balance_reserved
              from both_sides group by part_id, place_id, thickness_mm, condition, lot_id
              having sum(on_hand) <> sum(balance_on_hand) or sum(reserved) <> sum(balance_reserved)
              union all
              select coalesce(b.part_id, s.part_id), coalesce(b.place_id, s.place_id), coalesce(b.thickness_mm, s.thickness_mm),
                     coalesce(b.condition, s.condition), null, coalesce(s.there, 0), coalesce(b.on_hand, 0), 0, 0
              from (select * from stock_balances where thickness_mm is not null and on_hand <> 0) b
              full join (select part_id, place_id, thickness_mm, condition, count(*) as there from shims where place_id is not null
                         group by part_id, place_id, thickness_mm, condition) s
                on s.part_id = b.part_id and s.place_id = b.place_id and s.thickness_mm = b.thickness_mm and s.condition = b.condition
              where coalesce(s.there, 0) <> coalesce(b.on_hand, 0);
            """;
    }
}
