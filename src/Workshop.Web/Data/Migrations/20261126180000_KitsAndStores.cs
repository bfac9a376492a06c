using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class KitsAndStores : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_stock_movements_moved_by",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_part_id_moved_at",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_balances_part_id_place_id_thickness_mm_condition",
                table: "stock_balances");

            migrationBuilder.DropIndex(
                name: "ix_fastener_ticks_wrench_id",
                table: "fastener_ticks");

            migrationBuilder.CreateSequence<int>(
                name: "storage_place_codes");

            migrationBuilder.AddColumn<string>(
                name: "currency",
                table: "workshop_profiles",
                type: "character varying(3)",
                maxLength: 3,
                nullable: false,
                defaultValue: "EUR");

            migrationBuilder.AddColumn<decimal>(
                name: "labour_net_per_hour",
                table: "workshop_profiles",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "service_level",
                table: "workshop_profiles",
                type: "double precision",
                nullable: false,
                defaultValue: 0.94999999999999996);

            migrationBuilder.AddColumn<string>(
                name: "tax_rate_code",
                table: "workshop_profiles",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "code",
                table: "storage_places",
                type: "character varying(60)",
                maxLength: 60,
                nullable: false,
                defaultValueSql: "'P' || lpad(nextval('storage_place_codes')::text, 3, '0')");

            migrationBuilder.AddColumn<bool>(
                name: "retired",
                table: "storage_places",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "walk_order",
                table: "storage_places",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<uint>(
                name: "xmin",
                table: "storage_places",
                type: "xid",
                rowVersion: true,
                nullable: false,
                defaultValue: 0u);

            migrationBuilder.AddColumn<Guid>(
                name: "count_id",
                table: "stock_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "lot_id",
                table: "stock_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "order_line_id",
                table: "stock_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "unit_cost",
                table: "stock_movements",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "lot_id",
                table: "stock_balances",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "designation",
                table: "parts",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "fitted_once",
                table: "parts",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "form",
                table: "parts",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "hardness",
                table: "parts",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "merged_into_id",
                table: "parts",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "net_price",
                table: "parts",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "pack_quantity",
                table: "parts",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "reorder_point",
                table: "parts",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "replaced_by_id",
                table: "parts",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "service_level",
                table: "parts",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "shelf_life_months",
                table: "parts",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "stocked",
                table: "parts",
                type: "boolean",
                nullable: false,
                defaultValue: true);

            migrationBuilder.AddColumn<string>(
                name: "tax_rate_code",
                table: "parts",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "calibration_cycles",
                table: "instruments",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "calibration_months",
                table: "instruments",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "damage",
                table: "instruments",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "damaged_on",
                table: "instruments",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "drive",
                table: "instruments",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "graduation",
                table: "instruments",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "length_mm",
                table: "instruments",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "released_beyond_cycles",
                table: "instruments",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<LocalDate>(
                name: "released_on",
                table: "instruments",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "released_until",
                table: "instruments",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "adapter_angle_degrees",
                table: "fastener_ticks",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "adapter_id",
                table: "fastener_ticks",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "cycles",
                table: "fastener_ticks",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "dialled",
                table: "fastener_ticks",
                type: "numeric(14,4)",
                precision: 14,
                scale: 4,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "order_line_id",
                table: "expected_deliveries",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "blade_checks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    blade_id = table.Column<Guid>(type: "uuid", nullable: false),
                    measured_mm = table.Column<decimal>(type: "numeric(5,4)", precision: 5, scale: 4, nullable: true),
                    micrometer_id = table.Column<Guid>(type: "uuid", nullable: true),
                    withdrawn = table.Column<bool>(type: "boolean", nullable: false),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    checked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    checked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_blade_checks", x => x.id);
                    table.CheckConstraint("ck_blade_checks_micrometer", "(measured_mm is null) = (micrometer_id is null)");
                    table.ForeignKey(
                        name: "fk_blade_checks_feeler_blades_blade_id",
                        column: x => x.blade_id,
                        principalTable: "feeler_blades",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_blade_checks_instruments_micrometer_id",
                        column: x => x.micrometer_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_blade_checks_people_checked_by",
                        column: x => x.checked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_blade_checks_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "calibrations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    done_on = table.Column<LocalDate>(type: "date", nullable: false),
                    due_on = table.Column<LocalDate>(type: "date", nullable: true),
                    certificate = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    laboratory = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    uncertainty = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_calibrations", x => x.id);
                    table.ForeignKey(
                        name: "fk_calibrations_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_calibrations_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "cam_rechecks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    drive_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    wrench_id = table.Column<Guid>(type: "uuid", nullable: true),
                    confirmed_by = table.Column<Guid>(type: "uuid", nullable: false),
                    confirmed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_cam_rechecks", x => x.id);
                    table.ForeignKey(
                        name: "fk_cam_rechecks_instruments_wrench_id",
                        column: x => x.wrench_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_rechecks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_rechecks_people_confirmed_by",
                        column: x => x.confirmed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "cam_timing_checks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    camshaft_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    method = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    side = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    passes = table.Column<bool>(type: "boolean", nullable: true),
                    dead_centre = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    stop_before_degrees = table.Column<decimal>(type: "numeric(6,2)", precision: 6, scale: 2, nullable: true),
                    stop_after_degrees = table.Column<decimal>(type: "numeric(6,2)", precision: 6, scale: 2, nullable: true),
                    lift_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    station = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    in_running_direction = table.Column<bool>(type: "boolean", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    dial_gauge_id = table.Column<Guid>(type: "uuid", nullable: true),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    measured_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    measured_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_cam_timing_checks", x => x.id);
                    table.CheckConstraint("ck_cam_timing_checks_attempt", "attempt >= 1");
                    table.CheckConstraint("ck_cam_timing_checks_method", "case method\n  when 'alignment' then passes is not null and side is null and lift_mm is null\n  else passes is null and side is not null and dead_centre is not null and lift_mm is not null and station is not null\nend");
                    table.CheckConstraint("ck_cam_timing_checks_stops", "(stop_before_degrees is null) = (stop_after_degrees is null) and (dead_centre is null or dead_centre = 'marks' or stop_before_degrees is not null)");
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_cam_timing_checks_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "cam_timing_checks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_instruments_dial_gauge_id",
                        column: x => x.dial_gauge_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cam_timing_checks_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "chain_changes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    drive_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    happened_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_chain_changes", x => x.id);
                    table.ForeignKey(
                        name: "fk_chain_changes_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_changes_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_changes_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_changes_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "chain_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    drive_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    extension_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    at_stop = table.Column<bool>(type: "boolean", nullable: false),
                    length_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    measured_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    measured_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_chain_readings", x => x.id);
                    table.CheckConstraint("ck_chain_readings_something", "attempt >= 1 and (extension_mm is not null or at_stop or length_mm is not null) and not (extension_mm is not null and at_stop) and coalesce(extension_mm, 0) >= 0 and coalesce(length_mm, 1) > 0");
                    table.ForeignKey(
                        name: "fk_chain_readings_chain_readings_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "chain_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_chain_readings_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "findings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    text_remark_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    gravity = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    service_item_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    found_by = table.Column<Guid>(type: "uuid", nullable: false),
                    found_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    done_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    done_by = table.Column<Guid>(type: "uuid", nullable: true),
                    withdrawn_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    withdrawn_by = table.Column<Guid>(type: "uuid", nullable: true),
                    withdrawn_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_findings", x => x.id);
                    table.ForeignKey(
                        name: "fk_findings_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_findings_people_done_by",
                        column: x => x.done_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_findings_people_found_by",
                        column: x => x.found_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_findings_people_withdrawn_by",
                        column: x => x.withdrawn_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_findings_remarks_text_remark_id",
                        column: x => x.text_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_findings_remarks_withdrawn_remark_id",
                        column: x => x.withdrawn_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "gauge_trials",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    design = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    unit = table.Column<string>(type: "character varying(12)", maxLength: 12, nullable: false),
                    parts = table.Column<int>(type: "integer", nullable: false),
                    trials = table.Column<int>(type: "integer", nullable: false),
                    tolerance = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    started_by = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    given_up_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_gauge_trials", x => x.id);
                    table.CheckConstraint("ck_gauge_trials_two", "least(parts, trials) >= 2 and tolerance > 0");
                    table.ForeignKey(
                        name: "fk_gauge_trials_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_gauge_trials_people_started_by",
                        column: x => x.started_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "goods_in_imports",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    file_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    lines = table.Column<int>(type: "integer", nullable: false),
                    content_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    imported_by = table.Column<Guid>(type: "uuid", nullable: false),
                    imported_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_goods_in_imports", x => x.id);
                    table.ForeignKey(
                        name: "fk_goods_in_imports_people_imported_by",
                        column: x => x.imported_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "instrument_events",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    holder_id = table.Column<Guid>(type: "uuid", nullable: true),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instrument_events", x => x.id);
                    table.ForeignKey(
                        name: "fk_instrument_events_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_instrument_events_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_instrument_events_people_holder_id",
                        column: x => x.holder_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_instrument_events_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "kit_substitutions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    part_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    instead_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    chosen_by = table.Column<Guid>(type: "uuid", nullable: false),
                    chosen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kit_substitutions", x => x.id);
                    table.ForeignKey(
                        name: "fk_kit_substitutions_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_kit_substitutions_parts_instead_id",
                        column: x => x.instead_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_kit_substitutions_people_chosen_by",
                        column: x => x.chosen_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_kit_substitutions_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "part_alternatives",
                columns: table => new
                {
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    alternative_id = table.Column<Guid>(type: "uuid", nullable: false),
                    note = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_part_alternatives", x => new { x.part_id, x.alternative_id });
                    table.CheckConstraint("ck_part_alternatives_two", "part_id <> alternative_id");
                    table.ForeignKey(
                        name: "fk_part_alternatives_parts_alternative_id",
                        column: x => x.alternative_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_part_alternatives_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "part_scan_codes",
                columns: table => new
                {
                    code = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_part_scan_codes", x => x.code);
                    table.CheckConstraint("ck_part_scan_codes_quantity", "quantity > 0");
                    table.ForeignKey(
                        name: "fk_part_scan_codes_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "position_confirmations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    position = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    confirmed_by = table.Column<Guid>(type: "uuid", nullable: false),
                    confirmed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_position_confirmations", x => x.id);
                    table.ForeignKey(
                        name: "fk_position_confirmations_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_position_confirmations_people_confirmed_by",
                        column: x => x.confirmed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "seal_inspections",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    place_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    part_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    verdict = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    taken = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    inspected_by = table.Column<Guid>(type: "uuid", nullable: false),
                    inspected_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_seal_inspections", x => x.id);
                    table.CheckConstraint("ck_seal_inspections_taken", "taken >= 0 and (taken > 0 or verdict = 'fit')");
                    table.ForeignKey(
                        name: "fk_seal_inspections_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_seal_inspections_people_inspected_by",
                        column: x => x.inspected_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_seal_inspections_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_seal_inspections_seal_inspections_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "seal_inspections",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "second_person_marks",
                columns: table => new
                {
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    fastener_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    marked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    marked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_second_person_marks", x => new { x.engine_model_id, x.fastener_code });
                    table.ForeignKey(
                        name: "fk_second_person_marks_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_second_person_marks_people_marked_by",
                        column: x => x.marked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "stock_counts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    started_by = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    closed_by = table.Column<Guid>(type: "uuid", nullable: true),
                    closed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    given_up = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_counts", x => x.id);
                    table.CheckConstraint("ck_stock_counts_given_up", "not given_up or closed_at is not null");
                    table.ForeignKey(
                        name: "fk_stock_counts_people_closed_by",
                        column: x => x.closed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_counts_people_started_by",
                        column: x => x.started_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_counts_storage_places_place_id",
                        column: x => x.place_id,
                        principalTable: "storage_places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "stock_lots",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    expires_on = table.Column<LocalDate>(type: "date", nullable: true),
                    received_on = table.Column<LocalDate>(type: "date", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_lots", x => x.id);
                    table.ForeignKey(
                        name: "fk_stock_lots_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "suppliers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    email = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: true),
                    customer_number = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    delivery_days = table.Column<int>(type: "integer", nullable: false),
                    delivery_days_sd = table.Column<double>(type: "double precision", nullable: false),
                    smallest_order = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_suppliers", x => x.id);
                    table.CheckConstraint("ck_suppliers_delivery", "delivery_days >= 0 and delivery_days_sd >= 0");
                });

            migrationBuilder.CreateTable(
                name: "tax_rates",
                columns: table => new
                {
                    code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    valid_from = table.Column<LocalDate>(type: "date", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    percent = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tax_rates", x => new { x.code, x.valid_from });
                    table.CheckConstraint("ck_tax_rates_percent", "percent >= 0 and percent <= 100");
                });

            migrationBuilder.CreateTable(
                name: "tick_witnesses",
                columns: table => new
                {
                    tick_id = table.Column<Guid>(type: "uuid", nullable: false),
                    witnessed_by = table.Column<Guid>(type: "uuid", nullable: false),
                    witnessed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tick_witnesses", x => x.tick_id);
                    table.ForeignKey(
                        name: "fk_tick_witnesses_fastener_ticks_tick_id",
                        column: x => x.tick_id,
                        principalTable: "fastener_ticks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_tick_witnesses_people_witnessed_by",
                        column: x => x.witnessed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "work_spells",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_for = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_work_spells", x => x.id);
                    table.CheckConstraint("ck_work_spells_span", "ended_at >= started_at and (ended_at is null) = (ended_for is null)");
                    table.ForeignKey(
                        name: "fk_work_spells_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_work_spells_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "wrench_adapters",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    effective_length_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    drive = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tool = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_wrench_adapters", x => x.id);
                    table.CheckConstraint("ck_wrench_adapters_length", "effective_length_mm >= 0");
                });

            migrationBuilder.CreateTable(
                name: "cam_timing_readings",
                columns: table => new
                {
                    check_id = table.Column<Guid>(type: "uuid", nullable: false),
                    repeat = table.Column<int>(type: "integer", nullable: false),
                    opens_degrees = table.Column<decimal>(type: "numeric(6,2)", precision: 6, scale: 2, nullable: false),
                    closes_degrees = table.Column<decimal>(type: "numeric(6,2)", precision: 6, scale: 2, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_cam_timing_readings", x => new { x.check_id, x.repeat });
                    table.CheckConstraint("ck_cam_timing_readings_repeat", "repeat >= 1 and opens_degrees + closes_degrees > -180");
                    table.ForeignKey(
                        name: "fk_cam_timing_readings_cam_timing_checks_check_id",
                        column: x => x.check_id,
                        principalTable: "cam_timing_checks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "estimates",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    finding_id = table.Column<Guid>(type: "uuid", nullable: true),
                    currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    net = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    tax = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    gross = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    valid_until = table.Column<LocalDate>(type: "date", nullable: true),
                    made_by = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_estimates", x => x.id);
                    table.CheckConstraint("ck_estimates_gross", "gross = net + tax");
                    table.ForeignKey(
                        name: "fk_estimates_findings_finding_id",
                        column: x => x.finding_id,
                        principalTable: "findings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimates_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimates_people_made_by",
                        column: x => x.made_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    finding_id = table.Column<Guid>(type: "uuid", nullable: true),
                    media_type = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    content = table.Column<byte[]>(type: "bytea", nullable: false),
                    thumbnail = table.Column<byte[]>(type: "bytea", nullable: false),
                    width_px = table.Column<int>(type: "integer", nullable: false),
                    height_px = table.Column<int>(type: "integer", nullable: false),
                    caption_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    added_by = table.Column<Guid>(type: "uuid", nullable: false),
                    added_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    removed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    removed_by = table.Column<Guid>(type: "uuid", nullable: true),
                    removed_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photos", x => x.id);
                    table.CheckConstraint("ck_photos_content", "(octet_length(content) = 0) = (removed_at is not null)");
                    table.ForeignKey(
                        name: "fk_photos_findings_finding_id",
                        column: x => x.finding_id,
                        principalTable: "findings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_photos_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_photos_people_added_by",
                        column: x => x.added_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_photos_people_removed_by",
                        column: x => x.removed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_photos_remarks_caption_remark_id",
                        column: x => x.caption_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_photos_remarks_removed_remark_id",
                        column: x => x.removed_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "gauge_trial_appraisers",
                columns: table => new
                {
                    trial_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_gauge_trial_appraisers", x => new { x.trial_id, x.person_id });
                    table.ForeignKey(
                        name: "fk_gauge_trial_appraisers_gauge_trials_trial_id",
                        column: x => x.trial_id,
                        principalTable: "gauge_trials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_gauge_trial_appraisers_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "stock_count_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    count_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    counted = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    expected = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    reason = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    counted_by = table.Column<Guid>(type: "uuid", nullable: false),
                    counted_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    explained_by = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_count_lines", x => x.id);
                    table.CheckConstraint("ck_stock_count_lines_counted", "counted >= 0");
                    table.ForeignKey(
                        name: "fk_stock_count_lines_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_count_lines_people_counted_by",
                        column: x => x.counted_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_count_lines_people_explained_by",
                        column: x => x.explained_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_count_lines_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_count_lines_stock_counts_count_id",
                        column: x => x.count_id,
                        principalTable: "stock_counts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_count_lines_stock_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "stock_lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "part_supplies",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    pack_quantity = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    smallest_quantity = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    unit_cost = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    delivery_days = table.Column<int>(type: "integer", nullable: true),
                    preferred = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_part_supplies", x => x.id);
                    table.CheckConstraint("ck_part_supplies_pack", "pack_quantity > 0 and smallest_quantity > 0");
                    table.ForeignKey(
                        name: "fk_part_supplies_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_part_supplies_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "purchase_orders",
                columns: table => new
                {
                    number = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:IdentitySequenceOptions", "'501', '1', '', '', 'False', '1'")
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    made_by = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    placed_by = table.Column<Guid>(type: "uuid", nullable: true),
                    placed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_purchase_orders", x => x.number);
                    table.ForeignKey(
                        name: "fk_purchase_orders_people_made_by",
                        column: x => x.made_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_purchase_orders_people_placed_by",
                        column: x => x.placed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_purchase_orders_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_purchase_orders_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "estimate_answers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    estimate_id = table.Column<Guid>(type: "uuid", nullable: true),
                    finding_id = table.Column<Guid>(type: "uuid", nullable: true),
                    decision = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    way = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    said_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    told_of_danger = table.Column<bool>(type: "boolean", nullable: false),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    recorded_by = table.Column<Guid>(type: "uuid", nullable: false),
                    recorded_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_estimate_answers", x => x.id);
                    table.CheckConstraint("ck_estimate_answers_to_what", "estimate_id is not null or (finding_id is not null and decision = 'declined')");
                    table.ForeignKey(
                        name: "fk_estimate_answers_estimates_estimate_id",
                        column: x => x.estimate_id,
                        principalTable: "estimates",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimate_answers_findings_finding_id",
                        column: x => x.finding_id,
                        principalTable: "findings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimate_answers_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimate_answers_people_recorded_by",
                        column: x => x.recorded_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimate_answers_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "estimate_lines",
                columns: table => new
                {
                    estimate_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    source = table.Column<string>(type: "character varying(70)", maxLength: 70, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    charge = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    option = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    text = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    part_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    quantity = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    unit = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    unit_price = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    proposed_unit_price = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    unit_cost = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    tax_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    tax_percent = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    net = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    dropped = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_estimate_lines", x => new { x.estimate_id, x.place });
                    table.ForeignKey(
                        name: "fk_estimate_lines_estimates_estimate_id",
                        column: x => x.estimate_id,
                        principalTable: "estimates",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_estimate_lines_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "gauge_trial_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    trial_id = table.Column<Guid>(type: "uuid", nullable: false),
                    appraiser_id = table.Column<Guid>(type: "uuid", nullable: false),
                    part = table.Column<int>(type: "integer", nullable: false),
                    trial = table.Column<int>(type: "integer", nullable: false),
                    value = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_gauge_trial_readings", x => x.id);
                    table.CheckConstraint("ck_gauge_trial_readings_reason", "(supersedes_id is null) = (reason_remark_id is null)");
                    table.ForeignKey(
                        name: "fk_gauge_trial_readings_gauge_trial_appraisers_trial_id_apprai",
                        columns: x => new { x.trial_id, x.appraiser_id },
                        principalTable: "gauge_trial_appraisers",
                        principalColumns: new[] { "trial_id", "person_id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_gauge_trial_readings_gauge_trial_readings_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "gauge_trial_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_gauge_trial_readings_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_gauge_trial_readings_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "purchase_order_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_number = table.Column<int>(type: "integer", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: true),
                    quantity = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    unit_cost = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    expected_on = table.Column<LocalDate>(type: "date", nullable: true),
                    received = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    reason = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_purchase_order_lines", x => x.id);
                    table.CheckConstraint("ck_purchase_order_lines_quantity", "quantity > 0 and received >= 0");
                    table.ForeignKey(
                        name: "fk_purchase_order_lines_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_purchase_order_lines_purchase_orders_order_number",
                        column: x => x.order_number,
                        principalTable: "purchase_orders",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_storage_places_code",
                table: "storage_places",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_count_id",
                table: "stock_movements",
                column: "count_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_lot_id",
                table: "stock_movements",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_moved_by_moved_at",
                table: "stock_movements",
                columns: new[] { "moved_by", "moved_at" });

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_order_line_id",
                table: "stock_movements",
                column: "order_line_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_part_id_moved_at_id",
                table: "stock_movements",
                columns: new[] { "part_id", "moved_at", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_reserved",
                table: "stock_movements",
                columns: new[] { "part_id", "job_card_number", "place_id", "lot_id" },
                filter: "reserved_change <> 0")
                .Annotation("Npgsql:IndexInclude", new[] { "reserved_change" });

            migrationBuilder.CreateIndex(
                name: "ix_stock_balances_lot_id",
                table: "stock_balances",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_balances_part_id_place_id_thickness_mm_condition_lot_",
                table: "stock_balances",
                columns: new[] { "part_id", "place_id", "thickness_mm", "condition", "lot_id" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_parts_kind_inner_diameter_mm_section_mm",
                table: "parts",
                columns: new[] { "kind", "inner_diameter_mm", "section_mm" });

            migrationBuilder.CreateIndex(
                name: "ix_parts_merged_into_id",
                table: "parts",
                column: "merged_into_id");

            migrationBuilder.CreateIndex(
                name: "ix_parts_replaced_by_id",
                table: "parts",
                column: "replaced_by_id");

            migrationBuilder.AddCheckConstraint(
                name: "ck_parts_merged",
                table: "parts",
                sql: "merged_into_id is distinct from id and replaced_by_id is distinct from id");

            migrationBuilder.AddCheckConstraint(
                name: "ck_instruments_scale",
                table: "instruments",
                sql: "graduation > 0 and length_mm > 0 and calibration_months > 0 and calibration_cycles > 0");

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_adapter_id",
                table: "fastener_ticks",
                column: "adapter_id");

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_wrench_id_ticked_at",
                table: "fastener_ticks",
                columns: new[] { "wrench_id", "ticked_at" });

            migrationBuilder.CreateIndex(
                name: "ix_expected_deliveries_order_line_id",
                table: "expected_deliveries",
                column: "order_line_id");

            migrationBuilder.CreateIndex(
                name: "ix_blade_checks_blade_id_checked_at",
                table: "blade_checks",
                columns: new[] { "blade_id", "checked_at" });

            migrationBuilder.CreateIndex(
                name: "ix_blade_checks_checked_by",
                table: "blade_checks",
                column: "checked_by");

            migrationBuilder.CreateIndex(
                name: "ix_blade_checks_micrometer_id",
                table: "blade_checks",
                column: "micrometer_id");

            migrationBuilder.CreateIndex(
                name: "ix_blade_checks_remark_id",
                table: "blade_checks",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_calibrations_entered_by",
                table: "calibrations",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_calibrations_instrument_id_done_on",
                table: "calibrations",
                columns: new[] { "instrument_id", "done_on" });

            migrationBuilder.CreateIndex(
                name: "ix_cam_rechecks_confirmed_by",
                table: "cam_rechecks",
                column: "confirmed_by");

            migrationBuilder.CreateIndex(
                name: "ix_cam_rechecks_job_card_number",
                table: "cam_rechecks",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_cam_rechecks_wrench_id",
                table: "cam_rechecks",
                column: "wrench_id");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_dial_gauge_id",
                table: "cam_timing_checks",
                column: "dial_gauge_id");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_engine_id",
                table: "cam_timing_checks",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_entered_by",
                table: "cam_timing_checks",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_instrument_id",
                table: "cam_timing_checks",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_job_card_number_camshaft_code_stage_metho",
                table: "cam_timing_checks",
                columns: new[] { "job_card_number", "camshaft_code", "stage", "method", "side", "attempt" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_measured_by",
                table: "cam_timing_checks",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_odometer_reading_id",
                table: "cam_timing_checks",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_reason_remark_id",
                table: "cam_timing_checks",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_cam_timing_checks_supersedes_id",
                table: "cam_timing_checks",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_chain_changes_engine_id",
                table: "chain_changes",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_chain_changes_entered_by",
                table: "chain_changes",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_chain_changes_job_card_number_drive_code_kind",
                table: "chain_changes",
                columns: new[] { "job_card_number", "drive_code", "kind" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_chain_changes_odometer_reading_id",
                table: "chain_changes",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_engine_id",
                table: "chain_readings",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_entered_by",
                table: "chain_readings",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_instrument_id",
                table: "chain_readings",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_job_card_number_drive_code_stage_attempt",
                table: "chain_readings",
                columns: new[] { "job_card_number", "drive_code", "stage", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_measured_by",
                table: "chain_readings",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_odometer_reading_id",
                table: "chain_readings",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_reason_remark_id",
                table: "chain_readings",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_chain_readings_supersedes_id",
                table: "chain_readings",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_estimate_answers_estimate_id_recorded_at",
                table: "estimate_answers",
                columns: new[] { "estimate_id", "recorded_at" });

            migrationBuilder.CreateIndex(
                name: "ix_estimate_answers_finding_id_recorded_at",
                table: "estimate_answers",
                columns: new[] { "finding_id", "recorded_at" });

            migrationBuilder.CreateIndex(
                name: "ix_estimate_answers_person_id",
                table: "estimate_answers",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_estimate_answers_recorded_by",
                table: "estimate_answers",
                column: "recorded_by");

            migrationBuilder.CreateIndex(
                name: "ix_estimate_answers_remark_id",
                table: "estimate_answers",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_estimate_lines_reason_remark_id",
                table: "estimate_lines",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_estimates_finding_id",
                table: "estimates",
                column: "finding_id");

            migrationBuilder.CreateIndex(
                name: "ix_estimates_job_card_number_version",
                table: "estimates",
                columns: new[] { "job_card_number", "version" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_estimates_made_by",
                table: "estimates",
                column: "made_by");

            migrationBuilder.CreateIndex(
                name: "ix_findings_done_by",
                table: "findings",
                column: "done_by");

            migrationBuilder.CreateIndex(
                name: "ix_findings_found_by",
                table: "findings",
                column: "found_by");

            migrationBuilder.CreateIndex(
                name: "ix_findings_job_card_number",
                table: "findings",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_findings_text_remark_id",
                table: "findings",
                column: "text_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_findings_withdrawn_by",
                table: "findings",
                column: "withdrawn_by");

            migrationBuilder.CreateIndex(
                name: "ix_findings_withdrawn_remark_id",
                table: "findings",
                column: "withdrawn_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trial_appraisers_person_id",
                table: "gauge_trial_appraisers",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trial_appraisers_trial_id_place",
                table: "gauge_trial_appraisers",
                columns: new[] { "trial_id", "place" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trial_readings_entered_by",
                table: "gauge_trial_readings",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trial_readings_first",
                table: "gauge_trial_readings",
                columns: new[] { "trial_id", "appraiser_id", "part", "trial" },
                unique: true,
                filter: "supersedes_id is null");

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trial_readings_reason_remark_id",
                table: "gauge_trial_readings",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trial_readings_supersedes_id",
                table: "gauge_trial_readings",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trials_instrument_id",
                table: "gauge_trials",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trials_started_at_id",
                table: "gauge_trials",
                columns: new[] { "started_at", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_gauge_trials_started_by",
                table: "gauge_trials",
                column: "started_by");

            migrationBuilder.CreateIndex(
                name: "ix_goods_in_imports_content_hash",
                table: "goods_in_imports",
                column: "content_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_goods_in_imports_imported_by",
                table: "goods_in_imports",
                column: "imported_by");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_events_entered_by",
                table: "instrument_events",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_events_holder_id",
                table: "instrument_events",
                column: "holder_id");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_events_instrument_id_at",
                table: "instrument_events",
                columns: new[] { "instrument_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_instrument_events_remark_id",
                table: "instrument_events",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_substitutions_chosen_by",
                table: "kit_substitutions",
                column: "chosen_by");

            migrationBuilder.CreateIndex(
                name: "ix_kit_substitutions_instead_id",
                table: "kit_substitutions",
                column: "instead_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_substitutions_job_card_number",
                table: "kit_substitutions",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_kit_substitutions_reason_remark_id",
                table: "kit_substitutions",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_part_alternatives_alternative_id",
                table: "part_alternatives",
                column: "alternative_id");

            migrationBuilder.CreateIndex(
                name: "ix_part_scan_codes_part_id",
                table: "part_scan_codes",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_part_supplies_part_id_supplier_id",
                table: "part_supplies",
                columns: new[] { "part_id", "supplier_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_part_supplies_preferred",
                table: "part_supplies",
                column: "part_id",
                unique: true,
                filter: "preferred");

            migrationBuilder.CreateIndex(
                name: "ix_part_supplies_supplier_id",
                table: "part_supplies",
                column: "supplier_id");

            migrationBuilder.CreateIndex(
                name: "ix_photos_added_by",
                table: "photos",
                column: "added_by");

            migrationBuilder.CreateIndex(
                name: "ix_photos_caption_remark_id",
                table: "photos",
                column: "caption_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_photos_finding_id",
                table: "photos",
                column: "finding_id");

            migrationBuilder.CreateIndex(
                name: "ix_photos_job_card_number",
                table: "photos",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_photos_removed_by",
                table: "photos",
                column: "removed_by");

            migrationBuilder.CreateIndex(
                name: "ix_photos_removed_remark_id",
                table: "photos",
                column: "removed_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_position_confirmations_confirmed_by",
                table: "position_confirmations",
                column: "confirmed_by");

            migrationBuilder.CreateIndex(
                name: "ix_position_confirmations_job_card_number_confirmed_at",
                table: "position_confirmations",
                columns: new[] { "job_card_number", "confirmed_at" });

            migrationBuilder.CreateIndex(
                name: "ix_purchase_order_lines_order_number_part_id_thickness_mm",
                table: "purchase_order_lines",
                columns: new[] { "order_number", "part_id", "thickness_mm" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_purchase_order_lines_part_id",
                table: "purchase_order_lines",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_made_by",
                table: "purchase_orders",
                column: "made_by");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_placed_by",
                table: "purchase_orders",
                column: "placed_by");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_remark_id",
                table: "purchase_orders",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_state_number",
                table: "purchase_orders",
                columns: new[] { "state", "number" });

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_supplier_id",
                table: "purchase_orders",
                column: "supplier_id");

            migrationBuilder.CreateIndex(
                name: "ix_seal_inspections_inspected_by",
                table: "seal_inspections",
                column: "inspected_by");

            migrationBuilder.CreateIndex(
                name: "ix_seal_inspections_job_card_number",
                table: "seal_inspections",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_seal_inspections_remark_id",
                table: "seal_inspections",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_seal_inspections_supersedes_id",
                table: "seal_inspections",
                column: "supersedes_id");

            migrationBuilder.CreateIndex(
                name: "ix_second_person_marks_marked_by",
                table: "second_person_marks",
                column: "marked_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_count_lines_count_id_number",
                table: "stock_count_lines",
                columns: new[] { "count_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_stock_count_lines_counted_by",
                table: "stock_count_lines",
                column: "counted_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_count_lines_explained_by",
                table: "stock_count_lines",
                column: "explained_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_count_lines_lot_id",
                table: "stock_count_lines",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_count_lines_part_id",
                table: "stock_count_lines",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_count_lines_remark_id",
                table: "stock_count_lines",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_counts_closed_by",
                table: "stock_counts",
                column: "closed_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_counts_open",
                table: "stock_counts",
                column: "place_id",
                unique: true,
                filter: "closed_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_stock_counts_started_by",
                table: "stock_counts",
                column: "started_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_lots_expires_on",
                table: "stock_lots",
                column: "expires_on",
                filter: "expires_on is not null");

            migrationBuilder.CreateIndex(
                name: "ix_stock_lots_part_id_code",
                table: "stock_lots",
                columns: new[] { "part_id", "code" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_suppliers_name",
                table: "suppliers",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_tick_witnesses_witnessed_by",
                table: "tick_witnesses",
                column: "witnessed_by");

            migrationBuilder.CreateIndex(
                name: "ix_work_spells_job_card_number",
                table: "work_spells",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_work_spells_person_id_started_at",
                table: "work_spells",
                columns: new[] { "person_id", "started_at" });

            migrationBuilder.CreateIndex(
                name: "ix_wrench_adapters_name",
                table: "wrench_adapters",
                column: "name",
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_expected_deliveries_purchase_order_lines_order_line_id",
                table: "expected_deliveries",
                column: "order_line_id",
                principalTable: "purchase_order_lines",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_fastener_ticks_wrench_adapters_adapter_id",
                table: "fastener_ticks",
                column: "adapter_id",
                principalTable: "wrench_adapters",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_parts_parts_merged_into_id",
                table: "parts",
                column: "merged_into_id",
                principalTable: "parts",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_parts_parts_replaced_by_id",
                table: "parts",
                column: "replaced_by_id",
                principalTable: "parts",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_stock_balances_stock_lots_lot_id",
                table: "stock_balances",
                column: "lot_id",
                principalTable: "stock_lots",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_stock_movements_purchase_order_lines_order_line_id",
                table: "stock_movements",
                column: "order_line_id",
                principalTable: "purchase_order_lines",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_stock_movements_stock_counts_count_id",
                table: "stock_movements",
                column: "count_id",
                principalTable: "stock_counts",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_stock_movements_stock_lots_lot_id",
                table: "stock_movements",
                column: "lot_id",
                principalTable: "stock_lots",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            KeepRules(migrationBuilder);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_expected_deliveries_purchase_order_lines_order_line_id",
                table: "expected_deliveries");

            migrationBuilder.DropForeignKey(
                name: "fk_fastener_ticks_wrench_adapters_adapter_id",
                table: "fastener_ticks");

            migrationBuilder.DropForeignKey(
                name: "fk_parts_parts_merged_into_id",
                table: "parts");

            migrationBuilder.DropForeignKey(
                name: "fk_parts_parts_replaced_by_id",
                table: "parts");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_balances_stock_lots_lot_id",
                table: "stock_balances");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_movements_purchase_order_lines_order_line_id",
                table: "stock_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_movements_stock_counts_count_id",
                table: "stock_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_stock_movements_stock_lots_lot_id",
                table: "stock_movements");

            migrationBuilder.DropTable(
                name: "blade_checks");

            migrationBuilder.DropTable(
                name: "calibrations");

            migrationBuilder.DropTable(
                name: "cam_rechecks");

            migrationBuilder.DropTable(
                name: "cam_timing_readings");

            migrationBuilder.DropTable(
                name: "chain_changes");

            migrationBuilder.DropTable(
                name: "chain_readings");

            migrationBuilder.DropTable(
                name: "estimate_answers");

            migrationBuilder.DropTable(
                name: "estimate_lines");

            migrationBuilder.DropTable(
                name: "gauge_trial_readings");

            migrationBuilder.DropTable(
                name: "goods_in_imports");

            migrationBuilder.DropTable(
                name: "instrument_events");

            migrationBuilder.DropTable(
                name: "kit_substitutions");

            migrationBuilder.DropTable(
                name: "part_alternatives");

            migrationBuilder.DropTable(
                name: "part_scan_codes");

            migrationBuilder.DropTable(
                name: "part_supplies");

            migrationBuilder.DropTable(
                name: "photos");

            migrationBuilder.DropTable(
                name: "position_confirmations");

            migrationBuilder.DropTable(
                name: "purchase_order_lines");

            migrationBuilder.DropTable(
                name: "seal_inspections");

            migrationBuilder.DropTable(
                name: "second_person_marks");

            migrationBuilder.DropTable(
                name: "stock_count_lines");

            migrationBuilder.DropTable(
                name: "tax_rates");

            migrationBuilder.DropTable(
                name: "tick_witnesses");

            migrationBuilder.DropTable(
                name: "work_spells");

            migrationBuilder.DropTable(
                name: "wrench_adapters");

            migrationBuilder.DropTable(
                name: "cam_timing_checks");

            migrationBuilder.DropTable(
                name: "estimates");

            migrationBuilder.DropTable(
                name: "gauge_trial_appraisers");

            migrationBuilder.DropTable(
                name: "purchase_orders");

            migrationBuilder.DropTable(
                name: "stock_counts");

            migrationBuilder.DropTable(
                name: "stock_lots");

            migrationBuilder.DropTable(
                name: "findings");

            migrationBuilder.DropTable(
                name: "gauge_trials");

            migrationBuilder.DropTable(
                name: "suppliers");

            migrationBuilder.DropIndex(
                name: "ix_storage_places_code",
                table: "storage_places");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_count_id",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_lot_id",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_moved_by_moved_at",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_order_line_id",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_part_id_moved_at_id",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_movements_reserved",
                table: "stock_movements");

            migrationBuilder.DropIndex(
                name: "ix_stock_balances_lot_id",
                table: "stock_balances");

            migrationBuilder.DropIndex(
                name: "ix_stock_balances_part_id_place_id_thickness_mm_condition_lot_",
                table: "stock_balances");

            migrationBuilder.DropIndex(
                name: "ix_parts_kind_inner_diameter_mm_section_mm",
                table: "parts");

            migrationBuilder.DropIndex(
                name: "ix_parts_merged_into_id",
                table: "parts");

            migrationBuilder.DropIndex(
                name: "ix_parts_replaced_by_id",
                table: "parts");

            migrationBuilder.DropCheckConstraint(
                name: "ck_parts_merged",
                table: "parts");

            migrationBuilder.DropCheckConstraint(
                name: "ck_instruments_scale",
                table: "instruments");

            migrationBuilder.DropIndex(
                name: "ix_fastener_ticks_adapter_id",
                table: "fastener_ticks");

            migrationBuilder.DropIndex(
                name: "ix_fastener_ticks_wrench_id_ticked_at",
                table: "fastener_ticks");

            migrationBuilder.DropIndex(
                name: "ix_expected_deliveries_order_line_id",
                table: "expected_deliveries");

            migrationBuilder.DropColumn(
                name: "currency",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "labour_net_per_hour",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "service_level",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "tax_rate_code",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "code",
                table: "storage_places");

            migrationBuilder.DropColumn(
                name: "retired",
                table: "storage_places");

            migrationBuilder.DropColumn(
                name: "walk_order",
                table: "storage_places");

            migrationBuilder.DropColumn(
                name: "xmin",
                table: "storage_places");

            migrationBuilder.DropColumn(
                name: "count_id",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "lot_id",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "order_line_id",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "unit_cost",
                table: "stock_movements");

            migrationBuilder.DropColumn(
                name: "lot_id",
                table: "stock_balances");

            migrationBuilder.DropColumn(
                name: "designation",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "fitted_once",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "form",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "hardness",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "merged_into_id",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "net_price",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "pack_quantity",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "reorder_point",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "replaced_by_id",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "service_level",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "shelf_life_months",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "stocked",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "tax_rate_code",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "calibration_cycles",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "calibration_months",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "damage",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "damaged_on",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "drive",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "graduation",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "length_mm",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "released_beyond_cycles",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "released_on",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "released_until",
                table: "instruments");

            migrationBuilder.DropColumn(
                name: "adapter_angle_degrees",
                table: "fastener_ticks");

            migrationBuilder.DropColumn(
                name: "adapter_id",
                table: "fastener_ticks");

            migrationBuilder.DropColumn(
                name: "cycles",
                table: "fastener_ticks");

            migrationBuilder.DropColumn(
                name: "dialled",
                table: "fastener_ticks");

            migrationBuilder.DropColumn(
                name: "order_line_id",
                table: "expected_deliveries");

            migrationBuilder.DropSequence(
                name: "storage_place_codes");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_moved_by",
                table: "stock_movements",
                column: "moved_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_part_id_moved_at",
                table: "stock_movements",
                columns: new[] { "part_id", "moved_at" });

            migrationBuilder.CreateIndex(
                name: "ix_stock_balances_part_id_place_id_thickness_mm_condition",
                table: "stock_balances",
                columns: new[] { "part_id", "place_id", "thickness_mm", "condition" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_wrench_id",
                table: "fastener_ticks",
                column: "wrench_id");
        }
    }
}
