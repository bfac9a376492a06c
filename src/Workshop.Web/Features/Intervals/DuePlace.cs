using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Intervals;

namespace Workshop.Web.Features.Intervals;

/// <summary>Where a page of the due list ended: the key of its last row, written as <c>2026-05-01~id~code</c>.</summary>
internal readonly record struct DuePlace(LocalDate ComesOn, Guid MotorcycleId, string Code)
{
    private const char Between = '~';

    public static DuePlace Of(DueItem due) => new(due.ComesOn, due.MotorcycleId, due.ServiceItemCode);

    public static bool TryParse(string? text, out DuePlace place)
    {
        place = default;
        if (text?.Split(Between, 3) is not [var day, var id, var code]
            || !LocalDatePattern.Iso.Parse(day).TryGetValue(default, out var comesOn)
            || !Guid.TryParse(id, CultureInfo.InvariantCulture, out var motorcycleId))
        {
            return false;
        }

        place = new DuePlace(comesOn, motorcycleId, code);
        return true;
    }

    public override string ToString() => string.Join(Between, LocalDatePattern.Iso.Format(ComesOn), MotorcycleId, Code);
}
