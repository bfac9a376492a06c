using System.Globalization;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>An estimate as a paper for the owner: what is put to them, and nothing of what it costs the workshop.</summary>
public static class EstimatePaper
{
    private const string Foot =
        "Each line is rounded to 0.01, half upwards; tax is reckoned once for each rate, from the sum of its lines. What is charged only if used, or only if needed, is not in the total.";

    private static readonly PaperColumn[] Columns =
        [new("What", 40), new("Quantity", 14, IsFigure: true), new("Price", 20, IsFigure: true), new("Tax", 10, IsFigure: true), new("Net", 16, IsFigure: true)];

    public sealed record Request(Guid Id, Func<string, Uri> AddressOf);

    public static async Task<Outcome<PaperDocument>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var time = await WorkshopTimes.Read(db, ct);
        return (await GetEstimate.Handle(new GetEstimate.Request(request.Id), db, actor, clock, ct))
            .Then<PaperDocument>(estimate => Of(estimate, time.DayOf(estimate.MadeAt), request.AddressOf($"/estimates/{estimate.Id}")));
    }

    private static PaperDocument Of(GetEstimate.Answer estimate, LocalDate made, Uri back)
    {
        List<string> head =
        [
            $"Version {estimate.Version} of job card {estimate.JobCardNumber}, made on {Days.Write(made)}",
            $"{estimate.Registration}, {estimate.Motorcycle}{(estimate.Owner is { Length: > 0 } owner ? $", for {owner}" : "")}",
            estimate.ValidUntil is { } until ? $"It holds until {Days.Write(until)}{(estimate.Expired ? ", which is over" : "")}" : "No day is said until which it holds",
        ];
        if (estimate.FindingPlace is { } place)
        {
            head.Add($"For what was found: {place}");
        }

        if (estimate.Replaced)
        {
            head.Add("A newer estimate has replaced it");
        }

        var blocks = estimate.Lines.Where(l => !l.Dropped).GroupBy(Group)
            .Select(PaperBlock (g) => new PaperTable(g.Key.Length == 0 ? $"In {estimate.Currency}, before tax" : g.Key, Columns, [.. g.Select(Row)])).ToList();
        blocks.Add(new PaperTable("Sum", [new("Sum", 70), new(estimate.Currency, 30, IsFigure: true)],
        [
            ["Net", Money.Say(estimate.Sums.Net)],
            .. estimate.Sums.Rates.Select(r => (IReadOnlyList<PaperCell>)
                [string.Create(CultureInfo.InvariantCulture, $"Tax {r.Code}, {r.Percent:0.###} % of {Money.Say(r.Net)}"), Money.Say(r.Tax)]),
            [new PaperCell("Total with tax", Strong: true), new PaperCell(Money.Say(estimate.Sums.Gross, estimate.Currency), Strong: true)],
        ]));
        blocks.AddRange(estimate.Options.Select(o => new PaperText($"If needed, {o.Name}: {Money.Say(o.Sums.Gross, estimate.Currency)} more with tax.")));
        blocks.Add(new PaperFields(["Agreed: day, name", "Signature"]));
        return new PaperDocument("Estimate", head, back, "To the estimate", blocks, Foot);
    }

    private static string Group(LineView line) => (line.Option, line.Charge) switch
    {
        (null, EstimateCharge.Always) => "",
        (null, _) => "Charged only if used",
        (_, EstimateCharge.Always) => $"If needed: {line.OptionName}",
        _ => $"If needed: {line.OptionName}, charged only if used",
    };

    private static IReadOnlyList<PaperCell> Row(LineView line) =>
    [
        $"{line.Text}{(line.Kind == EstimateLineKind.Labour ? ", labour" : "")}", EstimateWords.Quantity(line.Quantity, line.Unit),
        line.UnitPrice is { } price ? $"{Money.SayPrice(price)} {line.Unit.PerWhat()}" : "",
        line.TaxPercent is { } percent ? string.Create(CultureInfo.InvariantCulture, $"{percent:0.###} %") : "",
        line.Net is { } net ? Money.Say(net) : "",
    ];
}
