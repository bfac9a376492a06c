using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>What the database keeps by itself of what is seen before the work, done after it, and told to the owner.</summary>
    public partial class BeforeAndAfter
    {
        private static void KeepRules(MigrationBuilder migrationBuilder)
        {
            KeepBefore(migrationBuilder);
            KeepAfter(migrationBuilder);
            KeepRecords(migrationBuilder);
        }

        private static void KeepBefore(MigrationBuilder migrationBuilder)
        {
        }

        private static void KeepAfter(MigrationBuilder migrationBuilder)
        {
        }

        private static void KeepRecords(MigrationBuilder migrationBuilder)
        {
        }
    }
}
