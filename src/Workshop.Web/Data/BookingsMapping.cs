using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;

namespace Workshop.Web.Data;

internal sealed class BookingsMapping :
    IEntityTypeConfiguration<Occupancy>,
    IEntityTypeConfiguration<PlannedPhase>,
    IEntityTypeConfiguration<VisitWishes>,
    IEntityTypeConfiguration<CalendarFeed>,
    IEntityTypeConfiguration<PhaseStart>,
    IEntityTypeConfiguration<EngineStop>,
    IEntityTypeConfiguration<MotorcycleMove>,
    IEntityTypeConfiguration<VisitWait>
{
    private const string SpanIsWhole = "not isempty(span) and lower(span) is not null and upper(span) is not null";

    public void Configure(EntityTypeBuilder<Occupancy> builder)
    {
        // That no two live spans of a resource overlap is an exclusion constraint of the rules migration.
        builder.ToTable(t => t.HasCheckConstraint("ck_occupancies_span", SpanIsWhole));
        builder.ReferencesJobCard(o => o.JobCardNumber);
        builder.References<Occupancy, Resource>(o => o.ResourceId);
    }

    public void Configure(EntityTypeBuilder<PlannedPhase> builder)
    {
        builder.HasKey(p => new { p.JobCardNumber, p.Phase });
        builder.ToTable(t => t.HasCheckConstraint("ck_planned_phases_span", SpanIsWhole));
        builder.ReferencesJobCard(p => p.JobCardNumber);
        builder.HasIndex(p => p.Span).HasMethod("gist");
    }

    public void Configure(EntityTypeBuilder<VisitWishes> builder)
    {
        builder.HasKey(w => w.JobCardNumber);
        builder.Property(w => w.JobCardNumber).ValueGeneratedNever();
        builder.ToTable(t => t.HasCheckConstraint("ck_visit_wishes_minutes", "work_minutes > 0"));
        builder.ReferencesJobCard(w => w.JobCardNumber);
        builder.References<VisitWishes, Resource>(w => w.TechnicianId);
        builder.References<VisitWishes, Resource>(w => w.BayId);
    }

    public void Configure(EntityTypeBuilder<CalendarFeed> builder)
    {
        builder.References<CalendarFeed, Resource>(f => f.ResourceId);
        builder.ReferencesPerson(f => f.CreatedBy);
        builder.HasIndex(f => f.SecretDigest).IsUnique();
    }

    public void Configure(EntityTypeBuilder<PhaseStart> builder)
    {
        builder.ReferencesJobCard(s => s.JobCardNumber);
        builder.References<PhaseStart, Resource>(s => s.TechnicianId);
        builder.References<PhaseStart, Domain.People.Remark>(s => s.ReasonRemarkId);
        builder.ReferencesPerson(s => s.EnteredBy);
    }

    public void Configure(EntityTypeBuilder<EngineStop> builder)
    {
        builder.ReferencesJobCard(s => s.JobCardNumber);
        builder.ReferencesPerson(s => s.EnteredBy);
    }

    public void Configure(EntityTypeBuilder<MotorcycleMove> builder)
    {
        builder.ReferencesJobCard(m => m.JobCardNumber);
        builder.References<MotorcycleMove, Resource>(m => m.ResourceId);
        builder.References<MotorcycleMove, Domain.People.Remark>(m => m.TagRemarkId);
        builder.ReferencesPerson(m => m.MovedBy);
    }

    public void Configure(EntityTypeBuilder<VisitWait> builder)
    {
        builder.ReferencesJobCard(w => w.JobCardNumber);
        builder.References<VisitWait, Domain.People.Remark>(w => w.RemarkId);
        builder.ReferencesPerson(w => w.EnteredBy);
        builder.HasIndex(w => w.JobCardNumber).IsUnique().HasFilter("ended_at is null").HasDatabaseName("ix_visit_waits_one_open");
        builder.ToTable(t => t.HasCheckConstraint("ck_visit_waits_order", "expected_until > since"));
    }
}
