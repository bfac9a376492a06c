using System.Globalization;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>What stands at one valve of the map.</summary>
/// <param name="Figure">What the blades said, short: "0.15"; empty where it was not read.</param>
/// <param name="Word">The verdict in a word.</param>
/// <param name="Here">It may be measured where the crankshaft stands.</param>
/// <param name="Now">It is the one that is asked for.</param>
/// <param name="Words">All of it, for those who do not see the drawing.</param>
/// <param name="Address">Where a tap leads to without scripts; nothing where it cannot be chosen.</param>
public sealed record MapValve(ValveKey Valve, string Figure, string Word, bool Here, bool Now, string Words, string? Address);

/// <summary>A valve where it lies in the drawing: its centre.</summary>
public sealed record DrawnValve(MapValve Valve, decimal X, decimal Y);

/// <summary>A cylinder from above, with its name.</summary>
public sealed record DrawnCylinder(int Number, decimal X, decimal Y, decimal Width, decimal Height);

/// <summary>
/// The valves of an engine seen from above: banks one below the other, cylinders in the order in which they are numbered, of each
/// the intake valves above the exhaust valves, positions from left to right. Sides are told by name: a specification says how
/// cylinders and valves are counted, not where a port faces. Shown by <c>&lt;partial name="Drawings/_ValveMap" model="map" /&gt;</c>,
/// a table beside it.
/// </summary>
public sealed record ValveMap
{
    public const decimal Radius = 37;

    private const decimal Cell = 84;
    private const decimal Gap = 14;
    private const decimal Margin = 74;
    private const decimal Heading = 24;

    public required decimal Width { get; init; }

    public required decimal Height { get; init; }

    public required string Words { get; init; }

    public required IReadOnlyList<DrawnValve> Valves { get; init; }

    public required IReadOnlyList<DrawnCylinder> Cylinders { get; init; }

    /// <summary>Names at the left: sides, and of each bank its name above.</summary>
    public required IReadOnlyList<(decimal X, decimal Y, string Text)> Labels { get; init; }

    /// <param name="specification">Whose layout it is.</param>
    /// <param name="valves">Every valve of it, once.</param>
    /// <param name="words">What the drawing says, for those who do not see it.</param>
    public static ValveMap Of(EngineSpecification specification, IReadOnlyDictionary<ValveKey, MapValve> valves, string words)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(valves);
        var (drawn, cylinders, labels) = (new List<DrawnValve>(), new List<DrawnCylinder>(), new List<(decimal, decimal, string)>());
        var (y, width) = (0m, 0m);
        var banks = specification.Layout.Cylinders.GroupBy(c => c.Bank).ToList();
        foreach (var bank in banks)
        {
            if (banks.Count > 1)
            {
                labels.Add((Margin, y + 18, $"Bank: {bank.Key}"));
                y += Heading;
            }

            var numbers = bank.Select(c => c.Number).ToHashSet();
            Side[] sides = [.. specification.Valves.Where(v => numbers.Contains(v.Key.Cylinder)).Select(v => v.Key.Side).Distinct().Order()];
            labels.AddRange(sides.Select((side, row) => (6m, y + Heading + (row * Cell) + (Cell / 2) + 5, side.Spoken())));
            var x = Margin;
            foreach (var cylinder in bank.OrderBy(c => c.Number))
            {
                var own = valves.Keys.Where(v => v.Cylinder == cylinder.Number).ToList();
                var columns = own.Count == 0 ? 1 : own.GroupBy(v => v.Side).Max(g => g.Count());
                cylinders.Add(new DrawnCylinder(cylinder.Number, x, y, columns * Cell, Heading + (sides.Length * Cell)));
                foreach (var side in own.GroupBy(v => v.Side))
                {
                    // A lone valve beside two sits in the middle, as it does in the head.
                    var inset = (columns - side.Count()) * Cell / 2;
                    drawn.AddRange(side.Order().Select((v, i) => new DrawnValve(
                        valves[v], x + inset + (i * Cell) + (Cell / 2), y + Heading + (Array.IndexOf(sides, side.Key) * Cell) + (Cell / 2))));
                }

                x += (columns * Cell) + Gap;
            }

            width = Math.Max(width, x - Gap + 2);
            y += Heading + (sides.Length * Cell) + Gap;
        }

        return new ValveMap { Width = width, Height = y - Gap + 2, Words = words, Valves = drawn, Cylinders = cylinders, Labels = labels };
    }

    public static string Write(decimal coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);
}
