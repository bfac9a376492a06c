using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>
    /// Fits of engine models by version, what all models of a kind show together, refits under way, forecasts with the quantiles of
    /// leaving the limits, and visits left out on a person's word.
    /// </summary>
    public partial class DriftModel : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.RenameColumn(
                name: "drift_standard_error",
                table: "clearance_forecasts",
                newName: "drift_deviation");

            migrationBuilder.AddColumn<double>(
                name: "drift_threshold",
                table: "workshop_profiles",
                type: "double precision",
                nullable: false,
                defaultValue: 0.05);

            migrationBuilder.AddColumn<bool>(
                name: "by_forecast",
                table: "due_items",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AlterColumn<string>(
                name: "reason",
                table: "clearance_forecasts",
                type: "character varying(400)",
                maxLength: 400,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(300)",
                oldMaxLength: 300,
                oldNullable: true);

            migrationBuilder.AddColumn<int>(
                name: "fit_version",
                table: "clearance_forecasts",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "leaves_limits_earliest_on",
                table: "clearance_forecasts",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "leaves_limits_latest_at_metres",
                table: "clearance_forecasts",
                type: "numeric(14,3)",
                precision: 14,
                scale: 3,
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "leaves_limits_latest_on",
                table: "clearance_forecasts",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "outside_at_next_check",
                table: "clearance_forecasts",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "present_at_metres",
                table: "clearance_forecasts",
                type: "numeric(14,3)",
                precision: 14,
                scale: 3,
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "present_deviation_mm",
                table: "clearance_forecasts",
                type: "numeric(8,4)",
                precision: 8,
                scale: 4,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "drift_fits",
                columns: table => new
                {
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    readings = table.Column<int>(type: "integer", nullable: false),
                    log_likelihood = table.Column<double>(type: "double precision", nullable: true),
                    fit = table.Column<string>(type: "jsonb", nullable: true),
                    why_not = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drift_fits", x => new { x.engine_model_id, x.version });
                    table.CheckConstraint("ck_drift_fits_fit_or_reason", "(fit is null) = (why_not is not null)");
                    table.ForeignKey(
                        name: "fk_drift_fits_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "drift_pools",
                columns: table => new
                {
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    readings = table.Column<int>(type: "integer", nullable: false),
                    pool = table.Column<string>(type: "jsonb", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drift_pools", x => new { x.kind, x.version });
                });

            migrationBuilder.CreateTable(
                name: "drift_refits",
                columns: table => new
                {
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    requested_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    wanted_since = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    fit_version = table.Column<int>(type: "integer", nullable: true),
                    engines = table.Column<int>(type: "integer", nullable: false),
                    engines_written = table.Column<int>(type: "integer", nullable: false),
                    last_engine = table.Column<Guid>(type: "uuid", nullable: true),
                    finished_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drift_refits", x => x.engine_model_id);
                    table.ForeignKey(
                        name: "fk_drift_refits_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "engine_outlooks",
                columns: table => new
                {
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    fit_version = table.Column<int>(type: "integer", nullable: true),
                    next_check_at_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    next_check_on = table.Column<LocalDate>(type: "date", nullable: true),
                    outside_at_next_check = table.Column<double>(type: "double precision", nullable: true),
                    intake_outside_at_next_check = table.Column<double>(type: "double precision", nullable: true),
                    exhaust_outside_at_next_check = table.Column<double>(type: "double precision", nullable: true),
                    passes_threshold_at_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    passes_threshold_on = table.Column<LocalDate>(type: "date", nullable: true),
                    soonest_on = table.Column<LocalDate>(type: "date", nullable: true),
                    soonest_intake_on = table.Column<LocalDate>(type: "date", nullable: true),
                    soonest_exhaust_on = table.Column<LocalDate>(type: "date", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_engine_outlooks", x => x.engine_id);
                    table.ForeignKey(
                        name: "fk_engine_outlooks_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "left_out_visits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    left_out = table.Column<bool>(type: "boolean", nullable: false),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: false),
                    decided_by = table.Column<Guid>(type: "uuid", nullable: false),
                    decided_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_left_out_visits", x => x.id);
                    table.ForeignKey(
                        name: "fk_left_out_visits_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_left_out_visits_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_left_out_visits_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_left_out_visits_people_decided_by",
                        column: x => x.decided_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_left_out_visits_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_drift_refits_wanted_since",
                table: "drift_refits",
                column: "wanted_since");

            migrationBuilder.CreateIndex(
                name: "ix_engine_outlooks_soonest_exhaust_on_engine_id",
                table: "engine_outlooks",
                columns: new[] { "soonest_exhaust_on", "engine_id" });

            migrationBuilder.CreateIndex(
                name: "ix_engine_outlooks_soonest_intake_on_engine_id",
                table: "engine_outlooks",
                columns: new[] { "soonest_intake_on", "engine_id" });

            migrationBuilder.CreateIndex(
                name: "ix_engine_outlooks_soonest_on_engine_id",
                table: "engine_outlooks",
                columns: new[] { "soonest_on", "engine_id" });

            migrationBuilder.CreateIndex(
                name: "ix_left_out_visits_decided_by",
                table: "left_out_visits",
                column: "decided_by");

            migrationBuilder.CreateIndex(
                name: "ix_left_out_visits_engine_id",
                table: "left_out_visits",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_left_out_visits_job_card_number",
                table: "left_out_visits",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_left_out_visits_odometer_reading_id",
                table: "left_out_visits",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_left_out_visits_reason_remark_id",
                table: "left_out_visits",
                column: "reason_remark_id");

            migrationBuilder.Sql("select keep_append_only('drift_fits');");
            migrationBuilder.Sql("select keep_append_only('drift_pools');");
            migrationBuilder.Sql("select keep_append_only('left_out_visits');");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "drift_fits");

            migrationBuilder.DropTable(
                name: "drift_pools");

            migrationBuilder.DropTable(
                name: "drift_refits");

            migrationBuilder.DropTable(
                name: "engine_outlooks");

            migrationBuilder.DropTable(
                name: "left_out_visits");

            migrationBuilder.DropColumn(
                name: "drift_threshold",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "by_forecast",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "fit_version",
                table: "clearance_forecasts");

            migrationBuilder.DropColumn(
                name: "leaves_limits_earliest_on",
                table: "clearance_forecasts");

            migrationBuilder.DropColumn(
                name: "leaves_limits_latest_at_metres",
                table: "clearance_forecasts");

            migrationBuilder.DropColumn(
                name: "leaves_limits_latest_on",
                table: "clearance_forecasts");

            migrationBuilder.DropColumn(
                name: "outside_at_next_check",
                table: "clearance_forecasts");

            migrationBuilder.DropColumn(
                name: "present_at_metres",
                table: "clearance_forecasts");

            migrationBuilder.DropColumn(
                name: "present_deviation_mm",
                table: "clearance_forecasts");

            migrationBuilder.RenameColumn(
                name: "drift_deviation",
                table: "clearance_forecasts",
                newName: "drift_standard_error");

            migrationBuilder.AlterColumn<string>(
                name: "reason",
                table: "clearance_forecasts",
                type: "character varying(300)",
                maxLength: 300,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(400)",
                oldMaxLength: 400,
                oldNullable: true);
        }
    }
}
