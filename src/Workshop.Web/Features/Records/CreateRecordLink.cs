using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

/// <summary>
/// Makes a link under which the owner reads one record without a sign-in, for so many days. The link is said once: what is kept of
/// its secret is a digest.
/// </summary>
public static class CreateRecordLink
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Left out: <see cref="RecordLink.UsualDays"/>.</summary>
        public int? Days { get; init; }
    }

    public sealed record Answer(Guid Id, int JobCardNumber, Instant ExpiresAt)
    {
        /// <summary>Never stored: a key that comes back makes nothing new, and shows no secret.</summary>
        [JsonIgnore]
        public string? Path { get; init; }
    }

    /// <summary>What the caller sees.</summary>
    /// <param name="Path">The address below the service's own, secret; absent when the same key was sent before.</param>
    public sealed record Shown(Guid Id, int JobCardNumber, Instant ExpiresAt, string? Path);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Days).IsLinkLife();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if ((await GetRecord.Handle(new GetRecord.Request(request.Number), db, actor, clock, ct)).Problem is { } problem)
        {
            return problem;
        }

        var secret = LinkSecret.New();
        var now = clock.GetCurrentInstant();
        var link = new RecordLink
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, SecretDigest = LinkSecret.DigestOf(secret), CreatedBy = actor.PersonId, CreatedAt = now,
            ExpiresAt = now + Duration.FromDays(request.Days ?? RecordLink.UsualDays),
        };
        db.RecordLinks.Add(link);
        await db.SaveChangesAsync(ct);
        return new Answer(link.Id, link.JobCardNumber, link.ExpiresAt) { Path = RecordAddress.Of(secret) };
    }

    public static Shown Show(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return new Shown(answer.Id, answer.JobCardNumber, answer.ExpiresAt, answer.Path);
    }

    internal static IRuleBuilderOptions<T, int?> IsLinkLife<T>(this IRuleBuilder<T, int?> rule) => rule
        .InclusiveBetween(1, RecordLink.MostDays)
        .WithMessage($"{{PropertyName}} is {{PropertyValue}}: 1 to {RecordLink.MostDays} days are allowed.");
}
