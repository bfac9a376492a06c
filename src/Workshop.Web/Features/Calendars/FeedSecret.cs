using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Workshop.Web.Features.Calendars;

/// <summary>The secret part of a calendar's address: 256 random bits. Only its SHA-256 is kept, as there is nothing to guess.</summary>
internal static class FeedSecret
{
    private const int Bytes = 32;
    private const int LongestLooked = 100;

    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    public static byte[] DigestOf(string secret) =>
        SHA256.HashData(Encoding.UTF8.GetBytes(secret.Length > LongestLooked ? secret[..LongestLooked] : secret));

    public static string PathOf(string secret) => $"/calendar/{secret}.ics";
}
