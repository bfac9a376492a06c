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
            string[] onlyAddedTo =
            [
                "balance_runs", "balance_vacuums", "leak_looks", "test_rides", "visit_rechecks", "reminder_resets", "count_taps",
                "count_explanations", "as_left_witnesses",
            ];
            foreach (var table in onlyAddedTo)
            {
                migrationBuilder.Sql($"select keep_append_only('{table}');");
            }

            migrationBuilder.Sql("select keep_audit('as_left_marks', false);");
        }

        private static void KeepRecords(MigrationBuilder migrationBuilder)
        {
        }
    }
}
