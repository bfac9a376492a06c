using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Web.Features.Contacts;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// A few owners who can be reached, and what came of it. Numbers and addresses are invented: they begin with 000 or end with
/// example.org (RFC 2606), and the demo has no mail server, so that nothing ever leaves it.
/// </summary>
internal sealed class DemoContacts(WorkshopDbContext db, DemoStaff staff)
{
    private const string Advisor = "greta";
    private const int Reachable = 14;

    private static readonly (int DaysAgo, ContactOutcome Outcome, string Remark)[] Said =
    [
        (1, ContactOutcome.NotReached, "Rang twice, nobody answered."),
        (3, ContactOutcome.CallsBack, "Was at work; asked to be called in the evening."),
        (5, ContactOutcome.Reached, "Wants to think about it until the weekend."),
        (40, ContactOutcome.Declined, "Away at the time, asked again in spring."),
    ];

    public async Task Write(Instant now, CancellationToken ct)
    {
        var due = await (
            from visit in db.DueVisits.AsNoTracking()
            join motorcycle in db.Motorcycles on visit.MotorcycleId equals motorcycle.Id
            where motorcycle.OwnerId != null && !db.JobCards.Any(c => c.MotorcycleId == motorcycle.Id && c.StartsAt > now)
            orderby visit.ComesOn, visit.MotorcycleId
            select new { Motorcycle = motorcycle.Id, Owner = motorcycle.OwnerId!.Value }).Take(Reachable).ToListAsync(ct);
        var today = staff.Time.DayOf(now);
        for (var i = 0; i < due.Count; i++)
        {
            staff.SetClock(today.PlusDays(-60), 10, i);
            await AddConsents(due[i].Owner, i, ct);
        }

        // Every second one: the rest has consents, but was not spoken to yet.
        for (var i = 0; i < Said.Length && 2 * i < due.Count; i++)
        {
            staff.SetClock(today.PlusDays(-Said[i].DaysAgo), 11, i);
            await staff.Do(Advisor, new RecordContact.Request
            {
                PersonId = due[2 * i].Owner, MotorcycleId = due[2 * i].Motorcycle, Channel = ContactChannel.Phone,
                Outcome = Said[i].Outcome, Remark = Said[i].Remark,
            }, RecordContact.Handle, ct);
        }

        staff.Clock.Now = now;
        if (due.Count > 1)
        {
            await Draft(due[1].Motorcycle, ct);
        }
    }

    private async Task AddConsents(Guid owner, int index, CancellationToken ct)
    {
        var person = await db.People.SingleAsync(p => p.Id == owner, ct);
        person.Phone = $"000 {1_001 + (index * 17)}";
        person.Email = $"{person.Name.ToLowerInvariant().Replace(' ', '.')}@example.org";
        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
        var channels = Enum.GetValues<ContactChannel>().Where((_, i) => (index + i) % 3 != 0 || index % 5 == 0);
        foreach (var channel in channels)
        {
            await staff.Do(Advisor, new GiveConsent.Request { PersonId = owner, Channel = channel, HowGiven = "signed at check-in" }, GiveConsent.Handle, ct);
        }
    }

    /// <summary>One letter that waits to be copied.</summary>
    private async Task Draft(Guid motorcycle, CancellationToken ct)
    {
        var draft = await staff.Look(Advisor, new DraftMessage.Request(motorcycle, null), DraftMessage.Handle, ct);
        if (draft.Agreed)
        {
            await staff.Do(Advisor, new QueueMessage.Request
            {
                MotorcycleId = motorcycle, Channel = draft.Channel, Subject = draft.Subject, Body = draft.Body,
            }, QueueMessage.Handle, ct);
        }
    }
}
