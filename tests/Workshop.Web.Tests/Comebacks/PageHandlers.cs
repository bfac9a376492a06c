using AngleSharp.Html.Dom;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.RazorPages.Infrastructure;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Tests.Hosting;

namespace Workshop.Web.Tests.Comebacks;

/// <summary>A handler of a page that takes forms; <paramref name="Name"/> is empty for the only one of its page.</summary>
internal sealed record PageHandler(string Route, string Name)
{
    public string Named => $"{Route} {Name}";
}

/// <summary>The ways in which pages take forms, from the pages themselves.</summary>
internal static class PageHandlers
{
    public static async Task<IReadOnlyList<PageHandler>> Posts(IServiceProvider services)
    {
        var loader = services.GetRequiredService<PageLoader>();
        var handlers = new List<PageHandler>();
        foreach (var endpoint in services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>())
        {
            if (endpoint.Metadata.GetMetadata<PageActionDescriptor>() is { } page)
            {
                var compiled = page as CompiledPageActionDescriptor ?? await loader.LoadAsync(page, EndpointMetadataCollection.Empty);
                handlers.AddRange(compiled.HandlerMethods.Where(h => h.HttpMethod.Equals("Post", StringComparison.OrdinalIgnoreCase))
                    .Select(h => new PageHandler("/" + endpoint.RoutePattern.RawText!.Trim('/'), h.Name ?? "")));
            }
        }

        return [.. handlers.Distinct()];
    }

    /// <summary>The handler that a form is sent to.</summary>
    public static string NameIn(IHtmlFormElement form)
    {
        var action = form.GetAttribute("action") ?? "";
        var at = action.IndexOf("handler=", StringComparison.Ordinal);
        return at < 0 ? "" : action[(at + "handler=".Length)..].Split('&')[0];
    }
}

/// <summary>Forms as somebody fills them who ticks and types something wherever nothing stands.</summary>
internal static class FormFiller
{
    public static IReadOnlyList<KeyValuePair<string, string>> Filled(IHtmlFormElement form)
    {
        foreach (var group in form.Elements.OfType<IHtmlInputElement>().Where(i => i.Type == "radio").GroupBy(i => i.Name).Where(g => !g.Any(i => i.IsChecked)))
        {
            group.First().IsChecked = true;
        }

        foreach (var field in form.Elements)
        {
            switch (field)
            {
                case IHtmlInputElement { Type: "checkbox" } box:
                    box.IsChecked = true;
                    break;
                case IHtmlInputElement { Type: "text" or "number", Value.Length: 0 } input:
                    input.Value = input.Type == "number" || input.GetAttribute("inputmode") is "numeric" or "decimal" ? "1" : "x";
                    break;
                case IHtmlTextAreaElement { Value.Length: 0 } text:
                    text.Value = "x";
                    break;
                case IHtmlSelectElement { Value: null or "" } select when select.Options.FirstOrDefault(o => o.Value.Length > 0) is { } first:
                    first.IsSelected = true;
                    break;
            }
        }

        return TestPages.Fields(form);
    }

    /// <summary>What proves that a form is ours, and nothing in it.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Bare(IReadOnlyList<KeyValuePair<string, string>> of) =>
        [.. of.Where(f => f.Key is "__RequestVerificationToken")];
}
