using System.Globalization;
using System.Text;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>
/// To the right the days, upwards the stock of one part: a solid line, what is there less what visits need; a dashed one, if all that
/// lies ready were used as well; hatched, where it is not enough. Pure geometry. Shown by
/// <c>&lt;partial name="Drawings/_StockSteps" model="steps" /&gt;</c>, a table beside it.
/// </summary>
public sealed record StockSteps
{
    public const double Width = 720;
    public const double Height = 260;
    public const double Left = 64;
    public const double Right = Width - 14;
    public const double Top = 18;
    public const double Floor = Height - 34;

    private const int MostTicks = 8;
    private const double HalfDate = 18;

    /// <summary>A path of steps: what is there less what is needed.</summary>
    public required string Line { get; init; }

    /// <summary>The same, if all that lies ready were used as well.</summary>
    public required string IfAllUsed { get; init; }

    /// <summary>Where the solid line is below zero, down from zero; empty where it never is.</summary>
    public required string BelowZero { get; init; }

    public required double ZeroY { get; init; }

    /// <summary>Where the first day below zero begins.</summary>
    public required double? FirstBelowX { get; init; }

    /// <summary>Where deliveries can be counted on.</summary>
    public required IReadOnlyList<double> Deliveries { get; init; }

    public required IReadOnlyList<(double Y, string Text)> Levels { get; init; }

    public required IReadOnlyList<(double X, string Text)> Dates { get; init; }

    public required string Words { get; init; }

    /// <param name="stock">As projected.</param>
    /// <param name="name">Of the part.</param>
    /// <param name="unit">In which it is counted.</param>
    /// <param name="today">The left end.</param>
    /// <param name="until">The right end.</param>
    public static StockSteps Of(ProjectedStock stock, string name, PartUnit unit, LocalDate today, LocalDate until)
    {
        ArgumentNullException.ThrowIfNull(stock);
        var levels = stock.Days.SelectMany(d => new[] { d.Level, d.LevelIfAllUsed }).Append(stock.OnHand).Append(0).ToList();
        var (least, most) = ((double)levels.Min(), Math.Max((double)levels.Max(), (double)levels.Min() + 1));
        var span = Math.Max(Period.DaysBetween(today, until), 1);
        double X(LocalDate day) => Left + ((Right - Left) * Math.Clamp(Period.DaysBetween(today, day), 0, span) / span);
        double Y(decimal level) => Floor - ((Floor - Top) * (((double)level - least) / (most - least)));
        var days = stock.Days.Where(d => d.On <= until).ToList();
        var (step, every) = (NiceStep(most - least), Math.Max(1, (int)Math.Ceiling(span / 6.0)));
        return new StockSteps
        {
            Line = Steps(stock.OnHand, days, d => d.Level, X, Y),
            IfAllUsed = Steps(stock.OnHand, days, d => d.LevelIfAllUsed, X, Y),
            BelowZero = Below(days, X, Y),
            ZeroY = Y(0),
            FirstBelowX = stock.FirstBelowZero is { } first ? X(first) : null,
            Deliveries = [.. days.Where(d => d.Comes > 0).Select(d => X(d.On))],
            Levels = [.. Enumerable.Range((int)Math.Ceiling(least / step), MostTicks * 3).Select(i => i * step).TakeWhile(l => l <= most)
                .Select(l => (Y((decimal)l), unit.Say((decimal)l)))],
            Dates = [.. Enumerable.Range(0, span + 1).Where(i => i % every == 0).Select(today.PlusDays)
                .Where(d => X(d) < Right - HalfDate).Select(d => (X(d), d.ToString("MM-dd", CultureInfo.InvariantCulture)))],
            Words = $"{name}: what is there on the days to come, less what booked visits need, and if all that lies ready were used as well; the same in the table below.",
        };
    }

    private static string Steps(
        decimal onHand, List<ProjectedDay> days, Func<ProjectedDay, decimal> level, Func<LocalDate, double> x, Func<decimal, double> y)
    {
        var path = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"M{Left:0.##} {y(onHand):0.##}"));
        foreach (var day in days)
        {
            path.Append(CultureInfo.InvariantCulture, $"H{x(day.On):0.##}V{y(level(day)):0.##}");
        }

        return path.Append(CultureInfo.InvariantCulture, $"H{Right:0.##}").ToString();
    }

    private static string Below(List<ProjectedDay> days, Func<LocalDate, double> x, Func<decimal, double> y)
    {
        var path = new StringBuilder();
        foreach (var (index, day) in days.Index().Where(d => d.Item.Level < 0))
        {
            var end = index + 1 < days.Count ? x(days[index + 1].On) : Right;
            path.Append(CultureInfo.InvariantCulture, $"M{x(day.On):0.##} {y(0):0.##}V{y(day.Level):0.##}H{end:0.##}V{y(0):0.##}z");
        }

        return path.ToString();
    }

    /// <summary>1, 2 or 5 of a power of ten, so that a handful of ticks is enough; whole pieces.</summary>
    private static double NiceStep(double range)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(range / MostTicks)));
        return Math.Max(new[] { 1, 2, 5, 10 }.Select(m => m * power).First(s => range / s <= MostTicks), 1);
    }
}
