using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

public sealed class ReplaceOdometerModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    [BindProperty]
    public ReplaceOdometer.Request Input { get; set; } = new();

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { MotorcycleId = Id },
        ReplaceOdometer.Handle,
        replaced =>
        {
            Done = $"The new odometer counts {(replaced.Unit == OdometerUnit.Miles ? "miles" : "kilometres")} from here on.";
            return Redirect($"{Address}#odometer");
        },
        again: Show);

    protected override Task Prepare()
    {
        if (HttpMethods.IsGet(Request.Method))
        {
            Input = new ReplaceOdometer.Request { ReplacedOn = Today, NewOdometer = 0, NewUnit = Motorcycle.OdometerUnit };
        }

        return Task.CompletedTask;
    }
}
