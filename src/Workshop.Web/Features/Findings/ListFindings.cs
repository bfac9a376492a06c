using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Photos;

namespace Workshop.Web.Features.Findings;

/// <summary>What was found on a visit, in order of time, and the photos that belong to no finding.</summary>
public static class ListFindings
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, IReadOnlyList<GetFinding.Answer> Findings, IReadOnlyList<PhotoView> OtherPhotos);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if ((await OpenCard.Find(db, request.Number, ct)).Problem is { } problem)
        {
            return problem;
        }

        var findings = await GetFinding.Read(db, request.Number, _ => true, ct);
        return new Answer(request.Number, findings, [.. (await PhotoRows.Of(db, request.Number, ct)).Where(p => p.FindingId is null)]);
    }
}
