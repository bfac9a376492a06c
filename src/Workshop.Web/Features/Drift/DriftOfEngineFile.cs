using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// All readings of an engine and what is foretold of it as a file: one line a reading, a quantile's upright of the fan, or a
/// distance of leaving the limits; the first column says which. Distances are what the engine had done, in km.
/// </summary>
internal static class DriftOfEngineFile
{
    private static readonly string[] Header =
    [
        "line", "valve", "lobe", "leg", "stage", "date", "engine km", "job card", "go mm", "no-go mm", "shim mm", "shims out from mm",
        "shims out to mm", "5 % mm", "25 % mm", "50 % mm", "75 % mm", "95 % mm", "probability", "remark",
    ];

    public static FileContentResult Of(GetDrift.Answer drift) => CsvFile.Of(
        $"clearance-drift-{FileNames.Plain(drift.Registration)}.csv", Header, drift.Lobes.SelectMany(Lines));

    private static IEnumerable<object?[]> Lines(DriftOfLobe lobe) => lobe.Legs
        .SelectMany(leg => leg.Readings.Select(r => Line(lobe, "reading") with
        {
            Leg = leg.Number, Stage = DriftWords.Words(r.Stage), Date = r.MeasuredOn, EngineKm = r.EngineKm, Card = r.JobCardNumber,
            Go = r.GoMm?.Millimetres, NoGo = r.NoGoMm?.Millimetres, Shim = r.ShimMm?.Millimetres, Lower = r.YLowerMm, Upper = r.YUpperMm,
            Remark = r == leg.Readings[0] ? leg.Cut is { } cut ? DriftWords.Words(cut) : DriftWords.Words(leg.Start) : null,
        }))
        .Concat(lobe.LeftOut.Select(o => Line(lobe, "reading not counted") with
        {
            Stage = DriftWords.Words(o.Stage), Date = o.MeasuredOn, EngineKm = o.EngineKm, Card = o.JobCardNumber,
            Go = o.GoMm?.Millimetres, NoGo = o.NoGoMm?.Millimetres, Remark = o.Why,
        }))
        .Concat((lobe.Forecast?.Fan ?? []).Select(f => Line(lobe, "true clearance") with { EngineKm = f.EngineKm, Quantiles = f.Mm }))
        .Concat((lobe.Forecast?.Leaves ?? []).Select(l => Line(lobe, "has left its limits") with
        {
            Date = l.On, EngineKm = l.EngineKm, Probability = l.Probability,
            Remark = l.EngineKm is null ? "not within reach" : null,
        }))
        .Concat(lobe.WhyNot is null ? [] : [Line(lobe, "no forecast") with { Remark = lobe.WhyNot }])
        .Select(line => line.Cells());

    private static CsvLine Line(DriftOfLobe lobe, string kind) => new(kind, new LobeKey(lobe.Valve, lobe.Lobe));

    private sealed record CsvLine(string Kind, LobeKey Lobe)
    {
        private const int Quantities = 5;

        public int? Leg { get; init; }

        public string? Stage { get; init; }

        public NodaTime.LocalDate? Date { get; init; }

        public Distance? EngineKm { get; init; }

        public int? Card { get; init; }

        public decimal? Go { get; init; }

        public decimal? NoGo { get; init; }

        public decimal? Shim { get; init; }

        public decimal? Lower { get; init; }

        public decimal? Upper { get; init; }

        public IReadOnlyList<decimal> Quantiles { get; init; } = [];

        public double? Probability { get; init; }

        public string? Remark { get; init; }

        public object?[] Cells() =>
        [
            Kind, Lobe.Valve.ToString(), Lobe.Lobe, Leg, Stage, Date, EngineKm?.Kilometres.ToString("0.###"), Card, Go, NoGo, Shim, Lower, Upper,
            .. Enumerable.Range(0, Quantities).Select(i => i < Quantiles.Count ? (object?)Quantiles[i] : null), Probability, Remark,
        ];
    }
}
