using NodaTime;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.Http;

public class CsvFileTests
{
    /// <summary>RFC 4180, section 2: lines end in CR LF; a comma, a quotation mark or a line break asks for quotation marks, doubled inside.</summary>
    [Fact]
    public void Lines_and_quotation_marks_are_those_of_RFC_4180() =>
        Assert.Equal(
            "name,says\r\n\"a, b\",\"\"\"yes\"\"\"\r\n\"two\nlines\",\r\n",
            CsvFile.Write(["name", "says"], [["a, b", "\"yes\""], ["two\nlines", null]]));

    [Fact]
    public void Numbers_have_a_decimal_point_and_days_are_those_of_ISO_8601() =>
        Assert.Equal(
            "a,b,c,d\r\n-0.0125,0.05,1234567,2026-03-02\r\n",
            CsvFile.Write(["a", "b", "c", "d"], [[-0.0125m, 0.05, 1_234_567, new LocalDate(2026, 3, 2)]]));

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@sum")]
    [InlineData("\t=1")]
    public void A_text_that_a_spreadsheet_would_compute_is_kept_a_text(string text) =>
        Assert.Contains($"'{text}", CsvFile.Write(["a"], [[text]]), StringComparison.Ordinal);

    [Fact]
    public void Names_of_files_are_plain() => Assert.Equal("w-b-12", FileNames.Plain("W-ÜB  12/"));
}
