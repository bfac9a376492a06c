using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

/// <summary>The due list as a file: one line an item, distances in its odometer's unit.</summary>
internal static class DueListFile
{
    private static readonly string[] Header =
    [
        "registration", "motorcycle", "owner", "item", "visit comes up on", "what to do", "due on", "odometer unit", "due at", "left",
        "expected on", "10 % on", "90 % on", "state", "last done on", "last done at", "put off until", "put off because", "put off by",
        "minutes saved",
    ];

    public static FileContentResult Of(IEnumerable<ListDueVisits.Visit> visits, LocalDate today) =>
        CsvFile.Of($"due-{today:uuuu-MM-dd}.csv", Header, visits.SelectMany(visit => visit.Items.Select(line => Cells(visit, line))));

    private static object?[] Cells(ListDueVisits.Visit visit, DueLine line)
    {
        return
        [
            line.Registration, $"{line.Maker} {line.Model}", line.Owner, line.Name, visit.ComesOn, Words.Write(line.Advice), line.DueOn,
            line.OdometerUnit.Symbol(), At(line.DueAt), At(line.Left), line.ExpectedOn, line.EarliestOn, line.LatestOn, Words.Write(line.State),
            line.LastDoneOn, At(line.LastDoneAt), line.PutOff?.Until, line.PutOff?.Reason, line.PutOff?.DecidedBy, line.SavesMinutes,
        ];

        object? At(Distance? distance) => distance is { } at ? line.OdometerUnit.CountOf(at) : null;
    }
}
