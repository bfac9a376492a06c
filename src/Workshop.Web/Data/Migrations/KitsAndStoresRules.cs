using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>What the database keeps by itself of kits, stores, orders, tools and estimates.</summary>
    public partial class KitsAndStores
    {
        private static void KeepRules(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(BalanceByLot);
            migrationBuilder.Sql(CyclesOfTicks);
            migrationBuilder.Sql(StockRules.WhereNothingMayLie);
            migrationBuilder.Sql(StockRules.Differences);
            migrationBuilder.Sql(
                """
                alter table parts disable trigger audit; -- a default, no person's change
                update parts set fitted_once = true where kind in ('sealing_ring', 'fastener_used_once');
                alter table parts enable trigger audit;
                select keep_append_only(t) from unnest(array[
                  'stock_count_lines', 'seal_inspections', 'kit_substitutions', 'calibrations', 'instrument_events',
                  'tick_witnesses', 'gauge_trial_readings', 'blade_checks', 'estimates', 'estimate_lines', 'estimate_answers',
                  'cam_timing_checks', 'cam_timing_readings', 'chain_readings', 'chain_changes', 'cam_rechecks']) t;
                select keep_audit(t, false) from unnest(array[
                  'part_alternatives', 'part_scan_codes', 'stock_lots', 'suppliers', 'part_supplies', 'purchase_orders',
                  'purchase_order_lines', 'wrench_adapters', 'gauge_trials', 'gauge_trial_appraisers', 'second_person_marks', 'tax_rates', 'findings']) t;
                """);
            migrationBuilder.Sql(
                """
                select keep_append_only('position_confirmations');
                select keep_audit('work_spells', false);
                alter table work_spells add constraint ex_work_spells_no_overlap
                  exclude using gist (person_id with =, tstzrange(started_at, ended_at) with &&);
                """);
        }

        // Ticks from before cycles were counted: all alike, at each stage and at the final torque, by the version that the card pinned.
        private const string CyclesOfTicks =
            """
            alter table fastener_ticks disable trigger user;
            update fastener_ticks tick
              set cycles = (fastener ->> 'count')::int * (1 + case jsonb_typeof(fastener -> 'stagesNm') when 'array' then jsonb_array_length(fastener -> 'stagesNm') else 0 end)
              from job_cards card
                join engine_model_versions version on version.id = card.engine_model_version_id
                cross join lateral jsonb_array_elements(version.specification -> 'fasteners') fastener
              where card.number = tick.job_card_number and fastener ->> 'code' = tick.fastener_code and tick.tightened;
            alter table fastener_ticks enable trigger user;
            """;

        // The update comes first: an insert of a negative balance would fail its check before the conflict is looked for.
        private const string BalanceByLot =
            """
            create or replace function move_stock_balance() returns trigger language plpgsql security definer set search_path = public, pg_temp as $$
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
            """;
    }
}
