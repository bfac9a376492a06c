using System.Globalization;
using NodaTime;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Features.Tooling;

/// <summary>An instrument beside what was measured with it: which, and until when its calibration holds as it stands now.</summary>
internal static class InstrumentSaid
{
    /// <summary>"Compression gauge, CG-01; in use; calibration due 2027-03-01".</summary>
    public static string On(Instrument instrument, LocalDate day)
    {
        var due = InstrumentStanding.DueOn(instrument) is { } on ? $"calibration due {on.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}" : "no calibration day set";
        return $"{instrument.Name}, {instrument.SerialNumber}; {instrument.StateOn(day)}; {due}";
    }
}
