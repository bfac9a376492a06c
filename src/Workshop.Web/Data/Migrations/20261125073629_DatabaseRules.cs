using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>
    /// The rules that the database keeps by itself, whatever the code does. The functions made here serve later migrations
    /// too: <c>keep_append_only('table')</c>, <c>keep_audit('table', hide_values)</c>.
    /// </summary>
    public partial class DatabaseRules : Migration
    {
        private static readonly string[] AppendOnly =
        [
            "odometer_readings", "engine_model_versions", "done_items", "caution_acknowledgements", "sign_offs",
            "fastener_ticks", "clearance_readings", "valve_events", "part_changes", "reading_imports",
            "shim_observations", "stock_movements", "audit_rows",
        ];

        private static readonly string[] Audited =
        [
            "workshop_profiles", "opening_hours", "holidays", "engine_models", "motorcycles", "engines", "engine_fittings",
            "odometers", "resources", "occupancies", "job_cards", "job_card_items", "check_ins", "parts",
            "storage_places", "instruments", "feeler_blades", "account_roles",
        ];

        // Rows that name people: the audit says which columns changed, never to what, so that an erasure erases.
        private static readonly string[] AuditedWithoutValues = ["people", "remarks", "accounts"];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(ServiceRole);
            migrationBuilder.Sql(AppendOnlyRule);
            migrationBuilder.Sql(AuditRule);
            migrationBuilder.Sql(StockRule);
            migrationBuilder.Sql(NoOverlaps);

            foreach (var table in AppendOnly)
            {
                migrationBuilder.Sql($"select keep_append_only('{table}');");
            }

            foreach (var table in Audited)
            {
                migrationBuilder.Sql($"select keep_audit('{table}', false);");
            }

            foreach (var table in AuditedWithoutValues)
            {
                migrationBuilder.Sql($"select keep_audit('{table}', true);");
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            foreach (var table in AppendOnly)
            {
                migrationBuilder.Sql($"drop trigger append_only on {table}; drop trigger append_only_truncate on {table};");
            }

            foreach (var table in Audited.Concat(AuditedWithoutValues))
            {
                migrationBuilder.Sql($"drop trigger audit on {table};");
            }

            migrationBuilder.Sql(
                """
                drop trigger move_balance on stock_movements;
                alter table occupancies drop constraint ex_occupancies_no_overlap;
                alter table engine_fittings drop constraint ex_engine_fittings_one_engine;
                alter table engine_fittings drop constraint ex_engine_fittings_one_motorcycle;
                drop function keep_append_only(text);
                drop function keep_audit(text, boolean);
                drop function refuse_change();
                drop function write_audit();
                drop function move_stock_balance();
                """);
        }

        // Roles belong to the whole server, databases come and go: another database may be making the role right now.
        private const string ServiceRole =
            """
            do $$
            begin
              if not exists (select from pg_roles where rolname = 'workshop_service') then
                create role workshop_service nologin;
              end if;
              if not pg_has_role(current_user, 'workshop_service', 'MEMBER') then
                grant workshop_service to current_user;
              end if;
            exception when duplicate_object or unique_violation then
              null;
            end $$;
            grant usage on schema public to workshop_service;
            grant select, insert, update, delete on all tables in schema public to workshop_service;
            grant usage, select on all sequences in schema public to workshop_service;
            alter default privileges in schema public grant select, insert, update, delete on tables to workshop_service;
            alter default privileges in schema public grant usage, select on sequences to workshop_service;
            revoke insert, update, delete on "__EFMigrationsHistory" from workshop_service;
            """;

        private const string AppendOnlyRule =
            """
            create function refuse_change() returns trigger language plpgsql as $$
            begin
              raise exception 'rows of % are only ever added; a correction is a new row that supersedes the old one', tg_table_name
                using errcode = 'restrict_violation';
            end $$;

            create function keep_append_only(of_table text) returns void language plpgsql as $$
            begin
              execute format('create trigger append_only before update or delete on %I for each row execute function refuse_change()', of_table);
              execute format('create trigger append_only_truncate before truncate on %I for each statement execute function refuse_change()', of_table);
              execute format('revoke update, delete, truncate on %I from workshop_service', of_table);
            end $$;
            """;

        private const string AuditRule =
            """
            create function write_audit() returns trigger language plpgsql security definer set search_path = public, pg_temp as $$
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

            create function keep_audit(of_table text, hide_values boolean) returns void language plpgsql as $$
            begin
              execute format('create trigger audit after insert or update or delete on %I for each row execute function write_audit(%L)',
                of_table, hide_values::text);
            end $$;

            revoke insert, update, delete, truncate on audit_rows from workshop_service;
            """;

        // The update comes first: an insert of a negative balance would fail its check before the conflict is looked for.
        private const string StockRule =
            """
            create function move_stock_balance() returns trigger language plpgsql security definer set search_path = public, pg_temp as $$
            begin
              loop
                update stock_balances
                  set on_hand = on_hand + new.on_hand_change, reserved = reserved + new.reserved_change
                  where part_id = new.part_id and place_id = new.place_id
                    and thickness_mm is not distinct from new.thickness_mm and condition = new.condition;
                if found then
                  return null;
                end if;
                insert into stock_balances (id, part_id, place_id, thickness_mm, condition, on_hand, reserved)
                  values (gen_random_uuid(), new.part_id, new.place_id, new.thickness_mm, new.condition, 0, 0)
                  on conflict do nothing;
              end loop;
            end $$;
            create trigger move_balance after insert on stock_movements for each row execute function move_stock_balance();
            revoke insert, update, delete, truncate on stock_balances from workshop_service;
            """;

        private const string NoOverlaps =
            """
            alter table occupancies add constraint ex_occupancies_no_overlap
              exclude using gist (resource_id with =, span with &&) where (live);
            alter table engine_fittings add constraint ex_engine_fittings_one_engine
              exclude using gist (motorcycle_id with =, daterange(fitted_on, removed_on) with &&);
            alter table engine_fittings add constraint ex_engine_fittings_one_motorcycle
              exclude using gist (engine_id with =, daterange(fitted_on, removed_on) with &&);
            """;
    }
}
