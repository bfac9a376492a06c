using System.Globalization;

namespace Workshop.Domain.Estimates;

/// <summary>
/// Sums of money in the workshop's one currency. A sum has two decimals; half a cent goes away from zero, as half a unit does in
/// EN 16931-1 and everywhere else in trade.
/// </summary>
public static class Money
{
    /// <summary>Decimals of a sum.</summary>
    public const int Decimals = 2;

    /// <summary>Decimals of a price of one hour, piece or litre; a sealing ring may cost less than a cent.</summary>
    public const int PriceDecimals = 4;

    /// <summary>The largest price that may be typed; more is a slip.</summary>
    public const decimal LargestPrice = 100_000;

    /// <summary>A sum as it is written and added up.</summary>
    public static decimal Round(decimal amount) => Math.Round(amount, Decimals, MidpointRounding.AwayFromZero);

    /// <summary>"1,234.50": the currency stands beside it.</summary>
    public static string Say(decimal sum) => sum.ToString("#,0.00", CultureInfo.InvariantCulture);

    /// <summary>"1,234.50 EUR".</summary>
    public static string Say(decimal sum, string currency) => $"{Say(sum)} {currency}";

    /// <summary>A price with two decimals, or as many more as it has: "12.50", "0.0125".</summary>
    public static string SayPrice(decimal price) => price.ToString("#,0.00##", CultureInfo.InvariantCulture);
}

/// <summary>
/// The currencies of ISO 4217 whose minor unit is the hundredth, in which every sum here is written. Others (yen, dinar) would
/// need another number of decimals, and are refused in words.
/// </summary>
public static class Currencies
{
    private const string WithTwoDecimals =
        "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE "
        + "CHF CHW CNY COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD "
        + "HNL HRK HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP "
        + "MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR "
        + "SDG SEK SGD SHP SLE SLL SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED "
        + "VES WST XCD YER ZAR ZMW ZWL";

    /// <summary>Codes of three letters, in order.</summary>
    public static readonly IReadOnlyList<string> All = WithTwoDecimals.Split(' ');

    /// <summary>Whether sums can be kept in it.</summary>
    public static bool IsKnown(string? code) => code is not null && All.Contains(code, StringComparer.Ordinal);
}
