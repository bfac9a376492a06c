using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Arrivals;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.Findings;
using Workshop.Web.Features.Finishing;
using Workshop.Web.Features.Shims;
using Workshop.Web.Features.TorqueSheets;

namespace Workshop.Web.Features.JobCards;

/// <summary>Gathers what the gates before a sign-off look at.</summary>
internal static class SignOffCase
{
    public static async Task<SignOffFacts> Gather(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var number = open.Card.Number;
        var arrival = await db.ArrivalNotes.AsNoTracking().Where(n => n.JobCardNumber == number).ToListAsync(ct);
        return new SignOffFacts
        {
            Arrival = arrival,
            Complaint = ArrivalRules.Standing(arrival).Any(ArrivalRules.AsksForCompression),
            CylinderTests = await db.CylinderTests.AsNoTracking().Where(t => t.JobCardNumber == number).ToListAsync(ct),
            PlugChecks = await db.PlugChecks.AsNoTracking().Where(c => c.JobCardNumber == number).ToListAsync(ct),
            Number = number,
            State = open.Card.State,
            Specification = open.Specification,
            UnderWay = open.UnderWay,
            Readings = await db.ClearanceReadings.AsNoTracking().Where(r => r.JobCardNumber == number).ToListAsync(ct),
            Shims = await db.ShimObservations.AsNoTracking().Where(s => s.JobCardNumber == number).ToListAsync(ct),
            ShimsBefore = await EarlierShims.Read(db, open, ct),
            Events = await db.ValveEvents.AsNoTracking().Where(e => e.JobCardNumber == number).ToListAsync(ct),
            Changes = await db.PartChanges.AsNoTracking().Where(c => c.JobCardNumber == number).ToListAsync(ct),
            Ticks = await db.FastenerTicks.AsNoTracking().Where(t => t.JobCardNumber == number).ToListAsync(ct),
            Findings = await FindingRows.Facts(db, number, ct),
            Parts = await NamedParts.Read(db, open.Specification, ct),
            SealInspections = await db.SealInspections.AsNoTracking().Where(i => i.JobCardNumber == number).ToListAsync(ct),
            AskSecondPerson = await SecondPersons.Marked(db, open, ct),
            WitnessedTicks = await SecondPersons.Witnessed(db, number, ct),
            AskAsLeftSecondPerson = await SecondPersonAsLeft.IsAsked(db, open, ct),
            AsLeftWitnesses = await SecondPersonAsLeft.Witnesses(db, number, ct),
            Finished = await FinishingRows.Read(db, number, ct),
            CamChecks = await db.CamTimingChecks.AsNoTracking().Where(c => c.JobCardNumber == number).ToListAsync(ct),
            CamRechecks = await db.CamRechecks.AsNoTracking().Where(r => r.JobCardNumber == number).ToListAsync(ct),
            Acknowledged = (await db.CautionAcknowledgements.AsNoTracking()
                .Where(a => a.JobCardNumber == number).Select(a => a.CautionCode).ToListAsync(ct)).ToHashSet(StringComparer.Ordinal),
        };
    }

    /// <summary>The page on which a reason is put right.</summary>
    public static string AddressOf(int number, SignOffPlace place) => place switch
    {
        SignOffPlace.Card => $"/job-cards/{number}",
        SignOffPlace.CheckIn => $"/job-cards/{number}/check-in",
        SignOffPlace.Cautions => $"/job-cards/{number}/cautions",
        SignOffPlace.TorqueSheet => $"/job-cards/{number}/torque-sheet",
        SignOffPlace.Seals => $"/job-cards/{number}/seals",
        SignOffPlace.Readings => $"/job-cards/{number}/readings",
        SignOffPlace.Shims => $"/job-cards/{number}/shims",
        SignOffPlace.Findings => $"/job-cards/{number}/findings",
        SignOffPlace.CamTiming => $"/job-cards/{number}/cam-timing",
        SignOffPlace.AfterWork => $"/job-cards/{number}/after-work",
        SignOffPlace.Compression => $"/job-cards/{number}/compression",
        SignOffPlace.Plugs => $"/job-cards/{number}/plugs",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, null),
    };
}
