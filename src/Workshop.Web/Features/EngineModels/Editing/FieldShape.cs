using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Workshop.Domain.EngineModels;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

internal enum FieldKind
{
    Text,
    LongText,
    Number,
    Whole,
    Tick,
    Word,

    /// <summary>A code of something else in the document.</summary>
    Choice,

    /// <summary>Several of them.</summary>
    Choices,

    /// <summary>A plain list, one a line.</summary>
    Lines,

    /// <summary>A record within the record.</summary>
    Group,

    /// <summary>A list of records.</summary>
    Rows,
}

/// <summary>
/// How one member of the document is typed into a form. Read from the records themselves, so that a member that is added to the
/// specification is in its form too; <see cref="FieldLabels"/> has its words.
/// </summary>
/// <param name="Name">In the document.</param>
/// <param name="Hint">Unit or form.</param>
/// <param name="Type">Of the value, or of one entry.</param>
/// <param name="Optional">May be absent.</param>
internal sealed record FieldShape(
    string Name, string Label, string? Hint, FieldKind Kind, Type Type, bool Optional, ChoiceOf? Choices)
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<FieldShape>> Known = new();

    /// <summary>The members of a group, or of each row.</summary>
    public IReadOnlyList<FieldShape> Members => Kind is FieldKind.Group or FieldKind.Rows ? Of(Type) : [];

    /// <summary>The members of a record that are typed, in the order of their labels.</summary>
    public static IReadOnlyList<FieldShape> Of(Type record) => Known.GetOrAdd(record, Read);

    /// <summary>The document itself, as a group.</summary>
    public static IReadOnlyList<FieldShape> OfDocument => Of(typeof(EngineSpecification));

    public static FieldShape OfMember(string member) => OfDocument.Single(f => f.Name == member);

    private static IReadOnlyList<FieldShape> Read(Type record) =>
    [
        .. WorkshopJson.Documents.GetTypeInfo(record).Properties
            .Where(p => !FieldLabels.AreSetByTheService.Contains((record, p.Name)))
            .Select(p => Read(record, p))
            .OrderBy(f => FieldLabels.PlaceOf(record, f.Name)),
    ];

    private static FieldShape Read(Type record, JsonPropertyInfo property)
    {
        var label = FieldLabels.Find(record, property.Name);
        var optional = property.IsGetNullable || Nullable.GetUnderlyingType(property.PropertyType) is not null;
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        var entry = type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? type.GenericTypeArguments[0] : null;
        var kind = entry is not null ? KindOfList(entry, label) : KindOf(type, label);
        return new FieldShape(property.Name, label.Text, label.Hint, kind, entry ?? type, optional && entry is null, label.Choices);
    }

    private static FieldKind KindOfList(Type entry, FieldLabel label) =>
        label.Choices is not null ? FieldKind.Choices
        : entry.IsClass && entry != typeof(string) ? FieldKind.Rows
        : FieldKind.Lines;

    private static FieldKind KindOf(Type type, FieldLabel label) =>
        label.Choices is not null ? FieldKind.Choice
        : type == typeof(string) ? label.IsLong ? FieldKind.LongText : FieldKind.Text
        : type == typeof(bool) ? FieldKind.Tick
        : type == typeof(int) ? FieldKind.Whole
        : type.IsEnum ? FieldKind.Word
        : IsNumber(type) ? FieldKind.Number
        : type.IsClass ? FieldKind.Group
        : FieldKind.Text;

    /// <summary>A measure stands in the document as a plain number.</summary>
    public static bool IsNumber(Type type) =>
        type == typeof(decimal) || type == typeof(int) || type.Namespace == typeof(Domain.Measures.Torque).Namespace && !type.IsEnum;

    public IEnumerable<string> Words => Enum.GetNames(Type).Select(JsonNamingPolicy.CamelCase.ConvertName);
}
