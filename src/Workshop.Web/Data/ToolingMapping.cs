using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class ToolingMapping :
    IEntityTypeConfiguration<Instrument>,
    IEntityTypeConfiguration<FeelerBlade>,
    IEntityTypeConfiguration<Calibration>,
    IEntityTypeConfiguration<InstrumentEvent>,
    IEntityTypeConfiguration<WrenchAdapter>
{
    public void Configure(EntityTypeBuilder<Instrument> builder)
    {
        builder.Property(i => i.Name).HasMaxLength(Limits.Name);
        builder.Property(i => i.SerialNumber).HasMaxLength(Limits.Name);
        builder.Property(i => i.Unit).HasMaxLength(Limits.Unit);
        builder.Property(i => i.Drive).HasMaxLength(Limits.Drive);
        builder.References<Instrument, Person>(i => i.HolderId);
        builder.HasIndex(i => new { i.Kind, i.SerialNumber }).IsUnique();
        builder.ToTable(t => t.HasCheckConstraint("ck_instruments_scale", "graduation > 0 and length_mm > 0 and calibration_months > 0 and calibration_cycles > 0"));
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<FeelerBlade> builder)
    {
        builder.Property(b => b.Nominal).HasColumnName("nominal_mm");
        builder.Property(b => b.Measured).HasColumnName("measured_mm");
        builder.References<FeelerBlade, Instrument>(b => b.InstrumentId);
        builder.HasIndex(b => new { b.InstrumentId, b.Nominal }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<Calibration> builder)
    {
        builder.Property(c => c.Certificate).HasMaxLength(Limits.Name);
        builder.Property(c => c.Laboratory).HasMaxLength(Limits.Name);
        builder.References<Calibration, Instrument>(c => c.InstrumentId);
        builder.ReferencesPerson(c => c.EnteredBy);
        builder.HasIndex(c => new { c.InstrumentId, c.DoneOn });
    }

    public void Configure(EntityTypeBuilder<InstrumentEvent> builder)
    {
        builder.References<InstrumentEvent, Instrument>(e => e.InstrumentId);
        builder.References<InstrumentEvent, Remark>(e => e.RemarkId);
        builder.ReferencesPerson(e => e.HolderId, e => e.EnteredBy);
        builder.HasIndex(e => new { e.InstrumentId, e.At });
    }

    public void Configure(EntityTypeBuilder<WrenchAdapter> builder)
    {
        builder.Property(a => a.Name).HasMaxLength(Limits.Name);
        builder.Property(a => a.Drive).HasMaxLength(Limits.Drive);
        builder.Property(a => a.Tool).HasMaxLength(Limits.Name);
        builder.HasIndex(a => a.Name).IsUnique();
        builder.ToTable(t => t.HasCheckConstraint("ck_wrench_adapters_length", "effective_length_mm >= 0"));
        builder.HasRowVersion();
    }
}
