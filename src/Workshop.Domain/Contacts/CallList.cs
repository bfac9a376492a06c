using NodaTime;

namespace Workshop.Domain.Contacts;

/// <summary>An item that a motorcycle is due for and that the proposed visit does.</summary>
/// <param name="ComesOn">When it comes up: when it is expected, or until when it was put off.</param>
/// <param name="IsPutOff">Somebody decided to do it later.</param>
public sealed record CallItem(Guid MotorcycleId, Guid OwnerId, LocalDate ComesOn, bool IsPutOff)
{
    /// <summary>The motorcycle has a visit that is booked or under way.</summary>
    public bool HasVisit { get; init; }

    /// <summary>It is off the road.</summary>
    public bool IsRetired { get; init; }
}

/// <summary>The last time that an owner was spoken or written to.</summary>
/// <param name="On">The workshop's day.</param>
/// <param name="Outcome">What came of it.</param>
/// <param name="CallBackOn">Of one who asked to be called back: from when on.</param>
public sealed record LastContact(LocalDate On, ContactOutcome Outcome, LocalDate? CallBackOn = null);

/// <summary>Who is to be called.</summary>
/// <param name="Today">The workshop's day.</param>
/// <param name="WithinWeeks">What comes up within so many weeks counts; 0 or more.</param>
/// <param name="QuietDays">Who was spoken or written to within so many days is left in peace; 0 or more.</param>
public sealed record CallRules(LocalDate Today, int WithinWeeks = CallRules.UsualWeeks, int QuietDays = CallRules.UsualQuietDays)
{
    /// <summary>Our own choices, as are the largest.</summary>
    public const int UsualWeeks = 4;

    public const int UsualQuietDays = 14;
    public const int MostWeeks = 52;
    public const int MostQuietDays = 365;

    /// <summary>The last day that counts.</summary>
    public LocalDate Until => Today.PlusWeeks(WithinWeeks);
}

/// <summary>One owner to call, with every motorcycle that the call is about, the most overdue first.</summary>
/// <param name="ComesOn">When the first of them comes up.</param>
/// <param name="IsCallBack">The owner asked for it.</param>
public sealed record CallEntry(Guid OwnerId, LocalDate ComesOn, IReadOnlyList<Guid> Motorcycles, bool IsCallBack);

/// <summary>
/// The owners whose motorcycles are due soon or overdue, with no visit booked, not off the road, for something that was not put off,
/// and who were not spoken or written to lately, unless they asked to be called back. Longest overdue first.
/// </summary>
public static class CallList
{
    /// <summary>Who is to be called on a day.</summary>
    /// <param name="items">Of all motorcycles with an owner, in any order.</param>
    /// <param name="contacts">The last one by owner; none where there never was any.</param>
    /// <param name="rules">How far ahead, and for how long owners are left in peace.</param>
    public static IReadOnlyList<CallEntry> Of(
        IEnumerable<CallItem> items, IReadOnlyDictionary<Guid, LastContact> contacts, CallRules rules)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(contacts);
        ArgumentNullException.ThrowIfNull(rules);
        return [.. items
            .Where(item => Counts(item, rules))
            .GroupBy(item => item.OwnerId)
            .Where(owner => MayBeCalled(contacts.GetValueOrDefault(owner.Key), rules))
            .Select(owner => Entry(owner.Key, owner, contacts.GetValueOrDefault(owner.Key)))
            .OrderBy(entry => entry.ComesOn).ThenBy(entry => entry.OwnerId)];
    }

    /// <summary>Whether an item is a reason to call. What was put off is none before its day.</summary>
    public static bool Counts(CallItem item, CallRules rules)
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(rules);
        return !item.IsRetired && !item.HasVisit && item.ComesOn <= rules.Until && (!item.IsPutOff || item.ComesOn <= rules.Today);
    }

    /// <summary>
    /// Whether an owner may be called again: not while left in peace, but from the next day on where nobody answered, and from the
    /// day on that was asked for where a call back was.
    /// </summary>
    public static bool MayBeCalled(LastContact? last, CallRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        return last switch
        {
            null => true,
            { Outcome: ContactOutcome.CallsBack } => (last.CallBackOn ?? last.On) <= rules.Today,
            { Outcome: ContactOutcome.NotReached } => last.On < rules.Today || rules.QuietDays == 0,
            _ => last.On.PlusDays(rules.QuietDays) <= rules.Today,
        };
    }

    private static CallEntry Entry(Guid owner, IEnumerable<CallItem> items, LastContact? last)
    {
        var motorcycles = items.GroupBy(i => i.MotorcycleId)
            .Select(m => (Id: m.Key, ComesOn: m.Min(i => i.ComesOn)))
            .OrderBy(m => m.ComesOn).ThenBy(m => m.Id)
            .ToArray();
        return new CallEntry(owner, motorcycles[0].ComesOn, [.. motorcycles.Select(m => m.Id)], last?.Outcome == ContactOutcome.CallsBack);
    }
}
