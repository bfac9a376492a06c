using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Measures;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>What was done to a motorcycle: date, odometer, job card, who; also as a file.</summary>
public sealed class HistoryModel : WorkshopPage
{
    private const int Shown = 100;

    private static readonly IReadOnlyList<string> Header =
        ["registration", "date", "item", "name", "odometer", "unit", "total km", "job card", "by", "imported from", "note"];

    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? After { get; set; }

    public GetHistory.Answer History { get; private set; } = null!;

    public bool MayBook { get; private set; }

    public bool MayManage { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        var read = await Read(new GetHistory.Request { MotorcycleId = Id, After = After, Take = Shown }, GetHistory.Handle);
        if (!read.TryGet(out var history, out var problem))
        {
            return Refused(problem);
        }

        History = history;
        MayBook = await May(Policies.Books);
        MayManage = await May(Policies.Manages);
        return Page();
    }

    public async Task<IActionResult> OnGetCsv()
    {
        var read = await Read(new GetHistory.Request { MotorcycleId = Id, All = true }, GetHistory.Handle);
        return read.TryGet(out var history, out var problem)
            ? CsvFile.Of($"history-{FileNames.Plain(history.Registration)}.csv", Header, history.Rows.Select(r => Line(history.Registration, r)))
            : Refused(problem);
    }

    private static IReadOnlyList<object?> Line(string registration, GetHistory.Row row) =>
    [
        registration, row.DoneOn, row.Code, row.Name, row.Odometer, row.OdometerUnit.Symbol(), row.Distance.Kilometres, row.JobCardNumber, row.DoneBy,
        row.ImportedFrom, row.Note,
    ];
}
