namespace Workshop.Web.Features.Records;

/// <summary>Where links to records lead.</summary>
internal static class RecordAddress
{
    public const string Begin = "/records";

    public static string Of(string secret) => $"{Begin}/{secret}";

    public static string OfPhoto(string secret, Guid photo) => $"{Begin}/{secret}/photos/{photo}";
}
