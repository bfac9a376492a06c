using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>
    /// Every shim a row of its own, moved by the ledger: in a place, in a valve, on the bench of a visit, or gone. What lay in
    /// the stores before becomes rows; what lies in engines becomes known as it comes out.
    /// </summary>
    public partial class ShimBox : Migration
    {
        // Before the insert, so that the ledger's own reference to the shim finds it. Each way has its condition in the update:
        // where it fails, no row is moved and the movement is refused, whoever sends it.
        private const string ShimRule =
            """
            create function move_shim() returns trigger language plpgsql security definer set search_path = public, pg_temp as $$
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
            create trigger move_shim before insert on stock_movements for each row execute function move_shim();
            revoke insert, update, delete, truncate on shims from workshop_service;

            insert into shims (id, part_id, thickness_mm, condition, place_id)
              select gen_random_uuid(), b.part_id, b.thickness_mm, b.condition, b.place_id
              from stock_balances b cross join generate_series(1, b.on_hand::integer)
              where b.thickness_mm is not null;
            select keep_audit('shim_series', false);
            """;

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "used_shims",
                table: "workshop_profiles",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "yes");

            migrationBuilder.AddColumn<Guid>(
                name: "engine_id",
                table: "stock_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "nominal_mm",
                table: "stock_movements",
                type: "numeric(5,3)",
                precision: 5,
                scale: 3,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "reason_remark_id",
                table: "stock_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "scrap_reason",
                table: "stock_movements",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "shim_id",
                table: "stock_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "valve",
                table: "stock_movements",
                type: "character varying(16)",
                maxLength: 16,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "shim_series",
                columns: table => new
                {
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    seat = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    diameter_mm = table.Column<decimal>(type: "numeric(6,3)", precision: 6, scale: 3, nullable: false),
                    smallest_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: false),
                    largest_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: false),
                    step_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    columns = table.Column<int>(type: "integer", nullable: false),
                    source = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shim_series", x => x.part_id);
                    table.CheckConstraint("ck_shim_series_sizes", "largest_mm >= smallest_mm and step_mm > 0 and columns between 1 and 26");
                    table.ForeignKey(
                        name: "fk_shim_series_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_series_storage_places_place_id",
                        column: x => x.place_id,
                        principalTable: "storage_places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "shims",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: false),
                    nominal_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: true),
                    condition = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    came_from_motorcycle_id = table.Column<Guid>(type: "uuid", nullable: true),
                    place_id = table.Column<Guid>(type: "uuid", nullable: true),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: true),
                    valve = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: true),
                    bench_card_number = table.Column<int>(type: "integer", nullable: true),
                    gone = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shims", x => x.id);
                    table.CheckConstraint("ck_shims_in_one_place", "num_nonnulls(place_id, engine_id, bench_card_number, gone) = 1");
                    table.CheckConstraint("ck_shims_valve", "(valve is null) = (engine_id is null and bench_card_number is null)");
                    table.ForeignKey(
                        name: "fk_shims_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shims_job_cards_bench_card_number",
                        column: x => x.bench_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shims_motorcycles_came_from_motorcycle_id",
                        column: x => x.came_from_motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shims_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shims_storage_places_place_id",
                        column: x => x.place_id,
                        principalTable: "storage_places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_engine_id",
                table: "stock_movements",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_reason_remark_id",
                table: "stock_movements",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_shim_id",
                table: "stock_movements",
                column: "shim_id");

            migrationBuilder.AddCheckConstraint(
                name: "ck_stock_movements_valve",
                table: "stock_movements",
                sql: "(engine_id is null) = (valve is null)");

            migrationBuilder.CreateIndex(
                name: "ix_shim_series_place_id",
                table: "shim_series",
                column: "place_id");

            migrationBuilder.CreateIndex(
                name: "ix_shims_bench_card_number",
                table: "shims",
                column: "bench_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_shims_came_from_motorcycle_id",
                table: "shims",
                column: "came_from_motorcycle_id");

            migrationBuilder.CreateIndex(
                name: "ix_shims_engine_id_valve",
                table: "shims",
                columns: new[] { "engine_id", "valve" },
                unique: true,
                filter: "engine_id is not null");

            migrationBuilder.CreateIndex(
                name: "ix_shims_part_id_thickness_mm",
                table: "shims",
                columns: new[] { "part_id", "thickness_mm" });

            migrationBuilder.CreateIndex(
                name: "ix_shims_place_id",
                table: "shims",
                column: "place_id");

            migrationBuilder.AddForeignKey(
                name: "fk_stock_movements_engines_engine_id",
                table: "stock_movements",
                column: "engine_id",
                principalTable: "engines",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_stock_movements_remarks_reason_remark_id",
                table: "stock_movements",
                column: "reason_remark_id",
                principalTable: "remarks",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_stock_movements_shims_shim_id",
                table: "stock_movements",
                column: "shim_id",
                principalTable: "shims",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.Sql(ShimRule);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("drop trigger move_shim on stock_movements; drop function move_shim();");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_movements_engines_engine_id",
                table: "stock_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_movements_remarks_reason_remark_id",
                table: "stock_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_movements_shims_shim_id",
                table: "stock_movements");

            migrationBuilder.DropTable(
                name: "shim_series");

            migrationBuilder.DropTable(
                name: "shims");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_engine_id",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_reason_remark_id",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_shim_id",
                table: "stock_movements");

            migrationBuilder.DropCheckConstraint(
                name: "ck_stock_movements_valve",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "used_shims",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "engine_id",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "nominal_mm",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "reason_remark_id",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "scrap_reason",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "shim_id",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "valve",
                table: "stock_movements");
        }
    }
}
