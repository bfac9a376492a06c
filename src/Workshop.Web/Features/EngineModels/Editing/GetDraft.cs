using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>The person's draft of an engine model, or the current version as the one to begin from.</summary>
public static class GetDraft
{
    public sealed record Request(Guid Id);

    /// <param name="CurrentVersion">0 for an engine model that is not in the books yet.</param>
    /// <param name="BasedOnVersion">The version that the draft was made from.</param>
    /// <param name="StartedAt">Absent where nothing has been changed yet.</param>
    /// <param name="Faults">To be put right before it is published.</param>
    /// <param name="ToConfirm">Unusual: to be confirmed when it is published.</param>
    /// <param name="Differences">From the version that it was made from.</param>
    /// <param name="OpenVisits">Booked or under way with a version of this engine model, which they keep.</param>
    /// <param name="OtherDrafts">Who else is changing it at the moment.</param>
    public sealed record Answer(
        Guid Id,
        string Maker,
        string Name,
        bool Invented,
        int CurrentVersion,
        int BasedOnVersion,
        Instant? StartedAt,
        EngineSpecification Specification,
        IReadOnlyList<FieldFault> Faults,
        IReadOnlyList<FieldFault> ToConfirm,
        IReadOnlyList<Difference> Differences,
        IReadOnlyList<OpenVisit> OpenVisits,
        IReadOnlyList<string> OtherDrafts,
        uint RowVersion) : IHasVersion;

    /// <param name="Version">That it was booked with.</param>
    public sealed record OpenVisit(int JobCardNumber, int Version, JobCardState State, Instant StartsAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await DraftBooks.Read(db, request.Id, actor, ct)).TryGet(out var books, out var problem))
        {
            return problem;
        }

        var others = await (
            from draft in db.SpecificationDrafts.AsNoTracking()
            join person in db.People on draft.PersonId equals person.Id
            where draft.EngineModelId == request.Id && draft.PersonId != actor.PersonId
            orderby person.Name
            select person.Name).ToListAsync(ct);
        var (faults, toConfirm) = SpecificationDocument.Findings(books.Specification);
        return new Answer(
            request.Id, books.Maker, books.Name, books.Invented, books.Model?.CurrentVersion ?? 0, books.BasedOnVersion,
            books.Draft?.StartedAt, books.Specification, faults, toConfirm,
            books.Draft is null ? [] : DifferenceWords.Say(books.BaseDocument, DraftBooks.Json(books.Specification)),
            await OpenVisits(db, request.Id, ct), others, books.RowVersion);
    }

    public static Task<List<OpenVisit>> OpenVisits(WorkshopDbContext db, Guid engineModelId, CancellationToken ct) => (
        from card in db.JobCards.AsNoTracking()
        join version in db.EngineModelVersions on card.EngineModelVersionId equals version.Id
        where version.EngineModelId == engineModelId && (card.State == JobCardState.Booked || card.State == JobCardState.CheckedIn)
        orderby card.StartsAt, card.Number
        select new OpenVisit(card.Number, version.Version, card.State, card.StartsAt)).ToListAsync(ct);
}
