using System.Diagnostics.CodeAnalysis;

namespace Workshop.Domain.Statistics;

/// <summary>
/// A result, or the named reason why there is none. Never NaN: a caller either has numbers that mean something or a
/// sentence that can be shown.
/// </summary>
/// <typeparam name="T">The kind of result.</typeparam>
public sealed class Computed<T>
    where T : notnull
{
    private readonly T? value;

    private Computed(T? value, NotComputable? whyNot)
    {
        this.value = value;
        WhyNot = whyNot;
    }

    /// <summary>Why there is no result; null when there is one.</summary>
    public NotComputable? WhyNot { get; }

    /// <summary>True when there is a result.</summary>
    [MemberNotNullWhen(false, nameof(WhyNot))]
    public bool HasValue => WhyNot is null;

    /// <summary>The result.</summary>
    /// <exception cref="InvalidOperationException">There is none: ask <see cref="HasValue"/> first.</exception>
    public T Value => HasValue ? value! : throw new InvalidOperationException(WhyNot.Explanation);

    /// <summary>Another result made from this one, or the same reason carried on.</summary>
    public Computed<TNext> Then<TNext>(Func<T, Computed<TNext>> next)
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(next);
        return HasValue ? next(value!) : WhyNot;
    }

    /// <summary>A result as it stands.</summary>
    public static implicit operator Computed<T>(T value) => new(value, null);

    /// <summary>A reason instead of a result.</summary>
    public static implicit operator Computed<T>(NotComputable whyNot)
    {
        ArgumentNullException.ThrowIfNull(whyNot);
        return new(default, whyNot);
    }

    /// <inheritdoc/>
    public override string ToString() => HasValue ? $"{value}" : WhyNot.Explanation;
}
