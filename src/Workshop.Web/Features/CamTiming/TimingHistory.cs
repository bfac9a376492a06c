using Microsoft.EntityFrameworkCore;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Web.Data;

namespace Workshop.Web.Features.CamTiming;

/// <summary>Every entry of a card in order, superseded ones too, each in a line.</summary>
internal static class TimingHistory
{
    public static async Task<IReadOnlyList<GetCamTiming.Entry>> Of(
        WorkshopDbContext db, EngineSpecification specification, TimingRows rows, IReadOnlyDictionary<Guid, string> people, CancellationToken ct)
    {
        var remarks = rows.Checks.Select(c => c.ReasonRemarkId).Concat(rows.Chains.Select(c => c.ReasonRemarkId)).OfType<Guid>().ToHashSet();
        var reasons = remarks.Count == 0
            ? []
            : await db.Remarks.AsNoTracking().Where(r => remarks.Contains(r.Id)).ToDictionaryAsync(r => r.Id, r => r.Text, ct);
        var superseded = rows.Checks.Select(c => c.SupersedesId).Concat(rows.Chains.Select(c => c.SupersedesId)).OfType<Guid>().ToHashSet();
        var checks = rows.Checks.Select(c => new GetCamTiming.Entry(
            c.Id, c.Stage, What(specification, c), c.Attempt, Words(c), c.MeasuredAt, Name(c.MeasuredBy), !superseded.Contains(c.Id), Why(c.ReasonRemarkId)));
        var chains = rows.Chains.Select(c => new GetCamTiming.Entry(
            c.Id, c.Stage, DriveName(c.DriveCode), c.Attempt, Words(c), c.MeasuredAt, Name(c.MeasuredBy), !superseded.Contains(c.Id), Why(c.ReasonRemarkId)));
        return [.. checks.Concat(chains).OrderBy(e => e.MeasuredAt).ThenBy(e => e.Attempt).ThenBy(e => e.What, StringComparer.Ordinal)];

        string Name(Guid person) => people.GetValueOrDefault(person, "somebody who left");

        string? Why(Guid? remark) => remark is { } id ? reasons.GetValueOrDefault(id) : null;

        string DriveName(string code) => specification.CamDrives.FirstOrDefault(d => d.Code == code)?.Name ?? code;
    }

    private static string What(EngineSpecification specification, CamTimingCheck check)
    {
        var name = CamTimingView.NameOf(specification, check.CamshaftCode);
        return check.Side is { } side ? $"{name}, {side.Spoken()}" : name;
    }

    private static string Words(CamTimingCheck check)
    {
        if (check.Method == TimingMethod.Alignment)
        {
            return check.Passes == true ? "alignment check passes" : "alignment check does not pass";
        }

        var turns = string.Join("; ", check.Readings.OrderBy(r => r.Repeat).Select(r => $"{r.Opens} and {r.Closes}"));
        return $"wheel showed opening and closing at {turns}; {check.LiftMm:0.###} mm of lift {check.Station!.Value.Spoken()}; dead centre by {check.DeadCentre!.Value.Spoken()}";
    }

    private static string Words(ChainReading reading)
    {
        var extension = reading.AtStop ? "tensioner at its stop" : reading.ExtensionMm is { } mm ? $"tensioner out by {mm:0.##} mm" : null;
        var length = reading.LengthMm is { } links ? $"chain {links:0.##} mm" : null;
        return string.Join("; ", new[] { extension, length }.OfType<string>());
    }
}
