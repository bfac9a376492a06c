using CsCheck;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using static Workshop.Domain.Tests.CamTiming.MadeUpDrives;

namespace Workshop.Domain.Tests.CamTiming;

/// <summary>
/// A worn chain lets the camshaft lag behind the crankshaft: agriculture.com, "How to check wear in an engine's timing chain", seen;
/// used chain and guide are named as what makes a motorcycle's camshaft late on forums.sohc4.net, topic 115270, seen.
/// </summary>
public class LikelyCauseTests
{
    private static readonly ChainTensioner Tensioner = new(14) { StopMm = 18 };

    [Fact]
    public void Both_camshafts_of_a_chain_late_with_the_tensioner_at_its_limit_speak_for_chain_or_guides()
    {
        var cause = LikelyCause.Of(Found(Chain(tensioner: Tensioner), -4.5m, -4, extensionMm: 14.5m));

        Assert.Equal(CauseKind.ChainOrGuideWear, cause.Kind);
        Assert.Contains("likely", cause.Sentences[0], StringComparison.Ordinal);
        Assert.Contains("at its limit of 14 mm", cause.Sentences[1], StringComparison.Ordinal);
        Assert.Contains(cause.Sentences, s => s.Contains("no whole tooth explains it", StringComparison.Ordinal));
        Assert.Contains("not what is certain", cause.Sentences[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Late_with_the_tensioner_far_from_its_limit_asks_to_look_at_more()
    {
        var cause = LikelyCause.Of(Found(Chain(tensioner: Tensioner), -4.5m, -4, extensionMm: 6));

        Assert.Equal(CauseKind.ChainOrGuideWear, cause.Kind);
        Assert.Contains("below its limit", cause.Sentences[1], StringComparison.Ordinal);
        Assert.Contains("was not read", LikelyCause.Of(Found(Chain(tensioner: Tensioner), -4.5m, -4)).Sentences[1], StringComparison.Ordinal);
        Assert.Contains("at its stop", LikelyCause.Of(Found(Chain(tensioner: Tensioner), -4.5m, -4, atStop: true)).Sentences[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Both_early_cannot_be_wear()
    {
        var cause = LikelyCause.Of(Found(Chain(), 24, 24.5m));

        Assert.Equal(CauseKind.ToothMarksOrDeadCentre, cause.Kind);
        Assert.Contains("Wear makes late, not early", cause.Sentences[0], StringComparison.Ordinal);
        Assert.Contains(cause.Sentences, s => s.Contains("1 tooth early (one is 24°), nothing left over. A whole tooth would explain it.", StringComparison.Ordinal));
    }

    [Fact]
    public void Gears_that_are_late_did_not_stretch()
    {
        var gears = Chain() with { Stages = [new("crankshaft to camshafts", DriveKind.Gear, 30, 60)] };

        Assert.Equal(CauseKind.ToothMarksOrDeadCentre, LikelyCause.Of(Found(gears, -12, -12)).Kind);
    }

    [Fact]
    public void One_camshaft_alone_points_at_its_own_wheel()
    {
        var cause = LikelyCause.Of(Found(Chain(), 0.5m, -9));

        Assert.Equal(CauseKind.ItsSprocket, cause.Kind);
        Assert.Contains("Exhaust camshaft is 9° late while the other is right", cause.Sentences[0], StringComparison.Ordinal);
    }

    [Fact]
    public void One_measured_alone_tells_nothing_of_the_drive()
    {
        var cause = LikelyCause.Of(Found(Chain(), -6, null));

        Assert.Equal(CauseKind.NotTold, cause.Kind);
        Assert.Contains("measure Exhaust camshaft", cause.Sentences[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Opposite_ways_have_a_cause_each() =>
        Assert.Equal(CauseKind.EachForItself, LikelyCause.Of(Found(Chain(), 6, -6)).Kind);

    [Fact]
    public void One_camshaft_whose_sides_part_is_not_explained_by_turning_it()
    {
        var drive = Chain() with { Lobes = [Lobe(Intake, Side.Intake, 105), Lobe(Intake, Side.Exhaust, 107)] };
        var cause = LikelyCause.Of(new DriveFinding(
            drive, [new CamFinding(Intake, "Camshaft", null, [Measured(drive.Lobes[0], 5), Measured(drive.Lobes[1], -5)])], null, false, DeadCentreMethod.PositiveStop));

        Assert.Equal(CauseKind.LobesOrReadings, cause.Kind);
    }

    [Fact]
    public void Marks_alone_for_dead_centre_are_said_to_be_doubtful() => Assert.Contains(
        LikelyCause.Of(Found(Chain(), -5, -5, method: DeadCentreMethod.Marks)).Sentences,
        s => s.Contains("Dead centre by marks only", StringComparison.Ordinal));

    [Fact]
    public void An_alignment_check_that_fails_tells_neither_early_nor_late()
    {
        var drive = Chain();
        DriveFinding Checked(bool? intake, bool? exhaust) => new(
            drive, [new CamFinding(Intake, "Intake camshaft", intake, []), new CamFinding(Exhaust, "Exhaust camshaft", exhaust, [])], null, false, null);

        Assert.Equal(CauseKind.NotTold, LikelyCause.Of(Checked(true, false)).Kind);
        Assert.Equal(CauseKind.NothingOff, LikelyCause.Of(Checked(true, true)).Kind);
        Assert.Contains("still to be checked: Exhaust camshaft", LikelyCause.Of(Checked(true, null)).Sentences[0], StringComparison.Ordinal);
        Assert.Equal(CauseKind.NotTold, LikelyCause.Of(Checked(null, null)).Kind);
    }

    /// <summary>Whatever is found: a cause that is named is never certain, and what is within is never blamed.</summary>
    [Fact]
    public void Every_finding_has_a_careful_sentence() =>
        Gen.Select(Gen.Int[-400, 400], Gen.Int[-400, 400], Gen.Int[0, 200]).Sample((intake, exhaust, extension) =>
        {
            var found = Found(Chain(tensioner: Tensioner), intake / 10m, exhaust / 10m, extension / 10m);
            var cause = LikelyCause.Of(found);
            var within = Math.Abs(intake) <= 20 && Math.Abs(exhaust) <= 20;
            Assert.Equal(within, cause.Kind == CauseKind.NothingOff);
            Assert.NotEmpty(cause.Sentences);
            Assert.True(within || cause.Sentences[^1].Contains("likely", StringComparison.Ordinal));
            Assert.Equal(-(intake + exhaust) / 20m, found.MeanRetard!.Value.Degrees);
        });
}
