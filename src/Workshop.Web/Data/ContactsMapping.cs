using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.Contacts;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>Whom the workshop may reach, when it did, and what it writes.</summary>
internal sealed class ContactsMapping :
    IEntityTypeConfiguration<Consent>,
    IEntityTypeConfiguration<Contact>,
    IEntityTypeConfiguration<MessageTemplate>,
    IEntityTypeConfiguration<OutboxMessage>
{
    public void Configure(EntityTypeBuilder<Consent> builder)
    {
        builder.Property(c => c.HowGiven).HasMaxLength(Consent.LongestHow);
        builder.ReferencesPerson(c => c.PersonId, c => c.EnteredBy, c => c.WithdrawnBy);
        builder.HasIndex(c => new { c.PersonId, c.Channel }).IsUnique().HasFilter("withdrawn_at is null").HasDatabaseName("ix_consents_standing");
        builder.HasIndex(c => c.PersonId);
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<Contact> builder)
    {
        builder.ToTable("contacts");
        builder.ReferencesPerson(c => c.PersonId, c => c.By);
        builder.References<Contact, Motorcycle>(c => c.MotorcycleId);
        builder.References<Contact, Remark>(c => c.RemarkId);
        builder.References<Contact, OutboxMessage>(c => c.MessageId);
        builder.HasIndex(c => new { c.PersonId, c.At });
    }

    public void Configure(EntityTypeBuilder<MessageTemplate> builder)
    {
        builder.Property(t => t.Name).HasMaxLength(Limits.Name);
        builder.Property(t => t.Subject).HasMaxLength(MessageRules.LongestSubject);
        builder.Property(t => t.Body).HasMaxLength(MessageRules.LongestBody);
        builder.HasIndex(t => t.Name).IsUnique();
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<OutboxMessage> builder)
    {
        builder.Property(m => m.To).HasMaxLength(Limits.Email);
        builder.Property(m => m.Subject).HasMaxLength(MessageRules.LongestSubject);
        builder.Property(m => m.Body).HasMaxLength(MessageRules.LongestBody);
        builder.Property(m => m.LastFault).HasMaxLength(OutboxMessage.LongestFault);
        builder.Property(m => m.InternetMessageId).HasMaxLength(OutboxMessage.LongestFault);
        builder.ReferencesPerson(m => m.PersonId, m => m.CreatedBy, m => m.SentBy);
        builder.References<OutboxMessage, Motorcycle>(m => m.MotorcycleId);
        builder.HasIndex(m => m.NextTryAt).HasFilter("state = 'waiting'").HasDatabaseName("ix_outbox_messages_waiting");
        builder.HasIndex(m => m.ClaimedUntil).HasFilter("state = 'being_sent'").HasDatabaseName("ix_outbox_messages_in_hand");
        builder.HasIndex(m => new { m.CreatedAt, m.Id });
        builder.HasRowVersion();
    }
}
