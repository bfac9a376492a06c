using System.Diagnostics;

namespace Workshop.Web.Hosting;

/// <summary>
/// As whom the server's programs run. PostgreSQL refuses root, so root starts them as the user postgres; anyone else
/// starts them as himself.
/// </summary>
public sealed record ServerUser(string? Name)
{
    private const string Postgres = "postgres";

    public static ServerUser Self { get; } = new((string?)null);

    /// <exception cref="DatabaseUnavailableException">This is root and there is no user postgres.</exception>
    public static async Task<ServerUser> FindAsync(CancellationToken cancellation)
    {
        if (!Environment.IsPrivilegedProcess)
        {
            return Self;
        }

        var answer = await Self.RunAsync("id", ["-u", Postgres], null, cancellation);
        return answer.ExitCode == 0
            ? new ServerUser(Postgres)
            : throw new DatabaseUnavailableException(
                "PostgreSQL refuses to run as root and there is no user postgres: create one " +
                "(useradd --system postgres), or start the service as another user.");
    }

    /// <summary>Creates the folder where it is missing, and makes it this user's own and nobody else's.</summary>
    public async Task OwnFolderAsync(string folder, CancellationToken cancellation)
    {
        string[] owner = Name is null ? [] : ["-o", Name];
        var answer = await Self.RunAsync("install", ["-d", "-m", "0700", .. owner, folder], null, cancellation);
        answer.MustSucceed($"The folder {folder} cannot be made ready for PostgreSQL");
        var entered = await RunAsync("test", ["-x", folder], null, cancellation);
        if (entered.ExitCode != 0)
        {
            throw new DatabaseUnavailableException(
                $"The user {Name ?? Environment.UserName} cannot enter {folder}: choose another folder with " +
                "Workshop:DataFolder, or let others pass through the folders above it (chmod a+x).");
        }
    }

    /// <summary>Runs a program to its end.</summary>
    public async Task<ProgramResult> RunAsync(
        string program, IEnumerable<string> arguments, string? input, CancellationToken cancellation)
    {
        var start = Command(program, arguments);
        start.RedirectStandardError = true;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var error = process.StandardError.ReadToEndAsync(cancellation);
        await process.StandardInput.WriteAsync(input.AsMemory(), cancellation);
        process.StandardInput.Close();
        await process.WaitForExitAsync(cancellation);
        return new ProgramResult(process.ExitCode, await output, await error);
    }

    /// <summary>
    /// A command of this user, in a place that everyone may enter, and without the settings for PostgreSQL's programs
    /// that the environment may hold: they would be another cluster's.
    /// </summary>
    public ProcessStartInfo Command(string program, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = "/",
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        foreach (var setting in start.Environment.Keys.Where(IsOfPostgres).ToList())
        {
            start.Environment.Remove(setting);
        }

        start.Environment["LC_ALL"] = "C.UTF-8";
        if (Name is not null)
        {
            start.UserName = Name;
        }

        return start;
    }

    private static bool IsOfPostgres(string variable) =>
        variable.StartsWith("PG", StringComparison.Ordinal) && !variable.Contains('_', StringComparison.Ordinal);
}

/// <summary>What a program that ran to its end left behind.</summary>
public sealed record ProgramResult(int ExitCode, string Output, string Error)
{
    public void MustSucceed(string failure)
    {
        if (ExitCode != 0)
        {
            throw new DatabaseUnavailableException($"{failure}: {LastLine(Error) ?? $"exit code {ExitCode}"}");
        }
    }

    private static string? LastLine(string text) =>
        text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).LastOrDefault();
}
