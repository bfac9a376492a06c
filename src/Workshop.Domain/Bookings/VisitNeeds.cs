using Workshop.Domain.JobCards;

namespace Workshop.Domain.Bookings;

/// <summary>What a visit needs: a bay that has what is asked of it, a technician with every skill, each special tool.</summary>
/// <param name="Skills">
/// Of all items, the possible ones too: whoever finds that a valve must be adjusted goes on and adjusts it.
/// </param>
/// <param name="SpecialTools">Codes, of certain and likely items; a possible item takes its tools when it is begun.</param>
/// <param name="Grade">The highest that any item asks for, the possible ones too.</param>
/// <param name="BayCapabilities">Of all items, the possible ones too: an engine that lies open changes no bay.</param>
public sealed record VisitNeeds(
    IReadOnlyList<string> Skills, IReadOnlyList<string> SpecialTools, TechnicianGrade Grade, IReadOnlyList<string> BayCapabilities)
{
    /// <summary>The needs of the items, each named once.</summary>
    public static VisitNeeds Of(IReadOnlyCollection<ChosenItem> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        return new VisitNeeds(
            [.. items.SelectMany(i => i.Item.Skills).Distinct().Order(StringComparer.Ordinal)],
            [.. items.Where(i => i.Likelihood != Likelihood.Possible).SelectMany(i => i.Item.SpecialTools)
                .Distinct().Order(StringComparer.Ordinal)],
            items.Count == 0 ? TechnicianGrade.Apprentice : items.Max(i => i.Item.Grade),
            [.. items.SelectMany(i => i.Item.BayCapabilities).Distinct().Order(StringComparer.Ordinal)]);
    }

    /// <summary>
    /// What a technician lacks for this visit, in words: skills, or the grade to do it alone. A technician whose grade nobody
    /// has entered is taken for able.
    /// </summary>
    public IReadOnlyList<string> TechnicianLacks(Resource technician)
    {
        ArgumentNullException.ThrowIfNull(technician);
        return technician.Grade < Grade ? [.. SkillsMissing(technician), $"the grade of {Grade.Spoken()}"] : SkillsMissing(technician);
    }

    /// <summary>What a bay lacks for this visit.</summary>
    public IReadOnlyList<string> BayLacks(Resource bay)
    {
        ArgumentNullException.ThrowIfNull(bay);
        return [.. BayCapabilities.Except(bay.Capabilities, StringComparer.Ordinal)];
    }

    /// <summary>The skills that a technician lacks for this visit; none when he has them all.</summary>
    public IReadOnlyList<string> SkillsMissing(Resource technician)
    {
        ArgumentNullException.ThrowIfNull(technician);
        return [.. Skills.Except(technician.Capabilities, StringComparer.Ordinal)];
    }

    /// <summary>
    /// One tool for each code, free ones first and one tool for several codes where it serves them; a code that no tool of
    /// the workshop has maps to nothing.
    /// </summary>
    public IReadOnlyDictionary<string, Resource?> ToolsFrom(IEnumerable<Resource> tools, IReadOnlySet<Guid> taken)
    {
        var inOrder = tools.Where(t => !t.Retired).OrderBy(t => taken.Contains(t.Id)).ThenBy(t => t.Id).ToList();
        var chosen = new Dictionary<string, Resource?>(StringComparer.Ordinal);
        foreach (var code in SpecialTools)
        {
            chosen[code] = chosen.Values.FirstOrDefault(t => t?.Capabilities.Contains(code) == true)
                ?? inOrder.FirstOrDefault(t => t.Capabilities.Contains(code));
        }

        return chosen;
    }
}
