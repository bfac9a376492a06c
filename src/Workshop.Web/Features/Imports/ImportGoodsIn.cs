using System.Security.Cryptography;
using System.Text;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// Goods in by a file, such as a supplier's delivery note: all lines or none. The same file, known by its content, writes nothing twice.
/// </summary>
public static class ImportGoodsIn
{
    public sealed record Request : IFileRequest
    {
        public string? FileName { get; init; }

        public string? Csv { get; init; }

        public bool DryRun { get; init; }
    }

    /// <param name="ImportId">Absent after a dry run.</param>
    /// <param name="AlreadyImported">The same file was taken over before; nothing was written now.</param>
    /// <param name="Lines">Lines of the file below its column names.</param>
    public sealed record Answer(bool DryRun, Guid? ImportId, bool AlreadyImported, int Lines, IReadOnlyList<Goods> Goods);

    public sealed record Goods(int Line, string PartCode, string Name, PartUnit Unit, decimal Quantity, string Place, string? Lot, LocalDate? UseBy);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.AddFileRules("the text of the delivery");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(request.Csv!));
        if (await db.GoodsInImports.AsNoTracking().SingleOrDefaultAsync(i => i.ContentHash == hash, ct) is { } earlier)
        {
            return new Answer(request.DryRun, earlier.Id, AlreadyImported: true, earlier.Lines, []);
        }

        var faults = new FileFaults(GoodsInColumn.All, "goods-in-at-fault");
        var rows = GoodsInRow.Read(request.Csv!, faults);
        var now = clock.GetCurrentInstant();
        var goods = await GoodsOf(db, rows, faults, now, ct);
        if (!faults.None)
        {
            return faults.ToProblem();
        }

        var import = new GoodsInImport
        {
            Id = NewId.At(clock), FileName = FileRules.NameOf(request), Lines = rows.Count, ContentHash = hash, ImportedBy = actor.PersonId, ImportedAt = now,
        };
        if (!request.DryRun)
        {
            db.GoodsInImports.Add(import);
            db.StockMovements.AddRange(goods.SelectMany(g => g.In.Movements(actor, now)));
            await db.SaveChangesAsync(ct);
        }

        return new Answer(
            request.DryRun, request.DryRun ? null : import.Id, AlreadyImported: false, rows.Count,
            [.. goods.Select(g => new Goods(g.Line, g.In.Part.Code, g.In.Part.Name, g.In.Part.Unit, g.In.Quantity, g.In.Place.Name, g.In.Lot?.Code, g.In.Lot?.ExpiresOn))]);
    }

    private static async Task<IReadOnlyList<(int Line, GoodsIn In)>> GoodsOf(
        WorkshopDbContext db, IReadOnlyList<GoodsInRow> rows, FileFaults faults, Instant now, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        var codes = rows.Select(r => r.Part).Distinct().ToArray();

        // Locked first, in one order; a merged part's code means another part, whose row is locked, too.
        await db.Database.ExecuteSqlAsync(
            $"""
             select 1 from parts where code = any({codes}) or id in (select merged_into_id from parts where code = any({codes}))
             order by id for no key update
             """, ct);
        var parts = await PartsByCode.Read(db, codes, ct);
        var places = await db.StoragePlaces.AsNoTracking().ToDictionaryAsync(p => p.Code, StringComparer.Ordinal, ct);
        var goods = new List<(int, GoodsIn)>();
        foreach (var row in rows.Where(r => r.Quantity is not null))
        {
            var (part, place) = (parts.GetValueOrDefault(row.Part), places.GetValueOrDefault(row.Place));
            if (part is null && row.Part.Length > 0)
            {
                faults.Add(row.Line, GoodsInColumn.Part, $"It is \"{CsvLine.Shorten(row.Part)}\": no part has that code.");
            }

            if (place is not { Retired: false } && row.Place.Length > 0)
            {
                faults.Add(row.Line, GoodsInColumn.Place, $"It is \"{CsvLine.Shorten(row.Place)}\": {(place is null ? "no place has that code" : $"{place.Name} is retired")}.");
            }

            if (part is null || place is null)
            {
                continue;
            }

            var lot = await GoodsIn.LotOf(db, part, row.Lot, row.UseBy, today, now, ct);
            var refused = ReceiptRules.Refuse(part, row.Quantity!.Value, row.ThicknessMm);
            foreach (var fault in (refused?.Faults ?? []).Concat(lot.Problem?.Faults ?? []))
            {
                faults.Add(row.Line, GoodsInColumn.Of(fault.Field), char.ToUpperInvariant(fault.Sentence[0]) + fault.Sentence[1..]);
            }

            if (refused is null && lot.TryGet(out var found, out _))
            {
                var thickness = row.ThicknessMm is { } mm ? ShimThickness.FromMillimetres(mm) : (ShimThickness?)null;
                goods.Add((row.Line, new GoodsIn(part, place, row.Quantity.Value, thickness, found, row.UnitCost)));
            }
        }

        return goods;
    }
}
