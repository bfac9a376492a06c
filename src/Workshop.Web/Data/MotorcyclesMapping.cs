using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class MotorcyclesMapping :
    IEntityTypeConfiguration<Motorcycle>,
    IEntityTypeConfiguration<Engine>,
    IEntityTypeConfiguration<EngineFitting>,
    IEntityTypeConfiguration<Odometer>,
    IEntityTypeConfiguration<OdometerReading>
{
    public void Configure(EntityTypeBuilder<Motorcycle> builder)
    {
        builder.Property(m => m.Registration).HasMaxLength(Limits.Registration);
        builder.Property(m => m.Vin).HasMaxLength(Limits.Vin);
        builder.Property(m => m.Maker).HasMaxLength(Limits.Name);
        builder.Property(m => m.Model).HasMaxLength(Limits.Name);
        builder.HasIndex(m => m.Registration).IsUnique();
        builder.HasIndex(m => m.OwnerId);
        builder.References<Motorcycle, Person>(m => m.OwnerId);
        builder.Property(m => m.Use).HasDefaultValue(RidingUse.Normal);
        builder.Property(m => m.Options).HasDefaultValueSql("'{}'");
        builder.ReferencesPerson(m => m.UseSaidBy);
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<Engine> builder)
    {
        builder.Property(e => e.SerialNumber).HasMaxLength(Limits.Name);
        builder.References<Engine, EngineModel>(e => e.EngineModelId);
    }

    public void Configure(EntityTypeBuilder<EngineFitting> builder)
    {
        // One engine per motorcycle at a time, and the reverse: exclusion constraints of the rules migration.
        builder.Property(f => f.MotorcycleDistance).HasColumnName("motorcycle_metres");
        builder.Property(f => f.EngineDistance).HasColumnName("engine_metres");
        builder.ToTable(t => t.HasCheckConstraint("ck_engine_fittings_order", "removed_on > fitted_on"));
        builder.References<EngineFitting, Engine>(f => f.EngineId);
        builder.References<EngineFitting, Motorcycle>(f => f.MotorcycleId);
    }

    public void Configure(EntityTypeBuilder<Odometer> builder)
    {
        builder.Property(o => o.Offset).HasColumnName("offset_metres");
        builder.References<Odometer, Motorcycle>(o => o.MotorcycleId);
        builder.HasIndex(o => o.MotorcycleId).IsUnique().HasFilter("removed_on is null").HasDatabaseName("ix_odometers_current");
    }

    public void Configure(EntityTypeBuilder<OdometerReading> builder)
    {
        builder.Property(r => r.Distance).HasColumnName("metres");
        builder.ToTable(t => t.HasCheckConstraint("ck_odometer_readings_count", "count between 0 and 999999"));
        builder.References<OdometerReading, Odometer>(r => r.OdometerId);
        builder.References<OdometerReading, Motorcycle>(r => r.MotorcycleId);
        builder.References<OdometerReading, Remark>(r => r.ReasonRemarkId);
        builder.References<OdometerReading, OdometerReading>(r => r.SupersedesId);
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.ReferencesPerson(r => r.MeasuredBy, r => r.EnteredBy);
        builder.HasIndex(r => new { r.MotorcycleId, r.ReadOn });
        builder.HasIndex(r => r.SupersedesId).IsUnique();
    }
}

internal sealed class EngineModelsMapping :
    IEntityTypeConfiguration<EngineModel>,
    IEntityTypeConfiguration<EngineModelVersion>,
    IEntityTypeConfiguration<SpecificationDraft>
{
    public void Configure(EntityTypeBuilder<EngineModel> builder)
    {
        builder.Property(m => m.Maker).HasMaxLength(Limits.Name);
        builder.Property(m => m.Name).HasMaxLength(Limits.Name);
        builder.HasIndex(m => new { m.Maker, m.Name }).IsUnique();
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<EngineModelVersion> builder)
    {
        builder.Property(v => v.Specification)
            .HasColumnType("jsonb")
            .HasConversion(s => StoredSpecifications.ToColumn(s), s => StoredSpecifications.FromColumn(s));
        builder.Property(v => v.Note).HasMaxLength(Limits.Remark);
        builder.References<EngineModelVersion, EngineModel>(v => v.EngineModelId);
        builder.ReferencesPerson(v => v.CreatedBy);
        builder.HasIndex(v => new { v.EngineModelId, v.Version }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<SpecificationDraft> builder)
    {
        builder.HasKey(d => new { d.EngineModelId, d.PersonId });
        builder.Property(d => d.Maker).HasMaxLength(Limits.Name);
        builder.Property(d => d.Name).HasMaxLength(Limits.Name);
        builder.Property(d => d.Specification)
            .HasColumnType("jsonb")
            .HasConversion(s => StoredSpecifications.ToColumn(s), s => StoredSpecifications.FromColumn(s));
        builder.ReferencesPerson(d => d.PersonId);
        builder.HasRowVersion();
    }
}
