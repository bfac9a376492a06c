using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Features.Clearances;

namespace Workshop.Web.Features.Bays;

/// <summary>What the address of the screen carries while readings are entered: blades, temperature, the lobe that was tapped.</summary>
public sealed record MeasureWish
{
    /// <summary>The feeler set.</summary>
    public Guid? Set { get; init; }

    /// <summary>Cylinder head, °C.</summary>
    public decimal? Head { get; init; }

    /// <summary>The reason to keep readings of an engine outside its cold range.</summary>
    public string? NotCold { get; init; }

    /// <summary>The lobe that was tapped: "1-intake-2" or "1-intake-2/2".</summary>
    public string? Lobe { get; init; }

    /// <summary>The lobe that was read last; the next one is asked for.</summary>
    public string? After { get; init; }

    /// <summary>The same with a lobe tapped, as part of an address.</summary>
    public string With(LobeKey lobe) => Address(("Wish.Lobe", lobe.ToString()));

    /// <summary>The same after a lobe was read.</summary>
    public string With(LobeKey? after) => Address(("Wish.After", after?.ToString()));

    public static LobeKey? Read(string? text)
    {
        var parts = text?.Split('/') ?? [];
        return parts.Length is 1 or 2 && ValveKey.TryParse(parts[0], null, out var valve)
            ? new LobeKey(valve, parts.Length == 2 && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var lobe) ? lobe : 1)
            : null;
    }

    private string Address((string Name, string? Value) last)
    {
        (string Name, string? Value)[] all =
        [
            ("Wish.Set", Set?.ToString()), ("Wish.Head", Head?.ToString(CultureInfo.InvariantCulture)), ("Wish.NotCold", NotCold), last,
        ];
        return string.Join('&', all.Where(a => a.Value is { Length: > 0 }).Select(a => $"{a.Name}={Uri.EscapeDataString(a.Value!)}"));
    }
}

/// <summary>What a tap on a blade sends.</summary>
public sealed record BladeTap
{
    public Stage? Stage { get; init; }

    public string? Lobe { get; init; }

    /// <summary>See <see cref="BladeAnswer"/>.</summary>
    public string? Says { get; init; }

    /// <summary>The second blade, where two are stacked.</summary>
    public decimal? With { get; init; }

    public string? Method { get; init; }

    /// <summary>Which attempt it is, as far as the page knew.</summary>
    public int? Attempt { get; init; }

    /// <summary>Why a lobe is read again.</summary>
    public string? Reason { get; init; }

    /// <summary>Of the form that confirms a position.</summary>
    public string? Position { get; init; }

    public RecordReadings.Request ToReadings(int number, MeasureWish wish, Bracket? bracket)
    {
        ArgumentNullException.ThrowIfNull(wish);
        var lobe = MeasureWish.Read(Lobe);
        return new RecordReadings.Request
        {
            Number = number,
            InstrumentId = wish.Set,
            HeadTemperatureC = wish.Head,
            TemperatureMethod = Method,
            KeptWhyNotCold = wish.NotCold,
            Reason = Reason,
            Readings =
            [
                new RecordReadings.ReadingRow
                {
                    Valve = lobe?.Valve.ToString(), Lobe = lobe?.Lobe, Stage = Stage, Kind = bracket?.Kind, GoMm = bracket?.Go?.Millimetres,
                    NoGoMm = bracket?.NoGo?.Millimetres, Stacked = bracket?.Stacked ?? false, Attempt = Attempt,
                },
            ],
        };
    }
}
