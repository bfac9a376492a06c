using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Paper;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Paper;

public sealed class LabelTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_place_has_a_label_whose_code_leads_to_its_page()
    {
        var client = await app.As(Roles.Technician);
        var places = await app.Look(db => db.StoragePlaces.Where(p => !p.Retired).ToListAsync(Ct));

        var file = await client.GetByteArrayAsync(new Uri("/api/v1/labels.pdf?of=places&stock=a4-3x8", UriKind.Relative), Ct);
        using var pdf = new PdfReader(file);

        Assert.Equal(
            places.Select(p => $"http://localhost/stores/places/{p.Code}").Order(StringComparer.Ordinal), pdf.Codes(0).Order(StringComparer.Ordinal));
        Assert.All(places, p =>
        {
            Assert.Contains(p.Name, pdf.Text());
            Assert.Contains(p.Code, pdf.Text());
        });
    }

    [Fact]
    public async Task A_chosen_label_lies_at_the_first_free_place_of_its_sheet()
    {
        var client = await app.As(Roles.Technician);
        var place = await app.Look(db => db.StoragePlaces.OrderBy(p => p.Name).FirstAsync(Ct));
        var stock = LabelStock.Find("a4-3x7")!;

        var file = await client.GetByteArrayAsync(new Uri($"/api/v1/labels.pdf?of=places&code={place.Code}&stock=a4-3x7&first=5", UriKind.Relative), Ct);
        using var pdf = new PdfReader(file);

        var (x, y) = stock.At(4);
        var words = pdf.Words();
        Assert.NotEmpty(words);
        Assert.All(words, w =>
        {
            Assert.InRange(Mm(w.Left), x, x + stock.Width);
            Assert.InRange(Mm(w.Right), x, x + stock.Width);
            Assert.InRange(Mm(w.Top), y - 0.5, y + stock.Height);
            Assert.InRange(Mm(w.Bottom), y, y + stock.Height + 0.5);
        });
        Assert.Single(pdf.Codes(0));
    }

    [Fact]
    public async Task The_compartments_of_a_shim_box_fill_sheet_after_sheet_and_the_box_has_a_label()
    {
        var client = await app.As(Roles.Technician);
        var box = await client.GetFromJsonAsync<JsonElement>($"/api/v1/labels?of=shimBoxes&stock=roll-100x50", Ct);
        var all = await client.GetFromJsonAsync<JsonElement>($"/api/v1/labels?of=compartments&box={TestEngines.ShimPart}&stock=a4-5x13", Ct);
        using var pdf = new PdfReader(await client.GetByteArrayAsync(
            new Uri($"/api/v1/labels.pdf?of=compartments&box={TestEngines.ShimPart}&stock=a4-5x13", UriKind.Relative), Ct));

        Assert.Contains(box.GetProperty("labels").EnumerateArray(), l => l.GetProperty("address").GetString() == $"http://localhost/stores/shims?box={TestEngines.ShimPart}");
        var count = all.GetProperty("labels").GetArrayLength();
        var sheets = pdf.Sheets();
        Assert.Equal((count + 64) / 65, sheets.Count);
        Assert.Contains($"http://localhost/stores/shims?box={TestEngines.ShimPart}&find=A1", pdf.Codes(0));
        Assert.Contains(all.GetProperty("labels")[count - 1].GetProperty("title").GetString()!, sheets[^1].ReplaceLineEndings(" "));
    }

    [Theory]
    [InlineData("of=moons&stock=a4-3x8", "of is \"moons\": one of places, shimBoxes, compartments, kit is allowed.")]
    [InlineData("of=places&stock=a4-9x9", "stock is \"a4-9x9\": one of a4-3x8, a4-3x7, a4-2x7, a4-5x13, roll-62x29, roll-100x50 is allowed.")]
    [InlineData("of=places&stock=a4-3x8&first=25", "first is 25: 1 to 24 is allowed, as a sheet has so many labels.")]
    [InlineData("of=compartments&stock=a4-5x13", "box is empty: give the code of the box's shims.")]
    [InlineData("of=kit&stock=roll-100x50", "number is empty: give the number of the job card.")]
    public async Task What_is_no_label_is_refused(string query, string sentence)
    {
        var answer = await (await app.As(Roles.Technician)).GetAsync(new Uri($"/api/v1/labels.pdf?{query}", UriKind.Relative), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(sentence, await answer.Sentence());
    }

    [Fact]
    public async Task A_kit_label_names_card_and_motorcycle_on_the_page_too()
    {
        var number = (await app.CheckedIn()).Number;
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"/stores/labels/sheet?of=kit&number={number}&stock=roll-100x50");
        using var pdf = new PdfReader(await pages.Client.GetByteArrayAsync(
            new Uri($"/stores/labels/sheet?handler=Pdf&of=kit&number={number}&stock=roll-100x50", UriKind.Relative), Ct));
        var choose = await pages.Open("/stores/labels");
        var wrong = await pages.Open("/stores/labels/sheet?of=places&stock=a4-3x8&first=99");

        Assert.Contains($"Kit of card {number}", page.MainText);
        Assert.Equal([$"http://localhost/job-cards/{number}/kit"], pdf.Codes(0));
        Assert.Contains($"{number}", pdf.Text());
        Assert.Contains("Shelf A", choose.MainText);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.Status);
    }

    [Fact]
    public async Task Labels_as_data_name_their_codes_and_addresses()
    {
        var made = await (await app.As(Roles.Technician)).GetFromJsonAsync<JsonElement>("/api/v1/labels?of=places&stock=roll-62x29", Ct);

        Assert.Equal("roll-62x29", made.GetProperty("stock").GetProperty("code").GetString());
        Assert.All(made.GetProperty("labels").EnumerateArray(), l => Assert.EndsWith(l.GetProperty("code").GetString()!, l.GetProperty("address").GetString()));
    }

    /// <summary>The measures stand twice, for the page and for the file: they must be the same.</summary>
    [Fact]
    public void The_print_style_has_the_measures_of_every_sheet_and_no_label_leaves_its_sheet()
    {
        var css = File.ReadAllText(Path.Combine(AcceptedFile.Root, "src", "Workshop.Web", "wwwroot", "assets", "paper.css"));
        Assert.All(LabelStock.All, s =>
        {
            Assert.Contains(string.Create(CultureInfo.InvariantCulture,
                $".label-sheet.{s.Code} {{ width: {s.SheetWidth}mm; height: {s.SheetHeight}mm; grid-template-columns: repeat({s.Columns}, {s.Width}mm); grid-auto-rows: {s.Height}mm; column-gap: {s.Across - s.Width:0.###}mm; row-gap: {s.Down - s.Height:0.###}mm; padding: {s.Top}mm 0 0 {s.Left}mm;"), css);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $".{s.Code} .label {{ --title: {s.TitleSize}mm; }}"), css);
            var (x, y) = s.At(s.PerSheet - 1);
            Assert.True(x + s.Width <= s.SheetWidth + 0.01 && y + s.Height <= s.SheetHeight + 0.01, s.Code);
        });
    }

    [Fact]
    public void Words_that_are_too_many_for_a_label_are_printed_smaller_on_the_page_as_in_the_file()
    {
        var address = new Uri("https://workshop.example/x");
        var small = LabelStock.Find("a4-5x13")!;
        Assert.Equal("", LabelFit.ClassOf(small, new Label("A1", ["2.300"], "A1", address)));
        var more = LabelFit.TenthsOf(small, new Label("Sealing ring 14 x 18 x 1.5, copper, soft", ["Shelf A, drawer 3, left"], "RING-14X18", address));
        Assert.InRange(more, LabelFit.Least, 9);

        // Roomier labels print the same words no smaller, and every step is in the style.
        Assert.All(LabelStock.All, s => Assert.True(LabelFit.TenthsOf(s, new Label(new string('w', 60), ["some words"], "CODE", address)) >= LabelFit.TenthsOf(small, new Label(new string('w', 60), ["some words"], "CODE", address)), s.Code));
        var css = File.ReadAllText(Path.Combine(AcceptedFile.Root, "src", "Workshop.Web", "wwwroot", "assets", "paper.css"));
        Assert.All(Enumerable.Range(LabelFit.Least, 10 - LabelFit.Least), tenths => Assert.Contains($".fit-{tenths} {{ --fit: 0.{tenths}; }}", css, StringComparison.Ordinal));
    }

    private static double Mm(double points) => points * 25.4 / 72;
}
