using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Web.Data;
using Workshop.Web.Features.CamTiming;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

public sealed class MotorcycleModel(WorkshopDbContext db, IClock clock, IAuthorizationService authorization)
    : MotorcyclePage(db, clock)
{
    /// <summary>A page stays small; the API gives them all.</summary>
    public const int MostReadings = 100;

    /// <summary>What the short form for a reading starts with; it is sent to the page of its own.</summary>
    public RecordOdometer.Request Input { get; private set; } = new();

    public IReadOnlyList<DueLine> Due { get; private set; } = [];

    /// <summary>How far the chains of its engine are worn; those that were never read are left out.</summary>
    public IReadOnlyList<ChainWearView.Chain> Chains { get; private set; } = [];

    public bool MayBook { get; private set; }

    public bool MayMeasure { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    protected override async Task Prepare()
    {
        Input = new RecordOdometer.Request { ReadOn = Today };
        Due = (await Read(new ListDue.Request { MotorcycleId = Id, Take = Slice.Largest }, ListDue.Handle)).Value.Rows;
        Chains = [.. (await Read(new GetChainWear.Request(Id), GetChainWear.Handle)).Value.Chains.Where(c => c.Readings.Count > 0)];
        MayBook = (await authorization.AuthorizeAsync(User, Policies.Books)).Succeeded;
        MayMeasure = (await authorization.AuthorizeAsync(User, Policies.Measures)).Succeeded;
    }
}
