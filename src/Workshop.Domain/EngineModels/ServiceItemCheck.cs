using Workshop.Domain.JobCards;

namespace Workshop.Domain.EngineModels;

/// <summary>Service items: what they open, use and ask for; <see cref="IntervalCheck"/> says when they may come round.</summary>
internal static class ServiceItemCheck
{
    public const int MostMinutes = 6000;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        var items = specification.ServiceItems;
        findings.Codes("serviceItems", items.Select(i => i.Code));
        var accesses = specification.Accesses.Select(a => a.Code).ToHashSet(StringComparer.Ordinal);
        var joints = specification.Joints.Select(j => j.Code).ToHashSet(StringComparer.Ordinal);
        var fasteners = specification.Fasteners.Select(f => f.Code).ToHashSet(StringComparer.Ordinal);
        findings.FaultIf(items.All(i => i.Kind != ServiceItemKind.ValveClearanceCheck), "serviceItems",
            $"serviceItems has no valve clearance check: an engine with limits has one.");
        for (var i = 0; i < items.Count; i++)
        {
            var (path, item) = ($"serviceItems[{i}]", items[i]);
            findings.Text($"{path}.name", item.Name, "what is done");
            findings.FaultIf(item.LabourMinutes is < 0 or > MostMinutes, $"{path}.labourMinutes",
                $"{path}.labourMinutes is {item.LabourMinutes}: 0 to {MostMinutes} is allowed.");
            findings.References($"{path}.accesses", item.Accesses, accesses, "accesses");
            findings.References($"{path}.joints", item.Joints, joints, "joints");
            findings.References($"{path}.fasteners", item.Fasteners, fasteners, "fasteners");
            Adjustment(path, item, items, findings);
            Parts(path, item.Parts, findings);
            Words($"{path}.skills", item.Skills, "a skill", findings);
            Words($"{path}.specialTools", item.SpecialTools, "a special tool", findings);
            Words($"{path}.bayCapabilities", item.BayCapabilities, "what the bay must have", findings);
            for (var c = 0; c < item.Cautions.Count; c++)
            {
                findings.FaultIf(!Cautions.Exists(item.Cautions[c]), $"{path}.cautions[{c}]",
                    $"{path}.cautions[{c}] is \"{item.Cautions[c]}\": there is no such caution.");
            }

            findings.Provenance($"{path}.provenance", item.Provenance);
        }

        IntervalCheck.Run(specification, findings);
        After(specification, findings);
    }

    private static void After(EngineSpecification specification, Findings findings)
    {
        Minutes("afterWork.warmRunMinutes", specification.AfterWork?.WarmRunMinutes, findings);
        Minutes("afterWork.testRideMinutes", specification.AfterWork?.TestRideMinutes, findings);
        if (specification.AfterWork?.Recheck is not { } recheck)
        {
            return;
        }

        Minutes("afterWork.recheck.minutes", recheck.Minutes, findings);
        findings.References("afterWork.recheck.afterItems", recheck.AfterItems,
            specification.ServiceItems.Select(i => i.Code).ToHashSet(StringComparer.Ordinal), "serviceItems");
        findings.FaultIf(recheck.CoolHours is < 0 or > ClearanceCheck.LongestSoakHours, "afterWork.recheck.coolHours",
            $"afterWork.recheck.coolHours is {recheck.CoolHours}: 0 to {ClearanceCheck.LongestSoakHours} hours is allowed.");
    }

    private static void Minutes(string path, int? minutes, Findings findings) =>
        findings.FaultIf(minutes is < 0 or > MostMinutes, path, $"{path} is {minutes}: 0 to {MostMinutes} is allowed.");

    private static void Adjustment(string path, ServiceItem item, IReadOnlyList<ServiceItem> items, Findings findings)
    {
        if (item.Kind != ServiceItemKind.ValveClearanceCheck)
        {
            findings.FaultIf(item.AdjustmentItem is not null, $"{path}.adjustmentItem",
                $"{path}.adjustmentItem is \"{item.AdjustmentItem}\": only a valve clearance check has one.");
            return;
        }

        findings.FaultIf(
            item.AdjustmentItem is not null
                && !items.Any(i => i.Code == item.AdjustmentItem && i.Kind == ServiceItemKind.ValveClearanceAdjustment),
            $"{path}.adjustmentItem",
            $"{path}.adjustmentItem is \"{item.AdjustmentItem}\": no valve clearance adjustment has this code.");
    }

    private static void Parts(string path, IReadOnlyList<ItemPart> parts, Findings findings)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            findings.PartCode($"{path}.parts[{i}].partCode", parts[i].PartCode);
            findings.FaultIf(parts[i].Quantity <= 0, $"{path}.parts[{i}].quantity",
                $"{path}.parts[{i}].quantity is {parts[i].Quantity}: more than 0 is allowed.");
        }
    }

    private static void Words(string path, IReadOnlyList<string> words, string what, Findings findings)
    {
        for (var i = 0; i < words.Count; i++)
        {
            findings.Text($"{path}[{i}]", words[i], what);
        }
    }
}
