using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// Begins a likely or possible item of a card, or one that was found necessary: the torque sheet and the kit grow by it, and
/// its special tools are taken until the end of the work where they are free. A tool that is out, or a visit that becomes longer
/// than booked, is warned of: an engine that lies open cannot be refused.
/// </summary>
public static class StartItem
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>The service item's code; the API takes it from the address.</summary>
        public string? Code { get; init; }
    }

    public sealed record Answer(int Number, string Code, string Name, Instant StartedAt, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Code).IsGiven("the service item to begin").IsAtMost(Limits.Code);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var code = request.Code!;
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (CardRules.RefuseStart(request.Number, open.Specification, open.Items, code) is { } refused)
        {
            return refused;
        }

        var now = clock.GetCurrentInstant();
        var item = VisitItems.Find(open.Specification, code)!;
        if (open.Items.SingleOrDefault(i => i.ServiceItemCode == code) is { } held)
        {
            held.StartedAt = now;
        }
        else
        {
            db.JobCardItems.Add(new JobCardItem
            {
                JobCardNumber = request.Number, ServiceItemCode = code, Likelihood = Likelihood.Certain, StartedAt = now,
            });
        }

        var warnings = await TakeTools(db, open.Card, item, clock, ct);
        await db.SaveChangesAsync(ct);
        await KitReservations.Reserve(db, request.Number, actor, clock, ct);
        return new Answer(request.Number, code, item.Name, now, warnings);
    }

    private static async Task<IReadOnlyList<string>> TakeTools(
        WorkshopDbContext db, JobCard card, ServiceItem item, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var needs = VisitNeeds.Of([new ChosenItem(item, Likelihood.Certain)]);
        var work = await db.PlannedPhases.AsNoTracking()
            .Where(p => p.JobCardNumber == card.Number && p.Phase == VisitPhase.Work).Select(p => (Interval?)p.Span).SingleOrDefaultAsync(ct);
        var until = work?.End ?? card.EndsAt;
        if (needs.SpecialTools.Count == 0 || until <= now)
        {
            return [];
        }

        string[] codes = [.. needs.SpecialTools];
        await db.Database.ExecuteSqlAsync(
            $"select 1 from resources where kind = 'special_tool' and capabilities && {codes} order by id for update", ct);
        var rest = new Interval(now, until);
        var taken = await Occupied.During(db, rest, ct);
        var ours = taken.Where(t => t.By == card.Number).SelectMany(t => t.Resource.Capabilities).ToHashSet(StringComparer.Ordinal);
        var tools = await db.Resources.AsNoTracking().Where(r => r.Kind == ResourceKind.SpecialTool).ToListAsync(ct);
        var time = await WorkshopTimes.Read(db, ct);
        var warnings = new List<string>();
        foreach (var (code, tool) in needs.ToolsFrom(tools, taken.Select(t => t.Resource.Id).ToHashSet()))
        {
            if (ours.Contains(code))
            {
                continue;
            }

            if (tool is null)
            {
                warnings.Add($"The workshop has no special tool \"{code}\".");
            }
            else if (taken.FirstOrDefault(t => t.Resource.Id == tool.Id) is { } other)
            {
                warnings.Add(other.Say(time));
            }
            else
            {
                db.Occupancies.Add(new Occupancy
                {
                    Id = NewId.At(clock), JobCardNumber = card.Number, Phase = VisitPhase.Work, ResourceId = tool.Id, Span = rest,
                });
                ours.UnionWith(tool.Capabilities);
            }
        }

        return warnings;
    }
}
