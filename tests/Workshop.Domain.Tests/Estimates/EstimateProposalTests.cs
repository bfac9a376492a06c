using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Domain.Tests.Kits;
using static Workshop.Domain.Tests.Kits.MadeUpEngines;

namespace Workshop.Domain.Tests.Estimates;

public class EstimateProposalTests
{
    private static readonly TaxRate Standard = new() { Code = "standard", ValidFrom = new LocalDate(2020, 1, 1), Name = "Tax", Percent = 20 };
    private static readonly TaxRate Reduced = new() { Code = "reduced", ValidFrom = new LocalDate(2020, 1, 1), Name = "Reduced", Percent = 10 };
    private static readonly TaxTable Tax = TaxTable.On(new LocalDate(2026, 1, 1), [Standard, Reduced]);

    private static readonly Joint Cover = new("cover", "Head cover", ["bolt"],
        [new Seal("gasket", 1, SealPolicy.InspectAndReuse), new Seal("washer", 6, SealPolicy.ReplaceAlways)]);

    private static readonly ServiceItem Check = Item("check", accesses: ["tank"], joints: ["cover"]) with { LabourMinutes = 90 };
    private static readonly ServiceItem Adjust = Item("adjust", accesses: ["tank", "cams"], joints: ["cover"], parts: [new ItemPart("paste", 1)]) with { LabourMinutes = 120 };
    private static readonly ServiceItem Oil = Item("oil", parts: [new ItemPart("oil", 3200), new ItemPart("magnet", 1, HaveReady: true)]) with { LabourMinutes = 30 };

    private static readonly EngineSpecification Engine = MadeUpEngines.Engine(
        [Check, Adjust, Oil], [Cover], [Fastener("bolt", 6)],
        [new Access("tank", "Tank off", 20, [], []), new Access("cams", "Camshafts out", 40, [], [])]);

    private static readonly PriceBook Prices = new("EUR", 90, Standard, Tax, new Dictionary<string, PartPrice>
    {
        ["gasket"] = new("gasket", "Gasket", PartUnit.Piece, 24.90m, 11, Standard),
        ["washer"] = new("washer", "Washer", PartUnit.Piece, 0.355m, null, Standard),
        ["oil"] = new("oil", "Engine oil", PartUnit.Millilitre, 12.50m, 6, Reduced),
        ["paste"] = new("paste", "Paste", PartUnit.Piece, 3, null, Standard),
        ["magnet"] = new("magnet", "Magnet", PartUnit.Piece, null, null, Standard),
    });

