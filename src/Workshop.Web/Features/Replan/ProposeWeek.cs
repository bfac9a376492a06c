using FluentValidation;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Statistics.Scheduling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Replan;

/// <summary>
/// Proposes another plan for the visits of a week: over earliest, then with even load, then with the fewest moved. It changes
/// nothing. Asked again it looks again.
/// </summary>
public static class ProposeWeek
{
    public const int UsualSeconds = 10;
    private const int MostSeconds = 30;

    /// <summary>It keeps all cores busy for its time, so one at a time in each copy of the service.</summary>
    private static readonly SemaphoreSlim OneAtATime = new(1);

    /// <param name="Week">By ISO 8601; absent: this week.</param>
    /// <param name="Seconds">How long to look at the most.</param>
    public sealed record Request(string? Week = null, int? Seconds = null);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Week).IsIsoWeek();
            RuleFor(r => r.Seconds).IsWhole(1, MostSeconds);
        }
    }

    public static async Task<Outcome<ReplanAnswer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var (calendar, now) = (await WorkshopTimes.ReadCalendar(db, ct), clock.GetCurrentInstant());
        var week = IsoWeek.TryParse(request.Week, out var asked) ? asked : IsoWeek.Of(calendar.Time.DayOf(now));
        var read = await ReplanCase.Read(db, calendar, week, only: null, now, ct);
        if (!await OneAtATime.WaitAsync(TimeSpan.Zero, ct))
        {
            return Problem.Conflict("busy", $"Another proposal is being worked out; that takes up to {MostSeconds} s. Ask again then.");
        }

        try
        {
            var effort = ScheduleEffort.Usual with { Seconds = request.Seconds ?? UsualSeconds };
            return ReplanAnswer.Of(week, read, await Task.Run(() => WeekReplan.Propose(read.Week, effort), ct));
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    internal static IRuleBuilderOptions<T, string?> IsIsoWeek<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(v => string.IsNullOrEmpty(v) || IsoWeek.TryParse(v, out _))
            .WithMessage((_, v) => $"{{PropertyName}} is \"{v}\": a week of that year such as 2026-W49 is allowed.");
}
