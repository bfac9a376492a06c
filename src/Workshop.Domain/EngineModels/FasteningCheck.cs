using Workshop.Domain.Measures;
using Workshop.Domain.Threads;

namespace Workshop.Domain.EngineModels;

/// <summary>Accesses, joints, fasteners and seals.</summary>
internal static class FasteningCheck
{
    private const int MostAlike = 64;
    private const decimal LargestAngle = 360;
    private const decimal LongestEngagementMm = 100;
    private const decimal WeakestMpa = 10;
    private const decimal StrongestMpa = 1000;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        var joints = findings.Codes("joints", specification.Joints.Select(j => j.Code));
        var fasteners = findings.Codes("fasteners", specification.Fasteners.Select(f => f.Code));
        findings.Codes("accesses", specification.Accesses.Select(a => a.Code));
        for (var i = 0; i < specification.Accesses.Count; i++)
        {
            var (path, access) = ($"accesses[{i}]", specification.Accesses[i]);
            findings.Text($"{path}.name", access.Name, "what is opened");
            findings.FaultIf(access.Minutes is < 0 or > ServiceItemCheck.MostMinutes, $"{path}.minutes",
                $"{path}.minutes is {access.Minutes}: 0 to {ServiceItemCheck.MostMinutes} is allowed.");
            findings.References($"{path}.joints", access.Joints, joints, "joints");
            findings.References($"{path}.fasteners", access.Fasteners, fasteners, "fasteners");
        }

        for (var i = 0; i < specification.Joints.Count; i++)
        {
            Joint($"joints[{i}]", specification.Joints[i], fasteners, findings);
        }

        for (var i = 0; i < specification.Fasteners.Count; i++)
        {
            Fastener($"fasteners[{i}]", specification.Fasteners[i], findings);
        }

