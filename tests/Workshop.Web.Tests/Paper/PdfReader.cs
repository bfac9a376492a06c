using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Workshop.Web.Tests.Paper;

/// <summary>Reads a PDF back with Poppler's tools, which know nothing of how it was made, and its codes with another library.</summary>
internal sealed partial class PdfReader : IDisposable
{
    private const int DotsPerInch = 200;

    private readonly string folder = Directory.CreateTempSubdirectory("workshop-pdf-").FullName;

    public PdfReader(byte[] pdf) => System.IO.File.WriteAllBytes(File, pdf);

    private string File => Path.Combine(folder, "read.pdf");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>Text sheet by sheet, in the order in which it was drawn: what stands in one cell stays together.</summary>
    public IReadOnlyList<string> Sheets() => Run("pdftotext", "-raw", File, "-").TrimEnd('\f').Split('\f');

    public string Text() => string.Join("\n", Sheets());

    public string Info() => Run("pdfinfo", File);

    /// <summary>The fonts of the file; columns of the tool's table are told by its second line.</summary>
    public IReadOnlyList<(string Name, bool IsEmbedded)> Fonts()
    {
        var lines = Run("pdffonts", File).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var embedded = lines[0].IndexOf("emb", StringComparison.Ordinal);
        return [.. lines.Skip(2).Select(line => (line[..37].Trim(), line[embedded..].StartsWith("yes", StringComparison.Ordinal)))];
    }

    /// <summary>How many pictures are in the file; the tool's table has two lines of head.</summary>
    public int Images() => Run("pdfimages", "-list", File).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length - 2;

    /// <summary>Every word with its box, in points from the upper left, and the size of its sheet.</summary>
    public IReadOnlyList<Word> Words()
    {
        var html = XDocument.Parse(Cleaned(Run("pdftotext", "-bbox", File, "-")));
        XNamespace space = "http://www.w3.org/1999/xhtml";
        return [.. html.Descendants(space + "page").SelectMany((page, sheet) => page.Elements(space + "word").Select(word => new Word(
            word.Value, sheet, Of(word, "xMin"), Of(word, "yMin"), Of(word, "xMax"), Of(word, "yMax"), Of(page, "width"), Of(page, "height"))))];
    }

    /// <summary>What the codes of squares on a sheet say, as a camera would read them from the drawn sheet.</summary>
    public IReadOnlyList<string> Codes(int sheet)
    {
        var name = Path.Combine(folder, $"sheet-{sheet}");
        Run("pdftoppm", "-gray", "-r", DotsPerInch.ToString(CultureInfo.InvariantCulture), "-f", $"{sheet + 1}", "-l", $"{sheet + 1}", "-singlefile", File, name);
        var (grey, width, height) = Pgm(System.IO.File.ReadAllBytes($"{name}.pgm"));
        var bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8)));
        var found = new ZXing.Multi.QrCode.QRCodeMultiReader().decodeMultiple(bitmap, new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        return [.. (found ?? []).Select(r => r.Text)];
    }

    internal sealed record Word(string Text, int Sheet, double Left, double Top, double Right, double Bottom, double SheetWidth, double SheetHeight);

    private static double Of(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>The tool's head names a document type that the reader would fetch.</summary>
    private static string Cleaned(string html) => DocumentType().Replace(html, "");

    private static (byte[] Grey, int Width, int Height) Pgm(byte[] file)
    {
        var head = Head().Match(System.Text.Encoding.ASCII.GetString(file, 0, Math.Min(64, file.Length)));
        var (width, height) = (int.Parse(head.Groups[1].Value, CultureInfo.InvariantCulture), int.Parse(head.Groups[2].Value, CultureInfo.InvariantCulture));
        return (file[head.Length..], width, height);
    }

    private static string Run(string tool, params string[] arguments)
    {
        var start = new ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{tool} does not start.");
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? output : throw new InvalidOperationException($"{tool}: {errors.Result}");
    }

    [GeneratedRegex(@"^P5\s+(\d+)\s+(\d+)\s+255\s")]
    private static partial Regex Head();

    [GeneratedRegex("<!DOCTYPE[^>]*>")]
    private static partial Regex DocumentType();
}
