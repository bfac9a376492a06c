using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class SpecificationDrafts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "note",
                table: "engine_model_versions",
                type: "character varying(4000)",
                maxLength: 4000,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "import_id",
                table: "done_items",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "remark_id",
                table: "done_items",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "history_imports",
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
                    table.PrimaryKey("pk_history_imports", x => x.id);
                    table.ForeignKey(
                        name: "fk_history_imports_people_imported_by",
                        column: x => x.imported_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "specification_drafts",
                columns: table => new
                {
                    engine_model_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    based_on_version = table.Column<int>(type: "integer", nullable: false),
                    maker = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    invented = table.Column<bool>(type: "boolean", nullable: false),
                    specification = table.Column<string>(type: "jsonb", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    changed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_specification_drafts", x => new { x.engine_model_id, x.person_id });
                    table.ForeignKey(
                        name: "fk_specification_drafts_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_done_items_import_id",
                table: "done_items",
                column: "import_id");

            migrationBuilder.CreateIndex(
                name: "ix_done_items_remark_id",
                table: "done_items",
                column: "remark_id");

            migrationBuilder.CreateIndex(
                name: "ix_history_imports_content_hash",
                table: "history_imports",
                column: "content_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_history_imports_imported_by",
                table: "history_imports",
                column: "imported_by");

            migrationBuilder.CreateIndex(
                name: "ix_specification_drafts_person_id",
                table: "specification_drafts",
                column: "person_id");

            migrationBuilder.AddForeignKey(
                name: "fk_done_items_history_imports_import_id",
                table: "done_items",
                column: "import_id",
                principalTable: "history_imports",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_done_items_remarks_remark_id",
                table: "done_items",
                column: "remark_id",
                principalTable: "remarks",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.Sql("select keep_append_only('history_imports');");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_done_items_history_imports_import_id",
                table: "done_items");

            migrationBuilder.DropForeignKey(
                name: "fk_done_items_remarks_remark_id",
                table: "done_items");

            migrationBuilder.DropTable(
                name: "history_imports");

            migrationBuilder.DropTable(
                name: "specification_drafts");

            migrationBuilder.DropIndex(
                name: "ix_done_items_import_id",
                table: "done_items");

            migrationBuilder.DropIndex(
                name: "ix_done_items_remark_id",
                table: "done_items");

            migrationBuilder.DropColumn(
                name: "note",
                table: "engine_model_versions");

            migrationBuilder.DropColumn(
                name: "import_id",
                table: "done_items");

            migrationBuilder.DropColumn(
                name: "remark_id",
                table: "done_items");
        }
    }
}
