using System.Text.Json;
using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>
/// Adds a version to an engine model. New job cards are booked with it; those that are open keep theirs. What is due and what
/// is expected of its engines is written anew, since intervals and limits may have changed.
/// </summary>
public static class AddEngineModelVersion
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>The version that the new one was made from.</summary>
        public int? BasedOnVersion { get; init; }

        /// <summary>In the form in which GET /api/v1/engine-models/{id} answers one.</summary>
        public JsonElement? Specification { get; init; }

        /// <summary>The maker's document really says what looks unusual here.</summary>
        public bool ConfirmUnusual { get; init; }

        /// <summary>What changed and why.</summary>
        public string? Note { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.BasedOnVersion).IsGiven("the number of the version that you changed");
            RuleFor(r => r.Specification).NotNull().WithMessage("{PropertyName} is empty: give the engine maker's specification.");
            RuleFor(r => r.Note).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<EngineModelBooks.Made>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!SpecificationDocument.Read(request.Specification!.Value, request.ConfirmUnusual).TryGet(out var specification, out var problem))
        {
            return problem;
        }

        return await EngineModelBooks.AddVersion(db, request.Id, request.BasedOnVersion!.Value, specification, request.Note, actor, clock, ct);
    }
}
