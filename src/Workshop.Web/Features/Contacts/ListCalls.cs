using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Contacts;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>Whom to call, an owner at a time, longest overdue first; see <see cref="CallList"/> for who is left out.</summary>
public static class ListCalls
{
    public sealed record Request
    {
        public string? After { get; init; }

        public int? Take { get; init; }

        /// <summary>What comes up within so many weeks; 4, where it is left out.</summary>
        public int? WithinWeeks { get; init; }

        /// <summary>Who was spoken or written to within so many days is left out; 14, where it is left out.</summary>
        public int? QuietDays { get; init; }
    }

    /// <param name="Channels">Those to which the owner has agreed.</param>
    /// <param name="Phone">Only with consent.</param>
    /// <param name="Email">Only with consent.</param>
    public sealed record Row(
        Guid OwnerId, string Owner, IReadOnlyList<ContactChannel> Channels, string? Phone, string? Email, LocalDate ComesOn, bool IsCallBack,
        Last? LastContact, IReadOnlyList<Motorcycle> Motorcycles);

    public sealed record Last(Instant At, ContactChannel Channel, ContactOutcome Outcome, LocalDate? CallBackOn, string By, string? Remark);

    /// <param name="Items">What the proposed visit does.</param>
    public sealed record Motorcycle(Guid Id, string Registration, string Maker, string Model, IReadOnlyList<DueLine> Items);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.WithinWeeks).IsWhole(0, CallRules.MostWeeks);
            RuleFor(r => r.QuietDays).IsWhole(0, CallRules.MostQuietDays);
            RuleFor(r => r.After).Must(after => string.IsNullOrEmpty(after) || TryParse(after, out _))
                .WithMessage((_, after) => $"after is \"{after}\": send what an earlier page gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var today = time.DayOf(clock.GetCurrentInstant());
        var rules = new CallRules(today, request.WithinWeeks ?? CallRules.UsualWeeks, request.QuietDays ?? CallRules.UsualQuietDays);
        var last = await LastContacts(db, ct);
        var all = CallList.Of(
            await Items(db, rules, ct),
            last.ToDictionary(c => c.Key, c => new LastContact(time.DayOf(c.Value.At), c.Value.Outcome, c.Value.CallBackOn)), rules);
        var rest = TryParse(request.After, out var after)
            ? all.Where(e => (e.ComesOn, e.OwnerId).CompareTo((after.ComesOn, after.OwnerId)) > 0).ToList()
            : all;
        var page = rest.Take(request.Take ?? Slice.Usual).ToList();
        var next = rest.Count > page.Count ? $"{Days.Write(page[^1].ComesOn)}~{page[^1].OwnerId}" : null;
        return new Slice<Row>(await Say(db, page, last, today, ct), next);
    }

    private static async Task<List<CallItem>> Items(WorkshopDbContext db, CallRules rules, CancellationToken ct)
    {
        var now = new[] { DueAdvice.First, DueAdvice.Together, DueAdvice.BroughtForward };
        var open = new[] { JobCardState.Booked, JobCardState.CheckedIn };
        return await (
            from due in db.DueItems.AsNoTracking()
            join motorcycle in db.Motorcycles on due.MotorcycleId equals motorcycle.Id
            where due.ComesOn <= rules.Until && motorcycle.OwnerId != null && now.Contains(due.Advice)
            select new CallItem(due.MotorcycleId, motorcycle.OwnerId!.Value, due.ComesOn, due.PutOffId != null)
            {
                IsRetired = motorcycle.Retired,
                HasVisit = db.JobCards.Any(c => c.MotorcycleId == motorcycle.Id && open.Contains(c.State)),
            }).ToListAsync(ct);
    }

    /// <summary>The last contact of every owner who ever had one.</summary>
    private static async Task<Dictionary<Guid, Contact>> LastContacts(WorkshopDbContext db, CancellationToken ct) =>
        await db.Contacts.FromSql($"select distinct on (person_id) * from contacts order by person_id, at desc, id desc")
            .AsNoTracking().ToDictionaryAsync(c => c.PersonId, ct);

    private static async Task<IReadOnlyList<Row>> Say(
        WorkshopDbContext db, List<CallEntry> entries, Dictionary<Guid, Contact> last, LocalDate today, CancellationToken ct)
    {
        var owners = entries.Select(e => e.OwnerId).ToList();
        var contacts = owners.Where(last.ContainsKey).Select(o => last[o]).ToList();
        var named = owners.Concat(contacts.Select(c => c.By)).ToList();
        var people = await db.People.AsNoTracking().Where(p => named.Contains(p.Id)).ToDictionaryAsync(p => p.Id, ct);
        var consents = (await db.Consents.AsNoTracking().Where(c => owners.Contains(c.PersonId) && c.WithdrawnAt == null)
            .Select(c => new { c.PersonId, c.Channel }).ToListAsync(ct)).ToLookup(c => c.PersonId, c => c.Channel);
        var remarkIds = contacts.Select(c => c.RemarkId).OfType<Guid>().ToList();
        var remarks = await db.Remarks.AsNoTracking().Where(r => remarkIds.Contains(r.Id)).ToDictionaryAsync(r => r.Id, r => r.Text, ct);
        var motorcycles = entries.SelectMany(e => e.Motorcycles).ToList();
        var items = await db.DueItems.AsNoTracking().Where(d => motorcycles.Contains(d.MotorcycleId))
            .OrderBy(d => d.ComesOn).ThenBy(d => d.ServiceItemCode).ToListAsync(ct);
        var lines = (await DueLine.Read(db, items, today, ct)).Where(IsNow).ToLookup(l => l.MotorcycleId);
        return [.. entries.Select(e => Of(e, people, [.. consents[e.OwnerId].Order()], last.GetValueOrDefault(e.OwnerId), remarks, lines))];
    }

    private static Row Of(
        CallEntry entry, Dictionary<Guid, Person> people, IReadOnlyList<ContactChannel> channels, Contact? contact,
        Dictionary<Guid, string> remarks, ILookup<Guid, DueLine> lines)
    {
        var owner = people[entry.OwnerId];
        return new Row(
            owner.Id, owner.Name, channels,
            channels.Contains(ContactChannel.Phone) ? owner.Phone : null,
            channels.Contains(ContactChannel.Email) ? owner.Email : null,
            entry.ComesOn, entry.IsCallBack,
            contact is null ? null : new Last(
                contact.At, contact.Channel, contact.Outcome, contact.CallBackOn, people[contact.By].Name,
                contact.RemarkId is { } remark ? remarks[remark] : null),
            [.. entry.Motorcycles.Select(m => (Id: m, Items: lines[m].ToList())).Where(m => m.Items.Count > 0).Select(m =>
                new Motorcycle(m.Id, m.Items[0].Registration, m.Items[0].Maker, m.Items[0].Model, m.Items))]);
    }

    internal static bool IsNow(DueLine line) => line.Advice is DueAdvice.First or DueAdvice.Together or DueAdvice.BroughtForward;

    private static bool TryParse(string? text, out (LocalDate ComesOn, Guid OwnerId) place)
    {
        place = default;
        if (text?.Split('~') is not [var day, var id]
            || !LocalDatePattern.Iso.Parse(day).TryGetValue(default, out var comesOn)
            || !Guid.TryParse(id, CultureInfo.InvariantCulture, out var ownerId))
        {
            return false;
        }

        place = (comesOn, ownerId);
        return true;
    }
}
