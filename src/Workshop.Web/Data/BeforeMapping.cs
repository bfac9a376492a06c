using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Arrivals;
using Workshop.Domain.Compression;
using Workshop.Domain.JobCards;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Domain.Ignition;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>What is seen and measured before the work, and which visit comes back of which.</summary>
internal sealed class BeforeMapping :
    IEntityTypeConfiguration<ArrivalNote>,
    IEntityTypeConfiguration<CylinderTest>,
    IEntityTypeConfiguration<PlugCheck>,
    IEntityTypeConfiguration<Comeback>
{
    public void Configure(EntityTypeBuilder<ArrivalNote> builder)
    {
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_arrival_notes_subject", "(subject is null) = (state = 'none_seen')");
            t.HasCheckConstraint("ck_arrival_notes_struck", "not struck or supersedes_id is not null");
            t.HasCheckConstraint("ck_arrival_notes_reason", "supersedes_id is null or reason_remark_id is not null");
        });
        builder.ReferencesJobCard(n => n.JobCardNumber);
        builder.References<ArrivalNote, ArrivalNote>(n => n.SupersedesId);
        builder.References<ArrivalNote, Remark>(n => n.WordsRemarkId);
        builder.References<ArrivalNote, Remark>(n => n.ReasonRemarkId);
        builder.ReferencesPerson(n => n.NotedBy);
        builder.HasIndex(n => n.JobCardNumber);
        builder.HasIndex(n => n.SupersedesId).IsUnique();
    }

    public void Configure(EntityTypeBuilder<CylinderTest> builder)
    {
        builder.Ignore(t => t.Key);
        builder.Ignore(t => t.HeardAt);
        builder.Property(t => t.Pressure).HasColumnName("pressure_kpa");
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_cylinder_tests_attempt", "attempt >= 1 and cylinder >= 1 and pressure_kpa >= 0 and coalesce(tries, 1) >= 1");
            t.HasCheckConstraint(
                "ck_cylinder_tests_loss",
                """
                case method
                  when 'leak_down' then loss_percent between 0 and 100 and pressure_kpa > 0 and tries is null
                  else loss_percent is null and not (heard_at_intake or heard_at_exhaust or heard_at_crankcase or heard_in_coolant)
                end
                """);
            t.HasCheckConstraint("ck_cylinder_tests_reason", "supersedes_id is null or reason_remark_id is not null");
        });
        builder.References<CylinderTest, Engine>(t => t.EngineId);
        builder.ReferencesJobCard(t => t.JobCardNumber);
        builder.References<CylinderTest, Instrument>(t => t.InstrumentId);
        builder.ReferencesOdometerReading(t => t.OdometerReadingId);
        builder.References<CylinderTest, CylinderTest>(t => t.SupersedesId);
        builder.References<CylinderTest, Remark>(t => t.ReasonRemarkId);
        builder.ReferencesPerson(t => t.MeasuredBy, t => t.EnteredBy);
        builder.HasIndex(t => t.EngineId);
        builder.HasIndex(t => new { t.JobCardNumber, t.Cylinder, t.Method, t.Stage, t.Attempt }).IsUnique();
        builder.HasIndex(t => t.SupersedesId).IsUnique();
    }

    public void Configure(EntityTypeBuilder<PlugCheck> builder)
    {
        builder.Ignore(c => c.Key);
        builder.Property(c => c.PartCode).HasMaxLength(Limits.Code);
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_plug_checks_attempt", "attempt >= 1 and cylinder >= 1 and plug >= 1");
            t.HasCheckConstraint("ck_plug_checks_gaps", "gap_left_mm > 0 and coalesce(gap_found_mm, 1) > 0");
            t.HasCheckConstraint("ck_plug_checks_part", "renewed or part_code is null");
            t.HasCheckConstraint("ck_plug_checks_reason", "supersedes_id is null or reason_remark_id is not null");
        });
        builder.References<PlugCheck, Engine>(c => c.EngineId);
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.References<PlugCheck, Instrument>(c => c.InstrumentId);
        builder.ReferencesOdometerReading(c => c.OdometerReadingId);
        builder.References<PlugCheck, PlugCheck>(c => c.SupersedesId);
        builder.References<PlugCheck, Remark>(c => c.ReasonRemarkId);
        builder.ReferencesPerson(c => c.CheckedBy, c => c.EnteredBy);
        builder.HasIndex(c => c.EngineId);
        builder.HasIndex(c => new { c.JobCardNumber, c.Cylinder, c.Plug, c.Attempt }).IsUnique();
        builder.HasIndex(c => c.SupersedesId).IsUnique();
    }

    public void Configure(EntityTypeBuilder<Comeback> builder)
    {
        builder.HasKey(c => c.JobCardNumber);
        builder.Property(c => c.JobCardNumber).ValueGeneratedNever();
        builder.ToTable(t => t.HasCheckConstraint("ck_comebacks_earlier", "of_job_card_number <> job_card_number"));
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.ReferencesJobCard(c => c.OfJobCardNumber);
        builder.References<Comeback, Remark>(c => c.ReasonRemarkId);
        builder.ReferencesPerson(c => c.EnteredBy);
        builder.HasIndex(c => c.OfJobCardNumber);
    }
}
