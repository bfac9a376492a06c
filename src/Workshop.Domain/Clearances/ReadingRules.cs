using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Clearances;

/// <summary>What a reading must satisfy beyond its own shape, said once for the page, the API and the import.</summary>
public static class ReadingRules
{
    /// <summary>Nothing where the engine has the valve; else the fault, which names the valves that it has.</summary>
    public static FieldFault? FaultOfValve(string field, ValveKey valve, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return specification.Valves.Any(v => v.Key == valve)
            ? null
            : new FieldFault(field,
                $"{field} is {valve}: the engine has no such valve; it has {string.Join(", ", specification.Valves.Select(v => v.Key))}.");
    }

    /// <summary>Nothing where the valve, which the engine has, is acted on by such a lobe.</summary>
    public static FieldFault? FaultOfLobe(string field, ValveKey valve, int lobe, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var lobes = specification.Valves.Single(v => v.Key == valve).Lobes;
        return lobe >= 1 && lobe <= lobes
            ? null
            : new FieldFault(field, lobes == 1
                ? $"{field} is {lobe}: {valve.Spoken} has one lobe; 1 is allowed."
                : $"{field} is {lobe}: {valve.Spoken} has {lobes} lobes; 1 to {lobes} is allowed.");
    }

    /// <summary>The limits of a lobe that the engine has.</summary>
    /// <exception cref="InvalidOperationException">The specification states none: it is incomplete.</exception>
    public static ClearanceLimits LimitsOf(EngineSpecification specification, LobeKey lobe)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return specification.Limits.SingleOrDefault(l => l.Side == lobe.Valve.Side && l.Lobe == lobe.Lobe)
            ?? throw new InvalidOperationException($"The specification states no limits for {lobe.Spoken}.");
    }

    /// <summary>Every lobe of the engine, in order of valve.</summary>
    public static IReadOnlyList<LobeKey> LobesOf(EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return [.. specification.Valves
            .SelectMany(v => Enumerable.Range(1, v.Lobes).Select(lobe => new LobeKey(v.Key, lobe)))
            .Order()];
    }

    /// <summary>The number of the next attempt at a lobe and stage of one visit; 1 is the first.</summary>
    public static int NextAttempt(IEnumerable<ClearanceReading> ofTheVisit, LobeKey lobe, Stage stage) =>
        Attempts.After(Standing(ofTheVisit, lobe, stage));

    /// <summary>The reading of a lobe and stage that counts: the last attempt; nothing where there is none.</summary>
    public static ClearanceReading? Standing(IEnumerable<ClearanceReading> ofTheVisit, LobeKey lobe, Stage stage) =>
        Attempts.Last(ofTheVisit.Where(r => r.Key == lobe && r.Stage == stage));

    /// <summary>
    /// The as-left reading of a lobe whose valve was not disturbed: what was found stands, marked as not measured again, so
    /// that it is used once.
    /// </summary>
    /// <param name="id">Of the new row.</param>
    /// <param name="found">The as-found reading that stands.</param>
    /// <param name="enteredBy">Who says that the valve was not disturbed.</param>
    /// <param name="enteredAt">When that was said; the time of measuring stays that of as found.</param>
    /// <param name="earlier">The carried reading that this one takes the place of, after a correction of as found.</param>
    public static ClearanceReading CarriedAsLeft(
        Guid id, ClearanceReading found, Guid enteredBy, Instant enteredAt, ClearanceReading? earlier = null)
    {
        ArgumentNullException.ThrowIfNull(found);
        return new ClearanceReading
        {
            Id = id,
            EngineId = found.EngineId,
            JobCardNumber = found.JobCardNumber,
            ImportId = found.ImportId,
            Valve = found.Valve,
            Lobe = found.Lobe,
            Stage = Stage.AsLeft,
            Attempt = (earlier?.Attempt ?? 0) + 1,
            Kind = found.Kind,
            Go = found.Go,
            NoGo = found.NoGo,
            Stacked = found.Stacked,
            InstrumentId = found.InstrumentId,
            HeadTemperature = found.HeadTemperature,
            TemperatureMethod = found.TemperatureMethod,
            NotCold = found.NotCold,
            NotRemeasured = true,
            OdometerReadingId = found.OdometerReadingId,
            MeasuredAt = found.MeasuredAt,
            MeasuredBy = found.MeasuredBy,
            EnteredBy = enteredBy,
            EnteredAt = enteredAt,
            SupersedesId = earlier?.Id,
        };
    }
}
