using System.Globalization;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.EngineModels;

/// <summary>
/// Whether a specification holds together as a whole: every code that is named exists, every lobe has limits and can be
/// measured exactly once, every figure is possible beside the others. Whether the figures are the maker's is for people
/// to check; who did is said in the specification itself.
/// </summary>
public static class SpecificationCheck
{
    /// <summary>
    /// What is wrong and what only looks wrong. A field is a path into the document: <c>limits[2].setToMm</c>. Lists must be
    /// there, if empty; the reader of documents sees to that.
    /// </summary>
    public static SpecificationFindings Of(EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var findings = new Findings();
        LayoutCheck.Run(specification, findings);
        ClearanceCheck.Run(specification, findings);
        FasteningCheck.Run(specification, findings);
        CamDriveCheck.Run(specification, findings);
        CylinderCheck.Run(specification, findings);
        ServiceItemCheck.Run(specification, findings);
        VisitChecksCheck.Run(specification, findings);
        findings.Provenance("provenance", specification.Provenance);
        return new SpecificationFindings(findings.Faults, findings.ToConfirm);
    }
}

/// <param name="Faults">Must be put right.</param>
/// <param name="ToConfirm">Unusual: stands when somebody confirms that the document really says so.</param>
public sealed record SpecificationFindings(IReadOnlyList<FieldFault> Faults, IReadOnlyList<FieldFault> ToConfirm);

/// <summary>Collects faults, and holds the rules that every part of a specification shares.</summary>
internal sealed class Findings
{
    public const int LongestCode = 60;
    public const int LongestText = 400;

    private readonly List<FieldFault> faults = [];
    private readonly List<FieldFault> toConfirm = [];

    public IReadOnlyList<FieldFault> Faults => faults;

    public IReadOnlyList<FieldFault> ToConfirm => toConfirm;

    public void Fault(string path, FormattableString sentence) => faults.Add(Said(path, sentence));

    public void Confirm(string path, FormattableString sentence) => toConfirm.Add(Said(path, sentence));

    public void FaultIf(bool wrong, string path, FormattableString sentence)
    {
        if (wrong)
        {
            Fault(path, sentence);
        }
    }

    /// <summary>Text that people read: there, and not endless.</summary>
    public void Text(string path, string? text, string what)
    {
        FaultIf(string.IsNullOrWhiteSpace(text), path, $"{path} is empty: give {what}.");
        FaultIf(text?.Length > LongestText, path, $"{path} has {text?.Length} characters: at most {LongestText} are allowed.");
    }

    public void Provenance(string path, Provenance provenance)
    {
        Text($"{path}.source", provenance.Source, "the document that the figures come from");
        Text($"{path}.edition", provenance.Edition, "the document's edition");
        FaultIf(provenance.CheckedBy is null && provenance.CheckedOn is not null, $"{path}.checkedBy",
            $"{path}.checkedBy is empty, but checkedOn is {provenance.CheckedOn}: say who checked it, or leave both out.");
    }

    /// <summary>Codes of a list: there, short enough, each once.</summary>
    public HashSet<string> Codes(string list, IEnumerable<string> codes)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (code, index) in codes.Select((code, index) => (code, index)))
        {
            var path = $"{list}[{index}].code";
            FaultIf(string.IsNullOrWhiteSpace(code) || code.Length > LongestCode, path,
                $"{path} is \"{code}\": a code of 1 to {LongestCode} characters is allowed.");
            FaultIf(!seen.Add(code), path, $"{path} is \"{code}\", which an earlier one of {list} has already: each code once.");
        }

        return seen;
    }

    /// <summary>Codes that name something of another list: each must exist there, and be named once.</summary>
    public void References(string path, IReadOnlyList<string> codes, IReadOnlySet<string> known, string list)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < codes.Count; i++)
        {
            FaultIf(!known.Contains(codes[i]), $"{path}[{i}]", $"{path}[{i}] is \"{codes[i]}\": {list} has no such code.");
            FaultIf(!seen.Add(codes[i]), $"{path}[{i}]", $"{path}[{i}] is \"{codes[i]}\" for the second time: name it once.");
        }
    }

    public void PartCode(string path, string? code) =>
        FaultIf(string.IsNullOrWhiteSpace(code) || code.Length > LongestCode, path,
            $"{path} is \"{code}\": the stores' code of 1 to {LongestCode} characters is wanted.");

    private static FieldFault Said(string path, FormattableString sentence) =>
        new(path, sentence.ToString(CultureInfo.InvariantCulture));
}
