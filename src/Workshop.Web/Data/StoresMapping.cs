using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class StoresMapping :
    IEntityTypeConfiguration<Part>,
    IEntityTypeConfiguration<StoragePlace>,
    IEntityTypeConfiguration<StockMovement>,
    IEntityTypeConfiguration<StockBalance>,
    IEntityTypeConfiguration<ExpectedDelivery>
{
    public void Configure(EntityTypeBuilder<Part> builder)
    {
        builder.Property(p => p.Code).HasMaxLength(Limits.Code);
        builder.Property(p => p.Name).HasMaxLength(Limits.Name);
        builder.Property(p => p.Material).HasMaxLength(Limits.Name);
        builder.HasIndex(p => p.Code).IsUnique();
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<StoragePlace> builder)
    {
        builder.Property(p => p.Name).HasMaxLength(Limits.Name);
        builder.HasIndex(p => p.Name).IsUnique();
    }

    public void Configure(EntityTypeBuilder<StockMovement> builder)
    {
        builder.Property(m => m.Thickness).HasColumnName("thickness_mm");
        builder.References<StockMovement, Part>(m => m.PartId);
        builder.References<StockMovement, StoragePlace>(m => m.PlaceId);
        builder.Property(m => m.Nominal).HasColumnName("nominal_mm");
        builder.ToTable(t => t.HasCheckConstraint("ck_stock_movements_valve", "(engine_id is null) = (valve is null)"));
        builder.References<StockMovement, Shim>(m => m.ShimId);
        builder.References<StockMovement, Engine>(m => m.EngineId);
        builder.References<StockMovement, Remark>(m => m.ReasonRemarkId);
        builder.ReferencesJobCard(m => m.JobCardNumber);
        builder.ReferencesPerson(m => m.MovedBy);
        builder.HasIndex(m => new { m.PartId, m.MovedAt });
        builder.HasIndex(m => m.JobCardNumber);
    }

    public void Configure(EntityTypeBuilder<StockBalance> builder)
    {
        builder.Property(b => b.Thickness).HasColumnName("thickness_mm");
        builder.ToTable(t => t.HasCheckConstraint("ck_stock_balances_not_below_zero", "on_hand >= 0 and reserved >= 0"));
        builder.References<StockBalance, Part>(b => b.PartId);
        builder.References<StockBalance, StoragePlace>(b => b.PlaceId);
        builder.HasIndex(b => new { b.PartId, b.PlaceId, b.Thickness, b.Condition }).IsUnique().AreNullsDistinct(false);
    }

    public void Configure(EntityTypeBuilder<ExpectedDelivery> builder)
    {
        builder.Property(d => d.Thickness).HasColumnName("thickness_mm");
        builder.ToTable(t => t.HasCheckConstraint("ck_expected_deliveries_quantity", "quantity > 0"));
        builder.References<ExpectedDelivery, Part>(d => d.PartId);
        builder.ReferencesPerson(d => d.EnteredBy);
        builder.HasRowVersion();
    }
}
