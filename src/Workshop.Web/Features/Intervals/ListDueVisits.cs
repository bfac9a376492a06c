using System.Globalization;
using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

/// <summary>What is due, a motorcycle at a time, soonest first, each with one proposal of what to do together.</summary>
public static class ListDueVisits
{
    /// <summary>In place of a tool: any.</summary>
    public const string AnyTool = "any";

    public sealed record Request
    {
        public string? After { get; init; }

        public int? Take { get; init; }

        /// <summary>Only motorcycles with something overdue that was not put off.</summary>
        public bool Overdue { get; init; }

        /// <summary>Only what comes up within so many weeks from today, overdue visits included.</summary>
        public int? WithinWeeks { get; init; }

        /// <summary>Only where an item of the visit has no more than so many kilometres left.</summary>
        public int? WithinKm { get; init; }

        public Guid? EngineModelId { get; init; }

        /// <summary>A special tool that the visit needs, or "any".</summary>
        public string? Tool { get; init; }
    }

    /// <param name="ComesOn">When the first of its items comes up.</param>
    /// <param name="LabourMinutes">Of the items that are done now, every access once.</param>
    /// <param name="SavesMinutes">Of opening and closing, against a visit for each.</param>
    /// <param name="Items">Everything that the motorcycle is due for: what is done now, then what is later.</param>
    public sealed record Visit(
        Guid MotorcycleId, LocalDate ComesOn, [property: JsonPropertyName("leftKm")] Distance? Left, int LabourMinutes, int SavesMinutes,
        IReadOnlyList<string> SpecialTools, IReadOnlyList<DueLine> Items);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.WithinWeeks).IsWhole(0, DueLimits.FurthestWeeks);
            RuleFor(r => r.WithinKm).IsWhole(0, DueLimits.FurthestKm);
            RuleFor(r => r.Tool).IsAtMost(Limits.Code);
            RuleFor(r => r.After)
                .Must(after => string.IsNullOrEmpty(after) || TryParse(after, out _))
                .WithMessage((_, after) => $"after is \"{after}\": send what an earlier page gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Visit>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var found = await Filtered(request, db.DueVisits.AsNoTracking(), today)
            .OrderBy(v => v.ComesOn).ThenBy(v => v.MotorcycleId)
            .ToSlice(request.Take, v => $"{Days.Write(v.ComesOn)}~{v.MotorcycleId}", ct);
        var motorcycles = found.Rows.Select(v => v.MotorcycleId).ToList();
        var items = await db.DueItems.AsNoTracking().Where(d => motorcycles.Contains(d.MotorcycleId)).ToListAsync(ct);
        var lines = (await DueLine.Read(db, items, today, ct)).ToLookup(l => l.MotorcycleId);
        return new Slice<Visit>(
            [.. found.Rows.Where(v => lines.Contains(v.MotorcycleId)).Select(v => new Visit(
                v.MotorcycleId, v.ComesOn, v.Left, v.LabourMinutes, v.SavesMinutes, v.SpecialTools,
                [.. lines[v.MotorcycleId].OrderBy(Turn).ThenBy(l => l.ComesOn).ThenBy(l => l.Code, StringComparer.Ordinal)]))],
            found.Next);
    }

    private static IQueryable<DueVisit> Filtered(Request request, IQueryable<DueVisit> visits, LocalDate today)
    {
        if (request.Overdue)
        {
            visits = visits.Where(v => v.ComesOn < today);
        }

        if (request.WithinWeeks is { } weeks)
        {
            var until = today.PlusWeeks(weeks);
            visits = visits.Where(v => v.ComesOn <= until);
        }

        if (request.WithinKm is { } km)
        {
            var far = Distance.FromKilometres(km);
            visits = visits.Where(v => v.Left <= far);
        }

        if (request.EngineModelId is { } model)
        {
            visits = visits.Where(v => v.EngineModelId == model);
        }

        if (!string.IsNullOrEmpty(request.Tool))
        {
            visits = visits.Where(v => v.SpecialTools.Length > 0);
            if (request.Tool != AnyTool)
            {
                visits = visits.Where(v => v.SpecialTools.Contains(request.Tool));
            }
        }

        return TryParse(request.After, out var after)
            ? visits.Where(v => EF.Functions.GreaterThan(
                ValueTuple.Create(v.ComesOn, v.MotorcycleId), ValueTuple.Create(after.ComesOn, after.MotorcycleId)))
            : visits;
    }

    private static int Turn(DueLine line) => line.Advice switch
    {
        DueAdvice.First => 0,
        DueAdvice.Together => 1,
        DueAdvice.BroughtForward => 2,
        _ => 3,
    };

    private static bool TryParse(string? text, out (LocalDate ComesOn, Guid MotorcycleId) place)
    {
        place = default;
        if (text?.Split('~') is not [var day, var id]
            || !LocalDatePattern.Iso.Parse(day).TryGetValue(default, out var comesOn)
            || !Guid.TryParse(id, CultureInfo.InvariantCulture, out var motorcycleId))
        {
            return false;
        }

        place = (comesOn, motorcycleId);
        return true;
    }
}
