using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Features.Clearances;

/// <summary>Judges what a send says was done to valves and adds the rows; the entry saves.</summary>
internal static class ValveEventEntry
{
    /// <summary>How many were added; one that stands on the card already is left alone.</summary>
    public static int Add(VisitEntry entry, IReadOnlyList<(string Path, RecordReadings.EventRow Row)> rows)
    {
        var added = 0;
        foreach (var (path, row) in rows)
        {
            var (valve, kind) = (ValveKey.Parse(row.Valve!), row.Kind!.Value);
            var fault = ReadingRules.FaultOfValve($"{path}.valve", valve, entry.Specification)
                ?? FaultOfKind($"{path}.kind", valve, kind, entry);
            entry.Add(fault);
            if (fault is not null || entry.Known.Events.Exists(e => e.Valve == valve && e.Kind == kind))
            {
                continue;
            }

            var done = new ValveEvent
            {
                Id = NewId.At(entry.Now),
                EngineId = entry.Open.Card.EngineId,
                JobCardNumber = entry.Open.Card.Number,
                Valve = valve,
                Kind = kind,
                OdometerReadingId = entry.OdometerReadingId,
                HappenedAt = entry.MeasuredAt,
                EnteredBy = entry.Actor.PersonId,
                EnteredAt = entry.Now,
            };
            entry.Known.Events.Add(done);
            entry.Db.ValveEvents.Add(done);
            added++;
            Follow(entry, valve, kind);
        }

        return added;
    }

    private static void Follow(VisitEntry entry, ValveKey valve, ValveEventKind kind)
    {
        if (kind == ValveEventKind.ScrewTurned)
        {
            entry.Adjusts();
        }

        if (kind == ValveEventKind.NotDisturbed)
        {
            var carried = ReadingRules.LobesOf(entry.Specification).Where(l => l.Valve == valve)
                .Where(l => ReadingRules.Standing(entry.Known.Readings, l, Stage.AsLeft) is null)
                .Select(l => ReadingRules.CarriedAsLeft(
                    NewId.At(entry.Now), ReadingRules.Standing(entry.Known.Readings, l, Stage.AsFound)!, entry.Actor.PersonId, entry.Now))
                .ToList();
            entry.Known.Readings.AddRange(carried);
            entry.Db.ClearanceReadings.AddRange(carried);
        }
    }

    private static FieldFault? FaultOfKind(string field, ValveKey valve, ValveEventKind kind, VisitEntry entry)
    {
        var screws = entry.Specification.ValveTrain == ValveTrainKind.ScrewAndLocknut;
        return kind switch
        {
            ValveEventKind.ScrewTurned when !screws =>
                new FieldFault(field, $"{field} is screwTurned: this engine has shims, no adjusting screws; notDisturbed or changeUnknown is allowed."),
            ValveEventKind.NotDisturbed => FaultOfNotDisturbed(field, valve, entry),
            _ when entry.Known.Events.Exists(e => e.Valve == valve && e.Kind == ValveEventKind.NotDisturbed) =>
                new FieldFault(field, $"{field}: {valve.Spoken} stands on the card as not disturbed; read it as left instead."),
            _ => null,
        };
    }

    private static FieldFault? FaultOfNotDisturbed(string field, ValveKey valve, VisitEntry entry)
    {
        var notFound = ReadingRules.LobesOf(entry.Specification).Where(l => l.Valve == valve)
            .Where(l => ReadingRules.Standing(entry.Known.Readings, l, Stage.AsFound) is null).ToList();
        if (notFound.Count > 0)
        {
            return new FieldFault(field, $"{field} is notDisturbed: {notFound[0].Spoken} has no reading as found that could stand as left; read it first.");
        }

        var own = DisturbedValves.Of(
            entry.Specification,
            [.. entry.Known.Shims.Where(s => s.Valve == valve)],
            [.. entry.Known.Events.Where(e => e.Valve == valve)],
            []);
        return own.TryGetValue(valve, out var why)
            ? new FieldFault(field, $"{field} is notDisturbed: {valve.Spoken} was, since {why} at this visit; read it as left.")
            : null;
    }
}
