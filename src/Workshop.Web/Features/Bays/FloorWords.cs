using System.Globalization;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;

namespace Workshop.Web.Features.Bays;

/// <summary>How the floor is said, in the drawing and in the table beside it.</summary>
/// <param name="Time">Of the workshop.</param>
/// <param name="Now">As of when.</param>
public sealed record FloorWords(WorkshopTime Time, Instant Now)
{
    private const int DaysByName = 6;

    /// <summary>"10:30" of today, "Tue 10:30" of the days around, the date of any other.</summary>
    public string Clock(Instant at)
    {
        var (day, today) = (Time.DayOf(at), Time.DayOf(Now));
        var clock = Time.At(at).ToString("HH:mm", CultureInfo.InvariantCulture);
        return day == today ? clock
            : Math.Abs(Period.DaysBetween(today, day)) <= DaysByName
                ? $"{day.ToString("ddd", CultureInfo.InvariantCulture)} {clock}"
            : Time.Say(at);
    }

    /// <summary>"Work since 08:05", "Waits for shims since Mon 14:20".</summary>
    public string Phase(GetFloor.Standing stands) => $"{What(stands)} {Since(stands)}";

    /// <summary>"Work", "Waits for shims"; "Here" where nothing was begun.</summary>
    public static string What(GetFloor.Standing stands) =>
        Capital(stands.Waits is { } waits ? $"waits for {waits.For.Spoken()}" : stands.Phase?.Spoken() ?? "here");

    public string Since(GetFloor.Standing stands) => $"since {Clock(stands.Since)}";

    /// <summary>Who and what step: "TV, measured as found".</summary>
    public static string Who(GetFloor.Standing stands) =>
        string.Join(", ", new[] { stands.Technician, stands.Step }.Where(s => s is not null));

    /// <summary>Cold from when, expected until when, ready when.</summary>
    public string When(GetFloor.Standing stands) =>
        stands.Waits is { } waits ? $"Expected until {Clock(waits.ExpectedUntil)}"
        : stands.ColdFrom is { } cold ? cold > Now ? $"Cold from {Clock(cold)}" : $"Cold since {Clock(cold)}"
        : $"Ready {Clock(stands.ReadyAt)}{(stands.ReadyAt < Now ? ", by plan" : "")}";

    public string Next(GetFloor.Coming next) =>
        $"{(next.From < Now ? "due since" : "next")} {Clock(next.From)} {next.Registration}";

    public string Away(GetFloor.Away away) => $"{Capital(away.Reason.Spoken())} until {Clock(away.Until)}";

    /// <summary>Where a technician is: at a visit, absent, or at none.</summary>
    public string Where(GetFloor.TechnicianNow technician) =>
        technician.At is { } at
            ? $"{at.Phase.Spoken()}, {at.Registration}{(at.Place is { } place ? $" in {place}" : "")}, since {Clock(at.Since)}"
            : technician.Away is { } away ? Away(away)
            : "at no motorcycle";

    public string Then(GetFloor.Coming? next) => next is null
        ? ""
        : $"{(next.From < Now ? "due since" : "next")} {Clock(next.From)}, {next.Registration}{(next.Place is { } place ? $" in {place}" : "")}";

    private static string Capital(string word) => $"{char.ToUpperInvariant(word[0])}{word[1..]}";
}
