using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.TorqueSheets;

namespace Workshop.Web.Features.Paper;

/// <summary>The papers of A4 that belong to a job card.</summary>
public enum CardPaperKind
{
    TorqueSheet,
    PickList,
    Worksheet,
}

/// <summary>What stands on a paper of a job card.</summary>
public static class CardPaper
{
    /// <summary>As they stand in addresses.</summary>
    public static IReadOnlyDictionary<string, CardPaperKind> Addresses { get; } = new Dictionary<string, CardPaperKind>(StringComparer.Ordinal)
    {
        ["torque-sheet"] = CardPaperKind.TorqueSheet, ["pick-list"] = CardPaperKind.PickList, ["worksheet"] = CardPaperKind.Worksheet,
    };

    public sealed record Request(int Number, string Paper, Func<string, Uri> AddressOf);

    public static async Task<Outcome<PaperDocument>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!Addresses.TryGetValue(request.Paper, out var kind))
        {
            return Problem.NotFound($"A paper \"{request.Paper}\" of a job card; there are {string.Join(", ", Addresses.Keys)}, which");
        }

        if (!(await CardHead.Load(db, request.Number, ct)).TryGet(out var head, out var problem))
        {
            return problem;
        }

        return kind switch
        {
            CardPaperKind.TorqueSheet => (await GetTorqueSheet.Handle(new GetTorqueSheet.Request(request.Number), db, actor, clock, ct))
                .Then<PaperDocument>(sheet => TorqueSheetPaper.Of(head, sheet, request.AddressOf($"/job-cards/{request.Number}/torque-sheet"))),
            CardPaperKind.PickList => (await GetPickList.Handle(new GetPickList.Request(request.Number), db, actor, clock, ct))
                .Then<PaperDocument>(list => PickListPaper.Of(head, list, request.AddressOf($"/job-cards/{request.Number}/pick-list"))),
            _ => (await OpenCard.Find(db, request.Number, ct))
                .Then<PaperDocument>(open => WorksheetPaper.Of(head, open, request.AddressOf($"/job-cards/{request.Number}"))),
        };
    }

    /// <summary>The lines below the title, alike on every paper of a card.</summary>
    internal static IReadOnlyList<string> HeadOf(CardHead head) =>
    [
        $"Job card {head.Card.Number}, {head.Card.State.Spoken()}: {head.Registration}, {head.Motorcycle}",
        $"{head.Time.Say(head.Card.StartsAt)} to {head.Time.Say(head.Card.EndsAt)}",
        $"Specification of the {head.EngineModel}{(head.Invented ? " (invented engine: never work by it)" : "")}, version {head.SpecificationVersion}: "
            + $"{Domain.EngineModels.SpecificationWords.Spoken(head.Provenance)}",
    ];
}
