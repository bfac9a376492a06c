using Workshop.Domain.Tooling;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>A wrench that is offered for a torque, and what is dialled on it.</summary>
/// <param name="Adapter">Absent where the socket sits on the wrench itself.</param>
/// <param name="AdapterAngleDegrees">0 straight on, 90 across, 180 back along the wrench.</param>
/// <param name="Dialled">In the wrench's own unit, on a mark of its scale.</param>
/// <param name="Setting">The same with its unit: "8.5 N.m".</param>
/// <param name="ErrorNm">Of rounding to the mark: what the fastener gets less what is wanted.</param>
public sealed record OfferLine(
    Guid Id,
    string Name,
    string SerialNumber,
    Guid? AdapterId,
    string? Adapter,
    decimal? AdapterThicknessMm,
    decimal? AdapterAngleDegrees,
    decimal Dialled,
    string Unit,
    string Setting,
    decimal AtFastenerNm,
    decimal ErrorNm,
    decimal ErrorPercent)
{
    internal static OfferLine Of(WrenchOffer offer) => new(
        offer.OnHand.Wrench.Id, offer.OnHand.Wrench.Name, offer.OnHand.Wrench.SerialNumber, offer.Adapter?.Id, offer.Adapter?.Name,
        offer.Adapter?.ThicknessMm, offer.AngleDegrees, decimal.Round(offer.Dialled, 3), offer.Scale.Unit, offer.Setting,
        decimal.Round(offer.AtFastenerNm, 3), decimal.Round(offer.ErrorNm, 3), decimal.Round(offer.ErrorPercent, 2));

    /// <summary>"with thin ring 10 mm, straight on"; empty without an adapter.</summary>
    public string Between => Adapter is null ? "" : $" with {Adapter}{SayAngle(AdapterAngleDegrees)}";

    /// <summary>"8.3 N.m gives 0.02 N.m less (-0.2 %)"; "exactly" where rounding changes nothing.</summary>
    public string SayError => ErrorNm == 0
        ? "gives it exactly"
        : FormattableString.Invariant($"gives {Math.Abs(ErrorNm):0.###} N.m {(ErrorNm > 0 ? "more" : "less")} ({ErrorPercent:+0.0#;-0.0#;0.0} %)");

    public static string SayAngle(decimal? degrees) => degrees switch
    {
        null => "",
        0 => ", straight on",
        90 => ", across",
        180 => ", back along the wrench",
        _ => FormattableString.Invariant($", at {degrees:0.#}°"),
    };
}
