using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.Findings;
using Workshop.Web.Features.Photos;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// One visit of the last weeks whose record has all that a record can have: a valve check with the forecasts of fitted models, an agreed
/// estimate, a finding that was put right and one that is watched, with a picture; and the text that brings its owner the link.
/// </summary>
internal sealed class DemoRecord(WorkshopDbContext db, DemoStaff staff, VisitWriter writer, OpenDays openDays)
{
    private const string Manager = "otto";
    private const string Advisor = "greta";
    private const string Technician = "tilda";
    private const int DaysAgo = 14;
    private const int HoldsDays = 21;
    private const int LeastValves = 12;

    private readonly DemoFinding finding = SeedFiles.Prices().Finding;

    public async Task Write(IReadOnlyCollection<BookedMotorcycle> booked, Instant now, CancellationToken ct)
    {
        var day = openDays.Before(staff.Time.DayOf(now).PlusDays(-DaysAgo));
        if (await Choose(booked, day, ct) is not { } motorcycle)
        {
            return;
        }

        var visit = new PlannedVisit(motorcycle.Plan, day, motorcycle.Plan.NowKm, VisitPurpose.ValveCheck, "FB-01", Sloppy: false);
        await writer.Write(visit, motorcycle, null, ct, number => Enrich(number, day, ct));
        staff.Clock.Now = now;
        await staff.Do(Manager, new AddTemplate.Request
        {
            Name = "Service record, e-mail", Channel = ContactChannel.Email, Subject = "Service record of {registration}",
            Body = "Dear {owner},\n\nyour {motorcycle} is done. What was measured, done and used, and what is due next, stands here:\n\n{record}\n\n"
                + "Whoever has the link can read it, for a limited time. For any question call {phone}.\n\nKind regards\n{workshop}\n",
        }, AddTemplate.Handle, ct);
    }

    /// <summary>One that needs its valves checked, that is not expected or here, and whose odometer nobody has read since that day.</summary>
    private async Task<BookedMotorcycle?> Choose(IReadOnlyCollection<BookedMotorcycle> booked, LocalDate day, CancellationToken ct)
    {
        var busy = await db.JobCards.Where(c => c.State == JobCardState.Booked || c.State == JobCardState.CheckedIn).Select(c => c.MotorcycleId).ToListAsync(ct);
        var readSince = await db.OdometerReadings.Where(r => r.ReadOn >= day.PlusDays(-1)).Select(r => r.MotorcycleId).Distinct().ToListAsync(ct);
        var due = await db.DueItems.AsNoTracking().Where(d => d.ServiceItemCode == "valve-clearance-check")
            .OrderBy(d => d.ExpectedOn).ThenBy(d => d.MotorcycleId).Select(d => d.MotorcycleId).ToListAsync(ct);
        var byId = booked.ToDictionary(b => b.Id);
        return due.Where(id => !busy.Contains(id) && !readSince.Contains(id)).Select(id => byId[id])
            .FirstOrDefault(m => m.Plan.EngineModel.Specification.Valves.Count >= LeastValves);
    }

    private async Task Enrich(int number, LocalDate day, CancellationToken ct)
    {
        var until = day.PlusDays(HoldsDays);
        var made = await staff.Do(Advisor, new MakeEstimate.Request { Number = number, ValidUntil = until }, MakeEstimate.Handle, ct);
        await staff.Do(Advisor, new AnswerEstimate.Request
        {
            Id = made.Id, Decision = EstimateDecision.Agreed, Way = AnswerWay.Telephone,
        }, AnswerEstimate.Handle, ct);

        var pads = await Find(number, finding.Place, finding.Text, FindingGravity.Soon, ct);
        await staff.Do(Technician, new AddPhotos.Request
        {
            Number = number, FindingId = pads, Caption = finding.Caption, Files = [new AddPhotos.File("drawn.png", DemoPicture.Draw())],
        }, AddPhotos.Handle, ct);
        await staff.Do(Advisor, new MakeEstimate.Request
        {
            Number = number, FindingId = pads, ValidUntil = until,
            Others =
            [
                new MakeEstimate.Other { Text = finding.Work, Minutes = finding.Minutes },
                new MakeEstimate.Other { Text = finding.Parts, Quantity = 1, UnitPrice = finding.Price },
            ],
        }, MakeEstimate.Handle, ct);
        await staff.Do(Advisor, new AnswerFinding.Request { Id = pads, Decision = EstimateDecision.Agreed, Way = AnswerWay.Telephone }, AnswerFinding.Handle, ct);
        var version = (await staff.Look(Technician, new GetFinding.Request(pads), GetFinding.Handle, ct)).RowVersion;
        await staff.Do(Technician, new FinishFinding.Request { Id = pads, RowVersion = version }, FinishFinding.Handle, ct);
        await Find(number, "Drive chain", "Slack at its upper limit after adjusting; to be looked at again with the next oil. (Invented.)", FindingGravity.Watch, ct);
    }

    private async Task<Guid> Find(int number, string place, string text, FindingGravity gravity, CancellationToken ct) =>
        (await staff.Do(Technician, new RecordFinding.Request { Number = number, Place = place, Text = text, Gravity = gravity }, RecordFinding.Handle, ct)).Id;
}
