using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>The share of lead times without a shortage that the workshop wants of its stores, where a part says nothing else.</summary>
public static class GetServiceLevel
{
    public sealed record Request;

    /// <param name="RowVersion">Of the workshop's profile.</param>
    public sealed record Answer(double ServiceLevel, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        await db.WorkshopProfiles.AsNoTracking()
            .Select(p => new Answer(p.ServiceLevel, EF.Property<uint>(p, MappingExtensions.RowVersion))).SingleAsync(ct);
}

/// <summary>Changes it.</summary>
public static class SetServiceLevel
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>0.5 to 0.999.</summary>
        public decimal? ServiceLevel { get; init; }
    }

    public sealed record Answer(double ServiceLevel, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.ServiceLevel).IsGiven("the share of lead times without a shortage, such as 0.95").IsServiceLevel();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.SingleAsync(ct);
        profile.ServiceLevel = (double)request.ServiceLevel!.Value;
        return new Answer(profile.ServiceLevel, await Versions.Save(db, profile, request.RowVersion!.Value, ct));
    }
}
