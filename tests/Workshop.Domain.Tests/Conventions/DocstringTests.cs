using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Conventions;

/// <summary>
/// Where the domain computes, every public type and every public static method says what it means, in which unit and
/// from which source. Plain rows and requests need no docstring, so the compiler's own check is off.
/// </summary>
public class DocstringTests
{
    private static readonly string[] ComputationNamespaces =
    [
        "Workshop.Domain.Statistics", "Workshop.Domain.Drift", "Workshop.Domain.Shims", "Workshop.Domain.Kits",
        "Workshop.Domain.Torque", "Workshop.Domain.TorqueSheets", "Workshop.Domain.Intervals",
        "Workshop.Domain.Clearances", "Workshop.Domain.CamTiming", "Workshop.Domain.Measures", "Workshop.Domain.Threads",
        "Workshop.Domain.Consumables",
    ];

    private static readonly Assembly Domain = typeof(LinearRegression).Assembly;

    private static readonly IReadOnlyList<string> Documented = ReadDocumentation();

    [Fact]
    public void Every_public_type_of_a_computation_has_a_docstring()
    {
        var bare = ComputationTypes().Where(type => Count($"T:{NameOf(type)}") == 0).Select(type => type.FullName);

        Assert.Equal("", string.Join("; ", bare));
    }

    [Fact]
    public void Every_public_static_method_of_a_computation_has_a_docstring()
    {
        var bare = ComputationTypes()
            .SelectMany(type => type
                .GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
                .Where(method => !method.IsSpecialName && !method.IsDefined(typeof(CompilerGeneratedAttribute)))
                .GroupBy(method => method.Name)
                .Where(overloads => Count($"M:{NameOf(type)}.{overloads.Key}") < overloads.Count())
                .Select(overloads => $"{type.FullName}.{overloads.Key}"));

        Assert.Equal("", string.Join("; ", bare));
    }

    /// <summary>The test reads what it thinks it reads.</summary>
    [Fact]
    public void The_documentation_is_that_of_the_computations()
    {
        Assert.True(ComputationTypes().Count() > 20);
        Assert.Equal(1, Count("T:Workshop.Domain.Statistics.LinearRegression"));
        Assert.Equal(1, Count("M:Workshop.Domain.Statistics.LinearRegression.Fit"));
        Assert.Equal(0, Count("M:Workshop.Domain.Statistics.LinearRegression.Nothing"));
    }

    private static IEnumerable<Type> ComputationTypes() => Domain.GetExportedTypes().Where(type =>
        ComputationNamespaces.Any(space =>
            type.Namespace == space || type.Namespace?.StartsWith(space + ".", StringComparison.Ordinal) == true)
        && !type.IsDefined(typeof(CompilerGeneratedAttribute)));

    private static string NameOf(Type type) => type.FullName!.Replace('+', '.');

    /// <summary>Documented members of a name: itself, or its overloads, which go on with ( or ``.</summary>
    private static int Count(string id) => Documented.Count(name =>
        name == id
        || name.StartsWith(id + "(", StringComparison.Ordinal)
        || name.StartsWith(id + "``", StringComparison.Ordinal));

    private static List<string> ReadDocumentation() =>
        XDocument.Load(Path.ChangeExtension(Domain.Location, ".xml")).Descendants("member")
            .Where(member => member.Elements().Any(part =>
                (part.Name == "summary" && part.Value.Trim().Length > 0) || part.Name == "inheritdoc"))
            .Select(member => member.Attribute("name")!.Value)
            .ToList();
}
