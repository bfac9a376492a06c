using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// On this card an alternative stands in for a part of the kit: it is reserved, picked and settled in its place. The part itself
/// named again takes the substitution back. What was picked of the other before stays on the bench until it is put back.
/// </summary>
public static class SubstitutePart
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Of a line of the kit.</summary>
        public string? PartCode { get; init; }

        /// <summary>What is taken instead: one of the line's alternatives, or the part itself again.</summary>
        public string? InsteadCode { get; init; }

        public string? Reason { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the code of a line of the kit").IsAtMost(Limits.Code);
            RuleFor(r => r.InsteadCode).IsGiven("the code of what is taken instead").IsAtMost(Limits.Code);
            RuleFor(r => r.Reason).IsGiven("why it is taken instead").IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<GetKit.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PickParts.ForPicking(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var visit = await KitCase.OfCard(db, open, clock, ct);
        var known = await PartsByCode.Read(db, [request.PartCode!, request.InsteadCode!], ct);
        var original = known.GetValueOrDefault(request.PartCode!);
        if (original is null || visit.Kit.Lines.All(l => l.Part?.Id != original.Id))
        {
            return Problem.Impossible("not-in-kit", "partCode",
                $"partCode is \"{request.PartCode}\": no line of the kit of job card {request.Number} is of it; there are {string.Join(", ", visit.Kit.Lines.Select(l => l.PartCode))}.");
        }

        var alternatives = (await Alternatives.Read(db, [original.Id], visit.UsedOn, ct))[original.Id].ToList();
        var instead = known.GetValueOrDefault(request.InsteadCode!);
        if (instead is null || (instead.Id != original.Id && alternatives.TrueForAll(a => a.Part.Id != instead.Id)))
        {
            return Problem.Impossible("no-alternative", "insteadCode", alternatives.Count == 0
                ? $"insteadCode is \"{request.InsteadCode}\": the stores know no alternative to {original.Name}; enter it there first."
                : $"insteadCode is \"{request.InsteadCode}\": what may stand in for {original.Name} is {string.Join(", ", alternatives.Select(a => a.Part.Code))}, or {original.Code} itself again.");
        }

        if (instead.Unit != original.Unit)
        {
            return Problem.Impossible("other-unit", "insteadCode",
                $"insteadCode is \"{request.InsteadCode}\": {instead.Name} is counted in another unit than {original.Name}.");
        }

        if (visit.TakenFor(original).Id == instead.Id)
        {
            return Problem.Conflict("taken-already", $"{instead.Name} ({instead.Code}) is what job card {request.Number} takes already.");
        }

        db.KitSubstitutions.Add(new KitSubstitution
        {
            Id = NewId.At(clock),
            JobCardNumber = request.Number,
            PartCode = original.Code,
            InsteadId = instead.Id,
            ReasonRemarkId = Remarks.Add(db, request.Reason, actor, clock),
            ChosenBy = actor.PersonId,
            ChosenAt = clock.GetCurrentInstant(),
        });
        await db.SaveChangesAsync(ct);
        await KitReservations.Reserve(db, request.Number, actor, clock, ct);
        return await GetKit.Handle(new GetKit.Request(request.Number), db, actor, clock, ct);
    }
}
