using System.Security.Claims;
using Workshop.Domain.People;

namespace Workshop.Web.Http;

/// <summary>Who calls a use case, and under which idempotency key and request id.</summary>
/// <param name="Key">One write, however often it is sent; absent for importers, seeders and workers, which run once.</param>
/// <param name="Target">The path that was called, so that a key sent to another address is another request.</param>
public sealed record Caller(Actor Actor, string? Key, string RequestId, string Target)
{
    public const string KeyHeader = "Idempotency-Key";
    public const string KeyField = "_key";
    public const string PersonClaim = "person";
    public const string SessionClaim = "session";

    /// <exception cref="InvalidOperationException">Nobody is signed in: the endpoint lacks its policy.</exception>
    public static Caller Of(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        var person = http.User.FindFirstValue(PersonClaim)
            ?? throw new InvalidOperationException($"{http.Request.Path} runs a use case but lets anonymous callers in.");
        var roles = http.User.FindAll(ClaimTypes.Role).Select(c => c.Value).ToHashSet(StringComparer.Ordinal);
        return new Caller(
            new Actor(Guid.Parse(person), roles), KeyOf(http.Request), http.TraceIdentifier, http.Request.Path);
    }

    private static string? KeyOf(HttpRequest request) =>
        request.Headers.TryGetValue(KeyHeader, out var header) ? header.ToString()
        : request.HasFormContentType && request.Form.TryGetValue(KeyField, out var field) ? field.ToString()
        : null;
}
