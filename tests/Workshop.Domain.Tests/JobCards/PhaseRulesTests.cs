using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Tests.JobCards;

public class PhaseRulesTests
{
    private static readonly WorkshopTime Vienna = new(DateTimeZoneProviders.Tzdb["Europe/Vienna"]);
    private static readonly Instant Nine = Instant.FromUtc(2026, 3, 2, 8, 0);

    [Fact]
    public void Work_on_a_cold_engine_begins_when_the_soak_is_over_or_with_a_reason()
    {
        var visit = Visit() with { ColdFrom = Nine + Duration.FromHours(2) };

        var early = PhaseRules.RefuseBegin(visit, new PhaseToBegin(VisitPhase.Work, Nine + Duration.FromHours(1)), Vienna);
        var withReason = PhaseRules.RefuseBegin(visit, new PhaseToBegin(VisitPhase.Work, Nine + Duration.FromHours(1), HasReason: true), Vienna);
        var inTime = PhaseRules.RefuseBegin(visit, new PhaseToBegin(VisitPhase.Work, Nine + Duration.FromHours(2)), Vienna);

        Assert.Equal("soak-not-over", early?.Code);
        Assert.Equal("reason", Assert.Single(early!.Faults).Field);
        Assert.Contains("cold from 2026-03-02 11:00 on, counted from its last stop", early.Sentence, StringComparison.Ordinal);
        Assert.Null(withReason);
        Assert.Null(inTime);
    }

