using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Imports;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>
/// Takes a list of prices over, all or nothing: while one line is at fault nothing is written. A dry run says what would change. The
/// same file changes nothing twice.
/// </summary>
public static class ImportPartPrices
{
    internal static readonly CsvColumns Columns = new(["part", "price", "tax"], ["tax"]);

    public sealed record Request : IFileRequest
    {
        public string? FileName { get; init; }

        /// <summary>
        /// The whole text. Its first line names the columns part, price and, where rates differ, tax; commas or semicolons between
        /// cells. A price is that of one piece, or one litre of what is counted in millilitres, before tax.
        /// </summary>
        public string? Csv { get; init; }

        /// <summary>Decide and answer, but write nothing.</summary>
        public bool DryRun { get; init; }
    }

    /// <param name="Unchanged">Lines whose price and rate stand already.</param>
    public sealed record Answer(bool DryRun, int Lines, int Unchanged, IReadOnlyList<Change> Changes);

    public sealed record Change(string Code, string Name, decimal? From, decimal To, string? Tax);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.AddFileRules("the text of the list of prices");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var faults = new FileFaults(Columns.All, "prices-at-fault");
        var lines = CsvLines.Read(request.Csv!, Columns, faults);
        var codes = lines.Select(l => l["part"]).Distinct().ToList();
        var parts = await db.Parts.Where(p => codes.Contains(p.Code)).ToDictionaryAsync(p => p.Code, StringComparer.Ordinal, ct);
        var rates = await db.TaxRates.Select(r => r.Code).Distinct().Order().ToListAsync(ct);
        var (seen, changes, unchanged) = (new Dictionary<string, int>(StringComparer.Ordinal), new List<Change>(), 0);
        foreach (var line in lines)
        {
            var price = line.Cell<decimal>("price", TryPrice,
                $"a price from 0 to {Money.LargestPrice.ToString(CultureInfo.InvariantCulture)} with at most {Money.PriceDecimals} decimals");
            var named = line["tax"] is { Length: > 0 } text ? text : null;
            if (named is not null && !rates.Contains(named))
            {
                faults.Add(line.Number, "tax", $"It is \"{CsvLine.Shorten(named)}\": {(rates.Count == 0 ? "no tax rate is entered yet" : $"{string.Join(", ", rates)} are allowed, or nothing")}.");
            }

            if (!parts.TryGetValue(line["part"], out var part))
            {
                faults.Add(line.Number, "part", $"It is \"{CsvLine.Shorten(line["part"])}\": the stores have no such part.");
            }
            else if (part.MergedIntoId is not null)
            {
                faults.Add(line.Number, "part", $"It is \"{part.Code}\", which was found to be another part; name that one.");
            }
            else if (!seen.TryAdd(part.Code, line.Number))
            {
                faults.Add(line.Number, "part", $"It is \"{part.Code}\", as in line {seen[part.Code]}: each part has one price.");
            }
            else if (price is { } to)
            {
                // A file without the column says nothing of rates.
                var tax = line.Cells.ContainsKey("tax") ? named : part.TaxRateCode;
                if (part.NetPrice == to && part.TaxRateCode == tax)
                {
                    unchanged++;
                    continue;
                }

                changes.Add(new Change(part.Code, part.Name, part.NetPrice, to, tax));
                if (!request.DryRun)
                {
                    (part.NetPrice, part.TaxRateCode) = (to, tax);
                }
            }
        }

        if (!faults.None)
        {
            return faults.ToProblem();
        }

        await db.SaveChangesAsync(ct);
        return new Answer(request.DryRun, lines.Count, unchanged, changes);
    }

    private static bool TryPrice(string text, out decimal price) =>
        DecimalBinder.TryRead(text, out price) && price >= 0 && price <= Money.LargestPrice && decimal.Round(price, Money.PriceDecimals) == price;
}
