using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using NodaTime;
using NodaTime.TimeZones;
using Workshop.Domain.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

public sealed class WorkshopModel : WorkshopPage
{
    private const string Here = "/people/workshop";

    private static readonly IReadOnlyList<string> KnownZones =
        [.. (TzdbDateTimeZoneSource.Default.ZoneLocations ?? []).Select(z => z.ZoneId).Append("Etc/UTC").Order(StringComparer.Ordinal)];

    [BindProperty]
    public EditWorkshop.Request Input { get; set; } = new();

    [BindProperty]
    public SetOpeningHours.Request Hours { get; set; } = new();

    /// <summary>As pasted.</summary>
    [BindProperty]
    public string? HolidayList { get; set; }

    public GetWorkshop.Answer Found { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public IReadOnlyList<SelectListItem> Zones { get; private set; } = [];

    public bool MayManage { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Manages)
        ? await Write(Input, EditWorkshop.Handle, saved => Saved("Saved.", saved.Standing), Show)
        : Forbid();

    public async Task<IActionResult> OnPostHours() => await May(Policies.Manages)
        ? await Write(Hours, SetOpeningHours.Handle, saved => Saved("The opening hours are saved.", saved.Standing), Show, prefix: nameof(Hours))
        : Forbid();

    public async Task<IActionResult> OnPostHolidays()
    {
        if (!await May(Policies.Manages))
        {
            return Forbid();
        }

        var (items, faults) = Resources.HolidayList.Read(HolidayList);
        faults.ToList().ForEach(fault => ModelState.AddModelError(nameof(HolidayList), fault));
        return await Write(
            new AddHolidays.Request { Holidays = [.. items] },
            AddHolidays.Handle,
            added => Saved($"Holidays: {added.Added} added, {added.Renamed} renamed, {added.Unchanged} as they were.", added.Standing),
            ShowList);
    }

    public async Task<IActionResult> OnPostRemove(string? day, uint? version) => await May(Policies.Manages)
        ? await Write(
            new RemoveHoliday.Request(Days.TryRead(day ?? "", out var read) ? read : null, version),
            RemoveHoliday.Handle,
            removed => Saved($"{removed.Name} of {Days.Write(removed.Day)} is removed.", []),
            Show,
            prefix: "")
        : Forbid();

    private RedirectResult Saved(string done, IReadOnlyList<StandingVisit> standing)
    {
        Done = standing.Select(s => s.JobCardNumber).Distinct().Count() switch
        {
            0 => done,
            1 => $"{done} One booked visit cannot stay as it is; see below.",
            var count => $"{done} {count} booked visits cannot stay as they are; see below.",
        };
        return Redirect(Here);
    }

    /// <summary>What is wrong with the list stands beside the one field that it was pasted into.</summary>
    private Task<IActionResult> ShowList()
    {
        var faults = ModelState.Values.SelectMany(v => v.Errors).Select(e => e.ErrorMessage).ToList();
        ModelState.Clear();
        faults.ForEach(fault => ModelState.AddModelError(nameof(HolidayList), fault));
        return Show();
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetWorkshop.Request(), GetWorkshop.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, MayManage) = (found, await May(Policies.Manages));
        Time = new WorkshopTime(DateTimeZoneProviders.Tzdb[found.TimeZone]);
        Zones = [.. KnownZones.Append(found.TimeZone).Distinct().Select(z => new SelectListItem(z, z))];
        if (Input.Name is null && !ModelState.ContainsKey("Input.Name"))
        {
            Input = new EditWorkshop.Request
            {
                Name = found.Name, TimeZone = found.TimeZone, Phone = found.Phone, ArrivalMinutes = found.ArrivalMinutes, WarmRunMinutes = found.WarmRunMinutes,
                TestRideMinutes = found.TestRideMinutes, HandOverMinutes = found.HandOverMinutes,
            };
        }

        if (Hours.Days.Count == 0)
        {
            Hours = Hours with
            {
                Days = [.. Week.Days
                    .Select(d => (Weekday: d, Row: found.OpeningHours.SingleOrDefault(r => r.Weekday == d)))
                    .Select(d => new SetOpeningHours.Day { Weekday = d.Weekday, OpensAt = d.Row?.OpensAt, ClosesAt = d.Row?.ClosesAt })],
            };
        }

        return Page();
    }
}
