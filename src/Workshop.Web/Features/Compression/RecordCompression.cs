using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Compression;

/// <summary>
/// Writes what cylinders hold at one stage of a visit: compression dry and wet, leak-down. A send may hold any part of it and is all or
/// nothing. What was measured before gets a new attempt, which supersedes with a reason.
/// </summary>
public static class RecordCompression
{
    public const int MostTries = 50;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public Stage? Stage { get; init; }

        public EngineWarmth? Warmth { get; init; }

        /// <summary>Held open while it is turned over; with a closed throttle a cylinder draws less in.</summary>
        public bool ThrottleOpen { get; init; }

        /// <summary>The compression gauge.</summary>
        public Guid? GaugeId { get; init; }

        public Guid? LeakDownTesterId { get; init; }

        /// <summary>The pressure that the leak-down test lets in; or else <see cref="TestBar"/>.</summary>
        public decimal? TestKpa { get; init; }

        public decimal? TestBar { get; init; }

        public Instant? MeasuredAt { get; init; }

        public Guid? MeasuredBy { get; init; }

        public string? Reason { get; init; }

        public IReadOnlyList<Row?>? Cylinders { get; init; }
    }

    /// <summary>What was measured of one cylinder; what was not is left out. A pressure is given in kPa or in bar.</summary>
    public sealed record Row
    {
        public int? Cylinder { get; init; }

        public decimal? DryKpa { get; init; }

        public decimal? DryBar { get; init; }

        /// <summary>With a little oil put in.</summary>
        public decimal? WetKpa { get; init; }

        public decimal? WetBar { get; init; }

        /// <summary>How often it was turned over until the gauge rose no further.</summary>
        public int? Tries { get; init; }

        /// <summary>Of the test pressure.</summary>
        public decimal? LossPercent { get; init; }

        public bool HeardAtIntake { get; init; }

        public bool HeardAtExhaust { get; init; }

        public bool HeardAtCrankcase { get; init; }

        public bool HeardInCoolant { get; init; }

        [JsonIgnore]
        public bool HasPressure => DryKpa is not null || DryBar is not null || WetKpa is not null || WetBar is not null;

        [JsonIgnore]
        public bool IsHeard => HeardAtIntake || HeardAtExhaust || HeardAtCrankcase || HeardInCoolant;
    }

    /// <param name="Cylinders">What each cylinder shows at that stage now.</param>
    public sealed record Answer(int Number, Stage Stage, int Written, IReadOnlyList<CylinderView> Cylinders);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Stage).IsGiven("asFound or asLeft");
            RuleFor(r => r.Warmth).IsGiven("warm or cold: how warm the engine was");
            RuleFor(r => r.Cylinders).Must(rows => Rows(rows).Any())
                .WithMessage("Nothing was entered: give compression or leak-down of at least one cylinder.");
            RuleFor(r => r.GaugeId).IsGiven("the compression gauge").When(r => Rows(r.Cylinders).Any(c => c.HasPressure));
            When(r => Rows(r.Cylinders).Any(c => c.LossPercent is not null), () =>
            {
                RuleFor(r => r.LeakDownTesterId).IsGiven("the leak-down tester");
                RuleFor(r => r.TestKpa).Must((r, kpa) => kpa is not null || r.TestBar is not null)
                    .WithMessage("{PropertyName} is empty: give the pressure that the test lets in.");
            });
            RuleFor(r => r.TestKpa).IsPressure();
            RuleFor(r => r.TestBar).IsBar();
            RuleFor(r => r.TestBar).Must((r, bar) => bar is null || r.TestKpa is null).WithMessage(Once);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleForEach(r => r.Cylinders).SetValidator(new RowValidator()!);
        }
    }

    private const string Once = "{PropertyName} is given twice: in kPa or in bar is allowed.";

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await CompressionEntry.Begin(db, request, actor, clock, ct)).TryGet(out var entry, out var refused))
        {
            return refused;
        }

        return await entry.Write(ct) is { } problem
            ? problem
            : new Answer(request.Number, request.Stage!.Value, entry.Written, entry.Cylinders());
    }

    internal static IEnumerable<Row> Rows(IReadOnlyList<Row?>? rows) => (rows ?? []).OfType<Row>();

    private sealed class RowValidator : AbstractValidator<Row>
    {
        public RowValidator()
        {
            RuleFor(r => r.Cylinder).NotNull().WithMessage("{PropertyName} is empty: give the cylinder's number.");
            RuleFor(r => r.DryKpa).IsPressure();
            RuleFor(r => r.WetKpa).IsPressure();
            RuleFor(r => r.DryBar).IsBar();
            RuleFor(r => r.WetBar).IsBar();
            RuleFor(r => r.DryBar).Must((r, bar) => bar is null || r.DryKpa is null).WithMessage(Once);
            RuleFor(r => r.WetBar).Must((r, bar) => bar is null || r.WetKpa is null).WithMessage(Once);
            RuleFor(r => r.Tries).IsWhole(1, MostTries);
            RuleFor(r => r.LossPercent).IsWithin(0, 100, 1, "%");
            RuleFor(r => r.LossPercent).Must((r, loss) => loss is not null || r.HasPressure)
                .WithMessage("{PropertyName} is empty, and so is the pressure: give what was measured of the cylinder.");
            RuleFor(r => r.LossPercent).NotNull().When(r => r.IsHeard && r.HasPressure)
                .WithMessage("{PropertyName} is empty, but air is heard: give how much leaks of the test pressure.");
        }
    }
}
