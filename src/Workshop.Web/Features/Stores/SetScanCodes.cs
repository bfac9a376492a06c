using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What a scanner reads on the packages of a part: the whole list, with what each package holds.</summary>
public static class SetScanCodes
{
    private const int Most = 50;
    private const int Longest = 80;

    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string Code { get; init; } = "";

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Lines without a code are left out.</summary>
        public IReadOnlyList<Package?>? Packages { get; init; }
    }

    public sealed record Package
    {
        public string? ScanCode { get; init; }

        /// <summary>In the part's unit; 1 where it is not given.</summary>
        public decimal? Quantity { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Packages).Must(p => p is null || p.Count <= Most).WithMessage($"{{PropertyName}} has more than the {Most} lines that are allowed.");
            RuleForEach(r => r.Packages).ChildRules(package =>
            {
                package.RuleFor(p => p!.ScanCode).IsAtMost(Longest).Must(c => string.IsNullOrEmpty(c) || StockCodes.IsScanCode(c))
                    .WithMessage((_, c) => $"{{PropertyName}} is \"{c}\": a code without blanks at its ends that cannot be taken for a quantity is allowed.");
                package.RuleFor(p => p!.Quantity).IsQuantity();
            });
        }
    }

    public static async Task<Outcome<PartChanged>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartToChange.Find(db, request.Code, request.RowVersion!.Value, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        var packages = (request.Packages ?? []).Select((p, index) => (Path: $"packages[{index}]", Package: p))
            .Where(p => !string.IsNullOrEmpty(p.Package?.ScanCode)).ToList();
        var codes = packages.Select(p => p.Package!.ScanCode!).ToList();
        var elsewhere = await db.PartScanCodes.AsNoTracking().Where(c => codes.Contains(c.Code) && c.PartId != found.Part.Id).Select(c => c.Code)
            .Concat(db.Parts.Where(p => codes.Contains(p.Code)).Select(p => p.Code))
            .Concat(db.StoragePlaces.Where(p => codes.Contains(p.Code)).Select(p => p.Code)).ToListAsync(ct);
        var faults = packages.Where((p, index) => elsewhere.Contains(codes[index]) || codes.IndexOf(codes[index]) < index)
            .Select(p => new FieldFault($"{p.Path}.scanCode",
                $"{p.Path}.scanCode is \"{p.Package!.ScanCode}\", which means something else already, or stands twice; a scan means one thing.")).ToList();
        if (faults.Count > 0)
        {
            return Problem.Impossible("scan-code-taken", faults);
        }

        var standing = await db.PartScanCodes.Where(c => c.PartId == found.Part.Id).ToListAsync(ct);
        db.PartScanCodes.RemoveRange(standing.Where(c => !codes.Contains(c.Code)));
        foreach (var package in packages.Select(p => p.Package!))
        {
            var row = standing.SingleOrDefault(c => c.Code == package.ScanCode)
                ?? db.PartScanCodes.Add(new PartScanCode { Code = package.ScanCode!, PartId = found.Part.Id }).Entity;
            row.Quantity = package.Quantity ?? 1;
        }

        await db.SaveChangesAsync(ct);
        return new PartChanged(found.Part.Code, found.Part.Name, found.Version.CurrentValue);
    }
}
