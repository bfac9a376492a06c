using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Data;

/// <summary>How the value types stand in columns: numbers in the unit that the column's name ends with, words in snake case.</summary>
internal static class ValueConversions
{
    public static void Apply(ModelConfigurationBuilder conventions)
    {
        conventions.Properties<Clearance>().HaveConversion<ClearanceColumn>().HavePrecision(5, Clearance.DecimalsMm);
        conventions.Properties<ShimThickness>().HaveConversion<ShimThicknessColumn>()
            .HavePrecision(5, ShimThickness.DecimalsMm);
        conventions.Properties<Distance>().HaveConversion<DistanceColumn>().HavePrecision(14, 3);
        conventions.Properties<Temperature>().HaveConversion<TemperatureColumn>().HavePrecision(4, Temperature.DecimalsC);
        conventions.Properties<Pressure>().HaveConversion<PressureColumn>().HavePrecision(7, Pressure.DecimalsKpa);
        conventions.Properties<CrankAngle>().HaveConversion<CrankAngleColumn>().HavePrecision(6, CrankAngle.DecimalsDegrees);
        conventions.Properties<ValveKey>().HaveConversion<ValveKeyColumn>().HaveMaxLength(16);
        conventions.Properties<decimal>().HavePrecision(14, 4);

        foreach (var type in typeof(Clearance).Assembly.GetTypes().Where(t => t.IsEnum && t.IsPublic))
        {
            conventions.Properties(type)
                .HaveConversion(typeof(WordColumn<>).MakeGenericType(type))
                .HaveMaxLength(40);
        }
    }

    /// <summary>A word as it stands in its column, for statements that the mapper does not write.</summary>
    public static string WordOf<T>(T word)
        where T : struct, Enum =>
        JsonNamingPolicy.SnakeCaseLower.ConvertName(word.ToString());

    private sealed class ClearanceColumn()
        : ValueConverter<Clearance, decimal>(c => c.Millimetres, d => Clearance.FromMillimetres(d));

    private sealed class ShimThicknessColumn()
        : ValueConverter<ShimThickness, decimal>(t => t.Millimetres, d => ShimThickness.FromMillimetres(d));

    private sealed class DistanceColumn()
        : ValueConverter<Distance, decimal>(d => d.Metres, d => Distance.FromMetres(d));

    private sealed class TemperatureColumn()
        : ValueConverter<Temperature, decimal>(t => t.Celsius, d => Temperature.FromCelsius(d));

    private sealed class PressureColumn()
        : ValueConverter<Pressure, decimal>(p => p.Kilopascals, d => Pressure.FromKilopascals(d));

    private sealed class CrankAngleColumn()
        : ValueConverter<CrankAngle, decimal>(a => a.Degrees, d => CrankAngle.FromDegrees(d));

    private sealed class ValveKeyColumn()
        : ValueConverter<ValveKey, string>(v => v.ToString(), s => ValveKey.Parse(s, null));

    private sealed class WordColumn<T>()
        : ValueConverter<T, string>(v => WordOf(v), s => Parse(s))
        where T : struct, Enum
    {
        private static T Parse(string word) => Enum.Parse<T>(word.Replace("_", "", StringComparison.Ordinal), ignoreCase: true);
    }
}
