using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>Somebody at the machine has read cautions of a stage. One that was read already is not written again.</summary>
public static class AcknowledgeCautions
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public IReadOnlyList<string>? Codes { get; init; }
    }

    /// <param name="Open">Codes that nobody has read yet.</param>
    public sealed record Answer(int JobCardNumber, IReadOnlyList<string> Open);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Codes).IsGiven("the codes of the cautions that were read")
            .Must(codes => codes is null || codes.Count <= Cautions.All.Count)
            .WithMessage($"{{PropertyName}} names more than the {Cautions.All.Count} cautions that there are.");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var cautions = await GetCautions.Read(db, open, ct);
        if (request.Codes!.FirstOrDefault(code => cautions.All(c => c.Code != code)) is { } unknown)
        {
            return Problem.Impossible("caution-unknown", "codes",
                $"codes names {unknown}: no item of job card {request.Number} has such a caution; it has {string.Join(", ", cautions.Select(c => c.Code))}.");
        }

        var unread = cautions.Where(c => c.AcknowledgedAt is null).Select(c => c.Code).ToList();
        db.CautionAcknowledgements.AddRange(unread.Where(request.Codes!.Contains).Select(code => new CautionAcknowledgement
        {
            Id = NewId.At(clock),
            JobCardNumber = request.Number,
            CautionCode = code,
            AcknowledgedBy = actor.PersonId,
            AcknowledgedAt = clock.GetCurrentInstant(),
        }));
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, [.. unread.Except(request.Codes!)]);
    }
}
