using NodaTime;

namespace Workshop.Domain.People;

/// <summary>
/// A customer or someone of the workshop. Everything that names a person stands here or in <see cref="Remark"/>, so that
/// an erasure can blank it; rows that are only ever added hold ids.
/// </summary>
public sealed class Person
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    public string? Phone { get; set; }

    public string? Email { get; set; }

    public bool IsStaff { get; init; }

    public Instant? ErasedAt { get; set; }
}

/// <summary>Free text written by or about people: an owner's words, a reason. Blanked by an erasure.</summary>
public sealed class Remark
{
    public required Guid Id { get; init; }

    public required string Text { get; set; }

    public required Guid WrittenBy { get; init; }

    public required Instant WrittenAt { get; init; }

    public Instant? ErasedAt { get; set; }
}

/// <summary>What a signed-in person may do; one account may hold several.</summary>
public static class Roles
{
    public const string Advisor = "advisor";
    public const string Technician = "technician";
    public const string Manager = "manager";

    public static readonly IReadOnlyList<string> All = [Advisor, Technician, Manager];
}
