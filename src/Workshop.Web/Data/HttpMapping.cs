using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class HttpMapping : IEntityTypeConfiguration<StoredAnswer>, IEntityTypeConfiguration<AuditRow>
{
    public void Configure(EntityTypeBuilder<StoredAnswer> builder)
    {
        builder.HasKey(a => new { a.PersonId, a.UseCase, a.Key });
        builder.Property(a => a.UseCase).HasMaxLength(Limits.Name);
        builder.Property(a => a.Key).HasMaxLength(Limits.IdempotencyKey);
        builder.Property(a => a.Answer).HasColumnType("jsonb");
        builder.HasIndex(a => a.AnsweredAt);
    }

    public void Configure(EntityTypeBuilder<AuditRow> builder)
    {
        builder.Property(a => a.At).HasDefaultValueSql("clock_timestamp()");
        builder.Property(a => a.TableName).HasMaxLength(63);
        builder.Property(a => a.Operation).HasMaxLength(6);
        builder.HasIndex(a => new { a.TableName, a.At });
    }
}
