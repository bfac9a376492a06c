using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

internal static class PaperApi
{
    public static void AddPaper(this IServiceCollection services)
    {
        services.AddScoped<PaperAddress>();
        services.AddSingleton<PdfFiles>();
    }

    public static void Map(RouteGroupBuilder api)
    {
        var papers = api.MapGroup("").WithTags("Papers");

        papers.MapGet("/job-cards/{number:int}/papers/{paper}.pdf", async (int number, string paper, UseCases useCases, PaperAddress address, PdfFiles files, CancellationToken ct) =>
            new PdfAnswer(
                (await useCases.Read(new CardPaper.Request(number, paper, address.Of), CardPaper.Handle, ct)).Then(files.Of), $"{paper}-{number}.pdf"));
        papers.MapGet("/labels.pdf", async (
                string? of, string[]? code, string? box, int? number, string? stock, int? first, UseCases useCases, PaperAddress address, PdfFiles files, CancellationToken ct) =>
            new PdfAnswer((await useCases.Read(
                new GetLabels.Request { Of = of, Codes = code ?? [], Box = box, Number = number, Stock = stock, First = first, AddressOf = address.Of },
                GetLabels.Handle, ct)).Then(files.Of), "labels.pdf"));
        papers.MapGet("/labels", (
                string? of, string[]? code, string? box, int? number, string? stock, int? first, PaperAddress address, Api run) =>
            run.Read(
                new GetLabels.Request { Of = of, Codes = code ?? [], Box = box, Number = number, Stock = stock, First = first, AddressOf = address.Of },
                GetLabels.Handle));
    }
}
