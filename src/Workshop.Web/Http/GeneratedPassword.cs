using System.Security.Cryptography;

namespace Workshop.Web.Http;

/// <summary>A first password, shown once to whoever made the account; only its hash is kept.</summary>
internal static class GeneratedPassword
{
    // No letter or digit that reads like another: 31 to the power of 20 is more than 99 bits.
    private const string Letters = "abcdefghjkmnpqrstuvwxyz23456789";
    private const int Length = 20;

    public static string Make() => RandomNumberGenerator.GetString(Letters, Length);
}
