using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.JobCards;

/// <summary>What a visit is asked for, by an invented engine model whose own checks are set aside.</summary>
public class AskedChecksTests
{
    private static readonly EngineSpecification Plain = SeedFile.VTwin.Specification with { VisitChecks = [], AfterWork = null };
    private static readonly ServiceItem Adjustment = Plain.ServiceItems.First(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment);
    private static readonly ServiceItem Check = Plain.ServiceItems.First(i => i.Kind == ServiceItemKind.ValveClearanceCheck);

    [Fact]
    public void An_engine_model_that_asks_for_nothing_holds_nothing() =>
        Assert.Empty(AskedChecks.Of(Plain, Plain.ServiceItems, [Plain.Valves[0].Key], complaint: true));

    [Fact]
    public void What_is_asked_after_an_item_is_asked_only_with_that_item()
    {
        var specification = Plain with
        {
            VisitChecks = [new CheckOnVisit(VisitCheckKind.LeakCheck, WhenAsked.AfterItems) { AfterItems = [Adjustment.Code] }],
        };

        Assert.Empty(AskedChecks.Of(specification, [Check], [], complaint: false));
        Assert.Equal($"after {Adjustment.Name}", Assert.Single(AskedChecks.Of(specification, [Check, Adjustment], [], complaint: false)).Because);
    }

    [Fact]
    public void What_is_asked_of_a_tight_valve_is_asked_of_a_complaint_too()
    {
        var specification = Plain with { VisitChecks = [new CheckOnVisit(VisitCheckKind.Compression, WhenAsked.TightOrComplaint)] };

        Assert.Empty(AskedChecks.Of(specification, [Check], [], complaint: false));
        Assert.Single(AskedChecks.Of(specification, [Check], [], complaint: true));
        Assert.Contains(Plain.Valves[0].Key.Spoken, Assert.Single(AskedChecks.Of(specification, [Check], [Plain.Valves[0].Key], complaint: false)).Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_recheck_that_follows_the_work_counts_as_asked_and_is_one_with_a_stated_one()
    {
        var specification = Plain with { AfterWork = new AfterWork(Recheck: new Recheck([Adjustment.Code], 3, 15)) };
        var both = specification with { VisitChecks = [new CheckOnVisit(VisitCheckKind.Recheck, WhenAsked.Always) { OilAfterRun = true }] };

        Assert.Empty(AskedChecks.Of(specification, [Check], [], complaint: false));
        var cooled = Assert.Single(AskedChecks.Of(specification, [Adjustment], [], complaint: false));
        Assert.Equal((VisitCheckKind.Recheck, 3m, null), (cooled.Kind, cooled.Cooled!.CoolHours, cooled.Stated));
        var one = Assert.Single(AskedChecks.Of(both, [Adjustment], [], complaint: false));
        Assert.Equal((3m, true), (one.Cooled!.CoolHours, one.Stated!.OilAfterRun));
        Assert.Null(Assert.Single(AskedChecks.Of(both, [Check], [], complaint: false)).Cooled);
    }
}
