using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Finishing;

/// <summary>Where one looks for leaks.</summary>
/// <param name="Code">Of the joint or fastener; of another place its name.</param>
/// <param name="ClosedBy">Codes of the fasteners that close it: tightened again since, it is looked at again.</param>
public sealed record LeakPlace(string Code, string Name, IReadOnlyList<string> ClosedBy);

/// <param name="Last">What counts of it; nothing where nobody has looked.</param>
/// <param name="TightenedSince">What closes it was tightened after that look.</param>
public sealed record LeakPlaceState(LeakPlace Place, LeakLook? Last, bool TightenedSince)
{
    /// <summary>Nobody has looked since it was last closed.</summary>
    public bool IsOpen => Last is null || TightenedSince;
}

/// <summary>The places of a leak check: the engine as a whole, every joint and seal that the visit opened, and what the maker names.</summary>
public static class LeakPlaces
{
    public const string Whole = "engine";

    /// <summary>Each place once: what was opened in the order of the specification, then what is stated, then the engine as a whole.</summary>
    /// <param name="specification">That the card pinned.</param>
    /// <param name="begun">Items that were at least begun.</param>
    public static IReadOnlyList<LeakPlace> Of(EngineSpecification specification, IEnumerable<ServiceItem> begun)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var opened = Opened.By(specification, begun);
        var joints = opened.Joints.Where(j => j.Seals.Count > 0 || j.Sealant is not null).Select(j => new LeakPlace(j.Code, j.Name, j.Fasteners));
        var closed = opened.Joints.SelectMany(j => j.Fasteners).ToHashSet(StringComparer.Ordinal);
        var fasteners = opened.Fasteners.Where(f => f.Seals.Count > 0 && !closed.Contains(f.Code)).Select(f => new LeakPlace(f.Code, f.Name, [f.Code]));
        var stated = specification.VisitChecks.Where(c => c.Kind == VisitCheckKind.LeakCheck).SelectMany(c => c.Places).Select(p => new LeakPlace(p, p, []));
        return joints.Concat(fasteners).Concat(stated).Append(new LeakPlace(Whole, "The engine as a whole, from below too", []))
            .DistinctBy(p => p.Code, StringComparer.Ordinal).ToArray();
    }

    /// <summary>How every place stands, with those that somebody looked at beside.</summary>
    public static IReadOnlyList<LeakPlaceState> StatesOf(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var places = Of(facts.Specification, facts.Begun);
        var beside = facts.Finished.Leaks.Where(l => places.All(p => p.Code != l.PlaceCode))
            .DistinctBy(l => l.PlaceCode, StringComparer.Ordinal).Select(l => new LeakPlace(l.PlaceCode, l.PlaceName, []));
        var tightened = facts.ToBeTight.Where(l => l.Tick.Last is { Tightened: true }).ToDictionary(l => l.Fastener.Code, l => l.Tick.Last!.TickedAt, StringComparer.Ordinal);
        return places.Concat(beside).Select(place =>
        {
            var last = Attempts.Last(facts.Finished.Leaks.Where(l => l.PlaceCode == place.Code));
            return new LeakPlaceState(place, last, last is not null && place.ClosedBy.Any(f => tightened.TryGetValue(f, out var at) && at > last.LookedAt));
        }).ToArray();
    }
}
