namespace Workshop.Web.Features.Paper;

/// <summary>
/// Addresses that are printed: they must work from another machine, so the manager may set what this service is called from
/// outside (<c>Workshop:PublicAddress</c>); else it is what the reader of this page calls it.
/// </summary>
public sealed class PaperAddress(IConfiguration configuration, IHttpContextAccessor http)
{
    public const string Setting = "Workshop:PublicAddress";

    /// <summary>A page of this service, from outside.</summary>
    /// <param name="path">With its leading slash, escaped where it must be.</param>
    public Uri Of(string path) => new(Base(), path);

    /// <summary>
    /// What was scanned, as a code: a label holds the address of a page, whose last part is the code. Anything else is a code
    /// already.
    /// </summary>
    public static string CodeIn(string scanned)
    {
        ArgumentNullException.ThrowIfNull(scanned);
        var text = scanned.Trim();
        return Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https"
            ? Uri.UnescapeDataString(address.Segments[^1].Trim('/'))
            : text;
    }

    private Uri Base()
    {
        if (configuration[Setting] is { Length: > 0 } set)
        {
            return Uri.TryCreate(set, UriKind.Absolute, out var address) && address.Scheme is "http" or "https"
                ? new Uri(address.GetLeftPart(UriPartial.Authority))
                : throw new InvalidOperationException($"{Setting} is \"{set}\": an address such as https://workshop.example is allowed.");
        }

        var request = http.HttpContext!.Request;
        return new Uri($"{request.Scheme}://{request.Host}");
    }
}
