using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class BeforeAndAfter : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "arrival_notes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    subject = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    struck = table.Column<bool>(type: "boolean", nullable: false),
                    words_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    noted_by = table.Column<Guid>(type: "uuid", nullable: false),
                    noted_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_arrival_notes", x => x.id);
                    table.CheckConstraint("ck_arrival_notes_reason", "supersedes_id is null or reason_remark_id is not null");
                    table.CheckConstraint("ck_arrival_notes_struck", "not struck or supersedes_id is not null");
                    table.CheckConstraint("ck_arrival_notes_subject", "(subject is null) = (state = 'none_seen')");
                    table.ForeignKey(
                        name: "fk_arrival_notes_arrival_notes_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "arrival_notes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_arrival_notes_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_arrival_notes_people_noted_by",
                        column: x => x.noted_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_arrival_notes_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_arrival_notes_remarks_words_remark_id",
                        column: x => x.words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "as_left_marks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: true),
                    marked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    marked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_as_left_marks", x => x.id);
                    table.ForeignKey(
                        name: "fk_as_left_marks_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_as_left_marks_people_marked_by",
                        column: x => x.marked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "as_left_witnesses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    readings_seen = table.Column<int>(type: "integer", nullable: false),
                    witnessed_by = table.Column<Guid>(type: "uuid", nullable: false),
                    witnessed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_as_left_witnesses", x => x.id);
                    table.CheckConstraint("ck_as_left_witnesses_readings", "readings_seen > 0");
                    table.ForeignKey(
                        name: "fk_as_left_witnesses_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_as_left_witnesses_people_witnessed_by",
                        column: x => x.witnessed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "balance_runs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    speed_rpm = table.Column<int>(type: "integer", nullable: false),
                    hot_at_c = table.Column<decimal>(type: "numeric(4,1)", precision: 4, scale: 1, nullable: false),
                    hot_of = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    gauge_id = table.Column<Guid>(type: "uuid", nullable: false),
                    measured_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    measured_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_balance_runs", x => x.id);
                    table.CheckConstraint("ck_balance_runs_attempt", "attempt >= 1 and speed_rpm > 0");
                    table.ForeignKey(
                        name: "fk_balance_runs_balance_runs_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "balance_runs",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_balance_runs_instruments_gauge_id",
                        column: x => x.gauge_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_balance_runs_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_balance_runs_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_balance_runs_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "comebacks",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    of_job_card_number = table.Column<int>(type: "integer", nullable: false),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_comebacks", x => x.job_card_number);
                    table.CheckConstraint("ck_comebacks_earlier", "of_job_card_number <> job_card_number");
                    table.ForeignKey(
                        name: "fk_comebacks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_comebacks_job_cards_of_job_card_number",
                        column: x => x.of_job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_comebacks_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_comebacks_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "count_explanations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    thing_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    difference = table.Column<int>(type: "integer", nullable: false),
                    words_remark_id = table.Column<Guid>(type: "uuid", nullable: false),
                    explained_by = table.Column<Guid>(type: "uuid", nullable: false),
                    explained_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_count_explanations", x => x.id);
                    table.CheckConstraint("ck_count_explanations_difference", "difference <> 0");
                    table.ForeignKey(
                        name: "fk_count_explanations_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_count_explanations_people_explained_by",
                        column: x => x.explained_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_count_explanations_remarks_words_remark_id",
                        column: x => x.words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "count_taps",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    thing_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    thing_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    way = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    change = table.Column<int>(type: "integer", nullable: false),
                    counted_by = table.Column<Guid>(type: "uuid", nullable: false),
                    counted_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_count_taps", x => x.id);
                    table.CheckConstraint("ck_count_taps_change", "change <> 0");
                    table.ForeignKey(
                        name: "fk_count_taps_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_count_taps_people_counted_by",
                        column: x => x.counted_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "cylinder_tests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    cylinder = table.Column<int>(type: "integer", nullable: false),
                    method = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    pressure_kpa = table.Column<decimal>(type: "numeric(7,2)", precision: 7, scale: 2, nullable: false),
                    loss_percent = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    heard_at_intake = table.Column<bool>(type: "boolean", nullable: false),
                    heard_at_exhaust = table.Column<bool>(type: "boolean", nullable: false),
                    heard_at_crankcase = table.Column<bool>(type: "boolean", nullable: false),
                    heard_in_coolant = table.Column<bool>(type: "boolean", nullable: false),
                    warmth = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    throttle_open = table.Column<bool>(type: "boolean", nullable: false),
                    tries = table.Column<int>(type: "integer", nullable: true),
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
                    table.PrimaryKey("pk_cylinder_tests", x => x.id);
                    table.CheckConstraint("ck_cylinder_tests_attempt", "attempt >= 1 and cylinder >= 1 and pressure_kpa >= 0 and coalesce(tries, 1) >= 1");
                    table.CheckConstraint("ck_cylinder_tests_loss", "case method\n  when 'leak_down' then loss_percent between 0 and 100 and pressure_kpa > 0 and tries is null\n  else loss_percent is null and not (heard_at_intake or heard_at_exhaust or heard_at_crankcase or heard_in_coolant)\nend");
                    table.CheckConstraint("ck_cylinder_tests_reason", "supersedes_id is null or reason_remark_id is not null");
                    table.ForeignKey(
                        name: "fk_cylinder_tests_cylinder_tests_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "cylinder_tests",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cylinder_tests_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "issued_records",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    issued_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    issued_by = table.Column<Guid>(type: "uuid", nullable: false),
                    is_later = table.Column<bool>(type: "boolean", nullable: false),
                    document = table.Column<string>(type: "jsonb", nullable: false),
                    words = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_issued_records", x => x.job_card_number);
                    table.ForeignKey(
                        name: "fk_issued_records_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_issued_records_people_issued_by",
                        column: x => x.issued_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "leak_looks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    place_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    place_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    words_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    run_minutes = table.Column<int>(type: "integer", nullable: false),
                    looked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    looked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_leak_looks", x => x.id);
                    table.CheckConstraint("ck_leak_looks_words", "attempt >= 1 and run_minutes > 0 and (state = 'dry' or words_remark_id is not null)");
                    table.ForeignKey(
                        name: "fk_leak_looks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_leak_looks_leak_looks_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "leak_looks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_leak_looks_people_looked_by",
                        column: x => x.looked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_leak_looks_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_leak_looks_remarks_words_remark_id",
                        column: x => x.words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "plug_checks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    cylinder = table.Column<int>(type: "integer", nullable: false),
                    plug = table.Column<int>(type: "integer", nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    condition = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    gap_found_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    renewed = table.Column<bool>(type: "boolean", nullable: false),
                    part_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    gap_left_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    gauge = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    checked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    checked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_plug_checks", x => x.id);
                    table.CheckConstraint("ck_plug_checks_attempt", "attempt >= 1 and cylinder >= 1 and plug >= 1");
                    table.CheckConstraint("ck_plug_checks_gaps", "gap_left_mm > 0 and coalesce(gap_found_mm, 1) > 0");
                    table.CheckConstraint("ck_plug_checks_part", "renewed or part_code is null");
                    table.CheckConstraint("ck_plug_checks_reason", "supersedes_id is null or reason_remark_id is not null");
                    table.ForeignKey(
                        name: "fk_plug_checks_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_people_checked_by",
                        column: x => x.checked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_plug_checks_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "plug_checks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_plug_checks_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "reminder_resets",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    outcome = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    words_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_reminder_resets", x => x.id);
                    table.CheckConstraint("ck_reminder_resets_words", "attempt >= 1 and (outcome <> 'not_reset' or words_remark_id is not null)");
                    table.ForeignKey(
                        name: "fk_reminder_resets_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_reminder_resets_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_reminder_resets_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_reminder_resets_remarks_words_remark_id",
                        column: x => x.words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_reminder_resets_reminder_resets_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "reminder_resets",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "test_rides",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    why_not = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    rider_id = table.Column<Guid>(type: "uuid", nullable: true),
                    distance_m = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: true),
                    words_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    ridden_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_test_rides", x => x.id);
                    table.CheckConstraint("ck_test_rides_ridden", "attempt >= 1 and case\n  when why_not is null then rider_id is not null and distance_m is not null\n  else rider_id is null and distance_m is null and odometer_reading_id is null\nend");
                    table.ForeignKey(
                        name: "fk_test_rides_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_test_rides_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_test_rides_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_test_rides_people_rider_id",
                        column: x => x.rider_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_test_rides_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_test_rides_remarks_words_remark_id",
                        column: x => x.words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_test_rides_test_rides_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "test_rides",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "visit_rechecks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    point = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    fastener_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    in_order = table.Column<bool>(type: "boolean", nullable: false),
                    words_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    early_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    wrench_id = table.Column<Guid>(type: "uuid", nullable: true),
                    rechecked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    rechecked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visit_rechecks", x => x.id);
                    table.CheckConstraint("ck_visit_rechecks_point", "attempt >= 1 and (point = 'torque') = (fastener_code is not null) and (point = 'torque' or wrench_id is null) and (in_order or words_remark_id is not null)");
                    table.ForeignKey(
                        name: "fk_visit_rechecks_instruments_wrench_id",
                        column: x => x.wrench_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_rechecks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_rechecks_people_rechecked_by",
                        column: x => x.rechecked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_rechecks_remarks_early_remark_id",
                        column: x => x.early_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_rechecks_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_rechecks_remarks_words_remark_id",
                        column: x => x.words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_rechecks_visit_rechecks_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "visit_rechecks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "balance_vacuums",
                columns: table => new
                {
                    run_id = table.Column<Guid>(type: "uuid", nullable: false),
                    cylinder = table.Column<int>(type: "integer", nullable: false),
                    vacuum_kpa = table.Column<decimal>(type: "numeric(7,2)", precision: 7, scale: 2, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_balance_vacuums", x => new { x.run_id, x.cylinder });
                    table.CheckConstraint("ck_balance_vacuums_cylinder", "cylinder >= 1 and vacuum_kpa >= 0");
                    table.ForeignKey(
                        name: "fk_balance_vacuums_balance_runs_run_id",
                        column: x => x.run_id,
                        principalTable: "balance_runs",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "record_links",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    secret_digest = table.Column<byte[]>(type: "bytea", nullable: false),
                    created_by = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    revoked_by = table.Column<Guid>(type: "uuid", nullable: true),
                    opened = table.Column<int>(type: "integer", nullable: false),
                    last_opened_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_record_links", x => x.id);
                    table.CheckConstraint("ck_record_links_lives", "expires_at > created_at");
                    table.CheckConstraint("ck_record_links_opened", "opened >= 0 and (opened > 0) = (last_opened_at is not null)");
                    table.ForeignKey(
                        name: "fk_record_links_issued_records_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "issued_records",
                        principalColumn: "job_card_number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_record_links_people_created_by",
                        column: x => x.created_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_record_links_people_revoked_by",
                        column: x => x.revoked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_arrival_notes_job_card_number",
                table: "arrival_notes",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_arrival_notes_noted_by",
                table: "arrival_notes",
                column: "noted_by");

            migrationBuilder.CreateIndex(
                name: "ix_arrival_notes_reason_remark_id",
                table: "arrival_notes",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_arrival_notes_supersedes_id",
                table: "arrival_notes",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_arrival_notes_words_remark_id",
                table: "arrival_notes",
                column: "words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_as_left_marks_engine_model_id",
                table: "as_left_marks",
                column: "engine_model_id",
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_as_left_marks_marked_by",
                table: "as_left_marks",
                column: "marked_by");

            migrationBuilder.CreateIndex(
                name: "ix_as_left_witnesses_job_card_number_readings_seen",
                table: "as_left_witnesses",
                columns: new[] { "job_card_number", "readings_seen" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_as_left_witnesses_witnessed_by",
                table: "as_left_witnesses",
                column: "witnessed_by");

            migrationBuilder.CreateIndex(
                name: "ix_balance_runs_gauge_id",
                table: "balance_runs",
                column: "gauge_id");

            migrationBuilder.CreateIndex(
                name: "ix_balance_runs_job_card_number_stage_attempt",
                table: "balance_runs",
                columns: new[] { "job_card_number", "stage", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_balance_runs_measured_by",
                table: "balance_runs",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_balance_runs_reason_remark_id",
                table: "balance_runs",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_balance_runs_supersedes_id",
                table: "balance_runs",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_comebacks_entered_by",
                table: "comebacks",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_comebacks_of_job_card_number",
                table: "comebacks",
                column: "of_job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_comebacks_reason_remark_id",
                table: "comebacks",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_count_explanations_explained_by",
                table: "count_explanations",
                column: "explained_by");

            migrationBuilder.CreateIndex(
                name: "ix_count_explanations_job_card_number_thing_code",
                table: "count_explanations",
                columns: new[] { "job_card_number", "thing_code" });

            migrationBuilder.CreateIndex(
                name: "ix_count_explanations_words_remark_id",
                table: "count_explanations",
                column: "words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_count_taps_counted_by",
                table: "count_taps",
                column: "counted_by");

            migrationBuilder.CreateIndex(
                name: "ix_count_taps_job_card_number_thing_code",
                table: "count_taps",
                columns: new[] { "job_card_number", "thing_code" });

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_engine_id",
                table: "cylinder_tests",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_entered_by",
                table: "cylinder_tests",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_instrument_id",
                table: "cylinder_tests",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_job_card_number_cylinder_method_stage_attempt",
                table: "cylinder_tests",
                columns: new[] { "job_card_number", "cylinder", "method", "stage", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_measured_by",
                table: "cylinder_tests",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_odometer_reading_id",
                table: "cylinder_tests",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_reason_remark_id",
                table: "cylinder_tests",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_cylinder_tests_supersedes_id",
                table: "cylinder_tests",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_issued_records_issued_by",
                table: "issued_records",
                column: "issued_by");

            migrationBuilder.CreateIndex(
                name: "ix_leak_looks_job_card_number_place_code_attempt",
                table: "leak_looks",
                columns: new[] { "job_card_number", "place_code", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_leak_looks_looked_by",
                table: "leak_looks",
                column: "looked_by");

            migrationBuilder.CreateIndex(
                name: "ix_leak_looks_reason_remark_id",
                table: "leak_looks",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_leak_looks_supersedes_id",
                table: "leak_looks",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_leak_looks_words_remark_id",
                table: "leak_looks",
                column: "words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_checked_by",
                table: "plug_checks",
                column: "checked_by");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_engine_id",
                table: "plug_checks",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_entered_by",
                table: "plug_checks",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_instrument_id",
                table: "plug_checks",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_job_card_number_cylinder_plug_attempt",
                table: "plug_checks",
                columns: new[] { "job_card_number", "cylinder", "plug", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_odometer_reading_id",
                table: "plug_checks",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_reason_remark_id",
                table: "plug_checks",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_plug_checks_supersedes_id",
                table: "plug_checks",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_record_links_created_by",
                table: "record_links",
                column: "created_by");

            migrationBuilder.CreateIndex(
                name: "ix_record_links_job_card_number",
                table: "record_links",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_record_links_revoked_by",
                table: "record_links",
                column: "revoked_by");

            migrationBuilder.CreateIndex(
                name: "ix_record_links_secret_digest",
                table: "record_links",
                column: "secret_digest",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_reminder_resets_entered_by",
                table: "reminder_resets",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_reminder_resets_job_card_number_attempt",
                table: "reminder_resets",
                columns: new[] { "job_card_number", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_reminder_resets_reason_remark_id",
                table: "reminder_resets",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_reminder_resets_supersedes_id",
                table: "reminder_resets",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_reminder_resets_words_remark_id",
                table: "reminder_resets",
                column: "words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_entered_by",
                table: "test_rides",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_job_card_number_attempt",
                table: "test_rides",
                columns: new[] { "job_card_number", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_odometer_reading_id",
                table: "test_rides",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_reason_remark_id",
                table: "test_rides",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_rider_id",
                table: "test_rides",
                column: "rider_id");

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_supersedes_id",
                table: "test_rides",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_test_rides_words_remark_id",
                table: "test_rides",
                column: "words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_early_remark_id",
                table: "visit_rechecks",
                column: "early_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_job_card_number_point_fastener_code_attempt",
                table: "visit_rechecks",
                columns: new[] { "job_card_number", "point", "fastener_code", "attempt" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_reason_remark_id",
                table: "visit_rechecks",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_rechecked_by",
                table: "visit_rechecks",
                column: "rechecked_by");

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_supersedes_id",
                table: "visit_rechecks",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_words_remark_id",
                table: "visit_rechecks",
                column: "words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_visit_rechecks_wrench_id",
                table: "visit_rechecks",
                column: "wrench_id");

            KeepRules(migrationBuilder);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "arrival_notes");

            migrationBuilder.DropTable(
                name: "as_left_marks");

            migrationBuilder.DropTable(
                name: "as_left_witnesses");

            migrationBuilder.DropTable(
                name: "balance_vacuums");

            migrationBuilder.DropTable(
                name: "comebacks");

            migrationBuilder.DropTable(
                name: "count_explanations");

            migrationBuilder.DropTable(
                name: "count_taps");

            migrationBuilder.DropTable(
                name: "cylinder_tests");

            migrationBuilder.DropTable(
                name: "leak_looks");

            migrationBuilder.DropTable(
                name: "plug_checks");

            migrationBuilder.DropTable(
                name: "record_links");

            migrationBuilder.DropTable(
                name: "reminder_resets");

            migrationBuilder.DropTable(
                name: "test_rides");

            migrationBuilder.DropTable(
                name: "visit_rechecks");

            migrationBuilder.DropTable(
                name: "balance_runs");

            migrationBuilder.DropTable(
                name: "issued_records");
        }
    }
}
