using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>An owner agrees to be reached by a channel: when and how that was said is kept.</summary>
public static class GiveConsent
{
    public sealed record Request
    {
        public Guid? PersonId { get; init; }

        public ContactChannel? Channel { get; init; }

        /// <summary>The day on which it was given; today, where it is left out.</summary>
        public LocalDate? GivenOn { get; init; }

        /// <summary>"signed at check-in", "said on the telephone".</summary>
        public string? HowGiven { get; init; }
    }

    public sealed record Answer(Guid Id, ContactChannel Channel, LocalDate GivenOn);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PersonId).IsGiven("whose consent it is");
            RuleFor(r => r.Channel).IsGiven("phone, email or letter");
            RuleFor(r => r.HowGiven).IsGiven("how it was given").IsAtMost(Consent.LongestHow);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await CustomerRows.Lock(db, request.PersonId, "personId", ct)).TryGet(out var person, out var problem))
        {
            return problem;
        }

        var channel = request.Channel!.Value;
        if ((await CustomerRows.Agreed(db, person.Id, ct)).Contains(channel))
        {
            return Problem.Conflict("consent-stands", $"The consent to be reached by {channel.Spoken()} stands already; withdraw it before another is entered.");
        }

        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        if (request.GivenOn > today)
        {
            return Problem.Impossible("given-later", "givenOn",
                $"givenOn is {Days.Write(request.GivenOn.Value)}: a day not after today, {Days.Write(today)}, is allowed.");
        }

        var consent = new Consent
        {
            Id = NewId.At(clock),
            PersonId = person.Id,
            Channel = channel,
            GivenOn = request.GivenOn ?? today,
            HowGiven = request.HowGiven!,
            EnteredBy = actor.PersonId,
            EnteredAt = now,
        };
        db.Consents.Add(consent);
        await db.SaveChangesAsync(ct);
        return new Answer(consent.Id, channel, consent.GivenOn);
    }
}
