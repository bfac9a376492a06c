using System.Diagnostics;
using System.Globalization;

namespace Workshop.Web.Tests.Hosting;

/// <summary>What the kernel says of a process.</summary>
internal static class Processes
{
    public static bool Runs(int id) => File.Exists($"/proc/{id}/status") && State(id) is not ('Z' or 'X' or null);

    public static int UserOf(int id) => int.Parse(Field(id, "Uid:")!.Split('\t')[0], CultureInfo.InvariantCulture);

    /// <summary>Waits until the process is gone, and hands back how long that took.</summary>
    public static async Task<TimeSpan> GoneAsync(int id, TimeSpan limit, CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        while (Runs(id))
        {
            if (waited.Elapsed > limit)
            {
                throw new TimeoutException($"Process {id} still runs after {limit.TotalSeconds} s.");
            }

            await Task.Delay(20, cancellation);
        }

        return waited.Elapsed;
    }

    private static char? State(int id) => Field(id, "State:")?[0];

    private static string? Field(int id, string name)
    {
        try
        {
            return File.ReadLines($"/proc/{id}/status")
                .FirstOrDefault(line => line.StartsWith(name, StringComparison.Ordinal))?[name.Length..].Trim();
        }
        catch (IOException)
        {
            return null;
        }
    }
}
