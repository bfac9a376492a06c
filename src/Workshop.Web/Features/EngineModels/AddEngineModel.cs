using System.Text.Json;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>Takes an engine model into the books, with the first version of its specification.</summary>
public static class AddEngineModel
{
    public sealed record Request
    {
        public string? Maker { get; init; }

        public string? Name { get; init; }

        /// <summary>Belongs to no real engine.</summary>
        public bool Invented { get; init; }

        /// <summary>In the form in which GET /api/v1/engine-models/{id} answers one.</summary>
        public JsonElement? Specification { get; init; }

        /// <summary>The maker's document really says what looks unusual here.</summary>
        public bool ConfirmUnusual { get; init; }
    }

    public sealed record Answer(Guid Id, int Version);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Maker).IsGiven("who makes the engine").IsAtMost(Limits.Name);
            RuleFor(r => r.Name).IsGiven("the engine model's name").IsAtMost(Limits.Name);
            RuleFor(r => r.Specification).NotNull().WithMessage("{PropertyName} is empty: give the engine maker's specification.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!SpecificationDocument.Read(request.Specification!.Value, request.ConfirmUnusual).TryGet(out var specification, out var problem))
        {
            return problem;
        }

        if (await db.EngineModels.AnyAsync(m => m.Maker == request.Maker && m.Name == request.Name, ct))
        {
            return Problem.Conflict("engine-model-exists",
                $"name is \"{request.Name}\": {request.Maker} has an engine model of that name already; add a version to it.");
        }

        var model = new EngineModel
        {
            Id = NewId.At(clock), Maker = request.Maker!, Name = request.Name!, Invented = request.Invented, CurrentVersion = 1,
        };
        db.EngineModels.Add(model);
        db.EngineModelVersions.Add(new EngineModelVersion
        {
            Id = NewId.At(clock), EngineModelId = model.Id, Version = model.CurrentVersion, Specification = specification,
            CreatedBy = actor.PersonId, CreatedAt = clock.GetCurrentInstant(),
        });
        await db.SaveChangesAsync(ct);
        return new Answer(model.Id, model.CurrentVersion);
    }
}
