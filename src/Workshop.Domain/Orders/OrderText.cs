using System.Globalization;
using System.Text;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Orders;

/// <summary>One line as it is written to the supplier.</summary>
/// <param name="Code">Theirs, or the workshop's where they have none.</param>
public sealed record OrderTextLine(string Code, string Name, PartUnit Unit, decimal Quantity, ShimThickness? Thickness);

/// <summary>An order as text: to be copied into a letter, an e-mail or the supplier's own form. Nothing is sent by itself.</summary>
public static class OrderText
{
    /// <summary>Plain text, a line for each part.</summary>
    /// <param name="workshop">Its name.</param>
    /// <param name="phone">Under which it is called.</param>
    /// <param name="supplier">Who it goes to.</param>
    /// <param name="number">Of the order.</param>
    /// <param name="day">On which it is written.</param>
    /// <param name="lines">In order.</param>
    public static string Write(
        string workshop, string? phone, Supplier supplier, int number, LocalDate day, IReadOnlyList<OrderTextLine> lines)
    {
        ArgumentNullException.ThrowIfNull(supplier);
        ArgumentNullException.ThrowIfNull(lines);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"To {supplier.Name}\n");
        text.Append(CultureInfo.InvariantCulture, $"From {workshop}{(phone is null ? "" : $", telephone {phone}")}\n");
        if (supplier.CustomerNumber is { Length: > 0 } customer)
        {
            text.Append(CultureInfo.InvariantCulture, $"Our customer number with you: {customer}\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"Order {number} of {OrderWords.Say(day)}\n\nPlease deliver:\n");
        var (codes, quantities) = (lines.Select(l => l.Code.Length).DefaultIfEmpty().Max(), lines.Select(l => Quantity(l).Length).DefaultIfEmpty().Max());
        foreach (var (index, line) in lines.Index())
        {
            var thickness = line.Thickness is { } mm ? string.Create(CultureInfo.InvariantCulture, $", {mm.Millimetres:0.000} mm") : "";
            text.Append(CultureInfo.InvariantCulture, $"{index + 1,3}  {Quantity(line).PadLeft(quantities)}  {line.Code.PadRight(codes)}  {line.Name}{thickness}\n");
        }

        return text.Append("\nPlease confirm the order and the day of delivery.\n").ToString();
    }

    private static string Quantity(OrderTextLine line) => line.Unit.Say(line.Quantity);
}
