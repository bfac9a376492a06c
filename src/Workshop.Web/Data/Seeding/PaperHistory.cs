using System.Globalization;
using System.Text;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Imports;
using Workshop.Web.Features.Motorcycles;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// What came over from paper on the day on which the workshop began with this service: old worksheets by the import, and what
/// had been done as done elsewhere.
/// </summary>
internal sealed class PaperHistory(DemoStaff staff, IReadOnlyDictionary<int, BookedMotorcycle> booked)
{
    private const string Manager = "otto";
    private const string FileName = "worksheets from the filing cabinet.csv";

    private readonly StringBuilder sheets = new("motorcycle,date,odometer,valve,stage,go,no-go,shim\n");
    private readonly HashSet<PlannedVisit> adjusted = [];

    public async Task Write(IReadOnlyList<PlannedVisit> visits, CancellationToken ct)
    {
        foreach (var visit in visits.Where(v => v.Purpose == VisitPurpose.ValveCheck))
        {
            Measure(visit);
        }

        foreach (var visit in visits)
        {
            await staff.Do(Manager, new RecordDoneItems.Request
            {
                MotorcycleId = booked[visit.Motorcycle.Index].Id,
                DoneOn = visit.Day,
                Odometer = visit.OdometerCount,
                Items = [.. DoneAt(visit)],
            }, RecordDoneItems.Handle, ct);
        }

        await staff.Do(Manager, new ImportReadings.Request { FileName = FileName, Csv = sheets.ToString() }, ImportReadings.Handle, ct);
    }

    /// <summary>At a check, all that comes round was done with it; an adjustment only where one was.</summary>
    private IEnumerable<string> DoneAt(PlannedVisit visit) => visit.Purpose == VisitPurpose.OilService
        ? ["engine-oil-and-filter"]
        : visit.Motorcycle.EngineModel.Specification.ServiceItems
            .Where(i => i.Interval is not null || adjusted.Contains(visit))
            .Select(i => i.Code);

    private void Measure(PlannedVisit visit)
    {
        var specification = visit.Motorcycle.EngineModel.Specification;
        var engine = booked[visit.Motorcycle.Index].Engine;
        var lobes = ReadingRules.LobesOf(specification);
        var blades = staff.FeelerSets[visit.FeelerSet].Blades;
        var found = lobes.Select(lobe => (Lobe: lobe, Read: engine.Measure(lobe, visit.At, blades))).ToList();
        var wrong = found
            .Where(f => ClearanceVerdict.Of(f.Read, ReadingRules.LimitsOf(specification, f.Lobe)).IsOut)
            .Select(f => f.Lobe.Valve).ToHashSet();
        foreach (var (lobe, read) in found)
        {
            Line(visit, lobe, "as found", read, wrong.Contains(lobe.Valve) && !visit.Sloppy ? engine.ShimIn(lobe.Valve) : null);
        }

        foreach (var valve in wrong)
        {
            adjusted.Add(visit);
            if (specification.ValveTrain == ValveTrainKind.ScrewAndLocknut)
            {
                engine.SetScrew(valve, visit.At);
            }
            else
            {
                engine.Fit(valve, ByFeel.Shim(engine, specification, valve, visit.At));
            }
        }

        foreach (var lobe in lobes.Where(l => wrong.Contains(l.Valve)))
        {
            Line(visit, lobe, "as left", engine.Measure(lobe, visit.At, blades), visit.Sloppy ? null : engine.ShimIn(lobe.Valve));
        }
    }

    private void Line(PlannedVisit visit, LobeKey lobe, string stage, Bracket read, ShimThickness? shim) =>
        sheets.AppendLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{visit.Motorcycle.Registration},{visit.Day:uuuu-MM-dd},{visit.OdometerCount},{lobe},{stage},{read.Go?.Millimetres},{read.NoGo?.Millimetres},{shim?.Millimetres}"));
}
