using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Bookings;
using Workshop.Domain.People;

namespace Workshop.Web.Data;

internal sealed class BookingsMapping :
    IEntityTypeConfiguration<Resource>,
    IEntityTypeConfiguration<Occupancy>,
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

    public void Configure(EntityTypeBuilder<Occupancy> builder)
    {
        // That no two live spans of a resource overlap is an exclusion constraint of the rules migration.
        builder.ToTable(t => t.HasCheckConstraint("ck_occupancies_span", "not isempty(span) and lower(span) is not null and upper(span) is not null"));
        builder.ReferencesJobCard(o => o.JobCardNumber);
        builder.References<Occupancy, Resource>(o => o.ResourceId);
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
        builder.Property(w => w.Id).ValueGeneratedNever();
        builder.Property(w => w.Name).HasMaxLength(120);
        builder.Property(w => w.TimeZone).HasMaxLength(60);
        builder.ToTable(t => t.HasCheckConstraint("ck_workshop_profiles_one", "id = 1"));
    }
}
