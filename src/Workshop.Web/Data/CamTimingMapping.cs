using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Data;

internal sealed class CamTimingMapping :
    IEntityTypeConfiguration<CamTimingCheck>,
    IEntityTypeConfiguration<CamTimingReading>,
    IEntityTypeConfiguration<ChainReading>,
    IEntityTypeConfiguration<ChainChange>,
    IEntityTypeConfiguration<CamRecheck>
{
    private const int LongestCode = 60;

    public void Configure(EntityTypeBuilder<CamTimingCheck> builder)
    {
        builder.Ignore(c => c.Key);
        builder.Property(c => c.CamshaftCode).HasMaxLength(LongestCode);
        builder.Property(c => c.StopBefore).HasColumnName("stop_before_degrees");
        builder.Property(c => c.StopAfter).HasColumnName("stop_after_degrees");
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_cam_timing_checks_attempt", "attempt >= 1");
            t.HasCheckConstraint(
                "ck_cam_timing_checks_method",
                """
                case method
                  when 'alignment' then passes is not null and side is null and lift_mm is null
                  else passes is null and side is not null and dead_centre is not null and lift_mm is not null and station is not null
                end
                """);
            t.HasCheckConstraint(
                "ck_cam_timing_checks_stops",
                "(stop_before_degrees is null) = (stop_after_degrees is null) and (dead_centre is null or dead_centre = 'marks' or stop_before_degrees is not null)");
        });
        builder.HasMany(c => c.Readings).WithOne().HasForeignKey(r => r.CheckId).OnDelete(DeleteBehavior.Restrict);
        builder.Navigation(c => c.Readings).AutoInclude();
        builder.References<CamTimingCheck, Engine>(c => c.EngineId);
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.References<CamTimingCheck, Instrument>(c => c.InstrumentId);
        builder.References<CamTimingCheck, Instrument>(c => c.DialGaugeId);
        builder.ReferencesOdometerReading(c => c.OdometerReadingId);
        builder.References<CamTimingCheck, CamTimingCheck>(c => c.SupersedesId);
        builder.References<CamTimingCheck, Remark>(c => c.ReasonRemarkId);
        builder.ReferencesPerson(c => c.MeasuredBy, c => c.EnteredBy);
        builder.HasIndex(c => c.EngineId);
        builder.HasIndex(c => new { c.JobCardNumber, c.CamshaftCode, c.Stage, c.Method, c.Side, c.Attempt }).IsUnique().AreNullsDistinct(false);
        builder.HasIndex(c => c.SupersedesId).IsUnique();
    }

    public void Configure(EntityTypeBuilder<CamTimingReading> builder)
    {
        builder.HasKey(r => new { r.CheckId, r.Repeat });
        builder.Property(r => r.Opens).HasColumnName("opens_degrees");
        builder.Property(r => r.Closes).HasColumnName("closes_degrees");
        builder.ToTable(t => t.HasCheckConstraint("ck_cam_timing_readings_repeat", "repeat >= 1 and opens_degrees + closes_degrees > -180"));
    }

    public void Configure(EntityTypeBuilder<ChainReading> builder)
    {
        builder.Property(r => r.DriveCode).HasMaxLength(LongestCode);
        builder.ToTable(t => t.HasCheckConstraint(
            "ck_chain_readings_something",
            "attempt >= 1 and (extension_mm is not null or at_stop or length_mm is not null) and not (extension_mm is not null and at_stop) and coalesce(extension_mm, 0) >= 0 and coalesce(length_mm, 1) > 0"));
        builder.References<ChainReading, Engine>(r => r.EngineId);
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.References<ChainReading, Instrument>(r => r.InstrumentId);
        builder.ReferencesOdometerReading(r => r.OdometerReadingId);
        builder.References<ChainReading, ChainReading>(r => r.SupersedesId);
        builder.References<ChainReading, Remark>(r => r.ReasonRemarkId);
        builder.ReferencesPerson(r => r.MeasuredBy, r => r.EnteredBy);
        builder.HasIndex(r => r.EngineId);
        builder.HasIndex(r => new { r.JobCardNumber, r.DriveCode, r.Stage, r.Attempt }).IsUnique();
        builder.HasIndex(r => r.SupersedesId).IsUnique();
    }

    public void Configure(EntityTypeBuilder<ChainChange> builder)
    {
        builder.Property(c => c.DriveCode).HasMaxLength(LongestCode);
        builder.References<ChainChange, Engine>(c => c.EngineId);
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.ReferencesOdometerReading(c => c.OdometerReadingId);
        builder.ReferencesPerson(c => c.EnteredBy);
        builder.HasIndex(c => c.EngineId);
        builder.HasIndex(c => new { c.JobCardNumber, c.DriveCode, c.Kind }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<CamRecheck> builder)
    {
        builder.Property(r => r.DriveCode).HasMaxLength(LongestCode);
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.References<CamRecheck, Instrument>(r => r.WrenchId);
        builder.ReferencesPerson(r => r.ConfirmedBy);
        builder.HasIndex(r => r.JobCardNumber);
    }
}
