using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Clearances;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class ClearancesMapping :
    IEntityTypeConfiguration<ClearanceReading>,
    IEntityTypeConfiguration<ValveEvent>,
    IEntityTypeConfiguration<PartChange>,
    IEntityTypeConfiguration<ReadingImport>,
    IEntityTypeConfiguration<ShimObservation>
{
    private const string ValveForm = "~ '^[1-9][0-9]?-(intake|exhaust)-[1-4]$'";

    public void Configure(EntityTypeBuilder<ClearanceReading> builder)
    {
        builder.Ignore(r => r.Key);
        builder.Ignore(r => r.Bracket);
        builder.Property(r => r.Go).HasColumnName("go_mm");
        builder.Property(r => r.NoGo).HasColumnName("no_go_mm");
        builder.Property(r => r.HeadTemperature).HasColumnName("head_temperature_c");
        builder.Property(r => r.TemperatureMethod).HasMaxLength(Limits.Name);
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_clearance_readings_valve", $"valve {ValveForm} and lobe in (1, 2) and attempt >= 1");
            t.HasCheckConstraint("ck_clearance_readings_no_go_above_go", "no_go_mm > go_mm");
            t.HasCheckConstraint(
                "ck_clearance_readings_ends",
                """
                case kind
                  when 'go_and_no_go' then go_mm is not null and no_go_mm is not null
                  when 'none_enters' then go_mm is null and no_go_mm is not null
                  else go_mm is not null and no_go_mm is null
                end
                """);
        });
        builder.References<ClearanceReading, Engine>(r => r.EngineId);
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.References<ClearanceReading, ReadingImport>(r => r.ImportId);
        builder.References<ClearanceReading, Instrument>(r => r.InstrumentId);
        builder.ReferencesOdometerReading(r => r.OdometerReadingId);
        builder.References<ClearanceReading, ClearanceReading>(r => r.SupersedesId);
        builder.References<ClearanceReading, Remark>(r => r.ReasonRemarkId);
        builder.ReferencesPerson(r => r.MeasuredBy, r => r.EnteredBy);
        builder.HasIndex(r => new { r.EngineId, r.Valve, r.Lobe, r.MeasuredAt });
        builder.HasIndex(r => new { r.JobCardNumber, r.Valve, r.Lobe, r.Stage, r.Attempt }).IsUnique();
        builder.HasIndex(r => r.SupersedesId).IsUnique();
    }

    public void Configure(EntityTypeBuilder<ValveEvent> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_valve_events_valve", $"valve {ValveForm}"));
        builder.References<ValveEvent, Engine>(e => e.EngineId);
        builder.ReferencesJobCard(e => e.JobCardNumber);
        builder.References<ValveEvent, ReadingImport>(e => e.ImportId);
        builder.ReferencesOdometerReading(e => e.OdometerReadingId);
        builder.ReferencesPerson(e => e.EnteredBy);
        builder.HasIndex(e => new { e.EngineId, e.Valve });
        builder.HasIndex(e => e.JobCardNumber);
    }

    public void Configure(EntityTypeBuilder<PartChange> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_part_changes_valve", $"valve {ValveForm}"));
        builder.References<PartChange, Engine>(c => c.EngineId);
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.ReferencesOdometerReading(c => c.OdometerReadingId);
        builder.References<PartChange, Remark>(c => c.RemarkId);
        builder.ReferencesPerson(c => c.EnteredBy);
        builder.HasIndex(c => c.EngineId);
    }

    public void Configure(EntityTypeBuilder<ReadingImport> builder)
    {
        builder.Property(i => i.FileName).HasMaxLength(Limits.Name);
        builder.ReferencesPerson(i => i.ImportedBy);
    }

    public void Configure(EntityTypeBuilder<ShimObservation> builder)
    {
        builder.Property(o => o.Thickness).HasColumnName("thickness_mm");
        builder.ToTable(t => t.HasCheckConstraint("ck_shim_observations_valve", $"valve {ValveForm}"));
        builder.References<ShimObservation, Engine>(o => o.EngineId);
        builder.ReferencesJobCard(o => o.JobCardNumber);
        builder.References<ShimObservation, ReadingImport>(o => o.ImportId);
        builder.References<ShimObservation, Instrument>(o => o.MicrometerId);
        builder.ReferencesOdometerReading(o => o.OdometerReadingId);
        builder.References<ShimObservation, ShimObservation>(o => o.SupersedesId);
        builder.References<ShimObservation, Remark>(o => o.ReasonRemarkId);
        builder.ReferencesPerson(o => o.MeasuredBy, o => o.EnteredBy);
        builder.HasIndex(o => new { o.EngineId, o.Valve });
        builder.HasIndex(o => o.JobCardNumber);
        builder.HasIndex(o => o.SupersedesId).IsUnique();
    }
}
