using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.JobCards;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class ShimsMapping : IEntityTypeConfiguration<Shim>, IEntityTypeConfiguration<ShimSeries>
{
    public void Configure(EntityTypeBuilder<Shim> builder)
    {
        builder.Ignore(s => s.Where);
        builder.Property(s => s.Thickness).HasColumnName("thickness_mm");
        builder.Property(s => s.Nominal).HasColumnName("nominal_mm");
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_shims_in_one_place", "num_nonnulls(place_id, engine_id, bench_card_number, gone) = 1");
            t.HasCheckConstraint("ck_shims_valve", "(valve is null) = (engine_id is null and bench_card_number is null)");
        });
        builder.References<Shim, Part>(s => s.PartId);
        builder.References<Shim, StoragePlace>(s => s.PlaceId);
        builder.References<Shim, Engine>(s => s.EngineId);
        builder.References<Shim, Motorcycle>(s => s.CameFromMotorcycleId);
        builder.References<Shim, JobCard>(s => s.BenchCardNumber);
        builder.HasIndex(s => new { s.PartId, s.Thickness });
        builder.HasIndex(s => new { s.EngineId, s.Valve }).IsUnique().HasFilter("engine_id is not null");
    }

    public void Configure(EntityTypeBuilder<ShimSeries> builder)
    {
        builder.HasKey(s => s.PartId);
        builder.Property(s => s.PartId).ValueGeneratedNever();
        builder.Property(s => s.Smallest).HasColumnName("smallest_mm");
        builder.Property(s => s.Largest).HasColumnName("largest_mm");
        builder.Property(s => s.DiameterMm).HasPrecision(6, 3);
        builder.Property(s => s.StepMm).HasPrecision(5, 3);
        builder.Property(s => s.Source).HasMaxLength(Limits.Remark);
        builder.ToTable(t => t.HasCheckConstraint(
            "ck_shim_series_sizes",
            $"largest_mm >= smallest_mm and step_mm > 0 and columns between {ShimSeries.SmallestColumns} and {ShimSeries.LargestColumns}"));
        builder.References<ShimSeries, Part>(s => s.PartId);
        builder.References<ShimSeries, StoragePlace>(s => s.PlaceId);
    }
}
