using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Clearances;
using Workshop.Domain.Shims;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class ShimPlanMapping : IEntityTypeConfiguration<ShimPlanChoice>, IEntityTypeConfiguration<HandTurn>
{
    public void Configure(EntityTypeBuilder<ShimPlanChoice> builder)
    {
        builder.HasKey(c => new { c.JobCardNumber, c.Version });
        builder.Property(c => c.Locks).HasColumnType("jsonb").HasConversion(
            locks => JsonSerializer.Serialize(locks, WorkshopJson.Options),
            json => JsonSerializer.Deserialize<List<ShimLock>>(json, WorkshopJson.Options)!,
            new ValueComparer<IReadOnlyList<ShimLock>>(
                (a, b) => a!.SequenceEqual(b!), locks => locks.Aggregate(0, HashCode.Combine), locks => locks.ToList()));
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.ReferencesPerson(c => c.ChosenBy);
    }

    public void Configure(EntityTypeBuilder<HandTurn> builder)
    {
        builder.ReferencesJobCard(t => t.JobCardNumber);
        builder.ReferencesPerson(t => t.ConfirmedBy);
        builder.HasIndex(t => t.JobCardNumber);
    }
}
