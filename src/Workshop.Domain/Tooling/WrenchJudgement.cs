using System.Globalization;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tooling;

/// <summary>One torque to be given to a fastener.</summary>
/// <param name="Lowest">The range that the maker allows, where one is stated; of a stage there is none.</param>
/// <param name="Tool">What turns it.</param>
/// <param name="SpaceOverMm">What is free over the head where no socket goes on; absent where one does.</param>
public sealed record WrenchTask(Torque Torque, Torque? Lowest, Torque? Highest, string Tool, decimal? SpaceOverMm)
{
    /// <summary>The torques of a fastener in order: the stages, then the final one with its range.</summary>
    public static IReadOnlyList<WrenchTask> Of(Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        return
        [
            .. fastener.Stages.Select(stage => new WrenchTask(stage, null, null, fastener.Tool, fastener.SpaceOverMm)),
            new WrenchTask(fastener.Torque, fastener.TorqueLowest, fastener.TorqueHighest, fastener.Tool, fastener.SpaceOverMm),
        ];
    }

    /// <summary>"8 to 10 N.m", or "9 N.m" where no range is stated.</summary>
    public string Wanted => (Lowest, Highest) is ({ } lowest, { } highest)
        ? string.Create(CultureInfo.InvariantCulture, $"{lowest.NewtonMetres:0.##} to {highest.NewtonMetres:0.##} N.m")
        : string.Create(CultureInfo.InvariantCulture, $"{Torque.NewtonMetres:0.##} N.m");
}

/// <summary>A torque wrench of the workshop with the cycles counted since its last calibration.</summary>
public sealed record WrenchOnHand(Instrument Wrench, int Cycles)
{
    /// <summary>"Torque wrench 5 to 25 N.m (W-1)".</summary>
    public string Name => $"{Wrench.Name} ({Wrench.SerialNumber})";
}

/// <summary>A way to give a torque: a wrench, what is between it and the fastener, and what is dialled.</summary>
/// <param name="AngleDegrees">Between an offset adapter and the wrench; absent without one.</param>
/// <param name="Dialled">On a mark of the scale, in the wrench's own unit; as exact as computed where its marks are unknown.</param>
/// <param name="AtFastenerNm">What the fastener gets from that, the wrench taken as true.</param>
/// <param name="ErrorNm">Of rounding to the mark: what it gets less what is wanted.</param>
public sealed record WrenchOffer(
    WrenchOnHand OnHand, WrenchScale Scale, WrenchAdapter? Adapter, decimal? AngleDegrees, decimal Dialled, decimal AtFastenerNm, decimal ErrorNm, decimal ErrorPercent)
{
    /// <summary>What is dialled, with its unit.</summary>
    public string Setting => Scale.Say(Dialled);
}

/// <summary>Judges one way to give a torque.</summary>
public static class WrenchJudgement
{
    /// <summary>
    /// What is to be dialled, or why this way does not do, in words that go on after the wrench's name. The dialled setting is
    /// on a mark of the scale, not below a fifth of its rated maximum, and gives a torque within the range that is stated.
    /// </summary>
    /// <param name="task">The torque and where it goes.</param>
    /// <param name="onHand">The wrench.</param>
    /// <param name="adapter">Between wrench and fastener, if anything.</param>
    /// <param name="angleDegrees">Of an offset adapter against the wrench, 0 to 180; anything else pays no heed to it.</param>
    /// <param name="day">The workshop's day of the work.</param>
    public static (WrenchOffer? Offer, string? Against) Of(
        WrenchTask task, WrenchOnHand onHand, WrenchAdapter? adapter, decimal angleDegrees, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(onHand);
        var wrench = onHand.Wrench;
        if (WrenchScale.Of(wrench) is not { } scale)
        {
            return (null, wrench.Kind == InstrumentKind.TorqueWrench ? "has no known scale" : "is no torque wrench");
        }

        var offset = adapter?.Kind == WrenchAdapterKind.OffsetAdapter ? adapter : null;
        var against = InstrumentStanding.ReasonAgainst(wrench, day, onHand.Cycles)
            ?? AgainstAccess(task, offset)
            ?? AgainstFitting(wrench, adapter)
            ?? (offset is null ? null : AgainstLever(task, wrench, offset, angleDegrees));
        return against is null ? Dial(task, onHand, scale, adapter, offset, angleDegrees) : (null, against);
    }

    /// <summary>
    /// Why a setting that somebody dialled of their own does not do; nothing where it does: on a mark, not below a fifth of the rated
    /// maximum, and within the range that is stated, or else just what is offered.
    /// </summary>
    /// <param name="task">The torque and where it goes.</param>
    /// <param name="offer">What is to be dialled in that way.</param>
    /// <param name="dialled">In the wrench's own unit.</param>
    public static string? AgainstDialled(WrenchTask task, WrenchOffer offer, decimal dialled)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(offer);
        var scale = offer.Scale;
        if (decimal.Round(dialled - offer.Dialled, 3) == 0)
        {
            return null;
        }

