using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class DueRates : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_due_items_expected_on_motorcycle_id",
                table: "due_items");

            migrationBuilder.AddColumn<decimal>(
                name: "last_done_at_metres",
                table: "due_items",
                type: "numeric(14,3)",
                precision: 14,
                scale: 3,
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "last_done_on",
                table: "due_items",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "rate_basis",
                table: "due_items",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_due_items_expected_on_motorcycle_id_service_item_code",
                table: "due_items",
                columns: new[] { "expected_on", "motorcycle_id", "service_item_code" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_due_items_expected_on_motorcycle_id_service_item_code",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "last_done_at_metres",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "last_done_on",
                table: "due_items");

            migrationBuilder.DropColumn(
                name: "rate_basis",
                table: "due_items");

            migrationBuilder.CreateIndex(
                name: "ix_due_items_expected_on_motorcycle_id",
                table: "due_items",
                columns: new[] { "expected_on", "motorcycle_id" });
        }
    }
}
