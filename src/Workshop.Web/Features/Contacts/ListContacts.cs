using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>When an owner was spoken or written to, newest first.</summary>
public static class ListContacts
{
    public sealed record Request(Guid? PersonId, string? After = null, int? Take = null);

    public sealed record Row(
        Guid Id, Instant At, ContactChannel Channel, ContactOutcome Outcome, LocalDate? CallBackOn, string By, Guid? MotorcycleId,
        string? Registration, string? Remark, Guid? MessageId);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PersonId).IsGiven("who was spoken to");
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.After).Must(after => string.IsNullOrEmpty(after) || RowPlace.TryParse(after, out _))
                .WithMessage((_, after) => $"after is \"{after}\": send what an earlier page gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var contacts = db.Contacts.AsNoTracking().Where(c => c.PersonId == request.PersonId);
        if (RowPlace.TryParse(request.After, out var after))
        {
            contacts = contacts.Where(c => EF.Functions.LessThan(ValueTuple.Create(c.At, c.Id), ValueTuple.Create(after.At, after.Id)));
        }

        return await (
            from contact in contacts
            join person in db.People on contact.By equals person.Id
            join motorcycle in db.Motorcycles on contact.MotorcycleId equals motorcycle.Id into motorcycles
            from about in motorcycles.DefaultIfEmpty()
            join remark in db.Remarks on contact.RemarkId equals remark.Id into remarks
            from said in remarks.DefaultIfEmpty()
            orderby contact.At descending, contact.Id descending
            select new Row(
                contact.Id, contact.At, contact.Channel, contact.Outcome, contact.CallBackOn, person.Name, contact.MotorcycleId,
                about!.Registration, said!.Text, contact.MessageId))
            .ToSlice(request.Take, row => new RowPlace(row.At, row.Id).ToString(), ct);
    }
}

/// <summary>Where a page of a list by time ended, written as <c>2026-05-01T08:00:00Z~id</c>.</summary>
internal readonly record struct RowPlace(Instant At, Guid Id)
{
    private const char Between = '~';

    public static bool TryParse(string? text, out RowPlace place)
    {
        place = default;
        if (text?.Split(Between) is not [var at, var id]
            || !InstantPattern.ExtendedIso.Parse(at).TryGetValue(default, out var instant)
            || !Guid.TryParse(id, CultureInfo.InvariantCulture, out var row))
        {
            return false;
        }

        place = new RowPlace(instant, row);
        return true;
    }

    public override string ToString() => $"{InstantPattern.ExtendedIso.Format(At)}{Between}{Id}";
}
