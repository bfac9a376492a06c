using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shared.Drawings;

namespace Workshop.Web.Features.Bays;

/// <summary>Reads what the measuring step shows.</summary>
internal sealed class MeasureReader(WorkshopDbContext db, IClock clock)
{
    // A temperature of longer ago is taken again.
    private static readonly Duration TemperatureHolds = Duration.FromMinutes(30);

    public async Task<MeasureView> Read(
        int number, CardHead head, Stage stage, MeasureWish wish, bool mayWork, GetReadings.Answer card,
        IReadOnlyDictionary<LobeKey, GetCardForecast.Expected> expected, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var specification = (await OpenCard.Find(db, number, ct)).Value.Specification;
        var (sets, others) = await BladeSet.Read(db, head.Time.DayOf(now), ct);
        var last = card.Positions.SelectMany(p => p.Lobes).SelectMany(l => l.History).Where(r => !r.NotRemeasured).MaxBy(r => r.MeasuredAt);
        var crankAt = await db.PositionConfirmations.AsNoTracking().Where(p => p.JobCardNumber == number)
            .OrderByDescending(p => p.ConfirmedAt).ThenByDescending(p => p.Id).FirstOrDefaultAsync(ct);
        var open = card.Positions.SelectMany(p => p.Lobes)
            .Where(l => (stage == Stage.AsFound ? l.AsFound : l.AsLeft) is null).Select(MeasureView.KeyOf).ToHashSet();
        var lobes = ReadingRules.LobesOf(specification);
        var tapped = MeasureWish.Read(wish.Lobe) is { } lobe && lobes.Contains(lobe) ? lobe : (LobeKey?)null;
        var after = MeasureWish.Read(wish.After) is { } read && lobes.Contains(read) ? read : (LobeKey?)null;
        return new MeasureView
        {
            Number = number,
            Stage = stage,
            Specification = specification,
            Card = card,
            Expected = expected,
            Sets = sets,
            OtherSets = others,
            Set = sets.FirstOrDefault(s => s.Id == (wish.Set ?? last?.InstrumentId)),
            HeadC = wish.Head ?? (last is not null && now - last.MeasuredAt <= TemperatureHolds ? last.HeadTemperatureC?.Celsius : null),
            CrankAt = crankAt?.Stage == stage ? crankAt.Position : null,
            Now = tapped ?? MeasuringOrder.Next(MeasuringOrder.Of(specification), open, after),
            Open = open,
            MayWrite = mayWork && (stage == Stage.AsFound || card.AsLeftWaitsFor.Count == 0),
            Time = head.Time,
        };
    }
}

/// <summary>The valve map of a measuring step.</summary>
internal static class MeasureMap
{
    /// <param name="view">What is measured.</param>
    /// <param name="address">Where a tap on a lobe leads to.</param>
    public static ValveMap Of(MeasureView view, Func<LobeKey, string> address)
    {
        var here = view.PositionNow?.Lobes.Select(l => l.Valve).ToHashSet() ?? [];
        var valves = view.Lobes.GroupBy(l => l.Valve).ToDictionary(g => g.Key, g => ValveOf(view, [.. g.OrderBy(l => l.Lobe)], here.Contains(g.Key), address));
        var layout = view.Specification.Layout;
        return ValveMap.Of(view.Specification, valves,
            $"Valves from above, {layout.Description}; counted as seen from {layout.NumberingSeenFrom}");
    }

    private static MapValve ValveOf(MeasureView view, IReadOnlyList<GetReadings.LobeState> lobes, bool here, Func<LobeKey, string> address)
    {
        // Where two lobes act on one valve, the one that is asked for stands in the map, else the first that is open.
        var shown = lobes.FirstOrDefault(l => MeasureView.KeyOf(l) == view.Now)
            ?? lobes.FirstOrDefault(l => view.Open.Contains(MeasureView.KeyOf(l))) ?? lobes[0];
        var reading = view.ReadingOf(shown);
        var (figure, word) = reading is null ? ("", "") : (Figure(reading), Word(reading.Verdict));

        // The name of a link holds what is written in it, word for word.
        var name = $"{(shown.Lobe > 1 ? $"lobe {shown.Lobe}, " : "")}{shown.Valve.Spoken}";
        return new MapValve(
            shown.Valve, figure, word, here, MeasureView.KeyOf(shown) == view.Now,
            reading is null ? $"{name}: not read" : $"{name} {figure} {word}: {reading.Bracket}, {reading.Words}", address(MeasureView.KeyOf(shown)));
    }

    public static string Figure(GetReadings.Reading reading) => reading switch
    {
        { GoMm: { } go } => go.Millimetres.ToString("0.00##", System.Globalization.CultureInfo.InvariantCulture),
        { NoGoMm: { } noGo } => $"<{noGo.Millimetres.ToString("0.00##", System.Globalization.CultureInfo.InvariantCulture)}",
        _ => "",
    };

    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Within => "within",
        Verdict.TooTight => "tight",
        Verdict.TooWide => "wide",
        Verdict.NotDecided => "open",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };
}
