using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>Why a visit does not take place.</summary>
    public partial class Cancellations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "cancellations",
                columns: table => new
                {
                    job_card_number = table.Column<int>(type: "integer", nullable: false),
                    reason_remark_id = table.Column<Guid>(type: "uuid", nullable: false),
                    cancelled_by = table.Column<Guid>(type: "uuid", nullable: false),
                    cancelled_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_cancellations", x => x.job_card_number);
                    table.ForeignKey(
                        name: "fk_cancellations_job_cards_job_card_number",
                        column: x => x.job_card_number,
                        principalTable: "job_cards",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cancellations_people_cancelled_by",
                        column: x => x.cancelled_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_cancellations_remarks_reason_remark_id",
                        column: x => x.reason_remark_id,
                        principalTable: "remarks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_cancellations_cancelled_by",
                table: "cancellations",
                column: "cancelled_by");

            migrationBuilder.CreateIndex(
                name: "ix_cancellations_reason_remark_id",
                table: "cancellations",
                column: "reason_remark_id");

            migrationBuilder.Sql("select keep_append_only('cancellations');");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "cancellations");
        }
    }
}
