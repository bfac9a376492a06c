using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// The shims that one visit may take and bring: those in the box, those in its engine, those on its bench. A write works on
/// these rows in memory and adds the movements; the database moves the shims by them.
/// </summary>
internal sealed class ShimBox
{
    private readonly VisitEntry entry;
    private readonly ShimRange range;
    private readonly Part? part;
    private readonly Guid? home;
    private readonly UsedShimPolicy policy;
    private readonly List<Shim> shims;
    private readonly List<StockMovement> ofTheCard;

    private ShimBox(
        VisitEntry entry, ShimRange range, Part? part, Guid? home, UsedShimPolicy policy, List<Shim> shims, List<StockMovement> ofTheCard)
    {
        (this.entry, this.range, this.part, this.home, this.policy) = (entry, range, part, home, policy);
        (this.shims, this.ofTheCard) = (shims, ofTheCard);
    }

    private Guid Engine => entry.Open.Card.EngineId;

    private Guid Motorcycle => entry.Open.Card.MotorcycleId;

    /// <summary>
    /// What a plan may fit beside the shims that lie in the valves, as the workshop's policy on used ones allows: those on the
    /// bench of this visit one by one, those in the box by thickness, condition and place.
    /// </summary>
    public static async Task<IReadOnlyList<ShimLot>> Lots(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        if (open.Specification.Shims is not { } range)
        {
            return [];
        }

        var (number, motorcycle) = (open.Card.Number, open.Card.MotorcycleId);
        var policy = await db.UsedShimPolicy(ct);
        var series = await ShimBoxes.Find(db, range.PartCode, ct);
        var shims = await (
            from shim in db.Shims.AsNoTracking()
            join part in db.Parts on shim.PartId equals part.Id
            from place in db.StoragePlaces.Where(p => p.Id == shim.PlaceId).DefaultIfEmpty()
            where part.Code == range.PartCode && (shim.PlaceId != null || shim.BenchCardNumber == number)
            orderby shim.Thickness, shim.Condition, shim.Id
            select new { Shim = shim, Place = place!.Name }).ToListAsync(ct);
        var allowed = shims.Where(s => policy.Allows(s.Shim.Condition, s.Shim.CameFromMotorcycleId, motorcycle)).ToLookup(s => s.Shim.PlaceId is null);
        return
        [
            .. allowed[true].Select(s => new ShimLot(
                $"bench-{s.Shim.Id}", s.Shim.Thickness, s.Shim.Condition, LotSource.Bench, 1,
                $"on the bench, out of {s.Shim.Valve!.Value.Spoken}", s.Shim.Valve)),
            .. allowed[false].GroupBy(s => (s.Shim.Thickness, s.Shim.Condition)).Select(g => new ShimLot(
                $"box-{g.Key.Thickness.Millimetres:0.000}-{g.Key.Condition}", g.Key.Thickness, g.Key.Condition, LotSource.Box, g.Count(),
                ShimBoxes.Say(g.First().Place, g.First().Shim.PlaceId!.Value, series, g.Key.Thickness))),
        ];
    }

    /// <summary>The same for a write: the part's row is locked first, so that two cards never take the same shim.</summary>
    public static async Task<ShimBox> ReadToChange(VisitEntry entry, ShimRange range, CancellationToken ct)
    {
        var db = entry.Db;
        await db.Database.ExecuteSqlAsync($"select 1 from parts where code = {range.PartCode} for no key update", ct);
        var (engine, number) = (entry.Open.Card.EngineId, entry.Open.Card.Number);
        if (await db.Parts.AsNoTracking().SingleOrDefaultAsync(p => p.Code == range.PartCode, ct) is not { } part)
        {
            return new ShimBox(entry, range, null, null, UsedShimPolicy.Yes, [], []);
        }

        var shims = await db.Shims.AsNoTracking()
            .Where(s => s.PartId == part.Id && (s.PlaceId != null || s.EngineId == engine || s.BenchCardNumber == number))
            .OrderBy(s => s.Id).ToListAsync(ct);
        var ofTheCard = (await db.StockMovements.AsNoTracking()
            .Where(m => m.JobCardNumber == number && m.PartId == part.Id).ToListAsync(ct))
            .OrderBy(m => m.MovedAt).ThenBy(m => ShimLedger.WaveOf(m.Kind)).ToList();
        var home = (await ShimBoxes.Find(db, range.PartCode, ct))?.PlaceId
            ?? shims.Where(s => s.PlaceId is not null).GroupBy(s => s.PlaceId).OrderByDescending(g => g.Count()).ThenBy(g => g.Key)
                .Select(g => g.Key).FirstOrDefault();
        return new ShimBox(entry, range, part, home, await db.UsedShimPolicy(ct), shims, ofTheCard);
    }

