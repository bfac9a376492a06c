using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.Paper;
using Workshop.Web.Features.Photos;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

internal static class RecordsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var records = api.MapGroup("").WithTags("Service records");
        var books = records.MapGroup("").RequireAuthorization(Policies.Books);

        records.MapGet("/job-cards/{number:int}/record", (int number, Api run) => run.Read(new GetRecord.Request(number), GetRecord.Handle));
        records.MapPost("/job-cards/{number:int}/record", (int number, Api run) => run.Create(
            new WriteRecord.Request(number), WriteRecord.Handle, made => $"/api/v1/job-cards/{made.JobCardNumber}/record"));
        records.MapGet("/job-cards/{number:int}/record.pdf", async (int number, UseCases useCases, PaperAddress address, PdfFiles files, CancellationToken ct) =>
            new PdfAnswer(
                (await useCases.Read(new DrawRecord.Request(number, address.Of, ForPdf: true), DrawRecord.Handle, ct)).Then(files.Of), $"service-record-{number}.pdf"));
        records.MapGet("/job-cards/{number:int}/record/links", (int number, Api run) => run.Read(new ListRecordLinks.Request(number), ListRecordLinks.Handle));
        books.MapPost("/job-cards/{number:int}/record/links", (int number, CreateRecordLink.Request body, Api run) => run.Create(
            body with { Number = number }, CreateRecordLink.Handle, CreateRecordLink.Show, made => $"/api/v1/job-cards/{made.JobCardNumber}/record/links"));
        books.MapPost("/record-links/{id:guid}/revocation", (Guid id, Api run) => run.Post(new RevokeRecordLink.Request(id), RevokeRecordLink.Handle));
        books.MapGet("/job-cards/{number:int}/record/message", (int number, Guid? templateId, Api run) =>
            run.Read(new DraftRecordMessage.Request(number, templateId), DraftRecordMessage.Handle));
        books.MapPost("/job-cards/{number:int}/record/messages", (int number, SendRecord.Request body, SmtpOptions mail, PaperAddress address, Api run) => run.Create(
            body with { Number = number, MailIsSetUp = mail.IsSetUp, AddressOf = address.Of }, SendRecord.Handle, made => $"/api/v1/messages/{made.Id}"));
    }

    /// <summary>The photos of a record, for the page behind a link.</summary>
    public static void MapLinkedPhotos(this IEndpointRouteBuilder app)
    {
        app.MapGet("/records/{secret}/photos/{id:guid}", (string secret, Guid id, HttpContext http, WorkshopDbContext db, IClock clock, CancellationToken ct) =>
            Serve(secret, id, small: false, http, db, clock, ct)).AllowAnonymous().RequireRateLimiting(Guards.RecordLimit).ExcludeFromDescription();
        app.MapGet("/records/{secret}/photos/{id:guid}/small", (string secret, Guid id, HttpContext http, WorkshopDbContext db, IClock clock, CancellationToken ct) =>
            Serve(secret, id, small: true, http, db, clock, ct)).AllowAnonymous().RequireRateLimiting(Guards.RecordLimit).ExcludeFromDescription();
    }

    private static async Task<IResult> Serve(
        string secret, Guid id, bool small, HttpContext http, WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        LinkedRecord.Conceal(http.Response);
        var photo = await LinkedRecord.Find(db, secret, clock.GetCurrentInstant(), ct) is { } linked ? await linked.Photo(db, id, small, ct) : null;
        return photo is null ? TypedResults.NotFound() : new PictureResult(photo);
    }
}
