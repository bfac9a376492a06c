using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Workshop.Domain.JobCards;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;

namespace Workshop.Web.Data;

/// <summary>Sentences that many mappings say.</summary>
internal static class MappingExtensions
{
    public const string RowVersion = "RowVersion";

    /// <summary>The row's version is PostgreSQL's xmin: it becomes the ETag, and a lost update is refused.</summary>
    public static void HasRowVersion<T>(this EntityTypeBuilder<T> row)
        where T : class =>
        row.Property<uint>(RowVersion).IsRowVersion();

    /// <summary>Points at a row of <typeparamref name="TOther"/> that may not be deleted under it.</summary>
    public static void References<TRow, TOther>(
        this EntityTypeBuilder<TRow> row, System.Linq.Expressions.Expression<Func<TRow, object?>> key)
        where TRow : class
        where TOther : class =>
        row.HasOne<TOther>().WithMany().HasForeignKey(key).OnDelete(DeleteBehavior.Restrict);

    public static void ReferencesPerson<TRow>(
        this EntityTypeBuilder<TRow> row, params System.Linq.Expressions.Expression<Func<TRow, object?>>[] keys)
        where TRow : class
    {
        foreach (var key in keys)
        {
            row.References<TRow, Person>(key);
        }
    }

    public static void ReferencesJobCard<TRow>(
        this EntityTypeBuilder<TRow> row, System.Linq.Expressions.Expression<Func<TRow, object?>> key)
        where TRow : class =>
        row.References<TRow, JobCard>(key);

    public static void ReferencesOdometerReading<TRow>(
        this EntityTypeBuilder<TRow> row, System.Linq.Expressions.Expression<Func<TRow, object?>> key)
        where TRow : class =>
        row.References<TRow, OdometerReading>(key);
}
