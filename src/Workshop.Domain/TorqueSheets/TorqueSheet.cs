using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;

namespace Workshop.Domain.TorqueSheets;

/// <summary>One fastener of the sheet, with how it stands.</summary>
public sealed record TorqueLine(Fastener Fastener, FastenerState Tick)
{
    /// <summary>What is dialled one after the other: the stages, then the final torque.</summary>
    public IReadOnlyList<Torque> Steps => [.. Fastener.Stages, Fastener.Torque];

    public bool IsTightened => Tick.State == TickState.Tightened;
}

/// <summary>A joint with its fasteners, or fasteners that belong to none.</summary>
public sealed record TorqueSection(Joint? Joint, IReadOnlyList<TorqueLine> Lines);

/// <summary>
/// Every fastener that the items under way open, once, in the order in which they are closed. Items that nobody has begun add
/// nothing.
/// </summary>
public sealed record TorqueSheet(IReadOnlyList<TorqueSection> Sections)
{
    public IReadOnlyList<TorqueLine> Lines => [.. Sections.SelectMany(s => s.Lines)];

    /// <summary>
    /// The sheet of a visit. The specification lists accesses, joints and fasteners in the order of opening, so closing runs
    /// the other way: first what the items themselves opened, then what was in the way, the outermost last.
    /// </summary>
    /// <param name="specification">Holds the items and all that they open.</param>
    /// <param name="underWay">Certain items, and others from when they were begun; their order does not matter.</param>
    /// <param name="ticks">All ticks of the card.</param>
    public static TorqueSheet Of(
        EngineSpecification specification, IEnumerable<ItemUnderWay> underWay, IReadOnlyCollection<FastenerTick> ticks)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(underWay);
        var items = underWay.OrderBy(i => i.Item.Code, StringComparer.Ordinal).ToList();
        var opened = Opened.By(specification, items.Select(i => i.Item));
        var openedAt = OpenedAt(specification, items);
        var listed = new HashSet<string>(StringComparer.Ordinal);

        TorqueLine? Line(Fastener fastener) => listed.Add(fastener.Code)
            ? new TorqueLine(fastener, FastenerState.Of(fastener.Code, ticks, openedAt.GetValueOrDefault(fastener.Code)))
            : null;

        var sections = new List<TorqueSection>();
        foreach (var joint in ClosingOrder(specification, opened, items))
        {
            var lines = joint.Fasteners
                .Select(code => Line(opened.Fasteners.Single(f => f.Code == code)))
                .OfType<TorqueLine>()
                .ToList();
            if (lines.Count > 0)
            {
                sections.Add(new TorqueSection(joint, lines));
            }
        }

        var others = opened.Fasteners.Reverse().Select(Line).OfType<TorqueLine>().ToList();
        if (others.Count > 0)
        {
            sections.Add(new TorqueSection(null, others));
        }

        return new TorqueSheet(sections);
    }

    private static IEnumerable<Joint> ClosingOrder(EngineSpecification specification, Opened opened, List<ItemUnderWay> items)
    {
        var inTheWay = items.SelectMany(i => i.Item.Accesses).ToHashSet(StringComparer.Ordinal);
        var outer = specification.Accesses
            .Where(a => inTheWay.Contains(a.Code))
            .SelectMany(a => a.Joints)
            .Distinct(StringComparer.Ordinal)
            .ToList();
        var outermostLast = outer.Select((code, place) => (code, place)).ToDictionary(o => o.code, o => o.place, StringComparer.Ordinal);
        return opened.Joints
            .Select((joint, place) => (joint, place))
            .OrderByDescending(j => outermostLast.GetValueOrDefault(j.joint.Code, int.MaxValue))
            .ThenByDescending(j => j.place)
            .Select(j => j.joint);
    }

    private static Dictionary<string, Instant?> OpenedAt(EngineSpecification specification, List<ItemUnderWay> items) => items
        .Where(i => i.StartedAt is not null)
        .SelectMany(i => Opened.By(specification, [i.Item]).Fasteners.Select(f => (f.Code, i.StartedAt)))
        .GroupBy(f => f.Code, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Max(f => f.StartedAt), StringComparer.Ordinal);
}
