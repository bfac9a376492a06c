using System.Text.Json;

namespace Workshop.Web.Http;

/// <summary>Words of a fixed set in addresses, written as the API's answers write them: <c>checkedIn</c>.</summary>
internal static class Words
{
    public static IEnumerable<string> All<T>()
        where T : struct, Enum => Enum.GetValues<T>().Select(Write);

    public static string Write<T>(T word)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(word.ToString());

    /// <summary>Nothing where no word is given, or one that the validator refuses.</summary>
    public static T? Read<T>(string? text)
        where T : struct, Enum => Enum.GetValues<T>().Where(w => Write(w) == text).Select(w => (T?)w).FirstOrDefault();
}
