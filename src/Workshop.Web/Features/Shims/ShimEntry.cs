using Microsoft.EntityFrameworkCore;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Features.Clearances;

namespace Workshop.Web.Features.Shims;

/// <summary>A shim as it was seen: what came out, or what went in.</summary>
/// <param name="Path">The row, as the caller wrote it: <c>shims[3]</c>.</param>
/// <param name="ThicknessMm">Nothing where nobody measured it.</param>
/// <param name="FromBox">It was taken from the shim box; only what went in.</param>
/// <param name="OldIntoBox">What it replaces went into the box.</param>
internal sealed record SeenShim(
    string Path, ValveKey Valve, Stage Stage, decimal? ThicknessMm, Guid? MicrometerId, bool FromBox, bool OldIntoBox)
{
    /// <summary>The very shim that was taken from the box; one of its thickness where it is not named.</summary>
    public Guid? ShimId { get; init; }

    /// <summary>It came out of this valve at this visit; only what went in.</summary>
    public ValveKey? FromValve { get; init; }

    /// <summary>What it replaces is scrapped.</summary>
    public ScrapReason? OldScrapped { get; init; }
}

/// <summary>
/// The one way in which a shim gets onto a card and out of or into the box: by the readings, by the shim plan, by the seed.
/// Adds the rows; the entry saves.
/// </summary>
internal static class ShimEntry
{
    public static async Task Add(VisitEntry entry, IReadOnlyList<SeenShim> seen, CancellationToken ct)
    {
        if (seen.Count == 0)
        {
            return;
        }

        if (entry.Specification.Shims is not { } range)
        {
            seen.ToList().ForEach(s => entry.Add(new FieldFault($"{s.Path}.valve",
                $"{s.Path}.valve is {s.Valve}: this engine has screws and locknuts, no shims; leave it out.")));
            return;
        }

        var box = await ShimBox.ReadToChange(entry, range, ct);
        var taken = new HashSet<(ValveKey, Stage)>();
        foreach (var shim in seen.OrderBy(s => s.Stage).Select(s => Complete(entry, s, box)))
        {
            if (IsPossible(entry, shim, range, taken))
            {
                Add(entry, shim, box);
            }
        }
    }

    /// <summary>Of a shim that is named, or moved across, the thickness is known already.</summary>
    private static SeenShim Complete(VisitEntry entry, SeenShim shim, ShimBox box) => shim switch
    {
        { ThicknessMm: null, ShimId: { } id } when box.Find(id) is { } there => shim with { ThicknessMm = there.Thickness.Millimetres },
        { ThicknessMm: null, FromValve: { } from } => shim with
        {
            ThicknessMm = ShimRules.Standing(entry.Known.Shims, from, Stage.AsFound)?.Thickness?.Millimetres,
        },
        _ => shim,
    };

    private static bool IsPossible(
        VisitEntry entry, SeenShim shim, ShimRange range, HashSet<(ValveKey, Stage)> taken)
    {
        var fault = ReadingRules.FaultOfValve($"{shim.Path}.valve", shim.Valve, entry.Specification)
            ?? (shim.Stage == Stage.AsLeft && shim.ThicknessMm is { } mm
                ? ShimRules.FaultOfThickness($"{shim.Path}.thicknessMm", mm, range)
                : null)
            ?? (taken.Add((shim.Valve, shim.Stage))
                ? null
                : new FieldFault($"{shim.Path}.valve", $"{shim.Path}.valve is {shim.Valve}: its shim {shim.Stage.Spoken()} stands twice in this send; once is allowed."))
            ?? (shim is { Stage: Stage.AsFound, FromBox: true } or { Stage: Stage.AsFound, OldIntoBox: true }
                ? new FieldFault($"{shim.Path}.fromBox", $"{shim.Path}.fromBox: only what goes in is taken from the box or replaces another; the stage is as found.")
                : null)
            ?? (shim is { OldIntoBox: true, OldScrapped: not null }
                ? new FieldFault($"{shim.Path}.oldScrapped", $"{shim.Path}.oldScrapped is {shim.OldScrapped}, and oldIntoBox is set too: what is scrapped does not go into the box; leave one out.")
                : null)
            ?? (shim is { FromBox: true, FromValve: not null }
                ? new FieldFault($"{shim.Path}.fromValve", $"{shim.Path}.fromValve is {shim.FromValve}, and fromBox is set too: a shim comes from one place; leave one out.")
                : null)
            ?? (shim.FromValve == shim.Valve
                ? new FieldFault($"{shim.Path}.fromValve", $"{shim.Path}.fromValve is {shim.FromValve}, its own valve; leave it out where the shim stays.")
                : null)
            ?? (shim is { FromBox: true, ThicknessMm: null }
                ? new FieldFault($"{shim.Path}.thicknessMm", $"{shim.Path}.thicknessMm is empty: what is taken from the box has a measured thickness.")
                : null);
        entry.Add(fault);
        return fault is null;
    }

