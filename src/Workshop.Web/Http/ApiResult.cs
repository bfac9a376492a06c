using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>An answer that carries the version of its row; it becomes the ETag.</summary>
public interface IHasVersion
{
    uint RowVersion { get; }
}

/// <summary>An outcome as an HTTP answer, with what the API document needs to know of it.</summary>
public sealed class ApiResult<T>(Outcome<T> outcome) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext) =>
        ApiAnswer.Write(outcome, httpContext, value => TypedResults.Json(value, WorkshopJson.Options));

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        ApiAnswer.Describe<T>(builder, StatusCodes.Status200OK);
}

/// <summary>The outcome of a POST that makes something: 201 with its address.</summary>
public sealed class ApiCreated<T>(Outcome<T> outcome, Func<T, string> location) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext) =>
        ApiAnswer.Write(outcome, httpContext, value => TypedResults.Created(location(value), value));

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        ApiAnswer.Describe<T>(builder, StatusCodes.Status201Created);
}

internal static class ApiAnswer
{
    public static Task Write<T>(Outcome<T> outcome, HttpContext http, Func<T, IResult> answer)
    {
        if (!outcome.TryGet(out var value, out var problem))
        {
            return ProblemAnswers.Of(problem, http).ExecuteAsync(http);
        }

        if (value is IHasVersion versioned)
        {
            http.Response.Headers.ETag = VersionTag.Write(versioned.RowVersion);
        }

        return answer(value).ExecuteAsync(http);
    }

    public static void Describe<T>(EndpointBuilder builder, int success)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(success, typeof(T), ["application/json"]));
        foreach (var status in ProblemAnswers.Statuses)
        {
            builder.Metadata.Add(
                new ProducesResponseTypeMetadata(status, typeof(ProblemDetails), ["application/problem+json"]));
        }
    }
}

/// <summary>ETag and If-Match carry the row's version, in quotes (RFC 9110, section 8.8.3).</summary>
public static class VersionTag
{
    public static string Write(uint version) => $"\"{version}\"";

    /// <summary>The version named by If-Match; nothing when the header is absent or names none of ours.</summary>
    public static uint? Read(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return uint.TryParse(request.Headers.IfMatch.ToString().Trim('"'), out var version) ? version : null;
    }
}
