using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

internal sealed class PeopleMapping :
    IEntityTypeConfiguration<Person>,
    IEntityTypeConfiguration<Remark>,
    IEntityTypeConfiguration<Account>,
    IEntityTypeConfiguration<Session>,
    IEntityTypeConfiguration<IdentityRole<Guid>>,
    IEntityTypeConfiguration<IdentityUserRole<Guid>>,
    IEntityTypeConfiguration<IdentityUserClaim<Guid>>,
    IEntityTypeConfiguration<IdentityUserLogin<Guid>>,
    IEntityTypeConfiguration<IdentityUserToken<Guid>>,
    IEntityTypeConfiguration<IdentityRoleClaim<Guid>>
{
    public void Configure(EntityTypeBuilder<Person> builder)
    {
        builder.Property(p => p.Name).HasMaxLength(120);
        builder.Property(p => p.Phone).HasMaxLength(40);
        builder.Property(p => p.Email).HasMaxLength(160);
        builder.HasIndex(p => p.Name);
        builder.HasRowVersion();
    }

    public void Configure(EntityTypeBuilder<Remark> builder)
    {
        builder.Property(r => r.Text).HasMaxLength(4000);
        builder.ReferencesPerson(r => r.WrittenBy);
    }

    public void Configure(EntityTypeBuilder<Account> builder)
    {
        builder.ToTable("accounts");
        builder.References<Account, Person>(a => a.PersonId);
    }

    public void Configure(EntityTypeBuilder<Session> builder)
    {
        builder.Property(s => s.Device).HasMaxLength(200);
        builder.HasIndex(s => s.TokenHash).IsUnique();
        builder.References<Session, Account>(s => s.AccountId);
    }

    public void Configure(EntityTypeBuilder<IdentityRole<Guid>> builder) => builder.ToTable("roles");

    public void Configure(EntityTypeBuilder<IdentityUserRole<Guid>> builder) => builder.ToTable("account_roles");

    public void Configure(EntityTypeBuilder<IdentityUserClaim<Guid>> builder) => builder.ToTable("account_claims");

    public void Configure(EntityTypeBuilder<IdentityUserLogin<Guid>> builder) => builder.ToTable("account_logins");

    public void Configure(EntityTypeBuilder<IdentityUserToken<Guid>> builder) => builder.ToTable("account_tokens");

    public void Configure(EntityTypeBuilder<IdentityRoleClaim<Guid>> builder) => builder.ToTable("role_claims");
}
