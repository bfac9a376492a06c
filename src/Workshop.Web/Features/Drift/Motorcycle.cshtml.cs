using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>How the valves of one motorcycle drift: pictures, tables, files, and which visits count.</summary>
public sealed class MotorcycleModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    /// <summary>The word in the address for the picture with the shims' part taken out.</summary>
    public const string ShimsOut = "shims-out";

    [BindProperty(SupportsGet = true)]
    public Guid MotorcycleId { get; set; }

    [BindProperty(SupportsGet = true, Name = "view")]
    public string? View { get; set; }

    /// <summary>The lobe whose picture is asked for: "1-exhaust-1", "1-intake-1/2".</summary>
    [BindProperty(SupportsGet = true, Name = "lobe")]
    public string? Lobe { get; set; }

    [BindProperty]
    public LeaveOutVisit.Request Input { get; set; } = new();

    public GetDrift.Answer Drift { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayManage { get; private set; }

    public DriftView Shown => View == ShimsOut ? DriftView.ShimsOut : DriftView.AsMeasured;

    /// <summary>The address of this page as it is looked at.</summary>
    public string Address => $"/drift/{MotorcycleId}{(Shown == DriftView.ShimsOut ? $"?view={ShimsOut}" : "")}";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnGetCsv() =>
        await Load() is { } problem ? Refused(problem) : DriftOfEngineFile.Of(Drift);

    public async Task<IActionResult> OnGetPicture()
    {
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        if (Drift.Lobes.FirstOrDefault(l => NameOf(l) == Lobe) is not { } lobe || ChartOf(lobe) is not { } chart)
        {
            return Refused(Problem.NotFound($"A picture of the lobe \"{Lobe}\" of {Drift.Registration}"));
        }

        var picture = Partial("Drawings/_DriftPicture", PictureOf(lobe, chart));
        picture.ContentType = DriftPicture.ContentType;
        Response.Headers.ContentDisposition = new ContentDispositionHeaderValue("attachment")
        {
            FileName = $"clearance-drift-{FileNames.Plain(Drift.Registration)}-{FileNames.Plain(NameOf(lobe))}.svg",
        }.ToString();
        return picture;
    }

    public async Task<IActionResult> OnPostLeaveOut() => await May(Policies.Manages)
        ? await Write(
            Input with { MotorcycleId = MotorcycleId },
            LeaveOutVisit.Handle,
            decided =>
            {
                var visit = decided.JobCardNumber is { } card ? $"The visit of job card {card}" : "The visit";
                Done = $"{visit} is {(decided.LeftOut ? "left out" : "taken in again")}; the fit of the engine model follows.";
                return Redirect($"{Address}#visits");
            },
            again: Show)
        : Forbid();

    /// <summary>As the address writes it, and the anchors of the page.</summary>
    public static string NameOf(DriftOfLobe lobe) => lobe.Lobe == 1 ? lobe.Valve.ToString() : $"{lobe.Valve}/{lobe.Lobe}";

    public DriftChart? ChartOf(DriftOfLobe lobe) =>
        DriftChart.Of($"c-{IdOf(lobe)}", lobe, Drift.OdometerUnit, Shown, Drift.NextCheck?.EngineKm);

    public static string IdOf(DriftOfLobe lobe) => NameOf(lobe).Replace('/', '-');

    /// <summary>The form of this visit is the one that was sent and came back: it shows what was typed.</summary>
    public bool CameBack(DriftVisit visit) => Input.ReadingId == visit.ReadingId;

    private DriftPicture PictureOf(DriftOfLobe lobe, DriftChart chart)
    {
        var notes = new List<string>
        {
            lobe.Forecast is { } outlook ? $"{DriftWords.Drift(outlook)} {DriftWords.Leaves(outlook, Drift.OdometerUnit)}" : lobe.WhyNot!,
            $"{Drift.Motorcycle}, engine {Drift.EngineModel}. {Time.Say(clock.GetCurrentInstant())}. {GetDrift.Caution}",
        };
        if (Drift.Fit is { } fit)
        {
            notes.Insert(1, DriftWords.RestsOn(fit));
        }

        return new DriftPicture(
            $"{Drift.Registration}: {lobe.Spoken}, {(Shown == DriftView.AsMeasured ? "as measured" : "shims' part taken out")}",
            chart,
            DriftKey.Of(Drift.Shims),
            notes);
    }

    private async Task<IActionResult> Show()
    {
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        MayManage = await May(Policies.Manages);
        return Page();
    }

    private async Task<Problem?> Load()
    {
        if (!(await Read(new GetDrift.Request(MotorcycleId), GetDrift.Handle)).TryGet(out var drift, out var problem))
        {
            return problem;
        }

        Drift = drift;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        return null;
    }
}
