using System.Text.Json.Nodes;

namespace Workshop.Domain.EngineModels;

/// <summary>
/// Where two documents of one form differ, and what becomes of a document when differences are applied to it. Both must be
/// written by one writer, so that what a document leaves out and what it says is absent are the same.
/// </summary>
public static class SpecificationDifferences
{
    /// <summary>
    /// The places, in the document's own order. Entries of a list are told apart by key, so that one added in the middle is one
    /// difference; a list whose entries have no keys is one value.
    /// </summary>
    public static IReadOnlyList<SpecificationDifference> Between(JsonNode before, JsonNode after)
    {
        var found = new List<SpecificationDifference>();
        Compare(DocumentPath.Whole, before, after, found);
        return found;
    }

    /// <summary>
    /// The document with the differences made to it: <c>Apply(a, Between(a, b))</c> is <c>b</c>. What lies at a place that the
    /// document no longer has is left out.
    /// </summary>
    public static JsonNode Apply(JsonNode document, IReadOnlyList<SpecificationDifference> differences)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(differences);
        var made = document.DeepClone();
        foreach (var difference in differences)
        {
            ApplyOne(made, difference);
        }

        return made;
    }

    /// <summary>
    /// Those of one person's changes that touch what another person changed too, to another value: at the same place, or one
    /// within the other.
    /// </summary>
    public static IReadOnlyList<SpecificationDifference> Conflicts(
        IReadOnlyList<SpecificationDifference> mine, IReadOnlyList<SpecificationDifference> theirs)
    {
        ArgumentNullException.ThrowIfNull(mine);
        ArgumentNullException.ThrowIfNull(theirs);
        return mine.Where(m => theirs.Any(t => Touches(m, t))).ToArray();
    }

    private static bool Touches(SpecificationDifference mine, SpecificationDifference theirs)
    {
        if (mine.Kind == DifferenceKind.Reordered || theirs.Kind == DifferenceKind.Reordered)
        {
            return mine.Kind == theirs.Kind && mine.Path.Equals(theirs.Path) && !JsonNode.DeepEquals(mine.After, theirs.After);
        }

        var same = mine.Path.Equals(theirs.Path) && JsonNode.DeepEquals(mine.After, theirs.After);
        return !same && (mine.Path.Holds(theirs.Path) || theirs.Path.Holds(mine.Path));
    }

    private static void Compare(DocumentPath path, JsonNode? before, JsonNode? after, List<SpecificationDifference> found)
    {
        if (before is JsonObject b && after is JsonObject a)
        {
            foreach (var name in b.Select(m => m.Key).Union(a.Select(m => m.Key), StringComparer.Ordinal))
            {
                Compare(path.Member(name), b[name], a[name], found);
            }
        }
        else if (before is JsonArray { } was && after is JsonArray { } isNow
            && DocumentKeys.Of(was) is { } keysBefore && DocumentKeys.Of(isNow) is { } keysAfter && keysBefore.Count + keysAfter.Count > 0)
        {
            Compare(path, (was, keysBefore), (isNow, keysAfter), found);
        }
        else if (!JsonNode.DeepEquals(before, after))
        {
            found.Add(new SpecificationDifference(path, DifferenceKind.Changed, before?.DeepClone(), after?.DeepClone()));
        }
    }

    private static void Compare(
        DocumentPath path,
        (JsonArray List, IReadOnlyList<string> Keys) before,
        (JsonArray List, IReadOnlyList<string> Keys) after,
        List<SpecificationDifference> found)
    {
        foreach (var key in before.Keys.Union(after.Keys, StringComparer.Ordinal))
        {
            var (was, isNow) = (At(before, key), At(after, key));
            if (was is null || isNow is null)
            {
                found.Add(new SpecificationDifference(
                    path.Entry(key), was is null ? DifferenceKind.Added : DifferenceKind.Removed, was?.DeepClone(), isNow?.DeepClone()));
            }
            else
            {
                Compare(path.Entry(key), was, isNow, found);
            }
        }

        // Entries are removed where they stand and added at the end; what that does not explain is a change of order.
        var expected = before.Keys.Intersect(after.Keys, StringComparer.Ordinal).Concat(after.Keys.Except(before.Keys, StringComparer.Ordinal));
        if (!expected.SequenceEqual(after.Keys))
        {
            found.Add(new SpecificationDifference(path, DifferenceKind.Reordered, ListOf(before.Keys), ListOf(after.Keys)));
        }
    }

    private static JsonNode? At((JsonArray List, IReadOnlyList<string> Keys) side, string key)
    {
        for (var i = 0; i < side.Keys.Count; i++)
        {
            if (side.Keys[i] == key)
            {
                return side.List[i];
            }
        }

        return null;
    }

    private static JsonArray ListOf(IReadOnlyList<string> keys)
    {
        var list = new JsonArray();
        foreach (var key in keys)
        {
            list.Add(key);
        }

        return list;
    }

    private static void ApplyOne(JsonNode document, SpecificationDifference difference)
    {
        var steps = difference.Path.Steps;
        if (difference.Kind == DifferenceKind.Reordered)
        {
            if (difference.Path.In(document) is JsonArray list)
            {
                Reorder(list, difference.After!.AsArray().Select(key => key!.ToString()).ToArray());
            }

            return;
        }

        if (steps.Count == 0)
        {
            return;
        }

        var parent = steps.Take(steps.Count - 1).Aggregate(
            DocumentPath.Whole, (path, step) => step.IsKey ? path.Entry(step.Name) : path.Member(step.Name)).In(document);
        if (parent is JsonObject record)
        {
            record[steps[^1].Name] = difference.After?.DeepClone();
        }
        else if (parent is JsonArray entries)
        {
            var standing = entries.FirstOrDefault(entry => DocumentKeys.Of(entry) == steps[^1].Name);
            if (standing is not null)
            {
                entries.Remove(standing);
            }

            if (difference.After is { } after)
            {
                entries.Add(after.DeepClone());
            }
        }
    }

    private static void Reorder(JsonArray list, IReadOnlyList<string> keys)
    {
        var order = keys.Select((key, place) => (key, place)).ToDictionary(k => k.key, k => k.place, StringComparer.Ordinal);
        var entries = list.OrderBy(entry => order.GetValueOrDefault(DocumentKeys.Of(entry) ?? "", int.MaxValue)).ToArray();
        list.Clear();
        foreach (var entry in entries)
        {
            list.Add(entry);
        }
    }
}
