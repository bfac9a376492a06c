using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Records;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>What was handed to owners, and the links under which they read it.</summary>
internal sealed class RecordsMapping : IEntityTypeConfiguration<IssuedRecord>, IEntityTypeConfiguration<RecordLink>
{
    public void Configure(EntityTypeBuilder<IssuedRecord> builder)
    {
        builder.HasKey(r => r.JobCardNumber);
        builder.Property(r => r.JobCardNumber).ValueGeneratedNever();

        // A row never changes in memory, so nobody has to compare documents.
        builder.Property(r => r.Document).HasColumnType("jsonb").HasConversion(
            document => JsonSerializer.Serialize(document, WorkshopJson.Options),
            text => JsonSerializer.Deserialize<ServiceRecord>(text, WorkshopJson.Options)!,
            new ValueComparer<ServiceRecord>((a, b) => ReferenceEquals(a, b), document => document.JobCardNumber, document => document));
        builder.Property(r => r.Words).HasColumnType("jsonb").HasConversion(
            words => JsonSerializer.Serialize(words, WorkshopJson.Options),
            text => JsonSerializer.Deserialize<Dictionary<string, string>>(text, WorkshopJson.Options)!,
            new ValueComparer<IReadOnlyDictionary<string, string>>(
                (a, b) => ReferenceEquals(a, b), words => words.Count, words => words));
        builder.ReferencesJobCard(r => r.JobCardNumber);
        builder.ReferencesPerson(r => r.IssuedBy);
    }

    public void Configure(EntityTypeBuilder<RecordLink> builder)
    {
        builder.References<RecordLink, IssuedRecord>(l => l.JobCardNumber);
        builder.ReferencesPerson(l => l.CreatedBy, l => l.RevokedBy);
        builder.HasIndex(l => l.SecretDigest).IsUnique();
        builder.HasIndex(l => l.JobCardNumber);
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_record_links_lives", "expires_at > created_at");
            t.HasCheckConstraint("ck_record_links_opened", "opened >= 0 and (opened > 0) = (last_opened_at is not null)");
        });
    }
}
