using System.Globalization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Stores;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>The columns of a file of goods in, by the names that its first line must bear.</summary>
internal static class GoodsInColumn
{
    public const string Part = "part";
    public const string Place = "place";
    public const string Quantity = "quantity";
    public const string Lot = "lot";
    public const string UseBy = "use by";
    public const string UnitCost = "unit cost";
    public const string Thickness = "thickness mm";

    /// <summary>In the order in which they are documented; the file may have them in any.</summary>
    public static readonly IReadOnlyList<string> All = [Part, Place, Quantity, Lot, UseBy, UnitCost, Thickness];

    /// <summary>How the same things are called where they are typed one by one.</summary>
    public static string Of(string field) => field switch
    {
        "partCode" => Part,
        "placeCode" => Place,
        "lotCode" => Lot,
        "expiresOn" => UseBy,
        "unitCost" => UnitCost,
        "thicknessMm" => Thickness,
        _ => Quantity,
    };
}

/// <summary>One line of a file of goods in, as far as it could be read.</summary>
/// <param name="Line">Its number in the file, the header being 1.</param>
internal sealed record GoodsInRow(
    int Line, string Part, string Place, decimal? Quantity, string? Lot, LocalDate? UseBy, decimal? UnitCost, decimal? ThicknessMm)
{
    private static readonly CsvColumns Form = new(
        GoodsInColumn.All, [GoodsInColumn.Lot, GoodsInColumn.UseBy, GoodsInColumn.UnitCost, GoodsInColumn.Thickness]);

    private static readonly ReceiveGoods.Validator Rules = new();

    /// <summary>The rows that could be read, with what is wrong in <paramref name="faults"/>: each is held to what a form asks for.</summary>
    public static IReadOnlyList<GoodsInRow> Read(string text, FileFaults faults) => [.. CsvLines.Read(text, Form, faults).Select(RowOf)];

    private static GoodsInRow RowOf(CsvLine line)
    {
        decimal? Number(string column, string allowed, bool mayBeEmpty) => line.Cell<decimal>(column, TryNumber, allowed, mayBeEmpty);
        var row = new GoodsInRow(
            line.Number, line[GoodsInColumn.Part], line[GoodsInColumn.Place],
            Number(GoodsInColumn.Quantity, "a number of pieces or millilitres, without separators", false),
            line[GoodsInColumn.Lot] is { Length: > 0 } lot ? lot : null,
            line[GoodsInColumn.UseBy].Length == 0 ? null : line.Day(GoodsInColumn.UseBy),
            Number(GoodsInColumn.UnitCost, "a sum such as 3.45", true),
            Number(GoodsInColumn.Thickness, "a thickness in mm such as 2.475", true));
        foreach (var fault in Rules.Validate(row.ToRequest()).Errors.Where(e => row.Quantity is not null || e.PropertyName != nameof(ReceiveGoods.Request.Quantity)))
        {
            var field = FieldNames.Camel(fault.PropertyName);
            var column = field == "placeId" ? GoodsInColumn.Place : GoodsInColumn.Of(field);
            line.Faults.Add(line.Number, column, fault.ErrorMessage.Replace(field, "It", StringComparison.Ordinal));
        }

        return row;
    }

    public ReceiveGoods.Request ToRequest() => new()
    {
        PartCode = Part, PlaceCode = Place, Quantity = Quantity, LotCode = Lot, ExpiresOn = UseBy, UnitCost = UnitCost, ThicknessMm = ThicknessMm,
    };

    // A decimal comma where cells are parted by semicolons; group separators would be guessed at, so none are read.
    private static bool TryNumber(string text, out decimal number) => decimal.TryParse(
        text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);
}
