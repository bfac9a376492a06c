using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Features.Clearances;

/// <summary>Judges the readings of a send and adds their rows; the entry saves.</summary>
internal static class ReadingEntry
{
    public static IReadOnlyList<ClearanceReading> Add(
        VisitEntry entry, RecordReadings.Request request, IReadOnlyList<(string Path, RecordReadings.ReadingRow Row)> rows)
    {
        if (rows.Count == 0)
        {
            return [];
        }

        var head = Temperature.FromCelsius(request.HeadTemperatureC!.Value);
        entry.Add(ColdCheck.FaultOf("headTemperatureC", head, entry.Specification.Cold, request.KeptWhyNotCold));
        var notCold = !ColdCheck.IsCold(head, entry.Specification.Cold);
        var taken = new Dictionary<(LobeKey, Stage), string>();
        var added = new List<ClearanceReading>();
        foreach (var (path, row) in rows)
        {
            if (LobeOf(entry, path, row) is not { } lobe)
            {
                continue;
            }

            var stage = row.Stage!.Value;
            if (!taken.TryAdd((lobe, stage), path))
            {
                entry.Add(new FieldFault($"{path}.valve",
                    $"{path}.valve is {lobe.Valve}: {taken[(lobe, stage)]} reads the same lobe and stage; once a send is allowed."));
                continue;
            }

            var earlier = ReadingRules.Standing(entry.Known.Readings, lobe, stage);
            var attempt = ReadingRules.NextAttempt(entry.Known.Readings, lobe, stage);
            if (row.Attempt is { } expected && expected != attempt && earlier is not null)
            {
                entry.AddOvertaken($"{path}.attempt", expected, earlier);
                continue;
            }

            var bracket = Bracket.Of(row.Kind ?? BracketKind.GoAndNoGo, Mm(row.GoMm), Mm(row.NoGoMm), row.Stacked);

            // What was carried over, unmeasured, is no measurement that a new one has to be defended against.
            var replaces = earlier is { NotRemeasured: false };
            if (replaces)
            {
                entry.Replaces($"{lobe.Spoken} {stage.Spoken()} ({earlier!.Bracket})");
            }

            added.Add(new ClearanceReading
            {
                Id = NewId.At(entry.Now),
                EngineId = entry.Open.Card.EngineId,
                JobCardNumber = entry.Open.Card.Number,
                Valve = lobe.Valve,
                Lobe = lobe.Lobe,
                Stage = stage,
                Attempt = attempt,
                Kind = bracket.Kind,
                Go = bracket.Go,
                NoGo = bracket.NoGo,
                Stacked = bracket.Stacked,
                InstrumentId = request.InstrumentId,
                HeadTemperature = head,
                TemperatureMethod = request.TemperatureMethod,
                NotCold = notCold,
                OdometerReadingId = entry.OdometerReadingId,
                MeasuredAt = entry.MeasuredAt,
                MeasuredBy = entry.MeasuredBy,
                EnteredBy = entry.Actor.PersonId,
                EnteredAt = entry.Now,
                SupersedesId = earlier?.Id,
                ReasonRemarkId = entry.RemarkFor(replaces, notCold ? request.KeptWhyNotCold : null),
            });
        }

        entry.Known.Readings.AddRange(added);
        entry.Db.ClearanceReadings.AddRange(added);
        CarryCorrections(entry, added);
        return added;
    }

    /// <summary>Where as found stands as as left, its correction does too.</summary>
    private static void CarryCorrections(VisitEntry entry, IReadOnlyList<ClearanceReading> added)
    {
        foreach (var found in added.Where(r => r.Stage == Stage.AsFound))
        {
            if (ReadingRules.Standing(entry.Known.Readings, found.Key, Stage.AsLeft) is { NotRemeasured: true } carried)
            {
                var anew = ReadingRules.CarriedAsLeft(NewId.At(entry.Now), found, entry.Actor.PersonId, entry.Now, carried);
                entry.Known.Readings.Add(anew);
                entry.Db.ClearanceReadings.Add(anew);
            }
        }
    }

    private static LobeKey? LobeOf(VisitEntry entry, string path, RecordReadings.ReadingRow row)
    {
        var valve = ValveKey.Parse(row.Valve!);
        var lobe = row.Lobe ?? 1;
        var fault = ReadingRules.FaultOfValve($"{path}.valve", valve, entry.Specification)
            ?? ReadingRules.FaultOfLobe($"{path}.lobe", valve, lobe, entry.Specification);
        entry.Add(fault);
        return fault is null ? new LobeKey(valve, lobe) : null;
    }

    private static Clearance? Mm(decimal? millimetres) =>
        millimetres is { } mm ? Clearance.FromMillimetres(mm) : null;
}
