using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>What the workshop answers to "used shims?"; plans, the box and every fitting obey it.</summary>
public static class GetUsedShimPolicy
{
    public sealed record Request;

    public sealed record Answer(UsedShimPolicy UsedShims);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await db.UsedShimPolicy(ct));
}

/// <summary>Sets it.</summary>
public static class SetUsedShimPolicy
{
    public sealed record Request
    {
        public UsedShimPolicy? UsedShims { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.UsedShims).IsGiven("never, ownMachineOnly or yes");
    }

    public static async Task<Outcome<GetUsedShimPolicy.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.SingleAsync(ct);
        profile.UsedShims = request.UsedShims!.Value;
        await db.SaveChangesAsync(ct);
        return new GetUsedShimPolicy.Answer(profile.UsedShims);
    }
}
