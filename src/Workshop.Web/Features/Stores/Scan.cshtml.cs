using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// One field, sent after every scan: what is known of the line stands in the address, so that the page can be loaded again, and going
/// back takes a scan back. The last scan of a line books it.
/// </summary>
public sealed class ScanModel(WorkshopDbContext db) : StoresPage(db)
{
    private const int LatestShown = 10;

    public sealed record Typed
    {
        public string? Scan { get; init; }
    }

    public sealed record Taken(Instant MovedAt, string PartCode, string Name, PartUnit Unit, decimal Quantity, string Place, string? Lot);

    [BindProperty]
    public Typed Input { get; set; } = new();

    [BindProperty]
    public ScanLine Line { get; set; } = new();

    public Part? Part { get; private set; }

    public string? PlaceName { get; private set; }

    public ScanStep Step { get; private set; }

    public IReadOnlyList<Taken> Latest { get; private set; } = [];

    public string Asks => Step switch
    {
        ScanStep.Place => "Scan a place",
        ScanStep.Part => "Scan a part, or another place",
        ScanStep.Quantity => "How many; the same package once more, or empty for what is proposed",
        ScanStep.Lot => "The lot, as marked on the package",
        _ => $"Use by, such as 2027-05-31; empty for {Part?.ShelfLifeMonths} months from today",
    };

    public Task<IActionResult> OnGet(string? place, string? part, string? quantity, bool said, string? lot)
    {
        Line = new ScanLine(
            place, part, decimal.TryParse(quantity, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var read) ? read : null, said, lot);
        return Show();
    }

    public async Task<IActionResult> OnPost()
    {
        if (!ModelState.IsValid)
        {
            return await Show();
        }

        var read = await Read(new ReadScan.Request(Line, Input.Scan), ReadScan.Handle);
        if (!read.TryGet(out var scanned, out var problem))
        {
            problem.AddTo(ModelState);
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
            return await Show();
        }

        return scanned.Next == ScanStep.Ready ? await Book(scanned.Line) : Redirect(AddressWith(scanned.Line));
    }

    private Task<IActionResult> Book(ScanLine line) => Write(
        new ReceiveGoods.Request
        {
            PartCode = line.PartCode, PlaceCode = line.PlaceCode, Quantity = line.Quantity, LotCode = line.LotCode, ExpiresOn = line.ExpiresOn,
        },
        ReceiveGoods.Handle,
        taken =>
        {
            Done = $"Took in {taken.Unit.Say(taken.Quantity)} of {taken.Name}; {taken.Unit.Say(taken.OnHand)} at {taken.Place} now.";
            return Redirect(AddressWith(new ScanLine(line.PlaceCode)));
        },
        again: Show);

    private static string AddressWith(ScanLine line)
    {
        var query = new QueryBuilder();
        void Add(string name, string? value)
        {
            if (value is not null)
            {
                query.Add(name, value);
            }
        }

        Add("place", line.PlaceCode);
        Add("part", line.PartCode);
        Add("quantity", line.Quantity?.ToString("0.####", CultureInfo.InvariantCulture));
        Add("said", line.QuantitySaid ? "true" : null);
        Add("lot", line.LotCode);
        return $"/stores/scan{query}";
    }

    private async Task<IActionResult> Show()
    {
        await Begin();
        var ct = HttpContext.RequestAborted;
        Part = await ReadScan.PartOf(Db, Line, ct);
        PlaceName = await Db.StoragePlaces.Where(p => p.Code == Line.PlaceCode && !p.Retired).Select(p => p.Name).SingleOrDefaultAsync(ct);

        // An address that names what is not there any more begins anew.
        Line = PlaceName is null ? new ScanLine() : Part is null ? new ScanLine(Line.PlaceCode) : Line;
        Part = Line.PartCode is null ? null : Part;
        Step = Line.Next(Part?.ShelfLifeMonths);
        Latest = (await Read(new ListReceipts.Request(LatestShown), ListReceipts.Handle)).Value.Rows;
        return Page();
    }
}
