using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Xunit;

namespace Workshop.Tests.Hosting;

/// <summary>
/// A person at the pages, without a browser: signed in by cookie, sending forms as a browser would, with all that stands in
/// them already (form token, idempotency key, values) and what the person types on top.
/// </summary>
public sealed class TestPages(HttpClient client)
{
    private static readonly HtmlParser Parser = new();

    public HttpClient Client { get; } = client;

    public static async Task<TestPages> SignedIn(WorkshopApp app, string role)
    {
        ArgumentNullException.ThrowIfNull(app);
        var pages = new TestPages(app.Anonymous());
        var answer = await pages.Send("/sign-in", new() { ["Input.UserName"] = role, ["Input.Password"] = TestWorkshop.Password });
        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        return pages;
    }

    public async Task<TestPage> Open(string address) => await Answer(await Client.GetAsync(new Uri(address, UriKind.Relative)));

    /// <summary>Opens a page, types into the form of its main part, sends it.</summary>
    public async Task<TestPage> Send(string address, Dictionary<string, string?> typed, string form = "main form[method=post]") =>
        await Send(await Open(address), address, typed, form);

    /// <summary>Types into a page that is open and sends it. A field that is null is left out, as an unticked box is.</summary>
    public async Task<TestPage> Send(
        TestPage page, string address, Dictionary<string, string?> typed, string form = "main form[method=post]")
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(typed);
        var element = (IHtmlFormElement)(page.Html.QuerySelector(form)
            ?? throw new InvalidOperationException($"{address} has no {form}: {page.Html.Body?.TextContent}"));
        var fields = FieldsOf(element);
        foreach (var (name, value) in typed)
        {
            Assert.True(
                element.Elements.Any(e => e.GetAttribute("name") == name), $"The form of {address} has no field {name}.");
            fields.RemoveAll(f => f.Key == name);
            if (value is not null)
            {
                fields.Add(new(name, value));
            }
        }

        using var content = new FormUrlEncodedContent(fields);
        var target = element.GetAttribute("action") is { Length: > 0 } action ? action : address;
        return await Answer(await Client.PostAsync(new Uri(target, UriKind.Relative), content));
    }

    /// <summary>What a browser would send of a form as it stands.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Fields(IHtmlFormElement form) => FieldsOf(form);

    private static List<KeyValuePair<string, string>> FieldsOf(IHtmlFormElement form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var fields = new List<KeyValuePair<string, string>>();
        foreach (var element in form.Elements.Where(e => e.GetAttribute("name") is { Length: > 0 } && !e.HasAttribute("disabled")))
        {
            var value = element switch
            {
                IHtmlInputElement { Type: "checkbox" or "radio" } box => box.IsChecked ? box.Value : null,
                IHtmlInputElement input => input.Value,
                IHtmlSelectElement select => select.Value,
                IHtmlTextAreaElement text => text.Value,
                _ => null,
            };
            if (value is not null)
            {
                fields.Add(new(element.GetAttribute("name")!, value));
            }
        }

        return fields;
    }

    public static async Task<TestPage> Answer(HttpResponseMessage answer) => new(
        answer.StatusCode, answer.Headers.Location?.ToString(), await Parser.ParseDocumentAsync(await answer.Content.ReadAsStringAsync()));
}

/// <summary>What a page answered.</summary>
public sealed record TestPage(HttpStatusCode Status, string? Location, IHtmlDocument Html)
{
    /// <summary>The sentences of what is wrong, as listed on top.</summary>
    public IReadOnlyList<string> Faults => [.. Html.QuerySelectorAll(".faults li").Select(li => li.TextContent.Trim())];

    public string MainText => Html.QuerySelector("main")?.TextContent ?? "";

    /// <summary>What stands in a field now.</summary>
    public string? ValueOf(string name) => Html.QuerySelector($"[name='{name}']") switch
    {
        IHtmlInputElement input => input.Value,
        IHtmlSelectElement select => select.Value,
        IHtmlTextAreaElement text => text.Value,
        _ => null,
    };
}
