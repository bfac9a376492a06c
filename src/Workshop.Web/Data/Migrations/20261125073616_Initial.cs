using System;
using System.Collections.Generic;
using System.Text.Json;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterDatabase()
                .Annotation("Npgsql:PostgresExtension:btree_gist", ",,");

            migrationBuilder.CreateTable(
                name: "audit_rows",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()"),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    request_id = table.Column<string>(type: "text", nullable: true),
                    table_name = table.Column<string>(type: "character varying(63)", maxLength: 63, nullable: false),
                    operation = table.Column<string>(type: "character varying(6)", maxLength: 6, nullable: false),
                    row_key = table.Column<JsonDocument>(type: "jsonb", nullable: false),
                    changes = table.Column<JsonDocument>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit_rows", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "engine_models",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    maker = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    invented = table.Column<bool>(type: "boolean", nullable: false),
                    current_version = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_engine_models", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "holidays",
                columns: table => new
                {
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_holidays", x => x.day);
                });

            migrationBuilder.CreateTable(
                name: "opening_hours",
                columns: table => new
                {
                    weekday = table.Column<int>(type: "integer", nullable: false),
                    opens_at = table.Column<LocalTime>(type: "time", nullable: false),
                    closes_at = table.Column<LocalTime>(type: "time", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_opening_hours", x => x.weekday);
                    table.CheckConstraint("ck_opening_hours_order", "closes_at > opens_at");
                });

            migrationBuilder.CreateTable(
                name: "parts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    unit = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    inner_diameter_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    outer_diameter_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    section_mm = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    material = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    discontinued = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_parts", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    phone = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    email = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: true),
                    is_staff = table.Column<bool>(type: "boolean", nullable: false),
                    erased_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "roles",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_roles", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "storage_places",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_storage_places", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "stored_answers",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    use_case = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    key = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    request_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    answer = table.Column<string>(type: "jsonb", nullable: false),
                    answered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_answers", x => new { x.person_id, x.use_case, x.key });
                });

            migrationBuilder.CreateTable(
                name: "workshop_profiles",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    time_zone = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    invented = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshop_profiles", x => x.id);
                    table.CheckConstraint("ck_workshop_profiles_one", "id = 1");
                });

            migrationBuilder.CreateTable(
                name: "engines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial_number = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_engines", x => x.id);
                    table.ForeignKey(
                        name: "fk_engines_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "accounts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "text", nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_accounts", x => x.id);
                    table.ForeignKey(
                        name: "fk_accounts_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "engine_model_versions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    specification = table.Column<string>(type: "jsonb", nullable: false),
                    created_by = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_engine_model_versions", x => x.id);
                    table.ForeignKey(
                        name: "fk_engine_model_versions_engine_models_engine_model_id",
                        column: x => x.engine_model_id,
                        principalTable: "engine_models",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_engine_model_versions_people_created_by",
                        column: x => x.created_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "instruments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    serial_number = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    unit = table.Column<string>(type: "character varying(12)", maxLength: 12, nullable: false),
                    range_lowest = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    range_highest = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    uncertainty = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: true),
                    calibrated_on = table.Column<LocalDate>(type: "date", nullable: true),
                    calibration_due_on = table.Column<LocalDate>(type: "date", nullable: true),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    holder_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instruments", x => x.id);
                    table.ForeignKey(
                        name: "fk_instruments_people_holder_id",
                        column: x => x.holder_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "motorcycles",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    registration = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: false),
                    vin = table.Column<string>(type: "character varying(17)", maxLength: 17, nullable: true),
                    maker = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    model = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    model_year = table.Column<int>(type: "integer", nullable: false),
                    owner_id = table.Column<Guid>(type: "uuid", nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_motorcycles", x => x.id);
                    table.ForeignKey(
                        name: "fk_motorcycles_people_owner_id",
                        column: x => x.owner_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "reading_imports",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    file_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    rows = table.Column<int>(type: "integer", nullable: false),
                    imported_by = table.Column<Guid>(type: "uuid", nullable: false),
                    imported_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_reading_imports", x => x.id);
                    table.ForeignKey(
                        name: "fk_reading_imports_people_imported_by",
                        column: x => x.imported_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "remarks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    text = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    written_by = table.Column<Guid>(type: "uuid", nullable: false),
                    written_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    erased_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_remarks", x => x.id);
                    table.ForeignKey(
                        name: "fk_remarks_people_written_by",
                        column: x => x.written_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "resources",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    capabilities = table.Column<List<string>>(type: "text[]", nullable: false),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_resources", x => x.id);
                    table.ForeignKey(
                        name: "fk_resources_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "role_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    role_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_role_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_role_claims_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "stock_balances",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: true),
                    condition = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    on_hand = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    reserved = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_balances", x => x.id);
                    table.CheckConstraint("ck_stock_balances_not_below_zero", "on_hand >= 0 and reserved >= 0");
                    table.ForeignKey(
                        name: "fk_stock_balances_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_balances_storage_places_place_id",
                        column: x => x.place_id,
                        principalTable: "storage_places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "clearance_forecasts",
                columns: table => new
                {
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    valve = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: false),
                    lobe = table.Column<int>(type: "integer", nullable: false),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    readings = table.Column<int>(type: "integer", nullable: false),
                    present_mm = table.Column<decimal>(type: "numeric(8,4)", precision: 8, scale: 4, nullable: true),
                    drift_mm_per_10000_km = table.Column<decimal>(type: "numeric(10,6)", precision: 10, scale: 6, nullable: true),
                    drift_standard_error = table.Column<decimal>(type: "numeric(10,6)", precision: 10, scale: 6, nullable: true),
                    leaves_limits_at_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    leaves_limits_earliest_at_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    leaves_limits_on = table.Column<LocalDate>(type: "date", nullable: true),
                    reason = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_clearance_forecasts", x => new { x.engine_id, x.valve, x.lobe });
                    table.ForeignKey(
                        name: "fk_clearance_forecasts_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "account_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_account_claims_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    provider_key = table.Column<string>(type: "text", nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_account_logins_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_roles",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    role_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_roles", x => new { x.user_id, x.role_id });
                    table.ForeignKey(
                        name: "fk_account_roles_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_account_roles_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "fk_account_tokens_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    account_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<int>(type: "integer", nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    device = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sessions", x => x.id);
                    table.ForeignKey(
                        name: "fk_sessions_accounts_account_id",
                        column: x => x.account_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "feeler_blades",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    nominal_mm = table.Column<decimal>(type: "numeric(5,4)", precision: 5, scale: 4, nullable: false),
                    measured_mm = table.Column<decimal>(type: "numeric(5,4)", precision: 5, scale: 4, nullable: true),
                    withdrawn = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_feeler_blades", x => x.id);
                    table.ForeignKey(
                        name: "fk_feeler_blades_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "due_items",
                columns: table => new
                {
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    service_item_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    due_on = table.Column<LocalDate>(type: "date", nullable: true),
                    due_at_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: true),
                    expected_on = table.Column<LocalDate>(type: "date", nullable: false),
                    earliest_on = table.Column<LocalDate>(type: "date", nullable: true),
                    latest_on = table.Column<LocalDate>(type: "date", nullable: true),
                    computed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_due_items", x => new { x.motorcycle_id, x.service_item_code });
                    table.ForeignKey(
                        name: "fk_due_items_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "engine_fittings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    fitted_on = table.Column<LocalDate>(type: "date", nullable: false),
                    removed_on = table.Column<LocalDate>(type: "date", nullable: true),
                    motorcycle_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false),
                    engine_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_engine_fittings", x => x.id);
                    table.CheckConstraint("ck_engine_fittings_order", "removed_on > fitted_on");
                    table.ForeignKey(
                        name: "fk_engine_fittings_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_engine_fittings_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "job_cards",
                columns: table => new
                {
                    number = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:IdentitySequenceOptions", "'1001', '1', '', '', 'False', '1'")
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_model_version_id = table.Column<Guid>(type: "uuid", nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    booked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    booked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    starts_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_job_cards", x => x.number);
                    table.CheckConstraint("ck_job_cards_span", "ends_at > starts_at");
                    table.ForeignKey(
                        name: "fk_job_cards_engine_model_versions_engine_model_version_id",
                        column: x => x.engine_model_version_id,
                        principalTable: "engine_model_versions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_job_cards_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_job_cards_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_job_cards_people_booked_by",
                        column: x => x.booked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "odometers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    unit = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    fitted_on = table.Column<LocalDate>(type: "date", nullable: false),
                    removed_on = table.Column<LocalDate>(type: "date", nullable: true),
                    offset_metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_odometers", x => x.id);
                    table.ForeignKey(
                        name: "fk_odometers_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "caution_acknowledgements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    caution_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    acknowledged_by = table.Column<Guid>(type: "uuid", nullable: false),
                    acknowledged_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_caution_acknowledgements", x => x.id);
                    table.ForeignKey(
                        name: "fk_caution_acknowledgements_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_caution_acknowledgements_people_acknowledged_by",
                        column: x => x.acknowledged_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "done_items",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    service_item_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    done_on = table.Column<LocalDate>(type: "date", nullable: false),
                    metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    done_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_done_items", x => x.id);
                    table.ForeignKey(
                        name: "fk_done_items_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_done_items_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_done_items_people_done_by",
                        column: x => x.done_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "fastener_ticks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    fastener_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    tightened = table.Column<bool>(type: "boolean", nullable: false),
                    wrench_id = table.Column<Guid>(type: "uuid", nullable: true),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    ticked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    ticked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fastener_ticks", x => x.id);
                    table.ForeignKey(
                        name: "fk_fastener_ticks_fastener_ticks_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "fastener_ticks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_fastener_ticks_instruments_wrench_id",
                        column: x => x.wrench_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_fastener_ticks_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_fastener_ticks_people_ticked_by",
                        column: x => x.ticked_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "job_card_items",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    service_item_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    likelihood = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_job_card_items", x => new { x.job_card_number, x.service_item_code });
                    table.ForeignKey(
                        name: "fk_job_card_items_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "occupancies",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    phase = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    resource_id = table.Column<Guid>(type: "uuid", nullable: false),
                    span = table.Column<Interval>(type: "tstzrange", nullable: false),
                    live = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_occupancies", x => x.id);
                    table.CheckConstraint("ck_occupancies_span", "not isempty(span) and lower(span) is not null and upper(span) is not null");
                    table.ForeignKey(
                        name: "fk_occupancies_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_occupancies_resources_resource_id",
                        column: x => x.resource_id,
                        principalTable: "resources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "stock_movements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: true),
                    condition = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    on_hand_change = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    reserved_change = table.Column<decimal>(type: "numeric(14,4)", precision: 14, scale: 4, nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    moved_by = table.Column<Guid>(type: "uuid", nullable: false),
                    moved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_movements", x => x.id);
                    table.ForeignKey(
                        name: "fk_stock_movements_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_movements_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_movements_people_moved_by",
                        column: x => x.moved_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_stock_movements_storage_places_place_id",
                        column: x => x.place_id,
                        principalTable: "storage_places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "odometer_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    odometer_id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    read_on = table.Column<LocalDate>(type: "date", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    unit = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    metres = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    supersedes_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    measured_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_odometer_readings", x => x.id);
                    table.CheckConstraint("ck_odometer_readings_count", "count between 0 and 999999");
                    table.ForeignKey(
                        name: "fk_odometer_readings_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_odometer_readings_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_odometer_readings_odometer_readings_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_odometer_readings_odometers_odometer_id",
                        column: x => x.odometer_id,
                        principalTable: "odometers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_odometer_readings_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_odometer_readings_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_odometer_readings_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "check_ins",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    owners_words_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    seen_on_arrival_remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    engine_stopped_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    checked_in_by = table.Column<Guid>(type: "uuid", nullable: false),
                    checked_in_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_check_ins", x => x.job_card_number);
                    table.ForeignKey(
                        name: "fk_check_ins_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_check_ins_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_check_ins_people_checked_in_by",
                        column: x => x.checked_in_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_check_ins_remarks_owners_words_remark_id",
                        column: x => x.owners_words_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_check_ins_remarks_seen_on_arrival_remark_id",
                        column: x => x.seen_on_arrival_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "clearance_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    import_id = table.Column<Guid>(type: "uuid", nullable: true),
                    valve = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: false),
                    lobe = table.Column<int>(type: "integer", nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    attempt = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    go_mm = table.Column<decimal>(type: "numeric(5,4)", precision: 5, scale: 4, nullable: true),
                    no_go_mm = table.Column<decimal>(type: "numeric(5,4)", precision: 5, scale: 4, nullable: true),
                    stacked = table.Column<bool>(type: "boolean", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    head_temperature_c = table.Column<decimal>(type: "numeric(4,1)", precision: 4, scale: 1, nullable: true),
                    temperature_method = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    not_cold = table.Column<bool>(type: "boolean", nullable: false),
                    not_remeasured = table.Column<bool>(type: "boolean", nullable: false),
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
                    table.PrimaryKey("pk_clearance_readings", x => x.id);
                    table.CheckConstraint("ck_clearance_readings_ends", "case kind\n  when 'go_and_no_go' then go_mm is not null and no_go_mm is not null\n  when 'none_enters' then go_mm is null and no_go_mm is not null\n  else go_mm is not null and no_go_mm is null\nend");
                    table.CheckConstraint("ck_clearance_readings_no_go_above_go", "no_go_mm > go_mm");
                    table.CheckConstraint("ck_clearance_readings_valve", "valve ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$' and lobe in (1, 2) and attempt >= 1");
                    table.ForeignKey(
                        name: "fk_clearance_readings_clearance_readings_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "clearance_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_reading_imports_import_id",
                        column: x => x.import_id,
                        principalTable: "reading_imports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_clearance_readings_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "part_changes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    valve = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: true),
                    part = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    changed_on = table.Column<LocalDate>(type: "date", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_part_changes", x => x.id);
                    table.CheckConstraint("ck_part_changes_valve", "valve ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'");
                    table.ForeignKey(
                        name: "fk_part_changes_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_part_changes_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_part_changes_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_part_changes_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_part_changes_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "shim_observations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    import_id = table.Column<Guid>(type: "uuid", nullable: true),
                    valve = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: false),
                    stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    thickness_mm = table.Column<decimal>(type: "numeric(5,3)", precision: 5, scale: 3, nullable: true),
                    micrometer_id = table.Column<Guid>(type: "uuid", nullable: true),
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
                    table.PrimaryKey("pk_shim_observations", x => x.id);
                    table.CheckConstraint("ck_shim_observations_valve", "valve ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'");
                    table.ForeignKey(
                        name: "fk_shim_observations_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_instruments_micrometer_id",
                        column: x => x.micrometer_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_people_measured_by",
                        column: x => x.measured_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_reading_imports_import_id",
                        column: x => x.import_id,
                        principalTable: "reading_imports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_observations_shim_observations_supersedes_id",
                        column: x => x.supersedes_id,
                        principalTable: "shim_observations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sign_offs",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    signed_by = table.Column<Guid>(type: "uuid", nullable: false),
                    signed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_offs", x => x.job_card_number);
                    table.ForeignKey(
                        name: "fk_sign_offs_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sign_offs_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sign_offs_people_signed_by",
                        column: x => x.signed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sign_offs_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "valve_events",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    engine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: true),
                    import_id = table.Column<Guid>(type: "uuid", nullable: true),
                    valve = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    odometer_reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    happened_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_valve_events", x => x.id);
                    table.CheckConstraint("ck_valve_events_valve", "valve ~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'");
                    table.ForeignKey(
                        name: "fk_valve_events_engines_engine_id",
                        column: x => x.engine_id,
                        principalTable: "engines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_valve_events_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_valve_events_odometer_readings_odometer_reading_id",
                        column: x => x.odometer_reading_id,
                        principalTable: "odometer_readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_valve_events_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_valve_events_reading_imports_import_id",
                        column: x => x.import_id,
                        principalTable: "reading_imports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_account_claims_user_id",
                table: "account_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_logins_user_id",
                table: "account_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_roles_role_id",
                table: "account_roles",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "accounts",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "accounts",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_accounts_person_id",
                table: "accounts",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_audit_rows_table_name_at",
                table: "audit_rows",
                columns: new[] { "table_name", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_caution_acknowledgements_acknowledged_by",
                table: "caution_acknowledgements",
                column: "acknowledged_by");

            migrationBuilder.CreateIndex(
                name: "ix_caution_acknowledgements_job_card_number_caution_code",
                table: "caution_acknowledgements",
                columns: new[] { "job_card_number", "caution_code" });

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_checked_in_by",
                table: "check_ins",
                column: "checked_in_by");

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_odometer_reading_id",
                table: "check_ins",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_owners_words_remark_id",
                table: "check_ins",
                column: "owners_words_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_seen_on_arrival_remark_id",
                table: "check_ins",
                column: "seen_on_arrival_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_forecasts_leaves_limits_on_engine_id",
                table: "clearance_forecasts",
                columns: new[] { "leaves_limits_on", "engine_id" });

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_engine_id_valve_lobe_measured_at",
                table: "clearance_readings",
                columns: new[] { "engine_id", "valve", "lobe", "measured_at" });

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_entered_by",
                table: "clearance_readings",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_import_id",
                table: "clearance_readings",
                column: "import_id");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_instrument_id",
                table: "clearance_readings",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_job_card_number_valve_lobe_stage_attempt",
                table: "clearance_readings",
                columns: new[] { "job_card_number", "valve", "lobe", "stage", "attempt" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_measured_by",
                table: "clearance_readings",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_odometer_reading_id",
                table: "clearance_readings",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_reason_remark_id",
                table: "clearance_readings",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_clearance_readings_supersedes_id",
                table: "clearance_readings",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_done_items_done_by",
                table: "done_items",
                column: "done_by");

            migrationBuilder.CreateIndex(
                name: "ix_done_items_job_card_number_service_item_code",
                table: "done_items",
                columns: new[] { "job_card_number", "service_item_code" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_done_items_motorcycle_id_service_item_code_done_on",
                table: "done_items",
                columns: new[] { "motorcycle_id", "service_item_code", "done_on" });

            migrationBuilder.CreateIndex(
                name: "ix_due_items_expected_on_motorcycle_id",
                table: "due_items",
                columns: new[] { "expected_on", "motorcycle_id" });

            migrationBuilder.CreateIndex(
                name: "ix_engine_fittings_engine_id",
                table: "engine_fittings",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_engine_fittings_motorcycle_id",
                table: "engine_fittings",
                column: "motorcycle_id");

            migrationBuilder.CreateIndex(
                name: "ix_engine_model_versions_created_by",
                table: "engine_model_versions",
                column: "created_by");

            migrationBuilder.CreateIndex(
                name: "ix_engine_model_versions_engine_model_id_version",
                table: "engine_model_versions",
                columns: new[] { "engine_model_id", "version" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_engine_models_maker_name",
                table: "engine_models",
                columns: new[] { "maker", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_engines_engine_model_id",
                table: "engines",
                column: "engine_model_id");

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_job_card_number_fastener_code",
                table: "fastener_ticks",
                columns: new[] { "job_card_number", "fastener_code" });

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_supersedes_id",
                table: "fastener_ticks",
                column: "supersedes_id");

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_ticked_by",
                table: "fastener_ticks",
                column: "ticked_by");

            migrationBuilder.CreateIndex(
                name: "ix_fastener_ticks_wrench_id",
                table: "fastener_ticks",
                column: "wrench_id");

            migrationBuilder.CreateIndex(
                name: "ix_feeler_blades_instrument_id_nominal_mm",
                table: "feeler_blades",
                columns: new[] { "instrument_id", "nominal_mm" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_instruments_holder_id",
                table: "instruments",
                column: "holder_id");

            migrationBuilder.CreateIndex(
                name: "ix_instruments_kind_serial_number",
                table: "instruments",
                columns: new[] { "kind", "serial_number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_job_cards_booked_by",
                table: "job_cards",
                column: "booked_by");

            migrationBuilder.CreateIndex(
                name: "ix_job_cards_engine_id",
                table: "job_cards",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_job_cards_engine_model_version_id",
                table: "job_cards",
                column: "engine_model_version_id");

            migrationBuilder.CreateIndex(
                name: "ix_job_cards_motorcycle_id",
                table: "job_cards",
                column: "motorcycle_id");

            migrationBuilder.CreateIndex(
                name: "ix_job_cards_state_starts_at",
                table: "job_cards",
                columns: new[] { "state", "starts_at" });

            migrationBuilder.CreateIndex(
                name: "ix_motorcycles_owner_id",
                table: "motorcycles",
                column: "owner_id");

            migrationBuilder.CreateIndex(
                name: "ix_motorcycles_registration",
                table: "motorcycles",
                column: "registration",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_occupancies_job_card_number",
                table: "occupancies",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_occupancies_resource_id",
                table: "occupancies",
                column: "resource_id");

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_entered_by",
                table: "odometer_readings",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_job_card_number",
                table: "odometer_readings",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_measured_by",
                table: "odometer_readings",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_motorcycle_id_read_on",
                table: "odometer_readings",
                columns: new[] { "motorcycle_id", "read_on" });

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_odometer_id",
                table: "odometer_readings",
                column: "odometer_id");

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_reason_remark_id",
                table: "odometer_readings",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_odometer_readings_supersedes_id",
                table: "odometer_readings",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_odometers_current",
                table: "odometers",
                column: "motorcycle_id",
                unique: true,
                filter: "removed_on is null");

            migrationBuilder.CreateIndex(
                name: "ix_part_changes_engine_id",
                table: "part_changes",
                column: "engine_id");

            migrationBuilder.CreateIndex(
                name: "ix_part_changes_entered_by",
                table: "part_changes",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_part_changes_job_card_number",
                table: "part_changes",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_part_changes_odometer_reading_id",
                table: "part_changes",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_part_changes_remark_id",
                table: "part_changes",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_parts_code",
                table: "parts",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_people_name",
                table: "people",
                column: "name");

            migrationBuilder.CreateIndex(
                name: "ix_reading_imports_imported_by",
                table: "reading_imports",
                column: "imported_by");

            migrationBuilder.CreateIndex(
                name: "ix_remarks_written_by",
                table: "remarks",
                column: "written_by");

            migrationBuilder.CreateIndex(
                name: "ix_resources_kind_name",
                table: "resources",
                columns: new[] { "kind", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_resources_person_id",
                table: "resources",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_role_claims_role_id",
                table: "role_claims",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                table: "roles",
                column: "normalized_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_sessions_account_id",
                table: "sessions",
                column: "account_id");

            migrationBuilder.CreateIndex(
                name: "ix_sessions_token_hash",
                table: "sessions",
                column: "token_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_engine_id_valve",
                table: "shim_observations",
                columns: new[] { "engine_id", "valve" });

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_entered_by",
                table: "shim_observations",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_import_id",
                table: "shim_observations",
                column: "import_id");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_job_card_number",
                table: "shim_observations",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_measured_by",
                table: "shim_observations",
                column: "measured_by");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_micrometer_id",
                table: "shim_observations",
                column: "micrometer_id");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_odometer_reading_id",
                table: "shim_observations",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_reason_remark_id",
                table: "shim_observations",
                column: "reason_remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_shim_observations_supersedes_id",
                table: "shim_observations",
                column: "supersedes_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_sign_offs_odometer_reading_id",
                table: "sign_offs",
                column: "odometer_reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_offs_remark_id",
                table: "sign_offs",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_offs_signed_by",
                table: "sign_offs",
                column: "signed_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_balances_part_id_place_id_thickness_mm_condition",
                table: "stock_balances",
                columns: new[] { "part_id", "place_id", "thickness_mm", "condition" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_stock_balances_place_id",
                table: "stock_balances",
                column: "place_id");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_job_card_number",
                table: "stock_movements",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_moved_by",
                table: "stock_movements",
                column: "moved_by");

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_part_id_moved_at",
                table: "stock_movements",
                columns: new[] { "part_id", "moved_at" });

            migrationBuilder.CreateIndex(
                name: "ix_stock_movements_place_id",
                table: "stock_movements",
                column: "place_id");

            migrationBuilder.CreateIndex(
                name: "ix_storage_places_name",
                table: "storage_places",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_stored_answers_answered_at",
                table: "stored_answers",
                column: "answered_at");

            migrationBuilder.CreateIndex(
                name: "ix_valve_events_engine_id_valve",
                table: "valve_events",
                columns: new[] { "engine_id", "valve" });

            migrationBuilder.CreateIndex(
                name: "ix_valve_events_entered_by",
                table: "valve_events",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_valve_events_import_id",
                table: "valve_events",
                column: "import_id");

            migrationBuilder.CreateIndex(
                name: "ix_valve_events_job_card_number",
                table: "valve_events",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_valve_events_odometer_reading_id",
                table: "valve_events",
                column: "odometer_reading_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "account_claims");

            migrationBuilder.DropTable(
                name: "account_logins");

            migrationBuilder.DropTable(
                name: "account_roles");

            migrationBuilder.DropTable(
                name: "account_tokens");

            migrationBuilder.DropTable(
                name: "audit_rows");

            migrationBuilder.DropTable(
                name: "caution_acknowledgements");

            migrationBuilder.DropTable(
                name: "check_ins");

            migrationBuilder.DropTable(
                name: "clearance_forecasts");

            migrationBuilder.DropTable(
                name: "clearance_readings");

            migrationBuilder.DropTable(
                name: "data_protection_keys");

            migrationBuilder.DropTable(
                name: "done_items");

            migrationBuilder.DropTable(
                name: "due_items");

            migrationBuilder.DropTable(
                name: "engine_fittings");

            migrationBuilder.DropTable(
                name: "fastener_ticks");

            migrationBuilder.DropTable(
                name: "feeler_blades");

            migrationBuilder.DropTable(
                name: "holidays");

            migrationBuilder.DropTable(
                name: "job_card_items");

            migrationBuilder.DropTable(
                name: "occupancies");

            migrationBuilder.DropTable(
                name: "opening_hours");

            migrationBuilder.DropTable(
                name: "part_changes");

            migrationBuilder.DropTable(
                name: "role_claims");

            migrationBuilder.DropTable(
                name: "sessions");

            migrationBuilder.DropTable(
                name: "shim_observations");

            migrationBuilder.DropTable(
                name: "sign_offs");

            migrationBuilder.DropTable(
                name: "stock_balances");

            migrationBuilder.DropTable(
                name: "stock_movements");

            migrationBuilder.DropTable(
                name: "stored_answers");

            migrationBuilder.DropTable(
                name: "valve_events");

            migrationBuilder.DropTable(
                name: "workshop_profiles");

            migrationBuilder.DropTable(
                name: "resources");

            migrationBuilder.DropTable(
                name: "roles");

            migrationBuilder.DropTable(
                name: "accounts");

            migrationBuilder.DropTable(
                name: "instruments");

            migrationBuilder.DropTable(
                name: "parts");

            migrationBuilder.DropTable(
                name: "storage_places");

            migrationBuilder.DropTable(
                name: "odometer_readings");

            migrationBuilder.DropTable(
                name: "reading_imports");

            migrationBuilder.DropTable(
                name: "job_cards");

            migrationBuilder.DropTable(
                name: "odometers");

            migrationBuilder.DropTable(
                name: "remarks");

            migrationBuilder.DropTable(
                name: "engine_model_versions");

            migrationBuilder.DropTable(
                name: "engines");

            migrationBuilder.DropTable(
                name: "motorcycles");

            migrationBuilder.DropTable(
                name: "engine_models");

            migrationBuilder.DropTable(
                name: "people");
        }
    }
}
