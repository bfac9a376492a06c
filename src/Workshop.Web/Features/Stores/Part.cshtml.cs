using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>A part of the ledger, in the workshop's time.</summary>
public sealed record LedgerView(ListLedger.Answer Ledger, WorkshopTime Time);

public sealed class PartModel(WorkshopDbContext db, IClock clock) : StoresPage(db)
{
    private const int LedgerRows = 10;

    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    public GetPart.Answer Part { get; private set; } = null!;

    public LedgerView Ledger { get; private set; } = null!;

    public LocalDate Today { get; private set; }

    /// <summary>"14 x 18 x 1.5 mm"; nothing where no size is known.</summary>
    public string? Sizes => Joined(" x ", " mm", Part.InnerDiameterMm, Part.OuterDiameterMm, Part.SectionMm);

    /// <summary>Designation, material, form and hardness, as far as they are known.</summary>
    public string? Make => string.Join(", ", new[]
    {
        Part.Designation, Part.Material, Part.Form is { } form ? $"form {form}" : null, Part.Hardness is { } hardness ? $"hardness {hardness}" : null,
    }.OfType<string>()) is { Length: > 0 } made ? made : null;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new GetPart.Request(Code), GetPart.Handle)).TryGet(out var part, out var problem))
        {
            return Refused(problem);
        }

        if (part.Code != Code)
        {
            Done = $"{Code} was merged into this part; its code means this one.";
            return Redirect(AddressOf(part.Code));
        }

        await Begin();
        (Part, Today) = (part, Time.DayOf(clock.GetCurrentInstant()));
        Ledger = new LedgerView((await Read(new ListLedger.Request(part.Code, Take: LedgerRows), ListLedger.Handle)).Value, Time);
        return Page();
    }

    private static string? Joined(string between, string unit, params decimal?[] sizes) => sizes.Any(s => s is not null)
        ? string.Join(between, sizes.OfType<decimal>().Select(s => s.ToString("0.###", CultureInfo.InvariantCulture))) + unit
        : null;
}
