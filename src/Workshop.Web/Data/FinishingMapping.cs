using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>What follows the work, and who confirmed the readings as left.</summary>
internal sealed class FinishingMapping :
    IEntityTypeConfiguration<BalanceRun>,
    IEntityTypeConfiguration<BalanceVacuum>,
    IEntityTypeConfiguration<LeakLook>,
    IEntityTypeConfiguration<TestRide>,
    IEntityTypeConfiguration<VisitRecheck>,
    IEntityTypeConfiguration<ReminderReset>,
    IEntityTypeConfiguration<CountTap>,
    IEntityTypeConfiguration<CountExplanation>,
    IEntityTypeConfiguration<AsLeftWitness>,
    IEntityTypeConfiguration<AsLeftMark>
{
    public void Configure(EntityTypeBuilder<BalanceRun> builder)
    {
        builder.Property(r => r.HotAt).HasColumnName("hot_at_c");
        builder.ToTable(t => t.HasCheckConstraint("ck_balance_runs_attempt", "attempt >= 1 and speed_rpm > 0"));
        builder.HasMany(r => r.Vacuums).WithOne().HasForeignKey(v => v.RunId).OnDelete(DeleteBehavior.Restrict);
        builder.Navigation(r => r.Vacuums).AutoInclude();
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.References<BalanceRun, Instrument>(r => r.GaugeId);
        builder.ReferencesPerson(r => r.MeasuredBy);
        builder.HasIndex(r => new { r.JobCardNumber, r.Stage, r.Attempt }).IsUnique();
        Supersedes(builder);
    }

    public void Configure(EntityTypeBuilder<BalanceVacuum> builder)
    {
        builder.HasKey(v => new { v.RunId, v.Cylinder });
        builder.Property(v => v.Vacuum).HasColumnName("vacuum_kpa");
        builder.ToTable(t => t.HasCheckConstraint("ck_balance_vacuums_cylinder", "cylinder >= 1 and vacuum_kpa >= 0"));
    }

    public void Configure(EntityTypeBuilder<LeakLook> builder)
    {
        builder.Property(l => l.PlaceCode).HasMaxLength(Limits.Code);
        builder.Property(l => l.PlaceName).HasMaxLength(Limits.Name);
        builder.ToTable(t => t.HasCheckConstraint(
            "ck_leak_looks_words", "attempt >= 1 and run_minutes > 0 and (state = 'dry' or words_remark_id is not null)"));
        builder.ReferencesJobCard(l => l.JobCardNumber);
        builder.References<LeakLook, Remark>(l => l.WordsRemarkId);
        builder.ReferencesPerson(l => l.LookedBy);
        builder.HasIndex(l => new { l.JobCardNumber, l.PlaceCode, l.Attempt }).IsUnique();
        Supersedes(builder);
    }

    public void Configure(EntityTypeBuilder<TestRide> builder)
    {
        builder.Property(r => r.Distance).HasColumnName("distance_m");
        builder.ToTable(t => t.HasCheckConstraint(
            "ck_test_rides_ridden",
            """
            attempt >= 1 and case
              when why_not is null then rider_id is not null and distance_m is not null
              else rider_id is null and distance_m is null and odometer_reading_id is null
            end
            """));
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.ReferencesOdometerReading(r => r.OdometerReadingId);
        builder.References<TestRide, Remark>(r => r.WordsRemarkId);
        builder.ReferencesPerson(r => r.RiderId, r => r.EnteredBy);
        builder.HasIndex(r => new { r.JobCardNumber, r.Attempt }).IsUnique();
        Supersedes(builder);
    }

    public void Configure(EntityTypeBuilder<VisitRecheck> builder)
    {
        builder.Property(r => r.FastenerCode).HasMaxLength(Limits.Code);
        builder.ToTable(t => t.HasCheckConstraint(
            "ck_visit_rechecks_point",
            "attempt >= 1 and (point = 'torque') = (fastener_code is not null) and (point = 'torque' or wrench_id is null) and (in_order or words_remark_id is not null)"));
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.References<VisitRecheck, Instrument>(r => r.WrenchId);
        builder.References<VisitRecheck, Remark>(r => r.WordsRemarkId);
        builder.References<VisitRecheck, Remark>(r => r.EarlyRemarkId);
        builder.ReferencesPerson(r => r.RecheckedBy);
        builder.HasIndex(r => new { r.JobCardNumber, r.Point, r.FastenerCode, r.Attempt }).IsUnique().AreNullsDistinct(false);
        Supersedes(builder);
    }

    public void Configure(EntityTypeBuilder<ReminderReset> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_reminder_resets_words", "attempt >= 1 and (outcome <> 'not_reset' or words_remark_id is not null)"));
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.References<ReminderReset, Remark>(r => r.WordsRemarkId);
        builder.ReferencesPerson(r => r.EnteredBy);
        builder.HasIndex(r => new { r.JobCardNumber, r.Attempt }).IsUnique();
        Supersedes(builder);
    }

    public void Configure(EntityTypeBuilder<CountTap> builder)
    {
        builder.Property(t => t.ThingCode).HasMaxLength(Limits.Code);
        builder.Property(t => t.ThingName).HasMaxLength(Limits.Name);
        builder.ToTable(t => t.HasCheckConstraint("ck_count_taps_change", "change <> 0"));
        builder.ReferencesJobCard(t => t.JobCardNumber);
        builder.ReferencesPerson(t => t.CountedBy);
        builder.HasIndex(t => new { t.JobCardNumber, t.ThingCode });
    }

    public void Configure(EntityTypeBuilder<CountExplanation> builder)
    {
        builder.Property(e => e.ThingCode).HasMaxLength(Limits.Code);
        builder.ToTable(t => t.HasCheckConstraint("ck_count_explanations_difference", "difference <> 0"));
        builder.ReferencesJobCard(e => e.JobCardNumber);
        builder.References<CountExplanation, Remark>(e => e.WordsRemarkId);
        builder.ReferencesPerson(e => e.ExplainedBy);
        builder.HasIndex(e => new { e.JobCardNumber, e.ThingCode });
    }

    public void Configure(EntityTypeBuilder<AsLeftWitness> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_as_left_witnesses_readings", "readings_seen > 0"));
        builder.ReferencesJobCard(w => w.JobCardNumber);
        builder.ReferencesPerson(w => w.WitnessedBy);
        builder.HasIndex(w => new { w.JobCardNumber, w.ReadingsSeen }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<AsLeftMark> builder)
    {
        builder.References<AsLeftMark, EngineModel>(m => m.EngineModelId);
        builder.ReferencesPerson(m => m.MarkedBy);
        builder.HasIndex(m => m.EngineModelId).IsUnique().AreNullsDistinct(false);
    }

    /// <summary>An attempt supersedes one other at most, and says why.</summary>
    private static void Supersedes<T>(EntityTypeBuilder<T> builder)
        where T : class, IAttempt
    {
        builder.HasOne<T>().WithMany().HasForeignKey("SupersedesId").OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Remark>().WithMany().HasForeignKey("ReasonRemarkId").OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex("SupersedesId").IsUnique();
    }
}
