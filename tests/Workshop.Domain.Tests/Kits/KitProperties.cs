using CsCheck;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Tests.Kits;

/// <summary>What holds for every engine and every choice of items.</summary>
public class KitProperties
{
    /// <summary>An engine, and for each of its items: 0 not booked, 1 held ready, 2 under way.</summary>
    private static readonly Gen<(EngineSpecification Engine, int[] Booked)> Visits =
        Gen.Select(MadeUpEngines.Any, Gen.Int[0, 2].Array[4]);

    [Fact]
    public void The_order_and_repetition_of_items_never_matter() =>
        Gen.Select(Visits, Gen.Int[0, 23]).Sample((visit, turn) =>
        {
            var (engine, booked) = visit;
            var (certain, held) = Split(engine, booked);
            var kit = Kit.Of(engine, certain, held);
            var turned = Kit.Of(engine, Turn(certain, turn).Concat(certain.Take(1)), Turn(held, turn / 2));

            Assert.Equal(KitTests.Text(kit), KitTests.Text(turned));
        });

    [Fact]
    public void Adding_an_item_never_removes_a_line_and_never_lowers_a_quantity() =>
        Gen.Select(Visits, Gen.Int[0, 3]).Sample((visit, which) =>
        {
            var (engine, booked) = visit;
            if (booked[which] == 2)
            {
                return;
            }

            var before = Of(engine, booked);
            var more = booked.ToArray();
            more[which]++;
            var after = Of(engine, more);

            foreach (var line in before.Lines)
            {
                var same = Assert.Single(after.Lines, l => l.PartCode == line.PartCode);
                Assert.True(same.Needed >= line.Needed);
                Assert.True(same.Needed + same.HaveReady >= line.Needed + line.HaveReady);
            }
        });

    [Fact]
    public void What_is_needed_never_depends_on_what_is_held_ready() =>
        Visits.Sample(visit =>
        {
            var (engine, booked) = visit;
            var (certain, held) = Split(engine, booked);

            Assert.Equal(Needed(Kit.Of(engine, certain, [])), Needed(Kit.Of(engine, certain, held)));
        });

    [Fact]
    public void Needed_counts_every_joint_fastener_and_item_once() =>
        Visits.Sample(visit =>
        {
            var (engine, booked) = visit;
            var (certain, held) = Split(engine, booked);
            var kit = Kit.Of(engine, certain, held);

            // The plainest account of the same: each thing that is opened gives its parts exactly once.
            var joints = engine.Joints.Where(j => certain.Any(i => Opens(engine, i, j.Code))).ToList();
            var fasteners = engine.Fasteners.Where(f => joints.Any(j => j.Fasteners.Contains(f.Code))
                || certain.Any(i => i.Fasteners.Contains(f.Code) || AccessesOf(engine, i).Any(a => a.Fasteners.Contains(f.Code)))).ToList();
            var expected = joints.SelectMany(j => j.Seals).Where(s => s.Policy == SealPolicy.ReplaceAlways).Sum(s => s.Quantity)
                + joints.Sum(j => j.Sealant?.Quantity ?? 0)
                + fasteners.Sum(f => f.Seals.Where(s => f.UseOnce || s.Policy == SealPolicy.ReplaceAlways).Sum(s => s.Quantity))
                + certain.SelectMany(i => i.Parts).Where(p => !p.HaveReady).Sum(p => p.Quantity);
            Assert.Equal(expected, kit.Lines.Sum(l => l.Needed));
        });

    [Fact]
    public void A_union_of_items_never_needs_more_than_their_sum_and_never_less_than_the_greatest() =>
        Visits.Sample(visit =>
        {
            var items = visit.Engine.ServiceItems.Where((_, i) => visit.Booked[i] == 2).ToList();
            var union = Kit.Of(visit.Engine, items, []).Lines;
            var alone = items.Select(i => Kit.Of(visit.Engine, [i], []).Lines.ToDictionary(l => l.PartCode)).ToList();
            Assert.Equal(alone.SelectMany(a => a.Keys).Distinct().Order(StringComparer.Ordinal), union.Select(l => l.PartCode));
            foreach (var line in union)
            {
                var each = alone.Where(a => a.ContainsKey(line.PartCode)).Select(a => a[line.PartCode]).ToList();
                Assert.InRange(line.Needed, each.Max(l => l.Needed), each.Sum(l => l.Needed));
                Assert.InRange(line.Wanted, each.Max(l => l.Wanted), each.Sum(l => l.Wanted));
            }
        });

