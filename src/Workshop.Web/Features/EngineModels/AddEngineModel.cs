using System.Text.Json;
using FluentValidation;
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

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Maker).IsGiven("who makes the engine").IsAtMost(Limits.Name);
            RuleFor(r => r.Name).IsGiven("the engine model's name").IsAtMost(Limits.Name);
            RuleFor(r => r.Specification).NotNull().WithMessage("{PropertyName} is empty: give the engine maker's specification.");
        }
    }

    public static async Task<Outcome<EngineModelBooks.Made>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!SpecificationDocument.Read(request.Specification!.Value, request.ConfirmUnusual).TryGet(out var specification, out var problem))
        {
            return problem;
        }

        return await EngineModelBooks.Add(
            db, NewId.At(clock), request.Maker!, request.Name!, request.Invented, specification, note: null, actor, clock, ct);
    }
}
