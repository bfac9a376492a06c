using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Measures;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Data.Seeding;

/// <summary>The instruments of the invented workshop with their last certificates, and what goes between a wrench and a fastener.</summary>
internal sealed class DemoInstruments(WorkshopDbContext db, DemoWorkshop workshop, Guid manager, WorkshopTime time, IClock clock)
{
    private const string Laboratory = "Invented measuring laboratory";

    private readonly LocalDate today = time.DayOf(clock.GetCurrentInstant());

    public void Add()
    {
        foreach (var demo in workshop.Instruments)
        {
            var instrument = new Instrument
            {
                Id = NewId.At(clock), Kind = demo.Kind, Name = demo.Name, SerialNumber = demo.SerialNumber, Unit = demo.Unit,
                RangeLowest = demo.RangeLowest, RangeHighest = demo.RangeHighest, Uncertainty = demo.Uncertainty,
                Graduation = demo.Graduation, LengthMm = demo.LengthMm, Drive = demo.Drive,
                CalibratedOn = demo.CalibratedDaysAgo is { } ago ? today.PlusDays(-ago) : null,
                CalibrationDueOn = demo.CalibrationDueInDays is { } days ? today.PlusDays(days) : null,
            };
            db.Instruments.Add(instrument);
            AddCertificate(instrument);
            db.FeelerBlades.AddRange((demo.Blades?.Each() ?? []).Select(nominal => new FeelerBlade
            {
                Id = NewId.At(clock), InstrumentId = instrument.Id,
                Nominal = demo.Unit == "in" ? Clearance.FromInches(nominal) : Clearance.FromMillimetres(nominal),
            }));
        }

        db.WrenchAdapters.AddRange(workshop.WrenchAdapters.Select(a => new WrenchAdapter
        {
            Id = NewId.At(clock), Name = a.Name, Kind = a.Kind, EffectiveLengthMm = a.EffectiveLengthMm, ThicknessMm = a.ThicknessMm,
            Drive = a.Drive, Tool = a.Tool,
        }));
    }

    /// <summary>What fell lately. Written when the history is, since before it fell it was used.</summary>
    public async Task Drop(CancellationToken ct)
    {
        foreach (var demo in workshop.Instruments.Where(i => i.DroppedHoursAgo is not null))
        {
            var instrument = await db.Instruments.SingleAsync(i => i.Kind == demo.Kind && i.SerialNumber == demo.SerialNumber, ct);
            var at = clock.GetCurrentInstant() - Duration.FromHours(demo.DroppedHoursAgo!.Value);
            InstrumentChanges.Apply(instrument, InstrumentEventKind.Dropped, null, time.DayOf(at));
            db.InstrumentEvents.Add(new InstrumentEvent
            {
                Id = NewId.At(clock), InstrumentId = instrument.Id, Kind = InstrumentEventKind.Dropped, EnteredBy = manager, At = at,
            });
        }

        await db.SaveChangesAsync(ct);
    }

    private void AddCertificate(Instrument instrument)
    {
        if (instrument.CalibratedOn is { } on)
        {
            db.Calibrations.Add(new Calibration
            {
                Id = NewId.At(clock), InstrumentId = instrument.Id, DoneOn = on, DueOn = instrument.CalibrationDueOn,
                Certificate = $"{instrument.SerialNumber}-{on.Year}", Laboratory = Laboratory, Uncertainty = instrument.Uncertainty,
                EnteredBy = manager, EnteredAt = clock.GetCurrentInstant(),
            });
        }
    }
}
