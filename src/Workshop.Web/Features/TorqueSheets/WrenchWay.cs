using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Tooling;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>A wrench and what is between it and the fastener, as somebody names them.</summary>
internal sealed record WrenchWay(WrenchOnHand OnHand, WrenchAdapter? Adapter, decimal AngleDegrees)
{
    public static async Task<Outcome<WrenchWay>> Read(
        WorkshopDbContext db, WorkshopTime time, Guid wrenchId, Guid? adapterId, decimal? angleDegrees, CancellationToken ct)
    {
        if (await WrenchesOnHand.Find(db, wrenchId, time, ct) is not { } wrench)
        {
            return Problem.Impossible("wrench-unknown", "wrenchId", $"wrenchId: {wrenchId} is no instrument of the workshop; choose one of GET /api/v1/instruments?kind=torqueWrench.");
        }

        if (adapterId is null)
        {
            return new WrenchWay(wrench, null, 0);
        }

        if (await db.WrenchAdapters.AsNoTracking().SingleOrDefaultAsync(a => a.Id == adapterId, ct) is not { } adapter)
        {
            return Problem.Impossible("adapter-unknown", "adapterId", $"adapterId: {adapterId} is no adapter of the workshop; choose one of GET /api/v1/wrench-adapters.");
        }

        return (adapter.Kind, angleDegrees) switch
        {
            (WrenchAdapterKind.OffsetAdapter, null) => Problem.Impossible("angle-missing", "adapterAngleDegrees",
                $"adapterAngleDegrees is empty: {adapter.Name} lies beside the drive; give its angle against the wrench, 0 straight on, 90 across."),
            (WrenchAdapterKind.ExtensionBar, > 0) => Problem.Impossible("angle-of-bar", "adapterAngleDegrees",
                $"adapterAngleDegrees is {angleDegrees}: {adapter.Name} is a straight extension and has no angle; leave it out."),
            _ => new WrenchWay(wrench, adapter, angleDegrees ?? 0),
        };
    }
}
