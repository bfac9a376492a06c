using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Kits;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class KitsMapping : IEntityTypeConfiguration<SealInspection>, IEntityTypeConfiguration<KitSubstitution>
{
    public void Configure(EntityTypeBuilder<SealInspection> builder)
    {
        builder.Property(i => i.PlaceCode).HasMaxLength(Limits.Code);
        builder.Property(i => i.PartCode).HasMaxLength(Limits.Code);
        builder.ReferencesJobCard(i => i.JobCardNumber);
        builder.References<SealInspection, Remark>(i => i.RemarkId);
        builder.References<SealInspection, SealInspection>(i => i.SupersedesId);
        builder.ReferencesPerson(i => i.InspectedBy);
        builder.HasIndex(i => i.JobCardNumber);
        builder.ToTable(t => t.HasCheckConstraint("ck_seal_inspections_taken", "taken >= 0 and (taken > 0 or verdict = 'fit')"));
    }

    public void Configure(EntityTypeBuilder<KitSubstitution> builder)
    {
        builder.Property(s => s.PartCode).HasMaxLength(Limits.Code);
        builder.ReferencesJobCard(s => s.JobCardNumber);
        builder.References<KitSubstitution, Part>(s => s.InsteadId);
        builder.References<KitSubstitution, Remark>(s => s.ReasonRemarkId);
        builder.ReferencesPerson(s => s.ChosenBy);
        builder.HasIndex(s => s.JobCardNumber);
    }
}
