using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>Takes one entry out of a list of the person's draft. What still names it is a fault until that is changed too.</summary>
public static class RemoveEntry
{
    public sealed record Request(Guid Id, string Section, string Code, uint? RowVersion) : IExpectsVersion;

    public static Task<Outcome<KeptDraft>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) => DraftBooks.Change(
        db, request.Id, request.RowVersion!.Value,
        (document, books) =>
        {
            if (SpecificationSection.Find(request.Section) is not { HasEntries: true } section
                || section.Entry(document, request.Code) is not { } entry)
            {
                return Problem.NotFound($"\"{request.Code}\" of {request.Section} in the draft");
            }

            document[section.List]!.AsArray().Remove(entry);
            return books.WithChecks(document);
        }, actor, clock, ct);
}
