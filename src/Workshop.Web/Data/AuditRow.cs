using System.Text.Json;
using NodaTime;

namespace Workshop.Web.Data;

/// <summary>Who changed which row, when, from what to what. Written by the database's own triggers; see the rules migration.</summary>
public sealed class AuditRow
{
    public long Id { get; init; }

    public Instant At { get; init; }

    public Guid? PersonId { get; init; }

    public string? RequestId { get; init; }

    public required string TableName { get; init; }

    public required string Operation { get; init; }

    public required JsonDocument RowKey { get; init; }

    /// <summary>Column to [old, new]; of tables that name people only which columns changed.</summary>
    public required JsonDocument Changes { get; init; }
}
