using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

/// <summary>Draws papers and labels as files; the one place that says when the font is not there.</summary>
public sealed class PdfFiles(IConfiguration configuration)
{
    public const string ContentType = "application/pdf";

    public Outcome<byte[]> Of(PaperDocument paper) => FontIsThere ? PaperPdf.Draw(paper) : FontMissing;

    public Outcome<byte[]> Of(LabelSheets labels) => FontIsThere ? LabelPdf.Draw(labels) : FontMissing;

    private bool FontIsThere => PaperFonts.AreThere(configuration[PaperFonts.Setting]);

    private static Problem FontMissing => Problem.Conflict("font-missing", PaperFonts.Missing);
}

/// <summary>A PDF as the answer of a route.</summary>
public sealed class PdfAnswer(Outcome<byte[]> outcome, string name) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext) => outcome.TryGet(out var file, out var problem)
        ? TypedResults.File(file, PdfFiles.ContentType, name).ExecuteAsync(httpContext)
        : ProblemAnswers.Of(problem, httpContext).ExecuteAsync(httpContext);

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(Stream), [PdfFiles.ContentType]));
        foreach (var status in ProblemAnswers.Statuses)
        {
            builder.Metadata.Add(new ProducesResponseTypeMetadata(status, typeof(Microsoft.AspNetCore.Mvc.ProblemDetails), ["application/problem+json"]));
        }
    }
}