    [Fact]
    public void Labour_is_charged_once_for_each_access_and_parts_by_their_policy()
    {
        var lines = EstimateProposal.Of(Engine, [Certain(Check), Likely(Adjust), Certain(Oil)], Prices);

        Assert.Equal(
            [
                "access:cams 40 Minute 60.00", "access:tank 20 Minute 30.00", "item:adjust 120 Minute 180.00", "item:check 90 Minute 135.00",
                "item:oil 30 Minute 45.00", "part:oil 3200 Millilitre 40.00", "part:paste 1 Piece 3.00", "part:washer 6 Piece 2.13",
            ],
            lines.Where(l => l.Charge == EstimateCharge.Always).Select(Text).Order(StringComparer.Ordinal));
        Assert.Equal(["part:gasket|ifUsed 1 Piece 24.90", "part:magnet|ifUsed 1 Piece none"],
            lines.Where(l => l.Charge == EstimateCharge.IfUsed).Select(Text).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_possible_item_is_an_option_with_what_it_alone_adds()
    {
        var lines = EstimateProposal.Of(Engine, [Certain(Check), new ChosenItem(Adjust, Likelihood.Possible)], Prices);

        Assert.Equal(
            ["access:cams|adjust 40 Minute 60.00", "item:adjust|adjust 120 Minute 180.00", "part:paste|adjust 1 Piece 3.00"],
            lines.Where(l => l.Option == "adjust").Select(Text).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(lines, l => l.Option is null && l.Source == "item:adjust");
    }

    [Fact]
    public void What_has_no_price_says_so_and_is_never_guessed()
    {
        var unpriced = Prices with { LabourPerHour = null, Parts = new Dictionary<string, PartPrice>() };
        var lines = EstimateProposal.Of(Engine, [Certain(Oil)], unpriced);

        Assert.All(lines, l => Assert.Null(l.Priced));
        Assert.Contains(lines, l => l.Missing == "No price is known of oil (oil).");
        Assert.Contains(lines, l => l.Missing == "No price is known of Item oil: the workshop's labour rate is not set.");
        Assert.Contains(EstimateProposal.Of(Engine, [Certain(Oil)], Prices with { UsualTax = null }),
            l => l.Missing == "No tax rate is known of Item oil: the workshop's usual one is not set.");
    }

    [Fact]
    public void A_visit_with_one_more_item_costs_what_the_visit_and_the_item_cost() =>
        Gen.Select(MadeUpEngines.Any, Gen.Int[0, 15], Gen.Int[0, 3]).Sample((engine, bits, which) =>
        {
            var (items, more) = (engine.ServiceItems, engine.ServiceItems[which]);
            var booked = items.Where((i, n) => (bits >> n & 1) == 1 && i != more).Select(Certain).ToList();
            var before = EstimateProposal.Of(engine, booked, Prices);
            var added = EstimateProposal.OfOneMore(engine, booked, more, Prices);
            var after = EstimateProposal.Of(engine, [.. booked, Certain(more)], Prices);

            Assert.Equal(Quantities(after.Where(l => l.Charge == EstimateCharge.Always)), Quantities(before.Concat(added).Where(l => l.Charge == EstimateCharge.Always)));
        });

    [Fact]
    public void The_order_of_items_leaves_no_trace() => Gen.Select(MadeUpEngines.Any, Gen.Int[0, 80], Gen.Int[0, 3]).Sample((engine, likelihoods, turn) =>
    {
        var items = engine.ServiceItems.Select((i, n) => new ChosenItem(i, (Likelihood)(likelihoods / (int)Math.Pow(3, n) % 3))).ToList();
        var turned = items.Skip(turn).Concat(items.Take(turn)).ToList();

        Assert.Equal(EstimateProposal.Of(engine, items, Prices).Select(Text).Order(StringComparer.Ordinal),
            EstimateProposal.Of(engine, turned, Prices).Select(Text).Order(StringComparer.Ordinal));
        Assert.Equal(EstimateProposal.Of(engine, items, Prices).Select(l => l.Key).Distinct().Count(), EstimateProposal.Of(engine, items, Prices).Count);
    });

    [Fact]
    public void The_latest_rate_by_day_holds()
    {
        TaxRate From(int year, decimal percent) => new() { Code = "standard", ValidFrom = new LocalDate(year, 1, 1), Name = "Tax", Percent = percent };
        TaxRate[] rates = [From(2027, 22), From(2020, 19), From(2024, 20)];

        Assert.Equal(20, TaxTable.On(new LocalDate(2026, 12, 31), rates).Find("standard")!.Percent);
        Assert.Equal(22, TaxTable.On(new LocalDate(2027, 1, 1), rates).Find("standard")!.Percent);
        Assert.Null(TaxTable.On(new LocalDate(2019, 12, 31), rates).Find("standard"));
        Assert.Null(TaxTable.On(new LocalDate(2026, 1, 1), rates).Find("reduced"));
    }

    [Fact]
    public void A_changed_price_needs_a_reason_and_a_dropped_line_needs_no_price()
    {
        var proposed = EstimateProposal.Of(Engine, [Certain(Oil)], Prices);

        var refused = EstimateDraft.Of(proposed, [new LineEdit("item:oil", false, 80, null)], [], Prices).Problem!;
        Assert.Contains(refused.Faults, f => f.Field == "lines[0].reason");
        Assert.Contains(refused.Faults, f => f.Sentence.StartsWith("No price is known of Magnet (magnet). Type one", StringComparison.Ordinal));

        var lines = EstimateDraft.Of(
            proposed,
            [new LineEdit("item:oil", false, 80, "as promised"), new LineEdit("part:magnet|ifUsed", true, null, null)],
            [new OtherLine("Carriage", null, null, 12, null, null), new OtherLine("Bleeding the brake", null, 20, null, null, "reduced")], Prices).Value;

        Assert.Equal((80, 90), (lines.Single(l => l.Source == "item:oil").Priced.UnitPrice, lines.Single(l => l.Source == "item:oil").ProposedUnitPrice));
        Assert.True(lines.Single(l => l.Source == "part:magnet").Dropped);
        Assert.Equal([12.00m, 30.00m], lines.Where(l => l.Source.StartsWith(AgreedLine.Typed, StringComparison.Ordinal)).Select(l => l.Priced.Net));
        Assert.Equal(40 + 40 + 12 + 30, EstimateSums.Of(lines.Where(l => l.IsCharged).Select(l => l.Priced)).Net);
    }

    [Fact]
    public void An_estimate_of_nothing_and_a_line_that_is_gone_are_refused()
    {
        var proposed = EstimateProposal.Of(Engine, [Certain(Check)], Prices);

        Assert.Equal("estimate-empty", EstimateDraft.Of(proposed, [.. proposed.Select(l => new LineEdit(l.Key, true, null, null))], [], Prices).Problem!.Code);
        Assert.Contains(EstimateDraft.Of(proposed, [new LineEdit("item:oil", true, null, null)], [], Prices).Problem!.Faults, f => f.Field == "lines[0].key");
        Assert.Contains(EstimateDraft.Of(proposed, [], [new OtherLine("Wash", null, null, null, null, null)], Prices).Problem!.Faults, f => f.Field == "others[0].unitPrice");
        Assert.Contains(EstimateDraft.Of(proposed, [], [new OtherLine("Wash", null, null, 5, null, "luxury")], Prices).Problem!.Faults,
            f => f.Sentence == "others[0].taxCode is \"luxury\": reduced, standard are allowed.");
    }

    [Fact]
    public void What_was_agreed_holds_until_the_visit_changes()
    {
        var proposed = EstimateProposal.Of(Engine, [Certain(Check), new ChosenItem(Adjust, Likelihood.Possible)], Prices);
        var agreed = Agreed(EstimateDraft.Of(proposed, [new LineEdit("item:check", false, 100, "evening")], [new OtherLine("Carriage", null, null, 10, null, null)], Prices).Value);
        var raised = Prices with { LabourPerHour = 110 };

        // The prices rose since: an agreed price holds.
        var same = AgreedSum.Of(agreed, EstimateProposal.Of(Engine, [Certain(Check)], raised));
        Assert.True(same.IsAsAgreed);
        Assert.Equal(same.Agreed.Gross, same.Now.Gross);

        // The adjustment was begun: what came with it costs today's price, the rest what was agreed.
        var more = AgreedSum.Of(agreed, EstimateProposal.Of(Engine, [Certain(Check), Certain(Adjust)], raised));
        Assert.Equal(["Camshafts out", "Item adjust", "Paste"], more.Changes.Select(c => c.Text));
        Assert.Equal(more.Agreed.Net + (40 * 110m / 60) + (120 * 110m / 60) + 3, more.Now.Net, 2);
        Assert.Equal(more.Now.Net - more.Agreed.Net, more.Changes.Sum(c => c.Net));

        // An item was taken out: it is no longer charged.
        var less = AgreedSum.Of(agreed, []);
        Assert.Equal(10, less.Now.Net);
        Assert.All(less.Changes, c => Assert.True(c.Net < 0));
    }

    [Fact]
    public void What_a_person_dropped_stays_dropped()
    {
        var proposed = EstimateProposal.Of(Engine, [Certain(Check), Certain(Oil)], Prices);
        var agreed = Agreed(EstimateDraft.Of(proposed, [new LineEdit("item:oil", true, null, null), new LineEdit("part:magnet|ifUsed", true, null, null)], [], Prices).Value);

        Assert.True(AgreedSum.Of(agreed, proposed).IsAsAgreed);
    }

    [Fact]
    public void The_difference_is_the_sum_of_the_changes() => Gen.Select(MadeUpEngines.Any, Gen.Int[0, 15], Gen.Int[0, 15]).Sample((engine, before, after) =>
    {
        List<ProposedLine> Proposed(int bits) => [.. EstimateProposal.Of(engine, [.. engine.ServiceItems.Where((_, n) => (bits >> n & 1) == 1).Select(Certain)], AnyPart)];
        var agreed = Proposed(before).ConvertAll(l => new AgreedLine(l.Source, l.Text, l.Charge, l.Option, l.PartCode, l.Priced!, Dropped: false));
        var sum = AgreedSum.Of(agreed, Proposed(after));

        Assert.Equal(sum.Now.Net - sum.Agreed.Net, sum.Changes.Sum(c => c.Net!.Value));
        Assert.Equal(before == after, sum.IsAsAgreed && before == after);
        Assert.Equal(EstimateSums.Of(Proposed(after).Where(l => l.Charge == EstimateCharge.Always).Select(l => l.Priced!)).Net, sum.Now.Net);
    });

    [Fact]
    public void What_a_visit_came_to_is_what_was_done_and_used()
    {
        var agreed = Agreed(EstimateDraft.Of(
            EstimateProposal.Of(Engine, [Certain(Check)], Prices), [new LineEdit("item:check", false, 100, "evening")], [new OtherLine("Carriage", null, null, 10, null, null)], Prices).Value);
        var final = FinalSum.Of(Engine, [Check], [new UsedPart("washer", 6), new UsedPart("gasket", 1), new UsedPart("magnet", 1)], agreed, Prices with { LabourPerHour = 110 });

        // Labour as agreed, parts as used; the gasket was needed after all; of the magnet no price is known.
        Assert.Equal(30 + 150 + 2.13m + 24.90m + 10, final.Sums.Net);
        Assert.Equal(["Magnet"], final.WithoutPrice);
        Assert.Equal(0, FinalSum.Of(Engine, [], [], [], Prices).Sums.Gross);
    }

    private static PriceBook AnyPart => Prices with
    {
        // Whole cents: then rounding by the line and by the sum are one.
        LabourPerHour = 60,
        Parts = Enumerable.Range(1, 4).ToDictionary(n => $"p{n}", n => new PartPrice($"p{n}", $"Part {n}", PartUnit.Piece, n, null, Standard)),
    };

    private static IReadOnlyList<AgreedLine> Agreed(IReadOnlyList<DraftLine> lines) =>
        [.. lines.Select(l => new AgreedLine(l.Source, l.Text, l.Charge, l.Option, l.PartCode, l.Priced, l.Dropped))];

    private static ChosenItem Certain(ServiceItem item) => new(item, Likelihood.Certain);

    private static ChosenItem Likely(ServiceItem item) => new(item, Likelihood.Likely);

    private static string Text(ProposedLine line) => FormattableString.Invariant($"{line.Key} {line.Quantity:0.####} {line.Unit} {line.Priced?.Net.ToString("0.00") ?? "none"}");

    private static IEnumerable<string> Quantities(IEnumerable<ProposedLine> lines) =>
        lines.GroupBy(l => l.Source).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => FormattableString.Invariant($"{g.Key} {g.Sum(l => l.Quantity):0.####}"));
}
