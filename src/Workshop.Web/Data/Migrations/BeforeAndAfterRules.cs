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
            migrationBuilder.Sql(
                "select keep_append_only(t) from unnest(array['arrival_notes', 'cylinder_tests', 'plug_checks', 'comebacks']) t;");
            migrationBuilder.Sql(ComebackOfWhatIsSigned);
        }

        // Whatever writes it: a comeback is of the same motorcycle, and of a card that nobody changes any more.
        private const string ComebackOfWhatIsSigned =
            """
            create function refuse_comeback() returns trigger language plpgsql as $$
            declare
              comes job_cards;
              earlier job_cards;
            begin
              select * into comes from job_cards where number = new.job_card_number;
              select * into earlier from job_cards where number = new.of_job_card_number;
              if earlier.motorcycle_id <> comes.motorcycle_id then
                raise exception 'job card % is of another motorcycle', new.of_job_card_number
                  using errcode = 'check_violation', constraint = 'ck_comebacks_same_motorcycle';
              end if;
              if earlier.state <> 'signed_off' then
                raise exception 'job card % is not signed off', new.of_job_card_number
                  using errcode = 'check_violation', constraint = 'ck_comebacks_signed';
              end if;
              return new;
            end $$;
            create trigger a_refuse_comeback before insert on comebacks for each row execute function refuse_comeback();
            """;

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

        // A record is what the owner was given. An erasure empties what people wrote, and nothing else of it ever changes; of a link only
        // its end and its openings do.
        private static void KeepRecords(MigrationBuilder migrationBuilder) => migrationBuilder.Sql(
            """
            create function refuse_change_but_emptied_words() returns trigger language plpgsql as $$
            begin
              if tg_op = 'UPDATE' and new.words = '{}'::jsonb and to_jsonb(new) - 'words' = to_jsonb(old) - 'words' then
                return new;
              end if;
              raise exception 'rows of % are only ever added; an erasure empties the words and nothing else', tg_table_name
                using errcode = 'restrict_violation';
            end $$;
            select keep_append_only('issued_records');
            drop trigger append_only on issued_records;
            create trigger append_only before update or delete on issued_records for each row execute function refuse_change_but_emptied_words();
            grant update (words) on issued_records to workshop_service;

            create function refuse_change_of_record_link() returns trigger language plpgsql as $$
            begin
              if tg_op = 'UPDATE'
                and to_jsonb(new) - array['revoked_at', 'revoked_by', 'opened', 'last_opened_at'] = to_jsonb(old) - array['revoked_at', 'revoked_by', 'opened', 'last_opened_at']
                and (old.revoked_at is null or new.revoked_at = old.revoked_at) and new.opened >= old.opened then
                return new;
              end if;
              raise exception 'a link to a record is revoked or opened; it lives no longer, leads nowhere else and is not revived'
                using errcode = 'restrict_violation';
            end $$;
            create trigger keep_link before update or delete on record_links for each row execute function refuse_change_of_record_link();
            revoke delete, truncate on record_links from workshop_service;
            """);
    }
}
