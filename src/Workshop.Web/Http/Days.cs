using NodaTime;
using NodaTime.Text;

namespace Workshop.Web.Http;

/// <summary>Days in addresses, which the framework cannot read by itself.</summary>
internal static class Days
{
    public static bool TryRead(string text, out LocalDate day) => LocalDatePattern.Iso.Parse(text).TryGetValue(default, out day);

    /// <exception cref="UnparsableValueException">The validator let something through that is no day.</exception>
    public static LocalDate Read(string text) => LocalDatePattern.Iso.Parse(text).Value;

    public static string Write(LocalDate day) => LocalDatePattern.Iso.Format(day);
}
