using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>One shim: where it is, all that happened to it, and what may be done with it now.</summary>
public sealed class ShimModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid ShimId { get; set; }

    [BindProperty]
    public PutShimAway.Request Away { get; set; } = new();

    [BindProperty]
    public ScrapShim.Request Scrap { get; set; } = new();

    public GetShim.Answer Known { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayWrite { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostAway() => await May(Policies.KeepsStores)
        ? await Write(
            Away with { Id = ShimId },
            PutShimAway.Handle,
            away =>
            {
                Done = $"The shim of {away.ThicknessMm} lies in {away.Place}, {away.Condition.Spoken()}.";
                return Redirect($"/stores/shims/{ShimId}");
            },
            again: Show,
            prefix: nameof(Away))
        : Forbid();

    public async Task<IActionResult> OnPostScrap() => await May(Policies.KeepsStores)
        ? await Write(
            Scrap with { Id = ShimId },
            ScrapShim.Handle,
            scrapped =>
            {
                Done = scrapped.Sentence;
                return Redirect($"/stores/shims/{ShimId}");
            },
            again: Show,
            prefix: nameof(Scrap))
        : Forbid();

    /// <summary>Where it is, in words.</summary>
    public string Whereabouts => Known.Shim switch
    {
        { Where: ShimWhere.Box } shim => $"{shim.Place}{(shim.Compartment is { } at ? $", {at}" : "")}",
        { Where: ShimWhere.Engine } shim => $"in an engine, {shim.Valve!.Value.Spoken}",
        { Where: ShimWhere.Bench } shim => $"on the bench of job card {shim.JobCardNumber}, out of {shim.Valve!.Value.Spoken}",
        var shim => shim.Gone!.Value.Spoken(),
    };

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetShim.Request(ShimId), GetShim.Handle)).TryGet(out var known, out var problem))
        {
            return Refused(problem);
        }

        Known = known;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        MayWrite = known.Shim.Where is ShimWhere.Box or ShimWhere.Bench && await May(Policies.KeepsStores);
        return Page();
    }
}
