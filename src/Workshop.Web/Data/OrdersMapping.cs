using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Orders;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class OrdersMapping :
    IEntityTypeConfiguration<Supplier>,
    IEntityTypeConfiguration<PartSupply>,
    IEntityTypeConfiguration<PurchaseOrder>,
    IEntityTypeConfiguration<PurchaseOrderLine>
{
    private const int FirstNumber = 501;

    public void Configure(EntityTypeBuilder<Supplier> builder)
    {
        builder.Property(s => s.Name).HasMaxLength(Limits.Name);
        builder.Property(s => s.Email).HasMaxLength(Limits.Email);
        builder.Property(s => s.CustomerNumber).HasMaxLength(Limits.Code);
        builder.HasIndex(s => s.Name).IsUnique();
        builder.ToTable(t => t.HasCheckConstraint("ck_suppliers_delivery", "delivery_days >= 0 and delivery_days_sd >= 0"));
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<PartSupply> builder)
    {
        builder.Property(s => s.SupplierCode).HasMaxLength(Limits.Code);
        builder.References<PartSupply, Part>(s => s.PartId);
        builder.References<PartSupply, Supplier>(s => s.SupplierId);
        builder.HasIndex(s => new { s.PartId, s.SupplierId }).IsUnique();
        builder.HasIndex(s => s.PartId).IsUnique().HasFilter("preferred").HasDatabaseName("ix_part_supplies_preferred");
        builder.ToTable(t => t.HasCheckConstraint("ck_part_supplies_pack", "pack_quantity > 0 and smallest_quantity > 0"));
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<PurchaseOrder> builder)
    {
        builder.HasKey(o => o.Number);
        builder.Property(o => o.Number).UseIdentityByDefaultColumn().HasIdentityOptions(startValue: FirstNumber);
        builder.References<PurchaseOrder, Supplier>(o => o.SupplierId);
        builder.References<PurchaseOrder, Remark>(o => o.RemarkId);
        builder.ReferencesPerson(o => o.MadeBy, o => o.PlacedBy);
        builder.HasIndex(o => new { o.State, o.Number });
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<PurchaseOrderLine> builder)
    {
        builder.Property(l => l.Thickness).HasColumnName("thickness_mm");
        builder.Property(l => l.Reason).HasMaxLength(Limits.Remark);
        builder.References<PurchaseOrderLine, PurchaseOrder>(l => l.OrderNumber);
        builder.References<PurchaseOrderLine, Part>(l => l.PartId);
        builder.HasIndex(l => new { l.OrderNumber, l.PartId, l.Thickness }).IsUnique().AreNullsDistinct(false);
        builder.ToTable(t => t.HasCheckConstraint("ck_purchase_order_lines_quantity", "quantity > 0 and received >= 0"));
        builder.HasRowVersion();
    }
}
