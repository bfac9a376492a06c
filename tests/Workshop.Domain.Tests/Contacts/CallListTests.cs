using CsCheck;
using NodaTime;
using Workshop.Domain.Contacts;

namespace Workshop.Domain.Tests.Contacts;

public class CallListTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);
    private static readonly CallRules Rules = new(Today);
    private static readonly Guid Olga = Guid.Parse("00000000-0000-0000-0000-0000000000a1");
    private static readonly Guid Otto = Guid.Parse("00000000-0000-0000-0000-0000000000a2");
    private static readonly Dictionary<Guid, LastContact> Nobody = [];

    [Fact]
    public void Owners_come_by_how_long_they_are_overdue_each_once_with_all_motorcycles()
    {
        var list = CallList.Of([Item(1, Otto, 20), Item(2, Olga, -5), Item(3, Otto, -40), Item(3, Otto, -60), Item(4, Olga, 28)], Nobody, Rules);

        Assert.Equal([Otto, Olga], list.Select(e => e.OwnerId));
        Assert.Equal([Id(3), Id(1)], list[0].Motorcycles);
        Assert.Equal(Today.PlusDays(-60), list[0].ComesOn);
        Assert.Equal([Id(2), Id(4)], list[1].Motorcycles);
    }

    [Theory]
    [InlineData(28, true)]
    [InlineData(29, false)]
    public void What_comes_up_within_the_weeks_counts_to_the_day(int days, bool called) =>
        Assert.Equal(called, CallList.Counts(Item(1, Olga, days), Rules));

    [Fact]
    public void Retired_and_booked_motorcycles_and_what_is_put_off_are_no_reason_to_call()
    {
        Assert.False(CallList.Counts(Item(1, Olga, -5) with { IsRetired = true }, Rules));
        Assert.False(CallList.Counts(Item(1, Olga, -5) with { HasVisit = true }, Rules));
        Assert.False(CallList.Counts(Item(1, Olga, 1) with { IsPutOff = true }, Rules));
        Assert.True(CallList.Counts(Item(1, Olga, 0) with { IsPutOff = true }, Rules));
    }

    [Theory]
    [InlineData(ContactOutcome.Reached, 13, false)]
    [InlineData(ContactOutcome.Reached, 14, true)]
    [InlineData(ContactOutcome.Written, 13, false)]
    [InlineData(ContactOutcome.Declined, 0, false)]
    [InlineData(ContactOutcome.NotReached, 0, false)]
    [InlineData(ContactOutcome.NotReached, 1, true)]
    [InlineData(ContactOutcome.CallsBack, 0, true)]
    public void Who_was_spoken_to_is_left_in_peace_unless_a_call_back_was_asked_for(ContactOutcome outcome, int daysAgo, bool called) =>
        Assert.Equal(called, CallList.MayBeCalled(new LastContact(Today.PlusDays(-daysAgo), outcome), Rules));

    [Fact]
    public void A_call_back_waits_for_its_day()
    {
        Assert.False(CallList.MayBeCalled(new LastContact(Today.PlusDays(-20), ContactOutcome.CallsBack, Today.PlusDays(1)), Rules));
        Assert.True(CallList.MayBeCalled(new LastContact(Today.PlusDays(-1), ContactOutcome.CallsBack, Today), Rules));
        Assert.True(CallList.Of([Item(1, Olga, 1)], new Dictionary<Guid, LastContact> { [Olga] = new(Today, ContactOutcome.CallsBack) }, Rules)[0].IsCallBack);
    }

    /// <summary>Beside the same rule said once more, item by item: nobody is lost, nobody is twice, and the order stands.</summary>
    [Fact]
    public void Nobody_who_is_to_be_called_is_missing_or_twice()
    {
        var item = Gen.Select(Gen.Int[1, 6], Gen.Int[-80, 60], Gen.Bool, Gen.Bool, Gen.Bool, (m, days, off, visit, retired) =>
            Item(m, m % 2 == 0 ? Olga : Otto, days) with { IsPutOff = off, HasVisit = visit, IsRetired = retired });
        Gen.Select(item.Array[0, 12], Gen.Int[0, 30], Gen.Enum<ContactOutcome>()).Sample((items, ago, outcome) =>
        {
            var contacts = new Dictionary<Guid, LastContact> { [Olga] = new(Today.PlusDays(-ago), outcome) };
            var list = CallList.Of(items, contacts, Rules);
            var expected = items.Where(i => CallList.Counts(i, Rules) && (i.OwnerId == Otto || CallList.MayBeCalled(contacts[Olga], Rules))).ToList();

            Assert.Equal(expected.Select(i => i.MotorcycleId).Distinct().Order(), list.SelectMany(e => e.Motorcycles).Order());
            Assert.Equal(list.Select(e => e.OwnerId).Distinct(), list.Select(e => e.OwnerId));
            Assert.Equal(list.Select(e => e.ComesOn).Order(), list.Select(e => e.ComesOn));
            Assert.All(list, e => Assert.Equal(expected.Where(i => i.OwnerId == e.OwnerId).Min(i => i.ComesOn), e.ComesOn));
        });
    }

    private static CallItem Item(int motorcycle, Guid owner, int days) => new(Id(motorcycle), owner, Today.PlusDays(days), IsPutOff: false);

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 9]);
}
