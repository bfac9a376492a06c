using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class JobCardsMapping :
    IEntityTypeConfiguration<JobCard>,
    IEntityTypeConfiguration<JobCardItem>,
    IEntityTypeConfiguration<CheckIn>,
    IEntityTypeConfiguration<Cancellation>,
    IEntityTypeConfiguration<CautionAcknowledgement>,
    IEntityTypeConfiguration<SignOff>,
    IEntityTypeConfiguration<FastenerTick>,
    IEntityTypeConfiguration<TickWitness>,
    IEntityTypeConfiguration<SecondPersonMark>
{
    public const int FirstNumber = 1001;

    public void Configure(EntityTypeBuilder<JobCard> builder)
    {
        builder.HasKey(c => c.Number);
        builder.Property(c => c.Number).UseIdentityByDefaultColumn().HasIdentityOptions(startValue: FirstNumber);
        builder.ToTable(t => t.HasCheckConstraint("ck_job_cards_span", "ends_at > starts_at"));
        builder.References<JobCard, Motorcycle>(c => c.MotorcycleId);
        builder.References<JobCard, Engine>(c => c.EngineId);
        builder.References<JobCard, EngineModelVersion>(c => c.EngineModelVersionId);
        builder.ReferencesPerson(c => c.BookedBy);
        builder.HasIndex(c => new { c.State, c.StartsAt });
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<JobCardItem> builder)
    {
        builder.HasKey(i => new { i.JobCardNumber, i.ServiceItemCode });
        builder.Property(i => i.ServiceItemCode).HasMaxLength(Limits.Code);
        builder.ReferencesJobCard(i => i.JobCardNumber);
    }

    public void Configure(EntityTypeBuilder<CheckIn> builder)
    {
        builder.HasKey(c => c.JobCardNumber);
        builder.Property(c => c.JobCardNumber).ValueGeneratedNever();
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.ReferencesOdometerReading(c => c.OdometerReadingId);
        builder.References<CheckIn, Remark>(c => c.OwnersWordsRemarkId);
        builder.References<CheckIn, Remark>(c => c.SeenOnArrivalRemarkId);
        builder.ReferencesPerson(c => c.CheckedInBy);
    }

    public void Configure(EntityTypeBuilder<Cancellation> builder)
    {
        builder.HasKey(c => c.JobCardNumber);
        builder.Property(c => c.JobCardNumber).ValueGeneratedNever();
        builder.ReferencesJobCard(c => c.JobCardNumber);
        builder.References<Cancellation, Remark>(c => c.ReasonRemarkId);
        builder.ReferencesPerson(c => c.CancelledBy);
    }

    public void Configure(EntityTypeBuilder<CautionAcknowledgement> builder)
    {
        builder.Property(a => a.CautionCode).HasMaxLength(Limits.Code);
        builder.ReferencesJobCard(a => a.JobCardNumber);
        builder.ReferencesPerson(a => a.AcknowledgedBy);
        builder.HasIndex(a => new { a.JobCardNumber, a.CautionCode });
    }

    public void Configure(EntityTypeBuilder<SignOff> builder)
    {
        builder.HasKey(s => s.JobCardNumber);
        builder.Property(s => s.JobCardNumber).ValueGeneratedNever();
        builder.ReferencesJobCard(s => s.JobCardNumber);
        builder.ReferencesOdometerReading(s => s.OdometerReadingId);
        builder.References<SignOff, Remark>(s => s.RemarkId);
        builder.ReferencesPerson(s => s.SignedBy);
    }

    public void Configure(EntityTypeBuilder<FastenerTick> builder)
    {
        builder.Property(t => t.FastenerCode).HasMaxLength(Limits.Code);
        builder.ReferencesJobCard(t => t.JobCardNumber);
        builder.References<FastenerTick, Instrument>(t => t.WrenchId);
        builder.References<FastenerTick, WrenchAdapter>(t => t.AdapterId);
        builder.References<FastenerTick, FastenerTick>(t => t.SupersedesId);
        builder.ReferencesPerson(t => t.TickedBy);
        builder.HasIndex(t => new { t.JobCardNumber, t.FastenerCode });
        builder.HasIndex(t => new { t.WrenchId, t.TickedAt });
    }

    public void Configure(EntityTypeBuilder<TickWitness> builder)
    {
        builder.HasKey(w => w.TickId);
        builder.References<TickWitness, FastenerTick>(w => w.TickId);
        builder.ReferencesPerson(w => w.WitnessedBy);
    }

    public void Configure(EntityTypeBuilder<SecondPersonMark> builder)
    {
        builder.HasKey(m => new { m.EngineModelId, m.FastenerCode });
        builder.Property(m => m.FastenerCode).HasMaxLength(Limits.Code);
        builder.References<SecondPersonMark, EngineModel>(m => m.EngineModelId);
        builder.ReferencesPerson(m => m.MarkedBy);
    }
}
