using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>Engine models by maker and name, a page at a time: the next page starts after the last id of this one.</summary>
public static class ListEngineModels
{
    public sealed record Request(Guid? After = null, int? Take = null);

    /// <param name="Engines">Engines of this model that are in the books.</param>
    public sealed record Row(Guid Id, string Maker, string Name, bool Invented, int CurrentVersion, Instant VersionOf, int Engines);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Take).IsPageSize();
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var models = db.EngineModels.AsNoTracking();
        if (request.After is { } after)
        {
            var last = await models.SingleOrDefaultAsync(m => m.Id == after, ct);
            if (last is null)
            {
                return Problem.Impossible("after-unknown", "after", $"after is {after}: no engine model has it; send what next said.");
            }

            models = models.Where(m => string.Compare(m.Maker, last.Maker) > 0
                || (m.Maker == last.Maker && string.Compare(m.Name, last.Name) > 0));
        }

        var rows = from model in models
                   join version in db.EngineModelVersions
                       on new { Model = model.Id, Version = model.CurrentVersion } equals new { Model = version.EngineModelId, version.Version }
                   orderby model.Maker, model.Name
                   select new Row(model.Id, model.Maker, model.Name, model.Invented, model.CurrentVersion, version.CreatedAt,
                       db.Engines.Count(e => e.EngineModelId == model.Id));
        return await rows.ToSlice(request.Take, r => r.Id.ToString(), ct);
    }
}