    [Theory]
    [InlineData(VisitPhase.SealantCure)]
    [InlineData(VisitPhase.WarmRun)]
    [InlineData(VisitPhase.TestRide)]
    [InlineData(VisitPhase.CoolAndRecheck)]
    [InlineData(VisitPhase.HandOver)]
    public void What_follows_the_work_does_not_begin_before_it_whatever_the_reason(VisitPhase phase)
    {
        var refused = PhaseRules.RefuseBegin(Visit(VisitPhase.Arrival), new PhaseToBegin(phase, Nine + Duration.FromHours(9), true, true), Vienna);

        Assert.Equal("phase-out-of-order", refused?.Code);
        Assert.Contains("which nobody has begun", refused!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Heat_comes_to_sealant_when_it_is_hard_counted_from_the_last_work()
    {
        var sealedOnce = Visit(VisitPhase.Work, VisitPhase.SealantCure) with { Cure = Duration.FromHours(2) };
        var openedAgain = Visit(VisitPhase.Work, VisitPhase.SealantCure, VisitPhase.Work) with { Cure = Duration.FromHours(2) };

        // Phases begin hour by hour: the cure at ten.
        Problemless(sealedOnce, Nine + Duration.FromHours(3));
        Assert.Equal("cure-not-over", Refused(sealedOnce, Nine + Duration.FromMinutes(179)));
        Assert.Equal("cure-not-begun", Refused(openedAgain, Nine + Duration.FromHours(9)));

        static void Problemless(VisitSoFar visit, Instant at) => Assert.Null(Refused(visit, at));
        static string? Refused(VisitSoFar visit, Instant at) =>
            PhaseRules.RefuseBegin(visit, new PhaseToBegin(VisitPhase.WarmRun, at), Vienna)?.Code;
    }

    [Fact]
    public void An_engine_whose_oil_ran_out_is_not_run_before_somebody_confirms_oil_and_no_reason_helps()
    {
        var drained = Visit(VisitPhase.Work) with { DrainsOil = true };
        var at = Nine + Duration.FromHours(5);

        var refused = PhaseRules.RefuseBegin(drained, new PhaseToBegin(VisitPhase.WarmRun, at, HasReason: true), Vienna);

        Assert.Equal("oil-not-confirmed", refused?.Code);
        Assert.Equal("oilIn", Assert.Single(refused!.Faults).Field);
        Assert.Null(PhaseRules.RefuseBegin(drained, new PhaseToBegin(VisitPhase.WarmRun, at, OilIn: true), Vienna));
        Assert.Contains("oil-in", PhaseRules.CautionsAt(drained, VisitPhase.WarmRun).Select(c => c.Code));
        Assert.Contains("exhaust-extraction", PhaseRules.CautionsAt(drained, VisitPhase.WarmRun).Select(c => c.Code));
        Assert.Null(PhaseRules.RefuseBegin(
            Visit(VisitPhase.Work, VisitPhase.WarmRun) with { DrainsOil = true }, new PhaseToBegin(VisitPhase.TestRide, at), Vienna));
    }

    [Fact]
    public void A_tag_hangs_until_the_engine_runs_or_the_next_move_hangs_none()
    {
        var tagged = Visit(VisitPhase.Work) with { Moves = [Move(3, tag: true)] };

        Assert.NotNull(tagged.TagRemarkId);
        Assert.Equal("oil-not-confirmed", PhaseRules.RefuseBegin(
            tagged, new PhaseToBegin(VisitPhase.TestRide, Nine + Duration.FromHours(5)), Vienna)?.Code);
        Assert.Null((tagged with { Moves = [Move(3, tag: true), Move(4, tag: false)] }).TagRemarkId);
        Assert.Null((Visit(VisitPhase.Work, VisitPhase.WarmRun) with { Moves = [Move(0, tag: true)] }).TagRemarkId);
    }

    [Fact]
    public void A_recheck_that_the_engine_model_asks_for_comes_before_the_hand_over()
    {
        var visit = Visit(VisitPhase.Work, VisitPhase.WarmRun) with { AsksForRecheck = true };
        var handOver = new PhaseToBegin(VisitPhase.HandOver, Nine + Duration.FromHours(8));

        Assert.Equal("recheck-missing", PhaseRules.RefuseBegin(visit, handOver, Vienna)?.Code);
        Assert.Null(PhaseRules.RefuseBegin(visit, handOver with { HasReason = true }, Vienna));
        Assert.Null(PhaseRules.RefuseBegin(
            Visit(VisitPhase.Work, VisitPhase.WarmRun, VisitPhase.CoolAndRecheck) with { AsksForRecheck = true }, handOver, Vienna));
    }

    [Fact]
    public void While_it_waits_nothing_begins_and_nothing_is_offered()
    {
        var wait = new VisitWait
        {
            Id = NewId.At(Nine), JobCardNumber = 1001, For = WaitsFor.Shims, Since = Nine, ExpectedUntil = Nine + Duration.FromHours(20),
            EnteredBy = NewId.At(Nine),
        };
        var waits = Visit(VisitPhase.Work, VisitPhase.Waiting) with { Waits = wait };

        Assert.Equal("waits", PhaseRules.RefuseBegin(waits, new PhaseToBegin(VisitPhase.Work, Nine + Duration.FromHours(5)), Vienna)?.Code);
        Assert.Empty(PhaseRules.Offered(waits));
        Assert.Equal("waits", WaitRules.RefuseWait(waits, WaitsFor.OwnersWord, "expectedUntil", Nine + Duration.FromHours(9), Nine, Vienna)?.Code);
        Assert.Null(WaitRules.RefuseWait(waits, WaitsFor.Shims, "expectedUntil", Nine + Duration.FromHours(9), Nine, Vienna));
        Assert.Equal("work-not-begun", WaitRules.RefuseWait(Visit(), WaitsFor.Shims, "expectedUntil", Nine + Duration.FromHours(9), Nine, Vienna)?.Code);
    }

    [Fact]
    public void Whatever_is_offered_is_refused_for_its_time_or_for_oil_only()
    {
        Gen.Int[0, PhaseRules.Begun.Count - 1].Select(i => PhaseRules.Begun[i]).Array[1, 6].Select(Gen.Bool, Gen.Bool).Sample(
            (phases, oil, recheck) =>
            {
                var visit = Visit(phases) with { DrainsOil = oil, AsksForRecheck = recheck, Cure = Duration.FromHours(1) };
                var late = Nine + Duration.FromDays(3);
                foreach (var phase in PhaseRules.Offered(visit))
                {
                    Assert.NotEqual(visit.Phase, phase);
                    Assert.Null(PhaseRules.RefuseBegin(visit, new PhaseToBegin(phase, late, HasReason: true, OilIn: true), Vienna));
                }
            },
            iter: 300);
    }

    /// <summary>Checked in at nine; phases begin hour by hour from then on.</summary>
    internal static VisitSoFar Visit(params VisitPhase[] begun) => new()
    {
        Number = 1001,
        CheckedInAt = Nine,
        Begun = [.. begun.Select((phase, index) => new PhaseStart
        {
            Id = NewId.At(Nine), JobCardNumber = 1001, Phase = phase, StartedAt = Nine + Duration.FromHours(index), EnteredBy = NewId.At(Nine),
        })],
    };

    private static MotorcycleMove Move(int hours, bool tag) => new()
    {
        Id = NewId.At(Nine), JobCardNumber = 1001, ResourceId = NewId.At(Nine), MovedAt = Nine + Duration.FromHours(hours),
        MovedBy = NewId.At(Nine), TagRemarkId = tag ? NewId.At(Nine) : null,
    };
}
