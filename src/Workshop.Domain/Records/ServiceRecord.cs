using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Records;

/// <summary>
/// What the owner gets of a visit, as it stood when the card was signed: figures, and the words in which they were said. It is
/// stored whole and never made anew, so neither later visits, prices or fits nor other words of ours change it. What is added to it
/// later may be absent, and nothing is ever taken out: documents of years are read by it. It names no owner;
/// what people wrote stands beside it, see <see cref="RecordWords"/>, where an erasure empties it.
/// </summary>
public sealed record ServiceRecord
{
    public required int JobCardNumber { get; init; }

    /// <summary>The workshop's name and telephone on that day.</summary>
    public required string Workshop { get; init; }

    public string? Phone { get; init; }

    public required RecordedMotorcycle Motorcycle { get; init; }

    public LocalDate? ArrivedOn { get; init; }

    public required LocalDate SignedOn { get; init; }

    public required string SignedBy { get; init; }

    /// <summary>Whole units of the instrument, as it came; absent where nobody checked it in.</summary>
    public int? OdometerIn { get; init; }

    /// <summary>As it left.</summary>
    public required int OdometerOut { get; init; }

    public required OdometerUnit OdometerUnit { get; init; }

    public required IReadOnlyList<RecordedItem> Items { get; init; }

    public required IReadOnlyList<RecordedLobe> Clearances { get; init; }

    public required IReadOnlyList<RecordedShim> Shims { get; init; }

    /// <summary>With what the valves were measured, and how cold the engine was; sentences.</summary>
    public required IReadOnlyList<string> Measuring { get; init; }

    public required IReadOnlyList<RecordedPart> Parts { get; init; }

    public required IReadOnlyList<RecordedFastener> Fasteners { get; init; }

    public required IReadOnlyList<RecordedDrive> CamTiming { get; init; }

    public required IReadOnlyList<RecordedFinding> Findings { get; init; }

    /// <summary>Absent where nothing was agreed.</summary>
    public RecordedPrice? Agreed { get; init; }

    public required IReadOnlyList<RecordedDue> NextDue { get; init; }

    public required IReadOnlyList<RecordedForecast> Forecasts { get; init; }

    public required RecordedSpecification Specification { get; init; }

    /// <summary>How it came, as far as anybody noted it.</summary>
    public IReadOnlyList<RecordedCheck> Arrival { get; init; } = [];

    public IReadOnlyList<RecordedCylinder> Cylinders { get; init; } = [];

    public IReadOnlyList<RecordedPlug> Plugs { get; init; } = [];

    /// <summary>What was looked at after the work: balance, leaks, test ride, re-checks, reminder, count.</summary>
    public IReadOnlyList<RecordedCheck> AfterWork { get; init; } = [];

    /// <summary>The earlier visit of which this one comes back.</summary>
    public int? ComebackOf { get; init; }
}

/// <param name="Vin">Vehicle identification number, or what the frame shows.</param>
/// <param name="Invented">The engine belongs to nothing real.</param>
public sealed record RecordedMotorcycle(
    string Registration, string? Vin, string Maker, string Model, int ModelYear, string EngineModel, string EngineSerialNumber, bool Invented);

/// <summary>Why an item was not done stands in the words, under <see cref="RecordWords.NotDone"/>.</summary>
public sealed record RecordedItem(string Code, string Name, bool Done);

/// <param name="NotCold">The engine was outside the range in which clearances count.</param>
/// <param name="Carried">Not measured again: the valve was not disturbed.</param>
public sealed record RecordedReading(BracketKind Kind, Clearance? GoMm, Clearance? NoGoMm, Verdict Verdict, bool NotCold, bool Carried);

/// <summary>One valve and lobe, as found and as left.</summary>
/// <param name="Name">As a person says it: "cylinder 1, intake 2".</param>
/// <param name="Set">Its shim was changed or its screw turned.</param>
/// <param name="Sentence">All of it in words: "Too tight as found; set; within limits as left."</param>
public sealed record RecordedLobe(
    ValveKey Valve, int Lobe, string Name, Clearance LowerMm, Clearance UpperMm, Clearance SetToMm, RecordedReading? Found, RecordedReading? Left,
    bool Set, string Sentence);

/// <summary>The shim of a valve, where it was out.</summary>
/// <param name="Condition">Of the one that went in; absent where that is not on record.</param>
/// <param name="Sentence">"2.300 mm out, 2.250 mm in, new."</param>
public sealed record RecordedShim(
    ValveKey Valve, string Name, ShimThickness? OutMm, ShimThickness? InMm, StockCondition? Condition, string Sentence);

/// <param name="Designation">By its standard; of a fluid its grade.</param>
/// <param name="Quantity">In the unit: pieces, or millilitres of a fluid.</param>
public sealed record RecordedPart(string Name, string? Designation, decimal Quantity, PartUnit Unit);

/// <param name="Torque">As the specification states it: "10 N.m, then 90° further".</param>
/// <param name="TightenedOn">When it was ticked.</param>
/// <param name="Wrench">How the calibration of the wrench stood on that day.</param>
/// <param name="ConfirmedBySecond">A second person looked.</param>
public sealed record RecordedFastener(
    string Name, int Count, string Thread, string? Joint, decimal TorqueNm, string Torque, LocalDate TightenedOn, string? Wrench, bool ConfirmedBySecond);

/// <summary>What a visit showed of the timing of the camshafts of one drive.</summary>
/// <param name="Chain">Tensioner and chain, as found; absent where nobody looked.</param>
public sealed record RecordedDrive(string Name, IReadOnlyList<RecordedCam> Cams, string? Chain, string? ChainLeft);

/// <param name="Found">In words; absent where it was not checked at that stage.</param>
public sealed record RecordedCam(string Name, string? Found, string? Left);

/// <summary>Something that was found, and what the owner said to it; captions and remarks stand in the words.</summary>
/// <param name="Answer">"Agreed by telephone on 2026-03-02"; absent where nobody was asked.</param>
/// <param name="StaysUnsafe">Not to be ridden like this: the owner was told, and declined the repair.</param>
/// <param name="Photos">Ids of its photos. One that the manager takes out later is gone from the record as well.</param>
public sealed record RecordedFinding(
    Guid Id, string Place, string Text, FindingGravity Gravity, FindingState State, string? Answer, bool StaysUnsafe, RecordedPrice? Price,
    IReadOnlyList<Guid> Photos);

/// <param name="Gross">With tax.</param>
/// <param name="Currency">Three letters of ISO 4217.</param>
public sealed record RecordedPrice(decimal Gross, string Currency);

/// <param name="AtKm">By the motorcycle's distance.</param>
/// <param name="Sentence">"At 36,000 km or on 2027-03-02, whichever comes first."</param>
public sealed record RecordedDue(string Name, Distance? AtKm, LocalDate? On, bool ByForecast, string Sentence);

/// <summary>What is expected of the valves of one side.</summary>
/// <param name="FromKm">In the motorcycle's distance: one in ten has left by then; absent where nothing is foretold.</param>
/// <param name="ToKm">The same for nine in ten.</param>
/// <param name="IsForetold">Something is; else the sentence says why not.</param>
public sealed record RecordedForecast(Side Side, Distance? FromKm, Distance? ToKm, bool IsForetold, string Sentence);

/// <summary>Where limits and torques come from.</summary>
/// <param name="Sources">Documents of the specification, of the limits and of the torques, each once, with who compared them.</param>
public sealed record RecordedSpecification(int Version, IReadOnlyList<string> Sources);
