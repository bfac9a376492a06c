using System.Globalization;
using System.Net;
using CsCheck;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Paper;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Paper;

public sealed class PaperTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("torque-sheet", "/torque-sheet", "Oil drain plug|24 N.m|17.7 lbf.ft|dry|12 mm hexagon")]
    [InlineData("pick-list", "/pick-list", "To pick, in walking order|Engine oil|Shelf A")]
    [InlineData("worksheet", "", "Found no-go|Shim in|0.10 to 0.20|Notch 1|Camshaft cap bolt|only if it was opened")]
    public async Task A_paper_says_on_the_page_and_in_the_file_the_same_and_its_code_leads_back(string paper, string back, string words)
    {
        var number = (await app.CheckedIn()).Number;
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"/job-cards/{number}/papers/{paper}";

        var page = await pages.Open(address);
        var file = await pages.Client.GetByteArrayAsync(new Uri($"{address}?handler=Pdf", UriKind.Relative), Ct);
        using var pdf = new PdfReader(file);

        var text = Squeezed(pdf.Text());
        Assert.All(words.Split('|'), word =>
        {
            Assert.Contains(Squeezed(word), Squeezed(page.MainText));
            Assert.Contains(Squeezed(word), text);
        });
        var leads = page.Html.QuerySelector("figcaption a")!.GetAttribute("href")!;
        Assert.Equal($"http://localhost/job-cards/{number}{back}", leads);
        Assert.Equal([leads], pdf.Codes(0));
        Assert.Contains("A4", pdf.Info());
        Assert.All(pdf.Fonts(), font => Assert.True(font.IsEmbedded, $"{font.Name} is not in the file"));
    }

    [Fact]
    public async Task The_route_gives_the_same_file_and_names_what_it_does_not_have()
    {
        var number = (await app.CheckedIn()).Number;
        var client = await app.As(Roles.Technician);

        var file = await client.GetAsync(new Uri($"/api/v1/job-cards/{number}/papers/worksheet.pdf", UriKind.Relative), Ct);
        var paper = await client.GetAsync(new Uri($"/api/v1/job-cards/{number}/papers/songbook.pdf", UriKind.Relative), Ct);
        var card = await client.GetAsync(new Uri("/api/v1/job-cards/999999/papers/worksheet.pdf", UriKind.Relative), Ct);

        Assert.Equal("application/pdf", file.Content.Headers.ContentType?.MediaType);
        using var pdf = new PdfReader(await file.Content.ReadAsByteArrayAsync(Ct));
        Assert.Contains("Worksheet", pdf.Text());
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (paper.StatusCode, card.StatusCode));
        Assert.Contains("torque-sheet, pick-list, worksheet", await paper.Sentence());
    }

    [Fact]
    public void A_long_table_goes_on_with_its_head_repeated_no_row_torn_and_no_word_cut_off()
    {
        Assert.True(PaperFonts.AreThere(null), PaperFonts.Missing);
        var rows = Enumerable.Range(1, 150).Select(i => (IReadOnlyList<PaperCell>)
            [$"row{i} begins", i % 7 == 0 ? string.Join(' ', Enumerable.Repeat("many words within", 12)) : "short", new PaperCell("", Boxes: i % 20), $"row{i}-ends"]).ToList();
        var paper = new PaperDocument("Long", ["Head"], new Uri("http://workshop.example/job-cards/7"), "Back",
            [new PaperTable("Rows", [new("Firstcolumn", 20), new("Secondcolumn", 30), new("Boxes", 20), new("Lastcolumn", 15)], rows)], "Foot on every sheet");
        using var pdf = new PdfReader(PaperPdf.Draw(paper));

        var sheets = pdf.Sheets();
        Assert.True(sheets.Count > 3);
        Assert.All(sheets, (sheet, i) =>
        {
            Assert.Contains("Secondcolumn", sheet);
            Assert.Contains("Foot on every sheet", sheet);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"Long, sheet {i + 1} of {sheets.Count}"), sheet);
        });
        var words = pdf.Words();
        Assert.All(Enumerable.Range(1, 150), i =>
            Assert.Equal(Assert.Single(words, w => w.Text == $"row{i}").Sheet, Assert.Single(words, w => w.Text == $"row{i}-ends").Sheet));
        AllInside(words);
    }

    /// <summary>Whatever words come, however long, none leaves its sheet, and none is lost.</summary>
    [Fact]
    public void No_word_of_any_paper_leaves_its_sheet() =>
        Gen.Select(Gen.String["abcdefghijklmnopqrstuvwxyz"], Gen.Int[1, 4]).Array[1, 12].Sample(
            cells =>
            {
                Assert.True(PaperFonts.AreThere(null), PaperFonts.Missing);
                var rows = cells.Select(c => (IReadOnlyList<PaperCell>)[$"{c.Item1}{new string('w', c.Item2 * 40)}", new PaperCell("", Boxes: c.Item2 * 9)]).ToList();
                using var pdf = new PdfReader(PaperPdf.Draw(new PaperDocument(
                    new string('T', 90), [new string('H', 200)], new Uri("http://workshop.example/"), "Back", [new PaperTable("C", [new("A", 10), new("B", 30)], rows)], "F")));
                AllInside(pdf.Words());
                var letters = string.Concat(pdf.Words().Select(w => w.Text)).Count(c => c == 'w');
                Assert.True(letters >= cells.Sum(c => (c.Item2 * 40) + c.Item1.Count(l => l == 'w')));
            },
            iter: 10, threads: 1);

    [Fact]
    public void An_address_is_read_back_from_its_code_by_another_library() =>
        Gen.String["abcXYZ0189-"].Sample(
            path =>
            {
                Assert.True(PaperFonts.AreThere(null), PaperFonts.Missing);
                var address = new Uri(new Uri("https://workshop.example"), $"/stores/places/{Uri.EscapeDataString(path)}");
                var stock = LabelStock.Find("roll-62x29")!;
                using var pdf = new PdfReader(LabelPdf.Draw(new LabelSheets(stock, 1, [new Label("Place", [], "P001", address)])));
                Assert.Equal([address.AbsoluteUri], pdf.Codes(0));
            },
            iter: 8, threads: 1);

    [Theory]
    [InlineData("http://workshop.example/stores/places/P001", "P001")]
    [InlineData("https://workshop.example/stores/places/A%20B/", "A B")]
    [InlineData(" P001 ", "P001")]
    [InlineData("AS568-214", "AS568-214")]
    [InlineData("ftp://elsewhere/P001", "ftp://elsewhere/P001")]
    public void What_a_scanner_reads_from_a_label_means_its_code(string scanned, string code) => Assert.Equal(code, PaperAddress.CodeIn(scanned));

    [Fact]
    public void A_missing_font_is_said_with_the_command_that_brings_it()
    {
        Assert.Null(PaperFonts.Find(Path.GetTempPath()));
        Assert.Contains("apt-get install --yes --no-install-recommends fonts-dejavu-core", PaperFonts.Missing);
    }

    private static void AllInside(IReadOnlyList<PdfReader.Word> words) => Assert.All(words, w => Assert.True(
        w.Left >= 0 && w.Top >= 0 && w.Right <= w.SheetWidth && w.Bottom <= w.SheetHeight, $"{w.Text} leaves sheet {w.Sheet}: {w}"));

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
