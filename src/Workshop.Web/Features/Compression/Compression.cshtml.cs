using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Compression;

/// <summary>Compression and leak-down at one stage of a visit: why it is asked for, what each cylinder shows, earlier visits, and the form.</summary>
public sealed class CompressionModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public Stage Stage { get; set; }

    [BindProperty]
    public RecordCompression.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetCompression.Answer Card { get; private set; } = null!;

    public bool MayWrite { get; private set; }

    public IReadOnlyList<SelectListItem> Gauges { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Testers { get; private set; } = [];

    public IReadOnlyList<CylinderView> Shown => Stage == Stage.AsFound ? Card.AsFound : Card.AsLeft;

    public bool AnyShown => Shown.Any(c => c.Verdict != CylinderVerdict.NotMeasured);

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Number = Number, Stage = Stage, Cylinders = [.. (Input.Cylinders ?? []).Select(c => IsUntouched(c) ? null : c)] },
            RecordCompression.Handle,
            written =>
            {
                Done = $"{written.Written} {(written.Written == 1 ? "entry is" : "entries are")} written.";
                return Redirect($"/job-cards/{Number}/compression?stage={Stage}");
            },
            again: Show)
        : Forbid();

    private static bool IsUntouched(RecordCompression.Row? row) =>
        row is null || (!row.HasPressure && !row.IsHeard && row.LossPercent is null && row.Tries is null);

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetCompression.Request(Number), GetCompression.Handle)).TryGet(out var card, out problem))
        {
            return Refused(problem);
        }

        (Head, Card) = (head, card);
        MayWrite = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        if (MayWrite)
        {
            var all = await InstrumentChoices.Read(db, head.Time.DayOf(clock.GetCurrentInstant()), ct);
            (Gauges, Testers) = (all.Of(InstrumentKind.CompressionGauge), all.Of(InstrumentKind.LeakDownTester));
            Input = Input with
            {
                Warmth = Input.Warmth ?? card.Limits?.Warmth ?? EngineWarmth.Warm,
                Cylinders = [.. card.AsFound.Select(c =>
                    Input.Cylinders?.FirstOrDefault(row => row?.Cylinder == c.Cylinder) ?? new RecordCompression.Row { Cylinder = c.Cylinder })],
            };
        }

        return Page();
    }
}

/// <summary>Instruments that may be used on a day, to choose from.</summary>
internal sealed record InstrumentChoices(IReadOnlyList<Instrument> All)
{
    public static async Task<InstrumentChoices> Read(WorkshopDbContext db, LocalDate day, CancellationToken ct) => new(
        (await db.Instruments.AsNoTracking().OrderBy(i => i.Name).ThenBy(i => i.SerialNumber).ToListAsync(ct)).FindAll(i => i.MayBeUsedOn(day)));

    public IReadOnlyList<SelectListItem> Of(params InstrumentKind[] kinds) =>
        [.. All.Where(i => kinds.Contains(i.Kind)).Select(i => new SelectListItem($"{i.Name}, {i.SerialNumber}", i.Id.ToString()))];
}
