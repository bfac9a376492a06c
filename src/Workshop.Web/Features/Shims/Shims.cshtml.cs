using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>The shim plan of a visit, valve by valve, each with the form that writes which shim was fitted.</summary>
public sealed class ShimsModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    private const string Row = "Input.Shims[0].";

    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public RecordShims.Request Input { get; set; } = new();

    [BindProperty]
    public ChooseShimPlan.Request Choice { get; set; } = new();

    /// <summary>The shim that came out of one valve.</summary>
    [BindProperty]
    public RecordReadings.Request Out { get; set; } = new();

    [BindProperty(Name = "notMeasured")]
    public bool NotMeasured { get; set; }

    public CardHead Head { get; private set; } = null!;

    public GetShimPlan.Answer Plan { get; private set; } = null!;

    public IReadOnlyList<SelectListItem> Micrometers { get; private set; } = [];

    public bool MayWrite { get; private set; }

    /// <summary>Valves that ask for something, those chosen for by hand, and the one whose form came back.</summary>
    public IReadOnlyList<GetShimPlan.Valve> ToDo =>
        [.. Plan.Valves.Where(v => v.Advice != ShimAdvice.Keep || v.Locked || v.Offered || CameBack(v))];

    public IReadOnlyList<GetShimPlan.Valve> Kept => [.. Plan.Valves.Except(ToDo)];

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        if (!await May(Policies.Measures))
        {
            return Forbid();
        }

        // A field left empty by accident must not stand as a shim that nobody measured: that would cut the valve's history.
        if (Typed is { ThicknessMm: null } && !NotMeasured && ModelState.IsValid)
        {
            ModelState.AddModelError(Row + nameof(RecordShims.Row.ThicknessMm),
                "thicknessMm is empty: give the shim's thickness in mm, or tick \"not measured\".");
        }

        return await Write(
            Input with { Number = Number },
            RecordShims.Handle,
            written =>
            {
                Done = string.Join(" ", written.Warnings.Prepend($"The shim of {ValveKey.Parse(Typed!.Valve!).Spoken} is written. Measure it as left."));
                return Redirect($"/job-cards/{Number}/shims");
            },
            again: Show);
    }

    /// <summary>What came out is measured: the plan can say what goes in.</summary>
    public async Task<IActionResult> OnPostOut() => await May(Policies.Measures)
        ? await Write(
            Out with { Number = Number },
            RecordReadings.Handle,
            _ =>
            {
                Done = "The shim that came out is written; the plan is made with it.";
                return Redirect($"/job-cards/{Number}/shims{(Out.Shims is [{ Valve: { } valve }] ? $"#valve-{valve}" : "")}");
            },
            again: Show,
            prefix: nameof(Out))
        : Forbid();

    /// <summary>Aim, guard band, set all, or a shim for one valve: the plan is made anew, for everybody.</summary>
    public async Task<IActionResult> OnPostChoose() => await May(Policies.Measures)
        ? await Write(
            Choice with { Number = Number },
            ChooseShimPlan.Handle,
            plan =>
            {
                Done = string.Join(" ", plan.SetAside.Prepend("The plan is made anew."));
                return Redirect($"/job-cards/{Number}/shims{(Choice.Locks is [{ Valve: { } valve }] ? $"#valve-{valve}" : "")}");
            },
            again: Show,
            prefix: nameof(Choice))
        : Forbid();

    /// <summary>What the plan costs, in a sentence.</summary>
    public string Totals
    {
        get
        {
            var t = Plan.Totals;
            string Some(long count, string one, string many) => count == 1 ? $"1 {one}" : $"{count} {many}";
            var parts = new List<string>
            {
                Plan.Shafts.Count == 0 ? "no further shaft has to come out" : $"to come out: {string.Join(", ", Plan.Shafts)}",
                Some(Plan.Valves.Count(v => v.Shim is not null), "valve gets another shim", "valves get another shim"),
                $"{Some(t.FromBox, "shim", "shims")} from the box",
                $"{t.DistanceMicrometres / 1000m:0.000} mm from the aims in all",
            };
            if (t.Outside > 0)
            {
                parts.Insert(0, Some(t.Outside, "valve stays outside its limits", "valves stay outside their limits"));
            }

            if (t.NearLimit > 0)
            {
                parts.Add($"{t.NearLimit} near a limit");
            }

            return $"The best plan there is: {string.Join("; ", parts)}.";
        }
    }

    /// <summary>Which shim an alternative is, and where it lies.</summary>
    public static string NameOf(GetShimPlan.Alternative alternative) => alternative.Shim is { } shim
        ? $"{shim.ThicknessMm}{(shim.Condition == StockCondition.Used ? " used" : "")}, {PlaceOf(shim)}"
        : "leave it as it is";

    public static string PlaceOf(GetShimPlan.Shim shim) => shim.Source == LotSource.Valve ? $"in {shim.Place}" : shim.Place;

    /// <summary>The form of this valve is the one that was sent and came back: it shows what was typed.</summary>
    public bool CameBack(GetShimPlan.Valve valve) => Typed?.Valve == valve.Key.ToString();

    /// <summary>Where a field stands: the fault's link for the form that came back, a name of its own for the others.</summary>
    public string IdOf(GetShimPlan.Valve valve, string field) => CameBack(valve)
        ? TagBuilder.CreateSanitizedId(Row + field, "_")
        : $"{field}-{valve.Key}";

    public string? ThicknessOf(GetShimPlan.Valve valve) => CameBack(valve)
        ? ModelState[Row + nameof(RecordShims.Row.ThicknessMm)]?.AttemptedValue
        : valve.Advice == ShimAdvice.FitShim ? valve.NewMm?.Millimetres.ToString("0.000") : null;

    /// <summary>What was typed as the thickness of the shim that came out; nothing where the form of this valve did not come back.</summary>
    public string? CameOut(GetShimPlan.Valve valve) => Out.Shims is [{ Valve: { } typed }] && typed == valve.Key.ToString()
        ? ModelState[$"{nameof(Out)}.Shims[0].{nameof(RecordReadings.ShimRow.ThicknessMm)}"]?.AttemptedValue
        : null;

    public bool FromBox(GetShimPlan.Valve valve) => CameBack(valve) ? Typed!.FromBox : valve.Shim?.Source == LotSource.Box;

    /// <summary>The valve that the shim advised lies in, or came out of at this visit; nothing where it is the box's.</summary>
    public ValveKey? FromValve(GetShimPlan.Valve valve) => CameBack(valve)
        ? ValveKey.TryParse(Typed!.FromValve, null, out var typed) ? typed : null
        : valve.Shim is { Source: not LotSource.Box } shim ? shim.FromValve : null;

    public bool OldIntoBox(GetShimPlan.Valve valve) => CameBack(valve) && Typed!.OldIntoBox;

    /// <summary>The strip of one lobe: as it is, and as it will be with the shim advised.</summary>
    public static Strip StripOf(GetShimPlan.Valve valve, GetShimPlan.Lobe lobe)
    {
        var (go, noGo) = (lobe.GoMm?.Millimetres, lobe.NoGoMm?.Millimetres);
        var words = $"{NameOf(valve, lobe)}: {lobe.Verdict}";
        if (lobe.PredictedMm - lobe.FoundMm is not { } change)
        {
            return new Strip(StripGeometry.Of(lobe.Limits, new StripSpan("now", go, noGo)), words);
        }

        return new Strip(
            StripGeometry.Of(lobe.Limits, new StripSpan("now", go, noGo), new StripSpan("then", go + change, noGo + change, Predicted: true)),
            $"{words}; with the shim advised about {lobe.PredictedMm:0.000} mm{(lobe.LastsKm is { } km ? $", at its drift for about {km:0} km" : "")}");
    }

    public static string NameOf(GetShimPlan.Valve valve, GetShimPlan.Lobe lobe) => new LobeKey(valve.Key, lobe.Number).Spoken;

    private RecordShims.Row? Typed => Input.Shims is [{ } row, ..] ? row : null;

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetShimPlan.Request(Number), GetShimPlan.Handle)).TryGet(out var plan, out problem))
        {
            return Refused(problem);
        }

        (Head, Plan) = (head, plan);
        MayWrite = plan.Shims is not null && head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        if (MayWrite)
        {
            var today = head.Time.DayOf(clock.GetCurrentInstant());
            var all = await db.Instruments.AsNoTracking().Where(i => i.Kind == InstrumentKind.Micrometer)
                .OrderBy(i => i.Name).ThenBy(i => i.SerialNumber).ToListAsync();
            Micrometers = [.. all.Where(i => i.MayBeUsedOn(today)).Select(i => new SelectListItem(
                $"{i.Name}, {i.SerialNumber}", i.Id.ToString(), i.Id == Input.MicrometerId))];
        }

        return Page();
    }
}
