using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>Why a phase of a visit began before its time.</summary>
    public partial class PhaseReasons : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "reason_remark_id",
                table: "phase_starts",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_phase_starts_reason_remark_id",
                table: "phase_starts",
                column: "reason_remark_id");

            migrationBuilder.AddForeignKey(
                name: "fk_phase_starts_remarks_reason_remark_id",
                table: "phase_starts",
                column: "reason_remark_id",
                principalTable: "remarks",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_phase_starts_remarks_reason_remark_id",
                table: "phase_starts");

            migrationBuilder.DropIndex(
                name: "ix_phase_starts_reason_remark_id",
                table: "phase_starts");

            migrationBuilder.DropColumn(
                name: "reason_remark_id",
                table: "phase_starts");
        }
    }
}
