using System.Text.Json;
using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// Measures stand in documents as plain numbers; the unit is in the property's name (<c>lowerMm</c>, <c>torqueNm</c>).
/// A number outside the type's range is a fault of the document and is reported as one, with its path.
/// </summary>
public abstract class MeasureJson<T>(Func<decimal, T> read, Func<T, decimal> write) : JsonConverter<T>
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var number = reader.GetDecimal();
        try
        {
            return read(number);
        }
        catch (ArgumentOutOfRangeException fault)
        {
            throw new JsonException($"{number} is not allowed here: {fault.Message}", fault);
        }
    }

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteNumberValue(write(value));
    }
}

internal sealed class ClearanceJson() : MeasureJson<Clearance>(Clearance.FromMillimetres, c => c.Millimetres);

internal sealed class ShimThicknessJson()
    : MeasureJson<ShimThickness>(ShimThickness.FromMillimetres, t => t.Millimetres);

/// <summary>Documents state distances in kilometres.</summary>
internal sealed class DistanceJson() : MeasureJson<Distance>(Distance.FromKilometres, d => d.Kilometres);

internal sealed class TorqueJson() : MeasureJson<Torque>(Torque.FromNewtonMetres, t => t.NewtonMetres);

internal sealed class TemperatureJson() : MeasureJson<Temperature>(Temperature.FromCelsius, t => t.Celsius);

internal sealed class LeverRatioJson() : MeasureJson<LeverRatio>(LeverRatio.From, r => r.Value);

internal sealed class CrankAngleJson() : MeasureJson<CrankAngle>(CrankAngle.FromDegrees, a => a.Degrees);

internal sealed class PressureJson() : MeasureJson<Pressure>(Pressure.FromKilopascals, p => p.Kilopascals);