    /// <summary>The shim in the box with this id, whatever its thickness.</summary>
    public Shim? Find(Guid id) => shims.Find(s => s.Id == id && s.PlaceId is not null);

    /// <summary>The shim that the ledger knows in a valve of this engine.</summary>
    public Shim? InValve(ValveKey valve) => shims.Find(s => s.EngineId == Engine && s.Valve == valve);

    /// <summary>
    /// What lies in a valve comes out onto the bench. A ledger that knows another thickness there than was measured is put
    /// right: that shim is missing, and this is one that it did not know.
    /// </summary>
    /// <param name="measured">What the micrometer says of what came out; absent where nobody measured it.</param>
    /// <returns>Nothing where neither the ledger nor the micrometer knows what came out, or it is out already.</returns>
    public Shim? TakeOut(ValveKey valve, ShimThickness? measured)
    {
        if (part is null || home is null)
        {
            return null;
        }

        var fittedHere = LastMoveOf(valve) is { Kind: MovementKind.Issued };
        var known = InValve(valve);
        if (known is not null && measured is { } seen && !UsedShims.MayBeSame(known.Thickness, seen))
        {
            Move(known, MovementKind.Counted, 0, k => (k.EngineId, k.Valve, k.Gone) = (null, null, ShimEnd.Missing), valve);
            entry.Warnings.Add($"{valve.Spoken}: {known.Thickness} was fitted by the ledger, {seen} came out; somebody changed it elsewhere.");
            known = null;
        }

        if (known is null)
        {
            if (measured is not { } thickness || LastMoveOf(valve) is { Kind: MovementKind.CameOut })
            {
                return null;
            }

            known = Unknown(thickness);
            shims.Add(known);
        }

        known.Thickness = measured ?? known.Thickness;
        known.Condition = fittedHere ? known.Condition : StockCondition.Used;
        Move(known, MovementKind.CameOut, 0, s => (s.EngineId, s.Valve, s.BenchCardNumber) = (null, valve, entry.Open.Card.Number), valve);
        return known;
    }

    /// <summary>Puts what came out into the box, as what it is now.</summary>
    public void PutAway(string field, ValveKey valve, Shim? shim)
    {
        if (home is null)
        {
            entry.AddShortage(field, $"{field}: the stores have no place for {range.PartCode}; enter the part and its place there first.");
        }
        else if (shim is null)
        {
            entry.Add(new FieldFault(field, $"{field}: what came out of {valve.Spoken} is elsewhere already; leave it out."));
        }
        else if (UsedShims.IsWornOut(shim.Nominal, shim.Thickness))
        {
            entry.Add(new FieldFault(field,
                $"{field}: what came out of {valve.Spoken} measures {shim.Thickness}, more than {UsedShims.MostWearMm} mm below its size of {shim.Nominal}. Measure again; where it is so, scrap it as worn."));
        }
        else
        {
            Move(shim, MovementKind.Returned, 1, s => (s.PlaceId, s.BenchCardNumber, s.Valve) = (home, null, null), null);
        }
    }

    /// <summary>What came out is not used again.</summary>
    public void Scrap(string field, ValveKey valve, Shim? shim, ScrapReason reason)
    {
        if (shim is null)
        {
            entry.Add(new FieldFault(field, $"{field}: what came out of {valve.Spoken} is not measured, or elsewhere already; leave it out."));
            return;
        }

        Move(shim, MovementKind.Scrapped, 0, s => (s.Gone, s.BenchCardNumber, s.Valve) = (ShimEnd.Scrapped, null, null), null, reason);
    }

