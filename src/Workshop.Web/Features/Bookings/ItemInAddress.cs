using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;

namespace Workshop.Web.Features.Bookings;

/// <summary>An item with its likelihood as one word of an address: <c>oil-and-filter:certain</c>.</summary>
internal static class ItemInAddress
{
    public static readonly string Form = $"code:likelihood, where likelihood is {string.Join(", ", Enum.GetValues<Likelihood>().Select(l => l.Spoken()))}";

    public static string Write(string code, Likelihood likelihood) => $"{code}:{likelihood.Spoken()}";

    public static NamedItem? Read(string text) =>
        text.Split(':') is [{ Length: > 0 } code, var word]
            && Enum.GetValues<Likelihood>().Where(l => l.Spoken() == word).Select(l => (Likelihood?)l).SingleOrDefault() is { } likelihood
            ? new NamedItem(code, likelihood)
            : null;
}
