using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>
/// Name, time zone and the usual minutes of phases. Visits stay at the instants at which they are booked: where another zone
/// puts them outside the opening hours, the answer names them.
/// </summary>
public static class EditWorkshop
{
    public const int MostMinutes = 480;

    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public string? TimeZone { get; init; }

        /// <summary>Under which the workshop is called; stands in letters and e-mails.</summary>
        public string? Phone { get; init; }

        public int? ArrivalMinutes { get; init; }

        public int? WarmRunMinutes { get; init; }

        public int? TestRideMinutes { get; init; }

        public int? HandOverMinutes { get; init; }
    }

    /// <param name="Standing">Booked visits that now lie outside the hours, or in an absence.</param>
    public sealed record Answer(uint RowVersion, IReadOnlyList<StandingVisit> Standing) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Name).IsGiven("what the workshop is called").IsAtMost(Limits.Name);
            RuleFor(r => r.TimeZone).IsGiven("the workshop's zone of the tz database").IsTimeZone();
            RuleFor(r => r.Phone).IsAtMost(Limits.Phone);
            RuleFor(r => r.ArrivalMinutes).NotNull().WithMessage("arrivalMinutes is empty: give minutes, 0 where there is no such phase.").IsWhole(0, MostMinutes);
            RuleFor(r => r.WarmRunMinutes).NotNull().WithMessage("warmRunMinutes is empty: give minutes, 0 where there is no such phase.").IsWhole(0, MostMinutes);
            RuleFor(r => r.TestRideMinutes).NotNull().WithMessage("testRideMinutes is empty: give minutes, 0 where there is no such phase.").IsWhole(0, MostMinutes);
            RuleFor(r => r.HandOverMinutes).NotNull().WithMessage("handOverMinutes is empty: give minutes, 0 where there is no such phase.").IsWhole(0, MostMinutes);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.SingleAsync(ct);
        (profile.Name, profile.TimeZone, profile.Phone) = (request.Name!, request.TimeZone!, request.Phone);
        (profile.ArrivalMinutes, profile.WarmRunMinutes) = (request.ArrivalMinutes!.Value, request.WarmRunMinutes!.Value);
        (profile.TestRideMinutes, profile.HandOverMinutes) = (request.TestRideMinutes!.Value, request.HandOverMinutes!.Value);
        var version = await Save(db, profile, request.RowVersion!.Value, ct);
        return new Answer(version, await StandingVisits.Read(db, resourceId: null, clock.GetCurrentInstant(), ct));
    }

    /// <summary>Opening hours are rows of their own: the profile's row is written in any case, so that its version covers them.</summary>
    internal static async Task<uint> Save(WorkshopDbContext db, WorkshopProfile profile, uint version, CancellationToken ct)
    {
        var row = db.Entry(profile);
        row.State = EntityState.Modified;
        var property = row.Property<uint>(MappingExtensions.RowVersion);
        property.OriginalValue = version;
        await db.SaveChangesAsync(ct);
        return property.CurrentValue;
    }
}
