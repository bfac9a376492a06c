using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class DriftMapping :
    IEntityTypeConfiguration<ClearanceForecast>,
    IEntityTypeConfiguration<EngineOutlook>,
    IEntityTypeConfiguration<DriftFitVersion>,
    IEntityTypeConfiguration<DriftPoolVersion>,
    IEntityTypeConfiguration<DriftRefit>,
    IEntityTypeConfiguration<LeftOutVisit>
{
    private const int LongestReason = 400;

    public void Configure(EntityTypeBuilder<ClearanceForecast> builder)
    {
        builder.HasKey(f => new { f.EngineId, f.Valve, f.Lobe });
        builder.Property(f => f.PresentAt).HasColumnName("present_at_metres");
        builder.Property(f => f.PresentMm).HasPrecision(8, 4);
        builder.Property(f => f.PresentDeviationMm).HasPrecision(8, 4);
        builder.Property(f => f.DriftMmPer10000Km).HasColumnName("drift_mm_per_10000_km").HasPrecision(10, 6);
        builder.Property(f => f.DriftDeviation).HasPrecision(10, 6);
        builder.Property(f => f.LeavesLimitsAt).HasColumnName("leaves_limits_at_metres");
        builder.Property(f => f.LeavesLimitsEarliestAt).HasColumnName("leaves_limits_earliest_at_metres");
        builder.Property(f => f.LeavesLimitsLatestAt).HasColumnName("leaves_limits_latest_at_metres");
        builder.Property(f => f.Reason).HasMaxLength(LongestReason);
        builder.References<ClearanceForecast, Engine>(f => f.EngineId);
        builder.HasIndex(f => new { f.LeavesLimitsOn, f.EngineId });
    }

    public void Configure(EntityTypeBuilder<EngineOutlook> builder)
    {
        builder.HasKey(o => o.EngineId);
        builder.Property(o => o.NextCheckAt).HasColumnName("next_check_at_metres");
        builder.Property(o => o.PassesThresholdAt).HasColumnName("passes_threshold_at_metres");
        builder.References<EngineOutlook, Engine>(o => o.EngineId);
        builder.HasIndex(o => new { o.SoonestOn, o.EngineId });
        builder.HasIndex(o => new { o.SoonestIntakeOn, o.EngineId });
        builder.HasIndex(o => new { o.SoonestExhaustOn, o.EngineId });
    }

    public void Configure(EntityTypeBuilder<DriftFitVersion> builder)
    {
        builder.HasKey(f => new { f.EngineModelId, f.Version });
        builder.Property(f => f.Fit).HasColumnType("jsonb").HasConversion(
            fit => JsonSerializer.Serialize(fit, WorkshopJson.Options),
            text => JsonSerializer.Deserialize<DriftFit>(text, WorkshopJson.Options)!);
        builder.Property(f => f.WhyNot).HasMaxLength(LongestReason);
        builder.ToTable("drift_fits", t => t.HasCheckConstraint("ck_drift_fits_fit_or_reason", "(fit is null) = (why_not is not null)"));
        builder.References<DriftFitVersion, EngineModel>(f => f.EngineModelId);
    }

    public void Configure(EntityTypeBuilder<DriftPoolVersion> builder)
    {
        builder.HasKey(p => new { p.Kind, p.Version });
        builder.Property(p => p.Pool).HasColumnType("jsonb").HasConversion(
            pool => JsonSerializer.Serialize(pool, WorkshopJson.Options),
            text => JsonSerializer.Deserialize<DriftPool>(text, WorkshopJson.Options)!);
        builder.ToTable("drift_pools");
    }

    public void Configure(EntityTypeBuilder<DriftRefit> builder)
    {
        builder.HasKey(r => r.EngineModelId);
        builder.Ignore(r => r.UnderWay);
        builder.References<DriftRefit, EngineModel>(r => r.EngineModelId);
        builder.HasIndex(r => r.WantedSince);
    }

    public void Configure(EntityTypeBuilder<LeftOutVisit> builder)
    {
        builder.References<LeftOutVisit, Engine>(v => v.EngineId);
        builder.ReferencesJobCard(v => v.JobCardNumber);
        builder.ReferencesOdometerReading(v => v.OdometerReadingId);
        builder.References<LeftOutVisit, Remark>(v => v.ReasonRemarkId);
        builder.ReferencesPerson(v => v.DecidedBy);
        builder.HasIndex(v => v.EngineId);
    }
}
