using Microsoft.Extensions.Configuration;
using Workshop.Web.Hosting;
using Xunit.MicrosoftTestingPlatform;

namespace Workshop.Web.Tests.Hosting;

/// <summary>
/// Runs the tests, or, as <c>hold-database</c>, opens the database as the service does, says where it is, and holds it
/// until its input ends: a process that a test can kill.
/// </summary>
internal static class TestProgram
{
    public const string HoldDatabase = "hold-database";

    private static async Task<int> Main(string[] arguments) => arguments is [HoldDatabase, .. var settings]
        ? await HoldAsync(settings)
        : await TestPlatformTestFramework.RunAsync(arguments, SelfRegisteredExtensions.AddSelfRegisteredExtensions);

    private static async Task<int> HoldAsync(string[] settings)
    {
        try
        {
            var configuration = new ConfigurationBuilder().AddCommandLine(settings).Build();
            await using var database = await DatabaseLocator.OpenAsync(configuration, null, CancellationToken.None);
            Console.WriteLine(database.Connections.Direct);
            await Console.In.ReadToEndAsync();
            return 0;
        }
        catch (DatabaseUnavailableException failure)
        {
            await Console.Error.WriteLineAsync(failure.Message);
            return 1;
        }
    }
}
