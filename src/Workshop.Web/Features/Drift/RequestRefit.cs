using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>Asks for a refit of an engine model; the worker takes it up within seconds and its progress can be asked for.</summary>
public static class RequestRefit
{
    public sealed record Request(Guid EngineModelId);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.EngineModelId).IsGiven("the id of an engine model");
    }

    public static async Task<Outcome<GetDriftFit.Progress>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.EngineModels.AnyAsync(m => m.Id == request.EngineModelId, ct))
        {
            return Problem.NotFound($"Engine model {request.EngineModelId}");
        }

        await Refits.Request(db, [request.EngineModelId], clock, ct);
        return GetDriftFit.ProgressOf(await db.DriftRefits.AsNoTracking().SingleAsync(r => r.EngineModelId == request.EngineModelId, ct));
    }
}
