using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Imports;

public sealed class ImportPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Address = "/imports/readings";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Pasted_text_is_checked_first_and_then_imported_as_it_stands()
    {
        await app.Motorcycle("PAGE 1");
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var file = Worksheets.File("PAGE 1,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,2.500");

        var checkedPage = await pages.Send(Address, new() { ["Input.Csv"] = file, ["Input.DryRun"] = "true" });

        Assert.Equal(HttpStatusCode.OK, checkedPage.Status);
        Assert.Contains("1 readings and 1 shims of 1 motorcycles", checkedPage.MainText, StringComparison.Ordinal);
        Assert.Contains("PAGE 1", checkedPage.Html.QuerySelector("tbody th")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await app.Look(db => db.ReadingImports.CountAsync(Ct)));

        var imported = await pages.Send(checkedPage, Address, new() { ["Input.DryRun"] = "false" });

        Assert.Equal((HttpStatusCode.Redirect, "/drift"), (imported.Status, imported.Location));
        Assert.Contains("1 readings and 1 shims of 1 motorcycles are in the books.", (await pages.Open("/drift")).MainText, StringComparison.Ordinal);
        Assert.Equal("pasted text", await app.Look(db => db.ReadingImports.Select(i => i.FileName).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_file_at_fault_comes_back_with_every_fault_and_its_text()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var file = Worksheets.File("=cmd()<b>,2019-05-31,24100,1-exhaust-1,as found,0.29,0.28,", "X,soon,24100,1-exhaust-1,as found,0.28,0.29,");

        var page = await Upload(pages, file, "old sheets.csv", dryRun: true);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, page.Status);
        Assert.Equal(["4 faults in the file; each is listed below."], page.Faults);
        var listed = page.Html.QuerySelectorAll("section[aria-labelledby=faults] li").Select(li => li.TextContent).ToList();
        Assert.Equal(4, listed.Count);
        Assert.StartsWith("Line 2, motorcycle: It is \"=cmd()<b>\"", listed[0], StringComparison.Ordinal);
        Assert.Contains("Line 3, date: It is \"soon\"", string.Join("\n", listed), StringComparison.Ordinal);
        Assert.Equal(file.Trim(), page.ValueOf("Input.Csv")!.Trim());
        Assert.Equal("old sheets.csv", page.ValueOf("Input.FileName"));
    }

    [Fact]
    public async Task An_empty_form_says_what_is_wanted()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var page = await pages.Send(Address, new() { ["Input.DryRun"] = "true" });

        Assert.Equal(HttpStatusCode.BadRequest, page.Status);
        Assert.Equal(["Or its text is empty: give the text of the worksheets."], page.Faults);
    }

    [Fact]
    public async Task A_long_file_keeps_the_page_small()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var file = Worksheets.File(Enumerable.Range(0, 3000).Select(i => $"NONE {i},2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,"));

        var page = await Upload(pages, file, "long.csv", dryRun: true);

        Assert.Equal(["3000 faults in the file; each is listed below."], page.Faults);
        Assert.Contains("And 2900 more.", page.MainText, StringComparison.Ordinal);
        Assert.InRange(Encoding.UTF8.GetByteCount(page.Html.DocumentElement.OuterHtml), 1_000, 100_000);
    }

    [Fact]
    public async Task The_page_is_the_managers()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.Forbidden, (await pages.Open(Address)).Status);
    }

    private static async Task<TestPage> Upload(TestPages pages, string file, string name, bool dryRun)
    {
        var form = await pages.Open(Address);
        using var content = new MultipartFormDataContent();
        foreach (var hidden in new[] { "_key", "__RequestVerificationToken" })
        {
            content.Add(new StringContent(form.Html.QuerySelector($"main [name='{hidden}']")!.GetAttribute("value")!), hidden);
        }

        content.Add(new StringContent(dryRun ? "true" : "false"), "Input.DryRun");
        content.Add(new StringContent(""), "Input.Csv");
        var bytes = new ByteArrayContent(Encoding.UTF8.GetBytes(file));
        bytes.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        content.Add(bytes, "Upload", name);
        return await TestPages.Answer(await pages.Client.PostAsync(new Uri(Address, UriKind.Relative), content, Ct));
    }
}
