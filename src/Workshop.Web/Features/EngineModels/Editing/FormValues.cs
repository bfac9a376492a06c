using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>
/// What stands in the fields of a form over a part of the document, as text: read from the document, or as it was typed. A
/// field's name is its path in the document, so that a fault finds it.
/// </summary>
internal sealed class FormValues
{
    private const string Row = ".row";

    private readonly Dictionary<string, IReadOnlyList<string>> values = new(StringComparer.Ordinal);

    public string Text(string path) => All(path) is [var first, ..] ? first : "";

    public IReadOnlyList<string> All(string path) => values.GetValueOrDefault(path) ?? [];

    /// <summary>How many rows a list has here.</summary>
    public int Rows(string path) => All(path + Row).Count;

    /// <summary>The name of the field that says that a row is there.</summary>
    public static string RowField(string path) => path + Row;

    public void AddRow(string path) => values[path + Row] = [.. All(path + Row), "new"];

    /// <summary>Takes over what was typed, rows numbered from 0 without gaps; one row may be left out.</summary>
    public void Take(IFormCollection form, FieldShape shape, string path, string? leftOut)
    {
        var typed = new FormValues();
        foreach (var (name, text) in form)
        {
            typed.values[name] = [.. text.OfType<string>()];
        }

        Copy(shape, typed, path, this, path, leftOut);
    }

    /// <summary>Takes over what stands in the document.</summary>
    public void Take(JsonNode? value, FieldShape shape, string path) => Write(shape, value, path);

    /// <summary>What the fields say, as a part of the document; what no field can take is a fault.</summary>
    public JsonNode? Read(FieldShape shape, string path, List<FieldFault> faults)
    {
        switch (shape.Kind)
        {
            case FieldKind.Group:
                if (shape.Optional && IsBlank(shape, path))
                {
                    return null;
                }

                return Record(shape, path, faults);
            case FieldKind.Rows:
                var rows = new JsonArray();
                for (var i = 0; i < Rows(path); i++)
                {
                    rows.Add(Record(shape, $"{path}[{i}]", faults));
                }

                return rows;
            case FieldKind.Tick:
                return JsonValue.Create(All(path).Contains("true"));
            case FieldKind.Choices:
                return List(All(path), text => ChoiceLists.ToDocument(shape, text));
            case FieldKind.Lines:
                var lines = Text(path).Split(['\n', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
                return List([.. lines.Select((text, i) => (text, i))], line => Leaf(shape, $"{path}[{line.i}]", line.text, faults, path));
            default:
                return Leaf(shape, path, Text(path).Trim(), faults, path);
        }
    }

    private static JsonArray List<T>(IReadOnlyList<T> entries, Func<T, JsonNode?> write)
    {
        var list = new JsonArray();
        foreach (var entry in entries)
        {
            list.Add(write(entry));
        }

        return list;
    }

    private JsonObject Record(FieldShape shape, string path, List<FieldFault> faults)
    {
        var record = new JsonObject();
        foreach (var member in shape.Members)
        {
            record[member.Name] = Read(member, $"{path}.{member.Name}", faults);
        }

        return record;
    }

    /// <summary>A group that may be absent is, when nothing is typed or ticked in it.</summary>
    private bool IsBlank(FieldShape shape, string path) => shape.Members.All(m => m.Kind switch
    {
        FieldKind.Group => IsBlank(m, $"{path}.{m.Name}"),
        FieldKind.Rows => Rows($"{path}.{m.Name}") == 0,
        FieldKind.Word when !m.Optional => true,
        _ => All($"{path}.{m.Name}").All(string.IsNullOrWhiteSpace),
    });

    private static JsonNode? Leaf(FieldShape shape, string path, string text, List<FieldFault> faults, string field)
    {
        var isNumber = FieldShape.IsNumber(shape.Type);
        if (text.Length == 0 && (shape.Optional || isNumber || shape.Type != typeof(string)))
        {
            if (!shape.Optional)
            {
                faults.Add(new FieldFault(field, $"{path} is empty: give {Wanted(shape)}."));
            }

            return null;
        }

        JsonNode? node = null;
        if (!isNumber)
        {
            node = JsonValue.Create(text);
        }
        else if (DecimalBinder.TryRead(text, out var number) && (shape.Type != typeof(int) || number == decimal.Truncate(number)))
        {
            node = shape.Type == typeof(int) && Math.Abs(number) < int.MaxValue ? JsonValue.Create((int)number) : JsonValue.Create(number);
        }

        try
        {
            if (node is null)
            {
                faults.Add(new FieldFault(field, $"{path} is \"{text}\": {Wanted(shape)} is allowed."));
            }

            node?.Deserialize(shape.Type, WorkshopJson.Documents);
            return node;
        }
        catch (JsonException fault)
        {
            var reason = fault.Message.Contains("could not be converted", StringComparison.Ordinal)
                ? $"{Wanted(shape)} is allowed"
                : fault.Message.Split(" Path:")[0].TrimEnd('.');
            faults.Add(new FieldFault(field, $"{path} is \"{text}\": {reason}."));
            return null;
        }
    }

    private static string Wanted(FieldShape shape) =>
        shape.Type == typeof(int) ? "a whole number"
        : FieldShape.IsNumber(shape.Type) ? "a number such as 0.15 or 0,15"
        : shape.Type.IsEnum ? $"one of {string.Join(", ", shape.Words)}"
        : shape.Hint ?? "a text";

    private void Write(FieldShape shape, JsonNode? value, string path)
    {
        switch (shape.Kind)
        {
            case FieldKind.Group:
                Members(shape, value, path);
                break;
            case FieldKind.Rows:
                var rows = value?.AsArray() ?? [];
                for (var i = 0; i < rows.Count; i++)
                {
                    AddRow(path);
                    Members(shape, rows[i], $"{path}[{i}]");
                }

                break;
            case FieldKind.Choices:
                values[path] = [.. value?.AsArray().Select(ChoiceLists.ToField) ?? []];
                break;
            case FieldKind.Lines:
                values[path] = [string.Join('\n', value?.AsArray().Select(ToText) ?? [])];
                break;
            default:
                values[path] = [ToText(value)];
                break;
        }
    }

    private void Members(FieldShape shape, JsonNode? value, string path)
    {
        foreach (var member in shape.Members)
        {
            Write(member, value?[member.Name], $"{path}.{member.Name}");
        }
    }

    public static string ToText(JsonNode? value) => value switch
    {
        null => "",
        JsonValue number when number.GetValueKind() == JsonValueKind.Number =>
            decimal.Parse(number.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture).ToString("0.######", CultureInfo.InvariantCulture),
        JsonValue truth when truth.GetValueKind() is JsonValueKind.True or JsonValueKind.False => truth.ToJsonString(),
        _ => value.ToString(),
    };

    private static void Copy(FieldShape shape, FormValues from, string path, FormValues to, string newPath, string? leftOut)
    {
        if (shape.Kind == FieldKind.Rows)
        {
            var rows = 0;
            for (var i = 0; i < from.Rows(path); i++)
            {
                if ($"{path}[{i}]" != leftOut)
                {
                    to.AddRow(newPath);
                    Members($"{path}[{i}]", $"{newPath}[{rows++}]");
                }
            }
        }
        else if (shape.Kind == FieldKind.Group)
        {
            Members(path, newPath);
        }
        else
        {
            to.values[newPath] = from.All(path);
        }

        void Members(string old, string renamed)
        {
            foreach (var member in shape.Members)
            {
                Copy(member, from, $"{old}.{member.Name}", to, $"{renamed}.{member.Name}", leftOut);
            }
        }
    }
}
