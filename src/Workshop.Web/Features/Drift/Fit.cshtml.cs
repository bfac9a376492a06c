using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>How the valves of one engine model drift, on what that rests, and the button that has it worked out anew.</summary>
public sealed class FitModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    public GetDriftFit.Answer Known { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    /// <summary>For each side that was read: what the fit says, and how its valves lie.</summary>
    public IReadOnlyList<(SlopeFigures Side, SlopeChart Chart)> Sides { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPostRefit() => Write(
        new RequestRefit.Request(Id),
        RequestRefit.Handle,
        _ =>
        {
            Done = "A refit is asked for. It begins within seconds; look again to see how far it is.";
            return Redirect($"/engine-models/{Id}/drift#refit");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetDriftFit.Request(Id), GetDriftFit.Handle)).TryGet(out var known, out var problem))
        {
            return Refused(problem);
        }

        Known = known;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        Sides = known.Fit is { } fit ? ChartsOf(fit, [.. known.Slopes.Where(s => s.Readings > 0)]) : [];
        return Page();
    }

    private static List<(SlopeFigures, SlopeChart)> ChartsOf(GetDriftFit.Figures fit, List<GetDriftFit.Slope> slopes)
    {
        var scale = SlopeChart.ScaleOf(slopes.Select(s => s.Mm), fit.MuB.Select(s => FitWords.SpanOf(s, fit.BetweenEnginesMm)));
        return [.. fit.MuB.Select(side => (side, SlopeChart.Of(
            $"slopes-{side.Side.Spoken()}",
            $"Drift of the {side.Side.Spoken()} valves",
            [.. slopes.Where(s => s.Side == side.Side).Select(s => s.Mm)],
            side.MeanMm.Value,
            FitWords.SpanOf(side, fit.BetweenEnginesMm),
            scale)))];
    }
}
