using System.Globalization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>A compartment of a shim box: a row letter and a column number, and the size that belongs into it.</summary>
public sealed record Compartment(int Row, int Column, ShimThickness Nominal)
{
    /// <summary>As written on the box: "C4". After row Z follow AA, AB and so on.</summary>
    public string Address => string.Create(CultureInfo.InvariantCulture, $"{Letters(Row)}{Column + 1}");

    private static string Letters(int row) => row < 26
        ? ((char)('A' + row)).ToString()
        : Letters((row / 26) - 1) + (char)('A' + (row % 26));
}

/// <summary>
/// Where each thickness lies in a box that is filled row by row with the sizes of a series. A used shim lies with the nearest
/// size; halfway between two, with the thinner.
/// </summary>
public sealed class BoxMap
{
    /// <param name="smallest">The thinnest size of the series.</param>
    /// <param name="largest">The thickest size of the series, not below the thinnest.</param>
    /// <param name="stepMm">Between sizes, mm, above 0.</param>
    /// <param name="columns">Compartments in a row, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A step or number of columns that is not positive, or a range that is empty.</exception>
    public BoxMap(ShimThickness smallest, ShimThickness largest, decimal stepMm, int columns)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(stepMm, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(largest.Millimetres, smallest.Millimetres, nameof(largest));
        StepMm = stepMm;
        Columns = columns;
        var sizes = (int)decimal.Floor((largest - smallest) / stepMm) + 1;
        Compartments = [.. Enumerable.Range(0, sizes).Select(i => new Compartment(
            i / columns, i % columns, ShimThickness.FromMillimetres(decimal.Round(smallest.Millimetres + (i * stepMm), ShimThickness.DecimalsMm))))];
    }

    /// <summary>The box of a series.</summary>
    public static BoxMap Of(ShimSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        return new BoxMap(series.Smallest, series.Largest, series.StepMm, series.Columns);
    }

    public decimal StepMm { get; }

    public int Columns { get; }

    /// <summary>Row by row, the thinnest size first.</summary>
    public IReadOnlyList<Compartment> Compartments { get; }

    public int Rows => Compartments[^1].Row + 1;

    /// <summary>The compartment where a shim of this thickness lies; nothing where it is half a step or more beyond the box.</summary>
    public Compartment? For(ShimThickness thickness)
    {
        var steps = (thickness - Compartments[0].Nominal) / StepMm;
        var below = decimal.Floor(steps);
        var index = steps - below > 0.5m ? below + 1 : below;
        return index >= 0 && index < Compartments.Count ? Compartments[(int)index] : null;
    }

    /// <summary>The compartment with this address, however it is typed: "c4", "C 4".</summary>
    public Compartment? At(string? address)
    {
        var typed = address?.Replace(" ", "", StringComparison.Ordinal);
        return Compartments.FirstOrDefault(c => string.Equals(c.Address, typed, StringComparison.OrdinalIgnoreCase));
    }
}
