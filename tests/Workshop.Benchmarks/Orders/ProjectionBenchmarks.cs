using BenchmarkDotNet.Attributes;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;

namespace Workshop.Benchmarks.Orders;

/// <summary>What the domain itself takes of the bar: 500 visits on 60 parts, and the proposals of 60 parts with a year of weeks.</summary>
[MemoryDiagnoser]
public class ProjectionBenchmarks
{
    private const int Parts = 60;
    private const int Visits = 500;

    private static readonly LocalDate Today = new(2026, 3, 2);
    private static readonly NoticeOfVisits Notice = new([.. Enumerable.Range(0, 400).Select(i => i % 23)]);

    private readonly List<BookedNeed[]> needs = [];
    private readonly Coming[] coming = [.. Enumerable.Range(1, 6).Select(i => new Coming(Today.PlusDays(9 * i), 20, Today.PlusDays((9 * i) - 1)))];
    private readonly LotThere[] lots = [new(Today.PlusDays(40), 20, 10, 0), new(null, 20, 10, 0)];
    private readonly IssueHistory issues = new([.. Enumerable.Range(0, 52).Select(i => (decimal)(i * 7 % 5))]);

    [GlobalSetup]
    public void Book() => needs.AddRange(Enumerable.Range(0, Parts).Select(part => Enumerable.Range(0, Visits / 3)
        .Select(i => Need(i, Today.PlusDays(((i * 13) + part) % 90))).ToArray()));

    [Benchmark(Baseline = true)]
    public int Projected() => needs.Sum(n => ProjectedStock.Of(new DateInterval(Today, Today.PlusDays(90)), lots, coming, n).ShortVisits.Count);

    [Benchmark]
    public decimal Proposed() => needs.Sum(n => OrderProposal.For(
        new PartToOrder(
            new Part { Id = Guid.Empty, Code = "ring", Name = "Ring", Kind = PartKind.SealingRing, Unit = PartUnit.Piece },
            new PartSupply { Id = Guid.Empty, PartId = Guid.Empty, SupplierId = Guid.Empty, PackQuantity = 10 },
            40, 10, 20, n, issues, 0.95, 6, 1.5),
        Notice, new OrderDays(Today, Today.PlusDays(7), Today.PlusDays(37))).Quantity);

    private static BookedNeed Need(int i, LocalDate on) => new(
        i + 1, on.AtMidnight().InUtc().ToInstant(), on, 1 + (i % 3), i % 2, i % 2 == 0 ? [] : [new LotQuantity(null, 1)]);
}
