using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Ignition;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Features.Records;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// Ends a visit, once: refused with every reason that stands in the way; else closes the card, frees what it held, writes what
/// was done into the history, takes the kit out of the stores, has what is next due and expected worked out anew, and keeps the
/// owner's record of all that.
/// </summary>
public static class SignOffCard
{
    private const int MostRows = 100;
    private const decimal LargestQuantity = 100_000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Whole units of the motorcycle's odometer, as it leaves.</summary>
        public int? Odometer { get; init; }

        /// <summary>Items under way that were not done after all, and why.</summary>
        public IReadOnlyList<NotDoneItem>? NotDone { get; init; }

        /// <summary>Parts taken beside what the kit needs in any case.</summary>
        public IReadOnlyList<ExtraPart>? ExtraParts { get; init; }

        /// <summary>Clearances that are left outside their limits are accepted; the remark says why.</summary>
        public bool AcceptsOutsideLimits { get; init; }

        public string? Remark { get; init; }
    }

    public sealed record NotDoneItem
    {
        public string? Code { get; init; }

        public string? Reason { get; init; }
    }

    public sealed record ExtraPart
    {
        public string? PartCode { get; init; }

        /// <summary>In the part's own unit; empty is nothing taken.</summary>
        public decimal? Quantity { get; init; }
    }

    public sealed record Answer(int JobCardNumber, Instant SignedAt, IReadOnlyList<string> DoneItems);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Odometer).NotNull().WithMessage("{PropertyName} is empty: give what the odometer shows as the motorcycle leaves.")
                .IsOdometerCount();
            RuleFor(r => r.NotDone).Must(items => items is null || items.Count <= MostRows)
                .WithMessage($"{{PropertyName}} has more than the {MostRows} items that are allowed.");
            RuleForEach(r => r.NotDone).ChildRules(item =>
            {
                item.RuleFor(i => i.Code).IsGiven("the code of an item of the card");
                item.RuleFor(i => i.Reason).IsGiven("why the item was not done").IsAtMost(Limits.Remark);
            });
            RuleFor(r => r.ExtraParts).Must(parts => parts is null || parts.Count <= MostRows)
                .WithMessage($"{{PropertyName}} has more than the {MostRows} parts that are allowed.");
            RuleForEach(r => r.ExtraParts).ChildRules(part =>
            {
                part.RuleFor(p => p.PartCode).IsGiven("the stores' code of the part").When(p => p.Quantity is not null);
                part.RuleFor(p => p.Quantity).IsWithin(0, LargestQuantity, 4, "").WithName(p => $"quantity of {p.PartCode}");
            });
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
            RuleFor(r => r.Remark).IsGiven("why clearances outside their limits are accepted").When(r => r.AcceptsOutsideLimits);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var facts = await SignOffCase.Gather(db, open, ct) with
        {
            NotDone = (request.NotDone ?? []).Select(i => i.Code!).ToHashSet(StringComparer.Ordinal),
            OutsideAccepted = request.AcceptsOutsideLimits,
        };
        var refusal = AgainstNotDone(request, facts) ?? await AgainstExtraParts(request, db, ct) ?? SignOffRules.Refuse(facts);
        if (refusal is not null)
        {
            return refusal;
        }

        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        if (!(await ReadOdometer(request, open, today, db, actor, clock, ct)).TryGet(out var odometer, out problem)
            || !AddRemark(request, facts, db, actor, now).TryGet(out var remark, out problem))
        {
            return problem;
        }

        db.SignOffs.Add(new SignOff
        {
            JobCardNumber = request.Number, OdometerReadingId = odometer.Id, SignedBy = actor.PersonId, SignedAt = now, RemarkId = remark,
        });
        db.DoneItems.AddRange(facts.Done.Select(item => new DoneItem
        {
            Id = NewId.At(now),
            MotorcycleId = open.Card.MotorcycleId,
            ServiceItemCode = item.Code,
            DoneOn = today,
            Distance = odometer.Distance,
            JobCardNumber = request.Number,
            DoneBy = actor.PersonId,
            EnteredAt = now,
        }));
        open.Card.State = JobCardState.SignedOff;
        await Free(db, request.Number, now, ct);
        await db.SaveChangesAsync(ct);
        if (await KitReservations.Settle(db, open, Used(request, facts), actor, clock, ct) is { } missing)
        {
            return missing;
        }

        await ForecastRows.Rewrite(db, open.Card.EngineId, clock, ct);
        await DueRows.Rewrite(db, open.Card.MotorcycleId, clock, ct);
        await Refits.RequestFor(db, [open.Card.EngineId], clock, ct);
        await RecordWriter.Write(db, open, facts, Written(request), isLater: false, actor, clock, ct);
        return new Answer(request.Number, now, [.. facts.Done.Select(i => i.Code)]);
    }

    private static Problem? AgainstNotDone(Request request, SignOffFacts facts)
    {
        var codes = facts.UnderWay.Select(i => i.Item.Code).ToList();
        var faults = (request.NotDone ?? [])
            .Select((item, index) => (item.Code, Field: $"notDone[{index}].code"))
            .Where(i => !codes.Contains(i.Code!))
            .Select(i => new FieldFault(i.Field,
                $"{i.Field} is {i.Code}: no such item is under way on job card {facts.Number}; there are {string.Join(", ", codes)}."))
            .ToList();
        return faults.Count == 0 ? null : Problem.Impossible("item-not-under-way", faults);
    }

    private static async Task<Problem?> AgainstExtraParts(Request request, WorkshopDbContext db, CancellationToken ct)
    {
        var codes = Taken(request).Select(p => p.PartCode!).Distinct().ToList();
        var known = await db.Parts.Where(p => codes.Contains(p.Code)).Select(p => p.Code).ToListAsync(ct);
        var faults = (request.ExtraParts ?? [])
            .Select((part, index) => (part, Field: $"extraParts[{index}].partCode"))
            .Where(p => p.part.Quantity > 0 && !known.Contains(p.part.PartCode!))
            .Select(p => new FieldFault(p.Field, $"{p.Field} is {p.part.PartCode}: the stores have no such part; give the code of one that they have."))
            .ToList();
        return faults.Count == 0 ? null : Problem.Impossible("part-unknown", faults);
    }

    /// <summary>As it leaves, it has done at least what it had done as it came, which one day's readings do not say by themselves.</summary>
    private static async Task<Outcome<OdometerReading>> ReadOdometer(
        Request request, OpenCard open, LocalDate today, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var added = await OdometerEntry.Add(
            db, open.Card.MotorcycleId, new("odometer", request.Odometer!.Value, today, request.Number), actor, clock, ct);
        if (!added.TryGet(out var leaving, out var problem))
        {
            return problem;
        }

        var onCard = await OdometerEntry.Standing(db, open.Card.MotorcycleId)
            .Where(r => r.JobCardNumber == request.Number && r.OdometerId == leaving.OdometerId).ToListAsync(ct);
        return onCard.MaxBy(r => r.Count) is { } before && before.Count > leaving.Count
            ? Problem.Impossible("odometer-backwards", "odometer",
                $"odometer is {leaving.Count} {leaving.Unit.Symbol()}: it showed {before.Count} {before.Unit.Symbol()} at this visit already. At least {before.Count} is allowed.")
            : leaving;
    }

    /// <summary>What the person writes, what was not done and why, and what was accepted, as one remark on the sign-off.</summary>
    private static Outcome<Guid?> AddRemark(Request request, SignOffFacts facts, WorkshopDbContext db, Actor actor, Instant now)
    {
        var lines = new List<string>();
        if (!string.IsNullOrWhiteSpace(request.Remark))
        {
            lines.Add(request.Remark.Trim());
        }

        lines.AddRange((request.NotDone ?? []).Select(i =>
            $"Not done: {facts.UnderWay.Single(u => u.Item.Code == i.Code).Item.Name}. {i.Reason}"));
        if (facts.OutsideAccepted)
        {
            lines.AddRange(ClearancesAreLeftWithinLimits.Outside(facts).Select(o => $"Accepted: {o.Lobe.Spoken}, {o.Words}."));
        }

        var text = string.Join('\n', lines);
        if (text.Length > Limits.Remark)
        {
            return Problem.Impossible("remark-too-long", "remark",
                $"remark has {text.Length} characters with the reasons for what was not done and what was accepted: at most {Limits.Remark} are allowed.");
        }

        if (text.Length == 0)
        {
            return (Guid?)null;
        }

        var remark = new Remark { Id = NewId.At(now), Text = text, WrittenBy = actor.PersonId, WrittenAt = now };
        db.Remarks.Add(remark);
        return (Guid?)remark.Id;
    }

    /// <summary>Bay, technician and tools that the card would hold for longer are free again.</summary>
    private static async Task Free(WorkshopDbContext db, int number, Instant now, CancellationToken ct)
    {
        TakeWhatIsFree.Free(await db.Occupancies.Where(o => o.JobCardNumber == number && o.Live).ToListAsync(ct), now);
        if (await db.VisitWaits.SingleOrDefaultAsync(w => w.JobCardNumber == number && w.EndedAt == null, ct) is { } wait)
        {
            wait.EndedAt = now;
        }
    }

    /// <summary>
    /// What was used: the seals of all that was opened, new ones for those that did not pass their inspection, the parts of what was
    /// done, the plugs that were renewed, and what was taken beside it all.
    /// </summary>
    private static Dictionary<string, decimal> Used(Request request, SignOffFacts facts)
    {
        var done = facts.Done.Select(i => i.Code).ToHashSet(StringComparer.Ordinal);
        var kit = Kit.Of(facts.Specification, facts.Begun.Select(i => done.Contains(i.Code) ? i : i with { Parts = [] }), [], facts.Parts);
        var plug = facts.Specification.SparkPlugs is { } stated ? facts.Parts.GetValueOrDefault(stated.PartCode)?.Code ?? stated.PartCode : null;
        var plugs = PlugRules.Used(plug, kit.Lines.Where(l => l.PartCode == plug).Sum(l => l.Needed), facts.PlugChecks);
        return kit.Lines.Where(l => l.Needed > 0 && l.PartCode != plug).Select(l => (Code: l.PartCode, Quantity: l.Needed))
            .Concat(plugs.Select(p => (Code: p.Key, Quantity: p.Value)))
            .Concat(OpenedSeals.Standing(facts.SealInspections).Where(i => i.Taken > 0).Select(i => (Code: i.PartCode, Quantity: i.Taken)))
            .Concat(Taken(request).Select(p => (Code: p.PartCode!, Quantity: p.Quantity!.Value)))
            .GroupBy(u => u.Code, u => u.Quantity, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(), StringComparer.Ordinal);
    }

    /// <summary>What the person wrote, for the owner's record.</summary>
    private static Dictionary<string, string> Written(Request request)
    {
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var item in request.NotDone ?? [])
        {
            words[RecordWords.NotDone(item.Code!)] = item.Reason!.Trim();
        }

        if (!string.IsNullOrWhiteSpace(request.Remark))
        {
            words[RecordWords.Remark] = request.Remark.Trim();
        }

        return words;
    }

    private static IEnumerable<ExtraPart> Taken(Request request) => (request.ExtraParts ?? []).Where(p => p.Quantity > 0);
}