        Opened(specification, findings);
    }

    private static void Joint(string path, Joint joint, IReadOnlySet<string> fasteners, Findings findings)
    {
        findings.Text($"{path}.name", joint.Name, "what is held together");
        findings.References($"{path}.fasteners", joint.Fasteners, fasteners, "fasteners");
        findings.FaultIf(joint.Fasteners.Count == 0, $"{path}.fasteners", $"{path}.fasteners is empty: a joint is held by one at least.");
        Seals(path, joint.Seals, usedOnce: false, findings);
        if (joint.Sealant is { } sealant)
        {
            findings.PartCode($"{path}.sealant.partCode", sealant.PartCode);
            findings.FaultIf(sealant.Quantity <= 0, $"{path}.sealant.quantity", $"{path}.sealant.quantity is {sealant.Quantity}: more than 0 is allowed.");
            findings.FaultIf(sealant.CureMinutes < 0, $"{path}.sealant.cureMinutes", $"{path}.sealant.cureMinutes is {sealant.CureMinutes}: 0 or more is allowed.");
        }
    }

    private static void Fastener(string path, Fastener fastener, Findings findings)
    {
        findings.Text($"{path}.name", fastener.Name, "what the workshop calls it");
        findings.Text($"{path}.tool", fastener.Tool, "the tool that fits");
        findings.FaultIf(fastener.Count is < 1 or > MostAlike, $"{path}.count", $"{path}.count is {fastener.Count}: 1 to {MostAlike} is allowed.");
        findings.FaultIf(!MetricThread.TryParse(fastener.Thread, out _), $"{path}.thread",
            $"{path}.thread is \"{fastener.Thread}\": diameter and pitch by ISO 261 are wanted, for example M6x1.");
        findings.FaultIf(fastener.Torque.NewtonMetres < Torque.SmallestNm, $"{path}.torqueNm", $"{path}.torqueNm is missing: give the final torque.");
        for (var i = 0; i < fastener.Stages.Count; i++)
        {
            var next = i + 1 < fastener.Stages.Count ? fastener.Stages[i + 1] : fastener.Torque;
            findings.FaultIf(fastener.Stages[i] >= next, $"{path}.stagesNm[{i}]",
                $"{path}.stagesNm[{i}] is {fastener.Stages[i]}: a stage lies below the one after it, which is {next}.");
        }

        findings.FaultIf(fastener.AngleDegrees is <= 0 or > LargestAngle, $"{path}.angleDegrees",
            $"{path}.angleDegrees is {fastener.AngleDegrees}: above 0 and at most {LargestAngle} degrees is allowed.");
        FastenerWorkCheck.Run(path, fastener, findings);
        findings.FaultIf(fastener.Treatment == ThreadTreatment.Locked && string.IsNullOrWhiteSpace(fastener.ThreadCompound),
            $"{path}.threadCompound", $"{path}.threadCompound is empty, but the thread is locked: say with what.");
        findings.FaultIf(fastener.UseOnce && !fastener.Seals.Any(s => s.Policy == SealPolicy.ReplaceAlways), $"{path}.seals",
            $"{path}.seals names no part that is always replaced, but the fastener is used once: name the new one.");
        var renewed = fastener.Seals.Where(s => s.Policy == SealPolicy.ReplaceAlways).Sum(s => s.Quantity);
        findings.FaultIf(fastener.UseOnce && renewed > 0 && renewed < fastener.Count, $"{path}.seals",
            $"{path}.seals replaces {renewed}, but {fastener.Count} are used once: quantities are for all of them together.");
        Seals(path, fastener.Seals, fastener.UseOnce, findings);
        Bounds(path, fastener, findings);
        findings.Provenance($"{path}.provenance", fastener.Provenance);
    }

    /// <summary>What the torque is compared with; an absurd one is asked back, the maker's figure stands.</summary>
    private static void Bounds(string path, Fastener fastener, Findings findings)
    {
        findings.FaultIf(fastener.PropertyClass is { } name && !PropertyClass.TryFind(name, out _), $"{path}.propertyClass",
            $"{path}.propertyClass is \"{fastener.PropertyClass}\": one of {PropertyClass.Names} is allowed, or none where it is not known.");
        findings.FaultIf(fastener.Into?.EngagementMm is <= 0 or > LongestEngagementMm, $"{path}.into.engagementMm",
            $"{path}.into.engagementMm is {fastener.Into?.EngagementMm}: above 0 and at most {LongestEngagementMm} mm is allowed.");
        findings.FaultIf(fastener.Into?.ShearStrengthMpa is < WeakestMpa or > StrongestMpa, $"{path}.into.shearStrengthMpa",
            $"{path}.into.shearStrengthMpa is {fastener.Into?.ShearStrengthMpa}: {WeakestMpa} to {StrongestMpa} MPa is allowed.");
        var judged = TorquePlausibility.Of(fastener);
        if (judged.IsAbsurd)
        {
            findings.Confirm($"{path}.torqueNm", $"{path}.torqueNm is {fastener.Torque}: {judged.Sentence}.");
        }
    }

    private static void Seals(string path, IReadOnlyList<Seal> seals, bool usedOnce, Findings findings)
    {
        for (var i = 0; i < seals.Count; i++)
        {
            if (seals[i].ReuseAllowedBy is { } word)
            {
                var field = $"{path}.seals[{i}].reuseAllowedBy";
                findings.Text(field, word, "document and page where the maker allows it again, or leave it out");
                findings.FaultIf(usedOnce, field, $"{field} is \"{word}\", but the fastener is used once: one of the two is wrong.");
                findings.FaultIf(seals[i].Policy == SealPolicy.ReplaceAlways, field,
                    $"{field} is \"{word}\", but the policy is to replace it always: one of the two is wrong.");
            }

            findings.PartCode($"{path}.seals[{i}].partCode", seals[i].PartCode);
            findings.FaultIf(seals[i].Quantity <= 0, $"{path}.seals[{i}].quantity", $"{path}.seals[{i}].quantity is {seals[i].Quantity}: more than 0 is allowed.");
        }
    }

    /// <summary>What nothing opens would never reach a torque sheet; what two joints share would be counted twice.</summary>
    private static void Opened(EngineSpecification specification, Findings findings)
    {
        var (accesses, joints, items) = (specification.Accesses, specification.Joints, specification.ServiceItems);
        var openedAccesses = items.SelectMany(i => i.Accesses).ToHashSet(StringComparer.Ordinal);
        var openedJoints = accesses.SelectMany(a => a.Joints).Concat(items.SelectMany(i => i.Joints)).ToHashSet(StringComparer.Ordinal);
        var onTheWay = accesses.SelectMany(a => a.Fasteners).ToHashSet(StringComparer.Ordinal);
        var byItem = items.SelectMany(i => i.Fasteners).ToHashSet(StringComparer.Ordinal);
        var holders = joints.SelectMany(j => j.Fasteners.Distinct()).CountBy(code => code, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        for (var i = 0; i < accesses.Count; i++)
        {
            findings.FaultIf(!openedAccesses.Contains(accesses[i].Code), $"accesses[{i}].code", $"accesses[{i}] (\"{accesses[i].Code}\") is needed by no service item.");
        }

        for (var i = 0; i < joints.Count; i++)
        {
            findings.FaultIf(!openedJoints.Contains(joints[i].Code), $"joints[{i}].code", $"joints[{i}] (\"{joints[i].Code}\") is opened by no access and no service item.");
        }

        for (var i = 0; i < specification.Fasteners.Count; i++)
        {
            var code = specification.Fasteners[i].Code;
            var held = holders.GetValueOrDefault(code);
            findings.FaultIf(held == 0 && !onTheWay.Contains(code) && !byItem.Contains(code), $"fasteners[{i}].code", $"fasteners[{i}] (\"{code}\") belongs to no joint and is opened by no access and no service item.");
            findings.FaultIf(held > 1, $"fasteners[{i}].code", $"fasteners[{i}] (\"{code}\") belongs to {held} joints: one is allowed.");
            findings.FaultIf(held > 0 && onTheWay.Contains(code), $"fasteners[{i}].code", $"fasteners[{i}] (\"{code}\") belongs to a joint: an access names the joint, not the fastener.");
        }
    }
}
