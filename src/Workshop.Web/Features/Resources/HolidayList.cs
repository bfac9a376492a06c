using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>Holidays as people paste them: one a line, the day, then the name; empty lines are passed over.</summary>
internal static class HolidayList
{
    private const int LongestShown = 60;

    public static (IReadOnlyList<AddHolidays.Item> Items, IReadOnlyList<string> Faults) Read(string? text)
    {
        var (items, faults) = (new List<AddHolidays.Item>(), new List<string>());
        foreach (var (line, index) in (text ?? "").Split('\n').Select((line, index) => (line.Trim(), index)).Where(l => l.Item1.Length > 0))
        {
            var words = line.Split((char[])[' ', '\t', ',', ';'], 2, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            if (words is [var first, var name] && Days.TryRead(first, out var day))
            {
                items.Add(new AddHolidays.Item { Day = day, Name = name });
            }
            else
            {
                faults.Add($"Line {index + 1} is \"{(line.Length > LongestShown ? $"{line[..LongestShown]}…" : line)}\": a day and its name, such as 2027-01-01 New Year, are allowed.");
            }
        }

        return (items, faults);
    }
}
