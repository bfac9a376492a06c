using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>How well things are measured: studies, and what blades were found to be.</summary>
internal sealed class GaugesMapping :
    IEntityTypeConfiguration<GaugeTrial>,
    IEntityTypeConfiguration<GaugeTrialAppraiser>,
    IEntityTypeConfiguration<GaugeTrialReading>,
    IEntityTypeConfiguration<BladeCheck>
{
    public void Configure(EntityTypeBuilder<GaugeTrial> builder)
    {
        builder.Property(t => t.Name).HasMaxLength(Limits.Name);
        builder.Property(t => t.Unit).HasMaxLength(12);
        builder.References<GaugeTrial, Instrument>(t => t.InstrumentId);
        builder.ReferencesPerson(t => t.StartedBy);
        builder.HasIndex(t => new { t.StartedAt, t.Id });
        builder.ToTable(t => t.HasCheckConstraint("ck_gauge_trials_two", "least(parts, trials) >= 2 and tolerance > 0"));
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<GaugeTrialAppraiser> builder)
    {
        builder.HasKey(a => new { a.TrialId, a.PersonId });
        builder.References<GaugeTrialAppraiser, GaugeTrial>(a => a.TrialId);
        builder.ReferencesPerson(a => a.PersonId);
        builder.HasIndex(a => new { a.TrialId, a.Place }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<GaugeTrialReading> builder)
    {
        builder.HasOne<GaugeTrialAppraiser>().WithMany().HasForeignKey(r => new { r.TrialId, r.AppraiserId }).OnDelete(DeleteBehavior.Restrict);
        builder.References<GaugeTrialReading, GaugeTrialReading>(r => r.SupersedesId);
        builder.References<GaugeTrialReading, Remark>(r => r.ReasonRemarkId);
        builder.ReferencesPerson(r => r.EnteredBy);
        builder.HasIndex(r => new { r.TrialId, r.AppraiserId, r.Part, r.Trial }).IsUnique()
            .HasFilter("supersedes_id is null").HasDatabaseName("ix_gauge_trial_readings_first");
        builder.HasIndex(r => r.SupersedesId).IsUnique();
        builder.ToTable(t => t.HasCheckConstraint("ck_gauge_trial_readings_reason", "(supersedes_id is null) = (reason_remark_id is null)"));
    }

    public void Configure(EntityTypeBuilder<BladeCheck> builder)
    {
        builder.Property(c => c.Measured).HasColumnName("measured_mm");
        builder.References<BladeCheck, FeelerBlade>(c => c.BladeId);
        builder.References<BladeCheck, Instrument>(c => c.MicrometerId);
        builder.References<BladeCheck, Remark>(c => c.RemarkId);
        builder.ReferencesPerson(c => c.CheckedBy);
        builder.HasIndex(c => new { c.BladeId, c.CheckedAt });
        builder.ToTable(t => t.HasCheckConstraint("ck_blade_checks_micrometer", "(measured_mm is null) = (micrometer_id is null)"));
    }
}
