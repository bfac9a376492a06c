using CsCheck;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Tests.Motorcycles;

public class VinTests
{
    private const string Allowed = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

    [Fact]
    public void Published_numbers_have_their_published_check_digits()
    {
        var published = CsvTable.Read("check digits", CheckValues.Lines("vin/check-digits.csv")).Rows;

        Assert.Equal(3, published.Count);
        Assert.All(published, row =>
        {
            var check = Vin.Check(row["number"]);
            Assert.Equal(row["check_digit"], check.ComputedCheckDigit.ToString());
            Assert.Equal(VinCheckDigitVerdict.Matches, check.CheckDigit);
            Assert.Empty(check.Warnings);
        });
    }

    [Fact]
    public void Case_blanks_and_hyphens_do_not_matter()
    {
        var check = Vin.Check(" 1m8gdm9a-xkp 042788\t");

        Assert.Equal("1M8GDM9AXKP042788", check.Number);
        Assert.Equal(VinCheckDigitVerdict.Matches, check.CheckDigit);
    }

    /// <summary>Invented numbers from here on.</summary>
    [Fact]
    public void A_slip_in_a_North_American_number_is_a_warning_with_both_digits()
    {
        var check = Vin.Check("11111111211111111");

        Assert.Equal(VinCheckDigitVerdict.DoesNotMatch, check.CheckDigit);
        Assert.Equal('1', check.ComputedCheckDigit);
        Assert.Contains("Character 9 is '2', but the check digit of this number is '1'", Assert.Single(check.Warnings));
    }

    [Fact]
    public void Elsewhere_position_nine_need_not_be_a_check_digit()
    {
        var check = Vin.Check("ZZZZZZ99ZZZ000001");

        Assert.Equal(VinCheckDigitVerdict.NotUsedInThisRegion, check.CheckDigit);
        Assert.Contains("outside North America", Assert.Single(check.Warnings));
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("1111111111111111", 16)]
    [InlineData("111111111111111111", 18)]
    public void A_wrong_length_is_named(string typed, int length)
    {
        var check = Vin.Check(typed);

        Assert.False(check.HasRightLength);
        Assert.Null(check.ComputedCheckDigit);
        Assert.Equal(VinCheckDigitVerdict.NotComputed, check.CheckDigit);
        Assert.Contains($"has {length} characters", Assert.Single(check.Warnings));
    }

    [Fact]
    public void Letters_that_look_like_digits_are_named_with_their_places()
    {
        var check = Vin.Check("1I1O1Q1_1é1111111");

        Assert.Equal(
            [(2, 'I'), (4, 'O'), (6, 'Q'), (8, '_'), (10, 'É')],
            check.WrongCharacters.Select(wrong => (wrong.Position, wrong.Character)));
        Assert.Equal(5, check.Warnings.Count);
        Assert.Equal(VinCheckDigitVerdict.NotComputed, check.CheckDigit);
    }

    /// <summary>Eleven is prime and no weight is a multiple of it, so a single exchanged digit never goes unseen.</summary>
    [Fact]
    public void One_wrong_digit_always_changes_the_check_digit() =>
        Gen.Select(Gen.Int[0, Allowed.Length - 1].Array[17], Gen.Int[0, 16].Where(at => at != 8), Gen.Int[1, 9]).Sample(
            (characters, at, other) =>
            {
                characters[at] %= 10;
                var right = string.Concat(characters.Select(i => Allowed[i]));
                characters[at] = (characters[at] + other) % 10;
                var wrong = string.Concat(characters.Select(i => Allowed[i]));

                Assert.NotEqual(Vin.Check(right).ComputedCheckDigit, Vin.Check(wrong).ComputedCheckDigit);
            });
}
