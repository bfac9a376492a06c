using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Xunit;

namespace Workshop.Domain.Tests.Stores;

public class LotRulesTests
{
    private static readonly LocalDate Today = new(2026, 1, 31);

    [Fact]
    public void A_shelf_life_of_months_ends_on_the_same_day_or_on_the_last_of_a_shorter_month()
    {
        Assert.Equal(new LocalDate(2026, 2, 28), Of(months: 1, code: "L")!.ExpiresOn);
        Assert.Equal(new LocalDate(2027, 1, 31), Of(months: 12, code: "L")!.ExpiresOn);
        Assert.Equal(new LocalDate(2026, 3, 1), Of(months: 12, code: "L", expiresOn: new LocalDate(2026, 3, 1))!.ExpiresOn);
    }

    [Fact]
    public void A_part_that_keeps_for_ever_may_come_with_a_lot_or_without()
    {
        Assert.Null(Of(months: null, code: null));
        Assert.Null(Of(months: null, code: "L")!.ExpiresOn);
    }

    [Fact]
    public void The_last_day_itself_is_good_and_the_day_after_is_not()
    {
        Assert.NotNull(Of(months: 12, code: "L", expiresOn: Today));
        Assert.True(Try(12, "L", Today.PlusDays(-1)).IsRefused);
    }

    [Fact]
    public void A_known_lot_has_one_last_day()
    {
        var known = new StockLot { Id = Guid.CreateVersion7(), PartId = Guid.CreateVersion7(), Code = "L", ExpiresOn = Today.PlusDays(5), ReceivedOn = Today };

        Assert.Same(known, Try(12, "L", null, known).Value);
        Assert.Same(known, Try(12, "L", Today.PlusDays(5), known).Value);
        Assert.Contains("a lot has one last day", Try(12, "L", Today.PlusDays(6), known).Problem!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shim_has_no_lot_and_a_last_day_needs_one()
    {
        Assert.Equal("lotCode", Assert.Single(Try(null, "L", null, kind: PartKind.Shim).Problem!.Faults).Field);
        Assert.Equal("expiresOn", Assert.Single(Try(null, null, Today).Problem!.Faults).Field);
        Assert.Equal("lotCode", Assert.Single(Try(6, null, null).Problem!.Faults).Field);
    }

    private static StockLot? Of(int? months, string? code, LocalDate? expiresOn = null) => Try(months, code, expiresOn).Value;

    private static Outcome<StockLot?> Try(int? months, string? code, LocalDate? expiresOn, StockLot? known = null, PartKind kind = PartKind.Sealant) => LotRules.Of(
        new Part { Id = Guid.CreateVersion7(), Code = "p", Name = "P", Kind = kind, Unit = PartUnit.Piece, ShelfLifeMonths = months },
        code, expiresOn, known, Guid.CreateVersion7(), Today);
}
