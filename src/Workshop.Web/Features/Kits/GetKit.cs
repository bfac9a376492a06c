using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>The kit of a visit: what lies on the bench before the covers come off, and why.</summary>
public static class GetKit
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, IReadOnlyList<KitOnShelf.Line> Lines, IReadOnlyList<KitCompound> Compounds);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var closed = open.Card.State is not (JobCardState.Booked or JobCardState.CheckedIn);
        var lacking = closed ? null : (await ShortageBook.Read(db, clock, ct)).Of(request.Number);
        var shown = await KitOnShelf.Read(db, await KitCase.OfCard(db, open, clock, ct), request.Number, closed, lacking, ct);
        return new Answer(request.Number, shown.Lines, shown.Compounds);
    }
}
