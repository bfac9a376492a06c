using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>The workshop opens on that day after all. The audit keeps who removed it.</summary>
public static class RemoveHoliday
{
    /// <param name="RowVersion">Of the workshop, whose holidays were read.</param>
    public sealed record Request(LocalDate? Day, uint? RowVersion) : IExpectsVersion;

    public sealed record Answer(LocalDate Day, string Name, uint RowVersion) : IHasVersion;

    public sealed class Validator : FluentValidation.AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Day).IsGiven("the day, such as 2027-01-01");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var holiday = await db.Holidays.SingleOrDefaultAsync(h => h.Day == request.Day, ct);
        if (holiday is null)
        {
            return Problem.NotFound($"A holiday on {Days.Write(request.Day!.Value)}");
        }

        db.Holidays.Remove(holiday);
        var version = await EditWorkshop.Save(db, await db.WorkshopProfiles.SingleAsync(ct), request.RowVersion!.Value, ct);
        return new Answer(holiday.Day, holiday.Name, version);
    }
}
