namespace Workshop.Web.Data.Seeding;

/// <summary>Generated passwords are shown once, at the start that made them; the demo also keeps them for its owner.</summary>
internal static class PasswordFile
{
    /// <summary>
    /// Writes them to a file that only its owner can read. False where the folder cannot be written, as in a container whose
    /// disk is read only: then what is printed must do.
    /// </summary>
    public static bool Keep(string file, IReadOnlyList<(string Account, string Password)> passwords)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            var beside = $"{file}.new";
            File.Delete(beside);
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using (var writer = new StreamWriter(beside, options))
            {
                writer.WriteLine("# Generated for this demo when it was first started. Account and password:");
                foreach (var (account, password) in passwords)
                {
                    writer.WriteLine($"{account} {password}");
                }
            }

            File.Move(beside, file, overwrite: true);
            return true;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    public static async Task Print(
        TextWriter console, IReadOnlyList<(string Account, string Password)> passwords, string? file)
    {
        await console.WriteLineAsync(file is null
            ? "Generated passwords. They are shown this once and kept nowhere; note them now:"
            : $"Generated passwords. They are shown this once, and kept in {file}, which only you can read:");
        foreach (var (account, password) in passwords)
        {
            await console.WriteLineAsync($"  {account,-10} {password}");
        }

        await console.FlushAsync();
    }
}
