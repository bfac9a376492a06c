using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>What parts sell for, by code; and, for the manager, what they cost.</summary>
public static class ListPartPrices
{
    /// <param name="Search">Part of a code or a name.</param>
    /// <param name="Missing">Only those that no price is known of.</param>
    public sealed record Request(string? Search = null, bool Missing = false, string? After = null, int? Take = null);

    /// <param name="NetPrice">Of one piece, or one litre of what is counted in millilitres, before tax.</param>
    /// <param name="Cost">The same, as it costs the workshop; the manager's alone.</param>
    /// <param name="Tax">Absent where the usual rate holds.</param>
    public sealed record Row(string Code, string Name, PartUnit Unit, decimal? NetPrice, decimal? Cost, string? Tax, uint RowVersion);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Search).IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var parts = db.Parts.AsNoTracking().Where(p => p.MergedIntoId == null && (p.NetPrice != null || !p.Discontinued));
        if (!string.IsNullOrWhiteSpace(request.Search))
        {
            var like = $"%{Slice.EscapeLike(request.Search.Trim())}%";
            parts = parts.Where(p => EF.Functions.ILike(p.Code, like) || EF.Functions.ILike(p.Name, like));
        }

        if (request.Missing)
        {
            parts = parts.Where(p => p.NetPrice == null);
        }

        if (!string.IsNullOrEmpty(request.After))
        {
            parts = parts.Where(p => string.Compare(p.Code, request.After) > 0);
        }

        var slice = await parts.OrderBy(p => p.Code)
            .Select(p => new Row(p.Code, p.Name, p.Unit, p.NetPrice, null, p.TaxRateCode, EF.Property<uint>(p, MappingExtensions.RowVersion)))
            .ToSlice(request.Take, row => row.Code, ct);
        if (!TodaysPrices.SeesCosts(actor))
        {
            return slice;
        }

        var prices = await TodaysPrices.Read(db, [.. slice.Rows.Select(r => r.Code)], clock, ct);
        return new Slice<Row>([.. slice.Rows.Select(r => r with { Cost = prices.PartOf(r.Code).Cost })], slice.Next);
    }
}
