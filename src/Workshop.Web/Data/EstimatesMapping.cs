using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Estimates;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>What a visit will cost, what the owner said to it, and what was found meanwhile.</summary>
internal sealed class EstimatesMapping :
    IEntityTypeConfiguration<TaxRate>,
    IEntityTypeConfiguration<Estimate>,
    IEntityTypeConfiguration<EstimateLine>,
    IEntityTypeConfiguration<EstimateAnswer>,
    IEntityTypeConfiguration<Finding>,
    IEntityTypeConfiguration<Photo>
{
    private const int LongestMediaType = 20;
    private const int LongestSource = Limits.Code + 10;

    public void Configure(EntityTypeBuilder<TaxRate> builder)
    {
        builder.HasKey(r => new { r.Code, r.ValidFrom });
        builder.Property(r => r.Code).HasMaxLength(Limits.Code);
        builder.Property(r => r.Name).HasMaxLength(Limits.Name);
        builder.ToTable(t => t.HasCheckConstraint("ck_tax_rates_percent", "percent >= 0 and percent <= 100"));
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<Estimate> builder)
    {
        builder.Property(e => e.Currency).HasMaxLength(3);
        builder.ReferencesJobCard(e => e.JobCardNumber);
        builder.References<Estimate, Finding>(e => e.FindingId);
        builder.ReferencesPerson(e => e.MadeBy);
        builder.ToTable(t => t.HasCheckConstraint("ck_estimates_gross", "gross = net + tax"));
        builder.HasIndex(e => new { e.JobCardNumber, e.Version }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<EstimateLine> builder)
    {
        builder.HasKey(l => new { l.EstimateId, l.Place });
        builder.Property(l => l.Text).HasMaxLength(Limits.Remark);
        builder.Property(l => l.PartCode).HasMaxLength(Limits.Code);
        builder.Property(l => l.Source).HasMaxLength(LongestSource);
        builder.Property(l => l.Option).HasMaxLength(Limits.Code);
        builder.Property(l => l.TaxCode).HasMaxLength(Limits.Code);
        builder.References<EstimateLine, Estimate>(l => l.EstimateId);
        builder.References<EstimateLine, Remark>(l => l.ReasonRemarkId);
    }

    public void Configure(EntityTypeBuilder<EstimateAnswer> builder)
    {
        builder.References<EstimateAnswer, Estimate>(a => a.EstimateId);
        builder.References<EstimateAnswer, Finding>(a => a.FindingId);
        builder.References<EstimateAnswer, Remark>(a => a.RemarkId);
        builder.ReferencesPerson(a => a.PersonId, a => a.RecordedBy);
        builder.HasIndex(a => new { a.EstimateId, a.RecordedAt });
        builder.HasIndex(a => new { a.FindingId, a.RecordedAt });
        builder.ToTable(t => t.HasCheckConstraint("ck_estimate_answers_to_what",
            "estimate_id is not null or (finding_id is not null and decision = 'declined')"));
    }

    public void Configure(EntityTypeBuilder<Finding> builder)
    {
        builder.Property(f => f.Place).HasMaxLength(Limits.Name);
        builder.ReferencesJobCard(f => f.JobCardNumber);
        builder.Property(f => f.ServiceItemCode).HasMaxLength(Limits.Code);
        builder.References<Finding, Remark>(f => f.TextRemarkId);
        builder.References<Finding, Remark>(f => f.WithdrawnRemarkId);
        builder.ReferencesPerson(f => f.FoundBy, f => f.DoneBy, f => f.WithdrawnBy);
        builder.HasIndex(f => f.JobCardNumber);
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<Photo> builder)
    {
        builder.Property(p => p.MediaType).HasMaxLength(LongestMediaType);
        builder.ReferencesJobCard(p => p.JobCardNumber);
        builder.References<Photo, Finding>(p => p.FindingId);
        builder.References<Photo, Remark>(p => p.CaptionRemarkId);
        builder.References<Photo, Remark>(p => p.RemovedRemarkId);
        builder.ReferencesPerson(p => p.AddedBy, p => p.RemovedBy);
        builder.ToTable(t => t.HasCheckConstraint("ck_photos_content", "(octet_length(content) = 0) = (removed_at is not null)"));
        builder.HasRowVersion();
        builder.HasIndex(p => p.JobCardNumber);
    }
}
