using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>
    /// What motorcycles are and how they are ridden, visits that are due, put-offs, what the fleet rides, and requests for the whole
    /// fleet. Rows that stand get what they need to be read, and the service reckons them anew when it starts.
    /// </summary>
    public partial class DueRules : Migration
    {
        private const string RowsThatStand =
            """
            update due_items set comes_on = expected_on, advice = 'later',
              rate_basis = case rate_basis when 'one_stretch' then 'borrowed' else rate_basis end;
            insert into due_recomputes (id, requested_at, motorcycles, written)
              select gen_random_uuid(), now(), 0, 0 where exists (select from due_items);
            """;

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_due_items_expected_on_motorcycle_id_service_item_code",
                table: "due_items");

            migrationBuilder.AddColumn<int>(
                name: "together_within_days",
                table: "workshop_profiles",
                type: "integer",
                nullable: false,
                defaultValue: 30);

            migrationBuilder.AddColumn<decimal>(
                name: "together_within_metres",
                table: "workshop_profiles",
                type: "numeric(14,3)",
                precision: 14,
                scale: 3,
                nullable: false,
                defaultValue: 500000m);

            migrationBuilder.AddColumn<bool>(
                name: "confirmed",
                table: "odometer_readings",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string[]>(
                name: "options",
                table: "motorcycles",
                type: "text[]",
                nullable: false,
                defaultValueSql: "'{}'");

            migrationBuilder.AddColumn<string>(
                name: "use",
                table: "motorcycles",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "normal");

            migrationBuilder.AddColumn<Instant>(
                name: "use_said_at",
                table: "motorcycles",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "use_said_by",
                table: "motorcycles",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "advice",
                table: "due_items",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<LocalDate>(
                name: "comes_on",
                table: "due_items",
                type: "date",
                nullable: false,
                defaultValue: new NodaTime.LocalDate(1, 1, 1));

            migrationBuilder.AddColumn<string>(
                name: "included_in",
                table: "due_items",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "left_metres",
                table: "due_items",
                type: "numeric(14,3)",
                precision: 14,
                scale: 3,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "put_off_id",
                table: "due_items",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "saves_minutes",
                table: "due_items",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "due_recomputes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    requested_by = table.Column<Guid>(type: "uuid", nullable: true),
                    requested_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    fleet_riding_version = table.Column<int>(type: "integer", nullable: true),
                    motorcycles = table.Column<int>(type: "integer", nullable: false),
                    written = table.Column<int>(type: "integer", nullable: false),
                    last_motorcycle = table.Column<Guid>(type: "uuid", nullable: true),
                    finished_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_due_recomputes", x => x.id);
                    table.ForeignKey(
                        name: "fk_due_recomputes_people_requested_by",
                        column: x => x.requested_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "due_visits",
                columns: table => new
                {
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    comes_on = table.Column<LocalDate>(type: "date", nullable: false),
                    left_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    labour_minutes = table.Column<int>(type: "integer", nullable: false),
                    saves_minutes = table.Column<int>(type: "integer", nullable: false),
                    special_tools = table.Column<string[]>(type: "text[]", nullable: false),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_due_visits", x => x.motorcycle_id);
                    table.ForeignKey(
                        name: "fk_due_visits_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_due_visits_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "fleet_ridings",
                columns: table => new
                {
                    version = table.Column<int>(type: "integer", nullable: false),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    metres_per_day = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false),
                    log_deviation = table.Column<double>(type: "double precision", nullable: false),
                    wander_days = table.Column<double>(type: "double precision", nullable: false),
                    season_cosine = table.Column<double>(type: "double precision", nullable: false),
                    season_sine = table.Column<double>(type: "double precision", nullable: false),
                    season_probability = table.Column<double>(type: "double precision", nullable: true),
                    motorcycles = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fleet_ridings", x => x.version);
                });

            migrationBuilder.CreateTable(
                name: "put_offs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    service_item_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    reason = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    decided_on = table.Column<LocalDate>(type: "date", nullable: false),
                    decided_by = table.Column<Guid>(type: "uuid", nullable: false),
                    decided_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_put_offs", x => x.id);
                    table.ForeignKey(
                        name: "fk_put_offs_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_put_offs_people_decided_by",
                        column: x => x.decided_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_workshop_profiles_together",
                table: "workshop_profiles",
                sql: "least(together_within_metres, together_within_days) >= 0");

            migrationBuilder.CreateIndex(
                name: "ix_motorcycles_use_said_by",
                table: "motorcycles",
                column: "use_said_by");

            migrationBuilder.CreateIndex(
                name: "ix_due_items_comes_on_motorcycle_id_service_item_code",
                table: "due_items",
                columns: new[] { "comes_on", "motorcycle_id", "service_item_code" });

            migrationBuilder.CreateIndex(
                name: "ix_due_recomputes_requested_at",
                table: "due_recomputes",
                column: "requested_at");

            migrationBuilder.CreateIndex(
                name: "ix_due_recomputes_requested_by",
                table: "due_recomputes",
                column: "requested_by");

            migrationBuilder.CreateIndex(
                name: "ix_due_visits_comes_on_motorcycle_id",
                table: "due_visits",
                columns: new[] { "comes_on", "motorcycle_id" });

            migrationBuilder.CreateIndex(
                name: "ix_due_visits_engine_model_id_comes_on_motorcycle_id",
                table: "due_visits",
                columns: new[] { "engine_model_id", "comes_on", "motorcycle_id" });

            migrationBuilder.CreateIndex(
                name: "ix_due_visits_with_tools",
                table: "due_visits",
                columns: new[] { "comes_on", "motorcycle_id" },
                filter: "cardinality(special_tools) > 0");

            migrationBuilder.CreateIndex(
                name: "ix_put_offs_decided_by",
                table: "put_offs",
                column: "decided_by");

            migrationBuilder.CreateIndex(
                name: "ix_put_offs_motorcycle_id_service_item_code_decided_at",
                table: "put_offs",
                columns: new[] { "motorcycle_id", "service_item_code", "decided_at" });

            migrationBuilder.AddForeignKey(
                name: "fk_motorcycles_people_use_said_by",
                table: "motorcycles",
                column: "use_said_by",
                principalTable: "people",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.Sql(RowsThatStand);
            migrationBuilder.Sql("select keep_append_only('put_offs');");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_motorcycles_people_use_said_by",
                table: "motorcycles");

            migrationBuilder.DropTable(
                name: "due_recomputes");

            migrationBuilder.DropTable(
                name: "due_visits");

            migrationBuilder.DropTable(
                name: "fleet_ridings");

            migrationBuilder.DropTable(
                name: "put_offs");

            migrationBuilder.DropCheckConstraint(
                name: "ck_workshop_profiles_together",
                table: "workshop_profiles");

            migrationBuilder.DropIndex(
                name: "ix_motorcycles_use_said_by",
                table: "motorcycles");

            migrationBuilder.DropIndex(
                name: "ix_due_items_comes_on_motorcycle_id_service_item_code",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "together_within_days",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "together_within_metres",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "confirmed",
                table: "odometer_readings");

            migrationBuilder.DropColumn(
                name: "options",
                table: "motorcycles");

            migrationBuilder.DropColumn(
                name: "use",
                table: "motorcycles");

            migrationBuilder.DropColumn(
                name: "use_said_at",
                table: "motorcycles");

            migrationBuilder.DropColumn(
                name: "use_said_by",
                table: "motorcycles");

            migrationBuilder.DropColumn(
                name: "advice",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "comes_on",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "included_in",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "left_metres",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "put_off_id",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "saves_minutes",
                table: "due_items");

            migrationBuilder.CreateIndex(
                name: "ix_due_items_expected_on_motorcycle_id_service_item_code",
                table: "due_items",
                columns: new[] { "expected_on", "motorcycle_id", "service_item_code" });
        }
    }
}
