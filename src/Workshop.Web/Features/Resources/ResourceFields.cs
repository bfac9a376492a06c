using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Resources;

/// <summary>What the fields of a resource hold. Shown by <c>&lt;partial name="_ResourceFields" model="..." /&gt;</c>.</summary>
/// <param name="AskedFor">The words that engine models ask for.</param>
public sealed record ResourceFields(
    ResourceKind Kind, string? Name, IEnumerable<string?> Capabilities, TechnicianGrade? Grade, IReadOnlyList<string> AskedFor);
