using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Changes what is known of a part; the whole of it is sent, with the version that was read.</summary>
public static class EditPart
{
    public sealed record Request : IPartFields, IExpectsVersion
    {
        [JsonIgnore]
        public string Code { get; init; } = "";

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public decimal? InnerDiameterMm { get; init; }

        public decimal? OuterDiameterMm { get; init; }

        public decimal? SectionMm { get; init; }

        public string? Material { get; init; }

        public string? Form { get; init; }

        public string? Designation { get; init; }

        public int? Hardness { get; init; }

        public bool FittedOnce { get; init; }

        public decimal? PackQuantity { get; init; }

        public int? ShelfLifeMonths { get; init; }

        public int? DeliveryDays { get; init; }

        public bool Stocked { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new PartFieldsValidator());
    }

    public static async Task<Outcome<PartChanged>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartToChange.Find(db, request.Code, request.RowVersion!.Value, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        PartFields.Set(found.Part, request);
        await db.SaveChangesAsync(ct);
        return new PartChanged(found.Part.Code, found.Part.Name, found.Version.CurrentValue);
    }
}
