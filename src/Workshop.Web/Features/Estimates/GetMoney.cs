using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>Currency, labour rate and tax rates, with the days from which they hold.</summary>
public static class GetMoney
{
    public sealed record Request;

    /// <param name="UsualTax">The code of labour's tax rate, and of parts that name none.</param>
    /// <param name="PartsWithoutPrice">Parts of the stores, not discontinued, that no price is known of.</param>
    public sealed record Answer(
        string Currency, decimal? LabourNetPerHour, string? UsualTax, IReadOnlyList<Rate> TaxRates, int PartsWithoutPrice, LocalDate Today,
        uint RowVersion) : IHasVersion;

    /// <param name="Holds">It is the rate of its code today.</param>
    public sealed record Rate(string Code, LocalDate ValidFrom, string Name, decimal Percent, bool Holds, uint RowVersion);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.AsNoTracking()
            .Select(p => new { Row = p, Version = EF.Property<uint>(p, MappingExtensions.RowVersion) }).SingleAsync(ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var rates = await db.TaxRates.AsNoTracking().OrderBy(r => r.Code).ThenByDescending(r => r.ValidFrom)
            .Select(r => new { Row = r, Version = EF.Property<uint>(r, MappingExtensions.RowVersion) }).ToListAsync(ct);
        var table = TaxTable.On(today, rates.Select(r => r.Row));
        return new Answer(
            profile.Row.Currency, profile.Row.LabourNetPerHour, profile.Row.TaxRateCode,
            [.. rates.Select(r => new Rate(r.Row.Code, r.Row.ValidFrom, r.Row.Name, r.Row.Percent, table.Find(r.Row.Code) == r.Row, r.Version))],
            await db.Parts.CountAsync(p => p.NetPrice == null && !p.Discontinued && p.MergedIntoId == null, ct), today, profile.Version);
    }
}
