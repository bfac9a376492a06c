using FluentValidation;
using Microsoft.EntityFrameworkCore;

namespace Workshop.Web.Http;

/// <summary>One page of a list. <see cref="Next"/> is what to send as <c>after</c> for the next one; absent at the end.</summary>
public sealed record Slice<T>(IReadOnlyList<T> Rows, string? Next);

internal static class Slice
{
    public const int Usual = 50;
    public const int Largest = 500;

    public static IRuleBuilderOptions<T, int?> IsPageSize<T>(this IRuleBuilder<T, int?> rule) => rule.IsWhole(1, Largest);

    /// <summary>Takes one row more than asked for, to know whether there is a next page.</summary>
    public static async Task<Slice<T>> ToSlice<T>(
        this IQueryable<T> rows, int? take, Func<T, string> key, CancellationToken ct)
    {
        var count = take ?? Usual;
        var read = await rows.Take(count + 1).ToListAsync(ct);
        return read.Count > count
            ? new Slice<T>(read[..count], key(read[count - 1]))
            : new Slice<T>(read, null);
    }

    public static string EscapeLike(string text) =>
        text.Replace("\\", "\\\\").Replace("%", "\\%").Replace("_", "\\_");
}
