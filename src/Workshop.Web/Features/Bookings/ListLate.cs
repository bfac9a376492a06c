using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>Which visits run late, whom that pushes if nobody does anything, and what could be done. Nothing moves by it.</summary>
public static class ListLate
{
    /// <summary>A minute or two is no news.</summary>
    internal static readonly Duration Tolerance = Duration.FromMinutes(5);

    /// <summary>Proposals are searched for so many; those after them are pushed by the same, and look different once it is dealt with.</summary>
    private const int MostProposedFor = 6;

    public sealed record Request;

    public sealed record Answer(
        Instant At, IReadOnlyList<LateRow> Late, IReadOnlyList<PushedRow> Pushed, IReadOnlyList<NotComeRow> NotCome);

    /// <param name="Phase">The first phase that is late.</param>
    /// <param name="LateMinutes">By how much that phase is.</param>
    public sealed record LateRow(
        int JobCardNumber, string Motorcycle, LateReason Reason, VisitPhase Phase, int LateMinutes, Instant PlannedReady, Instant ExpectedReady);

    /// <param name="ByJobCardNumber">The visit that holds what it needs; it may itself be pushed.</param>
    /// <param name="Resource">What it waits for.</param>
    /// <param name="PushedMinutes">The first phase that is pushed, by how much.</param>
    public sealed record PushedRow(
        int JobCardNumber, string Motorcycle, int ByJobCardNumber, string Resource, VisitPhase Phase, Instant PlannedAt, Instant ExpectedAt,
        int PushedMinutes, Instant PlannedReady, Instant ExpectedReady, IReadOnlyList<ProposalRow> Proposals);

    /// <summary>What a move of the visit would send.</summary>
    public sealed record ProposalRow(
        bool SameTime, Instant StartsAt, Guid BayId, string Bay, Guid TechnicianId, string Technician, Instant ArrivesAt, Instant ReadyAt);

    /// <summary>Its time is over, and it was neither checked in nor called off.</summary>
    public sealed record NotComeRow(int JobCardNumber, string Motorcycle, Instant PlannedReady);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var today = await VisitsToday.Read(db, calendar, now, ct);
        var found = today.Reckon(now);
        var pushed = new List<PushedRow>();
        foreach (var visit in found.Pushed.Where(p => p.Pushed >= Tolerance))
        {
            var proposals = pushed.Count < MostProposedFor
                ? await LateProposals.For(db, calendar, today, found, visit.Number, now, ct)
                : [];
            pushed.Add(new PushedRow(
                visit.Number, today.Motorcycles[visit.Number], visit.By, today.Resources[visit.ResourceId].Name, visit.Phase,
                visit.PlannedAt, visit.ExpectedAt, Minutes(visit.Pushed), visit.PlannedReady, visit.ExpectedReady,
                [.. proposals.Select(p => new ProposalRow(
                    p.SameTime, p.Slot.Plan.WorkStartsAt, p.Slot.Bay.Id, p.Slot.Bay.Name, p.Slot.Technician.Id, p.Slot.Technician.Name,
                    p.Slot.Plan.ArrivesAt, p.Slot.Plan.ReadyAt))]));
        }

        return new Answer(
            now,
            [.. found.Late.Where(l => l.Late >= Tolerance).Select(l => new LateRow(
                l.Number, today.Motorcycles[l.Number], l.Reason, l.Phase, Minutes(l.Late), l.PlannedReady, l.ExpectedReady))],
            pushed,
            [.. today.NotCome.Select(n => new NotComeRow(n.Number, today.Motorcycles[n.Number], n.PlannedReady))]);
    }

    private static int Minutes(Duration span) => (int)Math.Ceiling(span.TotalMinutes);
}
