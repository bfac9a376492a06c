using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>What a route of the API calls: runs a use case for the caller of this request and answers over HTTP.</summary>
public sealed class Api(UseCases useCases, IHttpContextAccessor http)
{
    private HttpContext Http => http.HttpContext!;

    private CancellationToken Aborted => Http.RequestAborted;

    /// <summary>The version that If-Match names.</summary>
    public uint? IfMatch => VersionTag.Read(Http.Request);

    public async Task<ApiResult<TAnswer>> Read<TRequest, TAnswer>(TRequest request, Handle<TRequest, TAnswer> handle) =>
        new(await useCases.Read(request, handle, Aborted));

    /// <summary>A change of a row that exists: guarded by If-Match.</summary>
    public async Task<ApiResult<TAnswer>> Change<TRequest, TAnswer>(TRequest request, Handle<TRequest, TAnswer> handle) =>
        new(await useCases.Write(request, handle, Aborted));

    /// <summary>A POST: needs an idempotency key.</summary>
    public async Task<ApiResult<TAnswer>> Post<TRequest, TAnswer>(TRequest request, Handle<TRequest, TAnswer> handle) =>
        new(await WriteUnderKey(request, handle));

    /// <summary>A POST that makes something: answers 201 with its address.</summary>
    public async Task<ApiCreated<TAnswer>> Create<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle, Func<TAnswer, string> location) =>
        new(await WriteUnderKey(request, handle), location);

    /// <summary>The same, where the caller sees more than is stored under the key: a secret that is said once.</summary>
    public async Task<ApiCreated<TShown>> Create<TRequest, TAnswer, TShown>(
        TRequest request, Handle<TRequest, TAnswer> handle, Func<TAnswer, TShown> show, Func<TShown, string> location) =>
        new((await WriteUnderKey(request, handle)).Then(answer => (Outcome<TShown>)show(answer)), location);

    /// <summary>A change whose answer holds what is shown but never kept.</summary>
    public async Task<ApiResult<TShown>> Change<TRequest, TAnswer, TShown>(
        TRequest request, Handle<TRequest, TAnswer> handle, Func<TAnswer, TShown> show) =>
        new((await useCases.Write(request, handle, Aborted)).Then<TShown>(answer => show(answer)));

    private async Task<Outcome<TAnswer>> WriteUnderKey<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle) =>
        Http.Request.Headers.ContainsKey(Caller.KeyHeader)
            ? await useCases.Write(request, handle, Aborted)
            : Problem.Malformed([new FieldFault(Caller.KeyHeader,
                $"The header {Caller.KeyHeader} is missing: send a new random value with every new write, and the same one when you send it again.")]);
}
