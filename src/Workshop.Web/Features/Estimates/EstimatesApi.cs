using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.Imports;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

internal static class EstimatesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var money = api.MapGroup("").WithTags("Estimates");
        var books = money.MapGroup("").RequireAuthorization(Policies.Books);
        var manages = money.MapGroup("").RequireAuthorization(Policies.Manages);

        money.MapGet("/workshop/money", (Api run) => run.Read(new GetMoney.Request(), GetMoney.Handle));
        manages.MapPut("/workshop/money", (EditMoney.Request body, Api run) => run.Change(body with { RowVersion = run.IfMatch }, EditMoney.Handle));
        manages.MapPost("/tax-rates", (AddTaxRate.Request body, Api run) => run.Create(body, AddTaxRate.Handle, _ => "/api/v1/workshop/money"));
        manages.MapPut("/tax-rates/{code}/{validFrom}", (string code, string validFrom, EditTaxRate.Request body, Api run) => run.Change(
            body with { Code = code, ValidFrom = Days.TryRead(validFrom, out var day) ? day : null, RowVersion = run.IfMatch }, EditTaxRate.Handle));
        money.MapGet("/part-prices", (string? search, bool? missing, string? after, int? take, Api run) =>
            run.Read(new ListPartPrices.Request(search, missing ?? false, after, take), ListPartPrices.Handle));
        manages.MapPut("/part-prices/{code}", (string code, SetPartPrice.Request body, Api run) =>
            run.Change(body with { Code = code, RowVersion = run.IfMatch }, SetPartPrice.Handle));
        manages.MapPost("/imports/part-prices", async (HttpRequest http, bool? dryRun, string? fileName, Api run) =>
            {
                var file = await FileBody.Read(http, dryRun, fileName);
                return await run.Post(
                    new ImportPartPrices.Request { FileName = file.FileName, Csv = file.Csv, DryRun = file.DryRun }, ImportPartPrices.Handle);
            })
            .Accepts<ImportPartPrices.Request>(FileBody.JsonType, FileBody.CsvType);

        money.MapGet("/job-cards/{number:int}/estimates", (int number, Api run) => run.Read(new ListEstimates.Request(number), ListEstimates.Handle));
        money.MapGet("/job-cards/{number:int}/estimates/preview", (int number, Guid? findingId, Api run) =>
            run.Read(new PreviewEstimate.Request(number, findingId), PreviewEstimate.Handle));
        books.MapPost("/job-cards/{number:int}/estimates", (int number, MakeEstimate.Request body, Api run) =>
            run.Create(body with { Number = number }, MakeEstimate.Handle, made => $"/api/v1/estimates/{made.Id}"));
        money.MapGet("/estimates/{id:guid}", (Guid id, Api run) => run.Read(new GetEstimate.Request(id), GetEstimate.Handle));
        money.MapGet("/estimates/{id:guid}.pdf", async (Guid id, UseCases useCases, PaperAddress address, PdfFiles files, CancellationToken ct) =>
            new PdfAnswer((await useCases.Read(new EstimatePaper.Request(id, address.Of), EstimatePaper.Handle, ct)).Then(files.Of), "estimate.pdf"));
        books.MapPost("/estimates/{id:guid}/answers", (Guid id, AnswerEstimate.Request body, Api run) =>
            run.Create(body with { Id = id }, AnswerEstimate.Handle, _ => $"/api/v1/estimates/{id}"));
        books.MapGet("/estimates/{id:guid}/message", (Guid id, Guid? templateId, Api run) =>
            run.Read(new DraftEstimateMessage.Request(id, templateId), DraftEstimateMessage.Handle));
        books.MapPost("/estimates/{id:guid}/messages", (Guid id, SendEstimate.Request body, SmtpOptions mail, Api run) => run.Create(
            body with { Id = id, MailIsSetUp = mail.IsSetUp }, SendEstimate.Handle, made => $"/api/v1/messages/{made.Id}"));
    }
}
