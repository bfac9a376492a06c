using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Workshop.Domain.Threads;

/// <summary>
/// An ISO metric thread: nominal diameter and pitch in mm (ISO 261), basic profile by ISO 68-1. Written "M6x1".
/// </summary>
public sealed partial record MetricThread
{
    // Of the basic profile of ISO 68-1; H is the height of the sharp triangle, sqrt(3)/2 pitch.
    private const double PitchDiameterByPitch = 0.649519;
    private const double CoreDiameterByPitch = 1.226869;
    private const double StressDiameterByPitch = 0.938194;
    private const double HalfFlankAngle = Math.PI / 6;

    private MetricThread(double diameterMm, double pitchMm) => (DiameterMm, PitchMm) = (diameterMm, pitchMm);

    /// <summary>Nominal (major) diameter d.</summary>
    public double DiameterMm { get; }

    /// <summary>Pitch P.</summary>
    public double PitchMm { get; }

    /// <summary>Pitch diameter d2 = d - 0.649519 P (ISO 724).</summary>
    public double PitchDiameterMm => DiameterMm - (PitchDiameterByPitch * PitchMm);

    /// <summary>Core diameter of the bolt d3 = d - 1.226869 P (ISO 724).</summary>
    public double CoreDiameterMm => DiameterMm - (CoreDiameterByPitch * PitchMm);

    /// <summary>Diameter d0 = (d2 + d3) / 2, as VDI 2230 takes it.</summary>
    public double MeanDiameterMm => (PitchDiameterMm + CoreDiameterMm) / 2;

    /// <summary>Stress area As = pi/4 (d - 0.938194 P)^2 in mm2 (ISO 898-1).</summary>
    public double StressAreaMm2 => Math.PI / 4 * Math.Pow(DiameterMm - (StressDiameterByPitch * PitchMm), 2);

    /// <summary>
    /// Area in mm2 over which the inner thread is sheared off, at the bolt's major diameter: pi d (m / P) (P/2 + (d - D2) tan 30°),
    /// as VDI 2230 and Alexander (SAE 770420) take it; the formula is from memory. Basic sizes; a nut that widens is not in it.
    /// </summary>
    /// <param name="engagementMm">Length m over which the threads engage.</param>
    public double InnerShearAreaMm2(double engagementMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(engagementMm);
        var toothMm = (PitchMm / 2) + ((DiameterMm - PitchDiameterMm) * Math.Tan(HalfFlankAngle));
        return Math.PI * DiameterMm * engagementMm / PitchMm * toothMm;
    }

    /// <summary>Reads "M6x1": diameter and pitch, both said. Nothing where the text is of another form.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out MetricThread? thread)
    {
        thread = null;
        if (text is null || Form().Match(text) is not { Success: true } match)
        {
            return false;
        }

        var (diameter, pitch) = (Number(match.Groups[1].Value), Number(match.Groups[2].Value));
        thread = pitch > 0 && pitch < diameter / 2 ? new MetricThread(diameter, pitch) : null;
        return thread is not null;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"M{DiameterMm:0.##}x{PitchMm:0.##}");

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>How a thread is written in a specification.</summary>
    [GeneratedRegex(@"^M([1-9][0-9]?(?:\.[0-9]+)?)x([0-9](?:\.[0-9]+)?)$")]
    private static partial Regex Form();
}
