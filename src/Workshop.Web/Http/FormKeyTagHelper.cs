using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Razor.TagHelpers;
using NodaTime;

namespace Workshop.Web.Http;

/// <summary>
/// Every form that posts carries its idempotency key, so that a second tap or a reload of the answer writes nothing twice.
/// A form that came back with faults gets a new one.
/// </summary>
[HtmlTargetElement("form", Attributes = "[method=post]")]
public sealed class FormKeyTagHelper(IClock clock) : TagHelper
{
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        var field = new TagBuilder("input") { TagRenderMode = TagRenderMode.SelfClosing };
        field.MergeAttributes(new Dictionary<string, string?>
        {
            ["type"] = "hidden",
            ["name"] = Caller.KeyField,
            ["value"] = Domain.NewId.At(clock).ToString(),
        });
        output.PostContent.AppendHtml(field);
    }
}
