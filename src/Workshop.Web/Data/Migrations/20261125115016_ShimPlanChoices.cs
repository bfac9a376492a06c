using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>What was asked of the shim plan of a card, and the turns by hand before the readings as left.</summary>
    public partial class ShimPlanChoices : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "hand_turns",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    confirmed_by = table.Column<Guid>(type: "uuid", nullable: false),
                    confirmed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_hand_turns", x => x.id);
                    table.ForeignKey(
                        name: "fk_hand_turns_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_hand_turns_people_confirmed_by",
                        column: x => x.confirmed_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "shim_plan_choices",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    aim = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    set_all = table.Column<bool>(type: "boolean", nullable: false),
                    guard = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    locks = table.Column<string>(type: "jsonb", nullable: false),
                    chosen_by = table.Column<Guid>(type: "uuid", nullable: false),
                    chosen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shim_plan_choices", x => new { x.job_card_number, x.version });
                    table.ForeignKey(
                        name: "fk_shim_plan_choices_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_shim_plan_choices_people_chosen_by",
                        column: x => x.chosen_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_hand_turns_confirmed_by",
                table: "hand_turns",
                column: "confirmed_by");

            migrationBuilder.CreateIndex(
                name: "ix_hand_turns_job_card_number",
                table: "hand_turns",
                column: "job_card_number");

            migrationBuilder.CreateIndex(
                name: "ix_shim_plan_choices_chosen_by",
                table: "shim_plan_choices",
                column: "chosen_by");

            migrationBuilder.Sql("select keep_append_only('shim_plan_choices');");
            migrationBuilder.Sql("select keep_append_only('hand_turns');");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "hand_turns");

            migrationBuilder.DropTable(
                name: "shim_plan_choices");
        }
    }
}