    /// <summary>Takes one out of the box into a valve: the one that is named, or one of this thickness, a new one before a used one.</summary>
    public void Issue(string field, ShimThickness thickness, Guid? id, ValveKey valve)
    {
        var there = shims.Where(s => s.PlaceId is not null && (id is null ? s.Thickness == thickness : s.Id == id)).ToList();
        if (there.Where(MayBeFitted).OrderBy(s => s.Condition).ThenBy(s => s.Id).FirstOrDefault() is { } shim)
        {
            Move(shim, MovementKind.Issued, -1, s => (s.PlaceId, s.EngineId, s.Valve) = (null, Engine, valve), valve);
        }
        else if (there.Count > 0)
        {
            entry.AddShortage(field, $"{field} is {thickness}: the box holds only {Count(there)}, and the workshop's answer to used shims is \"{policy.Spoken()}\". {Neighbours(thickness)}");
        }
        else
        {
            entry.AddShortage(field, id is null
                ? $"{field} is {thickness}: the box holds none ({range.PartCode}). {Neighbours(thickness)}"
                : $"{field} is {id}: that shim is not in the box ({range.PartCode}); somebody took it. {Neighbours(thickness)}");
        }
    }

    /// <summary>Moves what came out of one valve into another.</summary>
    public void MoveAcross(string field, ValveKey from, ShimThickness? measured, ValveKey to)
    {
        var shim = shims.Where(s => s.BenchCardNumber == entry.Open.Card.Number && s.Valve == from)
            .OrderByDescending(s => s.Id).FirstOrDefault() ?? TakeOut(from, measured);
        if (shim is null)
        {
            entry.Add(new FieldFault(field, $"{field} is {from}: what came out of it is not measured, or is elsewhere already."));
        }
        else if (!MayBeFitted(shim))
        {
            entry.Add(new FieldFault(field, $"{field} is {from}: the workshop's answer to used shims is \"{policy.Spoken()}\"; a used shim only goes back into its own valve."));
        }
        else
        {
            Move(shim, MovementKind.Issued, 0, s => (s.BenchCardNumber, s.EngineId, s.Valve) = (null, Engine, to), to);
        }
    }

    /// <summary>One that never was in the box goes into a valve: the ledger knows it from here on.</summary>
    public void FitFromElsewhere(ShimThickness thickness, ValveKey valve)
    {
        if (part is null || home is null)
        {
            return;
        }

        var shim = Unknown(thickness);
        shims.Add(shim);
        Move(shim, MovementKind.Issued, 0, s => (s.EngineId, s.Valve) = (Engine, valve), valve);
    }

    private Shim Unknown(ShimThickness thickness) => new()
    {
        Id = Domain.NewId.At(entry.Now), PartId = part!.Id, Thickness = thickness, Condition = StockCondition.Used,
        CameFromMotorcycleId = Motorcycle,
    };

    private bool MayBeFitted(Shim shim) => policy.Allows(shim.Condition, shim.CameFromMotorcycleId, Motorcycle);

    private StockMovement? LastMoveOf(ValveKey valve) =>
        ofTheCard.LastOrDefault(m => m.EngineId == Engine && m.Valve == valve && m.Kind is MovementKind.Issued or MovementKind.CameOut);

    private void Move(Shim shim, MovementKind kind, int change, Action<Shim> then, ValveKey? valve, ScrapReason? reason = null)
    {
        var movement = new StockMovement
        {
            Id = Domain.NewId.At(entry.Now),
            PartId = part!.Id,
            PlaceId = shim.PlaceId ?? home!.Value,
            Thickness = shim.Thickness,
            Condition = shim.Condition,
            ShimId = shim.Id,
            EngineId = valve is null ? null : Engine,
            Valve = valve,
            ScrapReason = reason,
            Kind = kind,
            OnHandChange = change,
            ReservedChange = 0,
            JobCardNumber = entry.Open.Card.Number,
            MovedBy = entry.Actor.PersonId,
            MovedAt = entry.Now,
        };
        entry.ShimMovements.Add(movement);
        ofTheCard.Add(movement);
        then(shim);
    }

    private static string Count(List<Shim> used) => used.Count == 1 ? "a used one" : $"{used.Count} used ones";

    private string Neighbours(ShimThickness thickness)
    {
        var there = shims.Where(s => s.PlaceId is not null && MayBeFitted(s)).Select(s => s.Thickness).ToList();
        var near = new[]
        {
            there.Where(t => t < thickness).Select(t => (ShimThickness?)t).Max(),
            there.Where(t => t > thickness).Select(t => (ShimThickness?)t).Min(),
        }.OfType<ShimThickness>().Select(t => t.ToString()).ToList();
        return near.Count == 0 ? "It holds no other either." : $"Nearest in it: {string.Join(" and ", near)}.";
    }
}
