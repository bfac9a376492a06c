using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bays;

/// <summary>A feeler set that may be used today, with the blades of it that may.</summary>
/// <param name="CalibrationDue">When its calibration is due, in words.</param>
public sealed record BladeSet(Guid Id, string Name, string SerialNumber, string Unit, string CalibrationDue, FeelerBlades Blades)
{
    /// <summary>What is written on a blade, in the set's own unit: "0.15", "0.006".</summary>
    public string Mark(Clearance blade) => Unit == "in"
        ? blade.Inches.ToString("0.000#", CultureInfo.InvariantCulture)
        : blade.Millimetres.ToString("0.00##", CultureInfo.InvariantCulture);

    /// <summary>Sets with their blades, finest first; those that may not be used are named in the second list, with why.</summary>
    internal static async Task<(IReadOnlyList<BladeSet> Usable, IReadOnlyList<string> Others)> Read(
        WorkshopDbContext db, LocalDate today, CancellationToken ct)
    {
        var sets = await db.Instruments.AsNoTracking().Where(i => i.Kind == InstrumentKind.FeelerSet)
            .OrderBy(i => i.Name).ThenBy(i => i.SerialNumber).ToListAsync(ct);
        var ids = sets.Select(s => s.Id).ToList();
        var blades = (await db.FeelerBlades.AsNoTracking().Where(b => ids.Contains(b.InstrumentId) && !b.Withdrawn).ToListAsync(ct))
            .ToLookup(b => b.InstrumentId, b => b.Nominal);
        return (
            [.. sets.Where(s => s.MayBeUsedOn(today) && blades[s.Id].Any())
                .Select(s => new BladeSet(s.Id, s.Name, s.SerialNumber, s.Unit, s.CalibrationDue(today), FeelerBlades.Of(blades[s.Id])))
                .OrderBy(s => s.Blades.All.Count > 1 ? s.Blades.All[1] - s.Blades.All[0] : decimal.MaxValue)],
            [.. sets.Where(s => !s.MayBeUsedOn(today)).Select(s => $"{s.Name}, {s.SerialNumber}: {s.StateOn(today)}")]);
    }
}

/// <summary>One thing that can be said with the blades of a set, as a tap sends it.</summary>
/// <param name="Code">"goes:0.15", "only:0.15" where the next was not tried, "none", "loose".</param>
public sealed record BladeAnswer(string Code, Bracket Bracket)
{
    private const string GoesCode = "goes:";
    private const string OnlyCode = "only:";

    /// <summary>Everything that one blade of a set can say.</summary>
    public static IReadOnlyList<BladeAnswer> Of(FeelerBlades blades)
    {
        ArgumentNullException.ThrowIfNull(blades);
        var answers = new List<BladeAnswer>();
        foreach (var blade in blades.All)
        {
            answers.Add(new(GoesCode + Figure(blade), blades.Goes(blade)));
            answers.Add(new(OnlyCode + Figure(blade), blades.NextNotTried(blade)));
        }

        if (blades.NoneEnters is { } none && blades.ThickestIsLoose is { } loose)
        {
            answers.AddRange([new("none", none), new("loose", loose)]);
        }

        return answers;
    }

    /// <summary>Two blades together, each pair once, thinner first; nothing where they are thicker than a clearance may be.</summary>
    public static IReadOnlyList<Bracket?> Stacked(FeelerBlades blades)
    {
        ArgumentNullException.ThrowIfNull(blades);
        var all = blades.All;
        return [.. all.SelectMany((first, i) => all.Skip(i + 1), (first, second) =>
            first.Millimetres + second.Millimetres <= Clearance.LargestMm ? blades.GoTogether(first, second) : (Bracket?)null)];
    }

    /// <summary>What a form sent, read by the blades of its set; nothing where the set has no such blade.</summary>
    /// <param name="blades">Of the set.</param>
    /// <param name="code">As a button sends it.</param>
    /// <param name="with">The second blade where two are stacked, mm.</param>
    public static Bracket? Read(FeelerBlades blades, string? code, decimal? with)
    {
        ArgumentNullException.ThrowIfNull(blades);
        if (with is not { } second)
        {
            return Of(blades).FirstOrDefault(a => a.Code == code)?.Bracket;
        }

        var first = blades.All.Cast<Clearance?>().FirstOrDefault(b => code == GoesCode + Figure(b!.Value));
        var other = blades.All.Cast<Clearance?>().FirstOrDefault(b => b!.Value.Millimetres == second);
        return first is { } one && other is { } two && one != two && one.Millimetres + two.Millimetres <= Clearance.LargestMm
            ? blades.GoTogether(one, two)
            : null;
    }

    private static string Figure(Clearance blade) => blade.Millimetres.ToString("0.####", CultureInfo.InvariantCulture);
}
