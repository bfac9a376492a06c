using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Estimates;

/// <summary>Prices of the test workshop: an hour 90, tax 20 %, every part of the oil service; the seals have none.</summary>
internal static class TestPrices
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static Task<int> SetPrices(this WorkshopApp app) => app.Look(async db =>
    {
        var since = new LocalDate(2020, 1, 1);
        if (!await db.TaxRates.AnyAsync(r => r.Code == "standard" && r.ValidFrom == since, Ct))
        {
            db.TaxRates.Add(new TaxRate { Code = "standard", ValidFrom = since, Name = "Tax", Percent = 20 });
        }

        var profile = await db.WorkshopProfiles.SingleAsync(Ct);
        (profile.LabourNetPerHour, profile.TaxRateCode) = (90, "standard");
        foreach (var (code, price) in new[] { (TestEngines.OilFilter, 11.5m), (TestEngines.Oil, 12.5m), (TestEngines.DrainRing, 0.35m) })
        {
            (await db.Parts.SingleAsync(p => p.Code == code, Ct)).NetPrice = price;
        }

        return await db.SaveChangesAsync(Ct);
    });
}
