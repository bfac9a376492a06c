using CsCheck;
using Workshop.Domain.Contacts;

namespace Workshop.Domain.Tests.Contacts;

public class TemplateTextTests
{
    private static readonly Dictionary<string, string> Values = TemplateFields.OfBody.ToDictionary(f => f, f => $"<{f}>", StringComparer.Ordinal);

    [Fact]
    public void What_stands_in_braces_is_put_in_and_two_braces_are_one() =>
        Assert.Equal("Dear <owner>, {<registration>} }", Read("Dear {owner}, {{{registration}} }").Fill(Values));

    [Theory]
    [InlineData("Dear {ownr}", "body has {ownr}, which is no placeholder here: {owner}, {registration}, {motorcycle}, {items}, {expected}, {workshop}, {phone}, {estimate}, {record} are allowed.")]
    [InlineData("Dear {Owner}", "body has {Owner}, which is no placeholder here: {owner}, {registration}, {motorcycle}, {items}, {expected}, {workshop}, {phone}, {estimate}, {record} are allowed.")]
    [InlineData("Dear {}", "body has {}, which is no placeholder here: {owner}, {registration}, {motorcycle}, {items}, {expected}, {workshop}, {phone}, {estimate}, {record} are allowed.")]
    [InlineData("Dear {owner", "body has \"{owner\", a placeholder that is never closed: close it with }, or write {{ for a brace; {owner}, {registration}, {motorcycle}, {items}, {expected}, {workshop}, {phone}, {estimate}, {record} are allowed.")]
    [InlineData("Dear {owner\nand} so", "body has \"{owner\", a placeholder that is never closed: close it with }, or write {{ for a brace; {owner}, {registration}, {motorcycle}, {items}, {expected}, {workshop}, {phone}, {estimate}, {record} are allowed.")]
    public void An_unknown_or_unclosed_placeholder_is_refused_by_name_with_what_is_allowed(string text, string sentence)
    {
        var problem = TemplateText.Read("body", text, TemplateFields.OfBody).Problem!;

        Assert.Equal(("body", sentence), (problem.Faults[0].Field, problem.Faults[0].Sentence));
    }

    [Fact]
    public void A_subject_is_one_line_so_it_holds_no_items_and_no_line_breaks_of_a_name()
    {
        Assert.NotNull(TemplateText.Read("subject", "{items}", TemplateFields.OfSubject).Problem);
        var values = new Dictionary<string, string>(Values) { ["owner"] = "Olga\r\nBcc: everybody@example.org\u2028\u0085x" };

        Assert.Equal("For Olga  Bcc: everybody@example.org  x", TemplateText.Read("subject", "For {owner}", TemplateFields.OfSubject).Value.FillLine(values));
    }

    [Fact]
    public void A_name_is_never_read_as_a_placeholder() =>
        Assert.Equal("Dear {phone} {{, 1", Read("Dear {owner}, {phone}").Fill(new Dictionary<string, string> { ["owner"] = "{phone} {{", ["phone"] = "1" }));

    /// <summary>Whatever text stands around whatever placeholders, and whatever is put in: what comes out is that and nothing else.</summary>
    [Fact]
    public void Filling_a_template_never_loses_or_invents_text()
    {
        var text = Gen.OneOf(Gen.String[Gen.Char["{}\n ab"], 0, 8], Gen.String[0, 8]);
        var part = Gen.Select(Gen.Bool, Gen.Int[0, TemplateFields.OfBody.Count - 1], text);
        Gen.Select(part.Array[0, 12], text.Array[TemplateFields.OfBody.Count]).Sample((parts, values) =>
        {
            var template = string.Concat(parts.Select(p => p.Item1 ? $"{{{TemplateFields.OfBody[p.Item2]}}}" : p.Item3.Replace("{", "{{", StringComparison.Ordinal)));
            var expected = string.Concat(parts.Select(p => p.Item1 ? values[p.Item2] : p.Item3));
            var filled = Read(template).Fill(TemplateFields.OfBody.Zip(values).ToDictionary(v => v.First, v => v.Second, StringComparer.Ordinal));
            Assert.Equal(expected, filled);
        });
    }

    /// <summary>On one line: the same characters in the same places, but for those that would end the line.</summary>
    [Fact]
    public void One_line_keeps_every_character_that_does_not_break_it() => Gen.String.Sample(text =>
    {
        var line = MessageRules.OneLine(text);
        Assert.True(MessageRules.IsOneLine(line));
        Assert.Equal(text.Length, line.Length);
        Assert.All(text.Zip(line), pair => Assert.True(pair.First == pair.Second || (pair.Second == ' ' && !MessageRules.IsOneLine(pair.First.ToString()))));
    });

    private static TemplateText Read(string text) => TemplateText.Read("body", text, TemplateFields.OfBody).Value;
}
