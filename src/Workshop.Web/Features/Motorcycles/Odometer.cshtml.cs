using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

public sealed class OdometerModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    [BindProperty]
    public RecordOdometer.Request Input { get; set; } = new();

    /// <summary>The reading to correct, as the link names it.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Supersedes { get; set; }

    public GetMotorcycle.Reading? Corrected { get; private set; }

    /// <summary>It was refused as one, so that the form offers to confirm it.</summary>
    public bool LooksLikeASlip { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { MotorcycleId = Id },
        RecordOdometer.Handle,
        entered =>
        {
            Done = $"{entered.Odometer:#,0} {entered.Unit.Symbol()} is entered; what is due is reckoned anew.";
            return Redirect($"{Address}#odometer");
        },
        again: Show);

    protected override Task Prepare()
    {
        LooksLikeASlip = Input.ConfirmUnusual || Response.StatusCode == StatusCodes.Status422UnprocessableEntity;
        var superseded = Input.SupersedesId ?? Supersedes;
        Corrected = Motorcycle.OdometerReadings.FirstOrDefault(r => r.Id == superseded);
        if (HttpMethods.IsGet(Request.Method))
        {
            Input = new RecordOdometer.Request
            {
                SupersedesId = Corrected?.Id, Odometer = Corrected?.Odometer, ReadOn = Corrected?.ReadOn ?? Today,
            };
        }

        return Task.CompletedTask;
    }
}
