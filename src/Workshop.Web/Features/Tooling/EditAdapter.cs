using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>
/// Changes an adapter, retires it or takes it back; the whole of it is sent, with the version that was read. Ticks keep what was dialled
/// with it.
/// </summary>
public static class EditAdapter
{
    public sealed record Request : IAdapterFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public decimal? EffectiveLengthMm { get; init; }

        public decimal? ThicknessMm { get; init; }

        public string? Drive { get; init; }

        public string? Tool { get; init; }

        /// <summary>Not offered any more.</summary>
        public bool Retired { get; init; }
    }

    public sealed record Answer(Guid Id, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new AdapterFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await db.WrenchAdapters.SingleOrDefaultAsync(a => a.Id == request.Id, ct) is not { } adapter)
        {
            return Problem.NotFound($"Wrench adapter {request.Id}");
        }

        if (await AdapterFields.Take(db, adapter, request, ct) is { } problem)
        {
            return problem;
        }

        adapter.Retired = request.Retired;
        var version = db.Entry(adapter).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        db.Entry(adapter).State = EntityState.Modified;
        await db.SaveChangesAsync(ct);
        return new Answer(adapter.Id, version.CurrentValue);
    }
}
