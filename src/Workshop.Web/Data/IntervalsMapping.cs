using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Intervals;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class IntervalsMapping :
    IEntityTypeConfiguration<DoneItem>,
    IEntityTypeConfiguration<HistoryImport>,
    IEntityTypeConfiguration<DueItem>
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
        builder.References<DueItem, Motorcycle>(d => d.MotorcycleId);
        builder.HasIndex(d => new { d.ExpectedOn, d.MotorcycleId, d.ServiceItemCode });
    }
}
