using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class ToolingMapping : IEntityTypeConfiguration<Instrument>, IEntityTypeConfiguration<FeelerBlade>
{
    public void Configure(EntityTypeBuilder<Instrument> builder)
    {
        builder.Property(i => i.Name).HasMaxLength(Limits.Name);
        builder.Property(i => i.SerialNumber).HasMaxLength(Limits.Name);
        builder.Property(i => i.Unit).HasMaxLength(12);
        builder.References<Instrument, Person>(i => i.HolderId);
        builder.HasIndex(i => new { i.Kind, i.SerialNumber }).IsUnique();
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<FeelerBlade> builder)
    {
        builder.Property(b => b.Nominal).HasColumnName("nominal_mm");
        builder.Property(b => b.Measured).HasColumnName("measured_mm");
        builder.References<FeelerBlade, Instrument>(b => b.InstrumentId);
        builder.HasIndex(b => new { b.InstrumentId, b.Nominal }).IsUnique();
    }
}
