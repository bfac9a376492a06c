using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Tooling;

/// <summary>Special tools, and which visit has each now.</summary>
public static class ListSpecialTools
{
    public sealed record Request;

    public sealed record Answer(IReadOnlyList<Tool> Tools);

    /// <param name="Codes">What service items ask for it by.</param>
    /// <param name="With">The job card that has it now.</param>
    public sealed record Tool(Guid Id, string Name, IReadOnlyList<string> Codes, int? With, Instant? Until);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var taken = (await Occupied.During(db, new Interval(now, now.PlusNanoseconds(1000)), ct)).ToLookup(t => t.Resource.Id);
        var tools = await db.Resources.AsNoTracking().Where(r => r.Kind == ResourceKind.SpecialTool && !r.Retired)
            .OrderBy(r => r.Name).ToListAsync(ct);
        return new Answer([.. tools.Select(t => new Tool(
            t.Id, t.Name, t.Capabilities, taken[t.Id].FirstOrDefault()?.By, taken[t.Id].FirstOrDefault()?.Span.End))]);
    }
}
