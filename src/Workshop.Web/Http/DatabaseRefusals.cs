using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>
/// The rules that the database keeps by itself, said in sentences. Use cases ask first and say more; this is what a race
/// between two of them gets.
/// </summary>
internal static class DatabaseRefusals
{
    private static readonly Dictionary<string, Problem> ByConstraint = new(StringComparer.Ordinal)
    {
        ["ex_occupancies_no_overlap"] = Problem.Conflict("taken",
            "Somebody else took the bay, the technician or a tool for that time a moment ago; look for another time."),
        ["ex_work_spells_no_overlap"] = Problem.Conflict("clock-runs",
            "The clock of that person ran on another job at that time; read it again."),
        ["ck_stock_balances_not_below_zero"] = Problem.Conflict("stock-short",
            "Somebody else took the last of a part a moment ago; stock never goes below zero."),
        ["ck_comebacks_signed"] = Problem.Conflict("comeback-not-signed", "That job card is not signed off; a comeback is of one that is."),
        ["ck_comebacks_same_motorcycle"] = Problem.Conflict("comeback-of-another", "That job card is of another motorcycle; a comeback is of the same one."),
        ["ck_stock_movements_part_merged"] = Problem.Conflict("part-merged",
            "That part was merged into another a moment ago; do it again, its code means the other one now."),
        ["ck_stock_movements_place_retired"] = Problem.Conflict("place-retired",
            "That place was retired a moment ago; nothing is put there any more, choose another."),
        ["ix_storage_places_name"] = Problem.Conflict("name-taken", "Somebody else gave that name to another place a moment ago; choose another."),
        ["ix_storage_places_code"] = Problem.Conflict("code-taken", "Somebody else gave that code to another place a moment ago; choose another."),
        ["ix_parts_code"] = Problem.Conflict("code-taken", "Somebody else gave that code to another part a moment ago; choose another."),
        ["ix_stock_counts_open"] = Problem.Conflict("count-open", "Somebody else began a count of that place a moment ago; go on with it."),
        ["ix_goods_in_imports_content_hash"] = Problem.Conflict("imported",
            "The same file was taken over a moment ago; nothing was written twice."),
        ["ck_shims_moved_from"] = Problem.Conflict("shim-elsewhere",
            "Somebody else took or moved that shim a moment ago, or it is in an engine; read the shim box again and choose another."),
        ["ix_shims_engine_id_valve"] = Problem.Conflict("valve-taken",
            "Another shim went into that valve a moment ago; read the card again."),
        ["ck_clearance_readings_no_go_above_go"] = Problem.Conflict("no-go-not-above-go", "No-go must be greater than go."),
        ["pk_sign_offs"] = Problem.Conflict("signed-off", "The job card is signed off already; a card is signed once."),
        ["pk_cancellations"] = Problem.Conflict("cancelled", "The visit is cancelled already."),
        ["pk_check_ins"] = Problem.Conflict("checked-in", "The motorcycle is checked in already."),
        ["ix_resources_kind_name"] = Problem.Conflict("name-taken", "Somebody else gave that name to another one a moment ago; choose another."),
        ["ix_instruments_kind_serial_number"] = Problem.Conflict("serial-taken", "Somebody else gave that serial number to another one a moment ago; choose another."),
        ["ix_wrench_adapters_name"] = Problem.Conflict("name-taken", "Somebody else gave that name to another adapter a moment ago; choose another."),
        ["pk_tick_witnesses"] = Problem.Conflict("witnessed-already", "Somebody else confirmed that tick a moment ago."),
        ["ix_as_left_witnesses_job_card_number_readings_seen"] = Problem.Conflict("witnessed-already", "Somebody else confirmed those readings a moment ago."),
        ["ix_as_left_marks_engine_model_id"] = Problem.Conflict("marked-already", "Somebody else asked for that second person a moment ago."),
        ["UserNameIndex"] = Problem.Conflict("user-name-taken", "Somebody else gave that name to another account a moment ago; choose another."),
        ["ix_history_imports_content_hash"] = Problem.Conflict("imported",
            "The same file was taken over a moment ago; nothing was written twice."),
        ["ix_consents_standing"] = Problem.Conflict("consent-stands", "Somebody else entered that consent a moment ago."),
        ["ix_message_templates_name"] = Problem.Conflict("name-taken", "Somebody else gave that name to another template a moment ago; choose another."),
        ["ix_motorcycles_registration"] = Problem.Conflict("registration-taken",
            "Another motorcycle has this registration."),
    };

    public static Problem? Explain(Exception fault) => fault switch
    {
        DbUpdateConcurrencyException => new Problem(ProblemKind.Stale, "changed-meanwhile",
            "Somebody else changed this since you read it; read it again and repeat your change."),
        DbUpdateException { InnerException: PostgresException inner } => Explain(inner),
        PostgresException { SqlState: PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure } =>
            Problem.Conflict("busy", "Others were changing the same rows; nothing was written. Try again."),
        PostgresException { ConstraintName: { } name } when ByConstraint.TryGetValue(name, out var problem) => problem,
        PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } => Problem.Conflict("exists",
            "Somebody else entered the same a moment ago; read it again."),
        _ => null,
    };

    public static bool WasRolledBackForOrder(Exception fault) =>
        (fault as PostgresException ?? fault.InnerException as PostgresException)?.SqlState
            is PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure;
}
