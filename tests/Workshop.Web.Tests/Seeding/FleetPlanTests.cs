using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Web.Data.Seeding;
using Xunit;

namespace Workshop.Web.Tests.Seeding;

public sealed class FleetPlanTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);

    private static FleetPlan Plan(LocalDate today) =>
        new(SeedFiles.Fleet(), new OpenDays(SeedFiles.Workshop()), today, SeedFiles.EngineModels());

    public static TheoryData<string> Days() => ["2026-11-25", "2026-12-25", "2027-01-02", "2028-02-29", "2027-08-15"];

    [Fact]
    public void The_same_seed_and_day_give_the_same_fleet()
    {
        var (first, second) = (Plan(Today), Plan(Today));

        Assert.Equal(
            first.Visits.Select(v => (v.Motorcycle.Registration, v.Day, v.Km, v.FeelerSet, v.Sloppy)),
            second.Visits.Select(v => (v.Motorcycle.Registration, v.Day, v.Km, v.FeelerSet, v.Sloppy)));
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void On_any_day_the_histories_lie_in_the_past_and_run_forward(string day)
    {
        var today = NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value;
        var plan = Plan(today);

        Assert.Equal(40, plan.Motorcycles.Count);
        Assert.Equal(40, plan.Motorcycles.Select(m => m.Registration).Distinct().Count());
        Assert.All(plan.Visits, v => Assert.True(v.Day < today && v.Day >= v.Motorcycle.InServiceSince));
        foreach (var visits in plan.Visits.GroupBy(v => v.Motorcycle))
        {
            Assert.Equal(visits.OrderBy(v => v.Km).Select(v => v.Day), visits.Select(v => v.Day).Order());
            Assert.True(visits.Max(v => v.Km) < visits.Key.NowKm);
        }
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void No_day_takes_more_than_bays_and_tools_allow(string day)
    {
        var openDays = new OpenDays(SeedFiles.Workshop());
        var visits = Plan(NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value).Visits;

        Assert.All(visits, v => Assert.True(openDays.IsOpen(v.Day)));
        Assert.All(visits.GroupBy(v => (v.Day, v.Purpose)), sameDay => Assert.Single(sameDay));
    }

    [Fact]
    public void Checks_of_engines_with_shims_lie_20000_to_40000_km_apart()
    {
        var checks = Plan(Today).Visits
            .Where(v => v.Purpose == VisitPurpose.ValveCheck && v.Motorcycle.EngineModel.Specification.ValveTrain != ValveTrainKind.ScrewAndLocknut)
            .GroupBy(v => v.Motorcycle);
        foreach (var motorcycle in checks)
        {
            var km = motorcycle.Select(v => v.Km).Order().ToList();
            Assert.All(km.Zip(km.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 20_000, 40_000));
        }
    }
}
