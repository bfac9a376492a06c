using Workshop.Domain.Estimates;

namespace Workshop.Domain.JobCards;

/// <summary>
/// Of everything that was found the owner has said yes or no, and what was agreed is done. What is only to be watched waits for
/// nobody.
/// </summary>
public sealed class FindingsAreAnswered : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. facts.Findings
            .Select(finding => (finding, Words: Words(finding)))
            .Where(f => f.Words is not null)
            .Select(f => new SignOffReason($"findings.{f.finding.Id}", $"{f.finding.Place}: {f.Words}.", SignOffPlace.Findings))];
    }

    private static string? Words(FindingFacts finding) => finding.State switch
    {
        FindingState.WaitsForPrice => "found, but neither priced nor answered by the owner",
        FindingState.WaitsForAnswer => "the owner has not said yes or no yet",
        FindingState.Agreed when !finding.IsServiceItem => "the owner agreed, but nobody has said that it is done",
        _ => null,
    };
}
