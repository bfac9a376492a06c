using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Consumables;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

/// <summary>What is used up, kind by kind, with what tells one from the other; seals by size.</summary>
public static class ListConsumables
{
    /// <summary>Kinds that are used up; shims and tools are no matter of this list.</summary>
    public static IReadOnlyList<PartKind> Kinds { get; } =
        [PartKind.ORing, PartKind.SealingRing, PartKind.Gasket, PartKind.SparkPlug, PartKind.Fluid, PartKind.Sealant, PartKind.FastenerUsedOnce];

    private const char Between = '|';

    /// <param name="After">What the page before gave as next.</param>
    public sealed record Request(string? Kind, string? Material = null, string? After = null, int? Take = null);

    /// <param name="Size">Of seals whose sizes are known.</param>
    /// <param name="ShelfLifeMonths">Unopened.</param>
    /// <param name="ExpiresFirst">The nearest last day of use among the lots that lie there.</param>
    public sealed record Row(
        string Code, string Name, PartKind Kind, PartUnit Unit, string? Size, string? Designation, string? Material, int? Hardness, string? Form,
        bool FittedOnce, bool Discontinued, int? ShelfLifeMonths, LocalDate? ExpiresFirst, decimal OnHand);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Kind).IsGiven($"one of {string.Join(", ", Kinds.Select(Words.Write))}").IsWordOf<Request, PartKind>();
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Material).IsAtMost(Limits.Name);
            RuleFor(r => r.After).Must(a => string.IsNullOrEmpty(a) || TryRead(a, out _, out _))
                .WithMessage((_, a) => $"{{PropertyName}} is \"{a}\": what the page before gave as next is allowed.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var kind = Words.Read<PartKind>(request.Kind)!.Value;
        var parts = db.Parts.AsNoTracking().Where(p => p.Kind == kind && p.MergedIntoId == null);
        if (request.Material is { Length: > 0 } material)
        {
            var like = $"%{Slice.EscapeLike(material)}%";
            parts = parts.Where(p => p.Material != null && EF.Functions.ILike(p.Material, like));
        }

        if (TryRead(request.After, out var inner, out var code))
        {
            parts = parts.Where(p => (p.InnerDiameterMm ?? 0) > inner || ((p.InnerDiameterMm ?? 0) == inner && string.Compare(p.Code, code) > 0));
        }

        var slice = await parts.OrderBy(p => p.InnerDiameterMm ?? 0).ThenBy(p => p.Code)
            .ToSlice(request.Take, p => FormattableString.Invariant($"{p.InnerDiameterMm ?? 0:0.####}{Between}{p.Code}"), ct);
        var ids = slice.Rows.Select(p => p.Id).ToList();
        var lying = (await (
            from balance in db.StockBalances.AsNoTracking()
            where ids.Contains(balance.PartId) && balance.OnHand > 0
            join lot in db.StockLots on balance.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            select new { balance.PartId, balance.OnHand, ExpiresOn = (LocalDate?)lot!.ExpiresOn }).ToListAsync(ct)).ToLookup(b => b.PartId);
        return new Slice<Row>([.. slice.Rows.Select(p => new Row(
            p.Code, p.Name, p.Kind, p.Unit, p.MeasuredSize()?.ToString(), p.Designation, p.Material, p.Hardness, p.Form, p.FittedOnce, p.Discontinued,
            p.ShelfLifeMonths, lying[p.Id].Min(l => l.ExpiresOn), lying[p.Id].Sum(l => l.OnHand)))], slice.Next);
    }

    private static bool TryRead(string? after, out decimal inner, out string code)
    {
        (inner, code) = (0, "");
        var at = after?.IndexOf(Between, StringComparison.Ordinal) ?? -1;
        if (at < 0 || !decimal.TryParse(after![..at], System.Globalization.CultureInfo.InvariantCulture, out inner))
        {
            return false;
        }

        code = after[(at + 1)..];
        return true;
    }
}