        var given = offer.AtFastenerNm * dialled / offer.Dialled;
        return task.Lowest is not null && scale.IsGoodFor(dialled) && scale.MarksNear(dialled)[0] == dialled && IsWithin(task, given)
            ? null
            : $"{offer.Setting} is to be dialled for {task.Wanted}";
    }

    private static string? AgainstAccess(WrenchTask task, WrenchAdapter? offset)
    {
        if (task.SpaceOverMm is not { } space)
        {
            return null;
        }

        return offset switch
        {
            null => $"takes no socket there: {Figure(space)} mm are free over the head, so that a thin ring is needed",
            { ThicknessMm: null } => $"with {offset.Name}: how thick that is at the fastener is not recorded, and {Figure(space)} mm are free over the head",
            { ThicknessMm: var thick } when thick > space =>
                $"with {offset.Name}: that is {Figure(thick.Value)} mm thick at the fastener, and {Figure(space)} mm are free over the head",
            _ => null,
        };
    }

    private static string? AgainstFitting(Instrument wrench, WrenchAdapter? adapter) => adapter switch
    {
        null => null,
        { Retired: true } => $"with {adapter.Name}: that is retired",
        _ when Blank(wrench.Drive) => $"takes no adapter: its drive is not recorded",
        _ when Blank(adapter.Drive) => $"with {adapter.Name}: which drive that fits is not recorded",
        _ when !SameDrive(wrench.Drive!, adapter.Drive!) => $"has the drive {wrench.Drive}, and {adapter.Name} fits {adapter.Drive}",
        _ => null,
    };

    private static string? AgainstLever(WrenchTask task, Instrument wrench, WrenchAdapter offset, decimal angleDegrees) =>
        wrench.LengthMm is not > 0 ? "takes no offset adapter: its length is not recorded"
        : !DrivenTool.Fits(task.Tool, offset.Tool) ? $"with {offset.Name}: that is a {offset.Tool}, and the fastener takes a {task.Tool}"
        : !WrenchLever.Turns(wrench.LengthMm.Value, offset.EffectiveLengthMm, angleDegrees) ? $"with {offset.Name}: that reaches back to the grip"
        : null;

    private static (WrenchOffer? Offer, string? Against) Dial(
        WrenchTask task, WrenchOnHand onHand, WrenchScale scale, WrenchAdapter? adapter, WrenchAdapter? offset, decimal angleDegrees)
    {
        var length = onHand.Wrench.LengthMm ?? 0;
        var wanted = task.Torque.NewtonMetres;
        var exact = (offset is null ? wanted : WrenchLever.ToDial(wanted, length, offset.EffectiveLengthMm, angleDegrees)) / scale.NewtonMetres;

        decimal AtFastener(decimal dialled) => offset is null
            ? dialled * scale.NewtonMetres
            : WrenchLever.AtFastener(dialled * scale.NewtonMetres, length, offset.EffectiveLengthMm, angleDegrees);

        var good = scale.MarksNear(exact).Where(scale.IsGoodFor).ToList();
        if (good.Count == 0)
        {
            return (null, $"is good for {scale.SayGoodRange()}, and {scale.Say(exact)} is to be dialled");
        }

        foreach (var mark in good)
        {
            var given = AtFastener(mark);
            if (IsWithin(task, given))
            {
                var error = given - wanted;
                return (new WrenchOffer(onHand, scale, adapter, offset is null ? null : angleDegrees, mark, given, error, 100 * error / wanted), null);
            }
        }

        return (null, $"can be set to {string.Join(" or ", good.Order().Select(scale.Say))}, which gives no torque within {task.Wanted}");
    }

    // Where marks are unknown the setting is as exact as a decimal, whose last digits must not put it outside.
    private static bool IsWithin(WrenchTask task, decimal newtonMetres)
    {
        var rounded = decimal.Round(newtonMetres, 6);
        return (task.Lowest is not { } lowest || rounded >= lowest.NewtonMetres) && (task.Highest is not { } highest || rounded <= highest.NewtonMetres);
    }

    private static bool Blank(string? text) => string.IsNullOrWhiteSpace(text);

    private static bool SameDrive(string one, string other) =>
        string.Equals(WithoutSpaces(one), WithoutSpaces(other), StringComparison.OrdinalIgnoreCase);

    private static string WithoutSpaces(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    private static string Figure(decimal millimetres) => millimetres.ToString("0.##", CultureInfo.InvariantCulture);
}
