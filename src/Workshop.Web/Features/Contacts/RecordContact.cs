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

/// <summary>Somebody spoke to an owner, or tried to. It is written down whatever consent stands: it has happened.</summary>
public static class RecordContact
{
    public sealed record Request
    {
        public Guid? PersonId { get; init; }

        /// <summary>What it was about, where it was about one motorcycle.</summary>
        public Guid? MotorcycleId { get; init; }

        public ContactChannel? Channel { get; init; }

        /// <summary>When; now, where it is left out.</summary>
        public Instant? At { get; init; }

        public ContactOutcome? Outcome { get; init; }

        /// <summary>Of one who asked to be called back: from which day on. Left out: at once.</summary>
        public LocalDate? CallBackOn { get; init; }

        public string? Remark { get; init; }
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PersonId).IsGiven("who was spoken to");
            RuleFor(r => r.Channel).IsGiven("phone, email or letter");
            RuleFor(r => r.Outcome).IsGiven("what came of it");
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
            RuleFor(r => r.CallBackOn).Null().When(r => r.Outcome != ContactOutcome.CallsBack)
                .WithMessage("{PropertyName} is given, but nobody asked to be called back: leave it empty, or say that they did.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await CustomerRows.Lock(db, request.PersonId, "personId", ct)).TryGet(out var person, out var problem))
        {
            return problem;
        }

        if (request.MotorcycleId is { } motorcycle && !await db.Motorcycles.AnyAsync(m => m.Id == motorcycle, ct))
        {
            return Problem.Impossible("motorcycle-unknown", "motorcycleId", $"motorcycleId is {motorcycle}: no motorcycle has it.");
        }

        var now = clock.GetCurrentInstant();
        var time = await WorkshopTimes.Read(db, ct);
        if (request.At > now)
        {
            return Problem.Impossible("contact-later", "at", $"at is {time.Say(request.At.Value)}: a time not after now, {time.Say(now)}, is allowed.");
        }

        if (request.CallBackOn < time.DayOf(now))
        {
            return Problem.Impossible("call-back-past", "callBackOn",
                $"callBackOn is {Days.Write(request.CallBackOn.Value)}: today, {Days.Write(time.DayOf(now))}, or a later day is allowed.");
        }

        var remark = string.IsNullOrWhiteSpace(request.Remark)
            ? null
            : new Remark { Id = NewId.At(clock), Text = request.Remark, WrittenBy = actor.PersonId, WrittenAt = now };
        if (remark is not null)
        {
            db.Remarks.Add(remark);
        }

        var contact = new Contact
        {
            Id = NewId.At(clock),
            PersonId = person.Id,
            MotorcycleId = request.MotorcycleId,
            Channel = request.Channel!.Value,
            At = request.At ?? now,
            By = actor.PersonId,
            Outcome = request.Outcome!.Value,
            CallBackOn = request.CallBackOn,
            RemarkId = remark?.Id,
            EnteredAt = now,
        };
        db.Contacts.Add(contact);
        await db.SaveChangesAsync(ct);
        return new Answer(contact.Id);
    }
}
