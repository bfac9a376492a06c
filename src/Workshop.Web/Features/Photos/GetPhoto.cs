using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Photos;

/// <summary>The picture itself.</summary>
public static class GetPhoto
{
    /// <param name="Small">As it stands on pages.</param>
    public sealed record Request(Guid Id, bool Small = false);

    public sealed record Answer(Guid Id, string MediaType, byte[] Content);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var photo = await db.Photos.AsNoTracking().Where(p => p.Id == request.Id && p.RemovedAt == null)
            .Select(p => new Answer(p.Id, request.Small ? PictureKind.Jpeg.MediaType() : p.MediaType, request.Small ? p.Thumbnail : p.Content))
            .SingleOrDefaultAsync(ct);
        return photo is null ? Problem.NotFound($"Photo {request.Id}") : photo;
    }
}

/// <summary>
/// A picture as an answer: of the type that it was made as, in no page of anybody else's, running nothing, kept by no cache.
/// </summary>
public sealed class PictureResult(Outcome<GetPhoto.Answer> outcome) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        ArgumentNullException.ThrowIfNull(httpContext);
        if (!outcome.TryGet(out var photo, out var problem))
        {
            return ProblemAnswers.Of(problem, httpContext).ExecuteAsync(httpContext);
        }

        var headers = httpContext.Response.Headers;
        headers.ContentSecurityPolicy = "default-src 'none'; sandbox; frame-ancestors 'none'";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.ContentDisposition = new ContentDispositionHeaderValue("inline")
        {
            FileName = $"photo-{photo.Id}.{photo.MediaType[(photo.MediaType.IndexOf('/', StringComparison.Ordinal) + 1)..]}",
        }.ToString();
        return TypedResults.Bytes(photo.Content, photo.MediaType).ExecuteAsync(httpContext);
    }

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(byte[]), [.. Enum.GetValues<PictureKind>().Select(k => k.MediaType())]));
        foreach (var status in ProblemAnswers.Statuses)
        {
            builder.Metadata.Add(new ProducesResponseTypeMetadata(status, typeof(ProblemDetails), ["application/problem+json"]));
        }
    }
}
