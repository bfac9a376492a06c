using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>What an owner has agreed to, standing first, then what was withdrawn, newest first.</summary>
public static class ListConsents
{
    public sealed record Request(Guid? PersonId);

    /// <param name="HowGiven">Blank once the person was erased.</param>
    public sealed record Row(
        Guid Id, ContactChannel Channel, LocalDate GivenOn, string HowGiven, string EnteredBy, Instant? WithdrawnAt, uint RowVersion);

    public sealed record Answer(IReadOnlyList<Row> Consents);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.PersonId).IsGiven("whose consent it is");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var rows = await (
            from consent in db.Consents.AsNoTracking()
            join person in db.People on consent.EnteredBy equals person.Id
            where consent.PersonId == request.PersonId
            orderby consent.WithdrawnAt != null, consent.EnteredAt descending, consent.Id
            select new Row(
                consent.Id, consent.Channel, consent.GivenOn, consent.HowGiven, person.Name, consent.WithdrawnAt,
                EF.Property<uint>(consent, MappingExtensions.RowVersion))).ToListAsync(ct);
        return new Answer(rows);
    }
}
