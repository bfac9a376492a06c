using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Workshop.Web.Data.Migrations
{
    /// <summary>What the database keeps by itself of contacts, and the two texts that a workshop starts with.</summary>
    public partial class Contacts
    {
        private static void KeepRules(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.InsertData(
                "message_templates",
                ["id", "name", "channel", "subject", "body"],
                new object[,]
                {
                    {
                        new System.Guid("01927000-0000-7000-8000-000000000001"), "Service is due, e-mail", "email",
                        "{registration}: service is due", Text,
                    },
                    {
                        new System.Guid("01927000-0000-7000-8000-000000000002"), "Service is due, letter", "letter",
                        "{motorcycle}, {registration}: service is due", Text,
                    },
                });
            migrationBuilder.Sql(
                """
                select keep_append_only('contacts');
                select keep_audit('consents', true);
                select keep_audit('outbox_messages', true);
                select keep_audit('message_templates', false);
                alter table outbox_messages add constraint ck_outbox_messages_claim check ((state = 'being_sent') <= (claim_id is not null and claimed_until is not null));
                """);
            migrationBuilder.Sql(BlankedReasons);
        }

        // Why an item was put off is often said in an owner's words: an erasure blanks them, and nothing else of the row ever changes.
        private const string BlankedReasons =
            """
            create function refuse_change_but_blanked_reason() returns trigger language plpgsql as $$
            begin
              if tg_op = 'UPDATE' and new.reason = '' and to_jsonb(new) - 'reason' = to_jsonb(old) - 'reason' then
                return new;
              end if;
              raise exception 'rows of % are only ever added; an erasure blanks the reason and nothing else', tg_table_name
                using errcode = 'restrict_violation';
            end $$;
            drop trigger append_only on put_offs;
            create trigger append_only before update or delete on put_offs for each row execute function refuse_change_but_blanked_reason();
            grant update (reason) on put_offs to workshop_service;
            """;

        private const string Text =
            "Dear {owner},\n\n" +
            "your {motorcycle}, registration {registration}, is due for service {expected}. This is what we would do in one visit, so that the machine is opened once:\n\n" +
            "{items}\n\n" +
            "Days follow from what you rode so far; if you ride more or less now, they move. Please call us on {phone} to agree on a day.\n\n" +
            "Kind regards\n{workshop}\n\n" +
            "You receive this because you agreed to be written to. Tell us if you no longer wish it.\n";
    }
}
