using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>One adapter or extension bar more.</summary>
public static class AddAdapter
{
    public sealed record Request : IAdapterFields
    {
        public WrenchAdapterKind? Kind { get; init; }

        public string? Name { get; init; }

        public decimal? EffectiveLengthMm { get; init; }

        public decimal? ThicknessMm { get; init; }

        public string? Drive { get; init; }

        public string? Tool { get; init; }
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Kind).IsGiven("what it is: offsetAdapter or extensionBar");
            Include(new AdapterFieldsValidator());
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var adapter = new WrenchAdapter { Id = NewId.At(clock), Kind = request.Kind!.Value, Name = "", EffectiveLengthMm = 0, Tool = "" };
        if (await AdapterFields.Take(db, adapter, request, ct) is { } problem)
        {
            return problem;
        }

        db.WrenchAdapters.Add(adapter);
        await db.SaveChangesAsync(ct);
        return new Answer(adapter.Id);
    }
}
