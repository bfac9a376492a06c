namespace Workshop.Web.Tests.Hosting;

/// <summary>Who may do what with a file, in the nine letters of <c>ls -l</c>.</summary>
internal static class FileModes
{
    public static string Of(string path)
    {
        var mode = OperatingSystem.IsWindows() ? throw new PlatformNotSupportedException() : File.GetUnixFileMode(path);
        return string.Concat("rwxrwxrwx".Select((letter, place) => ((int)mode >> (8 - place) & 1) == 1 ? letter : '-'));
    }

    public static void Set(string path, string letters)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(
                path, (UnixFileMode)letters.Aggregate(0, (mode, letter) => (mode << 1) | (letter == '-' ? 0 : 1)));
        }
    }
}
