using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class Contacts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "phone",
                table: "workshop_profiles",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "consents",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    channel = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    given_on = table.Column<LocalDate>(type: "date", nullable: false),
                    how_given = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    withdrawn_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    withdrawn_by = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_consents", x => x.id);
                    table.ForeignKey(
                        name: "fk_consents_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_consents_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_consents_people_withdrawn_by",
                        column: x => x.withdrawn_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "message_templates",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    channel = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    subject = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    body = table.Column<string>(type: "character varying(10000)", maxLength: 10000, nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_message_templates", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "outbox_messages",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: false),
                    channel = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    to = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    subject = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    body = table.Column<string>(type: "character varying(10000)", maxLength: 10000, nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    next_try_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    claimed_until = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    claim_id = table.Column<Guid>(type: "uuid", nullable: true),
                    internet_message_id = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    last_fault = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    created_by = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    sent_by = table.Column<Guid>(type: "uuid", nullable: true),
                    sent_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_outbox_messages", x => x.id);
                    table.ForeignKey(
                        name: "fk_outbox_messages_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_outbox_messages_people_created_by",
                        column: x => x.created_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_outbox_messages_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_outbox_messages_people_sent_by",
                        column: x => x.sent_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "contacts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    motorcycle_id = table.Column<Guid>(type: "uuid", nullable: true),
                    channel = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    outcome = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    call_back_on = table.Column<LocalDate>(type: "date", nullable: true),
                    remark_id = table.Column<Guid>(type: "uuid", nullable: true),
                    message_id = table.Column<Guid>(type: "uuid", nullable: true),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_contacts", x => x.id);
                    table.ForeignKey(
                        name: "fk_contacts_motorcycles_motorcycle_id",
                        column: x => x.motorcycle_id,
                        principalTable: "motorcycles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_contacts_outbox_messages_message_id",
                        column: x => x.message_id,
                        principalTable: "outbox_messages",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_contacts_people_by",
                        column: x => x.by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_contacts_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_contacts_remarks_remark_id",
                        column: x => x.remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_consents_entered_by",
                table: "consents",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_consents_person_id",
                table: "consents",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_consents_standing",
                table: "consents",
                columns: new[] { "person_id", "channel" },
                unique: true,
                filter: "withdrawn_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_consents_withdrawn_by",
                table: "consents",
                column: "withdrawn_by");

            migrationBuilder.CreateIndex(
                name: "ix_contacts_by",
                table: "contacts",
                column: "by");

            migrationBuilder.CreateIndex(
                name: "ix_contacts_message_id",
                table: "contacts",
                column: "message_id");

            migrationBuilder.CreateIndex(
                name: "ix_contacts_motorcycle_id",
                table: "contacts",
                column: "motorcycle_id");

            migrationBuilder.CreateIndex(
                name: "ix_contacts_person_id_at",
                table: "contacts",
                columns: new[] { "person_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_contacts_remark_id",
                table: "contacts",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_message_templates_name",
                table: "message_templates",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_created_at_id",
                table: "outbox_messages",
                columns: new[] { "created_at", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_created_by",
                table: "outbox_messages",
                column: "created_by");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_in_hand",
                table: "outbox_messages",
                column: "claimed_until",
                filter: "state = 'being_sent'");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_motorcycle_id",
                table: "outbox_messages",
                column: "motorcycle_id");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_person_id",
                table: "outbox_messages",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_sent_by",
                table: "outbox_messages",
                column: "sent_by");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_messages_waiting",
                table: "outbox_messages",
                column: "next_try_at",
                filter: "state = 'waiting'");

            KeepRules(migrationBuilder);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "consents");

            migrationBuilder.DropTable(
                name: "contacts");

            migrationBuilder.DropTable(
                name: "message_templates");

            migrationBuilder.DropTable(
                name: "outbox_messages");

            migrationBuilder.DropColumn(
                name: "phone",
                table: "workshop_profiles");
        }
    }
}
