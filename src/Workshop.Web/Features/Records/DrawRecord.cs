using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Paper;

namespace Workshop.Web.Features.Records;

/// <summary>The record of a card as a paper for the workshop's own page and PDF.</summary>
public static class DrawRecord
{
    /// <param name="ForPdf">With the pictures themselves.</param>
    public sealed record Request(int Number, Func<string, Uri> AddressOf, bool ForPdf = false);

    public static async Task<Outcome<PaperDocument>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!(await GetRecord.Handle(new GetRecord.Request(request.Number), db, actor, clock, ct)).TryGet(out var issued, out var problem))
        {
            return problem;
        }

        return RecordPaper.Of(
            issued, new RecordPaper.Way(request.AddressOf($"/job-cards/{request.Number}/record"), "For the workshop"),
            request.ForPdf
                ? await RecordPictures.ForPdf(db, issued.Record, ct)
                : await RecordPictures.ForPage(db, issued.Record, id => $"/photos/{id}/small", id => $"/photos/{id}", ct));
    }
}
