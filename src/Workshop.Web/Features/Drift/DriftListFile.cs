using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>The manager's list as a file: one line a motorcycle, distances in its odometer's unit.</summary>
internal static class DriftListFile
{
    private static readonly string[] Header =
    [
        "registration", "motorcycle", "first valve", "odometer unit", "50 % on", "50 % at", "10 % on", "10 % at", "90 % on", "90 % at",
        "now mm", "drift mm per 10000 km", "threshold passed on", "threshold passed at", "next check on", "next check at",
        "probability outside at next check", "lobes foretold", "lobes", "why not",
    ];

    public static FileContentResult Of(IEnumerable<ListDrift.Row> rows, LocalDate today) =>
        CsvFile.Of($"clearance-drift-{today:uuuu-MM-dd}.csv", Header, rows.Select(Line));

    private static object?[] Line(ListDrift.Row row)
    {
        return
        [
            row.Registration, row.Motorcycle, row.Valve, row.OdometerUnit.Symbol(), row.On, At(row.AtKm), row.EarliestOn, At(row.EarliestAtKm),
            row.LatestOn, At(row.LatestAtKm), row.PresentMm, row.DriftMmPer10000Km, row.PassesThresholdOn, At(row.PassesThresholdKm),
            row.NextCheckOn, At(row.NextCheckKm), row.OutsideAtNextCheck, row.Foretold, row.Lobes, row.Reason,
        ];

        object? At(Distance? distance) => distance is { } at ? row.OdometerUnit.CountOf(at) : null;
    }
}
