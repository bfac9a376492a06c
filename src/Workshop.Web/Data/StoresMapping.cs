using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Orders;
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
    IEntityTypeConfiguration<ExpectedDelivery>,
    IEntityTypeConfiguration<PartAlternative>,
    IEntityTypeConfiguration<PartScanCode>,
    IEntityTypeConfiguration<StockLot>,
    IEntityTypeConfiguration<StockCount>,
    IEntityTypeConfiguration<StockCountLine>,
    IEntityTypeConfiguration<GoodsInImport>
{
    private const int LongestDesignation = 60;
    private const int LongestScanCode = 80;

    public void Configure(EntityTypeBuilder<Part> builder)
    {
        builder.Property(p => p.Code).HasMaxLength(Limits.Code);
        builder.Property(p => p.Name).HasMaxLength(Limits.Name);
        builder.Property(p => p.Material).HasMaxLength(Limits.Name);
        builder.Property(p => p.Form).HasMaxLength(Limits.Code);
        builder.Property(p => p.Designation).HasMaxLength(LongestDesignation);
        builder.Property(p => p.TaxRateCode).HasMaxLength(Limits.Code);
        builder.Property(p => p.Stocked).HasDefaultValue(true).HasSentinel(true);
        builder.References<Part, Part>(p => p.ReplacedById);
        builder.References<Part, Part>(p => p.MergedIntoId);
        builder.HasIndex(p => p.Code).IsUnique();
        builder.HasIndex(p => new { p.Kind, p.InnerDiameterMm, p.SectionMm });
        builder.ToTable(t => t.HasCheckConstraint("ck_parts_merged", "merged_into_id is distinct from id and replaced_by_id is distinct from id"));
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<PartAlternative> builder)
    {
        builder.HasKey(a => new { a.PartId, a.AlternativeId });
        builder.Property(a => a.Note).HasMaxLength(Limits.Name);
        builder.References<PartAlternative, Part>(a => a.PartId);
        builder.References<PartAlternative, Part>(a => a.AlternativeId);
        builder.ToTable(t => t.HasCheckConstraint("ck_part_alternatives_two", "part_id <> alternative_id"));
    }

    public void Configure(EntityTypeBuilder<PartScanCode> builder)
    {
        builder.HasKey(c => c.Code);
        builder.Property(c => c.Code).HasMaxLength(LongestScanCode);
        builder.References<PartScanCode, Part>(c => c.PartId);
        builder.ToTable(t => t.HasCheckConstraint("ck_part_scan_codes_quantity", "quantity > 0"));
    }

    public void Configure(EntityTypeBuilder<StockLot> builder)
    {
        builder.Property(l => l.Code).HasMaxLength(LongestDesignation);
        builder.References<StockLot, Part>(l => l.PartId);
        builder.HasIndex(l => new { l.PartId, l.Code }).IsUnique();
        builder.HasIndex(l => l.ExpiresOn).HasFilter("expires_on is not null");
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<StockCount> builder)
    {
        builder.References<StockCount, StoragePlace>(c => c.PlaceId);
        builder.ReferencesPerson(c => c.StartedBy, c => c.ClosedBy);
        builder.ToTable(t => t.HasCheckConstraint("ck_stock_counts_given_up", "not given_up or closed_at is not null"));
        builder.HasIndex(c => c.PlaceId).IsUnique().HasFilter("closed_at is null").HasDatabaseName("ix_stock_counts_open");
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<StockCountLine> builder)
    {
        builder.References<StockCountLine, StockCount>(l => l.CountId);
        builder.References<StockCountLine, Part>(l => l.PartId);
        builder.References<StockCountLine, StockLot>(l => l.LotId);
        builder.References<StockCountLine, Remark>(l => l.RemarkId);
        builder.ReferencesPerson(l => l.CountedBy, l => l.ExplainedBy);
        builder.HasIndex(l => new { l.CountId, l.Number }).IsUnique();
        builder.ToTable(t => t.HasCheckConstraint("ck_stock_count_lines_counted", "counted >= 0"));
    }

    public void Configure(EntityTypeBuilder<GoodsInImport> builder)
    {
        builder.Property(i => i.FileName).HasMaxLength(Limits.Name);
        builder.ReferencesPerson(i => i.ImportedBy);
        builder.HasIndex(i => i.ContentHash).IsUnique();
    }

    public void Configure(EntityTypeBuilder<StoragePlace> builder)
    {
        builder.Property(p => p.Name).HasMaxLength(Limits.Name);
        builder.Property(p => p.Code).HasMaxLength(Limits.Code).HasDefaultValueSql("'P' || lpad(nextval('storage_place_codes')::text, 3, '0')");
        builder.HasIndex(p => p.Name).IsUnique();
        builder.HasIndex(p => p.Code).IsUnique();
        builder.HasRowVersion();
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
        builder.References<StockMovement, StockLot>(m => m.LotId);
        builder.References<StockMovement, PurchaseOrderLine>(m => m.OrderLineId);
        builder.References<StockMovement, StockCount>(m => m.CountId);
        builder.HasIndex(m => new { m.PartId, m.MovedAt, m.Id });
        builder.HasIndex(m => new { m.PartId, m.JobCardNumber, m.PlaceId, m.LotId })
            .HasFilter("reserved_change <> 0").IncludeProperties(m => m.ReservedChange).HasDatabaseName("ix_stock_movements_reserved");
        builder.HasIndex(m => m.JobCardNumber);
        builder.HasIndex(m => new { m.MovedBy, m.MovedAt });
    }

    public void Configure(EntityTypeBuilder<StockBalance> builder)
    {
        builder.Property(b => b.Thickness).HasColumnName("thickness_mm");
        builder.ToTable(t => t.HasCheckConstraint("ck_stock_balances_not_below_zero", "on_hand >= 0 and reserved >= 0"));
        builder.References<StockBalance, Part>(b => b.PartId);
        builder.References<StockBalance, StoragePlace>(b => b.PlaceId);
        builder.References<StockBalance, StockLot>(b => b.LotId);
        builder.HasIndex(b => new { b.PartId, b.PlaceId, b.Thickness, b.Condition, b.LotId }).IsUnique().AreNullsDistinct(false);
    }

    public void Configure(EntityTypeBuilder<ExpectedDelivery> builder)
    {
        builder.Property(d => d.Thickness).HasColumnName("thickness_mm");
        builder.ToTable(t => t.HasCheckConstraint("ck_expected_deliveries_quantity", "quantity > 0"));
        builder.References<ExpectedDelivery, Part>(d => d.PartId);
        builder.References<ExpectedDelivery, PurchaseOrderLine>(d => d.OrderLineId);
        builder.ReferencesPerson(d => d.EnteredBy);
        builder.HasRowVersion();
    }
}
