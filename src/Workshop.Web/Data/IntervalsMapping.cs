using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class IntervalsMapping :
    IEntityTypeConfiguration<DoneItem>,
    IEntityTypeConfiguration<HistoryImport>,
    IEntityTypeConfiguration<DueItem>,
    IEntityTypeConfiguration<DueVisit>,
    IEntityTypeConfiguration<PutOff>,
    IEntityTypeConfiguration<FleetRidingVersion>,
    IEntityTypeConfiguration<DueRecompute>
{
    public void Configure(EntityTypeBuilder<DoneItem> builder)
    {
        builder.Property(d => d.ServiceItemCode).HasMaxLength(Limits.Code);
        builder.Property(d => d.Distance).HasColumnName("metres");
        builder.References<DoneItem, Motorcycle>(d => d.MotorcycleId);
        builder.ReferencesJobCard(d => d.JobCardNumber);
        builder.ReferencesPerson(d => d.DoneBy);
        builder.References<DoneItem, HistoryImport>(d => d.ImportId);
        builder.References<DoneItem, Remark>(d => d.RemarkId);
        builder.HasIndex(d => new { d.MotorcycleId, d.ServiceItemCode, d.DoneOn });
        builder.HasIndex(d => new { d.JobCardNumber, d.ServiceItemCode }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<HistoryImport> builder)
    {
        builder.Property(i => i.FileName).HasMaxLength(Limits.Name);
        builder.ReferencesPerson(i => i.ImportedBy);
        builder.HasIndex(i => i.ContentHash).IsUnique();
    }

    public void Configure(EntityTypeBuilder<DueItem> builder)
    {
        builder.HasKey(d => new { d.MotorcycleId, d.ServiceItemCode });
        builder.Property(d => d.ServiceItemCode).HasMaxLength(Limits.Code);
        builder.Property(d => d.Name).HasMaxLength(Limits.Name);
        builder.Property(d => d.DueAt).HasColumnName("due_at_metres");
        builder.Property(d => d.LastDoneAt).HasColumnName("last_done_at_metres");
        builder.Property(d => d.Left).HasColumnName("left_metres");

        // Put-offs are only ever added: a constraint would cost an index of the whole fleet and keep nothing.
        builder.Property(d => d.IncludedIn).HasMaxLength(Limits.Code);
        builder.References<DueItem, Motorcycle>(d => d.MotorcycleId);
        builder.HasIndex(d => new { d.ComesOn, d.MotorcycleId, d.ServiceItemCode });
    }

    public void Configure(EntityTypeBuilder<DueVisit> builder)
    {
        builder.HasKey(v => v.MotorcycleId);
        builder.Property(v => v.Left).HasColumnName("left_metres");
        builder.References<DueVisit, Motorcycle>(v => v.MotorcycleId);
        builder.References<DueVisit, EngineModel>(v => v.EngineModelId);
        builder.HasIndex(v => new { v.ComesOn, v.MotorcycleId });
        builder.HasIndex(v => new { v.EngineModelId, v.ComesOn, v.MotorcycleId });
        builder.HasIndex(v => new { v.ComesOn, v.MotorcycleId }, "WithTools").HasFilter("cardinality(special_tools) > 0")
            .HasDatabaseName("ix_due_visits_with_tools");
    }

    public void Configure(EntityTypeBuilder<PutOff> builder)
    {
        builder.Property(p => p.ServiceItemCode).HasMaxLength(Limits.Code);
        builder.Property(p => p.Reason).HasMaxLength(PutOff.LongestReason);
        builder.References<PutOff, Motorcycle>(p => p.MotorcycleId);
        builder.ReferencesPerson(p => p.DecidedBy);
        builder.HasIndex(p => new { p.MotorcycleId, p.ServiceItemCode, p.DecidedAt });
    }

    public void Configure(EntityTypeBuilder<FleetRidingVersion> builder)
    {
        builder.HasKey(r => r.Version);
        builder.Property(r => r.Version).ValueGeneratedNever();
        builder.Property(r => r.PerDay).HasColumnName("metres_per_day");
        builder.Ignore(r => r.Riding);
    }

    public void Configure(EntityTypeBuilder<DueRecompute> builder)
    {
        builder.ReferencesPerson(r => r.RequestedBy);
        builder.HasIndex(r => r.RequestedAt);
    }
}
