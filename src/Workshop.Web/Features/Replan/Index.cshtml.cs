using System.Text.Json;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Replan;

/// <summary>The manager's page: a proposal as differences, accepted whole or in part.</summary>
public sealed class IndexModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Week { get; set; }

    /// <summary>Looking takes its time, so it is asked for by a button.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Look { get; set; }

    /// <summary>Numbers of the job cards that are ticked; absent: all.</summary>
    [BindProperty]
    public IReadOnlyList<int>? Accept { get; set; }

    /// <summary>What was proposed, move by move, as it was sent out.</summary>
    [BindProperty]
    public IReadOnlyList<string> Move { get; set; } = [];

    public IsoWeek Of { get; private set; }

    public WorkshopTime Time { get; private set; } = null!;

    public ReplanAnswer? Proposed { get; private set; }

    public bool IsTicked(int number) => Accept?.Contains(number) ?? true;

    public static string Write(ReplanAnswer.Move move) => JsonSerializer.Serialize(AcceptReplan.Move.Of(move), WorkshopJson.Options);

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        Accept ??= [];
        if (!TryRead(out var moves))
        {
            ModelState.AddModelError("", "The form is not as it was sent out; ask for a new proposal.");
        }

        return await Write(
            new AcceptReplan.Request { Week = Week, Moves = [.. moves.Where(m => m.Number is { } number && IsTicked(number))] },
            AcceptReplan.Handle,
            done =>
            {
                Done = done.Visits.Count == 1
                    ? $"Job card {done.Visits[0].Number} is moved. Tell the owner."
                    : $"{done.Visits.Count} visits are moved: job cards {string.Join(", ", done.Visits.Select(v => v.Number).Order())}. Tell the owners.";
                return Redirect($"/diary/week?week={Week}");
            },
            async () =>
            {
                Look = true;
                return await Show();
            },
            prefix: "");
    }

    private bool TryRead(out IReadOnlyList<AcceptReplan.Move> moves)
    {
        try
        {
            moves = [.. Move.Select(m => JsonSerializer.Deserialize<AcceptReplan.Move>(m, WorkshopJson.Options)!).Where(m => m is not null)];
            return true;
        }
        catch (JsonException)
        {
            moves = [];
            return false;
        }
    }

    private async Task<IActionResult> Show()
    {
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        Of = IsoWeek.Of(Time.DayOf(clock.GetCurrentInstant()));
        if (IsoWeek.TryParse(Week, out var week))
        {
            Of = week;
        }
        else if (!string.IsNullOrEmpty(Week))
        {
            ModelState.AddModelError("week", $"week is \"{Week}\": a week of that year such as 2026-W49 is allowed.");
            Response.StatusCode = StatusCodes.Status400BadRequest;
            return Page();
        }

        if (!Look)
        {
            return Page();
        }

        if ((await Read(new ProposeWeek.Request(Of.ToString()), ProposeWeek.Handle)).TryGet(out var proposed, out var problem))
        {
            Proposed = proposed;
        }
        else
        {
            problem.AddTo(ModelState, "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
