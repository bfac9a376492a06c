using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Intervals;

/// <summary>Which service items contain which others, through others too. An item that names itself is no fault here.</summary>
public sealed class Inclusion
{
    private readonly Dictionary<string, HashSet<string>> contained;

    private Inclusion(Dictionary<string, HashSet<string>> contained) => this.contained = contained;

    /// <summary>Of the items of one engine model.</summary>
    public static Inclusion Of(IReadOnlyList<ServiceItem> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        var direct = items.GroupBy(i => i.Code).ToDictionary(of => of.Key, of => of.First().Includes, StringComparer.Ordinal);
        return new Inclusion(direct.Where(of => of.Value.Count > 0).ToDictionary(of => of.Key, of => Reached(of.Value, direct), StringComparer.Ordinal));
    }

    /// <summary>Whether doing <paramref name="code"/> does <paramref name="other"/> as well.</summary>
    public bool Contains(string code, string other) => contained.TryGetValue(code, out var within) && within.Contains(other);

    /// <summary>What is done when an item is done: itself, and what it contains.</summary>
    public IEnumerable<string> DoneWith(string code) =>
        contained.TryGetValue(code, out var within) ? within.Prepend(code).Distinct() : [code];

    private static HashSet<string> Reached(IReadOnlyList<string> from, Dictionary<string, IReadOnlyList<string>> direct)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(from);
        while (open.TryPop(out var code))
        {
            if (!reached.Add(code) || !direct.TryGetValue(code, out var next))
            {
                continue;
            }

            foreach (var other in next)
            {
                open.Push(other);
            }
        }

        return reached;
    }
}
