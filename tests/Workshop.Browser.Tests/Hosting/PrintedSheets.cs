using System.Diagnostics;
using Xunit;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>A PDF read back sheet by sheet with Poppler, which knows nothing of how it was made.</summary>
internal static class PrintedSheets
{
    /// <summary>The words of each sheet, with single blanks between them.</summary>
    public static async Task<IReadOnlyList<string>> Of(byte[] pdf)
    {
        var file = Path.GetTempFileName();
        try
        {
            await File.WriteAllBytesAsync(file, pdf, TestContext.Current.CancellationToken);
            var start = new ProcessStartInfo("pdftotext", ["-raw", file, "-"]) { RedirectStandardOutput = true };
            using var process = Process.Start(start) ?? throw new InvalidOperationException("pdftotext does not start.");
            var text = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(0, process.ExitCode);
            return [.. text.TrimEnd('\f').Split('\f').Select(sheet => string.Join(' ', sheet.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
        }
        finally
        {
            File.Delete(file);
        }
    }
}
