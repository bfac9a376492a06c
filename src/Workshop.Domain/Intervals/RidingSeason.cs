using NodaTime;

namespace Workshop.Domain.Intervals;

/// <summary>
/// How riding is spread over the year: a day counts 1 + cosine part + sine part of a yearly wave, one on average. What is ridden
/// is even in riding days, so that a winter's rest neither slows a rate nor hurries a date.
/// </summary>
/// <param name="Cosine">Of the wave that is highest on 1 January; negative where winters rest.</param>
/// <param name="Sine">Of the wave that is highest three months later.</param>
public readonly record struct RidingSeason(double Cosine, double Sine)
{
    /// <summary>One wave cannot go below zero: what is flatter than a rest from November to March is shown so.</summary>
    public const double LargestAmplitude = 0.9;

    private const double DaysPerYear = (double)RidingRate.DaysPerYear;
    private const double PerDay = 2 * Math.PI / DaysPerYear;
    private const double CloseEnoughDays = 1e-6;
    private const int MostSteps = 60;

    private static readonly LocalDate Origin = new(2000, 1, 1);

    /// <summary>Every day counts as one.</summary>
    public static RidingSeason None => default;

    /// <summary>How far the busiest and the quietest day are from the average one, as a part of it.</summary>
    public double Amplitude => Math.Sqrt((Cosine * Cosine) + (Sine * Sine));

    /// <summary>The same wave, no higher than <see cref="LargestAmplitude"/>.</summary>
    public static RidingSeason Of(double cosine, double sine)
    {
        var shrink = Math.Min(1, LargestAmplitude / Math.Max(LargestAmplitude, Math.Sqrt((cosine * cosine) + (sine * sine))));
        return new RidingSeason(cosine * shrink, sine * shrink);
    }

    /// <summary>Riding days from one day to a later one; as many as days of the calendar where there is no season.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="to">The last day.</param>
    public double DaysBetween(LocalDate from, LocalDate to)
    {
        var days = (double)Period.DaysBetween(from, to);
        return this == None ? days : days + Waves(Since(from), days);
    }

    /// <summary>How many days of the calendar it takes from a day until so many riding days have gone by.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="ridingDays">Not negative.</param>
    public double CalendarDays(LocalDate from, double ridingDays)
    {
        if (this == None)
        {
            return ridingDays;
        }

        // Newton within a bracket: the wave adds or takes away at most its swing, and no day counts nothing.
        var start = Since(from);
        var swing = 2 * Amplitude / PerDay;
        var (low, high, days) = (Math.Max(0, ridingDays - swing), ridingDays + swing, ridingDays);
        for (var step = 0; step < MostSteps; step++)
        {
            var over = days + Waves(start, days) - ridingDays;
            (low, high) = over > 0 ? (low, days) : (days, high);
            if (Math.Abs(over) < CloseEnoughDays)
            {
                break;
            }

            var next = days - (over / WeightOn(start + days));
            days = next > low && next < high ? next : (low + high) / 2;
        }

        return days;
    }

    /// <summary>Integrals of the cosine and of the sine wave from one day to another, in days: what a stretch has of each.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="to">The last day.</param>
    public static (double Cosine, double Sine) Parts(LocalDate from, LocalDate to)
    {
        var (start, end) = (PerDay * Since(from), PerDay * Since(to));
        return ((Math.Sin(end) - Math.Sin(start)) / PerDay, (Math.Cos(start) - Math.Cos(end)) / PerDay);
    }

    private double WeightOn(double day) => 1 + (Cosine * Math.Cos(PerDay * day)) + (Sine * Math.Sin(PerDay * day));

    private double Waves(double start, double days)
    {
        var (from, to) = (PerDay * start, PerDay * (start + days));
        return ((Cosine * (Math.Sin(to) - Math.Sin(from))) + (Sine * (Math.Cos(from) - Math.Cos(to)))) / PerDay;
    }

    private static double Since(LocalDate day) => Period.DaysBetween(Origin, day);
}
