using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels;

/// <summary>Every fastener's torque of a specification beside what its thread can bear.</summary>
public static class ListTorques
{
    public sealed record Request(Guid Id, int? Version);

    public sealed record Answer(Guid EngineModelId, int Version, IReadOnlyList<Row> Fasteners);

    public sealed record Row(string Code, string Name, string Thread, decimal TorqueNm, TorqueView Torque);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await GetEngineModel.Handle(new GetEngineModel.Request(request.Id, request.Version), db, actor, clock, ct);
        return found.Then<Answer>(model => new Answer(request.Id, model.Version,
            [.. model.Specification.Fasteners.Select(f => new Row(
                f.Code, f.Name, f.Thread, f.Torque.NewtonMetres, TorqueView.Of(TorquePlausibility.Of(f))))]));
    }
}

/// <summary>A verdict on a torque for page and API, rounded to what such bounds are worth.</summary>
/// <param name="UsualFromNm">Bounds are absent where no check is available.</param>
/// <param name="ExceedsNm">Above it the limit is passed whatever the friction.</param>
/// <param name="LimitN">The force that must not be passed.</param>
public sealed record TorqueView(
    TorqueVerdict Verdict, string Sentence, bool AsksBack, decimal? UsualFromNm, decimal? UsualToNm, decimal? ExceedsNm, decimal? LimitN)
{
    public static TorqueView Of(TorquePlausibility judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        return new TorqueView(
            judged.Verdict, judged.Sentence, judged.IsAbsurd, Tenths(judged.Bounds?.UsualFromNm), Tenths(judged.Bounds?.UsualToNm),
            Tenths(judged.Bounds?.ExceedsLimitNm), judged.Bounds is { } b ? Math.Round((decimal)b.LimitN / 100) * 100 : null);
    }

    private static decimal? Tenths(double? nm) => nm is { } value ? Math.Round((decimal)value, 1) : null;
}