    [Fact]
    public void Knowing_the_parts_moves_quantities_from_ready_to_needed_and_changes_no_sum() =>
        Gen.Select(Visits, Gen.Bool.Array[4]).Sample((visit, once) =>
        {
            var (certain, held) = Split(visit.Engine, visit.Booked);
            var parts = Enumerable.Range(1, 4).ToDictionary(n => $"p{n}", n => KitTests.Part($"p{n}") is var part && once[n - 1] ? KitTests.FittedOnce(part) : part);
            var plain = Kit.Of(visit.Engine, certain, held);
            var known = Kit.Of(visit.Engine, certain, held, parts);

            foreach (var (before, after) in plain.Lines.Zip(known.Lines))
            {
                Assert.Equal((before.PartCode, before.Wanted), (after.PartCode, after.Wanted));
                Assert.True(once[before.PartCode[1] - '1'] ? after.Needed >= before.Needed : after.Needed == before.Needed);
            }
        });

    [Fact]
    public void Two_codes_that_mean_one_part_make_one_line_of_both() =>
        Visits.Sample(visit =>
        {
            var (certain, held) = Split(visit.Engine, visit.Booked);
            var one = KitTests.Part("p1");
            var apart = Kit.Of(visit.Engine, certain, held).Lines.Where(l => l.PartCode is "p1" or "p2").ToList();
            var merged = Kit.Of(visit.Engine, certain, held, new Dictionary<string, Domain.Stores.Part> { ["p1"] = one, ["p2"] = one }).Lines;

            Assert.DoesNotContain(merged, l => l.PartCode == "p2");
            Assert.Equal(apart.Sum(l => l.Needed), merged.Where(l => l.PartCode == "p1").Sum(l => l.Needed));
            Assert.Equal(apart.Sum(l => l.Wanted), merged.Where(l => l.PartCode == "p1").Sum(l => l.Wanted));
        });

    [Fact]
    public void The_reasons_of_a_line_make_up_its_quantities() =>
        Visits.Sample(visit =>
        {
            foreach (var line in Of(visit.Engine, visit.Booked).Lines)
            {
                Assert.Equal(line.Needed, line.Reasons.Where(r => r.IsNeeded).Sum(r => r.Quantity));
                Assert.Equal(line.HaveReady, line.Reasons.Where(r => !r.IsNeeded).Sum(r => r.Quantity));
                Assert.True(line.Needed + line.HaveReady > 0);
            }
        });

    private static bool Opens(EngineSpecification engine, ServiceItem item, string joint) =>
        item.Joints.Contains(joint) || AccessesOf(engine, item).Any(a => a.Joints.Contains(joint));

    private static IEnumerable<Access> AccessesOf(EngineSpecification engine, ServiceItem item) =>
        engine.Accesses.Where(a => item.Accesses.Contains(a.Code));

    private static Kit Of(EngineSpecification engine, int[] booked)
    {
        var (certain, held) = Split(engine, booked);
        return Kit.Of(engine, certain, held);
    }

    private static (List<ServiceItem> Certain, List<ServiceItem> Held) Split(EngineSpecification engine, int[] booked) =>
        ([.. engine.ServiceItems.Where((_, i) => booked[i] == 2)], [.. engine.ServiceItems.Where((_, i) => booked[i] == 1)]);

    private static IEnumerable<ServiceItem> Turn(List<ServiceItem> items, int turn) =>
        items.Count == 0 ? items : items.Skip(turn % items.Count).Concat(items.Take(turn % items.Count)).Reverse();

    private static string Needed(Kit kit) =>
        string.Join("; ", kit.Lines.Where(l => l.Needed > 0).Select(l => $"{l.PartCode} {l.Needed}"));
}
