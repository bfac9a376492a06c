using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

public sealed class ResourceModel(WorkshopDbContext db) : WorkshopPage
{
    private const int BreaksShown = 2;

    [BindProperty(SupportsGet = true)]
    public Guid ResourceId { get; set; }

    [BindProperty]
    public EditResource.Request Input { get; set; } = new();

    [BindProperty]
    public SetWorkingHours.Request Hours { get; set; } = new();

    [BindProperty]
    public AddAbsence.Request Absence { get; set; } = new();

    public GetResource.Answer Found { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public IReadOnlyList<string> AskedFor { get; private set; } = [];

    public bool MayManage { get; private set; }

    private string Here => $"/people/resources/{ResourceId}";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Manages)
        ? await Write(Input with { Id = ResourceId }, EditResource.Handle, _ => Saved("Saved."), Show)
        : Forbid();

    public async Task<IActionResult> OnPostHours() => await May(Policies.Manages)
        ? await Write(
            Hours with { ResourceId = ResourceId },
            SetWorkingHours.Handle,
            set => Saved($"The week is saved.{Said(set.Standing.Count)}"),
            Show,
            prefix: nameof(Hours))
        : Forbid();

    public async Task<IActionResult> OnPostAbsence() => await May(Policies.Manages)
        ? await Write(
            Absence with { ResourceId = ResourceId },
            AddAbsence.Handle,
            entered => Saved($"The absence is entered.{Said(entered.Standing.Select(s => s.JobCardNumber).Distinct().Count())}"),
            Show,
            prefix: nameof(Absence))
        : Forbid();

    public async Task<IActionResult> OnPostWithdraw(Guid absenceId, uint? version) => await May(Policies.Manages)
        ? await Write(
            new WithdrawAbsence.Request { ResourceId = ResourceId, AbsenceId = absenceId, RowVersion = version },
            WithdrawAbsence.Handle,
            _ => Saved("The absence is withdrawn."),
            Show,
            prefix: "")
        : Forbid();

    private static string Said(int standing) => standing switch
    {
        0 => "",
        1 => " One booked visit stands in it; it stays until somebody moves it.",
        _ => $" {standing} booked visits stand in it; they stay until somebody moves them.",
    };

    private RedirectResult Saved(string done)
    {
        Done = done;
        return Redirect(Here);
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetResource.Request(ResourceId), GetResource.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, MayManage) = (found, await May(Policies.Manages));
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        AskedFor = await Resources.AskedFor.Read(db, found.Resource.Kind, HttpContext.RequestAborted);
        if (Input.Name is null && !ModelState.ContainsKey("Input.Name"))
        {
            Input = new EditResource.Request
            {
                Name = found.Resource.Name, Capabilities = [.. found.Resource.Capabilities], Grade = found.Resource.Grade, Retired = found.Resource.Retired,
            };
        }

        Hours = Hours.Days.Count > 0 ? Hours with { Days = [.. Hours.Days.Select(Filled)] } : AsItStands(found);
        return Page();
    }

    private static SetWorkingHours.Request AsItStands(GetResource.Answer found) => new()
    {
        AsOpeningHours = found.AsOpeningHours,
        Days = [.. Week.Days
            .Select(d => (Weekday: d, Row: found.Days.SingleOrDefault(r => r.Weekday == d)))
            .Select(d => Filled(new SetWorkingHours.Day
            {
                Weekday = d.Weekday, StartsAt = d.Row?.StartsAt, EndsAt = d.Row?.EndsAt,
                Breaks = [.. (d.Row?.Breaks ?? []).Select(b => new SetWorkingHours.Break { StartsAt = b.StartsAt, EndsAt = b.EndsAt })],
            }))],
    };

    /// <summary>With empty breaks up to those that the form has.</summary>
    private static SetWorkingHours.Day Filled(SetWorkingHours.Day day) => day with
    {
        Breaks = [.. day.Breaks, .. Enumerable.Repeat(new SetWorkingHours.Break(), Math.Max(0, BreaksShown - day.Breaks.Count))],
    };
}