    private static void Add(VisitEntry entry, SeenShim shim, ShimBox box)
    {
        var earlier = ShimRules.Standing(entry.Known.Shims, shim.Valve, shim.Stage);
        if (shim.Stage == Stage.AsLeft)
        {
            var removed = earlier ?? ShimRules.Standing(entry.Known.Shims, shim.Valve, Stage.AsFound);
            Move(entry, shim, removed?.Thickness, box);
        }

        if (earlier is not null)
        {
            entry.Replaces($"the shim {shim.Stage.Spoken()} of {shim.Valve.Spoken}");
        }

        var observation = new ShimObservation
        {
            Id = NewId.At(entry.Now),
            EngineId = entry.Open.Card.EngineId,
            JobCardNumber = entry.Open.Card.Number,
            Valve = shim.Valve,
            Stage = shim.Stage,
            Thickness = shim.ThicknessMm is { } mm ? ShimThickness.FromMillimetres(mm) : null,
            MicrometerId = shim.ThicknessMm is null ? null : shim.MicrometerId,
            OdometerReadingId = entry.OdometerReadingId,
            MeasuredAt = entry.MeasuredAt,
            MeasuredBy = entry.MeasuredBy,
            EnteredBy = entry.Actor.PersonId,
            EnteredAt = entry.Now,
            SupersedesId = earlier?.Id,
            ReasonRemarkId = entry.RemarkFor(earlier is not null, null),
        };
        entry.Db.ShimObservations.Add(observation);
        entry.Known.Shims.Add(observation);
        if (shim.Stage == Stage.AsLeft)
        {
            entry.Adjusts();
        }
    }

    /// <summary>What the ledger is told: what came out and where it went, what went in and where it is from.</summary>
    private static void Move(VisitEntry entry, SeenShim shim, ShimThickness? removed, ShimBox box)
    {
        ShimThickness? fitted = shim.ThicknessMm is { } mm ? ShimThickness.FromMillimetres(mm) : null;
        if (IsTheSame(shim, removed ?? box.InValve(shim.Valve)?.Thickness, fitted))
        {
            return;
        }

        var old = box.TakeOut(shim.Valve, removed);
        if (shim.OldIntoBox && removed is null)
        {
            entry.Add(new FieldFault($"{shim.Path}.oldIntoBox",
                $"{shim.Path}.oldIntoBox: what came out of {shim.Valve.Spoken} is not measured; only a measured shim goes into the box."));
        }
        else if (shim.OldIntoBox)
        {
            box.PutAway($"{shim.Path}.oldIntoBox", shim.Valve, old);
        }
        else if (shim.OldScrapped is { } reason)
        {
            box.Scrap($"{shim.Path}.oldScrapped", shim.Valve, old, reason);
        }

        if (shim.FromBox)
        {
            box.Issue(shim.ShimId is null ? $"{shim.Path}.thicknessMm" : $"{shim.Path}.shimId", fitted!.Value, shim.ShimId, shim.Valve);
        }
        else if (shim.FromValve is { } from)
        {
            // Where nobody measured it as it came out, it was measured before it went in: that is its thickness here.
            box.MoveAcross(
                $"{shim.Path}.fromValve", from, ShimRules.Standing(entry.Known.Shims, from, Stage.AsFound)?.Thickness ?? fitted, shim.Valve);
        }
        else if (fitted is { } thickness)
        {
            box.FitFromElsewhere(thickness, shim.Valve);
        }
    }

    /// <summary>The shim that was there lies there again, or only its measure is put right.</summary>
    private static bool IsTheSame(SeenShim shim, ShimThickness? old, ShimThickness? fitted) =>
        shim is { FromBox: false, FromValve: null, OldIntoBox: false, OldScrapped: null }
        && old is { } was && fitted is { } now && UsedShims.MayBeSame(was, now);
}
