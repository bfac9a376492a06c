using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.Bays;

/// <summary>One stage of the readings as it is entered with taps.</summary>
public sealed record MeasureView
{
    public required int Number { get; init; }

    public required Stage Stage { get; init; }

    public required EngineSpecification Specification { get; init; }

    public required GetReadings.Answer Card { get; init; }

    /// <summary>What was expected of each lobe before the visit; none at as left.</summary>
    public required IReadOnlyDictionary<LobeKey, GetCardForecast.Expected> Expected { get; init; }

    public required IReadOnlyList<BladeSet> Sets { get; init; }

    /// <summary>Sets that may not be used today, each with why.</summary>
    public required IReadOnlyList<string> OtherSets { get; init; }

    /// <summary>The set in hand; nothing until one is chosen.</summary>
    public BladeSet? Set { get; init; }

    /// <summary>°C, as taken last; nothing where that is too long ago.</summary>
    public decimal? HeadC { get; init; }

    /// <summary>The position that was confirmed last; nothing before the first.</summary>
    public string? CrankAt { get; init; }

    /// <summary>The lobe that is asked for; nothing where all are read.</summary>
    public LobeKey? Now { get; init; }

    /// <summary>Lobes that are still to be read at this stage.</summary>
    public required IReadOnlySet<LobeKey> Open { get; init; }

    public required bool MayWrite { get; init; }

    public required WorkshopTime Time { get; init; }

    public IEnumerable<GetReadings.LobeState> Lobes => Card.Positions.SelectMany(p => p.Lobes);

    public GetReadings.Position? PositionNow =>
        Now is { } now ? Card.Positions.FirstOrDefault(p => p.Lobes.Any(l => KeyOf(l) == now)) : null;

    public GetReadings.LobeState? LobeNow => Now is { } now ? Lobes.FirstOrDefault(l => KeyOf(l) == now) : null;

    /// <summary>The mark and the lobes of the position have been looked at, and the crankshaft was not turned since.</summary>
    public bool PositionIsConfirmed => PositionNow is { } position && CrankAt == position.Name;

    /// <summary>Blades and temperature are known: entry may begin.</summary>
    public bool IsSetUp => Set is not null && HeadC is not null;

    public static LobeKey KeyOf(GetReadings.LobeState lobe)
    {
        ArgumentNullException.ThrowIfNull(lobe);
        return new LobeKey(lobe.Valve, lobe.Lobe);
    }

    public GetReadings.Reading? ReadingOf(GetReadings.LobeState lobe)
    {
        ArgumentNullException.ThrowIfNull(lobe);
        return Stage == Stage.AsFound ? lobe.AsFound : lobe.AsLeft;
    }

    /// <summary>How often the lobe was read at this stage.</summary>
    public int AttemptsAt(GetReadings.LobeState lobe) => ReadingOf(lobe)?.Attempt ?? 0;

    /// <summary>"expected 0.15 to 0.19 mm"; what there is to say where nothing is expected.</summary>
    public string? ExpectedWords(LobeKey lobe) => Expected.TryGetValue(lobe, out var expected)
        ? FormattableString.Invariant($"expected {expected.FromMm:0.00} to {expected.ToMm:0.00} mm")
        : null;

    /// <summary>
    /// What the device needs to go on alone: blades, limits, and for every tap what it says and how it is judged, so that no rule
    /// is stated a second time in a script.
    /// </summary>
    public object Data(object person, Instant now, string post, string position) => new
    {
        Number,
        Stage,
        Person = person,
        RenderedAt = now.ToUnixTimeMilliseconds(),
        Post = post,
        PositionPost = position,
        Cold = new
        {
            Lowest = Card.Cold.Lowest.Celsius,
            Highest = Card.Cold.Highest.Celsius,
            Words = $"cold is {Card.Cold.Lowest.Celsius:0.#} to {Card.Cold.Highest}, by {Card.Cold.Method}; {ThermalGrowth.PerTenDegrees}",
            Card.Cold.Method,
        },
        Set = Set?.Id,
        HeadC,
        CrankAt,
        MayWrite,
        Sets = Sets.Select(DataOf),
        Positions = Card.Positions.Select(p => new { p.Name, p.Mark, Lobes = p.Lobes.Select(l => KeyOf(l).ToString()) }),
        Lobes = Lobes.Select(l => new
        {
            Key = KeyOf(l).ToString(),
            Valve = l.Valve.ToString(),
            l.Lobe,
            l.Name,
            Spoken = $"{(l.Lobe > 1 ? $"lobe {l.Lobe}, " : "")}{l.Valve.Spoken}",
            Limits = LimitsKey(l),
            Range = $"{l.Limits.Lower.Millimetres:0.00##} to {l.Limits.Upper}, set to {l.Limits.SetTo.Millimetres:0.00##}",
            Expected = ExpectedWords(KeyOf(l)),
            Attempts = AttemptsAt(l),
            Open = Open.Contains(KeyOf(l)),
            Reading = ReadingOf(l) is { } r ? new { Text = r.Bracket.ToString(), r.Verdict, r.Words, By = r.MeasuredByName, Carried = r.NotRemeasured } : null,
        }),
    };

    private object DataOf(BladeSet set)
    {
        var answers = BladeAnswer.Of(set.Blades);
        var pairs = BladeAnswer.Stacked(set.Blades);
        return new
        {
            set.Id,
            Name = $"{set.Name}, {set.SerialNumber}",
            set.Unit,
            set.CalibrationDue,
            Blades = set.Blades.All.Select(b => new { Mm = b.Millimetres, Mark = set.Mark(b) }),
            Answers = answers.Select(a => new
            {
                a.Code, a.Bracket.Kind, Go = a.Bracket.Go?.Millimetres, NoGo = a.Bracket.NoGo?.Millimetres, Text = a.Bracket.ToString(),
            }),
            Judged = Lobes.GroupBy(LimitsKey).ToDictionary(g => g.Key, g => Judge([.. answers.Select(a => a.Bracket)], g.First().Limits)),

            // Two blades together, the first with every thicker one, then the second with every thicker one, and so on.
            Stacked = new
            {
                NoGo = pairs.Select(p => p?.NoGo?.Millimetres),
                Judged = Lobes.GroupBy(LimitsKey).ToDictionary(g => g.Key, g => Judge(pairs, g.First().Limits)),
            },
        };
    }

    /// <summary>How each answer is judged: an index into the few sentences that there are; -1 where it cannot be.</summary>
    private static object Judge(IReadOnlyList<Bracket?> answers, ClearanceLimits limits)
    {
        var judged = answers.Select(a => a is { } bracket ? ClearanceVerdict.Of(bracket, limits) : null).ToList();
        var distinct = judged.OfType<ClearanceVerdict>().Distinct().ToList();
        return new
        {
            Said = distinct.Select(d => new { d.Verdict, Words = d.Sentence }), By = judged.Select(j => j is null ? -1 : distinct.IndexOf(j)),
        };
    }

    private static string LimitsKey(GetReadings.LobeState lobe) => $"{lobe.Valve.Side}-{lobe.Lobe}".ToLowerInvariant();
}
