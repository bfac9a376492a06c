namespace Workshop.Domain.Contacts;

/// <summary>A text that messages are drafted from; see <see cref="TemplateText"/> for what may stand in it.</summary>
public sealed class MessageTemplate
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    /// <summary>E-mail or letter.</summary>
    public required ContactChannel Channel { get; set; }

    /// <summary>One line.</summary>
    public required string Subject { get; set; }

    public required string Body { get; set; }
}
