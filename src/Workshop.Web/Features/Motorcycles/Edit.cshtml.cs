using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

public sealed class EditModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    private const string VersionField = "Input.RowVersion";

    [BindProperty]
    public EditMotorcycle.Request Input { get; set; } = new();

    /// <summary>After a change by somebody else: field, what stands, what was typed.</summary>
    public IReadOnlyList<(string Field, string? Now, string? Typed)> ChangedMeanwhile { get; private set; } = [];

    /// <summary>What its engine model may have fitted.</summary>
    public IReadOnlyList<FittedOption> Options { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { Id = Id },
        EditMotorcycle.Handle,
        saved =>
        {
            Done = string.Join(" ", saved.Warnings.Prepend("Saved."));
            return Redirect(Address);
        },
        again: Show);

    protected override async Task Prepare()
    {
        Options = (await FittedEngine.On(Db, Id, Today, HttpContext.RequestAborted))?.Specification.Options ?? [];
        if (HttpMethods.IsGet(Request.Method))
        {
            Input = AsItStands();
        }
        else if (Response.StatusCode == StatusCodes.Status412PreconditionFailed)
        {
            // The next send is made in the knowledge of what stands, so it carries that version.
            ModelState.Remove(VersionField);
            Input = Input with { RowVersion = Motorcycle.RowVersion };
            ChangedMeanwhile = [.. Values(AsItStands()).Zip(Values(Input))
                .Where(pair => (pair.First.Value ?? "") != (pair.Second.Value ?? ""))
                .Select(pair => (pair.First.Field, pair.First.Value, pair.Second.Value))];
        }
    }

    private EditMotorcycle.Request AsItStands() => new()
    {
        RowVersion = Motorcycle.RowVersion,
        Registration = Motorcycle.Registration,
        Vin = Motorcycle.Vin,
        Maker = Motorcycle.Maker,
        Model = Motorcycle.Model,
        ModelYear = Motorcycle.ModelYear,
        EngineSerialNumber = Motorcycle.Engine?.SerialNumber,
        Retired = Motorcycle.Retired,
        Use = Motorcycle.Use,
        Options = Motorcycle.Options,
        OwnerName = Motorcycle.Owner?.Name,
        OwnerPhone = Motorcycle.Owner?.Phone,
        OwnerEmail = Motorcycle.Owner?.Email,
    };

    private static IEnumerable<(string Field, string? Value)> Values(EditMotorcycle.Request request) =>
    [
        ("Registration", request.Registration),
        ("VIN or frame number", request.Vin),
        ("Maker", request.Maker),
        ("Model", request.Model),
        ("Model year", request.ModelYear?.ToString(CultureInfo.InvariantCulture)),
        ("Engine number", request.EngineSerialNumber),
        ("Owner", request.OwnerName),
        ("Phone", request.OwnerPhone),
        ("E-mail", request.OwnerEmail),
        ("Ridden", request.Use.Spoken()),
        ("Fitted", string.Join(", ", request.Options ?? [])),
        ("Retired", request.Retired ? "yes" : "no"),
    ];
}
