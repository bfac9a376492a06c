namespace Workshop.Domain.People;

/// <summary>The person on whose word something is done, and what that person may do.</summary>
public sealed record Actor(Guid PersonId, IReadOnlySet<string> Roles)
{
    public bool Is(string role) => Roles.Contains(role);
}
