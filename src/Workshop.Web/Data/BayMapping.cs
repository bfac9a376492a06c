using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Clearances;
using Workshop.Domain.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>Where the crankshaft stands, and who works on what since when.</summary>
internal sealed class BayMapping : IEntityTypeConfiguration<PositionConfirmation>, IEntityTypeConfiguration<WorkSpell>
{
    public void Configure(EntityTypeBuilder<PositionConfirmation> builder)
    {
        builder.Property(p => p.Position).HasMaxLength(Limits.Name);
        builder.ReferencesJobCard(p => p.JobCardNumber);
        builder.ReferencesPerson(p => p.ConfirmedBy);
        builder.HasIndex(p => new { p.JobCardNumber, p.ConfirmedAt });
    }

    /// <summary>The migration adds that the spells of a person never overlap.</summary>
    public void Configure(EntityTypeBuilder<WorkSpell> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint(
            "ck_work_spells_span", "ended_at >= started_at and (ended_at is null) = (ended_for is null)"));
        builder.ReferencesJobCard(s => s.JobCardNumber);
        builder.ReferencesPerson(s => s.PersonId);
        builder.HasIndex(s => s.JobCardNumber);
        builder.HasIndex(s => new { s.PersonId, s.StartedAt });
    }
}
