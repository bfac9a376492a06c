using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Bookings;
using Workshop.Domain.Measures;
using Workshop.Domain.People;

namespace Workshop.Web.Data;

/// <summary>The workshop, when it is open, and what a visit can take.</summary>
internal sealed class ResourcesMapping :
    IEntityTypeConfiguration<Resource>,
    IEntityTypeConfiguration<WorkingHours>,
    IEntityTypeConfiguration<WorkBreak>,
    IEntityTypeConfiguration<Absence>,
    IEntityTypeConfiguration<OpeningHours>,
    IEntityTypeConfiguration<Holiday>,
    IEntityTypeConfiguration<WorkshopProfile>
{
    public void Configure(EntityTypeBuilder<Resource> builder)
    {
        builder.Property(r => r.Name).HasMaxLength(80);
        builder.References<Resource, Person>(r => r.PersonId);
        builder.HasIndex(r => new { r.Kind, r.Name }).IsUnique();
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<WorkingHours> builder)
    {
        builder.HasKey(h => new { h.ResourceId, h.Weekday });
        builder.Property(h => h.Weekday).HasConversion<int>();
        builder.ToTable(t => t.HasCheckConstraint("ck_working_hours_order", "ends_at > starts_at"));
        builder.References<WorkingHours, Resource>(h => h.ResourceId);
    }

    public void Configure(EntityTypeBuilder<WorkBreak> builder)
    {
        builder.Property(b => b.Weekday).HasConversion<int>();
        builder.ToTable(t => t.HasCheckConstraint("ck_work_breaks_order", "ends_at > starts_at"));
        builder.References<WorkBreak, Resource>(b => b.ResourceId);
    }

    public void Configure(EntityTypeBuilder<Absence> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_absences_span", "not isempty(span) and lower(span) is not null and upper(span) is not null"));
        builder.References<Absence, Resource>(a => a.ResourceId);
        builder.ReferencesPerson(a => a.EnteredBy);
        builder.HasIndex(a => a.Span).HasMethod("gist");
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<OpeningHours> builder)
    {
        builder.HasKey(h => h.Weekday);
        builder.Property(h => h.Weekday).HasConversion<int>();
        builder.ToTable(t => t.HasCheckConstraint("ck_opening_hours_order", "closes_at > opens_at"));
    }

    public void Configure(EntityTypeBuilder<Holiday> builder)
    {
        builder.HasKey(h => h.Day);
        builder.Property(h => h.Name).HasMaxLength(80);
    }

    public void Configure(EntityTypeBuilder<WorkshopProfile> builder)
    {
        builder.Property(w => w.Currency).HasMaxLength(3).HasDefaultValue("EUR");
        builder.Property(w => w.TaxRateCode).HasMaxLength(Http.Limits.Code);
        builder.Property(w => w.ServiceLevel).HasDefaultValue(0.95);
        builder.Property(w => w.Id).ValueGeneratedNever();
        builder.Property(w => w.Name).HasMaxLength(120);
        builder.Property(w => w.TimeZone).HasMaxLength(60);
        builder.Property(w => w.Phone).HasMaxLength(Http.Limits.Phone);
        builder.Property(w => w.TogetherWithin).HasColumnName("together_within_metres").HasDefaultValue(Distance.FromKilometres(500));
        builder.Property(w => w.TogetherWithinDays).HasDefaultValue(30);
        builder.ToTable(t => t.HasCheckConstraint("ck_workshop_profiles_together", "least(together_within_metres, together_within_days) >= 0"));
        builder.ToTable(t => t.HasCheckConstraint("ck_workshop_profiles_one", "id = 1"));
        builder.ToTable(t => t.HasCheckConstraint("ck_workshop_profiles_minutes",
            "least(arrival_minutes, warm_run_minutes, test_ride_minutes, hand_over_minutes) >= 0"));
        builder.HasRowVersion();
    }
}
