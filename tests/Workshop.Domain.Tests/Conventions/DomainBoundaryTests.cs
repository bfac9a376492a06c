using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Conventions;

/// <summary>
/// The one boundary: the domain computes and decides. It knows no database, web, file, network, or clock of its own.
/// Read from the compiled assembly, so that no wording of the source gets round it.
/// </summary>
public class DomainBoundaryTests
{
    private static readonly string[] AllowedAssemblies =
    [
        "System.Collections", "System.Collections.Concurrent", "System.Collections.Immutable", "System.Linq",
        "System.Memory", "System.Numerics.Vectors", "System.ObjectModel", "System.Runtime", "System.Runtime.Numerics",
        "System.Runtime.Intrinsics", "System.Text.Json", "System.Text.RegularExpressions", "System.Threading",
        "System.Threading.Tasks.Parallel",
        "Google.OrTools", "MathNet.Numerics", "NodaTime", "UnitsNet",
    ];

    /// <summary>These live in assemblies that are allowed.</summary>
    private static readonly string[] ForbiddenTypes =
    [
        "System.IO.", "System.Net.", "System.Data.", "System.Console", "System.Environment", "System.Random",
        "System.Diagnostics.Process", "System.Diagnostics.Stopwatch", "System.Threading.Thread", "System.TimeProvider",
        "NodaTime.SystemClock",
    ];

    [Fact]
    public void The_domain_references_only_what_computes()
    {
        var references = typeof(LinearRegression).Assembly.GetReferencedAssemblies().Select(name => name.Name!).ToList();

        Assert.Contains("System.Runtime", references);
        Assert.Empty(references.Except(AllowedAssemblies));
    }

    [Fact]
    public void The_domain_uses_no_file_network_process_or_clock()
    {
        var used = UsedTypes();

        Assert.Contains("System.Math", used);
        Assert.DoesNotContain(used, IsForbidden);
    }

    [Theory]
    [InlineData("System.IO.File", true)]
    [InlineData("System.Net.Http.HttpClient", true)]
    [InlineData("System.Random", true)]
    [InlineData("NodaTime.SystemClock", true)]
    [InlineData("NodaTime.IClock", false)]
    [InlineData("System.Threading.CancellationToken", false)]
    public void The_rule_tells_what_it_should(string type, bool forbidden) => Assert.Equal(forbidden, IsForbidden(type));

    private static bool IsForbidden(string type) => ForbiddenTypes.Any(forbidden =>
        forbidden.EndsWith('.') ? type.StartsWith(forbidden, StringComparison.Ordinal) : type == forbidden);

    private static List<string> UsedTypes()
    {
        using var file = new PEReader(File.OpenRead(typeof(LinearRegression).Assembly.Location));
        var metadata = file.GetMetadataReader();
        return metadata.TypeReferences
            .Select(metadata.GetTypeReference)
            .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")
            .ToList();
    }
}
