using System.Globalization;

namespace Workshop.Web.Features.Gauges;

/// <summary>
/// Every reading of a study: to the right the parts, upright what was read, each person a column of marks within the part. Pure geometry.
/// </summary>
public sealed record ReadingsChart
{
    public const double Left = 64;
    public const double Top = 12;
    public const double Floor = 214;
    public const double Height = 252;
    private const double PartWidth = 64;
    private const double Column = 12;

    public required double Width { get; init; }

    public required IReadOnlyList<(double X, double Y, int Person)> Marks { get; init; }

    public required IReadOnlyList<(double X, int Part)> Parts { get; init; }

    public required (string Highest, string Lowest) Scale { get; init; }

    public static ReadingsChart Of(GetGaugeTrial.Answer study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var people = study.Appraisers.Select((a, place) => (a.PersonId, place)).ToDictionary(a => a.PersonId, a => a.place);
        var (lowest, highest) = (study.Readings.Min(r => r.Value), study.Readings.Max(r => r.Value));
        var span = highest > lowest ? (double)(highest - lowest) : 1;
        var width = Math.Max(PartWidth, (people.Count + 1) * Column);
        return new ReadingsChart
        {
            Width = Left + (study.Parts * width) + 12,
            Marks = [.. study.Readings.Select(r => (
                Left + ((r.Part - 1) * width) + ((people[r.AppraiserId] + 1) * width / (people.Count + 1)),
                Floor - ((Floor - Top) * (double)(r.Value - lowest) / span),
                people[r.AppraiserId]))],
            Parts = [.. Enumerable.Range(1, study.Parts).Select(part => (Left + ((part - 1) * width), part))],
            Scale = (highest.ToString("0.####", CultureInfo.InvariantCulture), lowest.ToString("0.####", CultureInfo.InvariantCulture)),
        };
    }

    /// <summary>A person's mark: their letter tells them apart, not a colour.</summary>
    public static string Letter(int person) => ((char)('A' + person)).ToString();
}
