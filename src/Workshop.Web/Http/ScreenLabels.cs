using System.Net;
using System.Text.Encodings.Web;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace Workshop.Web.Http;

/// <summary>What the fields of a page are called on the screen, by their ids; gathered while the page is drawn.</summary>
internal sealed partial class ScreenLabels
{
    // A label as long as this is a sentence that is ticked, and names nothing.
    private const int Longest = 60;

    private static readonly object ItemKey = new();
    private readonly Dictionary<string, string> labels = new(StringComparer.OrdinalIgnoreCase);

    public static ScreenLabels Of(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return (ScreenLabels)(http.Items[ItemKey] ??= new ScreenLabels());
    }

    public void Add(string id, string? row, string label)
    {
        if (label.Length is > 0 and <= Longest)
        {
            labels[id] = row is null ? label : $"{row}: {label}";
        }
    }

    /// <summary>
    /// A sentence that begins with a field's name as the API has it, begun with the field's label; of one row among several without a
    /// label of their own, with the whole path. Any other sentence stays as it is.
    /// </summary>
    public string Say(string key, string sentence)
    {
        var path = FieldNames.Camel(key);
        var inForm = path.IndexOf('.', StringComparison.Ordinal) is var dot && dot > 0 && !path[..dot].Contains('[', StringComparison.Ordinal) ? path[(dot + 1)..] : path;
        var name = Endings(path).Append("It").FirstOrDefault(ending => sentence.StartsWith($"{ending} ", StringComparison.Ordinal));
        return name is null ? sentence : NameOf(key, inForm) + sentence[name.Length..];
    }

    /// <summary>The words of a piece of a page, up to the first element or sign within: what follows there explains, or gives the unit.</summary>
    public static string TextOf(string html)
    {
        var before = Words().Replace(WebUtility.HtmlDecode(html.Split('<', ',', ';', ':')[0]), " ").Trim();
        return before.Length > 0 ? before : Words().Replace(WebUtility.HtmlDecode(Tags().Replace(html, " ")), " ").Trim();
    }

    private string NameOf(string key, string path) =>
        !labels.TryGetValue(TagBuilder.CreateSanitizedId(key, "_"), out var label) ? path
        : path.Contains('[', StringComparison.Ordinal) && labels.Values.Count(l => l == label) > 1 ? $"{label} ({path})"
        : label;

    private static IEnumerable<string> Endings(string path)
    {
        for (var rest = path; ; rest = rest[(rest.IndexOf('.', StringComparison.Ordinal) + 1)..])
        {
            yield return rest;
            if (!rest.Contains('.', StringComparison.Ordinal))
            {
                yield break;
            }
        }
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Words();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}

/// <summary>Takes down what a field is called: by its label, and by the legend of the group that it stands in.</summary>
[HtmlTargetElement("fieldset")]
[HtmlTargetElement("legend")]
[HtmlTargetElement("label")]
[HtmlTargetElement("input", Attributes = "aria-label", TagStructure = TagStructure.WithoutEndTag)]
public sealed class ScreenLabelTagHelper : TagHelper
{
    /// <summary>After those of the framework, which give a field its id.</summary>
    public override int Order => 1000;

    [ViewContext]
    [HtmlAttributeNotBound]
    public ViewContext ViewContext { get; set; } = null!;

    public override void Init(TagHelperContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (context.TagName == "fieldset")
        {
            context.Items[typeof(Group)] = new Group();
        }
    }

    public override async Task ProcessAsync(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(output);
        if (ViewContext.ViewData.ModelState.IsValid || context.TagName == "fieldset")
        {
            return;
        }

        var group = context.Items.TryGetValue(typeof(Group), out var around) ? (Group)around : null;
        if (context.TagName == "input")
        {
            Add(output.Attributes["id"]?.Value, null, output.Attributes["aria-label"]?.Value?.ToString() ?? "");
            return;
        }

        var text = ScreenLabels.TextOf((await output.GetChildContentAsync()).GetContent());
        if (context.TagName == "legend" && group is not null)
        {
            group.Legend = text;
        }
        else
        {
            Add(output.Attributes["for"]?.Value, group?.Legend, text);
        }
    }

    private void Add(object? id, string? row, string label)
    {
        if (id?.ToString() is { Length: > 0 } named)
        {
            ScreenLabels.Of(ViewContext.HttpContext).Add(named, row, WebUtility.HtmlDecode(label));
        }
    }

    private sealed class Group
    {
        public string? Legend { get; set; }
    }
}

/// <summary>
/// The list of what is wrong. It stands above the form and is written when the whole page is drawn, so that it knows the labels below.
/// </summary>
internal sealed class FaultList(ModelStateDictionary form, ScreenLabels labels) : IHtmlContent
{
    public void WriteTo(TextWriter writer, HtmlEncoder encoder)
    {
        foreach (var (key, entry) in form)
        {
            foreach (var error in entry.Errors)
            {
                var item = new TagBuilder("li");
                if (key.Length == 0)
                {
                    item.InnerHtml.Append(error.ErrorMessage);
                }
                else
                {
                    var link = new TagBuilder("a");
                    link.Attributes["href"] = $"#{TagBuilder.CreateSanitizedId(key, "_")}";
                    link.InnerHtml.Append(labels.Say(key, error.ErrorMessage));
                    item.InnerHtml.AppendHtml(link);
                }

                item.WriteTo(writer, encoder);
            }
        }
    }
}
