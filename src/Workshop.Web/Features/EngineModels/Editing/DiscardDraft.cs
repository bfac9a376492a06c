using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>Throws the person's draft away; the engine model stays as it is.</summary>
public static class DiscardDraft
{
    public sealed record Request(Guid Id, uint? RowVersion) : IExpectsVersion;

    /// <param name="InBooks">False where the draft was of an engine model that is not in the books.</param>
    public sealed record Answer(Guid Id, bool InBooks);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await DraftBooks.Read(db, request.Id, actor, ct)).TryGet(out var books, out var problem))
        {
            return problem;
        }

        if (books.Stale(request.RowVersion!.Value) is { } stale)
        {
            return stale;
        }

        if (books.Draft is null)
        {
            return Problem.NotFound($"A draft of engine model {request.Id} by you");
        }

        db.Remove(books.Draft);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Id, books.Model is not null);
    }
}
