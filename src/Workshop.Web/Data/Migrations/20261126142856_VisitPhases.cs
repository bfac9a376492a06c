using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>
    /// Visits by phases, what technicians work and when they are away, how far a visit is, calendar links; and who changes
    /// anything that a wall screen shows says so on the channel <c>workshop_floor</c>.
    /// </summary>
    public partial class VisitPhases : Migration
    {
        private static readonly string[] AppendOnly = ["phase_starts", "engine_stops", "motorcycle_moves"];

        private static readonly string[] Audited =
        [
            "working_hours", "work_breaks", "absences", "planned_phases", "visit_wishes", "calendar_feeds", "visit_waits", "expected_deliveries",
        ];

        private static readonly string[] OnTheFloor =
        [
            "job_cards", "job_card_items", "planned_phases", "occupancies", "check_ins", "phase_starts", "engine_stops", "motorcycle_moves",
            "visit_waits", "absences", "resources", "sign_offs",
        ];

        // Visits that were booked before there were phases are all work.
        private const string WorkOfEarlierVisits =
            """
            insert into planned_phases (job_card_number, phase, span)
              select number, 'work', tstzrange(starts_at, ends_at) from job_cards where state <> 'cancelled';
            """;

        private const string FloorChanges =
            """
            create function tell_floor() returns trigger language plpgsql as $$
            begin
              perform pg_notify('workshop_floor', tg_table_name);
              return null;
            end $$;
            """;

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "arrival_minutes",
                table: "workshop_profiles",
                type: "integer",
                nullable: false,
                defaultValue: 15);

            migrationBuilder.AddColumn<int>(
                name: "hand_over_minutes",
                table: "workshop_profiles",
                type: "integer",
                nullable: false,
                defaultValue: 15);

            migrationBuilder.AddColumn<int>(
                name: "test_ride_minutes",
                table: "workshop_profiles",
                type: "integer",
                nullable: false,
                defaultValue: 20);

            migrationBuilder.AddColumn<int>(
                name: "warm_run_minutes",
                table: "workshop_profiles",
                type: "integer",
                nullable: false,
                defaultValue: 15);

            migrationBuilder.AddColumn<string>(
                name: "grade",
                table: "resources",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "delivery_days",
                table: "parts",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "plan_revision",
                table: "job_cards",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "absences",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    resource_id = table.Column<Guid>(type: "uuid", nullable: false),
                    span = table.Column<Interval>(type: "tstzrange", nullable: false),
                    reason = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    withdrawn_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_absences", x => x.id);
                    table.CheckConstraint("ck_absences_span", "not isempty(span) and lower(span) is not null and upper(span) is not null");
                    table.ForeignKey(
                        name: "fk_absences_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_absences_resources_resource_id",
                        column: x => x.resource_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "calendar_feeds",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    resource_id = table.Column<Guid>(type: "uuid", nullable: false),
                    secret_digest = table.Column<byte[]>(type: "bytea", nullable: false),
                    created_by = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_calendar_feeds", x => x.id);
                    table.ForeignKey(
                        name: "fk_calendar_feeds_people_created_by",
                        column: x => x.created_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_calendar_feeds_resources_resource_id",
                        column: x => x.resource_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "engine_stops",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    stopped_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_engine_stops", x => x.id);
                    table.ForeignKey(
                        name: "fk_engine_stops_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_engine_stops_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "expected_deliveries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: true),
                    quantity = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    expected_on = table.Column<LocalDate>(type: "date", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    closed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_expected_deliveries", x => x.id);
                    table.CheckConstraint("ck_expected_deliveries_quantity", "quantity > 0");
                    table.ForeignKey(
                        name: "fk_expected_deliveries_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_expected_deliveries_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "motorcycle_moves",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    resource_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tag_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    moved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    moved_by = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_motorcycle_moves", x => x.id);
                    table.ForeignKey(
                        name: "fk_motorcycle_moves_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_motorcycle_moves_people_moved_by",
                        column: x => x.moved_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_motorcycle_moves_remarks_tag_remark_id",
                        column: x => x.tag_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_motorcycle_moves_resources_resource_id",
                        column: x => x.resource_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "phase_starts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    phase = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    technician_id = table.Column<Guid>(type: "uuid", nullable: true),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_phase_starts", x => x.id);
                    table.ForeignKey(
                        name: "fk_phase_starts_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_phase_starts_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_phase_starts_resources_technician_id",
                        column: x => x.technician_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "planned_phases",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    phase = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    span = table.Column<Interval>(type: "tstzrange", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_planned_phases", x => new { x.job_card_number, x.phase });
                    table.CheckConstraint("ck_planned_phases_span", "not isempty(span) and lower(span) is not null and upper(span) is not null");
                    table.ForeignKey(
                        name: "fk_planned_phases_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "visit_waits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    @for = table.Column<string>(name: "for", type: "character varying(40)", maxLength: 40, nullable: false),
                    since = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expected_until = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visit_waits", x => x.id);
                    table.CheckConstraint("ck_visit_waits_order", "expected_until > since");
                    table.ForeignKey(
                        name: "fk_visit_waits_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_waits_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_waits_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "visit_wishes",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    not_before = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ready_by = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    technician_id = table.Column<Guid>(type: "uuid", nullable: true),
                    bay_id = table.Column<Guid>(type: "uuid", nullable: true),
                    test_run_at_arrival = table.Column<bool>(type: "boolean", nullable: false),
                    work_minutes = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visit_wishes", x => x.job_card_number);
                    table.CheckConstraint("ck_visit_wishes_minutes", "work_minutes > 0");
                    table.ForeignKey(
                        name: "fk_visit_wishes_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_wishes_resources_bay_id",
                        column: x => x.bay_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_visit_wishes_resources_technician_id",
                        column: x => x.technician_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "work_breaks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    resource_id = table.Column<Guid>(type: "uuid", nullable: false),
                    weekday = table.Column<int>(type: "integer", nullable: false),
                    starts_at = table.Column<LocalTime>(type: "time", nullable: false),
                    ends_at = table.Column<LocalTime>(type: "time", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_work_breaks", x => x.id);
                    table.CheckConstraint("ck_work_breaks_order", "ends_at > starts_at");
                    table.ForeignKey(
                        name: "fk_work_breaks_resources_resource_id",
                        column: x => x.resource_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "working_hours",
                columns: table => new
                {
                    resource_id = table.Column<Guid>(type: "uuid", nullable: false),
                    weekday = table.Column<int>(type: "integer", nullable: false),
                    starts_at = table.Column<LocalTime>(type: "time", nullable: false),
                    ends_at = table.Column<LocalTime>(type: "time", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_working_hours", x => new { x.resource_id, x.weekday });
                    table.CheckConstraint("ck_working_hours_order", "ends_at > starts_at");
                    table.ForeignKey(
                        name: "fk_working_hours_resources_resource_id",
                        column: x => x.resource_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_workshop_profiles_minutes",
                table: "workshop_profiles",
                sql: "least(arrival_minutes, warm_run_minutes, test_ride_minutes, hand_over_minutes) >= 0");

            migrationBuilder.CreateIndex(
                name: "ix_absences_entered_by",
                table: "absences",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_absences_resource_id",
                table: "absences",
                column: "resource_id");

            migrationBuilder.CreateIndex(
                name: "ix_absences_span",
                table: "absences",
                column: "span")
                .Annotation("Npgsql:IndexMethod", "gist");

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_created_by",
                table: "calendar_feeds",
                column: "created_by");

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_resource_id",
                table: "calendar_feeds",
                column: "resource_id");

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_secret_digest",
                table: "calendar_feeds",
                column: "secret_digest",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_engine_stops_entered_by",
                table: "engine_stops",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_engine_stops_job_card_number",
                table: "engine_stops",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_expected_deliveries_entered_by",
                table: "expected_deliveries",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_expected_deliveries_part_id",
                table: "expected_deliveries",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_motorcycle_moves_job_card_number",
                table: "motorcycle_moves",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_motorcycle_moves_moved_by",
                table: "motorcycle_moves",
                column: "moved_by");

            migrationBuilder.CreateIndex(
                name: "ix_motorcycle_moves_resource_id",
                table: "motorcycle_moves",
                column: "resource_id");

            migrationBuilder.CreateIndex(
                name: "ix_motorcycle_moves_tag_remark_id",
                table: "motorcycle_moves",
                column: "tag_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_phase_starts_entered_by",
                table: "phase_starts",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_phase_starts_job_card_number",
                table: "phase_starts",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_phase_starts_technician_id",
                table: "phase_starts",
                column: "technician_id");

            migrationBuilder.CreateIndex(
                name: "ix_planned_phases_span",
                table: "planned_phases",
                column: "span")
                .Annotation("Npgsql:IndexMethod", "gist");

            migrationBuilder.CreateIndex(
                name: "ix_visit_waits_entered_by",
                table: "visit_waits",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_visit_waits_one_open",
                table: "visit_waits",
                column: "job_card_number",
                unique: true,
                filter: "ended_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_visit_waits_remark_id",
                table: "visit_waits",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_visit_wishes_bay_id",
                table: "visit_wishes",
                column: "bay_id");

            migrationBuilder.CreateIndex(
                name: "ix_visit_wishes_technician_id",
                table: "visit_wishes",
                column: "technician_id");

            migrationBuilder.CreateIndex(
                name: "ix_work_breaks_resource_id",
                table: "work_breaks",
                column: "resource_id");

            migrationBuilder.Sql(WorkOfEarlierVisits);
            foreach (var table in AppendOnly)
            {
                migrationBuilder.Sql($"select keep_append_only('{table}');");
            }

            foreach (var table in Audited)
            {
                migrationBuilder.Sql($"select keep_audit('{table}', false);");
            }

            migrationBuilder.Sql(FloorChanges);
            foreach (var table in OnTheFloor)
            {
                migrationBuilder.Sql($"create trigger tell_floor after insert or update or delete on {table} for each statement execute function tell_floor();");
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("drop function tell_floor() cascade;");
            migrationBuilder.DropTable(
                name: "absences");

            migrationBuilder.DropTable(
                name: "calendar_feeds");

            migrationBuilder.DropTable(
                name: "engine_stops");

            migrationBuilder.DropTable(
                name: "expected_deliveries");

            migrationBuilder.DropTable(
                name: "motorcycle_moves");

            migrationBuilder.DropTable(
                name: "phase_starts");

            migrationBuilder.DropTable(
                name: "planned_phases");

            migrationBuilder.DropTable(
                name: "visit_waits");

            migrationBuilder.DropTable(
                name: "visit_wishes");

            migrationBuilder.DropTable(
                name: "work_breaks");

            migrationBuilder.DropTable(
                name: "working_hours");

            migrationBuilder.DropCheckConstraint(
                name: "ck_workshop_profiles_minutes",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "arrival_minutes",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "hand_over_minutes",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "test_ride_minutes",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "warm_run_minutes",
                table: "workshop_profiles");

            migrationBuilder.DropColumn(
                name: "grade",
                table: "resources");

            migrationBuilder.DropColumn(
                name: "delivery_days",
                table: "parts");

            migrationBuilder.DropColumn(
                name: "plan_revision",
                table: "job_cards");
        }
    }
}
