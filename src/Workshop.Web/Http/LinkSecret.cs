using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Workshop.Web.Http;

/// <summary>
/// The secret part of an address that leads in without a sign-in: 256 random bits. Only its SHA-256 is kept, as there is nothing to
/// guess; it is looked up by that digest, so no comparison tells by its time how much of a guess was right.
/// </summary>
internal static class LinkSecret
{
    private const int Bytes = 32;
    private const int LongestLooked = 100;

    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    public static byte[] DigestOf(string secret) =>
        SHA256.HashData(Encoding.UTF8.GetBytes(secret.Length > LongestLooked ? secret[..LongestLooked] : secret));
}
