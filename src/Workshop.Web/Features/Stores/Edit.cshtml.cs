using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>A part to be changed: its fields, codes on packages, alternatives; and by a manager, its end.</summary>
public sealed class EditModel(WorkshopDbContext db) : StoresPage(db)
{
    private const int EmptyLines = 2;

    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    /// <summary>That the forms were filled from.</summary>
    [BindProperty]
    public uint? Version { get; set; }

    [BindProperty]
    public EditPart.Request Input { get; set; } = new();

    [BindProperty]
    public SetScanCodes.Request Codes { get; set; } = new();

    [BindProperty]
    public SetAlternatives.Request Others { get; set; } = new();

    [BindProperty]
    public DiscontinuePart.Request End { get; set; } = new();

    [BindProperty]
    public MergePart.Request Merge { get; set; } = new();

    public GetPart.Answer Part { get; private set; } = null!;

    public IReadOnlyList<SetScanCodes.Package> PackageLines { get; private set; } = [];

    public IReadOnlyList<SetAlternatives.Alternative> AlternativeLines { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show("");

    public async Task<IActionResult> OnPost()
    {
        OnlyFaultsOf("Input");
        return await Write(Input with { Code = Code, RowVersion = Version }, EditPart.Handle, Saved, () => Show("Input"));
    }

    public async Task<IActionResult> OnPostPackages()
    {
        OnlyFaultsOf("Codes");
        return await Write(Codes with { Code = Code, RowVersion = Version }, SetScanCodes.Handle, Saved, () => Show("Codes"), "Codes");
    }

    public async Task<IActionResult> OnPostAlternatives()
    {
        OnlyFaultsOf("Others");
        return await Write(Others with { Code = Code, RowVersion = Version }, SetAlternatives.Handle, Saved, () => Show("Others"), "Others");
    }

    public async Task<IActionResult> OnPostDiscontinue()
    {
        OnlyFaultsOf("End");
        return await May(Policies.Manages)
            ? await Write(End with { Code = Code, RowVersion = Version }, DiscontinuePart.Handle, Saved, () => Show("End"), "End")
            : Forbid();
    }

    public async Task<IActionResult> OnPostMerge()
    {
        OnlyFaultsOf("Merge");
        return await May(Policies.Manages)
            ? await Write(
                Merge with { Code = Code, RowVersion = Version },
                MergePart.Handle,
                merged =>
                {
                    Done = $"{merged.Code} is merged into this part: {merged.Unit.Say(merged.OnHand)} went over, with the reservations of {merged.Cards.Count} job cards.";
                    return Redirect(AddressOf(merged.Into));
                },
                () => Show("Merge"),
                "Merge")
            : Forbid();
    }

    private RedirectResult Saved(PartChanged changed)
    {
        Done = "Saved.";
        return Redirect(AddressOf(changed.Code));
    }

    /// <summary>The form that was refused comes back as typed; the others as things stand.</summary>
    private async Task<IActionResult> Show(string refused)
    {
        if (!(await Read(new GetPart.Request(Code), GetPart.Handle)).TryGet(out var part, out var problem))
        {
            return Refused(problem);
        }

        if (part.Code != Code)
        {
            return Redirect(AddressOf(part.Code));
        }

        await Begin();
        Part = part;
        if (Version is null || Response.StatusCode == StatusCodes.Status412PreconditionFailed)
        {
            // The next send is made in the knowledge of what stands now.
            ModelState.Remove(nameof(Version));
            Version = part.RowVersion;
        }

        if (refused != "Input")
        {
            Input = FieldsOf(part);
        }

        if (refused != "End")
        {
            End = new DiscontinuePart.Request { Discontinued = part.Discontinued, ReplacedBy = part.ReplacedBy?.Code };
        }

        PackageLines = refused == "Codes" && Codes.Packages is { } typed
            ? [.. typed.Select(p => p ?? new())]
            : [.. part.Packages.Select(p => new SetScanCodes.Package { ScanCode = p.ScanCode, Quantity = p.Quantity }), .. Enumerable.Repeat(new SetScanCodes.Package(), EmptyLines)];
        AlternativeLines = refused == "Others" && Others.Alternatives is { } others
            ? [.. others.Select(a => a ?? new())]
            : [.. part.Alternatives.Select(a => new SetAlternatives.Alternative { PartCode = a.Code, Note = a.Note }), .. Enumerable.Repeat(new SetAlternatives.Alternative(), EmptyLines)];
        return Page();
    }

    private static EditPart.Request FieldsOf(GetPart.Answer part) => new()
    {
        Name = part.Name, InnerDiameterMm = part.InnerDiameterMm, OuterDiameterMm = part.OuterDiameterMm, SectionMm = part.SectionMm,
        Material = part.Material, Form = part.Form, Designation = part.Designation, Hardness = part.Hardness, FittedOnce = part.FittedOnce,
        PackQuantity = part.PackQuantity, ShelfLifeMonths = part.ShelfLifeMonths, DeliveryDays = part.DeliveryDays, Stocked = part.Stocked,
    };
}
