using Workshop.Tests.Hosting;
using Xunit;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace Workshop.Browser.Tests.Hosting;

/// <summary>Every test of this project looks at the same running service.</summary>
[CollectionDefinition(Name)]
public sealed class RunningDemo : ICollectionFixture<DemoService>
{
    public const string Name = "running demo";
}

/// <summary>The service as a newcomer starts it: the demo's data, generated passwords. Once for the whole test run.</summary>
public sealed class DemoService(PostgresServer server) : ServiceProcess(server, "--Workshop:Demo=true")
{
    /// <summary>Account name to password, as the demo generated them.</summary>
    public IReadOnlyDictionary<string, string> Passwords { get; private set; } = new Dictionary<string, string>();

    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        Passwords = File.ReadLines(Path.Combine(DataFolder, "demo-passwords.txt"))
            .Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
            .Where(words => words.Length == 2 && !words[0].StartsWith('#'))
            .ToDictionary(words => words[0], words => words[1], StringComparer.Ordinal);
    }
}

/// <summary>The service on an empty database with one manager: nothing is set up.</summary>
public sealed class BareService(PostgresServer server) : ServiceProcess(server, $"--Workshop:FirstManager={Manager}", "--Workshop:TimeZone=Europe/Vienna")
{
    public const string Manager = "Ada";

    /// <summary>As it was printed at the first start.</summary>
    public string Password => Output.Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        .First(words => words.Length == 2 && words[0] == Manager)[1];
}
