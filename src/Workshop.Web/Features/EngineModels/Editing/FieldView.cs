using Microsoft.AspNetCore.Mvc.Rendering;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>One field of a section's form, or a group or list of fields.</summary>
/// <param name="Path">The field's name: its path in the document.</param>
/// <param name="IsEntry">The whole form: its code is no field, and it needs no frame.</param>
internal sealed record FieldView(FieldShape Shape, string Path, FormValues Values, ChoiceLists Choices, bool IsEntry = false)
{
    public string Id => IdOf(Path);

    public string Text => Values.Text(Path);

    public IEnumerable<FieldShape> Members => Shape.Members.Where(m => !IsEntry || m.Name != "code");

    public static string IdOf(string path) => TagBuilder.CreateSanitizedId(path, "_");

    public FieldView Member(FieldShape shape, string owner) => new(shape, $"{owner}.{shape.Name}", Values, Choices);
}
