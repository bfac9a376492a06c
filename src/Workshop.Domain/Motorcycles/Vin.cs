namespace Workshop.Domain.Motorcycles;

/// <summary>
/// The vehicle identification number of ISO 3779: 17 characters, digits and capital letters without I, O and Q. Position
/// 9 holds a check digit where 49 CFR 565.15(c) or a like rule applies, as in North America; elsewhere makers may put
/// anything there.
/// </summary>
public static class Vin
{
    /// <summary>Characters in a vehicle identification number.</summary>
    public const int Length = 17;

    private const int CheckPosition = 9;

    /// <summary>Value of each letter by 49 CFR 565.15(c); a digit is worth itself.</summary>
    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
    private const string LetterValues = "12345678123457923456789";

    /// <summary>Weight of each position by 49 CFR 565.15(c).</summary>
    private static readonly int[] Weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

    /// <summary>Looks at a number as typed. Never refuses: what is wrong is a warning, since frames are stamped as they are.</summary>
    /// <param name="typed">
    /// As typed; case, blanks and hyphens do not matter. Frames from before 1981 often bear shorter numbers.
    /// </param>
    public static VinCheck Check(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var number = string.Concat(typed.Where(c => !char.IsWhiteSpace(c) && c != '-')).ToUpperInvariant();
        var wrong = number
            .Select((character, index) => new WrongVinCharacter(index + 1, character))
            .Where(at => !IsAllowed(at.Character))
            .ToList();
        if (number.Length != Length || wrong.Count > 0)
        {
            return new VinCheck(number, wrong, null, VinCheckDigitVerdict.NotComputed);
        }

        var computed = CheckDigit(number);
        var verdict = number[CheckPosition - 1] == computed ? VinCheckDigitVerdict.Matches
            : IsFromNorthAmerica(number) ? VinCheckDigitVerdict.DoesNotMatch
            : VinCheckDigitVerdict.NotUsedInThisRegion;
        return new VinCheck(number, wrong, computed, verdict);
    }

    private static bool IsAllowed(char character) => char.IsAsciiDigit(character) || Letters.Contains(character);

    /// <summary>The first character is the geographic area, 1 to 5 being North America (ISO 3780).</summary>
    private static bool IsFromNorthAmerica(string number) => number[0] is >= '1' and <= '5';

    private static char CheckDigit(string number)
    {
        var remainder = number.Select((character, index) => Weights[index] * Value(character)).Sum() % 11;
        return remainder == 10 ? 'X' : (char)('0' + remainder);
    }

    private static int Value(char character) =>
        (char.IsAsciiDigit(character) ? character : LetterValues[Letters.IndexOf(character)]) - '0';
}

/// <summary>What was found about a vehicle identification number.</summary>
/// <param name="Number">The number in capitals, without blanks and hyphens.</param>
/// <param name="WrongCharacters">Characters that no such number may hold, with their positions.</param>
/// <param name="ComputedCheckDigit">0 to 9 or X; null where length or characters forbid computing it.</param>
/// <param name="CheckDigit">How position 9 compares with it.</param>
public sealed record VinCheck(
    string Number,
    IReadOnlyList<WrongVinCharacter> WrongCharacters,
    char? ComputedCheckDigit,
    VinCheckDigitVerdict CheckDigit)
{
    /// <summary>True when it has 17 characters.</summary>
    public bool HasRightLength => Number.Length == Vin.Length;

    /// <summary>One sentence for each thing to look at again; empty when nothing is wrong.</summary>
    public IReadOnlyList<string> Warnings
    {
        get
        {
            var warnings = new List<string>();
            if (!HasRightLength)
            {
                warnings.Add($"The number has {Number.Length} characters; since 1981 it has {Vin.Length}.");
            }

            warnings.AddRange(WrongCharacters.Select(wrong =>
                $"Character {wrong.Position} is '{wrong.Character}'; digits and capital letters without I, O and Q are allowed."));
            switch (CheckDigit)
            {
                case VinCheckDigitVerdict.DoesNotMatch:
                    warnings.Add(
                        $"Character 9 is '{Number[8]}', but the check digit of this number is '{ComputedCheckDigit}'. "
                        + "Compare it with the frame.");
                    break;
                case VinCheckDigitVerdict.NotUsedInThisRegion:
                    warnings.Add(
                        $"Character 9 is '{Number[8]}' and the check digit would be '{ComputedCheckDigit}'; outside North "
                        + "America the digit need not be used. Compare it with the frame if in doubt.");
                    break;
                default:
                    break;
            }

            return warnings;
        }
    }
}

/// <summary>A character that no vehicle identification number may hold.</summary>
/// <param name="Position">1 for the first.</param>
/// <param name="Character">What stands there.</param>
public sealed record WrongVinCharacter(int Position, char Character);

/// <summary>How position 9 compares with the check digit.</summary>
public enum VinCheckDigitVerdict
{
    /// <summary>Length or characters are wrong, so there is nothing to compare.</summary>
    NotComputed,

    /// <summary>Position 9 is the check digit.</summary>
    Matches,

    /// <summary>Position 9 differs, in a number from where the digit must be right: most likely a slip.</summary>
    DoesNotMatch,

    /// <summary>Position 9 differs, in a number from where it need not be a check digit: a hint at most.</summary>
    NotUsedInThisRegion,
}
