using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>
/// Says that the signed-in person has compared figures with the document that they name. Name and day are set by the service;
/// the check ends when one of the figures is changed.
/// </summary>
public static class MarkChecked
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>Of the figures: <c>fasteners[drain-plug]</c>, <c>limits[intake/1]</c>; empty for the whole specification.</summary>
        public string? Path { get; init; }

        /// <summary>They were compared, figure by figure, with the named document.</summary>
        public bool Compared { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Compared).Equal(true)
            .WithMessage("compared is false: set it when you have compared the figures with the named document.");
    }

    public static async Task<Outcome<KeptDraft>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!DocumentPath.TryParse(request.Path, out var path))
        {
            return NotFigures(request.Path);
        }

        var name = await db.People.AsNoTracking().Where(p => p.Id == actor.PersonId).Select(p => p.Name).SingleAsync(ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        return await DraftBooks.Change(
            db, request.Id, request.RowVersion!.Value,
            (document, _) => CheckedFigures.In(document).FirstOrDefault(p => p.Path.Equals(path)) is not { } part ? NotFigures(request.Path)
                : part.Source.Length == 0 ? Problem.Impossible("no-source", "path", "path names figures that name no document: say which one they come from first.")
                : CheckedFigures.Mark(document, path, name, LocalDatePattern.Iso.Format(today))!,
            actor, clock, ct);
    }

    private static Problem NotFigures(string? path) => Problem.Impossible("no-figures", "path",
        $"path is \"{path}\": no figures of the draft stand there that name a document.");
}
